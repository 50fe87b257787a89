"""Circuits: flows, heads, the index circuit, and what circulators and piping really settle at."""

from __future__ import annotations

from dataclasses import replace
from functools import partial

from heatledger.job.model import Job
from heatledger.job.system_model import BY_LENGTH, Circuit
from heatledger.ledger.choosing import choose, largest
from heatledger.ledger.dimensions import Head, HeatRate, Temperature, TemperatureDifference, VolumeFlow
from heatledger.ledger.figures import Figure
from heatledger.ledger.results import result
from heatledger.physics.emitter_loads import loads_total
from heatledger.physics.fittings import coefficient_for_excess
from heatledger.physics.water import drop_of_heat, flow_for_heat
from heatledger.steps.emitter_reuse import Kept
from heatledger.steps.emitters import Emitters
from heatledger.steps.given_back import given_back
from heatledger.steps.layout import Layout, speed_in
from heatledger.steps.networks import Branch, Network, Settled, is_series, settled
from heatledger.steps.piping import PipeHead, together
from heatledger.steps.plant_piping import PlantPiping, plant_piping, settled_plant, winner_of
from heatledger.steps.rubbing import Rubbing, Water
from heatledger.steps.tubes import size_limits, usual_family


@result
class CircuitFlow:
    """One circuit: what it needs by design, and what it gets where its circulator's curve is known.

    ``index_run`` is the run of home runs that costs the most head; empty in a series loop. ``head`` is that
    of the common piping and the index run, or of all pieces of a loop. The ``actual`` figures are None
    where no circulator drives the circuit.
    """

    name: str
    kind: str
    zone: str
    circulator: str
    load: HeatRate
    flow: VolumeFlow
    drop: TemperatureDifference
    common: PipeHead
    runs: dict[str, PipeHead]
    index_run: str
    head: Head
    actual_flow: VolumeFlow | None = None
    actual_drop: TemperatureDifference | None = None
    actual_output: HeatRate | None = None
    actual_return: Temperature | None = None


@result
class Circuits:
    """Result of the circuits step."""

    __path__ = ""

    circuits: dict[str, CircuitFlow]
    plant: PlantPiping
    kept: Kept


def circuits(job: Job, heat: Emitters, since: Circuits | None = None) -> Circuits:
    """Every circuit at its design flow, and the flows that circulators and piping settle at.

    With ``since``, parts whose inputs are the very same figures are taken over from an earlier run.
    """
    kept = Kept(since.kept if since else None)
    tools = Layout(job, heat, _water(heat, since), size_limits(job), kept)
    designed = {id: _designed(each, tools) for id, each in job.system.circuits.items()}
    plant = plant_piping(designed, tools)
    network = network_of(job, designed, plant, tools.water)
    where = kept.part("network", tuple(network.goes_in()), lambda: settled(network))
    if where is not None:
        designed = {
            id: _really(id, each, where, tools) if id in where.circuits else each
            for id, each in designed.items()
        }
        plant = settled_plant(plant, where, heat)
    return Circuits(designed, plant, kept)


def _water(heat: Emitters, since: Circuits | None) -> Water:
    """The water of the house, with what an earlier run knows of how it rubs."""
    water = Water(heat.house.viscosity)
    if since is not None:
        pieces = [piece for each in since.circuits.values() for piece in (each.common, *each.runs.values())]
        for each in [*pieces, *([since.plant.mains] if since.plant.mains is not None else [])]:
            rubs = Rubbing(each.velocity, each.reynolds, each.friction_factor, each.friction)
            water.remember(each.flow, each.bore, each.relative_roughness, rubs)
    return water


