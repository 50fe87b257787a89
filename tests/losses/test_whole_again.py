"""What a heat loss waits for is listed, and once it is given the heat loss is whole."""

from __future__ import annotations

from math import isnan
from typing import Any

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from heatledger.job.errors import JobErrors
from heatledger.job.load import read_job
from heatledger.job.missing import missing_entries
from heatledger.job.model import Job
from heatledger.job.text import Mapping, Scalar
from heatledger.ledger.figures import waits_for
from heatledger.steps.design import Design, design
from heatledger.steps.review import review
from tests.job.samples import EXAMPLES, example

TEXTS = {
    "elevation": "100 ft", "indoor": "70 °F", "outdoor": "0 °F", "temperature": "50 °F",
    "ground_temperature": "50 °F", "ground_amplitude": "10 K", "soil_conductivity": "1.4 W/(m·K)",
    "changes": "0.5 ACH", "exposed_sides": "2", "u_value": "U-0.3", "r_value": "R-5",
    "f_factor": "0.7 Btu/(h·ft·°F)", "floor_area": "400 ft2", "area": "90 ft2", "volume": "900 ft3",
    "heat": "500 Btu/h", "bottom": "6 ft", "top": "0 ft", "depth": "6 ft", "width": "9 ft",
    "length": "90 ft", "height": "8 ft", "wall_height": "9 ft", "ceiling_height": "8 ft", "count": "1",
}  # fmt: skip
"""Something lawful for every entry that may be missing."""


def paths_of(tree: Mapping, path: str = "") -> list[str]:
    found = []
    for key, each in tree.entries.items():
        here = f"{path}/{key}" if path else key
        found.append(here)
        if isinstance(each, Mapping):
            found += paths_of(each, here)
    return found


def losses(done: Design) -> list[Any]:
    found = [done.losses.house.loss, *(each.loss for each in done.losses.rooms.values())]
    return found + [each.temperature for each in done.losses.unheated.values()]


JOBS = {name: read_job(example(name), f"{name}.yaml") for name in EXAMPLES}
PLACES = {
    name: [
        each
        for each in paths_of(job.source.tree)
        if each.split("/")[0] in ("site", "constructions", "levels", "air", "rooms", "unheated")
    ]
    for name, job in JOBS.items()
}


def check_listed(job: Job) -> None:
    """Every entry that a loss waits for is listed; a loss that is missing leaves the list not empty."""
    listed = {each.path for each in missing_entries(job)}
    done = design(job)
    for figure in losses(done):
        assert {each.origin.path for each in waits_for(figure)} <= listed
        assert not isnan(figure) or listed
    review(done)
    if "rooms" in listed:
        if not job.levels:
            return
        # A room brings entries of its own, which are asked for next.
        room = {"level": next(iter(job.levels)), "floor_area": "90 ft2"}
        job = job.with_changes([{"set": "rooms", "to": {"den": room}}])
        listed = {each.path for each in missing_entries(job)}
    given_all = job.with_changes([{"set": each, "to": TEXTS[each.rpartition("/")[2]]} for each in listed])
    assert missing_entries(given_all) == []
    assert not any(isnan(each) for each in losses(design(given_all)))


CLASHES = {"openings-over-surface", "two-sizes", "two-factors", "top-below-bottom", "what-if-target"}
"""A stand-in value may be wrong beside what was typed, as a wall smaller than its window."""


@st.composite
def holes(draw: st.DrawFn) -> tuple[str, list[tuple[str, bool]]]:
    """A demo job, and places in it that are left empty or taken out."""
    name = draw(st.sampled_from(EXAMPLES))
    places = draw(st.lists(st.sampled_from(PLACES[name]), min_size=1, max_size=5, unique=True))
    return name, [(each, draw(st.booleans())) for each in places]


@settings(max_examples=60)
@given(holes())
def test_whatever_is_taken_out_is_asked_for(made: tuple[str, list[tuple[str, bool]]]) -> None:
    name, places = made
    job = JOBS[name]
    for path, empty in places:
        change = {"set": path, "to": ""} if empty else {"remove": path}
        try:
            job = job.with_changes([change])
        except JobErrors:
            continue  # what must be there is an error, which other tests look at
    assume(job is not JOBS[name])
    try:
        check_listed(job)
    except JobErrors as wrong:
        strange = {each.code for each in wrong.errors} - CLASHES
        if strange:
            pytest.fail(f"what is listed cannot be given: {strange}")


@pytest.mark.parametrize("name", EXAMPLES)
def test_each_value_left_empty_is_asked_for(name: str) -> None:
    job = JOBS[name]
    for path in PLACES[name]:
        node: Any = job.source.tree
        for step in path.split("/"):
            node = node.entries[step]
        if isinstance(node, Scalar) and path.rpartition("/")[2] in TEXTS:
            check_listed(job.with_changes([{"set": path, "to": ""}]))


def test_rooms_with_temperatures_of_their_own_wait_for_nothing_of_the_site() -> None:
    job = JOBS["ferrow-house"]
    own = [{"set": f"rooms/{each}/indoor", "to": "68 °F"} for each in job.rooms]
    spaces = [{"remove": f"unheated/{each}"} for each in job.unheated]
    toward = [
        {"set": f"rooms/{id}/surfaces/{key}/beyond", "to": "outdoors"}
        for id, room in job.rooms.items()
        for key, each in room.surfaces.items()
        if each.beyond.kind == "unheated"
    ]
    indoors = {"remove": "plant/mains/through"}
    alone = job.with_changes([*own, *toward, *spaces, indoors, {"set": "site/indoor", "to": ""}])
    done = design(alone)
    assert float(done["house/loss"]) > 0
    # The loss for each degree is reckoned from the indoor temperature of the site, so it is asked for.
    assert [each.path for each in missing_entries(alone)] == ["site/indoor"]
    assert isnan(done["house/coefficient"])
    check_listed(job.with_changes([*own, {"set": "site/indoor", "to": ""}]))


EMPTY = "format: 1\nunits: US\n"


@pytest.mark.parametrize("name", ["nothing", "spaces"])
def test_a_job_without_rooms_says_so_and_has_no_loss(name: str) -> None:
    job = read_job(EMPTY)
    if name == "spaces":
        job = JOBS["ferrow-house"]
        heated = ("emitters", "circuits", "zones", "readings")  # what names the rooms that go
        job = job.with_changes([{"remove": each} for each in (*(f"rooms/{id}" for id in job.rooms), *heated)])
    done = design(job)
    assert missing_entries(job)[0].path == "rooms"
    for each in ("loss", "per_area", "floor_area", "air_volume", "coefficient"):
        assert isnan(done[f"house/{each}"]), each
        assert "rooms" in {one.origin.path for one in waits_for(done[f"house/{each}"])}
    assert done.names.title(done["house/loss"]) == "Heat loss, House"
    said = {each.id: each.what for each in done.findings}
    assert said["no-rooms-yet"] == "There are no heated rooms yet, so there is no heat loss."
    assert "entry-not-used" not in said


def test_a_buried_floor_of_a_space_without_an_area_asks_for_it() -> None:
    change = {"remove": "unheated/basement/surfaces/floor/area"}
    volume = {"set": "unheated/basement/volume", "to": "5600 ft3"}
    job = JOBS["ferrow-house"].with_changes([change, {"remove": "unheated/basement/floor_area"}, volume])
    assert [each.path for each in missing_entries(job)] == ["unheated/basement/floor_area"]
    assert isnan(design(job)["unheated/basement/temperature"])
