"""What every emitter is asked for and gives on the design day, and the supply that serves every room."""

from __future__ import annotations

from collections.abc import Mapping
from functools import partial

from heatledger.job.model import Job
from heatledger.ledger import dimensions as d
from heatledger.ledger.choosing import Choice, choose, largest
from heatledger.ledger.dimensions import (
    Density,
    HeatRate,
    KinematicViscosity,
    Length,
    Ratio,
    SpecificHeat,
    Temperature,
    TemperatureDifference,
    WaterHeat,
)
from heatledger.ledger.figures import Figure, missing
from heatledger.ledger.results import result
from heatledger.physics.emitter_loads import given_share, lengths_total, outputs_total, over
from heatledger.steps.emitter_flows import (
    MOST_ASKED,
    Water,
    asked_of,
    called,
    loads_of,
    mean_water_of,
    no_supply,
    water_of,
)
from heatledger.steps.emitter_passes import EmitterHeat, lowest_in, pass_through
from heatledger.steps.emitter_ratings import Rated, loads_of_emitters, needed_in, rated, usual_drop
from heatledger.steps.emitter_reuse import Kept
from heatledger.steps.losses import Losses

__all__ = ["EmitterHeat", "Emitters", "HouseHeat", "RoomHeat", "emitters", "loads_of_emitters"]


@result
class RoomHeat:
    """One heated room: what it needs and what its emitters give at the design supply.

    ``over`` is negative where the room is left short. ``needed_length`` is that of its baseboards.
    """

    needed: HeatRate
    given: HeatRate
    over: HeatRate
    given_share: Ratio
    lowest_supply: Temperature
    needed_length: Length | None
    free_wall: Length | None


@result
class HouseHeat:
    """The house: the water it is heated with, and the lowest supply that serves every room.

    ``set_by`` is the room that sets it, ``next_lowest`` what would do for all the others.
    """

    given: HeatRate
    supply: Temperature
    drop: TemperatureDifference
    mean_water: Temperature
    density: Density
    specific_heat: SpecificHeat
    viscosity: KinematicViscosity
    water_heat: WaterHeat
    lowest_supply: Temperature
    set_by: str
    next_lowest: Temperature | None


@result
class Emitters:
    """Result of the emitter step."""

    __path__ = ""

    emitters: dict[str, EmitterHeat]
    rooms: dict[str, RoomHeat]
    house: HouseHeat
    kept: Kept


def emitters(job: Job, losses: Losses, since: Emitters | None = None) -> Emitters:
    """What every emitter, every room and the house get on the design day.

    With ``since``, parts whose inputs are the very same figures are taken over from an earlier run.
    """
    kept = Kept(since.kept if since else None)
    plant = job.system.plant
    needed = {
        id: kept.part(f"needed {id}", (each.loss,), partial(needed_in, id, losses))
        for id, each in losses.rooms.items()
    }
    ratings = {
        id: kept.part(
            f"rating {id}",
            (each, job.rooms[each.room].indoor, job.site.elevation, losses.site.pressure),
            partial(rated, each, job, losses.site),
        )
        for id, each in job.system.emitters.items()
    }
    loads = loads_of(ratings, needed, kept)
    drop = usual_drop() if plant.drop is None else plant.drop
    mean = kept.part(
        "mean water",
        (plant.supply, drop, *(() if plant.supply is not None else (*ratings.values(), *loads.values()))),
        partial(mean_water_of, plant.supply, drop, ratings, loads),
    )
    water = kept.part("water", (mean,), partial(water_of, mean))
    every = asked_of(job, ratings, loads, drop, water, kept)
    supply, lowest = plant.supply, None
    if supply is None:
        lowest = {id: each for chain in every.values() for id, each in lowest_in(chain).items()}
        supply = _supply(lowest, ratings)
    found: dict[str, EmitterHeat] = {}
    for name, chain in every.items():
        goes_in = (supply, job.units.name, lowest, *chain)
        found |= kept.part(name, goes_in, partial(pass_through, chain, supply, job.units, lowest))
    found = {id: found[id] for id in job.system.emitters}
    rooms = {id: _room_heat(id, job, found, each, kept) for id, each in needed.items()}
    house = kept.part(
        "house",
        (supply, drop, water, *rooms, *rooms.values(), *found, *found.values()),
        partial(_house, rooms, found, supply, drop, water),
    )
    return Emitters(found, rooms, house, kept)


def _supply(lowest: Mapping[str, Figure], ratings: Mapping[str, Rated]) -> Figure:
    """The lowest supply that serves every emitter, where the job names none."""
    if not lowest:
        return no_supply()
    return choose(called(lowest, ratings), largest, MOST_ASKED)


def _room_heat(id: str, job: Job, found: Mapping[str, EmitterHeat], needed: Figure, kept: Kept) -> RoomHeat:
    here = {key: each for key, each in found.items() if each.room == id}
    free_wall = job.rooms[id].free_wall

    def made() -> RoomHeat:
        given = _sum_of_outputs(here, any_at_all=bool(found))
        lengths = [each.needed_length for each in here.values() if each.needed_length is not None]
        asked_for = {key: each.lowest_supply for key, each in here.items()}
        lowest = _most(asked_for)
        if lowest is None:
            lowest = missing(d.TEMPERATURE, f"rooms/{id}/emitters", "emitters")
        return RoomHeat(
            needed=needed,
            given=given,
            over=over(given=given, needed=needed),
            given_share=given_share(given=given, needed=needed),
            lowest_supply=lowest,
            needed_length=lengths_total(lengths=lengths) if lengths else None,
            free_wall=free_wall,
        )

    return kept.part(f"room {id}", (needed, free_wall, bool(found), *here, *here.values()), made)


def _sum_of_outputs(here: Mapping[str, EmitterHeat], any_at_all: bool) -> Figure:
    """What some emitters give; without a value while the job has no emitters at all."""
    if not any_at_all:
        return missing(d.HEAT_RATE, "emitters", "emitters")
    outputs = [each.output for each in here.values()]
    return outputs[0] if len(outputs) == 1 else outputs_total(outputs=outputs)


def _most(candidates: Mapping[str, Figure]) -> Figure | None:
    """The largest of some figures; None of none."""
    if len(candidates) < 2:
        return next(iter(candidates.values()), None)
    return choose(candidates, largest, MOST_ASKED)


def _house(
    rooms: Mapping[str, RoomHeat],
    found: Mapping[str, EmitterHeat],
    supply: Figure,
    drop: Figure,
    water: Water,
) -> HouseHeat:
    with_heat = dict.fromkeys(each.room for each in found.values())
    lowest = {id: rooms[id].lowest_supply for id in with_heat}
    most = choose(lowest, largest, MOST_ASKED) if lowest else no_supply()
    set_by = most.origin.winner if isinstance(most.origin, Choice) and not most.is_missing else ""
    others = {id: each for id, each in lowest.items() if id != set_by}
    next_lowest = None
    if set_by and others:
        next_lowest = choose(others, largest, "all rooms but the one that asks for most")
    return HouseHeat(
        given=_sum_of_outputs(found, any_at_all=bool(found)),
        supply=supply,
        drop=drop,
        mean_water=water.mean,
        density=water.density,
        specific_heat=water.specific_heat,
        viscosity=water.viscosity,
        water_heat=water.heat,
        lowest_supply=most,
        set_by=set_by,
        next_lowest=next_lowest,
    )
