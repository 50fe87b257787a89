"""A formula's expression with the reader's numbers and units in it.

Units enter term by term, as a person would write them: the terms of a sum go to the unit of the
answer, what stands under a logarithm or a broken power is made a plain number, a temperature that
is multiplied shows what is added to reach absolute zero, and a unit factor that is left over
becomes a line of its own. Working out the tree gives exactly what a pencil gets.
"""

from __future__ import annotations

import math
from fractions import Fraction
from typing import Any

from heatledger.ledger.dimensions import NONE, TEMPERATURE, TEMPERATURE_DIFFERENCE, Dimension
from heatledger.ledger.evaluating import value_of
from heatledger.ledger.figures import Figure, Leaf
from heatledger.ledger.formulas import Formula
from heatledger.ledger.pencil import input_places
from heatledger.ledger.presets import Preset
from heatledger.ledger.symbols import Const, Node
from heatledger.ledger.terms import OPPOSITE, Term, decimals, value
from heatledger.ledger.units import (
    ATOMS,
    FAHRENHEIT_ZERO_R,
    FREEZING_K,
    NO_UNIT,
    UNITS,
    Unit,
    combined,
    parsed,
    unit_of,
)

ONE = Fraction(1)


class Display:
    """Builds the displayed tree of one figure for one reader."""

    def __init__(self, formula: Formula, inputs: tuple[Any, ...], preset: Preset) -> None:
        self.preset = preset
        self.formula = formula
        self.given = dict(zip((each.name for each in formula.parameters), inputs, strict=True))
        self.dimensions = {each.name: each.dimension for each in formula.parameters}
        self.floats = {
            name: [float(one) for one in each] if isinstance(each, tuple | list) else float(each)
            for name, each in self.given.items()
        }
        self.kept: dict[int, Term] = {}
        self.words = {each.name: each.words for each in formula.parameters}

    def tree(self) -> Term:
        """The whole expression, its answer in the reader's unit of the formula's dimension."""
        return self.build(self.formula.expression, self.preset.shown(self.formula.dimension).unit)

    def build(self, node: Node, want: Unit | None = None) -> Term:
        """The displayed form of a node, in ``want`` when that is given."""
        if node.op in ("mul", "div"):
            return self.product(node, want)
        if node.op in ("add", "sub"):
            return self.sum(node, want)
        made = getattr(self, f"build_{node.op}")(node, want)
        return made if want is None else self.turned(made, want)

    def turned(self, term: Term, want: Unit) -> Term:
        """``term`` with the factor that takes it to ``want``, if it is not there already."""
        factor = self.factor(term.unit, want)
        if factor is None:
            return term
        op, leaf = factor
        return Term(op, (term, leaf), want)

    @staticmethod
    def factor(unit: Unit, want: Unit) -> tuple[str, Term] | None:
        """The line that turns ``unit`` into ``want``: × or ÷ and how many there are in one."""
        ratio = unit.factor / want.factor
        if abs(ratio - 1) < 1e-12:
            return None
        ratio = float(f"{ratio:.14g}")
        if ratio >= 1 or (1 / ratio) != round(1 / ratio, 6):
            text = one_kelvin(combined([(want, ONE), (unit, -ONE)]))
            return "mul", value(ratio, text, f"to {want.text}" if want.powers else "to a plain number", None)
        text = one_kelvin(combined([(unit, ONE), (want, -ONE)]))
        inverse = float(f"{1 / ratio:.14g}")
        return "div", value(inverse, text, f"to {want.text}" if want.powers else "to a plain number", None)

    # --- leaves -----------------------------------------------------------------------------------

    def build_input(self, node: Node, want: Unit | None) -> Term:
        """An input of the formula in the reader's unit for its dimension."""
        dimension = self.dimensions[node.detail]
        return self.shown(self.given[node.detail], dimension, self.words[node.detail])

    def shown(self, figure: Figure, dimension: Dimension, words: str) -> Term:
        """A figure as a printed number: as typed when it was typed in this unit; one number a figure."""
        found = self.kept.get(id(figure))
        if found is None:
            found = self.kept[id(figure)] = self.fresh(figure, dimension, words)
        return found

    def fresh(self, figure: Figure, dimension: Dimension, words: str) -> Term:
        """The printed number of a figure."""
        shown = self.preset.shown(dimension)
        origin = figure.origin
        exact = shown.unit.from_si(float(figure), dimension.absolute)
        if isinstance(origin, Leaf) and origin.unit == shown.unit.text and origin.places is not None:
            return value(origin.typed_value, shown.unit, words, origin.places, figure=figure, typed=True)
        return value(exact, shown.unit, words, input_places(exact, shown.start(exact)), figure=figure)

    def build_const(self, node: Const, want: Unit | None) -> Term:
        """A constant in the unit of its source, or in this reader's atoms; printed the same each time."""
        found = self.kept.get(id(node))
        if found is None:
            found = self.kept[id(node)] = self.fresh_const(node)
        return found

    def fresh_const(self, node: Const) -> Term:
        """The printed number of a constant."""
        unit = self.readers_unit(node.unit)
        if unit is not node.unit:  # a constant of the other system: in the unit this reader knows, if any
            unit = self.preset.by_exponents.get(node.exponents, unit)
        words = node.name or "constant"
        if unit is node.unit:
            return value(node.value, unit, words, decimals(node.value), typed=True, detail=node.citation)
        return value(unit.from_si(node.si), unit, words, None, detail=node.citation)

    def readers_unit(self, unit: Unit) -> Unit:
        """A unit with the atoms of the other system replaced by this reader's; itself when there are none."""
        celsius = self.preset.shown(TEMPERATURE_DIFFERENCE).unit.text != "°F"
        powers: list[tuple[Unit, Fraction]] = []
        for atom, power in unit.powers:
            other = self.preset.atoms.get(atom, atom)
            if celsius and atom == "K":
                other = atom
            powers.append((Unit(other, parsed(other)), power))
        made = combined(powers)
        return unit if frozenset(made.powers) == frozenset(unit.powers) else made

    def build_number(self, node: Node, want: Unit | None) -> Term:
        """A small whole number, or pi."""
        if node.detail == math.pi:
            return value(math.pi, NO_UNIT, "pi", None, detail="pi")
        return value(float(node.detail), NO_UNIT, "", 0, typed=True)

    # --- arithmetic -------------------------------------------------------------------------------

    def sum(self, node: Node, want: Unit | None) -> Term:
        """A sum or difference: every term in one unit."""
        left, right = node.args
        if node.exponents == TEMPERATURE.exponents and (left.absolute or right.absolute):
            scale = self.preset.shown(TEMPERATURE).unit
            step = self.preset.shown(TEMPERATURE_DIFFERENCE).unit
            units = [scale if each.absolute else step for each in (left, right)]
            made = Term(
                node.op,
                tuple(self.build(each, unit) for each, unit in zip((left, right), units, strict=True)),
                scale if node.absolute else step,
            )
            return made if want is None or want.factor == made.unit.factor else self.turned(made, want)
        unit = want or self.common(left, right)
        return Term(node.op, (self.build(left, unit), self.build(right, unit)), unit)

    def common(self, *nodes: Node) -> Unit:
        """The unit that the terms of an inner sum are brought to: that of the first that has one."""
        built = [self.build(each) for each in nodes]
        first = next((each for each in built if each.unit.powers), built[0])
        return self.tidy(first.unit)

    def tidy(self, unit: Unit) -> Unit:
        """The unit itself, unless it mixes atoms of one kind (feet and inches) or is a bare ratio."""
        if unit.exponents == NONE:
            return NO_UNIT
        kinds = [ATOMS[atom][1] for atom, _ in unit.powers]
        if len(set(kinds)) == len(kinds):
            return unit
        return self.preset.by_exponents.get(unit.exponents) or self.in_base(unit)

    def in_base(self, unit: Unit) -> Unit:
        """A unit of the same dimension made of the reader's length, mass, hour or second, and degree."""
        inch_pound = "m" in self.preset.atoms
        names = ("ft", "lb", "s", "°F") if inch_pound else ("m", "kg", "s", "K")
        return unit_of(tuple((n, p) for n, p in zip(names, unit.exponents, strict=True) if p))

    def product(self, node: Node, want: Unit | None) -> Term:
        """A chain of × and ÷, flattened, with the unit factor that is left over as its last line."""
        chain: list[tuple[str, Term]] = []
        self.flatten(node, False, chain)
        unit = combined([(term.unit, ONE if op == "mul" else -ONE) for op, term in chain])
        goal = want if want is not None else self.tidy(unit)
        factor = self.factor(unit, goal)
        if factor:
            chain.append(factor)
        return Term("chain", tuple(term for _, term in chain), goal, detail=tuple(op for op, _ in chain))

    def flatten(self, node: Node, under: bool, chain: list[tuple[str, Term]]) -> None:
        """Add a node to a chain, opening products inside it."""
        if node.op in ("mul", "div"):
            self.flatten(node.args[0], under, chain)
            self.flatten(node.args[1], under != (node.op == "div"), chain)
        else:
            chain.append(("div" if under else "mul", self.build(node)))

    def build_neg(self, node: Node, want: Unit | None) -> Term:
        """A change of sign."""
        inner = self.build(node.args[0], want)
        return Term("neg", (inner,), inner.unit)

    def build_pow(self, node: Node, want: Unit | None) -> Term:
        """A whole power."""
        inner = self.build(node.args[0])
        return Term("pow", (inner,), combined([(inner.unit, Fraction(node.detail))]), detail=node.detail)

    def build_power(self, node: Node, want: Unit | None) -> Term:
        """A broken power of a plain number."""
        base, exponent = (self.build(each, NO_UNIT) for each in node.args)
        return Term("power", (base, exponent), NO_UNIT)

    def build_log(self, node: Node, want: Unit | None) -> Term:
        """A logarithm of a plain number."""
        return Term("log", (self.build(node.args[0], NO_UNIT),), NO_UNIT)

    def build_exp(self, node: Node, want: Unit | None) -> Term:
        """e to a plain number."""
        return Term("exp", (self.build(node.args[0], NO_UNIT),), NO_UNIT)

    def build_sqrt(self, node: Node, want: Unit | None) -> Term:
        """A root; what stands under it is brought to units that have one."""
        inner = self.build(node.args[0])
        if any((power / 2).denominator != 1 for _, power in inner.unit.powers):
            inner = self.build(node.args[0], self.in_base(inner.unit))
        root = combined([(inner.unit, Fraction(1, 2))])
        return Term("sqrt", (inner,), root)

    def build_absolute(self, node: Node, want: Unit | None) -> Term:
        """A temperature counted from absolute zero: its scale reading plus 459.67 or 273.15."""
        inner = self.build(node.args[0])
        fahrenheit = inner.unit.text == "°F"
        zero = value(
            FAHRENHEIT_ZERO_R if fahrenheit else FREEZING_K, UNITS["°F" if fahrenheit else "K"],
            "to absolute zero", 2, typed=True,
        )  # fmt: skip
        return Term("add", (inner, zero), UNITS["°R" if fahrenheit else "K"])

    # --- the ledger's own functions ----------------------------------------------------------------

    def build_mean(self, node: Node, want: Unit | None) -> Term:
        """Half of a sum."""
        unit = want or self.build(node.args[0]).unit
        both = Term("add", tuple(self.build(each, unit) for each in node.args), unit)
        return Term("chain", (both, value(2.0, NO_UNIT, "", 0, typed=True)), unit, detail=("mul", "div"))

    def either(self, node: Node, want: Unit | None) -> Term:
        """The larger or the smaller of two."""
        unit = want or self.build(node.args[0]).unit
        return Term(node.op, tuple(self.build(each, unit) for each in node.args), unit)

    build_larger = build_smaller = either

    def build_where(self, node: Node, want: Unit | None) -> Term:
        """A branch: the test, and only the side that was taken."""
        test = node.args[0]
        unit = self.common(*test.args)
        left, right = (self.build(each, unit) for each in test.args)
        holds = bool(value_of(test, self.floats))
        sign = test.detail if holds else OPPOSITE[test.detail]
        taken = self.build(node.args[1 if holds else 2], want)
        return Term("where", (left, right, taken), taken.unit, detail=sign)

    def build_read_between(self, node: Node, want: Unit | None) -> Term:
        """The straight line between two rows, written out."""
        x, x0, x1, y0, y1 = node.args
        unit = want or self.build(y0).unit
        rise, low = self.build(y1, unit), self.build(y0, unit)
        along, run = self.build(x - x0), self.build(x1 - x0)
        step = unit if not y0.absolute else self.preset.shown(TEMPERATURE_DIFFERENCE).unit
        part = Term("chain", (Term("sub", (rise, low), step), along, run), step, detail=("mul", "mul", "div"))
        return Term("add", (self.build(y0, unit), part), unit)

    def build_total(self, node: Node, want: Unit | None) -> Term:
        """A sum of many parts."""
        name = node.args[0].detail
        dimension = self.dimensions[name]
        unit = self.preset.shown(dimension).unit
        terms = tuple(self.shown(each, dimension, "") for each in self.given[name])
        return Term("total", terms, unit)


def one_kelvin(unit: Unit) -> Unit:
    """The same unit with °C taken as K where both are in it: one step is the other."""
    atoms = [atom for atom, _ in unit.powers]
    if "K" not in atoms or "°C" not in atoms:
        return unit
    return combined([(Unit(atom, ((atom.replace("°C", "K"), power),)), ONE) for atom, power in unit.powers])
