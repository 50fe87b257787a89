"""Replaying gives every figure back; with arrays it agrees with one run after the other."""

from __future__ import annotations

import math
from collections.abc import Callable
from random import Random
from typing import Any

import numpy
import pytest

from heatledger.ledger import dimensions as d
from heatledger.ledger.choosing import choose, largest, look_up
from heatledger.ledger.figures import Figure, Leaf, LeafKind, LedgerError, ancestors, leaf, leaves
from heatledger.ledger.formulas import formula_of
from heatledger.ledger.presets import METRIC
from heatledger.ledger.replay import Program, carry_back, replay
from heatledger.ledger.solving import Solution, Unknown, solve
from tests.ledger import awkward, awkward_more
from tests.ledger.drawing import arguments_for, awkward_formulas
from tests.ledger.test_awkward import lost, lost_and_given

FORMULAS = awkward_formulas()
by_formula = pytest.mark.parametrize("function", FORMULAS, ids=lambda each: each.__name__)
SIZE = 40


def entry(path: str, value: float, dimension: d.Dimension) -> Figure:
    return leaf(value, dimension, Leaf(LeafKind.JOB, path, path))


def own_leaves(function: Callable[..., Any], seed: str) -> tuple[Figure, list[Figure]]:
    """A figure of a formula whose inputs are leaves, each another one."""
    made = formula_of(function)
    given: list[Any] = []
    for i, (argument, each) in enumerate(
        zip(arguments_for(made, Random(seed), METRIC), made.parameters, strict=True)
    ):
        if each.many:
            given.append(
                [entry(f"{i}/{j}", float(one), each.dimension) for j, one in enumerate(argument[:5])]
            )
        else:
            given.append(entry(str(i), float(argument), each.dimension))
    figure = function(*given)
    return figure, leaves(figure)


def house() -> tuple[Figure, list[Figure]]:
    """Several rooms, a choice, a row of a table, a branch and a solved pair, all in one total."""
    outdoor, ground = entry("outdoor", 258.0, d.TEMPERATURE), entry("ground", 281.0, d.TEMPERATURE)
    conductances = [entry(f"c{i}", 12.0 + 3.5 * i, d.CONDUCTANCE) for i in range(6)]
    rooms = [entry(f"indoor{i}", 293.0 + i, d.TEMPERATURE) for i in range(3)]
    attic, crawl = found_together(conductances[:3], rooms[0], outdoor).figures.values()
    parts = [lost(c, room, attic) for c in conductances for room in rooms]
    beside = {"attic": attic, "crawl": crawl}
    candidates = {name: lost(conductances[3], rooms[1], space) for name, space in beside.items()}
    parts.append(choose(candidates, largest, because="the larger loss counts"))
    row = look_up({"a": {"loss": entry("row", 120.0, d.HEAT_RATE)}}, "a", because="it is there")
    warm = awkward.lower_of_two(rooms[0], awkward.middle(rooms[1], rooms[2]))
    parts += [row["loss"], lost(conductances[5], warm, ground)]
    inner = awkward.all_parts(parts[:7])
    return awkward.all_parts([inner, *parts[7:], inner]), [outdoor, ground, *conductances, *rooms]


def found_together(conductances: list[Figure], indoor: Figure, outdoor: Figure) -> Solution:
    one, two, three = conductances
    given = entry("given", 150.0, d.HEAT_RATE)
    return solve(
        "attic and crawl space",
        {"attic": Unknown(d.TEMPERATURE, 275.0), "crawl": Unknown(d.TEMPERATURE, 275.0)},
        lambda t: {
            "attic": (lost(one, indoor, t["attic"]), lost_and_given(two, t["attic"], t["crawl"], given)),
            "crawl": (lost(two, t["attic"], t["crawl"]), lost(three, t["crawl"], outdoor)),
        },
    )


@by_formula
def test_floats_give_every_figure_back_to_the_last_bit(function: Callable[..., Any]) -> None:
    for seed in range(10):
        figure, moving = own_leaves(function, f"back {function.__name__} {seed}")
        assert replay([figure], {each: float(each) for each in moving}) == [float(figure)]


