"""Where the search for the flows of a network starts: plain numbers, close to the answer.

Each piece is taken to cost head as the power of its flow that it has just there. With that the flows of
pieces in parallel and in series follow at once; a few rounds with the true heads bring them to where the
ledger's search has nothing left to do but to see that they hold. Nothing found here is a result.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from math import isfinite
from typing import TYPE_CHECKING

from heatledger.ledger.formulas import formula_of
from heatledger.physics.fittings import valve_head
from heatledger.physics.pumps import boiler_head, pump_head
from heatledger.steps.piping import PipeHead
from heatledger.steps.rubbing import plain_power, plain_rubbing

if TYPE_CHECKING:
    from heatledger.steps.networks import Branch, Network

ROUNDS = 14
HALVINGS = 60
CLOSE = 1e-11
_VALVE, _BOILER, _PUMP = (formula_of(each).body for each in (valve_head, boiler_head, pump_head))


@dataclass(frozen=True)
class Element:
    """What costs ``head`` at ``flow``, and near it goes as a power of the flow."""

    head: float
    flow: float
    power: float

    def head_at(self, flow: float) -> float:
        """The head at another flow."""
        return float(self.head * (flow / self.flow) ** self.power)

    def flow_at(self, head: float) -> float:
        """The flow that costs another head."""
        return float(self.flow * (head / self.head) ** (1 / self.power))


def in_series(elements: Iterable[Element], flow: float) -> Element:
    """Pieces that one water passes one after the other, at a flow."""
    heads = [(each.head_at(flow), each.power) for each in elements]
    whole = sum(head for head, _ in heads)
    return Element(whole, flow, sum(head * power for head, power in heads) / whole)


def in_parallel(elements: Iterable[Element]) -> Element:
    """Pieces that share the water, at the head that they cost on average."""
    listed = list(elements)
    head = sum(each.head * each.flow for each in listed) / sum(each.flow for each in listed)
    flows = [(each.flow_at(head), each.power) for each in listed]
    whole = sum(flow for flow, _ in flows)
    return Element(head, whole, whole / sum(flow / power for flow, power in flows))


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


def _element(pieces: Iterable[PipeHead], flow: float, viscosity: float) -> Element:
    """Pieces in series at a flow, each with the power of its tube and the square of its valves."""
    whole = steep = 0.0
    known: dict[tuple[float, float], tuple[float, float]] = {}
    for piece in pieces:
        tube = (float(piece.bore), float(piece.relative_roughness))
        if tube not in known:
            rubs = plain_rubbing(flow, *tube, viscosity)[1]
            known[tube] = rubs, plain_power(flow, *tube, viscosity)
        rubs, power = known[tube]
        head = rubs * (float(piece.pipe_head.inputs[1]) + float(piece.fittings_length))
        whole, steep = whole + head, steep + head * power
        for each in (piece.valve, piece.balancing):
            if each is not None:
                head = _VALVE(flow, float(each))
                whole, steep = whole + head, steep + head * 2
    return Element(whole, flow, steep / whole if whole else 2.0)


@dataclass(frozen=True)
class Way:
    """A circuit as one element, with its runs beside one another where they share its water."""

    whole: Element
    runs: dict[str, Element]
    shared: Element | None

    def flows_at(self, id: str, flow: float) -> dict[str, float]:
        """The flow of each of its ways when the circuit takes a flow."""
        if self.shared is None:
            return {id: flow}
        head = self.shared.head_at(flow)
        return {key: each.flow_at(head) for key, each in self.runs.items()}


def _way(branch: Branch, id: str, flows: dict[str, float], nu: float) -> Way:
    if branch.in_series:
        return Way(_element([branch.common, *branch.runs.values()], flows[id], nu), {}, None)
    runs = {f"{id}/{run}": _element([piece], flows[f"{id}/{run}"], nu) for run, piece in branch.runs.items()}
    shared = in_parallel(runs.values())
    common = _element([branch.common], sum(flows[key] for key in runs), nu)
    return Way(in_series([shared, common], shared.flow), runs, shared)


def _taken(network: Network, whole: float) -> list[Element]:
    """What all water passes: the mains and the boiler."""
    nu = float(network.water.viscosity)
    found = [] if network.mains is None else [_element([network.mains], whole, nu)]
    boiler = network.boiler
    if boiler is not None and boiler.rated_flow is not None and boiler.rated_head is not None:
        rated = (float(boiler.rated_flow), float(boiler.rated_head))
        here, near = _BOILER(whole, *rated), _BOILER(whole * 1.0001, *rated)
        found.append(Element(here, whole, (near / here - 1) / 0.0001 if here else 2.0))
    return found


def _round(network: Network, flows: dict[str, float]) -> dict[str, float]:
    """The flows once more, from what the pieces cost at the flows before."""
    nu = float(network.water.viscosity)
    ways = {id: _way(each, id, flows, nu) for id, each in network.branches.items()}
    taken = _taken(network, sum(flows.values()))
    pumps = list(dict.fromkeys(each.circulator for each in network.branches.values()))
    nearer: dict[str, float] = {}
    for pump in pumps:
        own = {id: ways[id] for id, each in network.branches.items() if each.circulator == pump}
        together = in_parallel(each.whole for each in own.values())
        if len(pumps) == 1:
            flow = _crossing(network, pump, [together, *taken], 0.0)
        else:  # what the others take of the shared way stays as it is
            before = sum(flows[key] for id, each in own.items() for key in each.flows_at(id, 1.0))
            flow = (_crossing(network, pump, [together], sum(each.head for each in taken)) + before) / 2
        head = together.head_at(flow)
        for id, each in own.items():
            nearer |= each.flows_at(id, each.whole.flow_at(head))
    return nearer


def _crossing(network: Network, id: str, elements: list[Element], taken: float) -> float:
    """The flow at which a pump's head is what its circuits cost, by halving."""
    pump = network.circulators[id]
    points = [
        float(each) for each in (pump.shutoff, pump.middle_head, pump.middle_flow, network.exponents[id])
    ]
    low, high = 0.0, 10 * float(pump.high_flow)
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        if _PUMP(middle, *points) - taken > sum(each.head_at(middle) for each in elements):
            low = middle
        else:
            high = middle
    return (low + high) / 2
