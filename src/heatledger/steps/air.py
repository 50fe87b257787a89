"""Outdoor air that a room has to warm."""

from __future__ import annotations

from heatledger.job.model import Job, Room
from heatledger.ledger.dimensions import AIR_CHANGES, AirChanges, Density, HeatRate, Volume, VolumeHeat
from heatledger.ledger.figures import Figure, missing
from heatledger.ledger.results import result
from heatledger.physics.air import air_loss, air_volume_heat, dry_air_density, room_volume
from heatledger.steps.site import SiteConditions


@result
class AirLoss:
    """The air of a room: its volume, how often it changes, and the heat that takes.

    ``density`` and ``heat`` are those of dry air at the temperature of the room and the pressure of the
    site; in a room kept at the temperature of the site they are the site's.
    """

    volume: Volume
    changes: AirChanges
    density: Density
    heat: VolumeHeat
    loss: HeatRate


def room_air(room: Room, job: Job, floor_area: Figure, site: SiteConditions, outdoor: Figure) -> AirLoss:
    """The air loss of a room, by its own entry or that of the house."""
    air = room.air or job.air
    changes = missing(AIR_CHANGES, "air/changes", "air changes") if air is None else air.changes
    volume = room_volume(floor_area=floor_area, ceiling_height=room.ceiling_height)
    density, heat = site.air_density, site.air_heat
    if room.indoor is not site.indoor:
        density = dry_air_density(pressure=site.pressure, temperature=room.indoor)
        heat = air_volume_heat(density=density)
    loss = air_loss(volume=volume, changes=changes, air_heat=heat, indoor=room.indoor, outdoor=outdoor)
    return AirLoss(volume, changes, density, heat, loss)
