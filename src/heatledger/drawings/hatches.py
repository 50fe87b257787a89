"""The six causes of heat loss and their drafting hatches, as real strokes.

Pattern fills print blurred, so each hatch is cut to the outline stroke by stroke. A copy without color
loses nothing: the six differ by direction, distance and kind.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

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
Side = tuple[Point, Point, float, float]
"""A side of an outline: its ends, and how high each stands across the strokes."""


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
    sides = list(
        zip(outline, outline[1:] + outline[:1], heights, heights[1:] + heights[:1], strict=True)
    )
    first = math.floor(min(heights) / hatch.apart) + 1
    found: list[Path] = []
    for number in range(first, math.ceil(max(heights) / hatch.apart)):
        level = number * hatch.apart + hatch.apart / 3
        cuts = _crossings(sides, along, level)
        for start, end in zip(cuts[::2], cuts[1::2], strict=False):
            if end - start > 0.2:
                ends = (_point(along, normal, start, level), _point(along, normal, end, level))
                found.append(Path(ends, look))
    return tuple(found)


def _crossings(sides: list[Side], along: Point, level: float) -> list[float]:
    """How far along a stroke at this level the sides lie that it crosses, each given with its heights."""
    cuts: list[float] = []
    for (ax, ay), (bx, by), above, below in sides:
        if (above < level) != (below < level):
            a, b = above - level, below - level
            share = a / (a - b)
            x, y = ax + (bx - ax) * share, ay + (by - ay) * share
            cuts.append(x * along[0] + y * along[1])
    cuts.sort()
    return cuts


def _point(along: Point, normal: Point, distance: float, level: float) -> Point:
    return (along[0] * distance + normal[0] * level, along[1] * distance + normal[1] * level)


def _dots(outline: tuple[Point, ...]) -> tuple[Disc, ...]:
    """Staggered dots, none nearer to the edge than its own size."""
    left, top = min(x for x, _ in outline), min(y for _, y in outline)
    right, bottom = max(x for x, _ in outline), max(y for _, y in outline)
    found: list[Disc] = []
    row, y = 0, top + DOTS_APART / 2
    while y < bottom:
        x = left + DOTS_APART / 2 + (DOTS_APART / 2 if row % 2 else 0.0)
        while x < right:
            if _inside(outline, (x, y), DOT + 0.35):
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
