"""The heat loss of each room, each story and the house on the design day."""

from __future__ import annotations

from collections.abc import Mapping

from heatledger.job.model import Beyond, Job, Room
from heatledger.ledger.dimensions import (
    AREA,
    HEAT_RATE,
    VOLUME,
    Area,
    Conductance,
    Dimension,
    HeatFlux,
    HeatRate,
    Ratio,
    Temperature,
    TemperatureDifference,
    Volume,
)
from heatledger.ledger.figures import Figure, missing
from heatledger.ledger.results import result
from heatledger.physics.air import volumes_total
from heatledger.physics.envelope import (
    areas_total,
    heat_loss,
    house_coefficient,
    loss_per_area,
    share,
    temperature_difference,
)
from heatledger.steps.air import AirLoss, room_air
from heatledger.steps.reuse import NOTHING, Unchanged
from heatledger.steps.site import SiteConditions, site_conditions
from heatledger.steps.spaces import UnheatedSpace, temperature_beyond, unheated_spaces
from heatledger.steps.surfaces import CAUSES, SurfaceLoss, TemperatureOf, floor_area_of, surface_loss


@result
class Cause:
    """What is lost through one kind of surface, or with air, and its share of the whole."""

    loss: HeatRate
    share: Ratio


@result
class RoomLoss:
    """One heated room on the design day."""

    name: str
    level: str
    floor_area: Area
    indoor: Temperature
    difference: TemperatureDifference
    surfaces: dict[str, SurfaceLoss]
    air: AirLoss
    causes: dict[str, Cause]
    loss: HeatRate
    per_area: HeatFlux


@result
class LevelLoss:
    """The rooms of one story."""

    name: str
    floor_area: Area
    loss: HeatRate
    per_area: HeatFlux


@result
class HouseLoss:
    """The whole house. Heat that passes between its rooms cancels in the sum of signed room losses."""

    floor_area: Area
    air_volume: Volume
    causes: dict[str, Cause]
    loss: HeatRate
    per_area: HeatFlux
    coefficient: Conductance


@result
class Losses:
    """Result of the heat loss step."""

    __path__ = ""

    site: SiteConditions
    unheated: dict[str, UnheatedSpace]
    rooms: dict[str, RoomLoss]
    levels: dict[str, LevelLoss]
    house: HouseLoss


def heat_losses(job: Job, since: Losses | None = None, same: Unchanged = NOTHING) -> Losses:
    """Heat loss of every room, every story and the house.

    ``same`` says what of the earlier run ``since`` rests on entries that have not changed; those
    results are taken over as they are.
    """
    site = since.site if since and same.site else site_conditions(job)
    unheated = since.unheated if since and same.spaces else unheated_spaces(job, site)
    found = {id: each.temperature for id, each in unheated.items()}

    def beyond(there: Beyond) -> Figure:
        return temperature_beyond(there, job, site, found)

    rooms = {
        id: since.rooms[id] if since and id in same.rooms else room_loss(room, job, site, beyond)
        for id, room in job.rooms.items()
    }
    levels = {
        id: _level(level.name, [rooms[each.id] for each in job.rooms.values() if each.level.id == id])
        for id, level in job.levels.items()
        if any(each.level.id == id for each in job.rooms.values())
    }
    return Losses(site, unheated, rooms, levels, _house(rooms, site))


def room_loss(room: Room, job: Job, site: SiteConditions, beyond: TemperatureOf) -> RoomLoss:
    """Heat loss of one room: its surfaces and their openings, and its air, by cause."""
    area = floor_area_of(room)
    assert area is not None
    surfaces = {id: surface_loss(each, room, room.indoor, site, beyond) for id, each in room.surfaces.items()}
    air = room_air(room, job, area, site, site.outdoor)
    parts: dict[str, list[Figure]] = {cause: [] for cause in CAUSES}
    for each in surfaces.values():
        parts[each.cause].append(each.loss)
        for opening in each.openings.values():
            parts[opening.cause].append(opening.loss)
    parts["air"].append(air.loss)
    causes, loss = _by_cause({cause: _sum(some) for cause, some in parts.items() if some})
    return RoomLoss(
        name=room.name,
        level=room.level.id,
        floor_area=area,
        indoor=room.indoor,
        difference=temperature_difference(indoor=room.indoor, outdoor=site.outdoor),
        surfaces=surfaces,
        air=air,
        causes=causes,
        loss=loss,
        per_area=loss_per_area(loss=loss, floor_area=area),
    )


def _sum(parts: list[Figure]) -> Figure:
    """The sum of several losses; a loss that stands alone is its own sum."""
    return parts[0] if len(parts) == 1 else heat_loss(parts=parts)


def _by_cause(losses: Mapping[str, Figure]) -> tuple[dict[str, Cause], Figure]:
    """The causes with their shares, and their sum."""
    whole = heat_loss(parts=losses.values())
    return {cause: Cause(each, share(part=each, whole=whole)) for cause, each in losses.items()}, whole


def _level(name: str, rooms: list[RoomLoss]) -> LevelLoss:
    area = areas_total(areas=[each.floor_area for each in rooms])
    loss = _sum([each.loss for each in rooms])
    return LevelLoss(name, area, loss, loss_per_area(loss=loss, floor_area=area))


def _house(rooms: Mapping[str, RoomLoss], site: SiteConditions) -> HouseLoss:
    """The whole house; without rooms nothing of it has a value, and all of it waits for the rooms."""
    area = areas_total(areas=[each.floor_area for each in rooms.values()] or [_rooms_wanted(AREA)])
    losses = [each.loss for each in rooms.values()]
    loss = _sum(losses) if losses else heat_loss(parts=[_rooms_wanted(HEAT_RATE)])
    causes = {}
    for cause in CAUSES:
        parts = [each.causes[cause].loss for each in rooms.values() if cause in each.causes]
        if parts:
            part = _sum(parts)
            causes[cause] = Cause(part, share(part=part, whole=loss))
    volumes = [each.air.volume for each in rooms.values()] or [_rooms_wanted(VOLUME)]
    return HouseLoss(
        floor_area=area,
        air_volume=volumes_total(volumes=volumes),
        causes=causes,
        loss=loss,
        per_area=loss_per_area(loss=loss, floor_area=area),
        coefficient=house_coefficient(loss=loss, indoor=site.indoor, outdoor=site.outdoor),
    )


def _rooms_wanted(dimension: Dimension) -> Figure:
    return missing(dimension, "rooms", "heated rooms")
