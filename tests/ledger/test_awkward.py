"""Every working of an awkward formula can be redone by someone who sees only the paper."""

from __future__ import annotations

import re
from random import Random

import pytest

from heatledger.ledger import dimensions as d
from heatledger.ledger.as_text import working
from heatledger.ledger.compose import working_of
from heatledger.ledger.dimensions import Conductance, HeatRate, Temperature
from heatledger.ledger.figures import Figure
from heatledger.ledger.formulas import Formula, formula, formula_of
from heatledger.ledger.presets import CANADIAN, METRIC, US, Preset
from heatledger.ledger.solving import Solution, Unknown, solve
from tests.ledger import awkward, awkward_more, blind
from tests.ledger.awkward import HERE
from tests.ledger.drawing import arguments_for, awkward_formulas, found, typed

AWKWARD = [formula_of(each) for each in awkward_formulas()]
PRESETS = [US, METRIC, CANADIAN]
TIMES = 70
"""Random inputs for each formula and each reader."""


def figure_of(made: Formula, random: Random, preset: Preset) -> Figure:
    """The result of a formula for random figures."""
    function = {formula_of(each): each for each in awkward_formulas()}[made]
    result = function(*arguments_for(made, random, preset))
    assert isinstance(result, Figure)
    assert not result.is_missing
    return result


def test_there_are_enough() -> None:
    assert len(AWKWARD) >= 50


@pytest.mark.parametrize("preset", PRESETS, ids=lambda each: each.name)
@pytest.mark.parametrize("made", AWKWARD, ids=lambda each: each.name)
def test_redone_from_the_paper_alone(made: Formula, preset: Preset) -> None:
    random = Random(f"{made.name} {preset.name}")
    for _ in range(TIMES):
        figure = figure_of(made, random, preset)
        text = working(figure, preset)
        again = blind.redo(text)
        shown = preset.shown(made.dimension).unit.from_si(float(figure), made.dimension.absolute)
        answer = blind.printed_answer(text)
        rounded = sum(len(each) for each in figure.inputs if isinstance(each, tuple)) * answer.step / 2
        assert abs(again - shown) <= 2 * answer.step + rounded + 1e-9 * abs(shown), text
        assert max(map(len, text.splitlines())) <= 80, text


@pytest.mark.parametrize("preset", PRESETS, ids=lambda each: each.name)
@pytest.mark.parametrize("made", AWKWARD, ids=lambda each: each.name)
def test_reads_like_hand_arithmetic(made: Formula, preset: Preset) -> None:
    random = Random(f"look at {made.name} {preset.name}")
    for _ in range(5):
        figure = figure_of(made, random, preset)
        sheet = working_of(figure, preset)
        numbers = [each.number for each in (*sheet.rows, *sheet.steps)]
        assert all("e" not in each and "nan" not in each and "-" not in each for each in numbers)
        zeros = [each for each in numbers if not any(mark in each for mark in "123456789")]
        assert all(each == "0" for each in zeros), working(figure, preset)
        if float(figure):
            assert any(mark in sheet.answer for mark in "123456789"), working(figure, preset)


def test_a_height_and_a_pressure_in_psi() -> None:
    height, density = typed(24, 0, US, d.LENGTH), typed(62.4, 1, US, d.DENSITY)
    text = working(awkward.static_and_pump(height, density, typed(4, 0, US, d.PRESSURE)), US)
    assert "62.4 lb/ft³ × 32.17 ft/s² × 24 ft" in text
    assert blind.redo(text) == pytest.approx(14.4, abs=0.01)


def test_an_answer_that_rounds_to_a_new_digit() -> None:
    area, flux = typed(100, 0, US, d.AREA), typed(9.9996, 4, US, d.HEAT_FLUX)
    text = working(awkward_more.several(area, typed(1, 0, US, d.COUNT), flux), US)
    assert "1,000 Btu/h" in text
    assert "to the nearest" not in text
    assert blind.redo(text) == pytest.approx(999.96)


def test_an_answer_of_less_than_one_unit() -> None:
    load = found(1e-7, d.HEAT_RATE)
    text = working(awkward_more.given_back(load, typed(0.1, 1, US, d.RATIO)), US)
    assert "less than" in text
    blind.redo(text)