def test_every_figure_of_a_house_comes_back() -> None:
    loss, moving = house()
    every = ancestors(loss)
    values = replay(every, {each: float(each) for each in moving})
    assert values == [float(each) for each in every]


@by_formula
def test_arrays_agree_with_floats_one_by_one(function: Callable[..., Any]) -> None:
    figure, moving = own_leaves(function, f"arrays {function.__name__}")
    random = numpy.random.default_rng(5)
    sampled = [float(each) * random.uniform(0.98, 1.02, SIZE) for each in moving]
    if "between" in function.__name__:  # what is read between must stay between
        sampled[0][:] = float(moving[0])
    together = numpy.broadcast_to(replay([figure], dict(zip(moving, sampled, strict=True)))[0], SIZE)
    for i in range(SIZE):
        alone = replay([figure], {each: float(row[i]) for each, row in zip(moving, sampled, strict=True)})[0]
        assert together[i] == pytest.approx(alone, rel=1e-12, abs=1e-12)


def test_a_house_on_arrays_agrees_with_floats() -> None:
    loss, moving = house()
    random = numpy.random.default_rng(6)
    sampled = [float(each) * random.uniform(0.995, 1.005, SIZE) for each in moving]
    together = replay([loss], dict(zip(moving, sampled, strict=True)))[0]
    assert together.shape == (SIZE,)
    for i in range(SIZE):
        alone = replay([loss], {each: float(row[i]) for each, row in zip(moving, sampled, strict=True)})[0]
        assert together[i] == pytest.approx(alone, rel=1e-12)


def test_a_branch_is_masked_element_by_element() -> None:
    reynolds = entry("reynolds", 2300.0, d.RATIO)
    factor = awkward.friction_factor(reynolds)
    values = replay([factor], {reynolds: numpy.array([1000.0, 2299.0, 2300.0, 9000.0])})[0]
    assert list(values) == [float(awkward.friction_factor(x)) for x in (1000.0, 2299.0, 2300.0, 9000.0)]


def test_a_failing_branch_does_not_spoil_an_array() -> None:
    first, last = entry("first", 10.0, d.TEMPERATURE_DIFFERENCE), entry("last", 8.0, d.TEMPERATURE_DIFFERENCE)
    figure = awkward.safe_log_mean(first, last)
    values = replay([figure], {first: numpy.array([8.0, 10.0]), last: 8.0})[0]
    assert values[0] == 8.0
    assert values[1] == pytest.approx(2 / math.log(10 / 8))


def test_two_leaves_of_one_value_move_apart() -> None:
    one, two = entry("one", 300.0, d.HEAT_RATE), entry("two", 300.0, d.HEAT_RATE)
    assert replay([awkward.heat_left_over(one, two)], {one: 310.0, two: 300.0}) == [10.0]


def test_what_does_not_move_keeps_its_value() -> None:
    one, two = entry("one", 300.0, d.HEAT_RATE), entry("two", 200.0, d.HEAT_RATE)
    still = awkward_more.as_it_is(two)
    assert replay([still, awkward.heat_left_over(one, still)], {one: 500.0}) == [200.0, 300.0]


def test_what_goes_in_is_not_written_over() -> None:
    one, two = entry("one", 300.0, d.HEAT_RATE), entry("two", 200.0, d.HEAT_RATE)
    loss = awkward.all_parts([one, two, one])
    sampled = numpy.array([1.0, 2.0])
    values = replay([loss, loss, one], {one: sampled, two: numpy.array([10.0, 20.0])})
    assert list(sampled) == [1.0, 2.0]
    assert list(values[0]) == [12.0, 24.0]
    assert list(values[2]) == [1.0, 2.0]


