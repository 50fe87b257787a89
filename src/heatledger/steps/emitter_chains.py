"""Emitters that water passes one after the other: what it is like behind each, and what must enter them.

The same law carries the water forward at a supply and back to the supply that a load asks for, on the design
day, at a part of its load and at whatever flows result.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from heatledger.job.model import Job
from heatledger.job.system_model import SERIES, Circuit
from heatledger.ledger.choosing import choose, largest
from heatledger.ledger.dimensions import Conductance, HeatRate, Temperature
from heatledger.ledger.figures import Figure
from heatledger.ledger.results import result
from heatledger.physics.along_emitter import (
    carrying_ratio,
    closer_inlet_ratio,
    drop_ratio_of_load,
    excess_ratio,
    heat_given,
    inlet_at_load,
    inlet_ratio_by_mean,
    inlet_ratio_for,
    mean_ratio_needed,
    outlet_ratio,
    water_of_excess,
)
from heatledger.physics.emitter_loads import load_at_share
from heatledger.physics.emitters import least_flow_of_element, output_here
from heatledger.physics.water import capacity
from heatledger.steps.emitter_ratings import factor_of_flow

if TYPE_CHECKING:
    from heatledger.steps.emitters import Emitters


@result
class Passed:
    """An emitter at a flow: the water before and behind it, and what it gives."""

    capacity: Conductance
    inlet: Temperature
    outlet: Temperature
    output: HeatRate


@dataclass(frozen=True)
class Link:
    """One emitter of a chain at its flow: all that the law along it asks for.

    ``rated`` is None where the size is still to be found; such an emitter is taken to carry its load.
    """

    air: Figure
    excess: Figure
    exponent: Figure
    capacity: Figure
    rated: Figure | None
    load: Figure

    def carrying(self) -> Figure:
        """What its water can carry over its rated output."""
        assert self.rated is not None
        return carrying_ratio(capacity=self.capacity, excess=self.excess, rated=self.rated)

    def outlet(self, inlet: Figure) -> Figure:
        """The water behind it."""
        into = excess_ratio(water=inlet, air=self.air, excess=self.excess)
        left = outlet_ratio(inlet_ratio=into, carrying=self.carrying(), exponent=self.exponent)
        return water_of_excess(air=self.air, ratio=left, excess=self.excess)

    def inlet(self, outlet: Figure) -> Figure:
        """The water that must enter so that this leaves."""
        if self.rated is None:
            return inlet_at_load(outlet=outlet, load=self.load, capacity=self.capacity)
        left = excess_ratio(water=outlet, air=self.air, excess=self.excess)
        into = inlet_ratio_for(outlet_ratio=left, carrying=self.carrying(), exponent=self.exponent)
        return water_of_excess(air=self.air, ratio=into, excess=self.excess)

    def inlet_for(self, load: Figure, wanted: Figure | None = None) -> Figure:
        """The water that must enter so that it gives a load; the room's own temperature where that is none.

        ``wanted`` is the missing entry that stands for the rated output where the size is open.
        """
        if float(load) <= 0:
            return self.air
        rated = self.rated if self.rated is not None else wanted
        assert rated is not None
        drop = drop_ratio_of_load(load=load, capacity=self.capacity, excess=self.excess)
        carrying = carrying_ratio(capacity=self.capacity, excess=self.excess, rated=rated)
        mean = mean_ratio_needed(load=load, rated=rated, exponent=self.exponent)
        into = inlet_ratio_by_mean(mean_ratio=mean, drop_ratio=drop, exponent=self.exponent)
        for _ in range(2):  # the first is good to a millionth, the second to ten figures
            left = outlet_ratio(inlet_ratio=into, carrying=carrying, exponent=self.exponent)
            into = closer_inlet_ratio(
                inlet_ratio=into, outlet_ratio=left, drop_ratio=drop, exponent=self.exponent
            )
        return water_of_excess(air=self.air, ratio=into, excess=self.excess)


def supply_before(inlet: Figure, before: Sequence[Link]) -> Figure:
    """The supply of a circuit at which water reaches an emitter with a temperature, given all before it."""
    for each in reversed(before):
        inlet = each.inlet(inlet)
    return inlet


def chains(job: Job) -> list[tuple[Circuit | None, tuple[str, ...]]]:
    """Every chain of emitters with its circuit: the runs of a series loop together, each other emitter alone.

    An emitter that no circuit names has none, and counts as a run of its own.
    """
    emitters = job.system.emitters
    found: list[tuple[Circuit | None, tuple[str, ...]]] = []
    for circuit in job.system.circuits.values():
        runs = tuple(each for each in circuit.runs if each in emitters)
        apart = [runs] if circuit.kind == SERIES and runs else [(each,) for each in runs]
        found += [(circuit, each) for each in apart]
    placed = {id for _, chain in found for id in chain}
    return found + [(None, (id,)) for id in emitters if id not in placed]


def chain_to(job: Job, id: str) -> tuple[str, ...]:
    """The emitters that water passes up to one, itself last."""
    for _, chain in chains(job):
        if id in chain:
            return chain[: chain.index(id) + 1]
    return (id,)


def links(
    job: Job,
    heat: Emitters,
    ids: Iterable[str],
    flows: Mapping[str, Figure] | None = None,
    air: Figure | None = None,
) -> list[Link]:
    """The emitters of a chain as they stand, at the design flow or at flows by emitter.

    ``air`` is a room temperature that stands for that of every room, as read at startup.
    """
    made = []
    for id in ids:
        emitter, found = job.system.emitters[id], heat.emitters[id]
        rated, through = found.rated_here, found.capacity
        if flows is not None:
            least = least_flow_of_element(viscosity=heat.house.viscosity)
            factor = factor_of_flow(emitter, flows[id], least)
            rated = output_here(rated=found.rated, flow_factor=factor, altitude_factor=found.altitude_factor)
            through = capacity(flow=flows[id], water_heat=heat.house.water_heat)
        at = job.rooms[emitter.room].indoor if air is None else air
        made.append(Link(at, found.excess, emitter.exponent, through, rated, found.load))
    return made


def outlet_chain(
    job: Job,
    heat: Emitters,
    ids: Sequence[str],
    supply: Figure,
    flows: Mapping[str, Figure] | None = None,
    air: Figure | None = None,
) -> dict[str, Passed]:
    """What happens to water of a supply on its way through emitters, at design flow or at other flows.

    Heat is ``capacity`` times the fall of the water, so that what emitters give is what the water loses.
    """
    passed: dict[str, Passed] = {}
    inlet = supply
    for id, each in zip(ids, links(job, heat, ids, flows, air), strict=True):
        outlet = each.outlet(inlet)
        given = heat_given(capacity=each.capacity, inlet=inlet, outlet=outlet)
        passed[id] = Passed(each.capacity, inlet, outlet, given)
        inlet = outlet
    return passed


def required_supply(job: Job, heat: Emitters, id: str, share: Figure) -> Figure:
    """Supply of its circuit at which an emitter gives a share of its load, at the design flow."""
    *before, own = links(job, heat, chain_to(job, id))
    load = load_at_share(load=heat.emitters[id].load, share=share)
    return supply_before(own.inlet_for(load), before)


def supply_for_share(job: Job, heat: Emitters, share: Figure, because: str = "") -> Figure:
    """Lowest supply at which every emitter that has a load gives a share of it, at the design flows.

    Emitters whose size is still to be found are left out. Without any the result waits as the design does.
    """
    asked = {
        id: required_supply(job, heat, id, share)
        for id, each in heat.emitters.items()
        if float(each.load) > 0 and not each.rated.is_missing
    }
    if not asked:
        return heat.house.lowest_supply
    return choose(asked, largest, because or "the supply must serve the emitter that asks for most")
