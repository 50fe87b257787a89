"""The hatches of the six causes in one line, each with its word."""

from __future__ import annotations

from collections.abc import Mapping

from heatledger.drawings.hatches import CAUSES, hatched
from heatledger.drawings.lettering import text_width
from heatledger.drawings.shapes import Drawing, Shape, Words, box

WIDE, HIGH, GAP, AFTER = 13.0, 8.0, 4.0, 14.0
BASE, SIZE = 9.0, 9.0


def cause_legend(names: Mapping[str, str]) -> Drawing:
    """A swatch and the word for each cause of ``names``, in the fixed order of causes."""
    shapes: list[Shape] = []
    x = 0.5
    shown = [cause for cause in CAUSES if cause in names]
    for cause in shown:
        shapes.extend(hatched(box(x, BASE - HIGH + 0.5, WIDE, HIGH, "edge").points, cause))
        shapes.append(Words((x + WIDE + GAP, BASE), names[cause], "small"))
        x += WIDE + GAP + text_width(names[cause], SIZE) + AFTER
    return Drawing("Hatches", ", ".join(names[each] for each in shown), x, BASE + 4, tuple(shapes))
