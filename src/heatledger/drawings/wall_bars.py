"""The free wall of each room to scale: the wall as a dimension line, what hangs on it, and what is needed."""

from __future__ import annotations

from dataclasses import dataclass

from heatledger.drawings.band_rule import numeral
from heatledger.drawings.chart_frame import Axis, rounded_out
from heatledger.drawings.lettering import fitted_apart, text_width
from heatledger.drawings.shapes import Drawing, Path, Shape, Words, box, line

ROW, HIGH, FIN = 20.0, 8.0, 3.2
SCALE, LEGEND = 22.0, 20.0
MOST_NAME = 130.0


@dataclass(frozen=True)
class WallBar:
    """A room, all lengths in one unit, None where not known: free wall, length on it, length needed.

    ``text`` is printed at the end; ``suggested`` says that the length hangs nowhere yet.
    """

    name: str
    wall: float | None
    length: float | None
    needed: float | None
    text: str = ""
    suggested: bool = False

    @property
    def reach(self) -> float:
        """The longest of its lengths."""
        return max(self.wall or 0.0, self.length or 0.0, self.needed or 0.0)


def wall_bars(title: str, words: str, rooms: tuple[WallBar, ...], unit: str, width: float = 516.0) -> Drawing:
    """The rooms under one scale; raises ValueError where no room has a length."""
    longest = max((each.reach for each in rooms), default=0.0)
    if not longest > 0:
        raise ValueError("walls to scale need a room with a length")
    left = min(max(text_width(each.name, 9.0) for each in rooms), MOST_NAME) + 10
    right = max(max(text_width(each.text, 9.0) for each in rooms), text_width(unit)) + 14
    scale = Axis(0.0, rounded_out(0.0, longest, 6)[1], left, width - right)
    bottom = SCALE + ROW * len(rooms)
    shapes: list[Shape] = [*_ruler(scale, SCALE), Words((width, SCALE - 9), unit, "small", "end")]
    names = fitted_apart([each.name for each in rooms], left - 8, 9.0)
    for number, (each, name) in enumerate(zip(rooms, names, strict=True)):
        y = SCALE + ROW * number
        shapes.append(Words((0, y + 13), name, "text"))
        shapes += bar_shapes(each, scale, y + 5)
        if each.text:
            shapes.append(Words((width, y + 13), each.text, "bold", "end"))
        shapes.append(line(0, y + ROW, width, y + ROW, "hair"))
    shapes += _legend(left, bottom + 14)
    return Drawing(title, words, width, bottom + LEGEND, tuple(shapes))


def wall_bar(room: WallBar, longest: float, words: str, width: float = 200.0) -> Drawing:
    """One room alone, for the row of a table; ``longest`` is the length that fills the width."""
    scale = Axis(0.0, longest if longest > 0 else 1.0, 4.0, width - 6)
    return Drawing(room.name, words, width, ROW - 2, tuple(bar_shapes(room, scale, 4.0)))


def bar_shapes(room: WallBar, scale: Axis, top: float) -> list[Shape]:
    """The wall below, the fins on it, the mark of what is needed, a shortage dashed beyond the fins."""
    shapes: list[Shape] = []
    middle, low = top + HIGH / 2, top + HIGH + 3.4
    if room.wall:
        shapes += _dimension(scale.start, scale.at(room.wall), low)
    if room.length:
        end = scale.at(room.length)
        shapes.append(box(scale.start, top, end - scale.start, HIGH, "plain"))
        count = int((end - scale.start) / FIN)
        if not room.suggested:
            shapes += [line(scale.start + FIN * n, top, scale.start + FIN * n, top + HIGH, "fins")
                       for n in range(1, count + 1) if scale.start + FIN * n < end - 0.4]  # fmt: skip
    if room.needed:
        x = scale.at(room.needed)
        if room.length is not None and room.needed > room.length * (1 + 1e-9):
            shapes.append(line(scale.at(room.length), middle, x, middle, "shortage"))
        shapes.append(line(x, top - 2, x, top + HIGH + 1, "mark"))
        shapes.append(Path(((x - 3, top - 5), (x + 3, top - 5), (x, top - 0.5)), "ink", closed=True))
    return shapes


def _dimension(start: float, end: float, y: float) -> list[Shape]:
    return [line(start, y, end, y, "wall-end"), line(start, y - 2.4, start, y + 2.4, "wall-end"),
            line(end, y - 2.4, end, y + 2.4, "wall-end")]  # fmt: skip


def _ruler(scale: Axis, y: float) -> list[Shape]:
    values, places = scale.marks(6)
    step = values[1] - values[0] if len(values) > 1 else scale.last
    shapes: list[Shape] = [line(scale.start, y, scale.end, y, "rule")]
    for number in range(int(scale.last / step * 5 + 1e-9) + 1):
        x = scale.at(step * number / 5)
        shapes.append(line(x, y - (5.0 if number % 5 == 0 else 2.6), x, y, "tick"))
    shapes += [Words((scale.at(each), y - 9), numeral(each, places), "small", "middle") for each in values]
    return shapes


def _legend(x: float, y: float) -> list[Shape]:
    """What the signs mean, in one line."""
    shapes: list[Shape] = []
    for name, wide in (("free wall", 22.0), ("on the wall", 22.0), ("needed", 6.0), ("short", 18.0)):
        if name == "free wall":
            shapes += _dimension(x, x + wide, y - 3)
        elif name == "on the wall":
            shapes += bar_shapes(WallBar("", None, wide, None), Axis(0.0, wide, x, x + wide), y - 7)
        elif name == "needed":
            shapes += bar_shapes(WallBar("", None, None, wide / 2), Axis(0.0, wide, x, x + wide), y - 7)
        else:
            shapes.append(line(x, y - 3, x + wide, y - 3, "shortage"))
        shapes.append(Words((x + wide + 5, y), name, "small"))
        x += wide + 5 + text_width(name) + 18
    return shapes
