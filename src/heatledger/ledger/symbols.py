"""The expression a formula turns into when it is run on symbols.

Every node carries its dimension, so a formula that adds feet to square feet is refused when its
module is imported. What could not be shown as hand arithmetic is refused there too.
"""

from __future__ import annotations

import math
from fractions import Fraction
from typing import TYPE_CHECKING, Any, NoReturn, cast

from heatledger.ledger.dimensions import (
    ABSOLUTE_TEMPERATURE,
    NONE,
    TEMPERATURE_DIFFERENCE,
    Dimension,
    Exponents,
)
from heatledger.ledger.figures import LedgerError
from heatledger.ledger.sources import Citation
from heatledger.ledger.units import ATOMS, UNITS, Unit, parsed, unit_of

if TYPE_CHECKING:
    from heatledger.ledger.figures import Figure

LARGEST_BARE_NUMBER = 12
"""Whole numbers up to this stand bare in a formula; any other number is a ``const``."""


class FormulaError(LedgerError):
    """A formula that could not be shown, found when it was imported."""


class Node:
    """One node of an expression: ``op`` on ``args``, with exponents of its dimension.

    ``absolute`` is true for a temperature on its scale. ``detail`` is what an op needs beside its
    arguments: the name of an input, the value of a number, the exponent of a power, a comparison.
    ``kind`` is the dimension of an input, and of sums of inputs of one kind; None where only the
    exponents are known.
    """

    __slots__ = ("absolute", "args", "detail", "exponents", "kind", "op")

    def __init__(
        self,
        op: str,
        args: tuple[Node, ...],
        exponents: Exponents,
        absolute: bool = False,
        detail: Any = None,
        kind: Dimension | None = None,
    ) -> None:
        self.op, self.args, self.exponents = op, args, exponents
        self.absolute, self.detail, self.kind = absolute, detail, kind

    def __add__(self, other: object) -> Node:
        return _sum("add", self, other)

    def __radd__(self, other: object) -> Node:
        return _sum("add", as_node(other), self)

    def __sub__(self, other: object) -> Node:
        return _sum("sub", self, other)

    def __rsub__(self, other: object) -> Node:
        return _sum("sub", as_node(other), self)

    def __mul__(self, other: object) -> Node:
        return _product("mul", self, other)

    def __rmul__(self, other: object) -> Node:
        return _product("mul", as_node(other), self)

    def __truediv__(self, other: object) -> Node:
        return _product("div", self, other)

    def __rtruediv__(self, other: object) -> Node:
        return _product("div", as_node(other), self)

    def __neg__(self) -> Node:
        if self.absolute:
            raise FormulaError("a temperature on its scale has no negative")
        return Node("neg", (self,), self.exponents, kind=self.kind)

    def __pow__(self, power: object) -> Node:
        return _power(self, power)

    def __rpow__(self, base: object) -> NoReturn:
        raise FormulaError("a number raised to a symbol cannot be shown; write exp(...)")

    def _compare(self, sign: str, other: object) -> Node:
        right = as_node(other)
        if self.exponents != right.exponents or self.absolute != right.absolute:
            raise FormulaError(
                f"a comparison of unlike quantities: {describe(self)} {sign} {describe(right)}"
            )
        if isinstance(self, Const) and not isinstance(right, Const):
            # Python asks the constant first, as its class is the narrower one; the test reads as written.
            return Node("compare", (right, self), NONE, detail=_TURNED[sign])
        return Node("compare", (self, right), NONE, detail=sign)

    def __lt__(self, other: object) -> Node:
        return self._compare("<", other)

    def __le__(self, other: object) -> Node:
        return self._compare("<=", other)

    def __gt__(self, other: object) -> Node:
        return self._compare(">", other)

    def __ge__(self, other: object) -> Node:
        return self._compare(">=", other)

    def __eq__(self, other: object) -> NoReturn:
        raise FormulaError("== and != on values hardly ever hold: write where(test, ...) with <, <=, > or >=")

    __ne__ = __eq__
    __hash__ = object.__hash__

    def __bool__(self) -> NoReturn:
        raise FormulaError("'if', 'and', 'or' on values cannot be shown: write where(test, then, otherwise)")

    def __float__(self) -> float:
        if any(each.op == "input" for each in walk(self)):
            raise FormulaError("math functions cannot be shown: use the ledger's own sqrt, log, exp ...")
        from heatledger.ledger.evaluating import value_of

        return float(value_of(self, {}))

    def __abs__(self) -> NoReturn:
        raise FormulaError("abs() cannot be shown: write larger(x, -x)")

    def __iter__(self) -> NoReturn:
        raise FormulaError("parts are used only by total(parts)")


_TURNED = {"<": ">", "<=": ">=", ">": "<", ">=": "<="}


class Const(Node):
    """A number with a unit and a source, at module level; its products keep both."""

    __slots__ = ("citation", "name", "unit", "value")

    def __init__(self, value: float, unit: Unit, citation: Citation, name: str) -> None:
        super().__init__("const", (), unit.exponents)
        self.value, self.unit, self.citation, self.name = value, unit, citation, name

    @property
    def si(self) -> float:
        """The value in SI units."""
        return self.unit.to_si(self.value)


class PartsNode(Node):
    """The symbol of a parameter that takes many parts; only ``total`` may use it."""

    __slots__ = ()

    def __init__(self, name: str, dimension: Dimension) -> None:
        super().__init__("parts", (), dimension.exponents, dimension.absolute, name, _named(dimension))

    def _compare(self, sign: str, other: object) -> NoReturn:
        raise FormulaError("parts are used only by total(parts)")


