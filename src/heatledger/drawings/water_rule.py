"""A rule of water temperatures: each room hangs on it at the lowest supply that carries it."""

from __future__ import annotations

import math
from dataclasses import dataclass

from heatledger.drawings.band_rule import numeral, step_of
from heatledger.drawings.lettering import fitted, text_width
from heatledger.drawings.shapes import Drawing, Path, Shape, Words, line

EDGE, ROW, LEAST_SPAN = 18.0, 11.5, 12.0


@dataclass(frozen=True)
class RoomOnRule:
    """A room and the lowest supply that carries it, in the unit shown, with the text printed."""

    name: str
    supply: float
    text: str


def water_rule(
    title: str,
    rooms: tuple[RoomOnRule, ...],
    setting: float | None,
    setting_text: str,
    unit: str,
    width: float = 516.0,
) -> Drawing:
    """The rule; the setting is a headed stroke, the room that sets it is bold. Names never touch."""
    values = [each.supply for each in rooms] + ([] if setting is None else [setting])
    if not rooms or not all(map(math.isfinite, values)):
        raise ValueError("a rule of water temperatures needs rooms with finite temperatures")
    step = step_of(max(max(values) - min(values), LEAST_SPAN), 6)
    first, last = (math.floor(min(values) / step) - 1) * step, (math.ceil(max(values) / step) + 1) * step

    def at(value: float) -> float:
        return EDGE + (value - first) / (last - first) * (width - 2 * EDGE)

    order = sorted(rooms, key=lambda each: each.supply)
    leading = max(each.supply for each in rooms)
    rows = _rows(order, at, width)
    base = ROW * (max(rows) + 1) + 20
    shapes: list[Shape] = []
    for each, row in zip(order, rows, strict=True):
        x, y = at(each.supply), base - 14 - ROW * row
        said, look = _said(each), "bold" if each.supply == leading else "small"
        at_right = x + text_width(said, 9.0) + 6 > width
        shapes += [line(x, y - 4, x, base, "cold")]
        shapes.append(Words((x - 3 if at_right else x + 3, y), said, look, "end" if at_right else "start"))
    shapes += _ticks(first, last, step, at, base)
    shapes.append(line(EDGE - 8, base, width - EDGE + 8, base, "rule"))
    if setting is not None:
        x = at(setting)
        shapes.append(Path(((x - 4, base + 25), (x + 4, base + 25), (x, base + 18)), "ink", closed=True))
        shapes.append(line(x, base - 7, x, base + 6, "mark"))
        end = x + text_width(setting_text, 9.0) + 8 > width
        place = (x - 7 if end else x + 7, base + 26)
        shapes.append(Words(place, setting_text, "bold", "end" if end else "start"))
    said = ", ".join(f"{each.name} {each.text}" for each in order)
    words = f"Lowest supply that carries each room: {said}." + (f" {setting_text}." if setting_text else "")
    return Drawing(f"{title}, {unit}", words, width, base + 32, tuple(shapes))


def _said(each: RoomOnRule) -> str:
    return f"{fitted(each.name, 90)} {each.text}"


def _rows(order: list[RoomOnRule], at: object, width: float) -> list[int]:
    """The row of each name above the rule: the lowest in which it touches no name and no leader."""
    rows: list[int] = []
    taken: list[tuple[int, float, float]] = []
    assert callable(at)
    for each in reversed(order):
        x, wide = float(at(each.supply)), text_width(_said(each), 9.0) + 8
        start, end = (x - wide, x) if x + wide > width else (x, x + wide)
        row = 0
        while any(start < b and a < end for level, a, b in taken if level == row) or any(
            start < a < end for level, a, _ in taken if level > row
        ):
            row += 1
        rows.append(row)
        taken.append((row, start, end))
    return rows[::-1]


def _ticks(first: float, last: float, step: float, at: object, base: float) -> list[Shape]:
    assert callable(at)
    shapes: list[Shape] = []
    fine = 5
    for number in range(round(first / step * fine), round(last / step * fine) + 1):
        value, whole = number * step / fine, number % fine == 0
        shapes.append(line(at(value), base, at(value), base + (5.0 if whole else 2.4), "tick"))
        if whole:
            shapes.append(Words((at(value), base + 14), numeral(value, 0), "small", "middle"))
    return shapes
