"""Replacing a boiler: how much heat is needed, from both sides, how cool the water may be, what to check.

One side is the heat loss with its band, the other the fuel bills with theirs. Where they meet is the
output to look for; where they do not, something is wrong on one side and is found before anything is
bought.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import isnan, nan

from heatledger.ledger.figures import Figure, waits_for
from heatledger.steps.bills import WinterFuel
from heatledger.steps.design import Design
from heatledger.steps.emitter_chains import supply_for_share
from heatledger.studies.site_checks import SiteCheck, site_checks
from heatledger.studies.uncertainty import Band, band_of


@dataclass(frozen=True)
class BillBand:
    """One winter's fuel: with no credit for gains as a loss is worked out, and as the plant had to give.

    ``low`` and ``high`` span both with their bands (W), or the one that is known; NaN for none. ``unknown``
    are the entries that one of them waits for, in words. ``lowest_supply`` is that at which every room gets
    its share of the load by this bill; None where loss and bills agree, or it cannot be told.
    """

    id: str
    name: str
    like_for_like: Band
    after_gains: Band
    unknown: tuple[str, ...]
    lowest_supply: Figure | None = None

    @property
    def low(self) -> float:
        """The least of both bands."""
        return min((each.low for each in self._known), default=nan)

    @property
    def high(self) -> float:
        """The most of both bands."""
        return max((each.high for each in self._known), default=nan)

    @property
    def counts(self) -> bool:
        """True when the bill says something of the load."""
        return bool(self._known)

    @property
    def _known(self) -> list[Band]:
        return [each for each in (self.after_gains, self.like_for_like) if not isnan(each.low)]


@dataclass(frozen=True)
class Replacement:
    """What to know before a boiler is replaced. Bounds are in W.

    ``load`` is what the plant has to carry, with its band. ``low`` and ``high`` bound where that and every
    bill that says something meet, or the load alone where none does; both None where they do not meet, or
    nothing can be said. ``largest_output`` is the most
    that sizing rules allow. ``lowest_supply`` is that on the design day, ``set_by`` the name of the room
    whose emitters ask for it, empty where none are known; ``next_lowest`` is enough for all others.
    ``old_output`` and ``old_ratio`` are those of the boiler in the job. ``unknown`` are entries that the
    boiler room waits for, in words.
    """

    load: Band
    bills: tuple[BillBand, ...]
    low: float | None
    high: float | None
    largest_output: Figure
    lowest_supply: Figure
    set_by: str
    next_lowest: Figure | None
    old_output: Figure | None
    old_ratio: Figure | None
    unknown: tuple[str, ...]
    checks: tuple[SiteCheck, ...]

    @property
    def meets(self) -> bool:
        """True when bands of the loss and of every bill that can be worked out overlap; false without any."""
        return self.low is not None and self._both

    @property
    def apart(self) -> bool:
        """True when the loss and the bills are known and their bands do not overlap."""
        return self.low is None and self._both

    @property
    def _both(self) -> bool:
        return not isnan(self.load.low) and any(each.counts for each in self.bills)


def replacement(design: Design) -> Replacement:
    """The study of a boiler replacement; what the job does not hold yet is without a value or named."""
    plant, heat = design.boiler_room.plant, design.emitters.house
    load = band_of(plant.load, design)
    bills = tuple(_bill(id, each, design) for id, each in design.bills.bills.items())
    low, high = _meeting([(load.low, load.high), *((each.low, each.high) for each in bills)])
    if low is None:
        bills = tuple(replace(each, lowest_supply=_supply_by(each.id, design)) for each in bills)
    room = design.job.rooms.get(heat.set_by)
    return Replacement(
        load=load,
        bills=bills,
        low=low,
        high=high,
        largest_output=plant.largest_output,
        lowest_supply=heat.lowest_supply,
        set_by=room.name if room else "",
        next_lowest=heat.next_lowest,
        old_output=plant.output,
        old_ratio=plant.ratio,
        unknown=_unknown(design, (plant.load, heat.lowest_supply, plant.tank_volume)),
        checks=tuple(site_checks(design.job)),
    )


def _bill(id: str, winter: WinterFuel, design: Design) -> BillBand:
    like, after = winter.like_for_like, winter.after_gains
    return BillBand(
        id, winter.name, band_of(like, design), band_of(after, design), _unknown(design, (like, after))
    )


def _supply_by(id: str, design: Design) -> Figure | None:
    """Lowest supply at the load by a bill, by the law that finds it at the loss; None while it waits."""
    share = design.bills.bills[id].share
    if share.is_missing or not design.emitters.emitters:
        return None
    return supply_for_share(design.job, design.emitters, share, "it asks for most at the load by this bill")


def _meeting(spans: Sequence[tuple[float, float]]) -> tuple[float | None, float | None]:
    """Where spans meet; those without a value are left out."""
    known = [each for each in spans if each[0] == each[0] and each[1] == each[1]]
    if not known:
        return None, None
    low, high = max(each[0] for each in known), min(each[1] for each in known)
    return (low, high) if low <= high else (None, None)


def _unknown(design: Design, figures: Sequence[Figure]) -> tuple[str, ...]:
    waiting = {id(each): each for figure in figures for each in waits_for(figure)}
    return tuple(dict.fromkeys(design.names.title(each) for each in waiting.values()))
