"""The functions a formula may use; each takes floats, arrays or symbols.

On floats only the branch taken is worked out; on arrays branches are worked out under masks; on
symbols a node is built that the working can show.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable
from typing import TYPE_CHECKING, Any, TypeVar, cast, overload

from heatledger.ledger.dimensions import ABSOLUTE_TEMPERATURE, KELVIN, NONE, Dimension
from heatledger.ledger.symbols import FormulaError, Node, PartsNode, as_node, describe, half

if TYPE_CHECKING:
    from heatledger.ledger.figures import Figure

pi = cast("Figure", Node("number", (), NONE, detail=math.pi))
"""3.14159...; a symbol, so that ``2 * pi`` is shown as it is written. Formulas on floats get its float."""

Number = TypeVar("Number", bound=Any)


def _same_kind(what: str, *nodes: Node) -> Dimension | None:
    """The kind that values of one sort have in common, when it is known of all of them."""
    first = nodes[0]
    for each in nodes[1:]:
        alike = each.exponents == first.exponents and each.absolute == first.absolute
        if not alike or (each.kind and first.kind and each.kind is not first.kind):
            raise FormulaError(f"{what} of unlike quantities: {describe(first)} and {describe(each)}")
    return first.kind if all(each.kind for each in nodes) else None


def _is_array(value: object) -> bool:
    return hasattr(value, "__array__")


@overload
def larger(a: Figure, b: Figure) -> Figure: ...
@overload
def larger(a: Any, b: Any) -> Any: ...
def larger(a: Any, b: Any) -> Any:
    """The larger of two values of one kind; no value when either has none."""
    if isinstance(a, Node) or isinstance(b, Node):
        return _either("larger", as_node(a), as_node(b))
    if _is_array(a) or _is_array(b):
        import numpy

        return numpy.maximum(a, b)
    return a if a >= b or a != a else b


@overload
def smaller(a: Figure, b: Figure) -> Figure: ...
@overload
def smaller(a: Any, b: Any) -> Any: ...
def smaller(a: Any, b: Any) -> Any:
    """The smaller of two values of one kind; no value when either has none."""
    if isinstance(a, Node) or isinstance(b, Node):
        return _either("smaller", as_node(a), as_node(b))
    if _is_array(a) or _is_array(b):
        import numpy

        return numpy.minimum(a, b)
    return a if a <= b or a != a else b


def _either(op: str, a: Node, b: Node) -> Node:
    kind = _same_kind(op, a, b)
    return Node(op, (a, b), a.exponents, a.absolute, kind=kind)


@overload
def where(
    test: bool, then: Figure | Callable[[], Figure], otherwise: Figure | Callable[[], Figure]
) -> Figure: ...
@overload
def where(test: Any, then: Any, otherwise: Any) -> Any: ...
def where(test: Any, then: Any, otherwise: Any) -> Any:
    """``then`` if the test holds, else ``otherwise``; give functions where a branch may fail."""
    if isinstance(test, Node):
        if test.op != "compare":
            raise FormulaError("where() takes a comparison first")
        branches = [as_node(each() if callable(each) else each) for each in (then, otherwise)]
        kind = _same_kind("where()", *branches)
        return Node("where", (test, *branches), branches[0].exponents, branches[0].absolute, kind=kind)
    if _is_array(test):
        return _where_arrays(test, then, otherwise)
    chosen = then if test else otherwise
    return chosen() if callable(chosen) else chosen


def _where_arrays(test: Any, then: Any, otherwise: Any) -> Any:
    import numpy

    with numpy.errstate(all="ignore"):
        yes, no = (each() if callable(each) else each for each in (then, otherwise))
    return numpy.where(test, yes, no)


@overload
def mean(a: Figure, b: Figure) -> Figure: ...
@overload
def mean(a: Any, b: Any) -> Any: ...
def mean(a: Any, b: Any) -> Any:
    """Half of the sum of two values of one kind; the one way to average temperatures."""
    if isinstance(a, Node) or isinstance(b, Node):
        a, b = as_node(a), as_node(b)
        kind = _same_kind("mean()", a, b)
        return Node("mean", (a, b), a.exponents, a.absolute, kind=kind)
    return (a + b) / 2


@overload
def read_between(x: Figure, x0: Figure, x1: Figure, y0: Figure, y1: Figure) -> Figure: ...
@overload
def read_between(x: Any, x0: Any, x1: Any, y0: Any, y1: Any) -> Any: ...
def read_between(x: Any, x0: Any, x1: Any, y0: Any, y1: Any) -> Any:
    """The value at ``x`` on the straight line from (x0, y0) to (x1, y1); refused outside them."""
    if any(isinstance(each, Node) for each in (x, x0, x1, y0, y1)):
        nodes = [as_node(each) for each in (x, x0, x1, y0, y1)]
        _same_kind("read_between()", *nodes[:3])
        kind = _same_kind("read_between()", *nodes[3:])
        return Node("read_between", tuple(nodes), nodes[3].exponents, nodes[3].absolute, kind=kind)
    if not any(_is_array(each) for each in (x, x0, x1)) and not min(x0, x1) <= x <= max(x0, x1):
        raise ValueError("outside the two rows that it is read between")
    value = y0 + (y1 - y0) * ((x - x0) / (x1 - x0))
    if _is_array(value):
        import numpy

        outside = (x < numpy.minimum(x0, x1)) | (x > numpy.maximum(x0, x1))
        return numpy.where(outside, math.nan, value)
    return value


def _plain(name: str, value: Node) -> Node:
    if value.exponents != NONE:
        raise FormulaError(
            f"{name}() takes a plain number, not {describe(value)}: divide it by a const first"
        )
    return Node(name, (value,), NONE)


@overload
def log(value: Figure) -> Figure: ...
@overload
def log(value: Any) -> Any: ...
def log(value: Any) -> Any:
    """Natural logarithm of a plain number."""
    if isinstance(value, Node):
        return _plain("log", value)
    if _is_array(value):
        import numpy

        return numpy.log(value)
    return math.log(value)


@overload
def exp(value: Figure) -> Figure: ...
@overload
def exp(value: Any) -> Any: ...
def exp(value: Any) -> Any:
    """e raised to a plain number."""
    if isinstance(value, Node):
        return _plain("exp", value)
    if _is_array(value):
        import numpy

        return numpy.exp(value)
    return math.exp(value)


@overload
def sqrt(value: Figure) -> Figure: ...
@overload
def sqrt(value: Any) -> Any: ...
def sqrt(value: Any) -> Any:
    """Square root."""
    if isinstance(value, Node):
        if value.absolute:
            raise FormulaError("a root of a temperature on its scale: take absolute(...) of it")
        return Node("sqrt", (value,), half(value.exponents))
    if _is_array(value):
        import numpy

        return numpy.sqrt(value)
    return math.sqrt(value)


@overload
def absolute(temperature: Figure) -> Figure: ...
@overload
def absolute(temperature: Any) -> Any: ...
def absolute(temperature: Any) -> Any:
    """A temperature counted from absolute zero, so that it may be multiplied or raised to a power."""
    if isinstance(temperature, Node):
        if not temperature.absolute or temperature.exponents != KELVIN:
            raise FormulaError("absolute() takes a temperature on its scale")
        return Node("absolute", (temperature,), KELVIN, kind=ABSOLUTE_TEMPERATURE)
    return temperature


@overload
def total(parts: Iterable[Figure]) -> Figure: ...
@overload
def total(parts: Any) -> Any: ...
def total(parts: Any) -> Any:
    """The sum of all parts; no parts give 0. Added one after the other, so that it can be replayed."""
    if isinstance(parts, Node):
        if not isinstance(parts, PartsNode):
            raise FormulaError("total() takes a parameter of many parts")
        return Node("total", (parts,), parts.exponents, kind=parts.kind)
    result: Any = 0.0
    for each in parts:
        result = result + each
    return result
