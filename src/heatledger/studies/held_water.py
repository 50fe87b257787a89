"""The water that may be asked for by the weather, held where a boiler would otherwise run too cold.

A boiler that does not condense is eaten away, and its chimney with it, by return water under its limit. A
setting that is read off a card is dialed in, so no supply with such a return may stand there.
"""

from __future__ import annotations

from dataclasses import dataclass

from heatledger.steps.controls import ResetPoint
from heatledger.steps.design import Design
from heatledger.steps.review import KINDS
from heatledger.steps.review.house import House
from heatledger.steps.review.kinds import Look

LIMIT = "reset-under-boiler-limit"
IRON, OIL = "non-condensing", "oil"
SAME = 1e-6


@dataclass(frozen=True)
class HeldWater:
    """The points of a reset that may be printed.

    ``open`` are those at which the control asks for its own water, coldest first. ``held`` are the milder
    ones at which the water stays as at the last of these, since its own would come back under ``limit``
    (K; None where none holds). With no open point nothing may be printed: the boiler is too cold in any
    weather.
    """

    open: tuple[ResetPoint, ...]
    held: tuple[ResetPoint, ...]
    limit: float | None


def held_water(design: Design) -> HeldWater:
    """The points of the reset, held at the last whose return is not under the limit of the boiler."""
    points = tuple(design.controls.controls.reset.values())
    limit = return_limit(design)
    if limit is None:
        return HeldWater(points, (), None)
    for number, each in enumerate(points):
        if float(each.return_) < limit - SAME:
            return HeldWater(points[:number], points[number:], limit)
    return HeldWater(points, (), limit)


def return_limit(design: Design) -> float | None:
    """The return (K) under which the boiler must not run: its own, else that of its fuel; None for none."""
    boiler = design.job.system.plant.boiler
    if boiler is None or boiler.kind != IRON:
        return None
    if boiler.return_limit is not None and not boiler.return_limit.is_missing:
        return float(boiler.return_limit)
    return Look(House(design), KINDS[LIMIT]).limit_at(1 if boiler.fuel == OIL else 0)
