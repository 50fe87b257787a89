"""What could not be shown is refused when a formula is imported; what has no working, when it is used."""

from __future__ import annotations

import math
import pickle
from collections.abc import Callable
from fractions import Fraction
from typing import Any

import numpy
import pytest

from heatledger.ledger import dimensions as d
from heatledger.ledger.dimensions import Area, HeatRate, Length, Transmittance
from heatledger.ledger.figures import Figure, LedgerError, exceeds, make
from heatledger.ledger.formulas import formula, formula_of
from heatledger.ledger.functions import where
from heatledger.ledger.symbols import FormulaError, const
from tests.ledger import awkward
from tests.ledger.awkward import HERE
from tests.ledger.drawing import found
from tests.ledger.unshowable import REFUSED

TEN_FEET = const(10, "ft", HERE, "ten feet")


@pytest.mark.parametrize("function", REFUSED, ids=lambda each: each.__name__)
def test_refused_at_import(function: Callable[..., Any]) -> None:
    with pytest.raises(FormulaError, match=REFUSED[function]) as fault:
        formula(HERE)(function)
    assert function.__name__ in str(fault.value)


def test_a_constant_in_no_known_unit_is_refused() -> None:
    with pytest.raises(FormulaError, match="no unit called 'furlong'"):
        const(3, "furlong/day", HERE)


def test_a_short_form_that_is_no_formula_is_refused() -> None:
    def doubled(area: Area) -> Area:
        """Twice an area."""
        return 2 * area

    with pytest.raises(LedgerError, match="is not a formula"):
        formula(HERE, by_hand=(math.sqrt, "all"))(doubled)


@formula(HERE)
def strip(length: Length) -> Area:
    """A strip ten feet wide; its constant stands beside a branch."""
    return where(length > TEN_FEET, lambda: TEN_FEET * length, lambda: length * TEN_FEET)


def test_constants_inside_branches_are_numbers_on_floats() -> None:
    assert strip(4.0) == pytest.approx(4.0 * 3.048)
    assert type(formula_of(strip).body(2.0)) is float


HEAT, MORE, WARM = found(300.0, d.HEAT_RATE), found(400.0, d.HEAT_RATE), found(293.0, d.TEMPERATURE)
LEAKS: dict[str, Callable[[], Any]] = {
    "added": lambda: HEAT + MORE,
    "added to a number": lambda: 1.0 + HEAT,
    "summed": lambda: sum([HEAT, MORE]),
    "subtracted": lambda: HEAT - 1,
    "multiplied": lambda: 2 * HEAT,
    "divided": lambda: HEAT / MORE,
    "floor divided": lambda: HEAT // 2,
    "remainder": lambda: HEAT % 2,
    "both": lambda: divmod(HEAT, 2),
    "power": lambda: HEAT**2,
    "turned": lambda: -HEAT,
    "plus": lambda: +HEAT,
    "abs": lambda: abs(HEAT),
    "round": lambda: round(HEAT),
    "int": lambda: math.trunc(HEAT),
    "floor": lambda: math.floor(HEAT),
    "ceil": lambda: math.ceil(HEAT),
    "bool": lambda: bool(HEAT),
    "if": lambda: 1 if HEAT else 0,
    "or": lambda: HEAT or MORE,
    "less": lambda: HEAT < MORE,
    "more than a number": lambda: HEAT >= 3.0,
    "max": lambda: max(HEAT, MORE),
    "min": lambda: min([HEAT, MORE]),
    "sorted": lambda: sorted([HEAT, MORE]),
    "stored": lambda: pickle.dumps(HEAT),
    "array": lambda: numpy.array([1.0]) * HEAT,
    "whole number": lambda: int(HEAT),
    "written with places": lambda: f"{HEAT:.1f}",
    "written short": lambda: format(HEAT, "g"),
    "complex": lambda: complex(HEAT),
    "real part": lambda: HEAT.real,
    "imaginary part": lambda: HEAT.imag,
    "conjugate": lambda: HEAT.conjugate(),
    "ratio": lambda: HEAT.as_integer_ratio(),
    "fraction": lambda: Fraction(HEAT),
    "digits": lambda: HEAT.hex(),
    "from digits": lambda: Figure.fromhex("0x1p0"),
    "is whole": lambda: HEAT.is_integer(),
}


@pytest.mark.parametrize("leak", LEAKS)
def test_no_number_leaks_out(leak: str) -> None:
    with pytest.raises(LedgerError):
        LEAKS[leak]()


def test_the_message_says_what_to_use() -> None:
    with pytest.raises(LedgerError, match=r"choose\(\.\.\.\)"):
        sorted([HEAT, MORE])
    with pytest.raises(LedgerError, match=r"float\(figure\)"):
        HEAT + MORE


def test_float_is_the_way_out() -> None:
    assert type(float(HEAT)) is float
    assert float(HEAT) == 300.0


def test_its_description_is_text() -> None:
    assert f"{HEAT}" == repr(HEAT) == str(HEAT)
    assert f"{HEAT:>60}".strip() == repr(HEAT)


def test_a_mix_of_figures_and_floats_is_refused() -> None:
    with pytest.raises(LedgerError, match="a number from nowhere"):
        awkward.heat_left_over(HEAT, 5.0)
    with pytest.raises(LedgerError, match="a number from nowhere"):
        awkward.all_parts([HEAT, 5.0])


def test_a_figure_of_another_kind_is_refused() -> None:
    with pytest.raises(LedgerError, match="lost takes a figure of kind heat rate, not temperature"):
        awkward.heat_left_over(HEAT, WARM)
    with pytest.raises(LedgerError, match="parts takes a figure of kind heat rate, not temperature"):
        awkward.all_parts([HEAT, WARM])
    with pytest.raises(LedgerError, match="temperature is not compared with heat rate"):
        exceeds(WARM, HEAT)


def test_exceeds_tells_without_a_leak() -> None:
    assert exceeds(MORE, HEAT) is True
    assert exceeds(HEAT, MORE) is False
    assert exceeds(found(math.nan, d.HEAT_RATE), HEAT) is False


def test_two_figures_of_one_value_are_two() -> None:
    same = make(float(HEAT), HEAT.dimension, HEAT.origin, HEAT.inputs)
    assert same != HEAT
    assert len({same: 1, HEAT: 2}) == 2
    assert HEAT == 300.0


def test_floats_give_floats_and_figures_give_figures() -> None:
    assert type(awkward.heat_left_over(5.0, 2.0)) is float
    assert type(awkward.heat_left_over(HEAT, MORE)) is Figure
    arrays = awkward.heat_left_over(numpy.array([5.0, 6.0]), 2.0)  # type: ignore[arg-type]
    assert list(arrays) == [3.0, 4.0]  # type: ignore[call-overload]


def test_formulas_may_stand_in_formulas() -> None:
    @formula(HERE)
    def twice_lost(given: HeatRate, lost: HeatRate) -> HeatRate:
        """What is left over, twice."""
        return 2 * awkward.heat_left_over(given, lost)

    assert twice_lost(5.0, 2.0) == 6.0
    assert [each.op for each in formula_of(twice_lost).expression.args] == ["number", "sub"]
    assert isinstance(twice_lost(HEAT, MORE), Figure)


def test_transmittance_and_conductance_are_kept_apart() -> None:
    def wrong(u_value: Transmittance) -> HeatRate:
        """Says a U-value is a heat rate."""
        return u_value

    with pytest.raises(FormulaError):
        formula(HERE)(wrong)
