"""Slopes where inputs rest on one another, or are beyond all measure; answers that are none."""

from __future__ import annotations

import math
from collections.abc import Callable
from importlib import resources

import numpy
import pytest

from heatledger.job.load import read_job
from heatledger.ledger import dimensions as d
from heatledger.ledger.dimensions import Ratio, Temperature, TemperatureDifference
from heatledger.ledger.figures import Figure, LedgerError, Names, leaves, placed
from heatledger.ledger.formulas import formula
from heatledger.ledger.functions import exp
from heatledger.ledger.replay import carry_back, replay
from heatledger.ledger.solving import Sides, Unknown, solve
from heatledger.steps.design import design
from heatledger.studies.uncertainty import band
from tests.ledger import awkward
from tests.ledger.awkward import HERE
from tests.ledger.test_replay import entry, slope_by_steps


@formula(HERE)
def twice(a: Ratio) -> Ratio:
    """Two times."""
    return a * 2


@formula(HERE)
def times(a: Ratio, b: Ratio) -> Ratio:
    """One by the other."""
    return a * b


@formula(HERE)
def plus(a: Ratio, b: Ratio) -> Ratio:
    """Both together."""
    return a + b


@formula(HERE)
def falling(a: Ratio) -> Ratio:
    """Comes as near to one as you like."""
    return exp(-a) + 1


Sided = Callable[[Figure, Figure, Figure], tuple[Figure, Figure]]
DEPENDENT: dict[str, tuple[Sided, float]] = {
    "a product beside a square": (lambda x, p, q: (times(x, q), times(p, p)), 0.5),
    "an input and one built on it": (lambda x, p, q: (plus(x, p), q), 1.0),
    "a side without the unknown": (lambda x, p, q: (plus(x, p), plus(p, q)), 2.0),
    "a side built where it is used": (lambda x, p, q: (times(x, twice(p)), times(twice(p), q)), 2.0),
    "the unknown squared": (lambda x, p, q: (times(x, times(x, p)), times(q, times(p, q))), 2.0),
}


@pytest.mark.parametrize("case", DEPENDENT)
def test_an_input_that_is_built_on_another_counts_once(case: str) -> None:
    sides, expected = DEPENDENT[case]
    p = entry("p", 3.0, d.RATIO)
    q = twice(p)
    x = solve(case, {"x": Unknown(d.RATIO, 1.0)}, lambda u: {"x": sides(u["x"], p, q)}).figures["x"]
    assert carry_back(x)[id(p)] == pytest.approx(expected, rel=1e-9)
    assert carry_back(x)[id(p)] == pytest.approx(slope_by_steps(x, p), rel=1e-6)


def test_a_solution_inside_a_solution_has_its_slope_where_it_is() -> None:
    p = entry("p", 3.0, d.RATIO)

    def root_of(area: Figure) -> Figure:
        return solve(
            "a root", {"r": Unknown(d.RATIO, 1.0)}, lambda u: {"r": (times(u["r"], u["r"]), area)}
        ).figures["r"]

    x = solve("a square", {"x": Unknown(d.RATIO, 2.0)}, lambda u: {"x": (root_of(u["x"]), p)}).figures["x"]
    assert float(x) == pytest.approx(9.0, rel=1e-9)
    assert carry_back(x)[id(p)] == pytest.approx(6.0, rel=1e-6)


def test_the_slope_of_a_house_whose_spaces_touch_is_that_of_redesigns() -> None:
    text = resources.files("heatledger").joinpath("examples", "ferrow-house.yaml").read_text("utf-8")
    touching = {"construction": "bare-concrete", "area": "60 ft2", "beyond": "unheated/garage"}
    job = read_job(text, "house.yaml").with_changes(
        [{"add": "unheated/basement/surfaces/garage", "to": touching}]
    )
    made = design(job)
    loss = made["house/loss"].original
    indoor = next(each for each in leaves(loss) if each.origin.path == "site/indoor")
    ends = [
        float(design(job.with_changes([{"set": "site/indoor", "to": f"{celsius} °C"}]))["house/loss"])
        for celsius in (21.111, 21.112)
    ]
    slope = carry_back(loss)[id(indoor)]
    assert slope == pytest.approx((ends[1] - ends[0]) / 0.001, rel=1e-4)
    for path in ("house/loss", "unheated/garage/temperature", "unheated/basement/temperature"):
        figure = made[path].original
        for each in leaves(figure):
            if float(each):  # an entry of nothing, as a level at grade, stands at a corner of larger()
                expected = slope_by_steps(figure, each)
                found = carry_back(figure).get(id(each), 0.0)
                assert found == pytest.approx(expected, rel=1e-3, abs=1e-4 * abs(float(figure) / float(each)))


