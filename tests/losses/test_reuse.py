"""A design made from an earlier one is the same, figure by figure, and takes over what has not changed."""

from __future__ import annotations

from functools import cache
from importlib import resources
from math import isnan
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from heatledger.job.errors import JobErrors
from heatledger.job.load import read_job
from heatledger.job.model import Job
from heatledger.ledger.figures import leaves
from heatledger.steps.design import Design, design
from tests.losses.houses import house

DEMOS = ("ferrow-house", "lerch-cottage")


@cache
def demo(name: str) -> Job:
    text = resources.files("heatledger").joinpath("examples", f"{name}.yaml").read_text("utf-8")
    return read_job(text, f"{name}.yaml")


def same(one: Design, other: Design) -> None:
    """Every path, every value, every entry it rests on."""
    first, second = one.results, other.results
    assert list(first) == list(second)
    for path, figure in first.items():
        assert float(figure) == float(second[path]) or (isnan(figure) and isnan(second[path])), path
    assert one.figures.keys() == other.figures.keys()
    # An entry typed and known the same way is the same figure, so how well each is known is compared too.
    assert {id(each) for each in leaves(one.losses.house.loss)} == {
        id(each) for each in leaves(other.losses.house.loss)
    }


@pytest.mark.parametrize("name", DEMOS)
def test_every_what_if_of_the_demos(name: str) -> None:
    job = demo(name)
    earlier = design(job)
    assert job.what_ifs
    for id in job.what_ifs:
        laid = job.with_what_ifs(id)
        fast = design(laid, since=earlier)
        same(fast, design(laid))
        assert float(fast["house/loss"]) != float(earlier["house/loss"])
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


EDITS: tuple[dict[str, Any], ...] = (
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
    {"set": "rooms/kitchen/surfaces/garage-wall/beyond", "to": "outdoors"}, {"remove": "rooms/bedroom-3"},
    {"set": "rooms/bedroom-2/surfaces/east-wall/beyond", "to": "rooms/bathroom"},
    {"set": "rooms/hall/surfaces/ceiling/beyond", "to": "outdoors"},
    {"set": "unheated/basement/heat", "to": "2000 Btu/h"}, {"set": "unheated/attic/air/changes",
    "to": "5 ACH"},
    {"add": "unheated/basement/surfaces/garage", "to": {"construction": "bare-concrete", "area": "60 ft2",
    "beyond": "unheated/garage"}},
    {"add": "rooms/den", "to": {"level": "upper", "size": "10' × 10'", "surfaces": {
        "ceiling": {"construction": "attic-r30", "size": "10' × 10'", "beyond": "unheated/attic"}}}},
)  # fmt: skip


@settings(max_examples=25)
@given(st.lists(st.sampled_from(range(len(EDITS))), min_size=1, max_size=4, unique=True))
def test_after_any_edits_it_is_the_design_made_anew(picked: list[int]) -> None:
    job, done = demo("ferrow-house"), design(demo("ferrow-house"))
    for i in picked:
        try:
            job = job.with_changes([EDITS[i]])
        except JobErrors:
            # Edits that do not go together are refused, which is not what is looked at here.
            continue
        done = design(job, since=done)
        same(done, design(job))


def test_edits_go_through_one_by_one() -> None:
    for each in EDITS:
        job = demo("ferrow-house").with_changes([each])
        same(design(job, since=design(demo("ferrow-house"))), design(job))


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
