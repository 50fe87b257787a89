"""Water on its way through the emitters of a chain on the design day: sizes, outputs, lowest supply."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from heatledger.ledger.dimensions import (
    Conductance,
    HeatRate,
    Length,
    Ratio,
    Temperature,
    TemperatureDifference,
    VolumeFlow,
)
from heatledger.ledger.figures import Figure
from heatledger.ledger.presets import Preset
from heatledger.ledger.results import result
from heatledger.physics.along_emitter import (
    excess_ratio,
    heat_given,
    mean_water,
    needed_rated,
    outlet_at_load,
)
from heatledger.physics.emitters import (
    needed_at_rating,
    needed_length,
    output_here,
    output_of_length,
    rating_here,
)
from heatledger.physics.water import capacity
from heatledger.steps.emitter_chains import Link, supply_before
from heatledger.steps.emitter_lengths import suggested_length
from heatledger.steps.emitter_ratings import Rated, factor_of_flow


@result
class EmitterHeat:
    """One emitter on the design day.

    ``rated`` is the whole emitter at its rating point, net of its heating effect, ``rated_here`` the same
    at the flow and the altitude of the job; ``excess`` belongs to both. ``inlet`` to ``output`` are at the
    design supply, with nothing held back. ``needed_length`` is set for baseboard, ``needed_rated`` for what
    is bought by the piece, on the basis of ``rated``. ``suggested``: the length was found here.
    ``lowest_supply`` is the supply of its circuit at which it gives its load.
    """

    name: str
    room: str
    kind: str
    load: HeatRate
    rated: HeatRate
    excess: TemperatureDifference
    flow: VolumeFlow
    flow_factor: Ratio
    altitude_factor: Ratio
    rated_here: HeatRate
    capacity: Conductance
    inlet: Temperature
    outlet: Temperature
    mean_water: Temperature
    output: HeatRate
    needed_length: Length | None
    needed_rated: HeatRate | None
    length: Length | None
    lowest_supply: Temperature
    suggested: bool


@dataclass(frozen=True)
class Asked:
    """An emitter with its load, at its design flow."""

    id: str
    rated: Rated
    load: Figure
    flow: Figure
    factor: Figure
    capacity: Figure

    def link(self, rated: Figure | None) -> Link:
        """The emitter in a chain, of a size; None where that is open."""
        of = self.rated
        here = None if rated is None else self.here(rated)
        return Link(of.air, of.excess, of.emitter.exponent, self.capacity, here, self.load)

    def here(self, rated: Figure) -> Figure:
        """A rated output at the flow and the altitude of the job."""
        return output_here(rated=rated, flow_factor=self.factor, altitude_factor=self.rated.thin_air)


@dataclass(frozen=True)
class _Size:
    """The size an emitter has or is given, and what it would need."""

    rated: Figure | None
    length: Figure | None
    suggested: bool
    needed_length: Figure | None
    needed_rated: Figure | None


def asked(id: str, of: Rated, load: Figure, flow: Figure, water_heat: Figure, least: Figure) -> Asked:
    """An emitter at a flow."""
    factor = factor_of_flow(of.emitter, flow, least)
    return Asked(id, of, load, flow, factor, capacity(flow=flow, water_heat=water_heat))


def lowest_in(chain: Sequence[Asked], links: Sequence[Link] | None = None) -> dict[str, Figure]:
    """Supply at which each emitter of a chain gives its load, all before it as they stand."""
    if links is None:
        links = [each.link(each.rated.output) for each in chain]
    return {
        each.id: supply_before(own.inlet_for(each.load, each.rated.unknown), links[:i])
        for i, (each, own) in enumerate(zip(chain, links, strict=True))
    }


def pass_through(
    chain: Sequence[Asked], supply: Figure, units: Preset, lowest: Mapping[str, Figure] | None = None
) -> dict[str, EmitterHeat]:
    """The emitters of a chain at the design supply, each behind the one before it.

    Where a size is open it is found here. ``lowest`` holds the lowest supplies where they were needed to
    find the design supply; else they are worked out with the sizes found.
    """
    sizes, waters, links = [], [], []
    inlet = supply
    for each in chain:
        size = _size(each, inlet, units)
        link = each.link(size.rated)
        outlet = link.outlet(inlet) if size.rated is not None else outlet_at_load(
            inlet=inlet, load=each.load, capacity=each.capacity
        )  # fmt: skip
        sizes.append(size)
        links.append(link)
        waters.append((inlet, outlet))
        inlet = outlet
    if lowest is None:
        lowest = lowest_in(chain, links)
    return {
        each.id: _heat(each, size, *water, lowest[each.id])
        for each, size, water in zip(chain, sizes, waters, strict=True)
    }


def _size(each: Asked, inlet: Figure, units: Preset) -> _Size:
    """What an emitter needs to give its load at an inlet, and what it has or is given."""
    of = each.rated
    left = outlet_at_load(inlet=inlet, load=each.load, capacity=each.capacity)
    needed = needed_rated(
        inlet_ratio=excess_ratio(water=inlet, air=of.air, excess=of.excess),
        outlet_ratio=excess_ratio(water=left, air=of.air, excess=of.excess),
        capacity=each.capacity,
        excess=of.excess,
        exponent=of.emitter.exponent,
    )
    if of.per_length is None:
        at_rating = needed_at_rating(needed=needed, flow_factor=each.factor, altitude_factor=of.thin_air)
        return _Size(of.output, of.emitter.length, False, None, at_rating)
    per_length = rating_here(rating=of.per_length, flow_factor=each.factor, altitude_factor=of.thin_air)
    wanted = needed_length(needed=needed, rating=per_length)
    if of.output is not None:
        return _Size(of.output, of.emitter.length, False, wanted, None)
    length = suggested_length(wanted, units)
    rated = None if length is None else output_of_length(rating=of.per_length, length=length)
    return _Size(rated, length, length is not None, wanted, None)


def _heat(each: Asked, size: _Size, inlet: Figure, outlet: Figure, lowest: Figure) -> EmitterHeat:
    of = each.rated
    rated = of.unknown if size.rated is None else size.rated
    assert rated is not None
    here = each.here(rated)
    given = here if size.rated is None else heat_given(capacity=each.capacity, inlet=inlet, outlet=outlet)
    return EmitterHeat(
        name=of.emitter.name,
        room=of.emitter.room,
        kind=of.emitter.kind,
        load=each.load,
        rated=rated,
        excess=of.excess,
        flow=each.flow,
        flow_factor=each.factor,
        altitude_factor=of.thin_air,
        rated_here=here,
        capacity=each.capacity,
        inlet=inlet,
        outlet=outlet,
        mean_water=mean_water(inlet=inlet, outlet=outlet),
        output=given,
        needed_length=size.needed_length,
        needed_rated=size.needed_rated,
        length=size.length,
        lowest_supply=lowest,
        suggested=size.suggested,
    )
