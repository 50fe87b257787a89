"""Other ways to read a length that was typed: another unit, or a point that slipped."""

from __future__ import annotations

from heatledger.job.text import walk
from heatledger.steps.review.house import typed_of
from heatledger.steps.review.kinds import Look

METERS = {"ft": 0.3048, "m": 1.0, "in": 0.0254, "cm": 0.01, "mm": 0.001}
"""Size of the units lengths are typed in, m."""
TAKEN_FOR = {"ft": ("in", "m"), "m": ("ft", "cm"), "cm": ("mm",), "mm": ("cm",), "in": ("ft",)}
"""The units that a number may have been meant in, by the one it was read in."""


def other_lengths(figure: float, least: float, most: float) -> list[str]:
    """The readings of a typed length, as text for the job, that lie from ``least`` to ``most`` m.

    The likelier one comes first: a number that ends in nothing may have one nothing too many.
    """
    number, unit = typed_of(figure)
    tried = [(number, each) for each in TAKEN_FOR.get(unit, ())]
    if unit in METERS:
        tried.insert(0 if number % 10 == 0 else len(tried), (number / 10, unit))
    return [f"{value:g} {each}" for value, each in tried if least <= value * METERS[each] <= most]


def is_given(look: Look, path: str) -> bool:
    """True when the job has an entry at the path."""
    return walk(look.house.job.source.tree, path) is not None
