"""The formula: one small pure function that can be computed, shown, differentiated and replayed.

Given floats or arrays a formula returns plain ones; given figures it returns a figure. That is all
there is to recording. When its module is imported it is run once on symbols, which gives the
expression that every working is made from.
"""

from __future__ import annotations

import inspect
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from math import isfinite, nan
from types import CellType, CodeType, FunctionType, ModuleType
from typing import TYPE_CHECKING, Any, Generic, ParamSpec, TypeVar, get_args, get_origin, get_type_hints

from heatledger.ledger.dimensions import Dimension, dimension_of
from heatledger.ledger.figures import Figure, LedgerError, flat, make
from heatledger.ledger.sources import Citation
from heatledger.ledger.symbols import FormulaError, Node, PartsNode, as_node, evaluate, input_node, walk

P = ParamSpec("P")
Kind = TypeVar("Kind")


if TYPE_CHECKING:
    Parts = Iterable
else:

    class Parts(Generic[Kind]):
        """Annotation of a parameter that takes many figures of one dimension: ``parts: Parts[HeatRate]``."""


WORDS = {
    "u_value": "U-value",
    "r_value": "R-value",
    "f_factor": "F-factor",
}
"""Words of parameter names that are not the name with spaces."""


def words_of(name: str) -> str:
    """What a parameter, field or id is called in a working."""
    return WORDS.get(name, name.replace("_", " "))


@dataclass(frozen=True)
class Parameter:
    """One input of a formula."""

    name: str
    dimension: Dimension
    many: bool

    @property
    def words(self) -> str:
        """What the working calls it."""
        return words_of(self.name)


@dataclass(frozen=True, eq=False)
class ByHand:
    """The trade's short form of a formula, and what it neglects."""

    formula: Formula
    neglects: str


@dataclass(frozen=True, eq=False)
class Formula:
    """What the ledger knows about one formula.

    ``body`` is the plain function on floats and arrays; ``expression`` what it became on symbols.
    ``valid`` gives, by parameter, the SI range the formula holds in.
    """

    name: str
    title: str
    body: Callable[..., Any]
    on_symbols: Callable[..., Any]
    parameters: tuple[Parameter, ...]
    dimension: Dimension
    expression: Node
    citation: Citation
    valid: Mapping[str, tuple[float, float]]
    by_hand: ByHand | None
    doc: str
    module: str

    @property
    def plain_line(self) -> str:
        """First sentence of the docstring: what the result means."""
        return self.doc.strip().splitlines()[0]


FORMULAS: dict[str, Formula] = {}
"""Every formula that has been imported, by name."""


def formula(
    citation: Citation,
    *,
    title: str = "",
    valid: Mapping[str, tuple[float, float]] | None = None,
    by_hand: tuple[Callable[..., Any], str] | None = None,
) -> Callable[[Callable[P, float]], Callable[P, Figure]]:
    """Make a function a formula.

    ``citation``: its source. ``title``: what its result is called, when not the function's name.
    ``valid``: SI ranges by parameter; leaving one is a finding. ``by_hand``: a formula with the trade's
    short form on some of the same parameters, and words on what it neglects.

    Raises ``FormulaError`` at import for anything that could not be shown.
    """

    def decorate(function: Callable[P, float]) -> Callable[P, Figure]:
        made = _read(function, citation, title, valid or {}, by_hand)
        wrapper = _wrapper(made)
        wrapper.__doc__, wrapper.__module__ = function.__doc__, function.__module__
        wrapper.__wrapped__ = function
        wrapper.formula = made
        FORMULAS[made.name] = made
        return wrapper  # type: ignore[no-any-return]

    return decorate


def formula_of(function: Callable[..., Any]) -> Formula:
    """The formula behind a decorated function."""
    found = getattr(function, "formula", None)
    if not isinstance(found, Formula):
        raise LedgerError(f"{function!r} is not a formula")
    return found


