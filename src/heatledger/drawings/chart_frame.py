"""Axes of a chart: ticks at round values, level gridlines, and names at the ends of lines."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise

from heatledger.drawings.band_rule import numeral, step_of
from heatledger.drawings.lettering import Box, text_box
from heatledger.drawings.shapes import Path, Point, Shape, Words, line

APART = 11.0
AWAY = (8.0, 14.0, 22.0, 32.0, 44.0, 58.0, 74.0)
AROUND = (
    (1, 0.3, "start"), (1, -0.5, "start"), (1, 1, "start"), (-1, -0.5, "end"), (-1, 0.3, "end"),
    (-1, 1, "end"), (0, -1, "middle"), (0, 1.4, "middle"),
)  # fmt: skip
"""Where a text may stand about a point: right and left of it first, then above and below."""


@dataclass(frozen=True)
class Axis:
    """One axis: the values at its start and end, and where on the drawing these stand."""

    first: float
    last: float
    start: float
    end: float

    def at(self, value: float) -> float:
        """The place of a value on the drawing."""
        return self.start + (value - self.first) / (self.last - self.first) * (self.end - self.start)

    def marks(self, wanted: float = 5.0) -> tuple[list[float], int]:
        """Round values along the axis, and the decimals that they need."""
        low, high = sorted((self.first, self.last))
        step = step_of(high - low, wanted)
        numbers = range(math.ceil(low / step - 1e-9), math.floor(high / step + 1e-9) + 1)
        return [number * step for number in numbers], max(0, -math.floor(math.log10(step) + 1e-9))


def rounded_out(low: float, high: float, wanted: float = 5.0) -> tuple[float, float]:
    """The range widened to round values on both sides."""
    step = step_of((high - low) or abs(high) or 1.0, wanted)
    return math.floor(low / step + 1e-9) * step, math.ceil(high / step - 1e-9) * step


def frame(across: Axis, up: Axis, across_name: str, up_name: str, group: str = ",") -> list[Shape]:
    """Both axes with ticks, numbers and names, and level gridlines; ``group`` parts thousands."""
    shapes: list[Shape] = []
    values, places = up.marks()
    for value in values:
        y = up.at(value)
        shapes += [
            line(across.start, y, across.end, y, "hair"),
            line(across.start - 3, y, across.start, y, "tick"),
        ]
        shapes.append(Words((across.start - 6, y + 3), numeral(value, places, group), "small", "end"))
    values, places = across.marks()
    for value in values:
        x = across.at(value)
        shapes.append(line(x, up.start, x, up.start + 3, "tick"))
        shapes.append(Words((x, up.start + 13), numeral(value, places, group), "small", "middle"))
    shapes += [line(across.start, up.start, across.end, up.start, "rule"),
               line(across.start, up.start, across.start, up.end, "rule"),
               Words((across.end, up.start + 25), across_name, "small", "end"),
               Words((across.start - 22, up.end - 8), up_name, "small")]  # fmt: skip
    return shapes


def at_ends(names: list[tuple[float, str, str]], x: float, low: float) -> list[Shape]:
    """Names at the ends of lines: height, text and look of each, pushed apart where they would touch.

    A name that had to move is led to its line by a hairline; none goes below ``low``.
    """
    order = sorted(names, key=lambda each: round(each[0]))
    places = [height for height, _, _ in order]
    for number in range(1, len(places)):
        places[number] = max(places[number], places[number - 1] + APART)
    if places:
        places[-1] = min(places[-1], low)
    for number in range(len(places) - 2, -1, -1):
        places[number] = min(places[number], places[number + 1] - APART)
    shapes: list[Shape] = []
    for (height, text, look), place in zip(order, places, strict=True):
        if abs(place - height) > 1.0:
            shapes.append(line(x + 1, height, x + 7, place, "cold"))
        shapes.append(Words((x + 9, place + 3), text, look))
    return shapes


def cross(at: Point, half: float = 3.6) -> list[Shape]:
    """The mark of what is needed."""
    x, y = at
    return [line(x - half, y - half, x + half, y + half, "curve"),
            line(x - half, y + half, x + half, y - half, "curve")]  # fmt: skip


def free_words(
    text: str, point: Point, taken: list[Box], lines: list[Path], field: Box, look: str = "small"
) -> Words | None:
    """The text as near to a point as it touches no text and no line; None where the field has no room."""
    strokes = [_dense(each.points) for each in lines]
    for away in AWAY:
        for dx, dy, anchor in AROUND:
            words = Words((point[0] + dx * away, point[1] + 3 + dy * away), text, look, anchor)
            own = text_box(words)
            inside = own[0] > field[0] and own[1] > field[1] and own[2] < field[2] and own[3] < field[3]
            if inside and not any(_touch(own, each) for each in taken) and not _crossed(own, strokes):
                return words
    return None


def _touch(one: Box, other: Box) -> bool:
    return one[0] < other[2] + 2 and other[0] < one[2] + 2 and one[1] < other[3] + 1 and other[1] < one[3] + 1


def _crossed(own: Box, strokes: list[tuple[Box, list[Point]]]) -> bool:
    left, top, right, bottom = own[0] - 2, own[1] - 1, own[2] + 2, own[3] + 1
    for (first, high, last, low), points in strokes:
        if first < right and left < last and high < bottom and top < low:
            for x, y in points:
                if left < x < right and top < y < bottom:
                    return True
    return False


@lru_cache(maxsize=64)
def _dense(points: tuple[Point, ...]) -> tuple[Box, list[Point]]:
    """Points of a line, none more than 2 from the next, and the box they lie in."""
    found: list[Point] = []
    for (ax, ay), (bx, by) in pairwise(points):
        count = max(int(math.hypot(bx - ax, by - ay) / 2), 1)
        found += [(ax + (bx - ax) * n / count, ay + (by - ay) * n / count) for n in range(count + 1)]
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return (min(xs), min(ys), max(xs), max(ys)), found
