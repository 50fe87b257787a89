"""A surface between two spaces is given once, and the other space has it too."""

from __future__ import annotations

from heatledger.job.load import read_job
from tests.job.samples import example, small


def test_the_other_room_gets_it_by_itself() -> None:
    job = small()
    ours = job.rooms["kitchen"].surfaces["inner-wall"]
    theirs = job.rooms["hall"].surfaces["kitchen-inner-wall"]
    assert theirs.from_other == "rooms/kitchen/surfaces/inner-wall"
    assert ours.from_other == ""
    assert theirs.area is ours.area
    assert theirs.construction is ours.construction
    assert (theirs.beyond.kind, theirs.beyond.id) == ("room", "kitchen")


def test_each_keeps_its_own_when_both_give_it_alike() -> None:
    wall = "      inner-wall: {construction: wall, area: 99 ft2, beyond: rooms/kitchen}\n"
    both = f"    floor_area: 100 ft2\n    surfaces:\n{wall}"
    job = small(("    floor_area: 100 ft2\n", both))
    assert list(job.rooms["hall"].surfaces) == ["inner-wall"]
    assert job.rooms["hall"].surfaces["inner-wall"].from_other == ""


def test_an_unheated_space_has_the_floors_of_the_rooms_above() -> None:
    job = read_job(example("ferrow-house"))
    basement = job.unheated["basement"].surfaces
    given = {each for each, surface in basement.items() if surface.from_other}
    assert given == {"living-floor", "dining-floor", "kitchen-floor", "study-floor", "hall-floor"}
    assert basement["floor"].from_other == ""
    assert basement["kitchen-floor"].length is job.rooms["kitchen"].surfaces["floor"].length


def test_no_name_is_taken_twice() -> None:
    wall = "      kitchen-inner-wall: {construction: wall, area: 9 ft2, beyond: outdoors}\n"
    hall = small(("  hall:\n", f"  hall:\n    surfaces:\n{wall}")).rooms["hall"].surfaces
    assert len(hall) == 2
    assert hall["kitchen-inner-wall"].from_other == ""
    assert {each.id for each in hall.values()} == set(hall)