def test_what_was_found_in_a_design_is_replayed_as_what_it_is() -> None:
    one, two = entry("one", 300.0, d.HEAT_RATE), entry("two", 200.0, d.HEAT_RATE)
    left = placed(awkward.heat_left_over(one, two), Names())
    assert replay([left], {placed(one, Names()): 310.0}) == [110.0]
    assert carry_back(left)[id(one)] == 1.0


def test_what_moves_nothing_is_refused() -> None:
    one, two = entry("one", 300.0, d.HEAT_RATE), entry("two", 200.0, d.HEAT_RATE)
    other = entry("other", 1.0, d.HEAT_RATE)
    with pytest.raises(LedgerError, match="no target is built on it"):
        replay([awkward.heat_left_over(one, two)], {other: 2.0})


@formula(HERE)
def over_square(a: Ratio, b: Ratio) -> Ratio:
    """A quotient whose slope squares what it is divided by."""
    return a / b


@pytest.mark.parametrize("b", [1e-200, 1e200, 1e308])
def test_absurd_values_have_slopes_without_a_crash(b: float) -> None:
    one, two = entry("one", 1.0, d.RATIO), entry("absurd", b, d.RATIO)
    slopes = carry_back(plus(over_square(one, two), one))
    assert math.isnan(slopes[id(two)])  # 1 ÷ b² is beyond what a float holds
    assert carry_back(plus(one, two))[id(two)] == 1.0


def test_a_band_with_an_absurd_entry_says_nothing() -> None:
    text = resources.files("heatledger").joinpath("examples", "ferrow-house.yaml").read_text("utf-8")
    job = read_job(text.replace("r_value: R-1.47, known", "r_value: 1e308, known", 1), "house.yaml")
    made = design(job)
    whole = band(made, "house/loss")
    assert whole.swings == () or math.isfinite(whole.half)
    assert math.isfinite(float(made["house/loss"]))


@pytest.mark.parametrize("start", [0.0, 1.0, 5.0, 1e6])
def test_sides_that_only_come_close_are_no_answer(start: float) -> None:
    one = entry("one", 1.0, d.RATIO)
    outcome = solve("none", {"x": Unknown(d.RATIO, start)}, lambda u: {"x": (falling(u["x"]), one)}).outcome
    assert not outcome.solved
    assert "do not fix x" in outcome.words


def test_equations_that_say_the_same_twice_are_no_answer() -> None:
    one = entry("one", 1.0, d.RATIO)

    def sides(u: dict[str, Figure]) -> Sides:
        return {"x": (plus(u["x"], u["y"]), one), "y": (plus(u["y"], u["x"]), one)}

    starts = {"x": Unknown(d.RATIO, 0.3), "y": Unknown(d.RATIO, 0.7)}
    solution = solve("twice", starts, sides)  # type: ignore[arg-type]
    assert not solution.outcome.solved
    assert all(each.is_missing for each in solution.figures.values())


def test_states_whose_sides_only_come_close_are_empty() -> None:
    bound = entry("bound", 1.5, d.RATIO)
    x = solve("near", {"x": Unknown(d.RATIO, 1.0)}, lambda u: {"x": (falling(u["x"]), bound)}).figures["x"]
    assert float(x) == pytest.approx(math.log(2.0), rel=1e-12)
    together = replay([x], {bound: numpy.array([1.5, 1.0, 1.25])})[0]
    assert numpy.isnan(together).tolist() == [False, True, False]
    assert together[2] == pytest.approx(math.log(4.0), rel=1e-10)
    assert math.isnan(replay([x], {bound: 1.0})[0])


@formula(HERE)
def rise(warm: Temperature, cold: Temperature) -> TemperatureDifference:
    """How much warmer."""
    return warm - cold


def test_an_unknown_that_no_equation_holds_is_refused() -> None:
    warm, cold = entry("warm", 294.0, d.TEMPERATURE), entry("cold", 270.0, d.TEMPERATURE)
    with pytest.raises(LedgerError, match="no equation holds the unknown x"):
        solve(
            "none",
            {"x": Unknown(d.TEMPERATURE, 280.0)},
            lambda t: {"x": (rise(warm, cold), rise(warm, cold))},
        )
