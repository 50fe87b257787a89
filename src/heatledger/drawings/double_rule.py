"""Two scales on one line: what stands above belongs to what stands below it, as on a slide rule."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import pairwise

from heatledger.drawings.band_rule import numeral, step_of
from heatledger.drawings.chart_frame import Axis
from heatledger.drawings.lettering import text_width
from heatledger.drawings.shapes import Drawing, Point, Shape, Words, line

LEFT, EDGE, BASE, HIGH = 38.0, 18.0, 26.0, 52.0
APART = 6.0


@dataclass(frozen=True)
class DoubleRule:
    """Points of an upper value and the lower one that belongs to it, both falling or rising all along.

    The upper scale is even, from the first point to the last. ``mark`` is the pair that is marked, with its
    two texts. ``group`` parts thousands below.
    """

    title: str
    words: str
    upper_unit: str
    lower_unit: str
    points: tuple[Point, ...]
    step: float
    mark: Point
    mark_texts: tuple[str, str]
    group: str = ","


def double_rule(rule: DoubleRule, width: float = 516.0) -> Drawing:
    """The rule; raises ValueError with fewer than two points, or where the lower value turns back."""
    lowers = [low for _, low in rule.points]
    rising = sorted(lowers) == lowers
    if len(lowers) < 2 or len(set(lowers)) < len(lowers) or not (rising or sorted(lowers) == lowers[::-1]):
        raise ValueError("a double rule needs two or more points that go one way")
    across = Axis(rule.points[0][0], rule.points[-1][0], LEFT, width - EDGE)
    mark = across.at(rule.mark[0])
    above, below = rule.mark_texts
    shapes: list[Shape] = [line(LEFT - 6, BASE, width - EDGE + 6, BASE, "rule")]
    shapes += _upper(rule, across, _kept_clear(mark, above))
    shapes += _lower(rule, across, _kept_clear(mark, below))
    shapes += [
        line(mark, BASE - 11, mark, BASE + 11, "mark"),
        Words((mark, BASE - 14), above, "bold", "middle"),
        Words((mark, BASE + 22), below, "bold", "middle"),
        Words((2, BASE - 8), rule.upper_unit, "small"),
        Words((2, BASE + 15), rule.lower_unit, "small"),
    ]
    return Drawing(rule.title, rule.words, width, HIGH, tuple(shapes))


def _kept_clear(x: float, text: str) -> tuple[float, float]:
    half = text_width(text, 9.0) / 2 + APART
    return x - half, x + half


def _upper(rule: DoubleRule, across: Axis, clear: tuple[float, float]) -> list[Shape]:
    low, high = sorted((across.first, across.last))
    fine = rule.step / (10 if abs(across.at(rule.step) - across.at(0.0)) / 10 >= 3.0 else 5)
    return _ticks(low, high, rule.step, fine, across.at, -1, ",", clear)


def _lower(rule: DoubleRule, across: Axis, clear: tuple[float, float]) -> list[Shape]:
    pairs = sorted((low, across.at(high)) for high, low in rule.points)

    def at(value: float) -> float:
        spans = list(pairwise(pairs))
        (low, start), (high, end) = next((each for each in spans if value <= each[1][0]), spans[-1])
        return start + (value - low) / (high - low) * (end - start)

    first, last = pairs[0][0], pairs[-1][0]
    step = step_of(last - first, 8)
    shapes = _ticks(first, last, step, step / 5, at, 1, rule.group, clear)
    shapes = [each for each in shapes if not isinstance(each, Words) or each.at[0] > LEFT - 2]
    return shapes


def _ticks(
    first: float, last: float, step: float, fine: float, at: Callable[[float], float], side: int, group: str,
    clear: tuple[float, float],
) -> list[Shape]:  # fmt: skip
    """Ticks above (-1) or below (1) the line; a number that would touch those of the mark is left out."""
    places = max(0, -math.floor(math.log10(step) + 1e-9))
    each_long = round(step / fine)
    shapes: list[Shape] = []
    for number in _numbers(first, last, fine):
        value = number * fine
        x, whole = at(value), number % each_long == 0
        shapes.append(line(x, BASE, x, BASE + side * (6.0 if whole else 3.0), "tick"))
        text = numeral(value, places, group)
        half = text_width(text) / 2
        if whole and (x + half < clear[0] or x - half > clear[1]):
            shapes.append(Words((x, BASE + (16 if side > 0 else -8.5)), text, "small", "middle"))
    return shapes


def _numbers(first: float, last: float, step: float) -> Sequence[int]:
    return range(math.ceil(first / step - 1e-9), math.floor(last / step + 1e-9) + 1)
