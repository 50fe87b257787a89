"""What must hold for every house: sums, directions, and that nothing depends on how it was written down."""

from __future__ import annotations

from math import isclose
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from heatledger.job.load import read_job
from heatledger.job.model import Job
from heatledger.job.text import Mapping
from heatledger.ledger.figures import Leaf, LeafKind, ancestors
from heatledger.ledger.formulas import Formula
from heatledger.ledger.results import walk_results
from heatledger.steps.design import Design, design, entries
from tests.job.samples import EXAMPLES, example
from tests.losses.houses import TEXTS, house
from tests.losses.rows import Numbers, build, numbers

RESET = "controls/reset/at-"
HEATING = ("emitters", "zones", "circuits", "plant", "controls", "bills", "readings")
GROUND = {"site/ground_temperature", "site/ground_amplitude", "site/soil_conductivity"}
SAME_WORD = ("output", "energy", "volume")
FEW = settings(max_examples=25)


def near(one: float, other: float, share: float = 1e-9) -> bool:
    return isclose(float(one), float(other), rel_tol=share, abs_tol=1e-6)


def with_one(made: Numbers, **changed: object) -> Numbers:
    return {**made, **changed}


@FEW
@given(numbers())
def test_rooms_levels_and_causes_sum_to_the_house(made: Numbers) -> None:
    losses = build(made).losses
    whole = float(losses.house.loss)
    assert near(sum(float(each.loss) for each in losses.rooms.values()), whole)
    assert near(sum(float(each.loss) for each in losses.levels.values()), whole)
    assert near(sum(float(each.loss) for each in losses.house.causes.values()), whole)
    for room in losses.rooms.values():
        parts = [float(each.loss) for each in room.surfaces.values()]
        parts += [float(one.loss) for each in room.surfaces.values() for one in each.openings.values()]
        assert near(sum(parts) + float(room.air.loss), room.loss)


@FEW
@given(numbers())
def test_what_passes_between_rooms_cancels(made: Numbers) -> None:
    losses = build(made).losses
    between = [
        float(each.loss)
        for room in losses.rooms.values()
        for each in room.surfaces.values()
        if each.beyond.kind == "room"
    ]
    assert near(sum(between), 0.0)
    others = sum(
        float(each.loss) + sum(float(one.loss) for one in each.openings.values())
        for room in losses.rooms.values() for each in room.surfaces.values() if each.beyond.kind != "room"
    )  # fmt: skip
    assert near(others + sum(float(each.air.loss) for each in losses.rooms.values()), losses.house.loss)


@FEW
@given(numbers(), st.floats(1.01, 2.0))
def test_more_u_value_area_air_or_difference_is_more_loss(made: Numbers, more: float) -> None:
    warm = [{**each, "indoor": 20.0} for each in made["rooms"]]
    base = with_one(made, rooms=warm)
    loss = float(build(base).losses.house.loss)
    higher = [
        with_one(base, wall=base["wall"] * more), with_one(base, window=base["window"] * more),
        with_one(base, outdoor=base["outdoor"] - 5 * more), with_one(base, high=base["high"] * more),
        with_one(base, rooms=[{**each, "air": each["air"] + 0.1 * more} for each in warm]),
    ]  # fmt: skip
    # A window lets more through than the wall it takes the place of, or less.
    if base["window"] > base["wall"] + 0.01:
        higher.append(with_one(base, rooms=[{**each, "window": each["window"] * more} for each in warm]))
    for each in higher:
        assert float(build(each).losses.house.loss) >= loss - 1e-9


@FEW
@given(numbers())
def test_a_wall_in_two_pieces_loses_the_same(made: Numbers) -> None:
    one, two = build(made).losses, build(made, split=True).losses
    assert near(one.house.loss, two.house.loss)
    for id, room in one.rooms.items():
        assert near(room.loss, two.rooms[id].loss)


@FEW
@given(numbers())
def test_both_systems_of_units_give_one_answer(made: Numbers) -> None:
    metric, inch_pound = build(made).results, build(made, metric=False).results
    # Points of the reset line stand at round outdoor temperatures of the job's own units, but for its ends.
    own = {path for path in metric.keys() ^ inch_pound.keys() if path.startswith(RESET)}
    assert metric.keys() - own == inch_pound.keys() - own
    for path in metric.keys() - own:
        one, other = metric[path], inch_pound[path]
        assert one.is_missing == other.is_missing, path
        assert one.is_missing or near(one, other), path


