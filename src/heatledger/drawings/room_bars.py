"""Rooms as hatched bars on one scale, cut by cause: the longer a bar, the more that room loses."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from heatledger.drawings.band_rule import numeral
from heatledger.drawings.cause_bar import GAP
from heatledger.drawings.cause_legend import cause_legend
from heatledger.drawings.chart_frame import Axis, rounded_out
from heatledger.drawings.hatches import CAUSES, hatched
from heatledger.drawings.lettering import fitted_apart, text_width
from heatledger.drawings.shapes import Drawing, Shape, Words, box, line

ROW, HIGH, LEGEND, SCALE = 16.0, 9.0, 20.0, 24.0
MOST_NAME = 130.0


@dataclass(frozen=True)
class RoomBar:
    """A room: amounts by cause in any one unit, and the text of its loss."""

    name: str
    amounts: Mapping[str, float]
    text: str


def room_bars(
    title: str, words: str, rooms: tuple[RoomBar, ...], unit: str, names: Mapping[str, str],
    width: float = 516.0, group: str = ",",
) -> Drawing:  # fmt: skip
    """The bars under their scale, the hatches named above; a gain has no length.

    ``names`` are those of the causes shown. Raises ValueError where no room loses anything.
    """
    largest = max((sum(max(each, 0.0) for each in room.amounts.values()) for room in rooms), default=0.0)
    if not largest > 0:
        raise ValueError("bars of rooms need a room that loses heat")
    legend = cause_legend(names)
    room = max((text_width(each.name, 9.0) for each in rooms), default=0.0)
    left = min(room, MOST_NAME) + 10
    last = rounded_out(0.0, largest, 6)[1]
    beside = text_width(numeral(last, 0, group)) / 2 + text_width(unit)
    total = max(max(text_width(each.text, 9.0) for each in rooms), beside) + 8
    scale = Axis(0.0, last, left, width - total)
    top = LEGEND + SCALE
    bottom = top + ROW * len(rooms)
    shapes: list[Shape] = [*legend.shapes, *_scale(scale, top, bottom, group)]
    shapes.append(Words((width, top - 9), unit, "small", "end"))
    names_cut = fitted_apart([each.name for each in rooms], left - 8, 9.0)
    for number, (each, name) in enumerate(zip(rooms, names_cut, strict=True)):
        y = top + ROW * number
        shapes.append(Words((0, y + 11), name, "text"))
        shapes += _bar(each, scale, y + (ROW - HIGH) / 2)
        shapes.append(Words((width, y + 11), each.text, "bold", "end"))
        shapes.append(line(0, y + ROW, width, y + ROW, "hair"))
    return Drawing(title, words, width, bottom + 3, tuple(shapes))


def _scale(scale: Axis, top: float, bottom: float, group: str) -> list[Shape]:
    values, places = scale.marks(6)
    shapes: list[Shape] = [line(scale.start, top, scale.end, top, "rule")]
    for value in values:
        x = scale.at(value)
        shapes += [line(x, top - 5, x, top, "tick"), line(x, top, x, bottom, "hair")]
        shapes.append(Words((x, top - 9), numeral(value, places, group), "small", "middle"))
    step = (values[1] - values[0]) / 5 if len(values) > 1 else 0.0
    number = 0
    while step and step * number <= scale.last + 1e-9:
        shapes.append(line(scale.at(step * number), top - 2.6, scale.at(step * number), top, "tick"))
        number += 1
    return shapes


def _bar(room: RoomBar, scale: Axis, y: float) -> list[Shape]:
    shapes: list[Shape] = []
    reached = 0.0
    for cause in CAUSES:
        part = max(room.amounts.get(cause, 0.0), 0.0)
        start, end = scale.at(reached), scale.at(reached + part)
        if end - start > GAP + 0.2:
            shapes.extend(hatched(box(start, y, end - start - GAP, HIGH, "edge").points, cause))
        reached += part
    return shapes
