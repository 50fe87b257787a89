"""Outdoor air that a room has to warm."""

from __future__ import annotations

from heatledger.catalog.loader import air_changes_for
from heatledger.job.model import Air, Job, Room
from heatledger.ledger.dimensions import AIR_CHANGES, AirChanges, HeatRate, Volume
from heatledger.ledger.figures import Figure, missing
from heatledger.ledger.results import result
from heatledger.physics.air import air_loss, room_volume
from heatledger.steps.site import SiteConditions


@result
class AirLoss:
    """The air of a room: its volume, how often it changes, and the heat that takes."""

    volume: Volume
    changes: AirChanges
    loss: HeatRate


def changes_of(air: Air | None) -> Figure | None:
    """Air changes as given, or by the number of exposed sides; None when neither is said."""
    if air is None:
        return None
    if air.changes is not None:
        return air.changes
    if air.exposed_sides is None or air.exposed_sides.is_missing:
        return air.exposed_sides
    return air_changes_for(int(float(air.exposed_sides)))


def room_air(room: Room, job: Job, floor_area: Figure, site: SiteConditions, outdoor: Figure) -> AirLoss:
    """The air loss of a room, by its own entry or that of the house."""
    changes = changes_of(room.air)
    if changes is None:
        changes = changes_of(job.air)
    if changes is None:
        changes = missing(AIR_CHANGES, "air/changes", "air changes")
    volume = room_volume(floor_area=floor_area, ceiling_height=room.ceiling_height)
    loss = air_loss(
        volume=volume, changes=changes, air_heat=site.air_heat, indoor=room.indoor, outdoor=outdoor
    )
    return AirLoss(volume, changes, loss)
