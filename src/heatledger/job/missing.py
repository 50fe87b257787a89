"""What is missing in a job: the entries that its heat loss waits for."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from heatledger.job.model import Air, Construction, Job, Opening, Room, Surface, Unheated
from heatledger.ledger.figures import Figure


class MissingEntry(NamedTuple):
    """One entry that is not given yet: its path in the job, and what it is."""

    path: str
    words: str


def missing_entries(job: Job) -> list[MissingEntry]:
    """Every entry that is needed and not given, in the order of the work; empty when none is."""
    found: dict[str, MissingEntry] = {}
    if not job.rooms:
        found["rooms"] = MissingEntry("rooms", "at least one heated room")
    for figure in _needed(job):
        if figure is not None and figure.is_missing:
            found.setdefault(figure.origin.path, MissingEntry(figure.origin.path, figure.origin.words))
    return list(found.values())


def _needed(job: Job) -> Iterator[Figure | None]:
    site = job.site
    # The loss for each degree is reckoned from the indoor temperature of the site in every house.
    yield from (site.outdoor, site.indoor, site.elevation)
    spaces: list[Room | Unheated] = [*job.rooms.values(), *job.unheated.values()]
    if any(each.beyond.kind == "ground" for space in spaces for each in space.surfaces.values()):
        yield from (site.ground_temperature, site.ground_amplitude, site.soil_conductivity)
    if any(each.air is None for each in job.rooms.values()):
        yield from _of_air(job.air)
    for room in job.rooms.values():
        yield from (room.floor_area, room.length, room.width, room.ceiling_height, room.indoor)
        yield from _of_air(room.air)
    for space in job.unheated.values():
        yield from (space.floor_area, space.volume, space.heat)
        if space.volume is None:
            yield space.ceiling_height
        yield from _of_air(space.air)
    for each in spaces:
        for surface in each.surfaces.values():
            yield from _of_surface(surface)
    for neighbor in job.neighbors.values():
        yield neighbor.temperature


def _of_air(air: Air | None) -> Iterator[Figure | None]:
    if air is not None:
        yield air.changes


def _of_surface(surface: Surface) -> Iterator[Figure | None]:
    if surface.area is None:
        yield from (surface.length, surface.height)
    yield from (surface.area, surface.width, surface.depth, surface.top, surface.bottom)
    yield from _of_construction(surface.construction)
    for each in surface.openings.values():
        yield from _of_opening(each)


def _of_opening(opening: Opening) -> Iterator[Figure | None]:
    yield from (opening.area, opening.width, opening.height, opening.count)
    yield from _of_construction(opening.construction)


def _of_construction(made_of: Construction) -> Iterator[Figure | None]:
    yield from (made_of.u_value, made_of.r_value, made_of.f_factor)
