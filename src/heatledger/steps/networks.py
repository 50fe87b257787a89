"""The flows that circulators and piping settle at together, when some of the circuits are open.

In each circuit the head that its circulator leaves, less what the mains and the boiler take, is the head
that the circuit costs at its flow. Flow is kept at every tee. All circulators that run share the mains
and the boiler.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from heatledger.job.system_model import SERIES, Boiler, Circulator
from heatledger.ledger.dimensions import VOLUME_FLOW
from heatledger.ledger.figures import Figure
from heatledger.ledger.solving import Sides, Solution, Unknown, solve
from heatledger.physics.friction import flow_total
from heatledger.physics.pumps import boiler_head, head_left, pump_head
from heatledger.steps.piping import PipeHead, head_at, together
from heatledger.steps.rubbing import Water
from heatledger.steps.settling import start_flows


@dataclass(frozen=True)
class Branch:
    """A circuit as the network sees it: its kind, its circulator, and its laid pieces.

    ``shut`` are runs whose balancing valve is closed, because they need no heat: no water passes them.
    """

    name: str
    kind: str
    circulator: str
    common: PipeHead
    runs: Mapping[str, PipeHead]
    shut: Mapping[str, PipeHead] = field(default_factory=dict)

    @property
    def in_series(self) -> bool:
        """True for a loop in which one water passes all runs."""
        return is_series(self.kind, self.runs)


def is_series(kind: str, runs: Mapping[str, object]) -> bool:
    """True for a circuit whose water passes all runs one after the other, or that has none."""
    return kind == SERIES or not runs


@dataclass(frozen=True)
class Network:
    """What flows together: the open circuits, the circulators that drive them, mains, boiler and water."""

    branches: Mapping[str, Branch]
    circulators: Mapping[str, Circulator]
    exponents: Mapping[str, Figure]
    mains: PipeHead | None
    boiler: Boiler | None
    water: Water

    def goes_in(self) -> Iterator[object]:
        """Everything the flows follow from."""
        yield from (self.mains, self.boiler, self.water.viscosity)
        for id, each in self.branches.items():
            yield from (id, each.name, each.kind, each.circulator, each.common)
            yield from (*each.runs, *each.runs.values(), *each.shut, *each.shut.values())
            yield from (self.circulators[each.circulator], self.exponents[each.circulator])

    def ways(self) -> Iterator[tuple[str, str, str]]:
        """Each path of water with a flow of its own: its key, its circuit, and its run (empty: the loop)."""
        for id, branch in self.branches.items():
            if branch.in_series:
                yield id, id, ""
            else:
                for run in branch.runs:
                    yield f"{id}/{run}", id, run


@dataclass(frozen=True)
class Settled:
    """Flows of every circuit, of every run by circuit/run, of every circulator, and of the whole plant."""

    circuits: dict[str, Figure]
    runs: dict[str, Figure]
    circulators: dict[str, Figure]
    heads: dict[str, Figure]
    whole: Figure
    solution: Solution


def settled(network: Network) -> Settled | None:
    """The flows at which every circuit's head balances; None when nothing is open.

    Where an input is missing, or nothing balances, the flows are figures without a value.
    """
    if not network.branches:
        return None
    names = {key: _words(network, id, run) for key, id, run in network.ways()}
    starts = start_flows(network)
    unknowns = {names[key]: Unknown(VOLUME_FLOW, starts[key]) for key in names}

    def equations(found: Mapping[str, Figure]) -> Sides:
        return _balances(network, {key: found[name] for key, name in names.items()}, names)

    solution = solve("the heads of circulators and circuits", unknowns, equations)
    ways = {key: solution.figures[name] for key, name in names.items()}
    circuits, circulators, whole = _sums(network, ways)
    runs = {
        f"{id}/{run}": circuits[id] if branch.in_series else ways[f"{id}/{run}"]
        for id, branch in network.branches.items()
        for run in branch.runs
    }
    for id, branch in network.branches.items():
        runs |= {f"{id}/{run}": piece.flow for run, piece in branch.shut.items()}
    heads = {id: _pump_head(network, id, flow) for id, flow in circulators.items()}
    return Settled(circuits, runs, circulators, heads, whole, solution)


def _words(network: Network, id: str, run: str) -> str:
    """What an unknown flow is called in the working."""
    return f"flow of {network.branches[id].name}" + (f", {run}" if run else "")


def _sums(
    network: Network, ways: Mapping[str, Figure]
) -> tuple[dict[str, Figure], dict[str, Figure], Figure]:
    """Flows of circuits, of circulators and of the whole plant from those of each way."""
    parts: dict[str, list[Figure]] = {}
    for key, id, _ in network.ways():
        parts.setdefault(id, []).append(ways[key])
    circuits = {id: _joined(each) for id, each in parts.items()}
    by_pump: dict[str, list[Figure]] = {}
    for id, branch in network.branches.items():
        by_pump.setdefault(branch.circulator, []).append(circuits[id])
    circulators = {id: _joined(each) for id, each in by_pump.items()}
    return circuits, circulators, _joined(list(circulators.values()))


def _joined(flows: list[Figure]) -> Figure:
    return flows[0] if len(flows) == 1 else flow_total(flows=flows)


def _pump_head(network: Network, id: str, flow: Figure) -> Figure:
    pump = network.circulators[id]
    return pump_head(
        flow=flow, shutoff=pump.shutoff, middle_head=pump.middle_head, middle_flow=pump.middle_flow,
        exponent=network.exponents[id],
    )  # fmt: skip


def heads_of_plant(mains: PipeHead | None, boiler: Boiler | None, flow: Figure, water: Water) -> list[Figure]:
    """Heads of what all water passes: the mains, and the boiler where its head is known."""
    heads = [] if mains is None else [head_at(mains, flow, water)]
    if boiler is not None and boiler.rated_flow is not None and boiler.rated_head is not None:
        heads.append(boiler_head(flow=flow, rated_flow=boiler.rated_flow, rated_head=boiler.rated_head))
    return heads


def _balances(network: Network, ways: Mapping[str, Figure], names: Mapping[str, str]) -> Sides:
    """For each way: the head left for its circuit, and the head it costs."""
    water = network.water
    circuits, circulators, whole = _sums(network, ways)
    taken = heads_of_plant(network.mains, network.boiler, whole, water)
    left = {}
    for id, flow in circulators.items():
        given = _pump_head(network, id, flow)
        left[id] = head_left(given=given, taken=taken) if taken else given
    sides = {}
    for id, branch in network.branches.items():
        common = head_at(branch.common, circuits[id], water)
        if branch.in_series:
            heads = [common, *(head_at(each, circuits[id], water) for each in branch.runs.values())]
            sides[names[id]] = (left[branch.circulator], together(heads))
            continue
        for run, piece in branch.runs.items():
            key = f"{id}/{run}"
            sides[names[key]] = (
                left[branch.circulator],
                together([common, head_at(piece, ways[key], water)]),
            )
    return sides
