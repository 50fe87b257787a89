"""Supply and return water against the outdoor temperature, mild at the left and cold at the right."""

from __future__ import annotations

import math
from dataclasses import dataclass

from heatledger.drawings.band_rule import numeral
from heatledger.drawings.chart_frame import Axis, at_ends, frame, rounded_out
from heatledger.drawings.lettering import text_width
from heatledger.drawings.shapes import Disc, Drawing, Path, Shape, Words, line


@dataclass(frozen=True)
class WaterAt:
    """Water temperatures at one outdoor temperature, all in the unit shown."""

    outdoor: float
    supply: float
    return_: float


@dataclass(frozen=True)
class ResetView:
    """What a reset chart shows.

    ``points`` are those that the control is given. ``straight`` are the two ends of the line of a control
    that knows only a straight one, as outdoor and supply. ``condensing`` is the return above which a
    boiler no longer condenses, or below which one must not run; ``limit_name`` says which of the two.
    ``shutdown`` is the outdoor temperature above which there is no heat. ``short`` says how far a straight
    line between the ends falls short, and has it drawn; empty for none. ``read`` is what was read today,
    its temperatures of water None where they were not.
    """

    title: str
    unit: str
    points: tuple[WaterAt, ...]
    straight: tuple[tuple[float, float], ...] = ()
    condensing: float | None = None
    limit_name: str = "condensing limit"
    shutdown: float | None = None
    short: str = ""
    read: tuple[float, float | None, float | None] | None = None


def reset_chart(view: ResetView, width: float = 330.0, height: float = 190.0) -> Drawing:
    """The chart; raises ValueError with fewer than two points or a value that is not finite."""
    values = [each for point in view.points for each in (point.outdoor, point.supply, point.return_)]
    extra = [water for _, water in view.straight] + ([] if view.condensing is None else [view.condensing])
    extra += [] if view.read is None else [each for each in view.read[1:] if each is not None]
    if len(view.points) < 2 or not all(map(math.isfinite, [*values, *extra])):
        raise ValueError("a reset chart needs two or more points with finite values")
    points = sorted(view.points, key=lambda each: -each.outdoor)
    waters = [each for point in points for each in (point.supply, point.return_)] + extra
    names = _names(view, points)
    aside = max(text_width(text, 9.0) for _, text, _ in names) + 14
    low, high = rounded_out(min(waters), max(waters))
    out = [point.outdoor for point in points] + [each for each, _ in view.straight]
    out += [view.read[0]] if view.read is not None else []
    across = Axis(max(out), min(out), 30.0, width - aside)
    up = Axis(low, high, height - 30.0, 18.0)
    shapes = frame(across, up, f"outdoors, {view.unit}", f"water, {view.unit}")
    shapes += _lines(view, points, across, up)
    placed = [(up.at(value), text, look) for value, text, look in names]
    shapes += at_ends(placed, across.end, up.start - 4)
    return Drawing(view.title, _in_words(view, points), width, height, tuple(shapes))


def _lines(view: ResetView, points: list[WaterAt], across: Axis, up: Axis) -> list[Shape]:
    supply = tuple((across.at(each.outdoor), up.at(each.supply)) for each in points)
    back = tuple((across.at(each.outdoor), up.at(each.return_)) for each in points)
    shapes: list[Shape] = [Path((*supply, *reversed(back)), "water", closed=True)]
    if view.condensing is not None:
        y = up.at(view.condensing)
        shapes.append(line(across.start, y, across.end, y, "dotted"))
    if view.straight:
        ends = tuple((across.at(out), up.at(water)) for out, water in view.straight)
        shapes.append(Path(ends, "curve-dotted"))
    elif view.short:
        shapes.append(Path((supply[0], supply[-1]), "curve-dotted"))
    if view.shutdown is not None and min(p.outdoor for p in points) < view.shutdown < across.first:
        x = across.at(view.shutdown)
        shapes += [line(x, up.start, x, up.end, "dotted")]
        shapes.append(Words((x + 4, up.end + 10), f"off above {_n(view.shutdown)}", "small"))
    shapes += [Path(back, "return"), Path(supply, "supply")]
    shapes += [Disc(each, 2.6, "ring-supply") for each in supply]
    return [*shapes, *_today(view, across, up)]


def _today(view: ResetView, across: Axis, up: Axis) -> list[Shape]:
    """Today's weather as an upright, and a plus for each temperature of the water that was read."""
    if view.read is None:
        return []
    outdoor, *water = view.read
    x = across.at(outdoor)
    read = [each for each in water if each is not None]
    said = f"today {_n(outdoor)}" + (f", read {' and '.join(map(_n, read))}" if read else "")
    wide = text_width(said, 9.0)
    left = x - 5 - wide > across.start + 2
    shapes: list[Shape] = [line(x, up.start, x, up.end, "dotted")]
    for each in read:
        y = up.at(each)
        shapes += [line(x - 4, y, x + 4, y, "mark"), line(x, y - 4, x, y + 4, "mark")]
    shapes.append(Words((x - 5 if left else x + 5, up.start - 5), said, "bold", "end" if left else "start"))
    return shapes


def _names(view: ResetView, points: list[WaterAt]) -> list[tuple[float, str, str]]:
    """What each line is called at its cold end, with the value it ends at."""
    cold = points[-1]
    names = [(cold.supply, f"supply {_n(cold.supply)}", "said-supply"),
             (cold.return_, f"return {_n(cold.return_)}", "said-return")]  # fmt: skip
    if view.straight:
        names.append((min(view.straight)[1], "straight line", "quiet"))
    if view.condensing is not None:
        names.append((view.condensing, f"{view.limit_name} {_n(view.condensing)}", "quiet"))
    return names


def _n(value: float) -> str:
    return numeral(value, 0)


def _in_words(view: ResetView, points: list[WaterAt]) -> str:
    said = [f"outdoors {_n(each.outdoor)}: supply {_n(each.supply)}, return {_n(each.return_)}"
            for each in points]  # fmt: skip
    ends = " to ".join(f"{_n(water)} at {_n(out)}" for out, water in view.straight)
    more = [f"The straight line of the control runs from {ends}."] if ends else []
    if view.condensing is not None:
        more.append(f"The {view.limit_name} is a return of {_n(view.condensing)}.")
    return " ".join([f"In {view.unit}, {'; '.join(said)}.", *more])
