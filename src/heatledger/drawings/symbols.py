"""The signs of a piping schematic, on a unit box that a drawing puts in place and turns.

Geometry after the families of signs for piping diagrams (ISO 14617, ISO 10628, ASME Y32.2.3), whose
variants differ: a sheet that uses them carries the legend of those it uses. Pipe runs along y = 0.
"""

from __future__ import annotations

import math

from heatledger.drawings.shapes import Disc, Path, Point, Shape, Words, box, line

UNIT = 5.6
"""Half the width of the unit box on paper, in points."""


def arc(center: Point, radius: float, start: float, end: float) -> tuple[Point, ...]:
    """Points of an arc from ``start`` to ``end`` degrees, 0 to the right and growing downwards."""
    count = max(4, math.ceil(abs(end - start) / 15))
    turns = (math.radians(start + (end - start) * number / count) for number in range(count + 1))
    return tuple((center[0] + radius * math.cos(t), center[1] + radius * math.sin(t)) for t in turns)


def _bow(first: str = "symbol", second: str = "symbol", half: float = 1.0) -> tuple[Path, ...]:
    high = 0.6 * half
    left = Path(((-half, -high), (-half, high), (0, 0)), first, closed=True)
    return left, Path(((half, -high), (half, high), (0, 0)), second, closed=True)


def _stem(height: float, radius: float) -> tuple[Shape, ...]:
    bonnet = Path(arc((0, -height), radius, 180, 360), "symbol", closed=True)
    return line(0, 0, 0, -height, "symbol-line"), bonnet


def _shifted(shapes: tuple[Path, ...], x: float) -> tuple[Path, ...]:
    return tuple(
        Path(tuple((px + x, py) for px, py in each.points), each.look, each.closed) for each in shapes
    )


def _capsule(wide: float, high: float, look: str = "symbol") -> Path:
    above = arc((0, -high + wide), wide, 180, 360)
    return Path((*above, *arc((0, high - wide), wide, 0, 180)), look, closed=True)


def _wave(half: float) -> Path:
    spots = [-half + half * number / 8 for number in range(17)]
    return Path(tuple((x, 0.25 * math.sin(x / half * math.pi)) for x in spots), "symbol-line")


def _lettered(letter: str) -> tuple[Shape, ...]:
    return Disc((0, 0), 1.05, "symbol"), Words((0, 0.52), letter, "letter", "middle")


def _ribs(count: int, half: float, high: float) -> tuple[Shape, ...]:
    step = 2 * half / (count + 1)
    return tuple(line(-half + step * n, -high, -half + step * n, high, "symbol-line")
                 for n in range(1, count + 1))  # fmt: skip


def _flame(scale: float) -> Path:
    """A drop: its point up, its belly a half circle."""
    belly = arc((0, 0.35 * scale), 0.62 * scale, 0, 180)
    left = ((-0.6 * scale, 0.1 * scale), (-0.32 * scale, -0.5 * scale))
    right = ((0.32 * scale, -0.5 * scale), (0.6 * scale, 0.1 * scale))
    return Path((*belly, *left, (0, -1.1 * scale), *right), "symbol-line", closed=True)


_CHECKS = (*_shifted(_bow("symbol", "symbol-solid", 0.62), -0.75),
           *_shifted(_bow("symbol", "symbol-solid", 0.62), 0.75))  # fmt: skip
_SPRING = Path(((0, 0), (0, -0.5), (0.5, -0.7), (-0.5, -1.0), (0.5, -1.3), (-0.5, -1.6), (0, -1.8)),
               "symbol-line")  # fmt: skip
_COCK = tuple(
    Path(tuple((py, px + 1.3) for px, py in each.points), each.look, each.closed) for each in _bow(half=0.7)
)

