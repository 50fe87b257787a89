"""Startup targets: what the gauges and thermometers should read in a given state, and whether it may run."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

from heatledger.job.model import Job
from heatledger.job.system_model import SERIES, Circuit
from heatledger.ledger import dimensions as d
from heatledger.ledger.dimensions import HeatRate, Pressure, Temperature, TemperatureDifference, VolumeFlow
from heatledger.ledger.figures import Figure, missing
from heatledger.ledger.results import result
from heatledger.physics.emitter_loads import outputs_total
from heatledger.physics.friction import flow_total
from heatledger.physics.startup import drop_between, pressure_of_test, return_after
from heatledger.physics.water import drop_of_heat
from heatledger.steps.compared import Compared, compared_with, drops_of
from heatledger.steps.controls import Curve, asked_at
from heatledger.steps.emitter_chains import Passed, outlet_chain
from heatledger.steps.losses import Losses
from heatledger.steps.may_run import waits_of

if TYPE_CHECKING:
    from heatledger.steps.boiler_room import BoilerRoom
    from heatledger.steps.circuits import Circuits
    from heatledger.steps.controls import ControlSettings
    from heatledger.steps.emitters import Emitters


@result
class EmitterTarget:
    """What an emitter gives in this state, and the water that leaves it."""

    output: HeatRate
    outlet: Temperature


@result
class CircuitTarget:
    """What a circuit carries in this state, and the water that comes back."""

    name: str
    flow: VolumeFlow
    drop: TemperatureDifference
    output: HeatRate
    return_: Temperature


@result
class StartupTargets:
    """Targets for the weather, the water and the rooms as read, else for the design day.

    ``supply_due`` is what the control asks for in this weather; ``supply`` is what was read, else that.
    ``drop``, ``return_`` and ``output`` are what the emitters take from water of that supply. Across the
    boiler ``fire_drop`` stands at full fire while the water warms, None without a boiler, and
    ``settled_drop`` once it has settled: the emitters' drop, or that of the fire where it makes less.
    ``may_run`` is False until the fire, its draft and the room have been measured and are clean;
    ``waits_for`` says what it waits for.
    """

    outdoor: Temperature
    room: Temperature
    supply: Temperature
    supply_due: Temperature
    circuits: dict[str, CircuitTarget]
    emitters: dict[str, EmitterTarget]
    flow: VolumeFlow
    drop: TemperatureDifference
    fire_drop: TemperatureDifference | None
    settled_drop: TemperatureDifference
    return_: Temperature
    output: HeatRate
    cold_pressure: Pressure
    hot_pressure: Pressure
    test_pressure: Pressure
    compared: Compared
    may_run: bool
    waits_for: tuple[str, ...]


@result
class Startup:
    """Result of the startup step."""

    __path__ = ""

    startup: StartupTargets


def startup(
    job: Job, losses: Losses, heat: Emitters, circuits: Circuits, room: BoilerRoom, controls: ControlSettings
) -> Startup:
    """The targets of the state that the readings describe, and whether the boiler may be left running."""
    read = job.system.readings
    outdoor = losses.site.outdoor if read.outdoor is None else read.outdoor
    warm = losses.site.indoor if read.room is None else read.room
    due = _supply_due(job, losses, heat, controls, outdoor, room)
    supply = due if read.supply is None else read.supply
    targets, passed = _state(job, heat, circuits, supply, warm if read.room is not None else None)
    flow, output = _whole(targets)
    back = return_after(supply=supply, heat=output, flow=flow, water_heat=heat.house.water_heat)
    drop = drop_between(supply=supply, return_water=back)
    drops = drops_of(room.plant, heat, flow, drop)
    plant, waits = room.plant, waits_of(job)
    return Startup(
        StartupTargets(
            outdoor=outdoor,
            room=warm,
            supply=supply,
            supply_due=due,
            circuits=targets,
            emitters={id: EmitterTarget(each.output, each.outlet) for id, each in passed.items()},
            flow=flow,
            drop=drop,
            fire_drop=drops.fire,
            settled_drop=drops.settled,
            return_=back,
            output=output,
            cold_pressure=plant.fill_pressure,
            hot_pressure=plant.hot_pressure,
            test_pressure=pressure_of_test(highest=plant.relief_pressure),
            compared=compared_with(job, heat, plant, due, supply, drops),
            may_run=not waits,
            waits_for=waits,
        )
    )


def _supply_due(
    job: Job, losses: Losses, heat: Emitters, controls: ControlSettings, outdoor: Figure, room: BoilerRoom
) -> Figure:
    """What the control asks for: by the weather where the job says so, else the supply of the design day.

    Where the job does not say, a supply by the weather would be a guess.
    """
    if not job.system.controls.outdoor_reset:
        return heat.house.supply
    if outdoor is losses.site.outdoor:
        return asked_at(controls.controls.reset["design-day"])
    curve = Curve(job, losses, heat, controls.controls.balance, room.plant.drop_design)
    return asked_at(curve.at(outdoor))


def _state(
    job: Job, heat: Emitters, circuits: Circuits, supply: Figure, air: Figure | None
) -> tuple[dict[str, CircuitTarget], dict[str, Passed]]:
    """What the circuits that call, and their emitters, do at a supply."""
    from heatledger.steps.flows import state_flows

    system = job.system
    calling = frozenset(system.readings.calling or system.zones)
    flows = state_flows(job, heat, circuits, calling)
    targets: dict[str, CircuitTarget] = {}
    passed: dict[str, Passed] = {}
    for id, circuit in system.circuits.items():
        if not circuit.runs or (circuit.zone and circuit.zone not in calling):
            continue
        flow = flows.circuits.get(id, circuits.circuits[id].flow)
        own = {key: flows.runs.get(key, heat.emitters[key].flow) for key in circuit.runs}
        here = _passed(job, heat, circuit, supply, own, air)
        passed |= here
        targets[id] = _target(circuit, flow, here, supply, heat)
    return targets, passed


def _passed(
    job: Job,
    heat: Emitters,
    circuit: Circuit,
    supply: Figure,
    flows: Mapping[str, Figure],
    air: Figure | None,
) -> dict[str, Passed]:
    """The water through the emitters of one circuit."""
    chains = [tuple(circuit.runs)] if circuit.kind == SERIES else [(each,) for each in circuit.runs]
    found: dict[str, Passed] = {}
    for chain in chains:
        found |= outlet_chain(job, heat, chain, supply, flows, air)
    return found


def _target(
    circuit: Circuit, flow: Figure, passed: Mapping[str, Passed], supply: Figure, heat: Emitters
) -> CircuitTarget:
    output = outputs_total(outputs=[each.output for each in passed.values()])
    drop = drop_of_heat(heat=output, flow=flow, water_heat=heat.house.water_heat)
    back = return_after(supply=supply, heat=output, flow=flow, water_heat=heat.house.water_heat)
    return CircuitTarget(circuit.name, flow, drop, output, back)


def _whole(targets: Mapping[str, CircuitTarget]) -> tuple[Figure, Figure]:
    """Flow and output of all circuits together."""
    if not targets:
        return missing(d.VOLUME_FLOW, "circuits", "circuits"), missing(d.HEAT_RATE, "circuits", "circuits")
    if len(targets) == 1:
        only = next(iter(targets.values()))
        return only.flow, only.output
    return (
        flow_total(flows=[each.flow for each in targets.values()]),
        outputs_total(outputs=[each.output for each in targets.values()]),
    )
