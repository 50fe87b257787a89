"""A figure without a value goes through every formula, prints no number, and says what it waits for."""

from __future__ import annotations

import math
import re
from random import Random

import pytest

from heatledger.ledger import dimensions as d
from heatledger.ledger.as_text import working
from heatledger.ledger.choosing import choose, count, largest, look_up
from heatledger.ledger.figures import Figure, missing, waits_for
from heatledger.ledger.formulas import Formula, formula, formula_of
from heatledger.ledger.presets import CANADIAN, METRIC, US, Preset
from heatledger.ledger.show import show
from heatledger.ledger.solving import Unknown, solve
from tests.ledger import awkward, awkward_more
from tests.ledger.awkward import HERE
from tests.ledger.drawing import arguments_for, awkward_formulas, found
from tests.ledger.test_awkward import lost, lost_and_given

AWKWARD = {formula_of(each).name: each for each in awkward_formulas()}


def says_no_number(text: str, made: Formula) -> None:
    """No printed line beyond the formula itself holds a number."""
    after = re.sub(r"waits for .*", "", text.partition("\n\n")[2])
    assert not re.search(r"\d", after), text
    assert made.title in text


@pytest.mark.parametrize("name", AWKWARD)
def test_every_missing_input_reaches_the_result(name: str) -> None:
    function = AWKWARD[name]
    made = formula_of(function)
    arguments = arguments_for(made, Random(name), US)
    for i, parameter in enumerate(made.parameters):
        gap = missing(parameter.dimension, f"rooms/kitchen/{parameter.name}", parameter.words)
        given: list[object] = list(arguments)
        given[i] = [*arguments[i], gap] if parameter.many else gap
        result = function(*given)
        assert isinstance(result, Figure)
        if name in ("three_ranges",) and not result.is_missing:
            continue  # a side that was not taken is not needed
        assert result.is_missing, parameter.name
        assert waits_for(result) == [gap]
        text = working(result, METRIC)
        assert f"waits for {parameter.words}: rooms/kitchen/{parameter.name}" in " ".join(text.split())
        says_no_number(text, made)


def test_all_that_is_waited_for_is_named_once() -> None:
    gap, other = missing(d.HEAT_RATE, "a/loss", "loss"), missing(d.HEAT_RATE, "b/loss", "loss of b")
    whole = awkward.all_parts([gap, other, awkward.heat_left_over(gap, found(5.0, d.HEAT_RATE))])
    assert waits_for(whole) == [gap, other]
    text = working(whole, US)
    assert text.count("waits for loss: a/loss") == 1
    assert "waits for loss of b: b/loss" in text


def test_an_entry_that_is_missing_says_so() -> None:
    text = working(missing(d.AREA, "rooms/kitchen/floor-area", "floor area"), US)
    assert "An entry that has not been given yet" in text
    assert not re.search(r"\d", text)


@formula(HERE)
def over(heat: d.HeatRate, conductance: d.Conductance) -> d.TemperatureDifference:
    """A quotient."""
    return heat / conductance


NONE, HEAT = found(0.0, d.CONDUCTANCE), found(100.0, d.HEAT_RATE)


def no_answers() -> list[Figure]:
    """Figures whose arithmetic has no answer."""
    rise, cold = found(5.0, d.TEMPERATURE_DIFFERENCE), found(-5.0, d.TEMPERATURE_DIFFERENCE)
    area = found(1.0, d.LENGTH)
    return [
        over(HEAT, NONE),
        awkward.log_mean(rise, rise),
        awkward.log_mean(cold, rise),
        awkward.emitter_output(HEAT, cold, rise),
        awkward.outflow_speed(found(-5.0, d.PRESSURE), found(1.2, d.DENSITY)),
        awkward_more.two_exponentials(found(-1e6, d.RATIO), found(2.0, d.RATIO)),
        awkward.between_rows(found(9.0, d.LENGTH), area, found(2.0, d.LENGTH), HEAT, HEAT),
        awkward.between_rows(area, area, area, HEAT, HEAT),
        awkward.wind_power(found(1.2, d.DENSITY), found(1.0, d.AREA), found(1e200, d.VELOCITY)),
        awkward_more.inverse_square(HEAT, area, found(0.0, d.LENGTH)),
    ]