SYMBOLS: dict[str, tuple[Shape, ...]] = {
    "circulator": (
        Disc((0, 0), 1.2, "symbol"),
        Path(((-0.6, -1.04), (1.2, 0), (-0.6, 1.04)), "symbol-line", closed=True),
    ),
    "shutoff": (*_bow(), Disc((0, 0), 0.3, "symbol")),
    "balancing valve": (*_bow(), line(-0.75, 1.0, 0.75, -1.0, "symbol-line")),
    "zone valve": (*_bow(), *_stem(0.75, 0.55)),
    "fill valve": (*_bow(), *_stem(1.25, 0.7)),
    "backflow preventer": (box(-1.75, -0.85, 3.5, 1.7, "symbol"), *_CHECKS),
    "relief valve": (
        Path(((-0.6, 1), (0.6, 1), (0, 0)), "symbol", closed=True),
        Path(((-1, -0.6), (-1, 0.6), (0, 0)), "symbol", closed=True),
        _SPRING,
    ),
    "expansion tank": (_capsule(1.5, 2.7), _wave(1.5)),
    "air separator": (
        Disc((0, 0), 1.2, "symbol"),
        line(0, -1.2, 0, -1.8, "symbol-line"),
        Disc((0, -2.2), 0.42, "symbol"),
    ),
    "purge drain": (line(0, 0, 0, 0.6, "symbol-line"), *_COCK, line(-0.55, 2.25, 0.55, 2.25, "symbol-line")),
    "floor drain": (Path(((-1.1, -0.7), (1.1, -0.7), (0, 0.8)), "symbol", closed=True),),
    "thermometer": _lettered("T"),
    "pressure gauge": _lettered("P"),
    "high limit": _lettered("H"),
    "low-water cutoff": _lettered("L"),
    "fin-tube baseboard": (box(-2.0, -0.8, 4.0, 1.6, "symbol"), *_ribs(9, 2.0, 0.8)),
    "cast-iron baseboard": (
        box(-2.0, -0.8, 4.0, 1.6, "symbol"),
        line(-2.0, -0.27, 2.0, -0.27, "symbol-line"), line(-2.0, 0.27, 2.0, 0.27, "symbol-line"),
    ),
    "panel radiator": (box(-2.0, -0.8, 4.0, 1.6, "symbol"), *_ribs(3, 2.0, 0.45)),
    "cast-iron radiator": tuple(
        each for n in range(5) for each in _shifted((_capsule(0.4, 0.95),), -1.6 + 0.8 * n)
    ),
    "boiler": (box(-1.2, -1.2, 2.4, 2.4, "symbol"), _flame(0.7)),
}  # fmt: skip

FLAME = (_flame(1.0),)
"""The sign of a boiler without its box."""


def symbol(name: str, at: Point, turned: int = 0, unit: float = UNIT) -> tuple[Shape, ...]:
    """The sign called ``name`` at a point, turned by quarters of a circle with the clock; letters stay up."""
    if name not in SYMBOLS:
        raise ValueError(f"no sign for {name!r}; the signs are {', '.join(SYMBOLS)}")
    return put(SYMBOLS[name], at, turned, unit)


def put(shapes: tuple[Shape, ...], at: Point, turned: int = 0, unit: float = UNIT) -> tuple[Shape, ...]:
    """Shapes of the unit box in their place on a drawing."""

    def moved(point: Point) -> Point:
        x, y = point
        for _ in range(turned % 4):
            x, y = -y, x
        return (at[0] + x * unit, at[1] + y * unit)

    made: list[Shape] = []
    for each in shapes:
        if isinstance(each, Words):
            upright = (at[0] + each.at[0] * unit, at[1] + each.at[1] * unit)
            made.append(Words(upright, each.text, each.look, each.anchor))
        elif isinstance(each, Disc):
            made.append(Disc(moved(each.center), each.radius * unit, each.look))
        else:
            made.append(Path(tuple(moved(point) for point in each.points), each.look, each.closed))
    return tuple(made)


def head(tip: Point, toward: Point, look: str, long: float = 6.0) -> Path:
    """A small solid arrowhead on a pipe, its tip at ``tip``, pointing along a unit vector."""
    (x, y), (dx, dy) = tip, toward
    back = (x - dx * long, y - dy * long)
    aside = (-dy * long * 0.45, dx * long * 0.45)
    points = (tip, (back[0] + aside[0], back[1] + aside[1]), (back[0] - aside[0], back[1] - aside[1]))
    return Path(points, look, closed=True)
