"""A surface between two spaces is given once, and the other space has it too."""

from __future__ import annotations

import pytest

from heatledger.job.errors import JobErrors
from heatledger.job.load import read_job
from heatledger.job.model import Job, Room, Unheated
from heatledger.steps.design import design
from tests.job.samples import codes, example, small


def test_the_other_room_gets_it_by_itself() -> None:
    job = small()
    ours = job.rooms["kitchen"].surfaces["inner-wall"]
    theirs = job.rooms["hall"].surfaces["kitchen.inner-wall"]
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
    assert given == {"living.floor", "dining.floor", "kitchen.floor", "study.floor", "hall.floor"}
    assert basement["floor"].from_other == ""
    assert basement["kitchen.floor"].length is job.rooms["kitchen"].surfaces["floor"].length


def test_no_name_is_taken_twice() -> None:
    wall = "      kitchen-inner-wall: {construction: wall, area: 9 ft2, beyond: outdoors}\n"
    hall = small(("  hall:\n", f"  hall:\n    surfaces:\n{wall}")).rooms["hall"].surfaces
    assert {id: each.from_other for id, each in hall.items()} == {
        "kitchen-inner-wall": "",
        "kitchen.inner-wall": "rooms/kitchen/surfaces/inner-wall",
    }


def given_to(job: Job, kind: str, id: str) -> list[str]:
    """Paths of the surfaces beyond which this space lies, where they are given."""
    spaces: dict[str, Room | Unheated] = {f"rooms/{key}": each for key, each in job.rooms.items()}
    spaces |= {f"unheated/{key}": each for key, each in job.unheated.items()}
    return sorted(
        f"{path}/surfaces/{key}"
        for path, space in spaces.items()
        for key, each in space.surfaces.items()
        if (each.beyond.kind, each.beyond.id, each.from_other) == (kind, id, "")
    )


def test_rooms_whose_ids_run_into_each_other_lose_no_surface() -> None:
    ceiling = {"construction": "attic-r30", "size": "10' × 10'", "beyond": "unheated/attic"}

    def with_ceiling(id: str) -> Job:
        room = {"level": "upper", "size": "10' × 10'", "surfaces": {id: ceiling}}
        return read_job(example("ferrow-house")).with_changes([{"add": "rooms/bedroom", "to": room}])

    job = with_ceiling("1-ceiling")
    attic = job.unheated["attic"].surfaces
    assert {"bedroom.1-ceiling", "bedroom-1.ceiling"} <= set(attic)
    gained = sorted(each.from_other for each in attic.values() if each.from_other)
    assert gained == given_to(job, "unheated", "attic")
    # The same surface under any other name gives the same attic.
    one, two = (float(design(each)["unheated/attic/temperature"]) for each in (job, with_ceiling("sloped")))
    assert one == two


def test_a_room_and_a_space_of_one_name_both_give_a_floor() -> None:
    floor = {"construction": "floor-joists", "area": "60 ft2", "beyond": "unheated/basement"}
    room = {"level": "ground", "size": "6' × 10'", "surfaces": {"floor": floor}}
    changes = [{"add": "rooms/garage", "to": room}, {"add": "unheated/garage/surfaces/floor", "to": floor}]
    basement = read_job(example("ferrow-house")).with_changes(changes).unheated["basement"].surfaces
    assert basement["garage.floor"].from_other == "rooms/garage/surfaces/floor"
    assert basement["unheated.garage.floor"].from_other == "unheated/garage/surfaces/floor"


def test_an_id_is_the_same_whatever_else_is_added() -> None:
    job = read_job(example("ferrow-house"))
    before = set(job.unheated["basement"].surfaces)
    wall = {"construction": "bare-concrete", "area": "9 ft2", "beyond": "outdoors"}
    later = job.with_changes([{"add": "unheated/basement/surfaces/kitchen-floor", "to": wall}])
    assert set(later.unheated["basement"].surfaces) == before | {"kitchen-floor"}


@pytest.mark.parametrize("verb", ["set", "remove", "add"])
def test_a_what_if_at_the_other_side_is_sent_to_where_it_is_given(verb: str) -> None:
    path = "unheated/basement/surfaces/kitchen.floor/size"
    change = {verb: path} if verb == "remove" else {verb: path, "to": "9' × 9'"}
    with pytest.raises(JobErrors) as caught:
        read_job(example("ferrow-house")).with_changes([change])
    (error,) = caught.value.errors
    assert error.code == "what-if-target"
    assert "`rooms/kitchen/surfaces/floor/size`" in error.mend


def test_nobody_can_type_the_id_of_another_side() -> None:
    with pytest.raises(JobErrors) as caught:
        small(("      inner-wall:", "      kitchen.inner-wall:"))
    assert codes(caught.value) == ["bad-id"]
