"""What all circuits share: the mains, the boiler, and the circulators with what they are asked for."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from functools import partial
from typing import TYPE_CHECKING

from heatledger.job.system_model import Circulator
from heatledger.ledger.choosing import choose, largest
from heatledger.ledger.dimensions import Head, Power, Ratio, VolumeFlow
from heatledger.ledger.figures import Figure
from heatledger.ledger.results import result
from heatledger.physics.pumps import curve_exponent, hydraulic_power
from heatledger.steps.emitters import Emitters
from heatledger.steps.layout import Layout, speed_in
from heatledger.steps.networks import Settled, heads_of_plant
from heatledger.steps.piping import PipeHead, together
from heatledger.steps.tubes import usual_family

if TYPE_CHECKING:
    from heatledger.steps.circuits import CircuitFlow


@result
class CirculatorDuty:
    """What a circulator is asked for, and where it really works."""

    name: str
    needed_flow: VolumeFlow
    needed_head: Head
    index_circuit: str
    curve_exponent: Ratio
    actual_flow: VolumeFlow | None
    actual_head: Head | None
    hydraulic_power: Power | None


@result
class PlantPiping:
    """What all circuits share: the mains, the boiler, and the circulators."""

    flow: VolumeFlow | None
    mains: PipeHead | None
    boiler_head: Head | None
    circulators: dict[str, CirculatorDuty]


def plant_piping(designed: Mapping[str, CircuitFlow], tools: Layout) -> PlantPiping:
    """Mains and boiler at the flow of all circuits, and what each circulator is asked for."""
    plant = tools.job.system.plant
    if not designed:
        return PlantPiping(None, None, None, {})
    whole = tools.joined("plant", [each.flow for each in designed.values()])
    mains = None
    if plant.mains is not None:
        mains = tools.piece(plant.mains, "plant/mains", usual_family(""), whole)
    taken = heads_of_plant(mains, plant.boiler, whole, tools.water)
    duties = {}
    for id, pump in plant.circulators.items():
        own = {key: each for key, each in designed.items() if each.circulator == id}
        if own:
            flow = tools.joined(f"plant/circulators/{id}", [each.flow for each in own.values()])
            exponent = tools.kept.part(f"curve of {id}", (pump,), partial(_exponent, pump))
            duties[id] = _duty(pump, own, taken, flow, exponent)
    through_boiler = taken[-1] if len(taken) > (mains is not None) else None
    return PlantPiping(whole, mains, through_boiler, duties)


def _duty(
    pump: Circulator, own: dict[str, CircuitFlow], taken: list[Figure], flow: Figure, exponent: Figure
) -> CirculatorDuty:
    worst = choose(
        {id: each.head for id, each in own.items()}, largest, "it needs the most head of all circuits"
    )
    return CirculatorDuty(
        name=pump.name,
        needed_flow=flow,
        needed_head=together([*taken, worst]),
        index_circuit=winner_of(worst),
        curve_exponent=exponent,
        actual_flow=None,
        actual_head=None,
        hydraulic_power=None,
    )  # fmt: skip


def _exponent(pump: Circulator) -> Figure:
    return curve_exponent(
        shutoff=pump.shutoff, middle_head=pump.middle_head, high_head=pump.high_head,
        middle_flow=pump.middle_flow, high_flow=pump.high_flow,
    )  # fmt: skip


def settled_plant(plant: PlantPiping, where: Settled, heat: Emitters) -> PlantPiping:
    """The plant at the flows that result, with the power of each circulator in the water."""
    mains = plant.mains
    if mains is not None:
        mains = replace(mains, actual_flow=where.whole, actual_velocity=speed_in(mains, where.whole))
    duties = {
        id: replace(
            each, actual_flow=where.circulators[id], actual_head=where.heads[id],
            hydraulic_power=hydraulic_power(
                flow=where.circulators[id], head=where.heads[id], density=heat.house.density
            ),
        )
        if id in where.circulators
        else each
        for id, each in plant.circulators.items()
    }  # fmt: skip
    return replace(plant, mains=mains, circulators=duties)


def winner_of(chosen: Figure) -> str:
    """What a chosen figure was chosen for; empty while something is missing."""
    return str(getattr(chosen.origin, "winner", ""))
