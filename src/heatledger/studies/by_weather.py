"""The heat loss of the house at other outdoor temperatures.

The figures of the loss are run again with another outdoor temperature at their leaf, so unheated spaces
find their own temperature each time. The ground, the rooms and the rates of air stay as on the design day.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import ceil, floor, isfinite
from weakref import WeakKeyDictionary

from heatledger.ledger.dimensions import TEMPERATURE
from heatledger.ledger.figures import Figure, LedgerError, original_of
from heatledger.ledger.replay import Program
from heatledger.ledger.units import Unit
from heatledger.steps.design import Design

LEAST_STEPS = 2


@dataclass(frozen=True)
class LossAt:
    """The loss of the house (W) at an outdoor temperature (K)."""

    outdoor: float
    loss: float


_Kept = tuple[Figure, Figure, tuple[LossAt, ...]]
_KEPT: WeakKeyDictionary[Figure, dict[str, _Kept]] = WeakKeyDictionary()
"""By the loss itself, since a later design that took it over has the same points."""


def losses_at(design: Design, outdoors: Sequence[float]) -> list[float]:
    """The loss of the house (W) at each outdoor temperature (K); empty where it does not follow from one."""
    loss, outdoor = design.losses.house.loss, design.losses.site.outdoor
    if loss.is_missing or outdoor.is_missing:
        return []
    try:
        program = Program([loss], [outdoor])
    except LedgerError:  # the loss is not built on it
        return []
    return [float(program.run([each])[0]) for each in outdoors]


def by_weather(design: Design, unit: Unit) -> tuple[LossAt, ...]:
    """The loss at round steps of the reader's ``unit``, cold first, one step colder than the design day.

    The mild end is the last step below the rooms. Empty where nothing follows, or where the loss does
    not fall as it gets milder.
    """
    site = design.losses.site
    kept = _KEPT.setdefault(original_of(design.losses.house.loss), {})
    found = kept.get(unit.text)
    if found is None or found[0] is not site.outdoor or found[1] is not site.indoor:
        found = kept[unit.text] = (site.outdoor, site.indoor, _by_weather(design, unit))
    return found[2]


def _by_weather(design: Design, unit: Unit) -> tuple[LossAt, ...]:
    site = design.losses.site
    if site.outdoor.is_missing or site.indoor.is_missing:
        return ()
    step = step_in(unit)
    cold, warm = (unit.from_si(float(each), TEMPERATURE.absolute) for each in (site.outdoor, site.indoor))
    if not (isfinite(cold) and isfinite(warm)) or warm - cold < LEAST_STEPS * step:
        return ()
    first, last = floor((cold - 0.3 * step) / step), ceil(warm / step - 1e-9) - 1
    outdoors = [unit.to_si(number * step, TEMPERATURE.absolute) for number in range(first, last + 1)]
    losses = losses_at(design, outdoors)
    falls = all(colder > milder for colder, milder in pairwise(losses))
    if len(losses) < LEAST_STEPS or not falls or not all(map(isfinite, losses)):
        return ()
    return tuple(map(LossAt, outdoors, losses))


def step_in(unit: Unit) -> int:
    """Degrees between round steps on the reader's scale."""
    return 10 if unit.text == "°F" else 5


def outdoor_for(points: Sequence[LossAt], loss: float) -> float | None:
    """The outdoor temperature (K) at which the house loses so much (W), read between points, cold first."""
    for cold, mild in pairwise(points):
        if mild.loss <= loss <= cold.loss:
            share = (cold.loss - loss) / (cold.loss - mild.loss)
            return cold.outdoor + share * (mild.outdoor - cold.outdoor)
    return None


def off_straight(design: Design, points: Sequence[LossAt]) -> float:
    """How far the loss lies from a straight line to nothing at room temperature, as a share of the whole.

    The largest such distance among the points that are milder than the design day; positive where the
    house loses more than the line says.
    """
    site, loss = design.losses.site, float(design.losses.house.loss)
    cold, warm = float(site.outdoor), float(site.indoor)
    off = [
        (each.loss - loss * (warm - each.outdoor) / (warm - cold)) / loss
        for each in points
        if each.outdoor > cold
    ]
    return max(off, key=abs, default=0.0)