def const(value: float, unit: str, citation: Citation, name: str = "") -> Figure:
    """A constant of a formula: ``value`` in ``unit`` of the table, its source, and what it is called.

    It is a symbol (``Const``); the type checker takes it for a figure, as it does all that stands in a
    formula.
    """
    return cast("Figure", Const(value, UNITS.get(unit) or _unit_in_atoms(unit), citation, name))


def _unit_in_atoms(text: str) -> Unit:
    powers = parsed(text)
    unknown = [atom for atom, _ in powers if atom not in ATOMS]
    if unknown:
        raise FormulaError(f"a constant in {text!r}: no unit called {unknown[0]!r} in the table")
    return unit_of(powers)


def input_node(name: str, dimension: Dimension) -> Node:
    """The symbol of a parameter."""
    return Node("input", (), dimension.exponents, dimension.absolute, name, _named(dimension))


def _named(dimension: Dimension) -> Dimension | None:
    """The kind of an input; none for a plain number, which may stand for any."""
    return None if dimension.exponents == NONE or dimension.absolute else dimension


def as_node(value: object) -> Node:
    """A node for ``value``: itself, a small whole number, or pi; anything else is refused."""
    if isinstance(value, PartsNode):
        raise FormulaError("parts are used only by total(parts)")
    if isinstance(value, Node):
        return value
    if isinstance(value, bool) or not isinstance(value, int | float):
        raise FormulaError(f"{value!r} cannot stand in a formula")
    if value == math.pi:
        return Node("number", (), NONE, detail=math.pi)
    if value == int(value) and abs(value) <= LARGEST_BARE_NUMBER:
        return Node("number", (), NONE, detail=int(value))
    raise FormulaError(f"the number {value!r} hides a unit or a source: make it a const at module level")


def describe(node: Node) -> str:
    """Words for a node in an error message."""
    if node.op in ("input", "parts"):
        return str(node.detail)
    if isinstance(node, Const):
        return f"{node.value:g} {node.unit.text}"
    if node.op == "number":
        return f"{node.detail:g}"
    signs = {"add": " + ", "sub": " - ", "mul": " * ", "div": " / "}
    inner = [describe(each) for each in node.args]
    return f"({signs[node.op].join(inner)})" if node.op in signs else f"{node.op}({', '.join(inner)})"


def _sum(op: str, left: Node, other: object) -> Node:
    right = as_node(other)
    if isinstance(left, PartsNode):
        raise FormulaError("parts are used only by total(parts)")
    if left.exponents != right.exponents:
        raise FormulaError(f"unlike quantities are added: {describe(left)} and {describe(right)}")
    if op == "add" and left.absolute and right.absolute:
        raise FormulaError("two temperatures are not added: use mean(...) or a difference")
    if op == "sub" and right.absolute and not left.absolute:
        raise FormulaError("a temperature on its scale is not taken from a difference")
    absolute = (left.absolute or right.absolute) if op == "add" else (left.absolute and not right.absolute)
    return Node(op, (left, right), left.exponents, absolute, kind=_kind_of_sum(op, left, right))


def _kind_of_sum(op: str, left: Node, right: Node) -> Dimension | None:
    """The kind of a sum or difference; refused when the terms are of two kinds the trade keeps apart."""
    if left.absolute and right.absolute:
        return TEMPERATURE_DIFFERENCE
    kinds = (left.kind, right.kind)
    if kinds[0] is None or kinds[1] is None:
        return None
    if kinds[0] is kinds[1]:
        counted = op == "sub" and kinds[0] is ABSOLUTE_TEMPERATURE
        return TEMPERATURE_DIFFERENCE if counted else kinds[0]
    turned = op == "add" and kinds == (TEMPERATURE_DIFFERENCE, ABSOLUTE_TEMPERATURE)
    if kinds == (ABSOLUTE_TEMPERATURE, TEMPERATURE_DIFFERENCE) or turned:
        return ABSOLUTE_TEMPERATURE
    raise FormulaError(
        f"two kinds that are kept apart are added: {describe(left)} is a {kinds[0]}, "
        f"{describe(right)} a {kinds[1]}"
    )


def _product(op: str, left: Node, other: object) -> Node:
    right = as_node(other)
    if isinstance(left, PartsNode):
        raise FormulaError("parts are used only by total(parts)")
    for each in (left, right):
        if each.absolute:
            raise FormulaError(
                f"{describe(each)} is a temperature on its scale: take a difference, or absolute(...) of it"
            )
    sign = 1 if op == "mul" else -1
    exponents = tuple(a + sign * b for a, b in zip(left.exponents, right.exponents, strict=True))
    return Node(op, (left, right), exponents)  # type: ignore[arg-type]


def _power(base: Node, power: object) -> Node:
    if base.absolute:
        raise FormulaError(f"{describe(base)} is a temperature on its scale: raise absolute(...) of it")
    if isinstance(power, int) and not isinstance(power, bool) and abs(power) <= LARGEST_BARE_NUMBER:
        exponents = tuple(each * power for each in base.exponents)
        return Node("pow", (base,), exponents, detail=power)  # type: ignore[arg-type]
    exponent = as_node(power)
    if exponent.exponents != NONE:
        raise FormulaError("an exponent must be a plain number")
    if base.exponents != NONE:
        raise FormulaError(
            f"a broken power of {describe(base)}, which has a unit: divide it by a const in the unit meant"
        )
    return Node("power", (base, exponent), NONE)


def walk(node: Node) -> list[Node]:
    """The node and all below it."""
    found = [node]
    for each in node.args:
        found += walk(each)
    return found


def half(exponents: Exponents) -> Exponents:
    """Exponents of a square root."""
    return tuple(each * Fraction(1, 2) for each in exponents)  # type: ignore[return-value]
