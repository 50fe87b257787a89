"""The six causes of heat loss and their drafting hatches, as real strokes.

Pattern fills print blurred, so each hatch is cut to the outline stroke by stroke. A copy without color
loses nothing: the six differ by direction, distance and kind.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache

from heatledger.drawings.shapes import Disc, Path, Point, Shape, box

CAUSES = ("walls", "windows", "doors", "ceiling", "floor", "air")
CAUSE_NAMES = {each: each.capitalize() for each in CAUSES}
"""What a cause is called where it heads a line."""


@dataclass(frozen=True)
class Hatch:
    """Strokes at ``degrees`` from level (rising to the right), ``apart`` points from each other."""

    degrees: float
    apart: float


STROKES = {
    "walls": Hatch(45.0, 2.6),
    "windows": Hatch(90.0, 3.6),
    "ceiling": Hatch(0.0, 2.4),
    "air": Hatch(135.0, 5.0),
}
DOTS_APART, DOT = 3.0, 0.5
CLEAR = DOT + 0.35
Side = tuple[float, float, float, float, float, float]
"""A side of an outline: where it begins, how far it goes, how high its ends stand across the strokes."""


@lru_cache(maxsize=512)
def hatched(outline: tuple[Point, ...], cause: str) -> tuple[Shape, ...]:
    """The outline filled with the hatch of ``cause``: ground, strokes, then the edge in ink."""
    if cause not in CAUSES:
        raise ValueError(f"no hatch for {cause!r}; the causes are {', '.join(CAUSES)}")
    ground = Path(outline, f"ground-{cause}", closed=True)
    edge = Path(outline, "edge", closed=True)
    if cause == "doors":
        return ground, edge
    if cause == "floor":
        return (ground, *_dots(outline), edge)
    return (ground, *strokes(outline, STROKES[cause], f"hatch-{cause}"), edge)


def swatch(cause: str, width: float = 11.0, height: float = 7.5) -> tuple[Shape, ...]:
    """A small sample of the hatch, for a legend."""
    return hatched(box(0.4, 0.4, width - 0.8, height - 0.8, "edge").points, cause)


def strokes(outline: tuple[Point, ...], hatch: Hatch, look: str) -> tuple[Path, ...]:
    """Parallel strokes cut to any simple outline, by counting where each crosses the edge."""
    angle = math.radians(hatch.degrees)
    along = (math.cos(angle), -math.sin(angle))
    normal = (math.sin(angle), math.cos(angle))
    heights = [x * normal[0] + y * normal[1] for x, y in outline]
    sides = [
        (ax, ay, bx - ax, by - ay, above, below)
        for (ax, ay), (bx, by), above, below in zip(
            outline, outline[1:] + outline[:1], heights, heights[1:] + heights[:1], strict=True
        )
    ]
    first = math.floor(min(heights) / hatch.apart) + 1
    found: list[Path] = []
    for number in range(first, math.ceil(max(heights) / hatch.apart)):
        level = number * hatch.apart + hatch.apart / 3
        cuts = _crossings(sides, along, level)
        x, y = normal[0] * level, normal[1] * level
        for start, end in zip(cuts[::2], cuts[1::2], strict=False):
            if end - start > 0.2:
                ends = (
                    (along[0] * start + x, along[1] * start + y), (along[0] * end + x, along[1] * end + y)
                )  # fmt: skip
                found.append(Path(ends, look))
    return tuple(found)


def _crossings(sides: list[Side], along: Point, level: float) -> list[float]:
    """How far along a stroke at this level it crosses the sides."""
    cuts: list[float] = []
    for x, y, dx, dy, above, below in sides:
        if (above < level) != (below < level):
            share = (above - level) / ((above - level) - (below - level))
            cuts.append((x + dx * share) * along[0] + (y + dy * share) * along[1])
    cuts.sort()
    return cuts


def _dots(outline: tuple[Point, ...]) -> tuple[Disc, ...]:
    """Staggered dots, none nearer to the edge than its own size."""
    left, top = min(x for x, _ in outline), min(y for _, y in outline)
    right, bottom = max(x for x, _ in outline), max(y for _, y in outline)
    is_box = outline == ((left, top), (right, top), (right, bottom), (left, bottom))
    found: list[Disc] = []
    row, y = 0, top + DOTS_APART / 2
    while y < bottom:
        x = left + DOTS_APART / 2 + (DOTS_APART / 2 if row % 2 else 0.0)
        while x < right:
            # In a box the sides stand level and upright, so the distance to each is a plain difference.
            clear = min(x - left, right - x, y - top, bottom - y) if is_box else 0.0
            if clear >= CLEAR or (not is_box and _inside(outline, (x, y), CLEAR)):
                found.append(Disc((x, y), DOT, "dot-floor"))
            x += DOTS_APART
        row, y = row + 1, y + DOTS_APART * 0.7
    return tuple(found)


def _inside(outline: tuple[Point, ...], point: Point, margin: float) -> bool:
    x, y = point
    odd = False
    for (ax, ay), (bx, by) in zip(outline, outline[1:] + outline[:1], strict=True):
        if (ay > y) != (by > y) and x < ax + (bx - ax) * (y - ay) / (by - ay):
            odd = not odd
        if _distance(point, (ax, ay), (bx, by)) < margin:
            return False
    return odd


def _distance(point: Point, start: Point, end: Point) -> float:
    (x, y), (ax, ay), (bx, by) = point, start, end
    length2 = (bx - ax) ** 2 + (by - ay) ** 2
    share = 0.0 if length2 == 0 else ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / length2
    share = min(max(share, 0.0), 1.0)
    return math.hypot(x - ax - share * (bx - ax), y - ay - share * (by - ay))
