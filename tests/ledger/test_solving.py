"""What is found together: the search, its twin on arrays, its slopes, and the states it cannot find."""

from __future__ import annotations

import math

import numpy
import pytest

from heatledger.ledger import dimensions as d
from heatledger.ledger.as_text import working
from heatledger.ledger.figures import Figure
from heatledger.ledger.formulas import formula
from heatledger.ledger.presets import US
from heatledger.ledger.replay import carry_back, replay
from heatledger.ledger.solving import Solution, Unknown, solve
from heatledger.ledger.symbols import const
from tests.ledger import blind
from tests.ledger.awkward import EMITTER_POWER, HERE
from tests.ledger.drawing import found
from tests.ledger.test_awkward import lost
from tests.ledger.test_replay import SIZE, entry, slope_by_steps

RATED = const(50, "K", HERE, "rated difference")


@formula(HERE)
def emitted(rated: d.HeatRate, water: d.Temperature, room: d.Temperature) -> d.HeatRate:
    """What an emitter gives, bent by its exponent."""
    return rated * ((water - room) / RATED) ** EMITTER_POWER


def curved_pair(rated: Figure, conductance: Figure, outdoor: Figure, supply: Figure) -> Solution:
    """Water and room temperature of an emitter in a room that loses heat."""
    return solve(
        "water and room",
        {"water": Unknown(d.TEMPERATURE, 320.0), "room": Unknown(d.TEMPERATURE, 290.0)},
        lambda t: {
            "water": (lost(conductance, supply, t["water"]), emitted(rated, t["water"], t["room"])),
            "room": (emitted(rated, t["water"], t["room"]), lost(conductance, t["room"], outdoor)),
        },
    )


def test_the_batch_solver_is_the_twin_of_the_search() -> None:
    rated, conductance = entry("rated", 2000.0, d.HEAT_RATE), entry("conductance", 90.0, d.CONDUCTANCE)
    outdoor, supply = entry("outdoor", 262.0, d.TEMPERATURE), entry("supply", 335.0, d.TEMPERATURE)
    pair = curved_pair(rated, conductance, outdoor, supply)
    assert pair.outcome.solved
    assert pair.outcome.worst <= 1e-9
    moving = [rated, conductance, outdoor, supply]
    random = numpy.random.default_rng(8)
    sampled = [float(each) * random.uniform(0.97, 1.03, SIZE) for each in moving]
    together = replay(list(pair.figures.values()), dict(zip(moving, sampled, strict=True)))
    for i in range(SIZE):
        alone = replay(
            list(pair.figures.values()), {a: float(b[i]) for a, b in zip(moving, sampled, strict=True)}
        )
        inputs = [
            entry(f"again {i} {j}", float(row[i]), each.dimension)
            for j, (each, row) in enumerate(zip(moving, sampled, strict=True))
        ]
        again = curved_pair(*inputs)
        for one, two, three in zip(together, alone, again.figures.values(), strict=True):
            assert one[i] == pytest.approx(two, rel=1e-12)
            assert one[i] == pytest.approx(float(three), rel=1e-11)


def test_slopes_through_a_curved_solution() -> None:
    rated, conductance = entry("rated", 2000.0, d.HEAT_RATE), entry("conductance", 90.0, d.CONDUCTANCE)
    outdoor, supply = entry("outdoor", 262.0, d.TEMPERATURE), entry("supply", 335.0, d.TEMPERATURE)
    water = curved_pair(rated, conductance, outdoor, supply).figures["water"]
    slopes = carry_back(water)
    for each in (rated, conductance, outdoor, supply):
        assert slopes[id(each)] == pytest.approx(slope_by_steps(water, each), rel=1e-5)


def test_states_without_an_answer_are_empty() -> None:
    rated, conductance = entry("rated", 2000.0, d.HEAT_RATE), entry("conductance", 90.0, d.CONDUCTANCE)
    outdoor, supply = entry("outdoor", 262.0, d.TEMPERATURE), entry("supply", 335.0, d.TEMPERATURE)
    water = curved_pair(rated, conductance, outdoor, supply).figures["water"]
    values = replay([water], {conductance: numpy.array([90.0, math.nan, 95.0])})[0]
    assert math.isnan(values[1])
    assert values[0] == pytest.approx(float(water), rel=1e-12)
    assert not math.isnan(values[2])


