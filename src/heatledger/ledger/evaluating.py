"""What an expression comes to for given values of its inputs, and whether a body agrees with it."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from functools import cache
from operator import add, ge, gt, itemgetter, le, lt, mul, neg, sub, truediv
from typing import TYPE_CHECKING, Any

from heatledger.ledger import functions
from heatledger.ledger.dimensions import COUNT, RATIO, TEMPERATURE, TEMPERATURE_DIFFERENCE, Dimension
from heatledger.ledger.symbols import Const, FormulaError, Node

if TYPE_CHECKING:
    from heatledger.ledger.formulas import Parameter

_ON_VALUES: dict[str, Callable[..., Any]] = {
    "add": add, "sub": sub, "mul": mul, "div": truediv, "neg": neg, "power": pow,
    **{
        name: getattr(functions, name)
        for name in ("larger", "smaller", "mean", "read_between", "log", "exp", "sqrt", "absolute", "total")
    },
}  # fmt: skip
_SIGNS: dict[str, Callable[[Any, Any], Any]] = {"<": lt, "<=": le, ">": gt, ">=": ge}


def value_of(node: Node, values: Mapping[str, Any]) -> Any:
    """SI value of an expression for the SI values of its inputs; only the branch taken is worked out."""
    return evaluator(node)(values)


def evaluator(node: Node) -> Callable[[Mapping[str, Any]], Any]:
    """The same for many sets of values: a function of the values by the names of the inputs."""
    if node.op in ("input", "parts"):
        return itemgetter(node.detail)
    if isinstance(node, Const) or node.op == "number":
        fixed = node.si if isinstance(node, Const) else float(node.detail)
        return lambda values: fixed
    inner = [evaluator(each) for each in node.args]
    one, last = inner[0], inner[-1]
    if node.op == "where":
        then = inner[1]
        return lambda values: then(values) if one(values) else last(values)
    if node.op == "pow":
        power = node.detail
        return lambda values: one(values) ** power
    do: Callable[..., Any] = _SIGNS[node.detail] if node.op == "compare" else _ON_VALUES[node.op]
    if len(inner) == 1:
        return lambda values: do(one(values))
    if len(inner) == 2:
        return lambda values: do(one(values), last(values))
    return lambda values: do(*(each(values) for each in inner))


POINTS = 24
CLOSE = 1e-9
_STEPS = (0.6180, 0.4142, 0.7321, 0.2361, 0.6458, 0.3166, 0.6056, 0.1231, 0.3589, 0.7958)
"""What moves each input from one point to the next, over its range: parts of roots, so that none repeat."""
_USUAL: dict[Dimension, tuple[float, float]] = {
    TEMPERATURE: (230.0, 360.0), TEMPERATURE_DIFFERENCE: (0.1, 60.0), RATIO: (0.02, 4.0), COUNT: (1.0, 9.0),
}  # fmt: skip
_WIDE = (1e-3, 1e4)
_NO_VALUE = (ZeroDivisionError, ValueError, OverflowError)


def must_agree(
    body: Callable[..., Any],
    expression: Node,
    parameters: Sequence[Parameter],
    valid: Mapping[str, tuple[float, float]],
) -> None:
    """Raise ``FormulaError`` when the body on plain numbers and the expression part ways.

    They do when a body looks at what it is given (``isinstance``), or reads something that has changed.
    Points where either has no value tell nothing and are left out. A body that parts ways only for
    values that are not among the points, or that reads something that changes later, is not found out.
    """
    shown = evaluator(expression)
    names = [each.name for each in parameters]
    columns = [
        _column(i, each.dimension, each.many, valid.get(each.name)) for i, each in enumerate(parameters)
    ]
    for point in zip(*columns, strict=True):
        try:
            said, does = shown(dict(zip(names, point, strict=True))), body(*point)
            off = said - does
        except _NO_VALUE:
            continue
        except Exception as fault:
            raise FormulaError(f"it fails on plain numbers: {fault}") from None
        if not isinstance(does, int | float | complex):
            raise FormulaError(f"on plain numbers it gives {type(does).__name__}, not a number")
        if off and not off != off and abs(off) > CLOSE * max(abs(said), abs(does)):
            raise FormulaError("on plain numbers it computes something else than its working would show")


@cache
def _column(i: int, dimension: Dimension, many: bool, valid: tuple[float, float] | None) -> list[Any]:
    """Values of the input at place ``i``: half of them over its usual range, half over a wide one."""
    low, high = valid or _USUAL.get(dimension, _WIDE)
    usual = (max(low, 1e-3 * high), high) if high > 0 else _WIDE
    wide = _USUAL[TEMPERATURE] if dimension.absolute else _WIDE
    column: list[Any] = []
    for point in range(POINTS):
        low, high = (usual, wide)[point % 2]
        along = (point + 1) * _STEPS[i % len(_STEPS)] * (1 + i // len(_STEPS) / 7) % 1.0
        value = low * (high / low) ** along
        column.append([value * (n + 1) for n in range(point % 4)] if many else value)
    return column