def balance(done: Design, id: str) -> tuple[float, float]:
    """Heat that stays in an unheated space, which must be none, and the size of what passes through it."""
    space, losses = done.losses.unheated[id], done.losses
    own, flows = float(space.temperature), []
    for each in space.surfaces.values():
        kind, other = each.beyond.kind, each.beyond.id
        if kind == "room":
            there = losses.rooms[other].indoor
        elif kind == "unheated":
            there = losses.unheated[other].temperature
        elif kind == "neighbor":
            there = done.job.neighbors[other].temperature
        else:
            there = losses.site.ground if kind == "ground" else losses.site.outdoor
        flows.append(float(each.conductance) * (float(there) - own))
    if space.air is not None:
        flows.append(float(space.air.conductance) * (float(losses.site.outdoor) - own))
    if space.heat is not None:
        flows.append(float(space.heat))
    return sum(flows), sum(abs(each) for each in flows)


@FEW
@given(numbers())
def test_unheated_spaces_keep_no_heat(made: Numbers) -> None:
    """Also two that touch, which are found together."""
    done = build(made)
    for id in done.losses.unheated:
        stays, passes = balance(done, id)
        assert abs(stays) <= 1e-9 * passes


@FEW
@given(numbers())
def test_what_a_room_gives_a_space_is_what_the_space_takes(made: Numbers) -> None:
    done = build(made)
    cellar = done.losses.unheated["cellar"]
    for id, room in done.losses.rooms.items():
        taken = float(cellar.surfaces[f"{id}.floor"].conductance) * (
            float(room.indoor) - float(cellar.temperature)
        )
        assert near(room.surfaces["floor"].loss, taken)


DEMOS = (*EXAMPLES, "tamm-street")
JOBS = {name: house(name) for name in TEXTS} | {each: read_job(example(each), each) for each in DEMOS}
"""Houses without a heating system, and the demo jobs with theirs."""


@pytest.mark.parametrize("name", JOBS)
def test_every_figure_ends_in_the_job_the_catalog_or_a_source(name: str) -> None:
    """An entry that is not there is one of the heating, or of ground that no room touches: no loss waits."""
    done = design(JOBS[name])
    given_paths = {each.origin.path for each in entries(done.job) if isinstance(each.origin, Leaf)}
    for figure in ancestors(*done.results.values()):
        origin = figure.origin
        if not isinstance(origin, Leaf):
            assert figure.inputs
        elif figure.is_missing:
            home, *rest = origin.path.split("/")
            assert home in HEATING or rest[1:] == ["emitters"] or origin.path in GROUND
            assert not lies_in(done.job, origin.path)
        elif origin.kind is LeafKind.JOB:
            assert origin.path in given_paths
            assert origin.typed
        else:
            assert origin.kind in (LeafKind.CATALOG, LeafKind.SOURCE)
            assert origin.citation is not None
    waiting = {path for path, figure in walk_results(done.losses) if figure.is_missing}
    assert waiting <= {"site/ground", "site/soil_conductivity"}


def lies_in(job: Job, path: str) -> bool:
    """True where something was written at a path of a job."""
    node: Any = job.source.tree
    for step in path.split("/"):
        if not isinstance(node, Mapping) or step not in node.entries:
            return False
        node = node.entries[step]
    return True


@pytest.mark.parametrize("name", JOBS)
def test_no_path_is_defined_twice(name: str) -> None:
    done = design(JOBS[name])
    paths = [path for step in done.steps for path, _ in walk_results(step)]
    assert len(paths) == len(set(paths))
    for figure in entries(done.job):
        if isinstance(figure.origin, Leaf) and figure.origin.path in done.results:
            there = done.results[figure.origin.path]
            # What an emitter gives, and the fuel for heating, stand where what they are found from was typed.
            found_from = (
                there.origin.__class__ is Formula and figure.origin.path.rpartition("/")[2] in SAME_WORD
            )
            assert there is figure or (found_from and any(each is figure for each in ancestors(there)))
