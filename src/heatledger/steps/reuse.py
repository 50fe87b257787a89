"""What of an earlier design still holds: compared entry by entry, in order.

An entry that is typed, known and changed the same way is the same figure, also in another reading of the
job, so figures are compared by identity: a mark, a half-range or the name of a what-if that differs makes
another figure.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, fields, is_dataclass
from functools import cache
from typing import Any

from heatledger.job.model import Beyond, Job, Room, Surface
from heatledger.ledger.figures import Figure


@dataclass(frozen=True)
class Unchanged:
    """Parts of the heat loss whose entries have not changed."""

    site: bool = False
    spaces: bool = False
    rooms: frozenset[str] = frozenset()


NOTHING = Unchanged()


def unchanged(job: Job, earlier: Job) -> Unchanged:
    """What of the earlier job's heat loss holds for this job too."""
    if job is earlier:
        return Unchanged(True, True, frozenset(job.rooms))
    if not alike(job.site, earlier.site):
        return NOTHING
    spaces = alike(job.unheated, earlier.unheated) and all(
        _same_beyond(each, job, earlier) for space in job.unheated.values() for each in space.surfaces.values()
    )
    rooms = frozenset(
        id
        for id, room in job.rooms.items()
        if id in earlier.rooms and _same_room(room, earlier.rooms[id], job, earlier, spaces)
    )
    return Unchanged(True, spaces, rooms)


def alike(one: Any, other: Any) -> bool:
    """True when two parts of a job say the same, entry by entry and in the same order."""
    if one is other:
        return True
    if one.__class__ is not other.__class__ or isinstance(one, Figure):
        return False
    if isinstance(one, Mapping):
        return list(one) == list(other) and all(alike(each, other[key]) for key, each in one.items())
    if is_dataclass(one):
        return all(alike(getattr(one, each), getattr(other, each)) for each in _compared(one.__class__))
    return bool(one == other)


@cache
def _compared(cls: type[Any]) -> tuple[str, ...]:
    # The texts typed say no more than the figures read from them.
    return tuple(each.name for each in fields(cls) if each.name != "raw")


def _same_room(room: Room, before: Room, job: Job, earlier: Job, spaces: bool) -> bool:
    if not alike(room, before) or (room.air is None and not alike(job.air, earlier.air)):
        return False
    return all(
        spaces if each.beyond.kind == "unheated" else _same_beyond(each, job, earlier)
        for each in room.surfaces.values()
    )


def _same_beyond(surface: Surface, job: Job, earlier: Job) -> bool:
    """True when what is beyond a surface is as warm as before, by the same entry."""
    return _warmth(surface.beyond, job) is _warmth(surface.beyond, earlier)


def _warmth(beyond: Beyond, job: Job) -> Figure | None:
    if beyond.kind == "room":
        return job.rooms[beyond.id].indoor if beyond.id in job.rooms else None
    if beyond.kind == "neighbor":
        return job.neighbors[beyond.id].temperature if beyond.id in job.neighbors else None
    return None
