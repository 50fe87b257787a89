"""Answers with nothing left over, numbers that look alike, and numbers beyond all measure."""

from __future__ import annotations

import math

import pytest

from heatledger.ledger import dimensions as d
from heatledger.ledger.as_text import working
from heatledger.ledger.compose import working_of
from heatledger.ledger.dimensions import Area, Conductance, HeatRate, Length, Ratio, Temperature
from heatledger.ledger.figures import Figure, Leaf, LeafKind, Names, leaf
from heatledger.ledger.formulas import formula
from heatledger.ledger.functions import exp
from heatledger.ledger.notation import read
from heatledger.ledger.presets import METRIC, PRESETS, US
from heatledger.ledger.show import show
from tests.ledger import blind
from tests.ledger.awkward import HERE
from tests.ledger.test_replay import entry


@formula(HERE)
def rectangle(width: Length, height: Length) -> Area:
    """Area of a rectangle."""
    return width * height


@formula(HERE)
def per_degree(loss: HeatRate, indoor: Temperature, outdoor: Temperature) -> Conductance:
    """Loss by degree."""
    return loss / (indoor - outdoor)


@formula(HERE)
def what_is_left(whole: Area, part: Area) -> Area:
    """One area less the other."""
    return whole - part


@formula(HERE)
def grown(share: Ratio) -> Ratio:
    """e to a share."""
    return exp(share)


def typed(text: str, dimension: d.Dimension) -> Figure:
    made = read(text, dimension, US)
    return leaf(
        made.value, dimension, Leaf(LeafKind.JOB, text, text, text, made.unit, made.typed_value, made.places)
    )


def test_an_answer_that_comes_out_even_drops_its_zeros_as_inputs_do() -> None:
    even = rectangle(typed("14.5 ft", d.LENGTH), typed("9 ft", d.LENGTH))
    made = working_of(even, US)
    assert (made.answer, made.unit) == ("130.5", "ft²")
    blind.redo(working(even, US))
    rounded = rectangle(typed("14.5 ft", d.LENGTH), entry("found", 2.7, d.LENGTH))
    assert working_of(rounded, US).answer == "128.44"
    near = rectangle(entry("wide", 3.0480001, d.LENGTH), typed("9 ft", d.LENGTH))
    assert working_of(near, US).answer == "90.00"  # a little more, so that its zeros say something
    blind.redo(working(near, US))


@pytest.mark.parametrize("units", PRESETS.values(), ids=PRESETS)
@pytest.mark.parametrize("apart", [1e-3, 1e-7, 1e-10, 2e-13])
def test_a_division_by_two_that_look_the_same_has_a_working(units, apart: float) -> None:
    figure = per_degree(
        entry("loss", 100.0, d.HEAT_RATE),
        entry("warm", 294.15, d.TEMPERATURE),
        entry("cold", 294.15 - apart, d.TEMPERATURE),
    )
    made = working_of(figure, units)
    text = working(figure, units)
    if "cannot tell its inputs apart" in made.remark:
        assert apart < 1e-12
    elif apart > 1e-8:  # closer ones are off by what computers leave of a difference
        blind.redo(text)
    assert len(text.splitlines()[-1]) < 200


@pytest.mark.parametrize("units", [US, METRIC])
@pytest.mark.parametrize("whole", [1e6 / 3, 2e10 / 3, 1e20 / 7, 1e300, 1e307])
def test_a_huge_number_nobody_typed_has_six_figures(units, whole: float) -> None:
    figure = what_is_left(entry("whole", whole, d.AREA), entry("part", 1.0, d.AREA))
    made = working_of(figure, units)
    digits = "".join(each for each in made.rows[0].number.partition("×10")[0] if each.isdigit())
    assert len(digits.strip("0")) <= 7
    text = working(figure, units)
    blind.redo(text)
    assert max(map(len, text.splitlines())) < 100


@pytest.mark.parametrize("share", [700.0, 30.0, -700.0, 0.0])
def test_a_power_of_e_beyond_all_measure_is_written_short(share: float) -> None:
    text = working(grown(entry("share", share, d.RATIO)), METRIC)
    blind.redo(text)
    assert max(map(len, text.splitlines())) < 100


def test_a_huge_entry_is_shown_with_a_power_of_ten() -> None:
    assert show(entry("area", 1e300, d.AREA), METRIC) == "1e300 m²"
    assert not math.isnan(read("1e300 m²", d.AREA, METRIC).value)


class Chosen(Names):
    """Names of a job that took a row of the catalog."""

    def place(self, figure: Figure) -> str:
        return "constructions/wall/u_value"


def test_a_row_of_the_catalog_is_named_with_what_it_was_taken_for() -> None:
    origin = Leaf(LeafKind.CATALOG, "catalog/walls/two-by-four/u-value", "U-value", "0.0915")
    row = leaf(0.52, d.TRANSMITTANCE, origin)
    assert "where: catalog walls, row two-by-four" in working_of(row, US).notes
    notes = working_of(row, US, Chosen()).notes
    assert "where: catalog walls, row two-by-four, for constructions/wall/u_value" in notes
