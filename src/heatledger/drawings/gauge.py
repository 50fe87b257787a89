"""A gauge: a bracket for the target on a short line, a dot for a reading inside, a triangle outside."""

from __future__ import annotations

import math

from heatledger.drawings.shapes import Disc, Drawing, Path, Shape, box, line
from heatledger.studies.startup_limits import is_inside

EDGE, ENDS = 5.0, (0.32, 0.68)
TALL = 4.6


def gauge(
    title: str, low: float | None, high: float | None, reading: float | None = None, words: str = "",
    width: float = 62.0, height: float = 13.0,
) -> Drawing:  # fmt: skip
    """The target from ``low`` to ``high`` and a reading, all in one unit; an end that is None is open.

    A target with one end is drawn from zero. A reading far off stands at the end of the line. Raises
    ValueError without an end, with ends out of order, or for a value that is not finite.
    """
    ends = [each for each in (low, high) if each is not None]
    given = ends if reading is None else [*ends, reading]
    if not ends or not all(map(math.isfinite, given)) or (len(ends) == 2 and ends[0] > ends[1]):
        raise ValueError(f"a target needs a finite end, two of them in order, got {low!r} to {high!r}")
    middle, start, stop = height / 2, EDGE, width - EDGE
    left = None if low is None else start + ENDS[0] * (stop - start)
    right = None if high is None else start + ENDS[1] * (stop - start)
    band = (start if left is None else left), (stop if right is None else right)
    shapes: list[Shape] = [line(start, middle, stop, middle, "hair")]
    shapes.append(box(band[0], middle - 1.6, band[1] - band[0], 3.2, "band"))
    shapes += [_bracket(x, middle, way) for x, way in ((left, 1.0), (right, -1.0)) if x is not None]
    if reading is not None:
        shapes.append(_mark(_place(reading, low, high, (start, stop), (left, right)), middle))
    return Drawing(title, words or title, width, height, tuple(shapes))


def _place(
    reading: float, low: float | None, high: float | None, ends: tuple[float, float],
    brackets: tuple[float | None, float | None],
) -> tuple[float, bool]:  # fmt: skip
    """Where a reading stands on the line, and whether it is inside; never on the wrong side of a bracket."""
    inside, (start, stop), (left, right) = is_inside(reading, low, high), ends, brackets
    if left is not None and right is not None and low is not None and high is not None:
        share = 0.5 if high == low else (reading - low) / (high - low)
        x = left + share * (right - left)
    elif right is not None and high is not None:
        x = start + (reading / high if high else 0.0) * (right - start)
    else:
        assert left is not None
        x = start + (reading / low if low else 1.0) * (left - start)
    x = min(max(x, start), stop)
    if inside:
        return min(max(x, start if left is None else left), stop if right is None else right), True
    return _kept_out(x, left, right, reading, low), False


def _kept_out(x: float, left: float | None, right: float | None, reading: float, low: float | None) -> float:
    """A reading outside stands clear of its bracket, so that a hair over is seen to be over."""
    if left is not None and low is not None and reading < low:
        return min(x, left - TALL)
    return x if right is None else max(x, right + TALL)


def _bracket(x: float, middle: float, way: float) -> Path:
    top, bottom, foot = middle - TALL, middle + TALL, x + 2.2 * way
    return Path(((foot, top), (x, top), (x, bottom), (foot, bottom)), "mark-thin")


def _mark(place: tuple[float, bool], middle: float) -> Shape:
    x, inside = place
    if inside:
        return Disc((x, middle), 2.6, "ink")
    return Path(((x, middle - 4.0), (x + 4.0, middle + 3.6), (x - 4.0, middle + 3.6)), "outside", closed=True)
