"""Two designs of one job side by side: which figures moved, and by how much."""

from __future__ import annotations

from dataclasses import dataclass

from heatledger.ledger.figures import Figure, Leaf
from heatledger.steps.design import Design

NOISE = 1e-9
"""A smaller part of a value than this is how computers add, not a change."""


@dataclass(frozen=True, eq=False)
class FigureChange:
    """A figure that moved between two designs; None on the side where there is none.

    ``share``: how far it moved, as a part of the larger of the two values; of a temperature, as a part of the
    difference between indoors and outdoors. It is 1 for a figure that came, went, or had no value before or
    has none now.
    """

    path: str
    title: str
    before: Figure | None
    after: Figure | None
    share: float


def figures_changed(before: Design, after: Design) -> list[FigureChange]:
    """Every result that is not the same in both designs, largest share first, then in the order of the work.

    A figure that stands at several paths is told once, at its own. What was typed is no result and is not in
    it.
    """
    old, new = before.results, after.results
    told: set[int] = set()
    found = []
    for path in [*new, *(each for each in old if each not in new)]:
        one, other = old.get(path), new.get(path)
        if one is other or not _moved(one, other):
            continue
        design, figure = (after, other) if other is not None else (before, one)
        assert figure is not None
        if id(figure) in told or isinstance(figure.origin, Leaf):
            continue
        told.add(id(figure))
        found.append(FigureChange(path, design.names.title(figure), one, other, _share(one, other, design)))
    return sorted(found, key=lambda each: -each.share)


def _moved(one: Figure | None, other: Figure | None) -> bool:
    if one is None or other is None:
        return True
    if one.is_missing or other.is_missing:
        return one.is_missing is not other.is_missing
    return abs(float(other) - float(one)) > NOISE * max(abs(float(one)), abs(float(other)))


def _share(one: Figure | None, other: Figure | None, design: Design) -> float:
    if one is None or other is None or one.is_missing or other.is_missing:
        return 1.0
    moved = abs(float(other) - float(one))
    if not other.dimension.absolute:
        return moved / max(abs(float(one)), abs(float(other)))
    site = design.job.site
    span = abs(float(site.indoor) - float(site.outdoor))
    return moved / span if span > 0 else 1.0  # the span has no value while a temperature is not given
