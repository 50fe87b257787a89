"""Water and flows of the emitters on the design day, and the loads they carry."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import partial

from heatledger.job.model import Job
from heatledger.job.system_model import SERIES
from heatledger.ledger import dimensions as d
from heatledger.ledger.choosing import choose, largest
from heatledger.ledger.figures import Figure, missing
from heatledger.physics.emitter_loads import loads_total, mean_water_by_drop, part_of_flow
from heatledger.physics.emitters import least_flow_of_element
from heatledger.physics.radiators import needed_excess, needed_mean_water
from heatledger.physics.water import (
    flow_for_heat,
    water_density,
    water_heat,
    water_specific_heat,
    water_viscosity,
)
from heatledger.steps.emitter_chains import chains
from heatledger.steps.emitter_passes import Asked, asked
from heatledger.steps.emitter_ratings import Rated, loads_of_room
from heatledger.steps.emitter_reuse import Kept

MOST_ASKED = "the water must be warm enough for the one that asks for most"


@dataclass(frozen=True)
class Water:
    """Water at the mean temperature, and the least flow at which it swirls in a usual element."""

    mean: Figure
    density: Figure
    specific_heat: Figure
    viscosity: Figure
    heat: Figure
    least: Figure


def water_of(mean: Figure) -> Water:
    """Properties of water at its mean temperature."""
    density, specific_heat = water_density(temperature=mean), water_specific_heat(temperature=mean)
    viscosity = water_viscosity(temperature=mean)
    heat = water_heat(density=density, specific_heat=specific_heat)
    return Water(mean, density, specific_heat, viscosity, heat, least_flow_of_element(viscosity=viscosity))


def mean_water_of(
    supply: Figure | None, drop: Figure, ratings: Mapping[str, Rated], loads: Mapping[str, Figure]
) -> Figure:
    """Mean water of the house: by supply and drop, else that of the emitter which needs the hottest."""
    if supply is not None:
        return mean_water_by_drop(supply=supply, drop=drop)
    needs: dict[str, Figure] = {}
    for id, each in ratings.items():
        if each.output is not None and float(loads[id]) > 0:
            excess = needed_excess(
                load=loads[id], rated=each.output, rated_excess=each.excess, exponent=each.emitter.exponent
            )
            water = needed_mean_water(air=each.air, excess=excess)
            if not water.is_missing:
                needs[id] = water
    return choose(called(needs, ratings), largest, MOST_ASKED) if needs else no_supply()


def no_supply() -> Figure:
    """The design supply as an entry that is missing."""
    return missing(d.TEMPERATURE, "plant/supply", "design supply")


def loads_of(ratings: Mapping[str, Rated], needed: Mapping[str, Figure], kept: Kept) -> dict[str, Figure]:
    """The load of every emitter, room by room."""
    loads: dict[str, Figure] = {}
    for room in dict.fromkeys(each.emitter.room for each in ratings.values()):
        here = {id: each for id, each in ratings.items() if each.emitter.room == room}
        loads |= kept.part(
            f"loads {room}", (needed[room], *here, *here.values()), partial(loads_of_room, needed[room], here)
        )
    return {id: loads[id] for id in ratings}


def asked_of(
    job: Job,
    ratings: Mapping[str, Rated],
    loads: Mapping[str, Figure],
    drop: Figure,
    water: Water,
    kept: Kept,
) -> dict[str, tuple[Asked, ...]]:
    """Every chain with its flows, by a name of its own."""
    found = {}
    for circuit, chain in chains(job):
        here = {id: loads[id] for id in chain}
        beside = here if circuit is None or circuit.kind == SERIES else {
            id: loads[id] for id in circuit.runs if id in loads
        }  # fmt: skip
        flow_given = None if circuit is None else circuit.flow
        drop_here = drop if circuit is None or circuit.drop is None else circuit.drop
        name = f"chain {'/'.join(chain)}"
        goes_in = (flow_given, drop_here, water, *chain, *beside.values(), *(ratings[id] for id in chain))

        def made(
            here: Mapping[str, Figure] = here,
            beside: Mapping[str, Figure] = beside,
            given: Figure | None = flow_given,
            drop: Figure = drop_here,
        ) -> tuple[Asked, ...]:
            flow = _flow(here, beside, given, drop, water)
            return tuple(
                asked(id, ratings[id], load, flow, water.heat, water.least) for id, load in here.items()
            )

        found[name] = kept.part(f"flow of {name}", goes_in, made)
    return found


def _flow(
    loads: Mapping[str, Figure],
    beside: Mapping[str, Figure],
    given: Figure | None,
    drop: Figure,
    water: Water,
) -> Figure:
    """Flow of a chain: as given for its circuit, in proportion where others share it, else by its load."""
    own = tuple(loads.values())
    load = own[0] if len(own) == 1 else loads_total(loads=own)
    if given is None:
        return flow_for_heat(heat=load, water_heat=water.heat, drop=drop)
    if len(beside) == len(loads):
        return given
    return part_of_flow(flow=given, load=load, loads=tuple(beside.values()))


def called(figures: Mapping[str, Figure], ratings: Mapping[str, Rated]) -> dict[str, Figure]:
    """Figures by the name of their emitter; by its id too where two have one name."""
    names = [each.emitter.name for each in ratings.values()]
    return {_unlike(ratings[id].emitter.name, id, names): each for id, each in figures.items()}


def _unlike(name: str, id: str, names: list[str]) -> str:
    return name if names.count(name) == 1 else f"{name} ({id})"
