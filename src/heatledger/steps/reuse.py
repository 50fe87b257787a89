"""What of an earlier design still holds: compared entry by entry, in order.

An entry that is typed, known and changed the same way is the same figure, also in another reading of the
job, so figures are compared by identity: a mark, a half-range or the name of a what-if that differs makes
another figure.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, fields
from operator import attrgetter
from typing import Any

from heatledger.job.model import Beyond, Job, Room, Surface, Unheated
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
    if job.site != earlier.site:
        return NOTHING
    same_air = job.air == earlier.air
    spaces = list(job.unheated) == list(earlier.unheated) and all(
        _same(each, earlier.unheated[id])
        and all(_same_beyond(one, job, earlier) for one in each.surfaces.values())
        for id, each in job.unheated.items()
    )

    def holds(room: Room, before: Room) -> bool:
        if not (same_air or room.air is not None) or not _same(room, before):
            return False
        return all(
            spaces if each.beyond.kind == "unheated" else _same_beyond(each, job, earlier)
            for each in room.surfaces.values()
        )

    rooms = job.rooms.items()
    return Unchanged(
        True,
        spaces,
        frozenset(id for id, room in rooms if id in earlier.rooms and holds(room, earlier.rooms[id])),
    )


def _entries_of(kind: type[Any]) -> Callable[[Any], tuple[Any, ...]]:
    # The texts typed say no more than the figures read from them; mappings are compared in their order.
    return attrgetter(
        *(each.name for each in fields(kind) if each.name not in ("raw", "surfaces", "openings"))
    )


_OF_ROOM, _OF_SPACE, _OF_SURFACE = _entries_of(Room), _entries_of(Unheated), _entries_of(Surface)


def _same(one: Room | Unheated, other: Room | Unheated) -> bool:
    """True when two spaces say the same, entry by entry and in the same order."""
    entries = _OF_ROOM if isinstance(one, Room) else _OF_SPACE
    if entries(one) != entries(other) or list(one.surfaces) != list(other.surfaces):
        return False
    return all(
        _OF_SURFACE(each) == _OF_SURFACE(before)
        and each.openings == before.openings
        and list(each.openings) == list(before.openings)
        for each, before in zip(one.surfaces.values(), other.surfaces.values(), strict=True)
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