def _designed(circuit: Circuit, tools: Layout) -> CircuitFlow:
    """A circuit at its design flow. In a loop the finned tube of its emitters is a piece of it."""
    heat, house, path = tools.heat.emitters, tools.heat.house, f"circuits/{circuit.id}"
    loads = [heat[each].load for each in circuit.runs]
    load = loads[0] if len(loads) == 1 else loads_total(loads=loads)
    flows = {id: heat[id].flow for id in circuit.runs}
    in_series = is_series(circuit.kind, circuit.runs)
    drop = house.drop if circuit.drop is None else circuit.drop
    if flows:
        flow = next(iter(flows.values())) if in_series else tools.joined(path, list(flows.values()))
    else:
        flow = flow_for_heat(heat=load, water_heat=house.water_heat, drop=drop)
    if circuit.flow is not None:
        drop = drop_of_heat(heat=load, flow=flow, water_heat=house.water_heat)
    family = circuit.common.family or usual_family(circuit.kind)
    runs = {}
    for id, pipe in circuit.runs.items():
        own = pipe if pipe.family else replace(pipe, tube=circuit.common.tube)
        finned = heat[id].length if in_series and heat[id].kind in BY_LENGTH else None
        runs[id] = tools.piece(own, f"{path}/runs/{id}", family, flow if in_series else flows[id], finned)
    common = tools.piece(circuit.common, path, family, flow, may_be_none=True)
    index, head = _index(common, runs, in_series)
    if circuit.balanced and index:
        worst = runs[index].head
        runs = {
            id: tools.kept.part(f"{path}/{id}/balancing", (each, worst), partial(_balanced, each, worst))
            for id, each in runs.items()
        }
    return CircuitFlow(
        circuit.name,
        circuit.kind,
        circuit.zone,
        circuit.circulator,
        load,
        flow,
        drop,
        common,
        runs,
        index,
        head,
    )


def _index(common: PipeHead, runs: dict[str, PipeHead], in_series: bool) -> tuple[str, Figure]:
    """The run that costs the most head, and the head of the circuit."""
    if in_series:
        return "", together([common.head, *(each.head for each in runs.values())])
    worst = choose(
        {id: each.head for id, each in runs.items()}, largest, "it needs the most head of its circuit"
    )
    return winner_of(worst), together([common.head, worst])


def _balanced(run: PipeHead, index_head: Figure) -> PipeHead:
    """The run with its valve set to take what the index run needs more; shut where it has no load."""
    if not float(index_head) > float(run.head):
        return run
    setting = coefficient_for_excess(flow=run.flow, needed=index_head, own=run.head)
    return replace(run, balancing=setting)


def network_of(
    job: Job, designed: dict[str, CircuitFlow], plant: PlantPiping, water: Water,
    calling: frozenset[str] | None = None,
) -> Network:  # fmt: skip
    """The circuits that a circulator drives; with ``calling``, those of these zones only.

    A circuit of no zone is always open.
    """
    open_ = {
        id: _branch(each)
        for id, each in designed.items()
        if each.circulator in plant.circulators and (calling is None or not each.zone or each.zone in calling)
    }
    return Network(
        branches=open_,
        circulators=job.system.plant.circulators,
        exponents={id: each.curve_exponent for id, each in plant.circulators.items()},
        mains=plant.mains,
        boiler=job.system.plant.boiler,
        water=water,
    )


def _branch(circuit: CircuitFlow) -> Branch:
    """A circuit for the network, its shut runs apart."""
    shut = {id: each for id, each in circuit.runs.items() if is_shut(each)}
    runs = {id: each for id, each in circuit.runs.items() if id not in shut}
    return Branch(circuit.name, circuit.kind, circuit.circulator, circuit.common, runs, shut)


def is_shut(run: PipeHead) -> bool:
    """True for a run of no load on a balanced circuit: its valve is closed."""
    return run.balancing is not None and float(run.balancing) == 0


def _really(id: str, circuit: CircuitFlow, where: Settled, tools: Layout) -> CircuitFlow:
    """A circuit with the flow it gets, and the heat its emitters give at it."""
    flow = where.circuits[id]
    flows = {key: where.runs[f"{id}/{key}"] for key in circuit.runs}
    runs = {
        key: replace(each, actual_flow=flows[key], actual_velocity=speed_in(each, flows[key]))
        for key, each in circuit.runs.items()
    }
    common = replace(circuit.common, actual_flow=flow, actual_velocity=speed_in(circuit.common, flow))
    emitters = tuple(tools.heat.emitters[each] for each in circuit.runs)
    given = tools.kept.part(
        f"heat of {id}",
        (flow, tools.heat.house.supply, *flows, *flows.values(), *emitters),
        lambda: given_back(tools.job, tools.heat, not circuit.index_run, flow, flows),
    )
    return replace(
        circuit, common=common, runs=runs, actual_flow=flow, actual_drop=given.drop,
        actual_output=given.output, actual_return=given.return_,
    )  # fmt: skip
