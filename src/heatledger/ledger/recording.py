"""The function a formula becomes: given figures it records, given anything else it only computes."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from functools import cache
from math import isfinite, nan
from types import FunctionType
from typing import TYPE_CHECKING, Any

from heatledger.ledger.figures import Figure, LedgerError, flat, make
from heatledger.ledger.symbols import Node, walk

if TYPE_CHECKING:
    from heatledger.ledger.formulas import Formula


def recording(made: Formula) -> Any:
    """A function with the formula's own signature that checks, computes and records.

    It is written out for each formula, because this is what every number of a design costs, and only
    when it is first called, because most runs call few of the formulas they import.
    """
    space: dict[str, Any] = {
        "Figure": Figure, "body": made.body, "made": made, "nan": nan,
        "dimension": made.dimension, "slow": _slow,
        **{f"d_{each.name}": each.dimension for each in made.parameters},
    }  # fmt: skip
    function = FunctionType(_first_call.__code__, space, made.name)

    def become() -> FunctionType:
        written = compile(_written_out(made), f"<formula {made.name}>", "exec")
        exec(written, space)  # noqa: S102 - from our own signature
        function.__code__ = space[made.name].__code__
        return function

    space["become"] = become
    return function


def _first_call(*arguments: Any, **named: Any) -> Any:
    """What every formula is until it is called: it becomes its written out self, and is called again."""
    return become()(*arguments, **named)  # type: ignore[name-defined]  # noqa: F821 - in its own space


def _written_out(made: Formula) -> str:
    """The code of the function. ``x - x`` is zero for every finite number."""
    names = [each.name for each in made.parameters]
    plain = [each.name for each in made.parameters if not each.many]
    lines = [f"{each.name} = tuple({each.name})" for each in made.parameters if each.many]
    tests = [f"{each.name}.dimension is d_{each.name}" for each in made.parameters if not each.many]
    values = [f"{each.name}._si" for each in made.parameters]
    for i, each in enumerate(made.parameters):
        if each.many:
            values[i] = f"v_{each.name}"
            kept = f"[each._si for each in {each.name} if each.dimension is d_{each.name}]"
            tests.append(f"len(v_{each.name} := {kept}) == len({each.name})")
    call, all_inputs = f"body({', '.join(values)})", f"({_tuple(names)})"
    lines += ["try:", f"    fits = {' and '.join(tests) or 'True'}", "except AttributeError:"]
    lines += [f"    return slow(made, {all_inputs})", "if not fits:", f"    return slow(made, {all_inputs})"]
    ops = _ops(made.expression)
    if ops & _MAY_HIDE:
        tests = [f"{each}._si != {each}._si" for each in plain]
        lines.append(f"if {' or '.join(tests) or 'False'}:")
        lines += ["    value = nan", "else:", *(f"    {each}" for each in _guarded(call, ops))]
    else:
        lines += _guarded(call, ops)
    lines += ["if value - value:", "    value = nan", "figure = Figure(value)", "figure._si = value"]
    lines += [
        "figure.dimension = dimension",
        "figure.origin = made",
        f"figure.inputs = {all_inputs}",
        "return figure",
    ]
    return f"def {made.name}({', '.join(names)}):\n" + "".join(f"    {each}\n" for each in lines)


_MAY_FAIL = {"div", "power", "log", "exp", "sqrt", "where", "read_between", "pow"}
_MAY_HIDE = {"power", "where", "read_between", "pow 0"}
"""Operations whose result may be a number although an input is missing."""


def _guarded(call: str, ops: set[str]) -> list[str]:
    """Lines that set ``value``; to NaN when the arithmetic has no answer."""
    if not ops & _MAY_FAIL:
        return [f"value = {call}"]
    lines = [
        "try:",
        f"    value = {call}",
        "except (ZeroDivisionError, ValueError, OverflowError):",
        "    value = nan",
    ]
    return [*lines, "if value.__class__ is complex:", "    value = nan"] if "power" in ops else lines


def _ops(expression: Node) -> set[str]:
    found = {each.op for each in walk(expression)}
    return found | {"pow 0" for each in walk(expression) if each.op == "pow" and each.detail == 0}


def _tuple(names: Iterable[str]) -> str:
    return "".join(f"{each}, " for each in names)


def safe_value(made: Formula, values: tuple[Any, ...]) -> float:
    """The value, or NaN when an input is missing or the arithmetic has no answer."""
    for each in values:
        if each.__class__ is float and each != each:
            return nan
    try:
        result = made.body(*values)
        return float(result) if result.__class__ is not complex and isfinite(result) else nan
    except (ZeroDivisionError, ValueError, OverflowError):
        return nan


def _slow(made: Formula, arguments: tuple[Any, ...]) -> Any:
    """Everything but a plain call with figures: symbols, floats, arrays, and faults."""
    if any(isinstance(each, Node) for each in arguments):
        return made.on_symbols(*arguments)
    figures = [isinstance(each, Figure) for each in flat(arguments)]
    if not any(figures):
        return made.body(*arguments)
    if not all(figures):
        raise LedgerError(f"{made.name}: a number from nowhere stands among the figures that go in")
    for parameter, argument in zip(made.parameters, arguments, strict=True):
        for each in argument if parameter.many else (argument,):
            if each.dimension is not parameter.dimension:
                raise LedgerError(
                    f"{made.name}: {parameter.words} takes a figure of kind {parameter.dimension}, "
                    f"not {each.dimension}"
                )
    values = tuple(
        [float(one) for one in each] if isinstance(each, tuple) else float(each) for each in arguments
    )
    return make(safe_value(made, values), made.dimension, made, arguments)


@cache
def replayed_body(made: Formula) -> Callable[[list[Any]], Any]:
    """The formula on floats or arrays, with NaN wherever a figure would have no value."""
    ops, body = _ops(made.expression), made.body
    if not ops & _MAY_FAIL:
        return lambda arguments: body(*arguments)
    hides = bool(ops & _MAY_HIDE)

    def run(arguments: list[Any]) -> Any:
        try:
            value = body(*arguments)
        except (ZeroDivisionError, ValueError, OverflowError):
            value = nan
        if hasattr(value, "__array__"):
            value = _finite(value)
        elif value.__class__ is complex or value - value:
            value = nan
        return _not_hidden(value, arguments) if hides else value

    return run


def _finite(value: Any) -> Any:
    import numpy

    finite = numpy.isfinite(value)
    return value if finite.all() else numpy.where(finite, value, nan)


def _not_hidden(value: Any, arguments: list[Any]) -> Any:
    """``value``, without a value wherever an argument has none."""
    for each in flat(tuple(one) if isinstance(one, list) else one for one in arguments):
        missing = each != each
        if missing is True:
            return nan
        if missing is not False and missing.any():
            import numpy

            value = numpy.where(missing, nan, value)
    return value