def test_two_rooms_of_one_temperature_hold_the_space_between() -> None:
    warm, other = entry("warm", 294.15, d.TEMPERATURE), entry("other", 294.15, d.TEMPERATURE)
    one, two = entry("c1", 47.3, d.CONDUCTANCE), entry("c2", 61.9, d.CONDUCTANCE)
    solution = solve(
        "closet",
        {"closet": Unknown(d.TEMPERATURE, 283.0)},
        lambda t: {"closet": (lost(one, warm, t["closet"]), lost(two, t["closet"], other))},
    )
    assert solution.outcome.solved
    assert float(solution.figures["closet"]) == pytest.approx(294.15, abs=1e-9)
    blind.redo(working(solution.figures["closet"], US))
    values = replay([solution.figures["closet"]], {warm: numpy.array([294.15, 295.15]), other: 294.15})[0]
    assert values[0] == pytest.approx(294.15, abs=1e-9)


@formula(HERE)
def head_lost(rated: d.Head, flow: d.VolumeFlow, rated_flow: d.VolumeFlow) -> d.Head:
    """Head of a branch, by a broken power of its flow."""
    return rated * (flow / rated_flow) ** EMITTER_POWER


@formula(HERE)
def rest_of_flow(whole: d.VolumeFlow, first: d.VolumeFlow) -> d.VolumeFlow:
    """What does not go the one way goes the other."""
    return whole - first


@formula(HERE)
def as_flow(flow: d.VolumeFlow) -> d.VolumeFlow:
    """The flow itself."""
    return flow


def test_small_unknowns_are_found_as_well_as_large_ones() -> None:
    whole, rated = found(1.2e-4, d.VOLUME_FLOW), found(1e-4, d.VOLUME_FLOW)
    steep, flat = found(4.0, d.HEAD), found(1.0, d.HEAD)
    solution = solve(
        "two branches",
        {"first": Unknown(d.VOLUME_FLOW, 1e-5), "second": Unknown(d.VOLUME_FLOW, 1e-4)},
        lambda q: {
            "first": (head_lost(steep, q["first"], rated), head_lost(flat, q["second"], rated)),
            "second": (as_flow(q["second"]), rest_of_flow(whole, q["first"])),
        },
    )
    assert solution.outcome.solved
    first, second = (float(each) for each in solution.figures.values())
    assert first + second == pytest.approx(1.2e-4, rel=1e-12)
    assert second / first == pytest.approx(4 ** (1 / 1.4), rel=1e-10)
    for figure in solution.figures.values():
        blind.redo(working(figure, US))


def test_a_start_where_the_arithmetic_has_no_answer_is_no_crash() -> None:
    rated, conductance = entry("rated", 2000.0, d.HEAT_RATE), entry("conductance", 90.0, d.CONDUCTANCE)
    outdoor = entry("outdoor", 262.0, d.TEMPERATURE)
    solution = solve(
        "room",
        {"room": Unknown(d.TEMPERATURE, 400.0)},  # hotter than the water: a broken power of a negative number
        lambda t: {"room": (emitted(rated, entry("water", 330.0, d.TEMPERATURE), t["room"]),
                            lost(conductance, t["room"], outdoor))},
    )  # fmt: skip
    assert not solution.outcome.solved
    assert solution.figures["room"].is_missing
    assert "No answer found" in solution.outcome.words


def test_equations_that_do_not_fix_a_state_leave_it_empty() -> None:
    one, two = entry("c1", 10.0, d.CONDUCTANCE), entry("c2", 20.0, d.CONDUCTANCE)
    warm, cold = entry("warm", 294.0, d.TEMPERATURE), entry("cold", 270.0, d.TEMPERATURE)
    space = solve(
        "space",
        {"space": Unknown(d.TEMPERATURE, 283.0)},
        lambda t: {"space": (lost(one, warm, t["space"]), lost(two, t["space"], cold))},
    ).figures["space"]
    values = replay([space], {one: numpy.array([10.0, 0.0]), two: numpy.array([20.0, 0.0])})[0]
    assert values[0] == pytest.approx(float(space), rel=1e-12)
    assert math.isnan(values[1]) or 270 <= values[1] <= 294


def test_one_equation_for_each_unknown() -> None:
    with pytest.raises(Exception, match="one equation for each unknown"):
        solve("none", {"a": Unknown(d.TEMPERATURE, 280.0)}, lambda t: {})
