"""Which emitters set the supply in a given weather: all are asked, in plain numbers, before any is shown.

Left out at once is only what can never set it: one beside which another, of the same exponent and fed
straight from the supply, has a room as warm, a mean excess as large and a fall as large on the design day.
Shares scale both alike, so the other asks for as much in all weather.

The one that asks for most on the design day need not do so in mild weather: rooms are kept at their own
temperatures, and emitters bend by their own exponents. Nothing found here is a result; the emitters that
are named here are worked out again as figures.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import isnan, nan

from heatledger.job.model import Job
from heatledger.ledger.figures import Figure
from heatledger.ledger.formulas import formula_of
from heatledger.physics.along_emitter import (
    closer_inlet_ratio,
    inlet_ratio_by_mean,
    inlet_ratio_for,
    mean_ratio_needed,
    outlet_ratio,
)
from heatledger.physics.reset import heat_to_give
from heatledger.steps.emitter_chains import Link, chains, links
from heatledger.steps.emitters import Emitters

IN_SIGHT = 2
"""How many emitters are kept: the one that sets the supply, and the next."""
SAME = 1e-12
"""Falls that differ by less are those of one drop."""
_OUTLET, _INLET, _BY_MEAN, _CLOSER, _MEAN = (
    formula_of(each).body
    for each in (outlet_ratio, inlet_ratio_for, inlet_ratio_by_mean, closer_inlet_ratio, mean_ratio_needed)
)


@dataclass(frozen=True)
class _Plain:
    """A link in plain numbers."""

    air: float
    excess: float
    exponent: float
    carrying: float


@dataclass(frozen=True)
class Asker:
    """An emitter that needs heat: what it is to give on the design day, and all before it in its loop."""

    load: Figure
    output: Figure
    before: tuple[Link, ...]
    own: Link
    plain_before: tuple[_Plain, ...]
    plain: _Plain
    drop_ratio: float
    mean_ratio: float

    @property
    def whole(self) -> Figure:
        """Heat it is to give on the design day."""
        return heat_to_give(load=self.load, output=self.output)

    def never_under(self, other: Asker) -> bool:
        """True when it asks for as much as another in all weather."""
        if self.before or self.plain.exponent != other.plain.exponent or other.before:
            return False
        own, its = self.plain.excess, other.plain.excess
        return (
            self.plain.air >= other.plain.air
            and self.mean_ratio * own >= other.mean_ratio * its
            and self.drop_ratio * own >= other.drop_ratio * its * (1 - SAME)
        )

    def supply_at(self, share: float) -> float:
        """The supply it asks for at a share of its heat, as a plain number."""
        if not share > 0:
            return self.plain.air
        of = self.plain
        drop = self.drop_ratio * share
        into = _BY_MEAN(self.mean_ratio * share ** (1 / of.exponent), drop, of.exponent)
        for _ in range(2):
            into = _CLOSER(into, _OUTLET(into, of.carrying, of.exponent), drop, of.exponent)
        water = of.air + into * of.excess
        for each in self.plain_before:
            left = (water - each.air) / each.excess
            water = each.air + _INLET(left, each.carrying, each.exponent) * each.excess
        return float(water)


def askers_of(job: Job, heat: Emitters) -> dict[str, Asker]:
    """The emitters that may set the supply: those with a load and of known size, and not outdone by another."""
    found: dict[str, Asker] = {}
    for _, chain in chains(job):
        passed = links(job, heat, chain)
        plain = [_plain(each) for each in passed]
        for i, id in enumerate(chain):
            each = heat.emitters[id]
            if isnan(each.output) or isnan(each.lowest_supply) or not float(each.load) > 0:
                continue
            own = passed[i]
            assert own.rated is not None
            whole = min(float(each.load), float(each.output))
            found[id] = Asker(
                load=each.load,
                output=each.output,
                before=tuple(passed[:i]),
                own=own,
                plain_before=tuple(reversed(plain[:i])),
                plain=plain[i],
                drop_ratio=whole / (float(own.capacity) * float(own.excess)),
                mean_ratio=_MEAN(whole, float(own.rated), float(own.exponent)),
            )
    return _not_outdone({id: found[id] for id in heat.emitters if id in found})


def _not_outdone(askers: dict[str, Asker]) -> dict[str, Asker]:
    """Those beside which no other asks for as much in all weather; of equals the first."""
    kept: dict[str, Asker] = {}
    for id, each in askers.items():
        if not any(other.never_under(each) for other in kept.values()):
            kept = {key: other for key, other in kept.items() if not each.never_under(other)}
            kept[id] = each
    return kept


def _plain(link: Link) -> _Plain:
    rated = nan if link.rated is None else float(link.rated)
    carrying = float(link.capacity) * float(link.excess) / rated if rated else nan
    return _Plain(float(link.air), float(link.excess), float(link.exponent), carrying)


def warmest(askers: dict[str, Asker], share: Figure) -> Sequence[str]:
    """The emitters that ask for most at a share of the load, in the order of the job."""
    if isnan(share) or len(askers) <= IN_SIGHT:
        return list(askers)
    asked = {id: _safe(each, float(share)) for id, each in askers.items()}
    most = sorted(asked, key=lambda id: -asked[id])[:IN_SIGHT]
    return [id for id in askers if id in most]


def _safe(asker: Asker, share: float) -> float:
    """What an emitter asks for; one that the law has no answer for counts as asking most, so that it is seen."""
    try:
        value = asker.supply_at(share)
    except (ArithmeticError, ValueError, TypeError):
        return float("inf")
    return float("inf") if isnan(value) else value
