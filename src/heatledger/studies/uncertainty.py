"""How far a figure may be off, to first order, and which entries matter most.

Each entry has a half-range that follows from how well it is known. Slopes are carried backwards
through the figures, and the moves of independent entries are added as squares. What shares one
entry moves together. The error of the method itself is not in it.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from math import isfinite, nan, sqrt

from heatledger.ledger.dimensions import AREA, LENGTH, VOLUME
from heatledger.ledger.figures import Figure, Leaf, Placed, ancestors
from heatledger.ledger.presets import Preset
from heatledger.ledger.replay import carry_back
from heatledger.ledger.show import show_half_range
from heatledger.steps.design import Design

SENTENCE = (
    "If our inputs are off by as much as listed, nine in ten results fall here; "
    "the method's own error is not in it."
)
"""Stands where a band first appears on a page."""


@dataclass(frozen=True)
class Swing:
    """How far one entry, or the tape as a whole, may move the figure either way (SI)."""

    words: str
    entries: tuple[Figure, ...]
    known: str
    half_range: str
    swing: float


@dataclass(frozen=True)
class Band:
    """The range a figure likely lies in (SI), and the swings that make it, largest first."""

    figure: Figure
    low: float
    high: float
    swings: tuple[Swing, ...]

    @property
    def half(self) -> float:
        """Half of the width of the band (SI)."""
        return (self.high - self.low) / 2


def band(design: Design, path: str | Figure) -> Band:
    """The first-order band of a figure, given by its path or itself."""
    found = design[path] if isinstance(path, str) else path
    figure = found.original if isinstance(found, Placed) else found
    # A band holds its figure, so that the id is not given to another while it is kept.
    kept: dict[int, Band] = design.__dict__.setdefault("_bands", {})
    if id(figure) not in kept:
        kept[id(figure)] = band_of(figure, design)
    return kept[id(figure)]


def band_of(figure: Figure, design: Design) -> Band:
    """The band of a figure that may have no path of its own."""
    if figure.is_missing:
        return Band(figure, float(figure), float(figure), ())
    order = ancestors(figure)
    slopes = carry_back(figure, order)
    moving = [
        (each, abs(slopes.get(id(each), 0.0)) * each.origin.half_range)
        for each in order
        if not each.inputs and isinstance(each.origin, Leaf) and each.origin.half_range
    ]
    half = sqrt(sum(move * move for _, move in moving))
    if not isfinite(half):  # an input beyond all measure: nothing can be said
        return Band(figure, nan, nan, ())
    value = float(figure)
    return Band(figure, value - half, value + half, tuple(_ranked(moving, design)))


def half_range_text(swing: Swing, units: Preset) -> str:
    """``± 15 %``, or ``± 4 °F`` in the reader's own unit; words where entries differ."""
    return show_half_range(swing.entries[0], units) if len(swing.entries) == 1 else swing.half_range


def _ranked(moving: Iterable[tuple[Figure, float]], design: Design) -> list[Swing]:
    """One swing an entry, the lengths of the tape as one, largest first."""
    tape: dict[str, list[tuple[Figure, float]]] = {}
    swings = []
    for entry, move in moving:
        origin: Leaf = entry.origin
        if entry.dimension in (LENGTH, AREA, VOLUME):
            tape.setdefault(origin.known, []).append((entry, move))
        elif move > 0:
            words = design.names.title(entry)
            swings.append(Swing(words, (entry,), origin.known, _range_words(origin), move))
    for known, some in tape.items():
        move = sqrt(sum(each * each for _, each in some))
        ranges = {_range_words(each.origin) for each, _ in some}
        words = f"Lengths and areas, {len(some)} of them"
        if move > 0:
            entries = tuple(each for each, _ in some)
            swings.append(
                Swing(words, entries, known, ranges.pop() if len(ranges) == 1 else "by their kind", move)
            )
    return sorted(swings, key=lambda each: -each.swing)


def _range_words(origin: Leaf) -> str:
    """The half-range itself, without the word on whose judgment it is."""
    return origin.half_range_words.partition(",")[0]
