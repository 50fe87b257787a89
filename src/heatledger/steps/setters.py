"""Which emitters set the supply in a given weather: all are asked, in plain numbers, before any is shown.

The one that asks for most on the design day need not do so in mild weather: rooms are kept at their own
temperatures, and emitters bend by their own exponents. Nothing found here is a result; the emitters that
are named here are worked out again as figures.

Left out at once is only what can never set it: one beside which another, of the same exponent and both fed
straight from the supply, has a room as warm, a mean excess as large and a fall as large on the design day.
Shares scale both alike, so the other asks for as much in all weather.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from math import inf, isnan, nan

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
from heatledger.steps.emitters import EmitterHeat, Emitters

IN_SIGHT = 2
"""How many are shown: the one that sets the supply, and the one of another chain that comes next."""
SAME = 1e-12
"""Falls that differ by less are those of one drop."""
_OUTLET, _INLET, _BY_MEAN, _CLOSER, _MEAN = (
    formula_of(each).body
    for each in (outlet_ratio, inlet_ratio_for, inlet_ratio_by_mean, closer_inlet_ratio, mean_ratio_needed)
)


@dataclass(frozen=True)
class Asker:
    """An emitter that needs heat, and the links of its loop that its water passes before it."""

    load: Figure
    output: Figure
    before: tuple[Link, ...]
    own: Link

    @cached_property
    def whole(self) -> Figure:
        """Heat it is to give on the design day."""
        return heat_to_give(load=self.load, output=self.output)


@dataclass(frozen=True)
class _Plain:
    """A link in plain numbers; ``asks`` is False for one that has no load or whose size is open."""

    id: str
    asks: bool
    air: float
    excess: float
    exponent: float
    carrying: float
    drop: float
    mean: float

    def inlet_at(self, share: float) -> float:
        """The water that must enter so that it gives a share of its heat."""
        if not share > 0:
            return self.air
        drop = self.drop * share
        mean = self.mean * share ** (1 / self.exponent)
        into = _BY_MEAN(mean, drop, self.exponent)
        for _ in range(1 if drop < mean else 2):  # the first is good to a millionth where the fall is small
            into = _CLOSER(into, _OUTLET(into, self.carrying, self.exponent), drop, self.exponent)
        return float(self.air + into * self.excess)

    def inlet_before(self, water: float) -> float:
        """The water that must enter so that this leaves."""
        left = (water - self.air) / self.excess
        return float(self.air + _INLET(left, self.carrying, self.exponent) * self.excess)

    def never_under(self, other: _Plain) -> bool:
        """True when it asks for as much as another in all weather, both fed straight from the supply."""
        return (
            self.exponent == other.exponent
            and self.air >= other.air
            and self.mean * self.excess >= other.mean * other.excess
            and self.drop * self.excess >= other.drop * other.excess * (1 - SAME)
        )


class Setters:
    """The emitters of a job that may set the supply."""

    def __init__(self, job: Job, heat: Emitters) -> None:
        self.askers: dict[str, Asker] = {}
        self._chains: list[tuple[_Plain, ...]] = []
        alone: list[_Plain] = []
        for _, chain in chains(job):
            passed = links(job, heat, chain)
            plain = tuple(map(_plain, chain, passed, (heat.emitters[id] for id in chain)))
            for i, each in enumerate(plain):
                if each.asks:
                    found = heat.emitters[each.id]
                    self.askers[each.id] = Asker(found.load, found.output, tuple(passed[:i]), passed[i])
            if len(plain) > 1:
                self._chains.append(plain)
            elif plain and plain[0].asks:
                alone = _with(alone, plain[0])
        self._chains += [(each,) for each in alone]

    def warmest(self, share: Figure) -> list[str]:
        """The emitter that asks for most at a share of the load, and the next of another chain."""
        if isnan(share):
            return list(self.askers)
        asked = dict(filter(None, (_asked_by(each, float(share)) for each in self._chains)))
        return sorted(asked, key=asked.__getitem__, reverse=True)[:IN_SIGHT]


def _plain(id: str, link: Link, found: EmitterHeat) -> _Plain:
    asks = not isnan(found.output) and not isnan(found.lowest_supply) and float(found.load) > 0
    exponent, excess = float(link.exponent), float(link.excess)
    carried = float(link.capacity) * excess
    if not asks or link.rated is None or not carried > 0:
        carrying = carried / float(link.rated) if link.rated is not None and float(link.rated) else nan
        return _Plain(id, asks, float(link.air), excess, exponent, carrying, nan, nan)
    whole, rated = min(float(found.load), float(found.output)), float(link.rated)
    mean = float(_MEAN(whole, rated, exponent))
    return _Plain(id, True, float(link.air), excess, exponent, carried / rated, whole / carried, mean)


def _with(alone: list[_Plain], each: _Plain) -> list[_Plain]:
    """Those that are not outdone by another, with one more; of equals the first."""
    if any(other.never_under(each) for other in alone):
        return alone
    return [*(other for other in alone if not each.never_under(other)), each]


def _asked_by(chain: tuple[_Plain, ...], share: float) -> tuple[str, float] | None:
    """The emitter of a chain that asks for the hottest supply, and that supply.

    From the last to the first: what an emitter needs, or what must enter so that those behind it get theirs.
    One that the law has no answer for asks for more than any, so that it is seen.
    """
    water, by = -inf, ""
    for each in reversed(chain):
        try:
            if by and water < inf:
                water = each.inlet_before(water)
            own = each.inlet_at(share) if each.asks else -inf
        except (ArithmeticError, ValueError, TypeError):
            own = inf
        water = inf if isnan(water) else water
        if each.asks and (not by or not own <= water):
            water, by = inf if isnan(own) else own, each.id
    return (by, water) if by else None
