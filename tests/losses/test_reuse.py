"""A design made from an earlier one is the same, figure by figure, and takes over what has not changed."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from importlib import resources
from math import isnan
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from heatledger.job.errors import JobErrors
from heatledger.job.load import read_job, read_tree
from heatledger.job.model import Job
from heatledger.job.text import Mapping
from heatledger.ledger.figures import leaves
from heatledger.steps.design import design
from tests.losses.houses import house
from tests.losses.sameness import same

DEMOS = ("ferrow-house", "lerch-cottage")


@cache
def demo(name: str) -> Job:
    text = resources.files("heatledger").joinpath("examples", f"{name}.yaml").read_text("utf-8")
    return read_job(text, f"{name}.yaml")


@pytest.mark.parametrize("name", DEMOS)
def test_every_what_if_of_the_demos(name: str) -> None:
    job = demo(name)
    earlier = design(job)
    assert job.what_ifs
    for id in job.what_ifs:
        laid = job.with_what_ifs(id)
        fast = design(laid, since=earlier)
        same(fast, design(laid))
        # What is done to the heating moves other figures than the loss, so every result is looked at.
        assert {path: float(each) for path, each in fast.results.items()} != {
            path: float(each) for path, each in earlier.results.items()
        }
        same(design(job, since=fast), earlier)
    same(design(job.with_what_ifs(*job.what_ifs), since=earlier), design(job.with_what_ifs(*job.what_ifs)))


def test_nothing_is_done_again_for_the_same_job() -> None:
    earlier = design(demo("ferrow-house"))
    again = design(earlier.job, since=earlier)
    assert again.losses.site is earlier.losses.site
    assert all(again.losses.rooms[id] is each for id, each in earlier.losses.rooms.items())
    assert all(again.losses.unheated[id] is each for id, each in earlier.losses.unheated.items())


def test_rooms_that_were_not_touched_are_taken_over() -> None:
    earlier = design(demo("ferrow-house"))
    change = {"set": "rooms/bathroom/air/changes", "to": "1.0 ACH"}
    later = design(earlier.job.with_changes([change]), since=earlier)
    kept = {id for id, each in later.losses.rooms.items() if each is earlier.losses.rooms[id]}
    assert kept == set(earlier.losses.rooms) - {"bathroom"}
    assert later.losses.unheated["basement"] is earlier.losses.unheated["basement"]


def test_a_change_of_a_space_reaches_the_rooms_that_touch_it_and_no_others() -> None:
    earlier = design(demo("ferrow-house"))
    change = {"set": "constructions/basement-wall/r_value", "to": "R-10"}
    later = design(earlier.job.with_changes([change]), since=earlier)
    same(later, design(later.job))
    upper = {id for id, room in later.job.rooms.items() if room.level.id == "upper"}
    for id in set(later.losses.rooms) - upper:
        assert later.losses.rooms[id] is not earlier.losses.rooms[id]
        assert float(later.losses.rooms[id].loss) < float(earlier.losses.rooms[id].loss)


def test_a_mark_of_a_room_reaches_the_space_that_got_its_ceiling() -> None:
    earlier = design(demo("ferrow-house"))
    later = design(
        earlier.job.with_changes([{"set": "rooms/bathroom/known", "to": "assumed"}]), since=earlier
    )
    same(later, design(later.job))
    assert later.losses.unheated["attic"] is not earlier.losses.unheated["attic"]


def test_what_no_loss_rests_on_changes_nothing() -> None:
    earlier = design(demo("ferrow-house"))
    for change in ({"set": "notes", "to": "seen on Monday"}, {"set": "heated_floor_area", "to": "1700 ft2"}):
        later = design(earlier.job.with_changes([change]), since=earlier)
        assert all(later.losses.rooms[id] is each for id, each in earlier.losses.rooms.items())


Edit = dict[str, Any] | list[dict[str, Any]]
"""One change, or some that go together."""
BEDROOM_3 = ("rooms/bedroom-3", "emitters/bedroom-3-base", "circuits/upper/runs/bedroom-3-base")

EDITS: tuple[Edit, ...] = (
    {"set": "site/outdoor", "to": "-10 °F"}, {"set": "site/indoor", "to": "68 °F"}, {"set": "site/outdoor",
    "to": ""},
    {"set": "site/elevation", "to": "3000 ft"}, {"set": "site/ground_temperature", "to": "48 °F"},
    {"set": "air/changes", "to": "0.35 ACH"}, {"set": "air/changes", "to": ""}, {"set": "measured",
    "to": "outside"},
    {"set": "levels/upper/wall_height", "to": "8' 6\""}, {"set": "levels/ground/ceiling_height",
    "to": "8' 3\""},
    {"set": "constructions/wall-2x4/u_value", "to": "U-0.25"}, {"set": "constructions/old-window/u_value",
    "to": ""},
    {"set": "constructions/basement-wall/r_value", "to": "R-8"},
    {"set": "constructions/garage-slab/f_factor", "to": "0.5 Btu/(h·ft·°F)"},
    {"set": "rooms/kitchen/indoor", "to": "66 °F"}, {"set": "rooms/bathroom/indoor", "to": "75 °F"},
    {"set": "rooms/study/size", "to": "14' 0\" × 11' 0\""}, {"set": "rooms/kitchen/air/exposed_sides",
    "to": "2"},
    {"set": "rooms/study/surfaces/floor/size", "to": "14' 0\" × 10' "
                                                     "0\""}, {"set": "rooms/bathroom/known", "to": "assumed"},
    {"remove": "rooms/dining/surfaces/east-wall/openings/w5"}, {"remove": "rooms/study/surfaces/floor"},
    {"set": "rooms/kitchen/surfaces/garage-wall/beyond", "to": "outdoors"},
    [{"remove": each} for each in BEDROOM_3],
    {"set": "rooms/bedroom-2/surfaces/east-wall/beyond", "to": "rooms/bathroom"},
    {"set": "rooms/hall/surfaces/ceiling/beyond", "to": "outdoors"},
    {"set": "unheated/basement/heat", "to": "2000 Btu/h"}, {"set": "unheated/attic/air/changes",
    "to": "5 ACH"},
    {"add": "unheated/basement/surfaces/garage", "to": {"construction": "bare-concrete", "area": "60 ft2",
    "beyond": "unheated/garage"}},
    {"add": "rooms/den", "to": {"level": "upper", "size": "10' × 10'", "surfaces": {
        "ceiling": {"construction": "attic-r30", "size": "10' × 10'", "beyond": "unheated/attic"}}}},
    {"set": "rooms/kitchen/surfaces/floor/known", "to": "told"}, {"set": "known", "to": "told"},
    {"set": "ranges", "to": {"air-changes": {"assumed": "40 %"}}},
    {"set": "ranges", "to": {"u-value": {"told": "20 %"}}},
    {"set": "unheated/attic/known", "to": "told"}, {"set": "site/place", "to": "Harrow End"},
    {"set": "air/exposed_sides", "to": "2"}, {"set": "air/exposed_sides", "to": "3"},
    {"set": "unheated/garage/air/exposed_sides", "to": "3"},
    {"set": "rooms/kitchen/name", "to": "Scullery"}, {"set": "levels/upper/name", "to": "Top"},
    {"set": "unheated/garage/name", "to": "Shed"}, {"set": "constructions/old-window/name", "to": "Sash"},
    {"set": "constructions/wall-2x4/catalog", "to": "frame-wall-2x4-r-13"},
    {"set": "constructions/wall-2x4/catalog", "to": {"is": "frame-wall-2x4-r-11", "within": "3 %"}},
    {"set": "rooms/study/level", "to": "upper"}, {"set": "rooms/study/habitable", "to": "no"},
    {"add": "neighbors/flat", "to": {"temperature": "60 °F"}},
    {"set": "neighbors/flat/temperature", "to": "55 °F"}, {"set": "neighbors/flat/name", "to": "Next door"},
    {"set": "rooms/study/surfaces/west-wall/beyond", "to": "neighbors/flat"},
    {"set": "unheated/garage/surfaces/roof/beyond", "to": "neighbors/flat"},
    {"set": "rooms/dining/surfaces/south-wall/openings/w4/count", "to": "2"},
    {"add": "unheated/basement/surfaces/wall-above-grade/openings/w", "to": {"construction": "old-window",
    "area": "4 ft2"}},
    {"set": "emitters/kitchen-base/length", "to": "11 ft"}, {"remove": "emitters/study-base/length"},
    {"set": "emitters/hall-base/name", "to": "Long one"}, {"set": "circuits/upper/name", "to": "Loop"},
    {"set": "circuits/ground/name", "to": "Below"}, {"set": "rooms/hall/indoor", "to": "0 °F"},
    {"set": "rooms/kitchen/free_wall", "to": "12 ft"},
    {"set": "plant/supply", "to": "150 °F"}, {"remove": "plant/supply"}, {"set": "plant/drop", "to": "15 °F"},
    {"remove": "circuits/ground/tube"}, {"set": "circuits/upper/tube", "to": "3/4 in copper L"},
    {"set": "circuits/upper/runs/bathroom-base/length", "to": "9 ft"}, {"set": "circuits/upper/flow",
    "to": "1.5 gpm"},
    {"set": "circuits/ground/runs/hall-base/tube", "to": "3/8 in PEX"}, {"remove": "plant/mains"},
    {"set": "circuits/ground/runs/study-base/length", "to": ""}, {"set": "plant/height", "to": "22 ft"},
    {"set": "plant/circulators/p1/shutoff", "to": "7.5 ft"}, {"set": "plant/boiler/rated_head", "to": "1 ft"},
    {"set": "controls/coldest_supply", "to": "155 °F"}, {"set": "readings/outdoor", "to": "25 °F"},
    {"set": "readings/calling", "to": "upper"}, {"set": "bills/last-winter/base", "to": "62 °F"},
)  # fmt: skip


def edited(job: Job, edit: Edit) -> Job:
    """The job with an edit made."""
    return job.with_changes(edit if isinstance(edit, list) else [edit])


def moved_last(job: Job, *path: str) -> Job:
    """The same job with one entry of a mapping written after the others."""
    tree = job.source.tree
    chain = [tree]
    for step in path[:-1]:
        inner = chain[-1].entries[step]
        assert isinstance(inner, Mapping)
        chain.append(inner)
    moved: Any = {key: each for key, each in chain[-1].entries.items() if key != path[-1]}
    moved[path[-1]] = chain[-1].entries[path[-1]]
    made = replace(chain[-1], entries=moved)
    for step, each in zip(reversed(path[:-1]), reversed(chain[:-1]), strict=True):
        made = replace(each, entries={**each.entries, step: made})
    return read_tree(made, replace(job.source, tree=made))


MOVES = (
    ("rooms", "living"), ("rooms", "bedroom-1"), ("unheated", "basement"), ("unheated", "attic"),
    ("levels", "ground"), ("rooms", "living", "surfaces", "south-wall"),
    ("rooms", "living", "surfaces", "west-wall", "openings", "w2"),
    ("unheated", "garage", "surfaces", "walls"), ("constructions", "wall-2x4"),
    ("emitters", "living-base"), ("circuits", "ground"), ("circuits", "ground", "runs", "living-base"),
    ("circuits", "upper", "runs", "bathroom-base"), ("zones", "ground"),
)  # fmt: skip


@pytest.mark.parametrize("path", MOVES, ids="/".join)
def test_another_order_is_the_order_of_the_design(path: tuple[str, ...]) -> None:
    earlier = design(demo("ferrow-house"))
    job = moved_last(earlier.job, *path)
    later = design(job, since=earlier)
    same(later, design(job))
    if path[0] in ("rooms", "unheated"):
        assert list(later.results) != list(earlier.results)


def test_two_what_ifs_that_set_one_value_alike_are_told_apart() -> None:
    alike = "{name: %s, changes: [{set: rooms/bathroom/ceiling_height, to: 9 ft}]}"
    base = demo("ferrow-house").source.text
    text = base.replace("what-ifs:\n", f"what-ifs:\n  a: {alike % 'A'}\n  b: {alike % 'B'}\n")
    job = read_job(text, "f.yaml")
    one, two = job.with_what_ifs("a"), job.with_what_ifs("b")
    later = design(two, since=design(one))
    same(later, design(two))
    (height,) = (
        each for each in leaves(later["rooms/bathroom/air/volume"]) if each.origin.words == "ceiling height"
    )
    assert height.origin.beside == ("from the what-if b",)


STEPS = st.one_of(st.sampled_from(EDITS), st.sampled_from(MOVES))


@settings(max_examples=25)
@given(st.lists(STEPS, min_size=1, max_size=5))
def test_after_any_edits_it_is_the_design_made_anew(picked: list[Any]) -> None:
    job, done = demo("ferrow-house"), design(demo("ferrow-house"))
    for each in picked:
        try:
            job = moved_last(job, *each) if isinstance(each, tuple) else edited(job, each)
        except (JobErrors, KeyError):
            # Edits that do not go together are refused, which is not what is looked at here.
            continue
        done = design(job, since=done)
        same(done, design(job))


def test_edits_go_through_one_by_one() -> None:
    start = demo("ferrow-house").with_changes([{"add": "neighbors/flat", "to": {"temperature": "50 °F"}}])
    earlier = design(start)
    for each in EDITS:
        if isinstance(each, list) or each.get("add") != "neighbors/flat":
            job = edited(start, each)
            same(design(job, since=earlier), design(job))


def test_a_missing_entry_stops_only_what_rests_on_it() -> None:
    job = demo("ferrow-house").with_changes([{"set": "rooms/study/surfaces/west-wall/length", "to": ""}])
    done = design(job)
    assert isnan(done["rooms/study/loss"])
    assert isnan(done["house/loss"])
    whole = design(demo("ferrow-house"))
    for id in set(job.rooms) - {"study"}:
        assert float(done.losses.rooms[id].loss) == float(whole.losses.rooms[id].loss)
    assert isnan(done["levels/ground/loss"])
    assert float(done["levels/upper/loss"]) == float(whole["levels/upper/loss"])


def test_a_missing_entry_of_a_space_leaves_the_rooms_away_from_it() -> None:
    job = house("brick").with_changes([{"set": "constructions/buried/r_value", "to": ""}])
    done = design(job)
    assert isnan(done.losses.unheated["basement"].temperature)
    assert isnan(done["rooms/parlor/surfaces/floor/loss"])
    assert not isnan(done["rooms/parlor/surfaces/west-wall/loss"])
    assert not isnan(done["rooms/parlor/air/loss"])
