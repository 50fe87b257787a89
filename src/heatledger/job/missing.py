"""What is missing in a job: what its heat loss waits for, and the sections of the system that are begun."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields
from typing import NamedTuple

from heatledger.job.model import Air, Construction, Job, Opening, Room, Surface, Unheated
from heatledger.job.system_model import Boiler, Pipe
from heatledger.ledger.dimensions import TEMPERATURE
from heatledger.ledger.figures import Figure, missing

NO_SUPPLY = (
    "design supply (until then the lowest that serves every room is used; what emitters give, the return and "
    "the reset wait for the one you choose)"
)


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
    boiler = job.system.plant.boiler
    for each in [] if boiler is None else _words_of_boiler(boiler):
        found[each.path] = each
    return list(found.values())


def _no_supply(job: Job) -> Iterator[Figure]:
    """The design supply where emitters are given without it: what stands in for it, and what waits."""
    if job.system.emitters and job.system.plant.supply is None:
        yield missing(TEMPERATURE, "plant/supply", NO_SUPPLY)


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
    yield from _of_system(job)


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


def _of_system(job: Job) -> Iterator[Figure | None]:
    """What the sections of the system that the job has begun wait for; blank readings are no gap."""
    system = job.system
    yield from _no_supply(job)
    for emitter in system.emitters.values():
        yield from _figures_of(emitter)
    for circuit in system.circuits.values():
        yield from (circuit.flow, circuit.drop)
        for pipe in (circuit.common, *circuit.runs.values()):
            yield from _of_pipe(pipe)
    plant = system.plant
    if "plant" in job.raw:
        yield from _figures_of(plant)
    for each in (plant.boiler, plant.tank, *plant.circulators.values(), system.controls):
        yield from _figures_of(each)
    if plant.mains is not None:
        yield from _of_pipe(plant.mains)
    for bill in system.bills.values():
        yield from _figures_of(bill)


def _figures_of(thing: object) -> Iterator[Figure | None]:
    if thing is None:
        return
    for each in fields(thing):  # type: ignore[arg-type]
        value = getattr(thing, each.name)
        if isinstance(value, Figure):
            yield value


def _of_pipe(pipe: Pipe) -> Iterator[Figure | None]:
    """The figures of a piece of piping. A tube that is not named is for the design to choose."""
    yield from (pipe.length, pipe.valve, pipe.insulation)
    for each in pipe.fittings.values():
        yield each.count


def _words_of_boiler(boiler: Boiler) -> Iterator[MissingEntry]:
    if not boiler.fuel:
        yield MissingEntry("plant/boiler/fuel", "fuel")
    if not boiler.kind:
        yield MissingEntry("plant/boiler/kind", "kind of boiler")
