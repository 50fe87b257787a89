"""Where the search for the flows of a network starts: plain numbers, close to the answer.

Each piece is taken to cost head as a fixed power of its flow. With that the flows of parallel pieces
follow at once; a few rounds with the true heads bring them to where the ledger's search has little left
to do. Nothing found here is a result.
"""

from __future__ import annotations

from math import isfinite
from typing import TYPE_CHECKING

from heatledger.ledger.formulas import formula_of
from heatledger.physics.fittings import valve_head
from heatledger.physics.pumps import boiler_head, pump_head
from heatledger.steps.piping import PipeHead
from heatledger.steps.rubbing import plain_rubbing

if TYPE_CHECKING:
    from heatledger.steps.networks import Branch, Network

POWER = 1.85
ROUNDS = 12
HALVINGS = 60
CLOSE = 1e-11
_VALVE, _BOILER, _PUMP = (formula_of(each).body for each in (valve_head, boiler_head, pump_head))


def start_flows(network: Network) -> dict[str, float]:
    """A flow to start at for each way of a network, near the answer where there is one."""
    flows = _design_flows(network)
    try:
        for _ in range(ROUNDS):
            nearer = _round(network, flows)
            if not all(isfinite(each) and each > 0 for each in nearer.values()):
                break
            moved = max(abs(nearer[key] / flows[key] - 1) for key in flows)
            flows = nearer
            if moved < CLOSE:
                break
    except (ZeroDivisionError, ValueError, OverflowError, TypeError):
        pass
    return flows


def _design_flows(network: Network) -> dict[str, float]:
    """Design flows; a way that needs next to none starts at a hundredth of the largest."""
    found = {}
    for key, id, run in network.ways():
        branch = network.branches[id]
        found[key] = float(branch.runs[run].flow if run else branch.common.flow)
    largest = max((each for each in found.values() if isfinite(each)), default=0.0) or 1e-4
    return {key: each if each > largest / 100 else largest / 100 for key, each in found.items()}


def _head(piece: PipeHead, flow: float, viscosity: float) -> float:
    _, rubs = plain_rubbing(flow, float(piece.bore), float(piece.relative_roughness), viscosity)
    head: float = rubs * (float(piece.pipe_head.inputs[1]) + float(piece.fittings_length))
    for each in (piece.valve, piece.balancing):
        if each is not None:
            head += _VALVE(flow, float(each))
    return head


def _resistance(pieces: list[PipeHead], flow: float, viscosity: float) -> float:
    return float(sum(_head(each, flow, viscosity) for each in pieces) / flow**POWER)


def _branch(branch: Branch, id: str, flows: dict[str, float], nu: float) -> tuple[float, dict[str, float]]:
    """Resistance of a circuit, and the share of its flow that each of its ways takes."""
    if branch.in_series:
        return _resistance([branch.common, *branch.runs.values()], flows[id], nu), {id: 1.0}
    own = {f"{id}/{run}": piece for run, piece in branch.runs.items()}
    whole = sum(flows[key] for key in own)
    eases = {key: _resistance([piece], flows[key], nu) ** (-1 / POWER) for key, piece in own.items()}
    ease = sum(eases.values())
    resistance = _resistance([branch.common], whole, nu) + ease**-POWER
    return resistance, {key: each / ease for key, each in eases.items()}


def _round(network: Network, flows: dict[str, float]) -> dict[str, float]:
    """The flows once more, from the resistances at the flows before."""
    nu = float(network.water.viscosity)
    branches = {id: _branch(each, id, flows, nu) for id, each in network.branches.items()}
    whole = sum(flows.values())
    taken = 0.0 if network.mains is None else _head(network.mains, whole, nu)
    boiler = network.boiler
    if boiler is not None and boiler.rated_flow is not None and boiler.rated_head is not None:
        taken += _BOILER(whole, float(boiler.rated_flow), float(boiler.rated_head))
    alone = len({each.circulator for each in network.branches.values()}) == 1
    nearer: dict[str, float] = {}
    for pump in {each.circulator: None for each in network.branches.values()}:
        eases = {
            id: branches[id][0] ** (-1 / POWER)
            for id, each in network.branches.items()
            if each.circulator == pump
        }
        ease = sum(eases.values())
        before = sum(flows[key] for id in eases for key in branches[id][1])
        # What others take of the shared way stays as it is; one pump alone takes it all by its own flow.
        shared = taken / before**POWER if alone else 0.0
        flow = _crossing(network, pump, ease**-POWER + shared, 0.0 if alone else taken)
        flow = flow if alone else (flow + before) / 2
        for id, own in eases.items():
            nearer |= {key: flow * own / ease * share for key, share in branches[id][1].items()}
    return nearer


def _crossing(network: Network, id: str, resistance: float, taken: float) -> float:
    """The flow at which a pump's head is what its circuits cost, by halving."""
    pump = network.circulators[id]
    points = [
        float(each) for each in (pump.shutoff, pump.middle_head, pump.middle_flow, network.exponents[id])
    ]
    low, high = 0.0, 10 * float(pump.high_flow)
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        if _PUMP(middle, *points) - taken > resistance * middle**POWER:
            low = middle
        else:
            high = middle
    return (low + high) / 2