def _read(
    function: Callable[..., Any],
    citation: Citation,
    title: str,
    valid: Mapping[str, tuple[float, float]],
    by_hand: tuple[Callable[..., Any], str] | None,
) -> Formula:
    name = function.__name__
    try:
        parameters, dimension = _signature(function)
        body = _on_floats(function)
        symbols = [
            PartsNode(each.name, each.dimension) if each.many else input_node(each.name, each.dimension)
            for each in parameters
        ]
        expression = as_node(function(*symbols))
        if expression.exponents != dimension.exponents or expression.absolute != dimension.absolute:
            raise FormulaError(f"its expression is not a {dimension}: check the units of its terms")
    except FormulaError as fault:
        raise FormulaError(f"formula {name}: {fault}") from None
    except TypeError as fault:
        raise FormulaError(f"formula {name} cannot be shown: {fault}") from None
    hand = ByHand(formula_of(by_hand[0]), by_hand[1]) if by_hand else None
    return Formula(
        name, title or words_of(name).capitalize(), body, function, parameters, dimension, expression,
        citation, dict(valid), hand, function.__doc__ or "", function.__module__,
    )  # fmt: skip


def _signature(function: Callable[..., Any]) -> tuple[tuple[Parameter, ...], Dimension]:
    hints = get_type_hints(function, include_extras=True)
    parameters = []
    for name in inspect.signature(function).parameters:
        hint = hints.get(name)
        many = get_origin(hint) is Parts
        dimension = dimension_of(get_args(hint)[0] if many else hint)
        if dimension is None:
            raise FormulaError(f"parameter {name!r} has no dimension in its annotation")
        parameters.append(Parameter(name, dimension, many))
    result = dimension_of(hints.get("return"))
    if result is None:
        raise FormulaError("its result has no dimension in its annotation")
    return tuple(parameters), result


def _on_floats(function: Callable[..., Any]) -> Callable[..., Any]:
    """The same code with each constant it names replaced by its SI float, for speed."""
    assert isinstance(function, FunctionType)
    names = dict(function.__globals__)
    used = _names_in(function.__code__)
    for name in used:
        if isinstance(names.get(name), ModuleType) and any(isinstance(names[name].__dict__.get(each), Node) for each in used):
            raise FormulaError(f"a constant of module {name} is used: import it by its own name")
        if isinstance(names.get(name), Node):
            names[name] = evaluate(names[name], {})
    cells = function.__closure__ and tuple(
        CellType(evaluate(each.cell_contents, {})) if isinstance(each.cell_contents, Node) else each
        for each in function.__closure__
    )
    return FunctionType(function.__code__, names, function.__name__, function.__defaults__, cells)


def _names_in(code: CodeType) -> set[str]:
    """Names a function uses, those of the branches written inside it too."""
    found = set(code.co_names)
    for each in code.co_consts:
        if isinstance(each, CodeType):
            found |= _names_in(each)
    return found


def _wrapper(made: Formula) -> Any:
    """A function with the formula's own signature that checks, computes and records.

    It is written out for each formula, because this is what every number of a design costs.
    ``x - x`` is zero for every finite number.
    """
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
    lines += ["figure.dimension = dimension", "figure.origin = made", f"figure.inputs = {all_inputs}", "return figure"]
    code = f"def {made.name}({', '.join(names)}):\n" + "".join(f"    {each}\n" for each in lines)
    space: dict[str, Any] = {
        "Figure": Figure, "body": made.body, "made": made, "nan": nan,
        "dimension": made.dimension, "slow": _slow, **{f"d_{each.name}": each.dimension for each in made.parameters},
    }  # fmt: skip
    exec(compile(code, f"<formula {made.name}>", "exec"), space)
    return space[made.name]


_MAY_FAIL = {"div", "power", "log", "exp", "sqrt", "where", "read_between", "pow"}
_MAY_HIDE = {"power", "where", "read_between", "pow 0"}
"""Operations whose result may be a number although an input is missing."""


def _guarded(call: str, ops: set[str]) -> list[str]:
    """Lines that set ``value``; to NaN when the arithmetic has no answer."""
    if not ops & _MAY_FAIL:
        return [f"value = {call}"]
    lines = ["try:", f"    value = {call}", "except (ZeroDivisionError, ValueError, OverflowError):", "    value = nan"]
    return [*lines, "if value.__class__ is complex:", "    value = nan"] if "power" in ops else lines


def _ops(expression: Node) -> set[str]:
    found = {each.op for each in walk(expression)}
    return found | {"pow 0" for each in walk(expression) if each.op == "pow" and each.detail == 0}


def _tuple(names: Iterable[str]) -> str:
    return "".join(f"{each}, " for each in names)


def _safe(made: Formula, values: tuple[Any, ...]) -> float:
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
    return make(_safe(made, values), made.dimension, made, arguments)
