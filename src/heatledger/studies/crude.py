"""The crude estimate of a job that has no room yet: three numbers and a wide range, never a heat loss.

It stands outside the results of a design, so that no paper and no later step can take it up.
"""

from __future__ import annotations

from dataclasses import dataclass

from heatledger.job.model import Job
from heatledger.ledger.dimensions import TRANSMITTANCE
from heatledger.ledger.figures import Figure
from heatledger.physics.crude import WHOLE_HOUSE, crude_heat_loss
from heatledger.steps.usual import usual

CRUDE = "crude/"
"""What the paths of a crude estimate begin with: they stand outside the results of a design."""
RATES = {
    "low": ("0.12 Btu/(h·ft²·°F)", "whole-house loss of a tight new house, by floor area"),
    "figure": ("0.30 Btu/(h·ft²·°F)", "whole-house loss of a house in between, by floor area"),
    "high": ("0.75 Btu/(h·ft²·°F)", "whole-house loss of a leaky old house, by floor area"),
}
"""Our own judgment, wide on purpose: the high one is more than six times the low one."""

WORDS = (
    "A crude estimate from floor area and weather alone, from a tight new house to a leaky old one. It is no "
    "heat loss: not for a permit, and not to size anything by. Enter the rooms for that."
)


@dataclass(frozen=True, eq=False)
class CrudeEstimate:
    """A guess in the middle, its two ends, and the words that always stand with it."""

    figure: Figure
    low: Figure
    high: Figure
    words: str = WORDS


def crude_estimate(job: Job) -> CrudeEstimate | None:
    """The crude estimate of a job without rooms.

    None once there is a room, or while the floor area or one of the two temperatures is not given, or when it
    is no warmer indoors than outdoors.
    """
    area, indoor, outdoor = job.heated_floor_area, job.site.indoor, job.site.outdoor
    if job.rooms or area is None or any(each.is_missing for each in (area, indoor, outdoor)):
        return None
    if float(area) <= 0 or float(indoor) <= float(outdoor):
        return None
    made = {
        name: crude_heat_loss(
            floor_area=area,
            loss_per_floor_area=usual(f"crude/rate_{name}", words, typed, TRANSMITTANCE, WHOLE_HOUSE),
            indoor=indoor,
            outdoor=outdoor,
        )
        for name, (typed, words) in RATES.items()
    }
    return CrudeEstimate(made["figure"], made["low"], made["high"])


def crude_figures(job: Job) -> dict[str, Figure]:
    """The figures of the crude estimate by the paths that open them; empty when there is none."""
    made = crude_estimate(job)
    if made is None:
        return {}
    return {f"{CRUDE}figure": made.figure, f"{CRUDE}low": made.low, f"{CRUDE}high": made.high}
