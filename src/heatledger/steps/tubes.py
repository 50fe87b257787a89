"""The size of a tube where the job leaves it open: the smallest of its family that stays quiet."""

from __future__ import annotations

import dataclasses
from collections.abc import Mapping
from functools import cache

from heatledger.job.errors import JobErrors
from heatledger.job.model import Job
from heatledger.job.system_model import HOME_RUN, Tube
from heatledger.ledger.choosing import Rule, choose, first_that
from heatledger.ledger.dimensions import FRICTION, VELOCITY, Dimension
from heatledger.ledger.figures import Figure
from heatledger.ledger.sources import MEMORY, Citation, cite
from heatledger.steps.rubbing import plain_rubbing
from heatledger.steps.usual import usual

QUIET = cite("HOF-ch22", "pipe design: 4 ft/s in pipe of 2 in. and less near rooms", MEMORY)
EASY = cite("HOF-ch22", "pipe design: 1 to 4 ft of head in 100 ft", MEMORY)
USUAL_FAMILIES = {HOME_RUN: "pex"}
"""The family taken where a job names none, by the kind of circuit; else copper, type M."""
BECAUSE = "it is the smallest of its family whose speed and friction stay within the limits"
LARGEST_BECAUSE = "no size of its family keeps speed and friction within the limits, so the largest is taken"


@dataclasses.dataclass(frozen=True)
class SizeLimits:
    """What a tube is chosen by: the fastest water and the highest friction."""

    velocity: Figure
    friction: Figure


def size_limits(job: Job) -> SizeLimits:
    """The limits of the job, else those of common design practice."""
    return SizeLimits(
        _limit(job, "pipe-too-fast", "fastest water in a tube", "4 ft/s", VELOCITY, QUIET),
        _limit(job, "pipe-rubs-much", "highest friction of a tube", "4 ft/100 ft", FRICTION, EASY),
    )


def _limit(job: Job, name: str, words: str, text: str, dimension: Dimension, citation: Citation) -> Figure:
    try:
        own = job.limit(name, dimension)
    except JobErrors:  # the review says what is wrong with it
        own = None
    return usual(f"limits/{name}", words, text, dimension, citation) if own is None else own


def usual_family(kind: str) -> str:
    """The family of tube taken for a kind of circuit where the job names none."""
    return USUAL_FAMILIES.get(kind, "copper-m")


@cache
def _family(name: str) -> dict[str, Tube]:
    """Tubes of a family by name, the smallest first."""
    from heatledger.catalog.tubes import FAMILIES, tubes_of

    rows = sorted(tubes_of(name).values(), key=lambda each: float(each.bore)) if name in FAMILIES else []
    return {
        row.name: Tube(row.key, row.name, row.family, row.size, row.bore, row.outside, row.roughness)
        for row in rows
    }


def chosen_tube(family: str, flow: Figure, viscosity: Figure, limits: SizeLimits) -> Tube | None:
    """The smallest tube of a family that carries a flow within the limits, with those not taken.

    None where the flow is not known yet, or there is no such family.
    """
    sizes = _family(family)
    if not sizes or flow.is_missing or viscosity.is_missing:
        return None
    by_bore = {float(each.bore): each for each in sizes.values()}

    def quiet(bore: Figure) -> bool:
        rough = float(by_bore[float(bore)].roughness) / float(bore)
        fast, rubs = plain_rubbing(float(flow), float(bore), rough, float(viscosity))
        return fast <= float(limits.velocity) and rubs <= float(limits.friction)

    bores = {name: each.bore for name, each in sizes.items()}
    rule: Rule = first_that(quiet, "quiet at this flow")
    because = BECAUSE
    if not any(map(quiet, bores.values())):
        rule, because = _last, LARGEST_BECAUSE
    bore = choose(bores, rule, because)
    return dataclasses.replace(by_bore[float(bore)], bore=bore)


def _last(candidates: Mapping[str, Figure]) -> str:
    """the largest there is"""
    return list(candidates)[-1]


def lengths_of_fittings(tube: Tube) -> dict[str, Figure]:
    """Length of this tube that resists as much as one fitting, by its kind."""
    from heatledger.catalog.tubes import fitting_lengths
    from heatledger.catalog.tubes import tube as row_of

    row = row_of(tube.key)
    return {} if row is None else dict(fitting_lengths(row))
