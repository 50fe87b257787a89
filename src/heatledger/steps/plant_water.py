"""Water of the system part by part, and heat that its mains lose outside the heated rooms."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from heatledger.job.model import Job
from heatledger.job.system_model import BY_LENGTH, FIN_TUBE, IRON_RADIATOR, SERIES, Emitter
from heatledger.ledger.dimensions import AREA, BORE, TEMPERATURE, WATER_VOLUME, WaterVolume
from heatledger.ledger.figures import Figure, missing
from heatledger.ledger.results import result
from heatledger.ledger.sources import JUDGMENT, cite
from heatledger.physics.friction import tube_volume
from heatledger.physics.pipes import (
    pipe_coefficient,
    pipe_loss,
    pipes_total,
    water_in_iron,
    water_in_length,
    water_in_sections,
    water_so_far,
    water_total,
)
from heatledger.steps.losses import Losses
from heatledger.steps.tubes import chosen_tube, size_limits, usual_family
from heatledger.steps.usual import usual

if TYPE_CHECKING:
    from heatledger.steps.circuits import Circuits
    from heatledger.steps.emitters import Emitters

COPPER_TUBE = cite("", "a 3/4 in copper tube, as no loop says otherwise", JUDGMENT)
IRON_LENGTH = cite("", "high cast-iron baseboard, which holds most; fill one to know", JUDGMENT)
BARE = cite("", "no insulation is said, so a bare pipe", JUDGMENT)


@result
class VolumePart:
    """Water in one part of the system."""

    name: str
    volume: WaterVolume


def volume_parts(job: Job, heat: Emitters, circuits: Circuits) -> tuple[dict[str, VolumePart], Figure | None]:
    """Water in the boiler, the mains, the tubes of each circuit, and the emitters; and what is known of it.

    What nobody has given is a figure without a value. Without circuits the tubes wait for them. The second
    is None where nothing waits.
    """
    parts = _apart_from_emitters(job, circuits)
    loops = loop_bores(job, circuits)
    emitters = [water_of(each, heat, loops.get(id)) for id, each in job.system.emitters.items()]
    known = _known_of([*(each.volume for each in parts.values()), *emitters])
    if emitters:
        parts["emitters"] = VolumePart("Emitters", water_total(volumes=emitters))
    return parts, known


def _apart_from_emitters(job: Job, circuits: Circuits) -> dict[str, VolumePart]:
    parts = {}
    boiler = job.system.plant.boiler
    volume = boiler.water if boiler and boiler.water is not None else None
    if volume is None:
        volume = missing(WATER_VOLUME, "plant/boiler/water", "water in the boiler")
    parts["boiler"] = VolumePart(boiler.name if boiler else "Boiler", volume)
    if circuits.plant.mains is not None:
        parts["mains"] = VolumePart("Mains", circuits.plant.mains.volume)
    for id, circuit in circuits.circuits.items():
        tubes = [circuit.common.volume, *(each.volume for each in circuit.runs.values())]
        parts[f"tubes-{id}"] = VolumePart(f"Tubes of {circuit.name}", water_total(volumes=tubes))
    if not circuits.circuits:
        parts["tubes"] = VolumePart("Tubes", missing(WATER_VOLUME, "circuits", "circuits with their tubes"))
    return parts


def _known_of(volumes: Sequence[Figure]) -> Figure | None:
    """Water of all that is known, where some part still waits; None where nothing waits, or all does."""
    known = [each for each in volumes if not each.is_missing]
    return water_so_far(volumes=known) if known and len(known) < len(volumes) else None


def loop_bores(job: Job, circuits: Circuits) -> dict[str, Figure]:
    """Bore of the tube that goes on as the element of an emitter, by emitter of a series loop."""
    return {
        id: run.bore
        for key, circuit in job.system.circuits.items()
        if circuit.kind == SERIES and key in circuits.circuits
        for id, run in circuits.circuits[key].runs.items()
    }


def water_of(emitter: Emitter, heat: Emitters, bore: Figure | None = None) -> Figure:
    """Water in one emitter: its own figure, else what its length, sections or radiation hold.

    ``bore`` is that of the tube of its series loop, which goes on through fin tube.
    """
    if emitter.water is not None:
        return emitter.water
    if emitter.kind in BY_LENGTH:
        length = heat.emitters[emitter.id].length
        if length is not None:
            return _water_along(emitter, length, bore)
    if emitter.kind == IRON_RADIATOR:
        if emitter.water_per is not None and emitter.sections is not None:
            return water_in_sections(section=emitter.water_per, sections=emitter.sections)
        if emitter.edr is not None:
            return water_in_iron(edr=emitter.edr)
    return missing(WATER_VOLUME, f"emitters/{emitter.id}/water", "water in it")


def _water_along(emitter: Emitter, length: Figure, bore: Figure | None) -> Figure:
    """Water in a length of baseboard: by its row, else by the tube of its loop, else by what is usual."""
    if emitter.water_per is not None:
        return water_in_length(water_per=emitter.water_per, length=length)
    if emitter.kind == FIN_TUBE and bore is not None and not bore.is_missing:
        return tube_volume(bore=bore, length=length)
    text, source = ("0.517 in²", COPPER_TUBE) if emitter.kind == FIN_TUBE else ("3.6 in²", IRON_LENGTH)
    words = "water in each length"
    return water_in_length(
        water_per=usual(f"emitters/{emitter.id}/water_per", words, text, AREA, source), length=length
    )


def mains_loss(job: Job, losses: Losses, heat: Emitters, circuits: Circuits) -> Figure:
    """Heat the mains lose on the design day outside the heated rooms; inside them they lose none.

    The heat is not put back into the space it warms: a second pass would make the load a little less.
    """
    mains = job.system.plant.mains
    if mains is None or not mains.through:
        return pipes_total(losses=[])
    tube = mains.tube
    if tube is None and circuits.plant.mains is not None:
        family = mains.family or usual_family("")
        tube = chosen_tube(family, circuits.plant.mains.flow, heat.house.viscosity, size_limits(job))
    outside = tube.outside if tube else missing(BORE, "plant/mains/tube", "tube of the mains")
    insulation = mains.insulation
    if insulation is None:
        insulation = usual("plant/mains/insulation", "thickness of insulation", "0 in", BORE, BARE)
    loss = pipe_loss(
        coefficient=pipe_coefficient(outside=outside, insulation=insulation),
        length=mains.length,
        water=heat.house.mean_water,
        around=_around(mains.through, job, losses),
    )
    return pipes_total(losses=[loss])


def _around(through: str, job: Job, losses: Losses) -> Figure:
    """Temperature of the unheated space or the neighbor that mains run through."""
    home, _, id = through.partition("/")
    space = job.neighbors.get(id) if home == "neighbors" else losses.unheated.get(id)
    return space.temperature if space else missing(TEMPERATURE, through, "space of the mains")
