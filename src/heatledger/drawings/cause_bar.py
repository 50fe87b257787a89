"""Hatched bars: where the heat of a room goes, and how far one input swings the result."""

from __future__ import annotations

from collections.abc import Mapping

from heatledger.drawings.hatches import CAUSES, hatched, swatch
from heatledger.drawings.shapes import Drawing, Shape, box, line

GAP = 1.1


def cause_bar(
    title: str,
    amounts: Mapping[str, float],
    texts: Mapping[str, str],
    largest: float,
    width: float = 120.0,
    height: float = 8.5,
) -> Drawing:
    """One bar cut by cause, in the fixed order of causes.

    ``amounts`` are in any one unit; a bar of the amount ``largest`` fills the ``width`` (points). A gain
    (a negative amount) has no length and is named in the words alone. ``texts`` are the printed figures.
    """
    scale = (width - 1) / largest if largest > 0 else 0.0
    shapes: list[Shape] = []
    x = 0.5
    for cause in CAUSES:
        long = max(amounts.get(cause, 0.0), 0.0) * scale
        if long > GAP + 0.2:
            shapes.extend(hatched(box(x, 0.5, long - GAP, height - 1, "edge").points, cause))
        x += long
    named = [f"{cause} {texts[cause]}" for cause in CAUSES if amounts.get(cause) and texts.get(cause)]
    return Drawing(title, ", ".join(named) or "no loss", width, height, tuple(shapes))


def swing_bar(
    title: str, words: str, cause: str, swing: float, largest: float, width: float = 90.0, height: float = 9.0
) -> Drawing:
    """A bar centered on the result, as long as the result swings both ways when one input moves.

    ``swing`` and ``largest`` are half-lengths in the same unit. Without a ``cause`` (an input that acts
    through all of them) the bar is plain.
    """
    half = (width / 2 - 1) * (abs(swing) / largest if largest > 0 else 0.0)
    half = max(half, 0.8)
    middle = width / 2
    bar = box(middle - half, 1, 2 * half, height - 2, "plain")
    shapes: tuple[Shape, ...] = hatched(bar.points, cause) if cause else (bar,)
    return Drawing(title, words, width, height, (*shapes, line(middle, 0, middle, height, "mark-thin")))


def cause_swatch(cause: str) -> Drawing:
    """The sample of one cause's hatch that stands in tables and legends."""
    return Drawing(f"Hatch of {cause}", cause, 11.0, 7.5, swatch(cause))
