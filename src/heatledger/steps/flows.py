"""The flows that result when only some zones call."""

from __future__ import annotations

from dataclasses import dataclass

from heatledger.job.model import Job
from heatledger.ledger.figures import Figure
from heatledger.steps.circuits import Circuits, network_of
from heatledger.steps.emitters import Emitters
from heatledger.steps.networks import settled
from heatledger.steps.rubbing import Water


@dataclass(frozen=True)
class Flows:
    """Flows by circuit, by emitter and by circulator; what has no flow in this state is not in them.

    ``solved`` is False where nothing balances or an entry is missing: the flows have no value then.
    """

    circuits: dict[str, Figure]
    runs: dict[str, Figure]
    circulators: dict[str, Figure]
    solved: bool = True


def state_flows(job: Job, heat: Emitters, circuits: Circuits, calling: frozenset[str] = frozenset()) -> Flows:
    """Flows when these zones call; no zones at all mean that all call.

    A circuit of no zone is always open. A circulator none of whose circuits is open rests.
    """
    network = network_of(job, circuits.circuits, circuits.plant, Water(heat.house.viscosity), calling or None)
    if set(network.branches) == {
        id for id, each in circuits.circuits.items() if each.actual_flow is not None
    }:
        return _as_designed(circuits)
    where = settled(network)
    if where is None:
        return Flows({}, {}, {})
    runs = {run: where.runs[f"{id}/{run}"] for id in network.branches for run in circuits.circuits[id].runs}
    return Flows(dict(where.circuits), runs, dict(where.circulators), where.solution.outcome.solved)


def _as_designed(circuits: Circuits) -> Flows:
    """The flows with all circuits open, which the circuits step has found already."""
    open_ = {id: each for id, each in circuits.circuits.items() if each.actual_flow is not None}
    flows = {id: each.actual_flow for id, each in open_.items() if each.actual_flow is not None}
    runs = {
        id: run.actual_flow
        for each in open_.values()
        for id, run in each.runs.items()
        if run.actual_flow is not None
    }
    pumps = {
        id: each.actual_flow
        for id, each in circuits.plant.circulators.items()
        if each.actual_flow is not None
    }
    return Flows(flows, runs, pumps, not any(each.is_missing for each in flows.values()))
