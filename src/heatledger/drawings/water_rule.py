"""A rule of water temperatures: each room hangs on it at the lowest supply that carries it."""

from __future__ import annotations

import math
from dataclasses import dataclass

from heatledger.drawings.band_rule import numeral
from heatledger.drawings.chart_frame import Axis
from heatledger.drawings.lettering import fitted_apart, text_width
from heatledger.drawings.shapes import Disc, Drawing, Path, Shape, Words, line

EDGE, ROW, STEM, FAN, TOP = 18.0, 12.0, 5.0, 20.0, 11.0
MOST_NAME, MOST_ROWS, SIZE = 88.0, 12, 9.0
SCALES = {"°F": (75.0, 200.0, 25.0), "°C": (25.0, 95.0, 10.0)}
"""First and last value and step of the numbers, so that floors and heat pumps are on it."""


@dataclass(frozen=True)
class RoomOnRule:
    """A room and the lowest supply that carries it, in the unit shown, with the text printed."""

    name: str
    supply: float
    text: str


@dataclass(frozen=True)
class _Column:
    """Labels over one place of the rule: the rooms of it, coolest on top, and where it begins."""

    rooms: tuple[tuple[RoomOnRule, str], ...]
    wanted: float
    wide: float


def water_rule(
    title: str,
    rooms: tuple[RoomOnRule, ...],
    setting: float | None,
    setting_text: str,
    unit: str,
    width: float = 516.0,
    until: tuple[float, str] | None = None,
) -> Drawing:
    """The rule; the setting is a headed stroke, the room that sets it is bold. Names fan out, never touch.

    ``until`` is a supply up to which something holds, with the words for it: a bracket below.
    """
    values = [each.supply for each in rooms] + ([] if setting is None else [setting])
    if not rooms or not all(map(math.isfinite, values)):
        raise ValueError("a rule of water temperatures needs rooms with finite temperatures")
    first, last, step = span(values, unit)
    across = Axis(first, last, EDGE, width - EDGE)
    columns, rows = _columns(rooms, across, width)
    base = TOP + ROW * (rows - 1) + 6 + FAN + 8
    shapes: list[Shape] = _fan(columns, across, width, base, max(each.supply for each in rooms))
    shapes += _ticks(across, step, base)
    shapes.append(line(EDGE - 8, base, width - EDGE + 8, base, "rule"))
    shapes += [Disc((across.at(each.supply), base), 1.6, "ink") for each in rooms]
    low = base + 18
    if setting is not None:
        low = base + 32
        x = across.at(setting)
        shapes.append(Path(((x - 4, base + 25), (x + 4, base + 25), (x, base + 18)), "ink", closed=True))
        shapes.append(line(x, base - 7, x, base + 6, "mark"))
        end = x + text_width(setting_text, SIZE) + 8 > width
        place = (x - 7 if end else x + 7, base + 26)
        shapes.append(Words(place, setting_text, "bold", "end" if end else "start"))
    if until is not None and until[0] > first:
        shapes += _bracket(across, min(until[0], last), until[1], low)
        low += 16
    order = sorted(rooms, key=lambda each: each.supply)
    said = ", ".join(f"{each.name} {each.text}" for each in order)
    words = f"Lowest supply that carries each room: {said}." + (f" {setting_text}." if setting_text else "")
    return Drawing(f"{title}, {unit}", words, width, low, tuple(shapes))


def span(values: list[float], unit: str) -> tuple[float, float, float]:
    """The usual scale of the unit, longer where a room or the setting lies outside it."""
    first, last, step = SCALES.get(unit, SCALES["°F"])
    while min(values, default=first) < first:
        first -= step
    while max(values, default=last) > last:
        last += step
    return first, last, step


def _columns(rooms: tuple[RoomOnRule, ...], across: Axis, width: float) -> tuple[list[_Column], int]:
    """The rooms from cool to warm over as few rows as their names allow."""
    order = sorted(rooms, key=lambda each: each.supply)
    names = fitted_apart([each.name for each in order], MOST_NAME, SIZE)
    labels = [(each, f"{name} {each.text}") for each, name in zip(order, names, strict=True)]
    for rows in range(1, max(MOST_ROWS, len(labels)) + 1):
        columns = []
        for start in range(0, len(labels), rows):
            own = tuple(labels[start : start + rows])
            wide = max(text_width(text, SIZE) + STEM * number for number, (_, text) in enumerate(own)) + 12
            columns.append(_Column(own, sum(across.at(each.supply) for each, _ in own) / len(own), wide))
        if sum(each.wide for each in columns) <= width:
            return columns, rows
    raise ValueError("a rule of water temperatures is too narrow for the names of its rooms")


def _starts(columns: list[_Column], width: float) -> list[float]:
    """Where each column begins: over its rooms as far as its neighbors let it."""
    starts: list[float] = []
    reached = 0.0
    for each in columns:
        starts.append(max(each.wanted - each.wide / 2, reached))
        reached = starts[-1] + each.wide
    limit = width
    for number in range(len(columns) - 1, -1, -1):
        starts[number] = min(starts[number], limit - columns[number].wide)
        limit = starts[number]
    return starts


def _fan(columns: list[_Column], across: Axis, width: float, base: float, leading: float) -> list[Shape]:
    """Names in rows, each on a stem that passes left of the names below and slants to its place."""
    shapes: list[Shape] = []
    bend = base - FAN - 4
    for column, start in zip(columns, _starts(columns, width), strict=True):
        for number, (room, text) in enumerate(column.rooms):
            stem = start + 1 + STEM * number
            y = TOP + ROW * number
            x = across.at(room.supply)
            shapes.append(Path(((x, base), (x, base - 5), (stem, bend), (stem, y - 7)), "cold"))
            shapes.append(Words((stem + 3, y), text, "bold" if room.supply == leading else "text"))
    return shapes


def _bracket(across: Axis, until: float, words: str, low: float) -> list[Shape]:
    """Where something holds: from the cool end up to a temperature."""
    start, end = across.start, across.at(until)
    return [
        Path(((start, low - 4), (start, low), (end, low), (end, low - 4)), "wall-end"),
        Words((start, low + 11), words, "small"),
    ]


def _ticks(across: Axis, step: float, base: float) -> list[Shape]:
    fine = step / (10 if step == SCALES["°C"][2] else 25)
    shapes: list[Shape] = []
    for number in range(math.ceil(across.first / fine - 1e-9), math.floor(across.last / fine + 1e-9) + 1):
        value = number * fine
        x, whole = across.at(value), abs(value / step - round(value / step)) < 1e-6
        long = 6.0 if whole else 4.0 if number % 5 == 0 else 2.4
        shapes.append(line(x, base, x, base + long, "tick"))
        if whole:
            shapes.append(Words((x, base + 15), numeral(value, 0), "small", "middle"))
    return shapes
