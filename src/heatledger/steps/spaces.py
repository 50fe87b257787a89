"""Unheated spaces: each finds its own temperature from a heat balance.

A space that touches no other unheated space has a formula of its own. Spaces that touch one another
are found together.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from heatledger.job.model import Beyond, Job, Surface, Unheated
from heatledger.ledger.dimensions import TEMPERATURE, AirChanges, Conductance, HeatRate, Temperature, Volume
from heatledger.ledger.figures import Figure
from heatledger.ledger.results import result
from heatledger.ledger.solving import Sides, Unknown, solve
from heatledger.physics.air import air_conductance, room_volume
from heatledger.physics.envelope import conductance, net_area
from heatledger.physics.ground import edge_conductance
from heatledger.physics.spaces import flow_between, heat_in, heat_out, heat_toward, space_temperature
from heatledger.steps.site import SiteConditions
from heatledger.steps.surfaces import (
    area_of_opening,
    floor_area_of,
    gross_area,
    surface_u,
    total_area,
    u_value_of,
)


@result
class Boundary:
    """One thing an unheated space exchanges heat through: how well, and to what.

    ``toward`` is what it would send into the space at outdoor temperature, where that is asked for.
    Windows and doors in it stand under ``openings``, and its own conductance is without them.
    """

    name: str
    beyond: Beyond
    conductance: Conductance
    toward: HeatRate | None = None
    openings: dict[str, Boundary] = field(default_factory=dict)


def every(surfaces: Iterable[Boundary]) -> list[Boundary]:
    """Surfaces and their openings in one list, each opening after its surface."""
    return [one for each in surfaces for one in (each, *each.openings.values())]


@result
class SpaceAir:
    """Outdoor air that passes through an unheated space."""

    volume: Volume
    changes: AirChanges
    conductance: Conductance


@result
class UnheatedSpace:
    """An unheated space on the design day."""

    name: str
    surfaces: dict[str, Boundary]
    air: SpaceAir | None
    heat: HeatRate | None
    temperature: Temperature


@dataclass(frozen=True)
class _Parts:
    """What a space exchanges heat with, before its temperature is known."""

    space: Unheated
    surfaces: dict[str, Boundary]
    air: SpaceAir | None

    def to(self, *kinds: str) -> list[Boundary]:
        return [each for each in every(self.surfaces.values()) if each.beyond.kind in kinds]


def unheated_spaces(job: Job, site: SiteConditions) -> dict[str, UnheatedSpace]:
    """Every unheated space of the house with its temperature on the design day."""
    parts = {id: _parts(space, site) for id, space in job.unheated.items()}
    temperatures: dict[str, Figure] = {}
    for group in _groups(parts):
        if len(group) == 1:
            id = group[0]
            parts[id] = _with_heats(parts[id], job, site)
            temperatures[id] = _alone(parts[id], site)
        else:
            temperatures |= _together({id: parts[id] for id in group}, job, site)
    return {
        id: UnheatedSpace(each.space.name, each.surfaces, each.air, each.space.heat, temperatures[id])
        for id, each in parts.items()
    }


def temperature_beyond(
    beyond: Beyond, job: Job, site: SiteConditions, spaces: Mapping[str, Figure]
) -> Figure:
    """Temperature on the other side of a surface."""
    if beyond.kind == "room":
        return job.rooms[beyond.id].indoor
    if beyond.kind == "unheated":
        return spaces[beyond.id]
    if beyond.kind == "neighbor":
        return job.neighbors[beyond.id].temperature
    return site.ground if beyond.kind == "ground" else site.outdoor


def _parts(space: Unheated, site: SiteConditions) -> _Parts:
    surfaces = {id: _boundary(each, space, site) for id, each in space.surfaces.items()}
    return _Parts(space, surfaces, _space_air(space, site))


def _boundary(surface: Surface, space: Unheated, site: SiteConditions) -> Boundary:
    gross = gross_area(surface, space)
    if gross is None:
        assert surface.construction.f_factor is not None and surface.length is not None
        edge = edge_conductance(f_factor=surface.construction.f_factor, edge=surface.length)
        return Boundary(surface.name, surface.beyond, edge)
    net, openings = gross, {}
    if surface.openings:
        areas = {key: area_of_opening(each) for key, each in surface.openings.items()}
        net = net_area(gross=gross, openings=total_area(list(areas.values())))
        for key, each in surface.openings.items():
            through = conductance(area=areas[key], u_value=u_value_of(each.construction))
            openings[key] = Boundary(each.name, surface.beyond, through)
    through = conductance(area=net, u_value=surface_u(surface, site))
    return Boundary(surface.name, surface.beyond, through, None, openings)


def _space_air(space: Unheated, site: SiteConditions) -> SpaceAir | None:
    changes = space.air.changes
    volume = space.volume
    if volume is None:
        floor_area = floor_area_of(space)
        if floor_area is None or space.ceiling_height is None:
            return None
        volume = room_volume(floor_area=floor_area, ceiling_height=space.ceiling_height)
    through = air_conductance(volume=volume, changes=changes, air_heat=site.air_heat)
    return SpaceAir(volume, changes, through)


def _with_heats(parts: _Parts, job: Job, site: SiteConditions) -> _Parts:
    """The same parts with what each room, neighbor and the ground would send into the space."""

    def heated(each: Boundary) -> Boundary:
        toward = None
        if each.beyond.kind != "outdoors":
            there = temperature_beyond(each.beyond, job, site, {})
            toward = heat_toward(conductance=each.conductance, beyond=there, outdoor=site.outdoor)
        openings = {key: heated(one) for key, one in each.openings.items()}
        return Boundary(each.name, each.beyond, each.conductance, toward, openings)

    return _Parts(parts.space, {id: heated(each) for id, each in parts.surfaces.items()}, parts.air)


def _alone(parts: _Parts, site: SiteConditions) -> Figure:
    boundaries = every(parts.surfaces.values())
    heats = [each.toward for each in boundaries if each.toward is not None]
    if parts.space.heat is not None:
        heats.append(parts.space.heat)
    conductances = [each.conductance for each in boundaries]
    if parts.air is not None:
        conductances.append(parts.air.conductance)
    return space_temperature(outdoor=site.outdoor, heats=heats, conductances=conductances)


def _together(group: Mapping[str, _Parts], job: Job, site: SiteConditions) -> dict[str, Figure]:
    """Temperatures of spaces that touch one another: in each, as much heat comes in as leaves."""

    def equations(found: Mapping[str, Figure]) -> Sides:
        sides = {}
        for id, parts in group.items():
            own = found[id]
            into = [
                flow_between(
                    conductance=each.conductance,
                    warmer=temperature_beyond(each.beyond, job, site, found),
                    colder=own,
                )
                for each in parts.to("room", "neighbor", "ground", "unheated")
            ]
            if parts.space.heat is not None:
                into.append(parts.space.heat)
            out = [each.conductance for each in parts.to("outdoors")]
            if parts.air is not None:
                out.append(parts.air.conductance)
            away = [flow_between(conductance=each, warmer=own, colder=site.outdoor) for each in out]
            sides[id] = (heat_in(parts=into), heat_out(parts=away))
        return sides

    start = float(site.outdoor)
    names = " and ".join(parts.space.name for parts in group.values())
    solution = solve(
        f"the heat balances of {names}", {id: Unknown(TEMPERATURE, start) for id in group}, equations
    )
    return dict(solution.figures)


def _groups(parts: Mapping[str, _Parts]) -> list[list[str]]:
    """Spaces that touch one another, directly or through a third."""
    touches = {id: {b.beyond.id for b in each.to("unheated")} for id, each in parts.items()}
    groups: list[list[str]] = []
    left = list(parts)
    while left:
        group, queue = [], [left[0]]
        while queue:
            id = queue.pop()
            if id in left:
                left.remove(id)
                group.append(id)
                queue += [each for each in parts if each in touches[id] or id in touches[each]]
        groups.append([each for each in parts if each in group])
    return groups
