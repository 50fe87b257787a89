"""The graduated rule: a range, the figure in it, and other evidence, as on an engineer's scale."""

from __future__ import annotations

import math
from collections.abc import Callable

from heatledger.drawings.shapes import Disc, Drawing, Path, Shape, Words, box, line

RULE, TOP = 20.0, 9.0


def band_rule(
    title: str,
    low: float,
    high: float,
    figure: float,
    others: tuple[tuple[float, str], ...] = (),
    width: float = 240.0,
    words: str = "",
    group: str = ",",
) -> Drawing:
    """The band from ``low`` to ``high`` with ``figure`` as a headed stroke and ``others`` as named rings.

    All values are in the unit shown. The rule reaches past the band on both sides, so that bands drawn
    at one width can be compared; ``group`` parts thousands. Raises ValueError when the ends are not finite
    or not in order.
    """
    values = (low, high, figure, *(value for value, _ in others))
    if not all(math.isfinite(value) for value in values) or low > high:
        raise ValueError(f"a band needs two finite ends in order, got {low!r} and {high!r}")
    least, most = min(values), max(values)
    spread = most - least or abs(figure) * 0.1 or 1.0
    start, end = least - 0.22 * spread, most + 0.22 * spread
    edge = 16.0

    def at(value: float) -> float:
        return edge + (value - start) / (end - start) * (width - 2 * edge)

    shapes: list[Shape] = [box(at(low), TOP + 2, at(high) - at(low), RULE - TOP - 2, "band")]
    shapes += [line(at(each), TOP - 1, at(each), RULE, "mark-thin") for each in (low, high)]
    shapes.append(line(edge - 8, RULE, width - edge + 8, RULE, "rule"))
    shapes += _ticks(start, end, at, group)
    shapes += _rings(others, at, width)
    x = at(figure)
    shapes.append(line(x, TOP - 4, x, RULE, "mark"))
    shapes.append(Path(((x - 3.4, TOP - 7), (x + 3.4, TOP - 7), (x, TOP - 1)), "ink", closed=True))
    said = words or f"{numeral(figure, 0)}, likely {numeral(low, 0)} to {numeral(high, 0)}"
    return Drawing(title, said, width, RULE + 18, tuple(shapes))


def step_of(span: float, wanted: float = 3.0) -> float:
    """The 1, 2 or 5 times a power of ten that cuts ``span`` into about ``wanted`` parts."""
    rough = span / wanted
    power = 10.0 ** math.floor(math.log10(rough))
    return min((power * each for each in (1, 2, 5, 10)), key=lambda step: abs(math.log(step / rough)))


def numeral(value: float, places: int, group: str = ",") -> str:
    """The value with ``group`` between thousands and a true minus."""
    return f"{round(value, places) + 0.0:,.{places}f}".replace(",", group).replace("-", "\N{MINUS SIGN}")


def _ticks(start: float, end: float, at: Callable[[float], float], group: str) -> list[Shape]:
    step = step_of(end - start)
    places = max(0, -math.floor(math.log10(step) + 1e-9))
    fine = 10 if (at(step) - at(0.0)) / 10 >= 3.0 else 5
    shapes: list[Shape] = []
    for number in range(math.ceil(start / step * fine), math.floor(end / step * fine) + 1):
        value = number * step / fine
        long = 5.0 if number % fine == 0 else 3.6 if fine == 10 and number % 5 == 0 else 2.2
        shapes.append(line(at(value), RULE, at(value), RULE + long, "tick"))
        if number % fine == 0:
            shapes.append(Words((at(value), RULE + 14.5), numeral(value, places, group), "small", "middle"))
    return shapes


def _rings(others: tuple[tuple[float, str], ...], at: Callable[[float], float], width: float) -> list[Shape]:
    shapes: list[Shape] = []
    for value, name in others:
        x = at(value)
        room = width - x > 6.0 * len(name)
        shapes.append(line(x, TOP + 4, x, RULE, "mark-thin"))
        shapes.append(Disc((x, TOP + 1.2), 2.8, "ring"))
        beside = (x + 5, TOP - 1) if room else (x - 5, TOP - 1)
        shapes.append(Words(beside, name, "small", "start" if room else "end"))
    return shapes
