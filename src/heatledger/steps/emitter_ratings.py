"""What each emitter is rated at, what its room asks of it, and the factors of its flow and altitude."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from heatledger.job.model import Job
from heatledger.job.system_model import BY_LENGTH, FIN_TUBE, Emitter
from heatledger.ledger import dimensions as d
from heatledger.ledger.choosing import count
from heatledger.ledger.figures import Figure, Leaf, LeafKind, leaf, missing
from heatledger.ledger.sources import MEMORY, PRACTICE, cite
from heatledger.physics.along_emitter import exact_mean_excess
from heatledger.physics.emitter_loads import equal_part, heat_needed, part_of_load
from heatledger.physics.emitters import (
    altitude_factor_of_fin_tube,
    altitude_factor_of_iron,
    comparable_output,
    flow_factor,
    net_output,
    net_rating,
    output_of_length,
    rated_excess,
)
from heatledger.physics.radiators import output_of_radiation, radiation_of_sections
from heatledger.steps.losses import Losses
from heatledger.steps.site import SiteConditions

FLOW_COUNTS_NOT = cite("EN-442", "radiators are rated by excess alone", MEMORY)
TWENTY_DEGREES = cite("", "a drop of 20 °F round a circuit", PRACTICE)


@dataclass(frozen=True)
class Rated:
    """The rating of an emitter, net of its heating effect.

    ``per_length`` is set for baseboard. ``output`` is that of the whole emitter. Where the size is still to
    be found it is None, and ``unknown`` is the output without a value, which waits for the missing entry.
    """

    emitter: Emitter
    air: Figure
    excess: Figure
    thin_air: Figure
    per_length: Figure | None
    output: Figure | None
    unknown: Figure | None


def rated(emitter: Emitter, job: Job, site: SiteConditions) -> Rated:
    """The rating of an emitter in its room."""
    thins = altitude_factor_of_fin_tube if emitter.kind == FIN_TUBE else altitude_factor_of_iron
    thin_air = thins(elevation=job.site.elevation, pressure=site.pressure)
    per_length, output = _output(emitter)
    known, unknown = (None, output) if output.is_missing else (output, None)
    air = job.rooms[emitter.room].indoor
    return Rated(emitter, air, _excess(emitter), thin_air, per_length, known, unknown)


def _output(emitter: Emitter) -> tuple[Figure | None, Figure]:
    """Net output per length, where it is rated so, and net output of the whole."""
    path, effect = f"emitters/{emitter.id}", emitter.heating_effect
    printed = emitter.output
    if printed is None and emitter.rating is not None and emitter.kind in BY_LENGTH:
        per_length = net_rating(rating=emitter.rating, heating_effect=effect)
        length = emitter.length
        if length is None:
            length = missing(d.LENGTH, f"{path}/length", "finned length")
        return per_length, output_of_length(rating=per_length, length=length)
    if printed is None and emitter.rating is not None:
        edr = emitter.edr
        if edr is None and emitter.sections is not None and emitter.section_edr is not None:
            edr = radiation_of_sections(sections=emitter.sections, section_edr=emitter.section_edr)
        if edr is None:
            edr = missing(d.AREA, f"{path}/edr", "equivalent direct radiation")
        printed = output_of_radiation(edr=edr, rating=emitter.rating)
    if printed is None:
        printed = missing(d.HEAT_RATE, f"{path}/output", "rated output")
    return None, net_output(output=printed, heating_effect=effect)


def _excess(emitter: Emitter) -> Figure:
    """Excess of the rating: the exact mean where supply and return are named, else that of its mean water."""
    if emitter.rated_supply is not None and emitter.rated_return is not None:
        return exact_mean_excess(
            supply=emitter.rated_supply,
            return_=emitter.rated_return,
            air=emitter.rated_air,
            exponent=emitter.exponent,
        )
    water = emitter.rated_water
    if water is None:
        water = missing(d.TEMPERATURE, f"emitters/{emitter.id}/rated_water", "mean water of the rating")
    return rated_excess(mean_water=water, air=emitter.rated_air)


def loads_of_emitters(job: Job, losses: Losses) -> dict[str, Figure]:
    """What each emitter is asked for: its part of the loss of its room, by emitter id."""
    found = {id: rated(each, job, losses.site) for id, each in job.system.emitters.items()}
    loads: dict[str, Figure] = {}
    for room in dict.fromkeys(each.room for each in job.system.emitters.values()):
        here = {id: each for id, each in found.items() if each.emitter.room == room}
        loads |= loads_of_room(needed_in(room, losses), here)
    return {id: loads[id] for id in job.system.emitters}


def needed_in(room: str, losses: Losses) -> Figure:
    """What a room needs of its emitters."""
    return heat_needed(loss=losses.rooms[room].loss)


def loads_of_room(needed: Figure, here: Mapping[str, Rated]) -> dict[str, Figure]:
    """The load of a room shared among its emitters, by output at one excess; equally while sizes are open."""
    if len(here) == 1:
        return dict.fromkeys(here, needed)
    outputs = {
        id: comparable_output(rated=each.output, excess=each.excess, exponent=each.emitter.exponent)
        for id, each in here.items()
        if each.output is not None
    }
    if len(outputs) < len(here):
        shared = equal_part(
            load=needed, emitters=count([each.emitter.name for each in here.values()], "emitters in the room")
        )
        return dict.fromkeys(here, shared)
    parts = tuple(outputs.values())
    return {id: part_of_load(load=needed, output=each, outputs=parts) for id, each in outputs.items()}


def factor_of_flow(emitter: Emitter, flow: Figure, least: Figure) -> Figure:
    """Output at a flow over that at the flow of the rating; 1 for emitters that are rated without."""
    path = f"emitters/{emitter.id}"
    if emitter.flow_exponent is None:
        origin = Leaf(
            LeafKind.SOURCE, f"{path}/flow_factor", "flow factor", "1", "1", 1.0, 0, citation=FLOW_COUNTS_NOT
        )
        return leaf(1.0, d.RATIO, origin)
    rated_flow = emitter.rated_flow
    if rated_flow is None:
        rated_flow = missing(d.VOLUME_FLOW, f"{path}/rated_flow", "flow of the rating")
    return flow_factor(flow=flow, least=least, rated_flow=rated_flow, exponent=emitter.flow_exponent)


def usual_drop() -> Figure:
    """The common 20 °F, where the job names no drop."""
    origin = Leaf(
        LeafKind.SOURCE, "plant/drop", "design temperature drop", "20 °F", "°F", 20.0, 0,
        citation=TWENTY_DEGREES,
    )  # fmt: skip
    return leaf(20 / 1.8, d.TEMPERATURE_DIFFERENCE, origin)
