"""Replacing a boiler: how much heat is needed, from both sides, how cool the water may be, what to check.

One side is the heat loss with its band, the other the fuel bills with theirs. Where they meet is the
output to look for; where they do not, something is wrong on one side and is found before anything is
bought.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from heatledger.ledger.figures import Figure, waits_for
from heatledger.steps.design import Design
from heatledger.studies.site_checks import SiteCheck, site_checks
from heatledger.studies.uncertainty import Band, band_of


@dataclass(frozen=True)
class BillBand:
    """One winter's fuel: with no credit for gains as a loss is worked out, and as the plant had to give.

    ``low`` and ``high`` span both with their bands (W).
    """

    id: str
    name: str
    like_for_like: Band
    after_gains: Band

    @property
    def low(self) -> float:
        """The least of both bands."""
        return min(self.after_gains.low, self.like_for_like.low)

    @property
    def high(self) -> float:
        """The most of both bands."""
        return max(self.after_gains.high, self.like_for_like.high)


@dataclass(frozen=True)
class Replacement:
    """What to know before a boiler is replaced. Bounds are in W.

    ``load`` is what the plant has to carry, with its band. ``low`` and ``high`` bound where that and every
    bill meet; both None where they do not meet, or nothing can be said. ``largest_output`` is the most
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
        """True when the loss and every bill that can be worked out agree within their bands."""
        return self.low is not None


def replacement(design: Design) -> Replacement:
    """The study of a boiler replacement; what the job does not hold yet is without a value or named."""
    plant, heat = design.boiler_room.plant, design.emitters.house
    load = band_of(plant.load, design)
    bills = tuple(
        BillBand(id, each.name, band_of(each.like_for_like, design), band_of(each.after_gains, design))
        for id, each in design.bills.bills.items()
    )
    low, high = _meeting([(load.low, load.high), *((each.low, each.high) for each in bills)])
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
