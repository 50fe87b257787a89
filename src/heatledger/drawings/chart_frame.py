"""Axes of a chart: ticks at round values, level gridlines, and names at the ends of lines."""

from __future__ import annotations

import math
from dataclasses import dataclass

from heatledger.drawings.band_rule import numeral, step_of
from heatledger.drawings.shapes import Point, Shape, Words, line

APART = 11.0


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


def frame(across: Axis, up: Axis, across_name: str, up_name: str) -> list[Shape]:
    """Both axes with ticks, numbers and names, and level gridlines."""
    shapes: list[Shape] = []
    values, places = up.marks()
    for value in values:
        y = up.at(value)
        shapes += [
            line(across.start, y, across.end, y, "hair"),
            line(across.start - 3, y, across.start, y, "tick"),
        ]
        shapes.append(Words((across.start - 6, y + 3), numeral(value, places), "small", "end"))
    values, places = across.marks()
    for value in values:
        x = across.at(value)
        shapes.append(line(x, up.start, x, up.start + 3, "tick"))
        shapes.append(Words((x, up.start + 13), numeral(value, places), "small", "middle"))
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
