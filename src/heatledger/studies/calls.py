"""What circulators do when only some zones call, the smallest call there is, the hardest pump."""

from __future__ import annotations

from dataclasses import dataclass
from weakref import WeakKeyDictionary

from heatledger.ledger.figures import Figure
from heatledger.steps.circuits import network_of
from heatledger.steps.design import Design
from heatledger.steps.networks import settled
from heatledger.steps.rubbing import Water

MOST_ZONES = 6


@dataclass(frozen=True)
class Call:
    """A zone that calls alone: its name, and the flow and head of each circulator that runs then."""

    zone: str
    name: str
    flows: dict[str, Figure]
    heads: dict[str, Figure]


@dataclass(frozen=True)
class LightestCall:
    """The smallest load that may call alone: the zone, the outdoor temperature, and the heat (W)."""

    name: str
    outdoor: Figure
    load: float


_KEPT: WeakKeyDictionary[Design, tuple[Call, ...]] = WeakKeyDictionary()


def zones_alone(design: Design) -> tuple[Call, ...]:
    """Each zone calling alone, in the order of the job; empty for one zone, or more than can be drawn.

    A zone of which the flows do not balance, or wait for something, is left out.
    """
    if design not in _KEPT:
        _KEPT[design] = _zones_alone(design)
    return _KEPT[design]


def _zones_alone(design: Design) -> tuple[Call, ...]:
    zones = design.job.system.zones
    if not 1 < len(zones) <= MOST_ZONES:
        return ()
    found = []
    for id, zone in zones.items():
        network = network_of(
            design.job, design.circuits.circuits, design.circuits.plant,
            Water(design.emitters.house.viscosity), frozenset((id,)),
        )  # fmt: skip
        where = settled(network)
        if where is None or not where.solution.outcome.solved:
            continue
        found.append(Call(id, zone.name or id, dict(where.circulators), dict(where.heads)))
    return tuple(found)


def hardest_pump(design: Design) -> str:
    """The id of the circulator that must make the most head; empty while none is known."""
    pumps = design.circuits.plant.circulators.items()
    heads = {id: float(each.needed_head) for id, each in pumps if not each.needed_head.is_missing}
    return max(heads, key=heads.__getitem__, default="")


def lightest_call(design: Design) -> LightestCall | None:
    """The zone of the least load in the mildest weather of the reset; None while that is not known.

    Circuits of no zone count as one call of the whole house.
    """
    loads: dict[str, float] = {}
    for each in design.circuits.circuits.values():
        if each.load.is_missing:
            return None
        loads[each.zone] = loads.get(each.zone, 0.0) + float(each.load)
    points = [
        each
        for each in design.controls.controls.reset.values()
        if not each.share.is_missing and not each.outdoor.is_missing and float(each.share) > 0
    ]
    loads = {zone: load for zone, load in loads.items() if load > 0}
    if not loads or not points:
        return None
    zone = min(loads, key=lambda each: loads[each])
    mildest = min(points, key=lambda each: float(each.share))
    named = design.job.system.zones.get(zone)
    name = (named.name or zone) if named else "the whole house"
    return LightestCall(name, mildest.outdoor, loads[zone] * float(mildest.share))