def test_an_answer_with_more_figures_than_a_pencil_has() -> None:
    flow, density = found(1.23456789e-2, d.VOLUME_FLOW), found(987.654321, d.DENSITY)
    figure = awkward.nearly_equal(
        flow, found(350.98765, d.TEMPERATURE), found(300.12345, d.TEMPERATURE), density
    )
    text = working(figure, US)
    assert "to the nearest 10" in text
    blind.redo(text)


def test_a_figure_carried_in_with_more_places_says_so() -> None:
    loads = [found(619.36 * 0.29307107, d.HEAT_RATE)]
    text = working(awkward_more.share(loads[0], typed(0.0123, 4, US, d.HEAT_RATE)), US)
    assert "part, shown as 619" in text
    blind.redo(text)


def test_parts_that_miss_their_total_say_so() -> None:
    parts = [found(each * 0.29307107017, d.HEAT_RATE) for each in (100.4, 200.4, 300.4)]
    text = working(awkward.all_parts(parts), US)
    assert "601 Btu/h  rounded parts add to 600" in text
    blind.redo(text)


def test_no_parts_give_nothing() -> None:
    text = working(awkward.all_parts([]), METRIC)
    assert "no parts" in text
    assert blind.redo(text) == 0.0


def test_a_difference_of_nothing_is_nothing() -> None:
    load = typed(500, 0, US, d.HEAT_RATE)
    text = working(awkward.heat_left_over(load, typed(500, 0, US, d.HEAT_RATE)), US)
    assert "less than" not in text
    assert blind.redo(text) == 0.0


def test_a_branch_is_said_with_the_numbers_that_took_it() -> None:
    low, high = typed(1200, 0, US, d.RATIO), typed(9000, 0, US, d.RATIO)
    assert "as 1,200 < 2,300: 64 ÷ 1,200" in working(awkward.friction_factor(low), US)
    assert "as 9,000 ≥ 2,300: 0.3164 ÷ 9,000^0.25" in working(awkward.friction_factor(high), US)
    just = found(2299.999999, d.RATIO)
    text = working(awkward.friction_factor(just), US)
    assert "2,300 is just below 2,300" in text
    blind.redo(text)


def test_one_figure_in_two_places_is_printed_once() -> None:
    text = working(
        awkward.radiant_coefficient(found(333.33333, d.TEMPERATURE), found(293.3, d.TEMPERATURE)), METRIC
    )
    above = text.partition("-----")[0]
    printed = re.findall(r"60\.\d* °C", above)
    assert len(printed) == 2
    assert len(set(printed)) == 1
    blind.redo(text)


@formula(HERE)
def lost(conductance: Conductance, space: Temperature, outdoor: Temperature) -> HeatRate:
    """Heat from one space to another."""
    return conductance * (space - outdoor)


@formula(HERE)
def lost_and_given(
    conductance: Conductance, space: Temperature, beside: Temperature, given: HeatRate
) -> HeatRate:
    """Heat from a space, less what is given to it."""
    return conductance * (space - beside) - given


def solved_pair(random: Random, preset: Preset) -> Solution:
    """Two spaces that touch each other, the house and outdoors; their temperatures are found together."""
    draw = [found(random.uniform(5, 90), d.CONDUCTANCE) for _ in range(3)]
    indoor = typed(preset.shown(d.TEMPERATURE).unit.from_si(294.15, True), 1, preset, d.TEMPERATURE)
    outdoor = found(random.uniform(245, 275), d.TEMPERATURE)
    heat = found(random.uniform(0, 800), d.HEAT_RATE)
    return solve(
        "basement and crawl space",
        {"basement": Unknown(d.TEMPERATURE, 283.0), "crawl space": Unknown(d.TEMPERATURE, 278.0)},
        lambda t: {
            "basement": (lost(draw[0], indoor, t["basement"]),
                         lost_and_given(draw[1], t["basement"], t["crawl space"], heat)),
            "crawl space": (lost(draw[1], t["basement"], t["crawl space"]),
                            lost(draw[2], t["crawl space"], outdoor)),
        },
    )  # fmt: skip


@pytest.mark.parametrize("preset", PRESETS, ids=lambda each: each.name)
def test_a_solved_pair_shows_both_sides(preset: Preset) -> None:
    random = Random(preset.name)
    for _ in range(50):
        solution = solved_pair(random, preset)
        assert solution.outcome.solved
        for figure in solution.figures.values():
            blind.redo(working(figure, preset))
    assert formula_of(lost).name == "lost"