@pytest.mark.parametrize("preset", [US, METRIC, CANADIAN], ids=lambda each: each.name)
def test_arithmetic_without_an_answer_says_so(preset: Preset) -> None:
    for figure in no_answers():
        assert figure.is_missing, figure
        assert waits_for(figure) == []
        text = working(figure, preset)
        assert "the arithmetic has no answer with these inputs" in text
        assert "nan" not in text
        assert "waits for" not in text
        for each in figure.inputs:
            assert show(each, preset) in text


def test_what_has_no_answer_is_passed_on() -> None:
    broken = over(HEAT, NONE)
    later = awkward.log_mean(broken, found(4.0, d.TEMPERATURE_DIFFERENCE))
    assert later.is_missing
    text = working(later, US)
    assert "comes from a figure without a value: Over" in " ".join(text.split())


def test_a_branch_that_is_not_taken_may_fail() -> None:
    same = found(10.0, d.TEMPERATURE_DIFFERENCE)
    assert float(awkward.safe_log_mean(same, same)) == 10.0
    assert awkward.log_mean(same, same).is_missing


def test_a_choice_waits_for_its_candidates() -> None:
    gap = missing(d.HEAT_RATE, "b/loss", "loss of b")
    chosen = choose({"a": HEAT, "b": gap}, largest, because="the larger load decides")
    assert chosen.is_missing
    assert waits_for(chosen) == [gap]
    assert "loss of b: b/loss" in working(chosen, US)


def test_a_row_without_a_value_is_missing() -> None:
    gap = missing(d.HEAT_RATE, "catalog/row", "output")
    row = look_up({"small": {"output": HEAT}, "large": {"output": gap}}, "large", because="it is asked for")
    assert row["output"].is_missing
    assert "waits for output: catalog/row" in working(row["output"], US)


def test_a_solution_waits_for_its_inputs() -> None:
    gap = missing(d.TEMPERATURE, "site/outdoor", "outdoor design temperature")
    conductance = found(20.0, d.CONDUCTANCE)
    inside = found(294.0, d.TEMPERATURE)
    solution = solve(
        "attic",
        {"attic": Unknown(d.TEMPERATURE, 280.0)},
        lambda t: {"attic": (lost(conductance, inside, t["attic"]), lost(conductance, t["attic"], gap))},
    )
    assert not solution.outcome.solved
    assert solution.figures["attic"].is_missing
    assert waits_for(solution.figures["attic"]) == [gap]
    text = working(solution.figures["attic"], US)
    assert "waits for outdoor design temperature: site/outdoor" in text
    assert not re.search(r"\d", text.partition("\n")[2])


def test_a_search_without_an_end_says_so() -> None:
    conductance, inside = found(20.0, d.CONDUCTANCE), found(294.0, d.TEMPERATURE)
    solution = solve(
        "attic",
        {"attic": Unknown(d.TEMPERATURE, 280.0)},
        lambda t: {
            "attic": (lost(conductance, inside, t["attic"]),
                      lost_and_given(conductance, inside, t["attic"], found(50.0, d.HEAT_RATE))),
        },
    )  # fmt: skip
    assert not solution.outcome.solved
    assert solution.figures["attic"].is_missing
    text = working(solution.figures["attic"], US)
    assert solution.outcome.words in " ".join(text.split())
    assert "attic" in solution.outcome.words


def test_a_count_is_never_missing() -> None:
    figure = count(["bath", "kitchen"], "heated rooms")
    assert float(figure) == 2.0
    assert math.isfinite(figure)
    assert "heated rooms" in working(figure, US)
