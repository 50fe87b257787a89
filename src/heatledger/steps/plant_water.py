"""Water of the system part by part, and heat that its mains lose outside the heated rooms."""

from __future__ import annotations

from typing import TYPE_CHECKING

from heatledger.job.model import Job
from heatledger.job.system_model import BY_LENGTH, Emitter
from heatledger.ledger.dimensions import BORE, TEMPERATURE, WATER_VOLUME, WaterVolume
from heatledger.ledger.figures import Figure, missing
from heatledger.ledger.results import result
from heatledger.ledger.sources import JUDGMENT, cite
from heatledger.physics.pipes import pipe_coefficient, pipe_loss, pipes_total, water_in_length, water_together
from heatledger.steps.losses import Losses
from heatledger.steps.tubes import chosen_tube, size_limits, usual_family
from heatledger.steps.usual import usual

if TYPE_CHECKING:
    from heatledger.steps.circuits import Circuits
    from heatledger.steps.emitters import Emitters

BARE = cite("", "no insulation is said, so a bare pipe", JUDGMENT)


@result
class VolumePart:
    """Water in one part of the system."""

    name: str
    volume: WaterVolume


def volume_parts(job: Job, heat: Emitters, circuits: Circuits) -> dict[str, VolumePart]:
    """Water in the boiler, the mains, the tubes of each circuit, and the emitters.

    What nobody has given is a figure without a value. Without circuits the tubes wait for them.
    """
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
        parts[f"tubes-{id}"] = VolumePart(f"Tubes of {circuit.name}", water_together(volumes=tubes))
    if not circuits.circuits:
        parts["tubes"] = VolumePart("Tubes", missing(WATER_VOLUME, "circuits", "circuits with their tubes"))
    emitters = [water_of(each, heat) for each in job.system.emitters.values()]
    if emitters:
        parts["emitters"] = VolumePart("Emitters", water_together(volumes=emitters))
    return parts


def water_of(emitter: Emitter, heat: Emitters) -> Figure:
    """Water in one emitter: its own figure, or that of its length."""
    if emitter.water is not None:
        return emitter.water
    length = heat.emitters[emitter.id].length if emitter.kind in BY_LENGTH else None
    if emitter.water_per is not None and length is not None:
        return water_in_length(water_per=emitter.water_per, length=length)
    return missing(WATER_VOLUME, f"emitters/{emitter.id}/water", "water in it")


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
    id = mains.through.partition("/")[2]
    space = losses.unheated.get(id)
    around = space.temperature if space else missing(TEMPERATURE, mains.through, "space of the mains")
    loss = pipe_loss(
        coefficient=pipe_coefficient(outside=outside, insulation=insulation),
        length=mains.length,
        water=heat.house.mean_water,
        around=around,
    )
    return pipes_total(losses=[loss])
