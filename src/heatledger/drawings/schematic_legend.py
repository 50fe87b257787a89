"""What the signs of a schematic mean: only those that it uses."""

from __future__ import annotations

from functools import lru_cache

from heatledger.drawings.schematic_view import HOME_RUN, SchematicView
from heatledger.drawings.shapes import Drawing, Shape, Words, box, line
from heatledger.drawings.symbols import SYMBOLS, UNIT, symbol

ROW, MARK, NARROW = 17.0, 30.0, 124.0
MEANS = {
    "boiler": "boiler",
    "shutoff": "shutoff (ball valve)",
    "zone valve": "zone valve",
    "balancing valve": "balancing valve",
    "fill valve": "fill valve (reducing)",
    "backflow preventer": "backflow preventer",
    "relief valve": "relief valve",
    "floor drain": "floor drain, air gap",
    "expansion tank": "expansion tank",
    "air separator": "air separator, vent",
    "purge drain": "purge drain",
    "pressure gauge": "pressure gauge",
}
LINES = {
    "supply": "supply",
    "return": "return",
    "manifold-supply": "supply manifold",
    "manifold-return": "return manifold",
    "cold": "cold water, leads",
    "discharge": "relief discharge",
}
_SMALL = {"expansion tank": 0.5, "air separator": 0.62, "relief valve": 0.7, "fill valve": 0.72,
          "backflow preventer": 0.85, "boiler": 1.05, "purge drain": 0.75}  # fmt: skip
_LOWERED = {"air separator": 4.0, "relief valve": 2.5, "fill valve": 3.5, "zone valve": 2.5,
            "purge drain": -6.0}  # fmt: skip


def signs_used(view: SchematicView) -> list[str]:
    """The signs of a schematic in the order of the legend."""
    used = {"boiler", "shutoff", "fill valve", "backflow preventer", "relief valve", "floor drain",
            "expansion tank", "air separator", "thermometer", "pressure gauge", "purge drain"}  # fmt: skip
    used |= {"high limit"} if view.high_limit else set()
    used |= {"low-water cutoff"} if view.low_water_cutoff else set()
    for each in view.circuits:
        used |= {"zone valve"} if each.zone_valve else set()
        used |= {"circulator"} if each.circulator else set()
        used |= {run.emitter for run in each.runs}
        used |= {"balancing valve"} if any(run.balancing for run in each.runs) else set()
    used |= {"circulator"} if view.circulator else set()
    return [each for each in SYMBOLS if each in used]


def lines_used(view: SchematicView) -> list[str]:
    """The kinds of lines of a schematic in the order of the legend."""
    with_manifold = any(each.kind == HOME_RUN for each in view.circuits)
    return [each for each in LINES if with_manifold or not each.startswith("manifold")]


def legend_shapes(view: SchematicView, width: float) -> tuple[list[Shape], float]:
    """The legend with its upper left corner at the origin, and its height."""
    entries = [*signs_used(view), *lines_used(view)]
    columns = max(1, int(width // NARROW))
    rows = -(-len(entries) // columns)
    wide = width / columns
    shapes: list[Shape] = []
    for number, each in enumerate(entries):
        x, y = wide * (number // rows), ROW * (number % rows) + ROW / 2
        shapes += _mark(each, x + MARK / 2, y)
        shapes.append(Words((x + MARK + 5, y + 3), LINES.get(each) or MEANS.get(each, each), "small"))
    return shapes, ROW * rows


@lru_cache(maxsize=16)
def schematic_legend(view: SchematicView, width: float = 252.0) -> Drawing:
    """The legend as a drawing of its own, for a paper that puts it elsewhere."""
    shapes, high = legend_shapes(view, width)
    words = ", ".join([*signs_used(view), *(LINES[each] for each in lines_used(view))])
    return Drawing("What the signs mean", f"Signs of the schematic: {words}.", width, high, tuple(shapes))


def _mark(name: str, x: float, y: float) -> list[Shape]:
    if name.startswith("manifold"):
        return [box(x - MARK / 2 + 3, y - 2, MARK - 6, 4, name)]
    if name in LINES:
        return [line(x - MARK / 2, y, x + MARK / 2, y, name)]
    unit = UNIT * _SMALL.get(name, 0.9)
    return list(symbol(name, (x, y + _LOWERED.get(name, 0.0)), unit=unit))
