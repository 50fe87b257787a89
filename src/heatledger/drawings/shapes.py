"""The few shapes that every drawing is made of, and stable numbers.

A shape carries the class it is drawn with (``look``); what a class looks like is known to the writer
alone. Lengths are points on paper (1/72 inch); y grows downwards.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

Point = tuple[float, float]


@dataclass(frozen=True)
class Path:
    """A line through points; ``closed`` makes it an area."""

    points: tuple[Point, ...]
    look: str
    closed: bool = False


@dataclass(frozen=True)
class Disc:
    """A circle about a center."""

    center: Point
    radius: float
    look: str


@dataclass(frozen=True)
class Words:
    """A line of text; ``anchor`` is start, middle or end; the point is on the base line."""

    at: Point
    text: str
    look: str
    anchor: str = "start"


Shape = Path | Disc | Words


@dataclass(frozen=True)
class Drawing:
    """A picture: its size in points, its shapes back to front, its title and its content in words."""

    title: str
    words: str
    width: float
    height: float
    shapes: tuple[Shape, ...]

    def __hash__(self) -> int:
        """Of what tells drawings apart at a glance; to go through thousands of strokes would take longer."""
        return hash((self.title, self.words, self.width, self.height, len(self.shapes)))


def line(x0: float, y0: float, x1: float, y1: float, look: str) -> Path:
    """A straight line."""
    return Path(((x0, y0), (x1, y1)), look)


def box(x: float, y: float, width: float, height: float, look: str) -> Path:
    """An upright rectangle, ``(x, y)`` its upper left corner."""
    return Path(((x, y), (x + width, y), (x + width, y + height), (x, y + height)), look, closed=True)


def arrow(tip: Point, toward: Point, length: float, thickness: float, look: str) -> Path:
    """A block arrow that ends at ``tip`` and points along the unit vector ``toward``."""
    head = min(10.0, length / 2)
    half, wide = thickness / 2, thickness / 2 + 4.0
    (x, y), (dx, dy) = tip, toward
    across = (-dy, dx)

    def at(back: float, aside: float) -> Point:
        return (x - dx * back + across[0] * aside, y - dy * back + across[1] * aside)

    points = (at(0, 0), at(head, wide), at(head, half), at(length, half))
    mirror = (at(length, -half), at(head, -half), at(head, -wide))
    return Path(points + mirror, look, closed=True)


@lru_cache(maxsize=8192)
def stable(value: float) -> str:
    """The number with at most two decimals, no needless zeros, never ``-0``."""
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text
