"""The piping schematic: the boiler room, the mains, and every circuit as a band between two rails.

Supply is solid, return dashed, cold water a hairline, relief discharge dash and dot, so that a copy
without color loses nothing. Pipes run at right angles and cross nowhere.
"""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache

from heatledger.drawings import schematic_plant as room
from heatledger.drawings.schematic_circuits import Band, band, height_of, narrowest
from heatledger.drawings.schematic_legend import legend_shapes
from heatledger.drawings.schematic_view import CircuitView, SchematicView, in_words
from heatledger.drawings.shapes import Disc, Drawing, Path, Point, Shape, Words, line
from heatledger.drawings.symbols import head

EDGE, GAP = 4.0, 10.0
BESIDE = room.WIDE + 6.0
TALLEST_BESIDE = 400.0
WIDEST = 330.0
RULE_LOW = 12.0


@lru_cache(maxsize=16)
def schematic(view: SchematicView, width: float = 516.0, legend: bool = True) -> Drawing:
    """The schematic at a width in points.

    Circuits stand beside the boiler room while they are few, else below it in columns. ``legend`` adds
    what the signs mean. Raises ValueError when the width holds no circuit.
    """
    tall = sum(height_of(each) for each in view.circuits)
    beside = width - BESIDE - EDGE >= max((narrowest(each) for each in view.circuits), default=0.0)
    if beside and tall <= TALLEST_BESIDE:
        shapes, high = _beside(view, width)
    else:
        shapes, high = _below(view, width)
    if legend:
        shapes.append(line(0, high + 4, width, high + 4, "hair"))
        shapes.append(Words((0, high + 18), "What the signs mean", "bold"))
        entries, more = legend_shapes(view, width)
        shapes += _moved(entries, 0, high + 24)
        high += 24 + more
    return Drawing(view.title, in_words(view), width, high, tuple(shapes))


def _beside(view: SchematicView, width: float) -> tuple[list[Shape], float]:
    """One column of circuits, right of the boiler room."""
    left, right = BESIDE, min(width - EDGE, BESIDE + WIDEST)
    bands, _ = _column(list(view.circuits), left, right, room.MAIN)
    low = max(room.HIGH, bands[-1].back + RULE_LOW + 16 if bands else 0.0)
    shapes: list[Shape] = [line(room.WIDE, room.MAIN, left, room.MAIN, "supply")] if bands else []
    shapes += _rails(bands, low, room.MAIN)
    if bands:
        shapes.append(Path(((right, low), (room.RETURN, low), (room.RETURN, room.HIGH)), "return"))
        shapes.append(head((room.WIDE, low), (-1, 0), "flow-return"))
    shapes += room.plant(view)
    for each in bands:
        shapes += band(each)
    return shapes, low + 6


def _below(view: SchematicView, width: float) -> tuple[list[Shape], float]:
    """Columns of circuits under the boiler room, which their return passes at the left."""
    least = max(narrowest(each) for each in view.circuits)
    count = max(1, min(int((width - 2 * EDGE + GAP) // (least + GAP)), len(view.circuits)))
    wide = (width - 2 * EDGE - GAP * (count - 1)) / count
    if wide < least:
        raise ValueError(f"a circuit needs {least:.0f} points of width, got {wide:.0f}")
    top = room.HIGH + 20
    columns = _shared(list(view.circuits), count)
    placed = [
        _column(each, EDGE + 6 + number * (wide + GAP), EDGE + number * (wide + GAP) + wide, top + 18)[0]
        for number, each in enumerate(columns)
    ]
    low = max(each[-1].back for each in placed) + RULE_LOW + 16
    turn = room.WIDE + 4
    shapes: list[Shape] = [
        Path(((room.WIDE, room.MAIN), (turn, room.MAIN), (turn, top)), "supply"),
        line(placed[0][0].left, top, max(turn, placed[-1][0].left), top, "supply"),
        Disc((turn, top), 1.9, "ink"),
        head((turn, top - 40), (0, 1), "flow-supply"),
        Path(((placed[-1][0].right, low), (2, low), (2, room.HIGH + 6), (room.RETURN, room.HIGH + 6),
              (room.RETURN, room.HIGH)), "return"),
        head((2, top + 20), (0, -1), "flow-return"),
    ]  # fmt: skip
    for bands in placed:
        shapes += _rails(bands, low, top)
        if bands is not placed[0] and bands is not placed[-1]:
            shapes.append(Disc((bands[0].left, top), 1.9, "ink"))
        if bands is not placed[-1]:
            shapes.append(Disc((bands[0].right, low), 1.9, "ink"))
        for each in bands:
            shapes += band(each)
    return [*shapes, *room.plant(view)], low + 6


def _column(circuits: list[CircuitView], left: float, right: float, top: float) -> tuple[list[Band], float]:
    bands: list[Band] = []
    for each in circuits:
        bands.append(Band(each, left, right, top))
        top += height_of(each)
    return bands, top


def _shared(circuits: list[CircuitView], count: int) -> list[list[CircuitView]]:
    """The circuits over columns in their order, so that the tallest column is as low as may be."""
    heights = [height_of(each) for each in circuits]
    limit = max(max(heights), sum(heights) / count)
    while len(made := _filled(circuits, limit)) > count:
        limit += 4.0
    return made


def _filled(circuits: list[CircuitView], limit: float) -> list[list[CircuitView]]:
    made: list[list[CircuitView]] = [[]]
    for each in circuits:
        if made[-1] and sum(map(height_of, made[-1])) + height_of(each) > limit:
            made.append([])
        made[-1].append(each)
    return made


def _rails(bands: list[Band], low: float, top: float) -> list[Shape]:
    """The supply rail down to the last branch, the return rail from the first return to the main."""
    if not bands:
        return []
    left, right = bands[0].left, bands[0].right
    shapes: list[Shape] = [line(right, bands[0].back, right, low, "return")]
    if bands[-1].top > top:
        shapes.append(line(left, top, left, bands[-1].top, "supply"))
    shapes += [Disc((left, each.top), 1.9, "ink") for each in bands[:-1]]
    shapes += [Disc((right, each.back), 1.9, "ink") for each in bands[1:]]
    shapes.append(head((right, low - 3), (0, 1), "flow-return"))
    return shapes


def _moved(shapes: list[Shape], dx: float, dy: float) -> list[Shape]:
    def at(point: Point) -> Point:
        return (point[0] + dx, point[1] + dy)

    made: list[Shape] = []
    for each in shapes:
        if isinstance(each, Words):
            made.append(replace(each, at=at(each.at)))
        elif isinstance(each, Disc):
            made.append(replace(each, center=at(each.center)))
        else:
            made.append(replace(each, points=tuple(map(at, each.points))))
    return made
