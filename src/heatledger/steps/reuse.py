"""What of an earlier design still holds: compared by what was typed, room by room."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from heatledger.job.model import Job, Room, Surface, Unheated


@dataclass(frozen=True)
class Unchanged:
    """Parts of the heat loss whose entries have not changed."""

    site: bool = False
    spaces: bool = False
    rooms: frozenset[str] = frozenset()


NOTHING = Unchanged()

# Entries that no heat loss rests on.
_BESIDE = frozenset(
    ("name", "address", "prepared_by", "date", "invented", "notes", "limits", "decisions", "expectations",
     "what-ifs", "heated_floor_area", "built", "codes")
)  # fmt: skip
_MEASURES = ("area", "length", "height", "width", "depth", "top", "bottom")
_PARTS = frozenset(("rooms", "unheated", "constructions"))


def unchanged(job: Job, earlier: Job) -> Unchanged:
    """What of the earlier job's heat loss holds for this job too."""
    if job is earlier:
        return Unchanged(True, True, frozenset(job.rooms))
    ground, before = _ground(job), _ground(earlier)
    if ground != before:
        return NOTHING
    indoors = {id: _indoor(room) for id, room in job.rooms.items()}
    same_indoors = indoors == {id: _indoor(room) for id, room in earlier.rooms.items()}
    spaces = (
        same_indoors
        and job.unheated.keys() == earlier.unheated.keys()
        and all(_same(each, earlier.unheated[id]) for id, each in job.unheated.items())
    )
    rooms = frozenset(
        id
        for id, room in job.rooms.items()
        if id in earlier.rooms
        and _same(room, earlier.rooms[id])
        and (spaces or not _touches(room, "unheated"))
        and (same_indoors or not _touches(room, "room"))
    )
    return Unchanged(True, spaces, rooms)


def _ground(job: Job) -> Mapping[str, Any]:
    """Everything the rooms share: site, levels, air, neighbors, ranges and the marks above the rooms."""
    shared = {key: each for key, each in job.raw.items() if key not in _BESIDE | _PARTS}
    for part in _PARTS:
        entries = job.raw.get(part)
        if isinstance(entries, Mapping):
            shared[part] = {key: each for key, each in entries.items() if not isinstance(each, Mapping)}
    return shared


def _same(one: Room | Unheated, other: Room | Unheated) -> bool:
    """True when nothing typed for a space, its surfaces or their constructions differs."""
    if one.raw != other.raw or one.surfaces.keys() != other.surfaces.keys():
        return False
    return all(_same_surface(each, other.surfaces[id]) for id, each in one.surfaces.items())


def _same_surface(one: Surface, other: Surface) -> bool:
    if (one.raw, one.beyond, one.from_other) != (other.raw, other.beyond, other.from_other):
        return False
    # A surface that another space gave takes marks and heights from there, which its own text does not show.
    if any(getattr(one, each) is not getattr(other, each) for each in _MEASURES):
        return False
    pairs = [(one.construction, other.construction)]
    for id, opening in one.openings.items():
        before = other.openings[id]
        if any(
            getattr(opening, each) is not getattr(before, each)
            for each in ("area", "width", "height", "count")
        ):
            return False
        pairs.append((opening.construction, before.construction))
    return all(a.raw == b.raw and a.id == b.id for a, b in pairs)


def _indoor(room: Room) -> Any:
    return room.raw.get("indoor")


def _touches(room: Room, kind: str) -> bool:
    return any(each.beyond.kind == kind for each in room.surfaces.values())
