"""A rule of heat: what a burner can hold steadily as a band, and the calls on it as uprights."""

from __future__ import annotations

import math
from dataclasses import dataclass

from heatledger.drawings.band_rule import numeral
from heatledger.drawings.chart_frame import Axis, rounded_out
from heatledger.drawings.lettering import text_width
from heatledger.drawings.shapes import Drawing, Shape, Words, box, line

EDGE, ROW, BAND, LOW = 14.0, 12.0, 9.0, 32.0


@dataclass(frozen=True)
class Upright:
    """A call for heat, in the unit shown, with its words; ``main`` is the one of the design day."""

    value: float
    text: str
    main: bool = False


def range_rule(
    title: str, words: str, steady: tuple[float, float], steady_text: str, calls: tuple[Upright, ...],
    unit: str, width: float = 372.0, group: str = ",",
) -> Drawing:  # fmt: skip
    """The rule from nothing on; texts of the uprights stand in rows, so that none touches another.

    Raises ValueError where an end is not finite, below nothing, or out of order.
    """
    values = [*steady, *(each.value for each in calls)]
    if not all(math.isfinite(each) and each >= 0 for each in values) or steady[0] > steady[1]:
        raise ValueError("a rule of heat needs values of nothing or more, in order")
    if not max(values) > 0:
        raise ValueError("a rule of heat needs a value above nothing")
    right = EDGE + text_width(unit) + 8
    across = Axis(0.0, rounded_out(0.0, max(values) * 1.02, 5)[1], EDGE, width - right)
    order = sorted(calls, key=lambda each: each.value)
    placed = _placed([(across.at(each.value), text_width(each.text, 9.0) + 8) for each in order], width)
    base = ROW * (max((row for row, _ in placed), default=0) + 1) + BAND + 6
    shapes: list[Shape] = [box(across.at(steady[0]), base - BAND, across.at(steady[1]) - across.at(steady[0]),
                               BAND, "band")]  # fmt: skip
    shapes += [line(across.at(each), base - BAND - 2, across.at(each), base, "mark-thin") for each in steady]
    for each, (row, anchor) in zip(order, placed, strict=True):
        x, y = across.at(each.value), base - BAND - 5 - ROW * row
        shapes.append(line(x, y - 7, x, base, "mark" if each.main else "mark-thin"))
        beside = x + 4 if anchor == "start" else x - 4
        shapes.append(Words((beside, y), each.text, "bold" if each.main else "small", anchor))
    shapes += _ticks(across, base, group)
    shapes.append(line(across.start, base, across.end, base, "rule"))
    shapes.append(Words((width, base + 14.5), unit, "small", "end"))
    half = text_width(steady_text) / 2
    middle = min(max(across.at((steady[0] + steady[1]) / 2), half), width - half)
    shapes.append(Words((middle, base + 28), steady_text, "small", "middle"))
    return Drawing(title, words, width, base + LOW, tuple(shapes))


def _placed(texts: list[tuple[float, float]], width: float) -> list[tuple[int, str]]:
    """Row and anchor of each text, from its place and width: no text touches a text, or another's upright.

    Texts stand left of their uprights, each over those that it reaches across; the first ones, for which
    there is no room at the left, stand right of theirs.
    """
    count, reached = 0, 0.0
    for x, wide in texts:
        if (wide > x or x < reached) and x + wide <= width:
            count, reached = count + 1, max(reached, x + wide)
        else:
            break
    rows = [0] * len(texts)
    for number in range(count - 1, -1, -1):
        end = texts[number][0] + texts[number][1]
        rows[number] = max((rows[k] + 1 for k in range(number + 1, count) if texts[k][0] < end), default=0)
    for number in range(count, len(texts)):
        start = texts[number][0] - texts[number][1]
        ends = [texts[k][0] + (texts[k][1] if k < count else 0.0) for k in range(number)]
        rows[number] = max((rows[k] + 1 for k in range(number) if ends[k] > start), default=0)
    return [(row, "start" if number < count else "end") for number, row in enumerate(rows)]


def _ticks(across: Axis, base: float, group: str) -> list[Shape]:
    values, places = across.marks()
    step = values[1] - values[0] if len(values) > 1 else across.last
    shapes: list[Shape] = []
    for number in range(round(across.last / step * 10) + 1):
        value = number * step / 10
        long = 5.0 if number % 10 == 0 else 3.6 if number % 5 == 0 else 2.2
        shapes.append(line(across.at(value), base, across.at(value), base + long, "tick"))
    shapes += [Words((across.at(each), base + 14.5), numeral(each, places, group), "small", "middle")
               for each in values]  # fmt: skip
    return shapes