def test_parts_are_dropped_as_they_are_added() -> None:
    moving = [entry(f"part{i}", 10.0 + i, d.HEAT_RATE) for i in range(50)]
    halves = [awkward_more.given_back(each, entry("half", 0.5, d.RATIO)) for each in moving]
    loss = awkward.all_parts(halves)
    program = Program([loss], moving)
    kept: list[int] = []
    values = {key: numpy.ones(4) for key in program.moving}
    for step in program.steps:
        step(values)
        kept.append(len(values) - len(moving))
    assert max(kept) == 2  # the sum, and the part about to be added
    assert list(values[id(loss)]) == [-25.0] * 4


def test_a_solution_replays_through_its_batch_solver() -> None:
    loss, moving = house()
    program = Program([loss], moving)
    outdoor = numpy.linspace(240.0, 270.0, 7)
    together = program.run([outdoor, *(float(each) for each in moving[1:])])[0]
    for i, value in enumerate(outdoor):
        alone = program.run([float(value), *(float(each) for each in moving[1:])])[0]
        assert together[i] == pytest.approx(alone, rel=1e-12)


def test_what_cannot_be_replayed_says_so() -> None:
    odd = entry("one", 1.0, d.HEAT_RATE)
    broken = awkward_more.as_it_is(odd)
    broken.origin = object()
    with pytest.raises(LedgerError, match="cannot be replayed"):
        replay([broken], {odd: 2.0})


def slope_by_steps(target: Figure, moving: Figure) -> float:
    """Central difference with the step that suits the size of the value."""
    step = 1e-6 * max(abs(float(moving)), 1e-3)
    if moving.dimension.absolute:
        step = 1e-4
    high, low = (replay([target], {moving: float(moving) + sign * step})[0] for sign in (1, -1))
    return float(high - low) / (2 * step)


@by_formula
def test_slopes_agree_with_small_steps(function: Callable[..., Any]) -> None:
    for seed in range(4):
        figure, moving = own_leaves(function, f"slope {function.__name__} {seed}")
        slopes = carry_back(figure)
        for each in moving:
            expected = slope_by_steps(figure, each)
            size = abs(float(figure)) / max(abs(float(each)), 1e-9)
            assert slopes.get(id(each), 0.0) == pytest.approx(expected, rel=2e-4, abs=2e-7 * size + 1e-12)


def test_slopes_go_through_a_house_and_a_solution() -> None:
    loss, moving = house()
    slopes = carry_back(loss)
    for each in moving:
        assert slopes[id(each)] == pytest.approx(slope_by_steps(loss, each), rel=1e-5, abs=1e-6)


def test_samples_without_an_answer_are_empty_and_no_crash() -> None:
    first, last = entry("first", 10.0, d.TEMPERATURE_DIFFERENCE), entry("last", 8.0, d.TEMPERATURE_DIFFERENCE)
    log_mean = awkward.log_mean(first, last)
    assert math.isnan(replay([log_mean], {first: 8.0})[0])
    values = replay([log_mean], {first: numpy.array([8.0, 10.0, -3.0])})[0]
    assert numpy.isnan(values).tolist() == [True, False, True]
    emitter = awkward.emitter_output(entry("rated", 900.0, d.HEAT_RATE), first, last)
    assert math.isnan(replay([emitter], {first: -2.0})[0])
    size = entry("size", 2.0, d.LENGTH)
    rows = [entry(f"size {n}", n, d.LENGTH) for n in (1.0, 3.0)]
    outputs = [entry(f"output {n}", n, d.HEAT_RATE) for n in (100.0, 300.0)]
    between = awkward.between_rows(size, *rows, *outputs)
    values = replay([between], {size: numpy.array([0.5, 1.0, 2.5, 3.5])})[0]
    assert numpy.isnan(values).tolist() == [True, False, False, True]
    assert math.isnan(replay([between], {size: 0.5})[0])


def test_a_sample_without_a_value_is_not_hidden_by_a_branch() -> None:
    reynolds = entry("reynolds", 5000.0, d.RATIO)
    factor = awkward.friction_factor(reynolds)
    assert math.isnan(replay([factor], {reynolds: math.nan})[0])
    values = replay([factor], {reynolds: numpy.array([math.nan, 900.0])})[0]
    assert numpy.isnan(values).tolist() == [True, False]
