"""The curve of a circulator, the curve of the pipes, what is needed and where it runs."""

from __future__ import annotations

import math
from dataclasses import dataclass

from heatledger.drawings.band_rule import numeral
from heatledger.drawings.chart_frame import Axis, at_ends, cross, frame, free_words, rounded_out
from heatledger.drawings.lettering import lines_of, text_box, text_width
from heatledger.drawings.shapes import Disc, Drawing, Path, Point, Shape, Words, line

USUAL_POWER = 1.85
"""How the curve of pipes bends where only one point of it is known; it draws and computes nothing."""
LEAST_POWER, MOST_POWER = 1.5, 2.1
STEPS, LEAST_TEXT, PIPES = 40, 62.0, "pipes"
WHOLE_FROM = 100.0
"""A flow of so many units is said without decimals."""


@dataclass(frozen=True)
class PumpView:
    """What a pump chart shows, all flows and heads in the units shown.

    ``curve`` are three points of the circulator from no flow on. ``needed`` and ``runs`` are points of
    flow and head with the texts said of them; each may be left out. ``alone`` are where it runs while only
    a part of the pipes is open, each with the name of that part; ``group`` parts thousands.
    """

    title: str
    name: str
    flow_unit: str
    head_unit: str
    curve: tuple[Point, Point, Point] | tuple[()]
    needed: Point | None = None
    runs: Point | None = None
    needed_text: str = ""
    runs_text: str = ""
    alone: tuple[tuple[str, Point], ...] = ()
    group: str = ","


def pump_chart(view: PumpView, width: float = 300.0, height: float = 190.0) -> Drawing:
    """The chart; raises ValueError when there is nothing to draw or a value is not finite."""
    marked = [each for each in (view.needed, view.runs) if each is not None]
    points = [*view.curve, *marked, *(point for _, point in view.alone)]
    if not points or not all(math.isfinite(each) and each >= 0 for point in points for each in point):
        raise ValueError("a pump chart needs points with flows and heads of zero or more")
    farthest = view.curve[2][0] if view.curve else 1.4 * max(flow for flow, _ in marked)
    most = max(farthest, *(1.15 * flow for flow, _ in marked)) if marked else farthest
    tall = max(head for _, head in points) * 1.15
    aside = text_width(view.name, 9.0) + 16
    across = Axis(0.0, rounded_out(0.0, most, 8)[1], 30.0, width - min(aside, width / 3))
    up = Axis(0.0, rounded_out(0.0, tall)[1], height - 30.0, 18.0)
    shapes = frame(across, up, view.flow_unit, f"head, {view.head_unit}", view.group)
    drawn = _pump(view.curve, across, up) if view.curve else ()
    if drawn:
        shapes.append(Path(drawn, "curve"))
        shapes += at_ends([(drawn[-1][1], view.name, "bold")], drawn[-1][0], up.start - 4)
    shapes += _system(marked, across, up)
    if view.alone:
        shapes = _crowded(view, across, up, shapes)
    else:
        shapes += _marks(view, across, up, width, drawn)
    return Drawing(view.title, _in_words(view), width, height, tuple(shapes))


def _crowded(view: PumpView, across: Axis, up: Axis, drawn: list[Shape]) -> list[Shape]:
    """Rings of the parts that run alone as well; each text where it touches neither a curve nor a text."""
    curves: list[Shape] = []
    rings: list[Shape] = []
    names: list[tuple[str, Point]] = []
    for number, (name, point) in enumerate(sorted(view.alone, key=lambda each: each[1][0])):
        if min(point) > 0:
            through = _power_curve(point, USUAL_POWER, across, up)
            curves.append(Path(through, ("curve-dotted", "curve-dashed")[number % 2]))
            rings.append(Disc((across.at(point[0]), up.at(point[1])), 2.8, "ring"))
            names.append((name, through[-1]))
    names += [(each.text, each.at) for each in drawn if isinstance(each, Words) and each.text == PIPES]
    drawn = [each for each in drawn if not (isinstance(each, Words) and each.text == PIPES)]
    if view.runs is not None:
        rings.append(Disc((across.at(view.runs[0]), up.at(view.runs[1])), 3.2, "ring"))
        names.append((view.runs_text, (across.at(view.runs[0]), up.at(view.runs[1]))))
    if view.needed is not None:
        x, y = across.at(view.needed[0]), up.at(view.needed[1])
        rings += [line(x, y, x, up.start, "dotted"), *cross((x, y))]
        names.append((view.needed_text, (x, y)))
    lines = [each for each in (*drawn, *curves, *rings) if isinstance(each, Path) and each.look != "hair"]
    field = (across.start + 3, up.end - 17, across.end + 40, up.start - 3)
    taken = [text_box(each) for each in drawn if isinstance(each, Words)]
    made = [*drawn, *curves, *rings]
    for text, point in names:
        words = free_words(text, point, taken, lines, field)
        if words is not None:
            made.append(words)
            taken.append(text_box(words))
    return made


def _pump(curve: tuple[Point, ...], across: Axis, up: Axis) -> tuple[Point, ...]:
    """A smooth line through the three points: shutoff head less a power of the flow."""
    (_, top), (q1, h1), (q2, h2) = curve
    power = 2.0
    if top > h1 > h2 and q2 > q1 > 0:
        power = math.log((top - h2) / (top - h1)) / math.log(q2 / q1)
    flows = [q2 * number / STEPS for number in range(STEPS + 1)]
    return tuple((across.at(q), up.at(top - (top - h2) * (q / q2) ** power)) for q in flows)


def _system(marked: list[Point], across: Axis, up: Axis) -> list[Shape]:
    """The curve of the pipes through where it runs, and what is needed where one curve can be both."""
    if not marked or min(min(point) for point in marked) <= 0:
        return []
    (q1, h1), (q2, h2) = marked[0], marked[-1]
    power = USUAL_POWER
    if abs(math.log(q2 / q1)) > 0.02:
        through_both = math.log(h2 / h1) / math.log(q2 / q1)
        power = through_both if LEAST_POWER <= through_both <= MOST_POWER else USUAL_POWER
    drawn = _power_curve((q2, h2), power, across, up)
    x, y = drawn[-1]
    return [Path(drawn, "curve-thin"), Words((x - 6, y + 6), PIPES, "small", "end")]


def _power_curve(through: Point, power: float, across: Axis, up: Axis) -> tuple[Point, ...]:
    """Head as a power of flow through a point, as far as the chart reaches; the point is one of its own."""
    flow, head = through
    farthest = min(across.last, flow * (up.last / head) ** (1 / power))
    flows = sorted({farthest * number / (2 * STEPS) for number in range(2 * STEPS + 1)} | {flow})
    return tuple((across.at(q), up.at(head * (q / flow) ** power)) for q in flows)


def _marks(view: PumpView, across: Axis, up: Axis, width: float, curve: tuple[Point, ...]) -> list[Shape]:
    """Ring where it runs, named above the curve; cross where it is needed, named beside the pipes' curve."""
    shapes: list[Shape] = []
    if view.needed is not None:
        x, y = across.at(view.needed[0]), up.at(view.needed[1])
        shapes += [line(x, y, x, up.start, "dotted"), *cross((x, y))]
        left = x - across.start - 14
        beside = left > LEAST_TEXT
        lines = lines_of(view.needed_text, left if beside else width - x - 12)
        for number, text in enumerate(lines):
            low = min(y + (3 if beside else 12), up.start - 6 - 10.5 * (len(lines) - 1)) + 10.5 * number
            place = (x - 8, low) if beside else (x + 10, low)
            shapes.append(Words(place, text, "small", "end" if beside else "start"))
    if view.runs is not None:
        x, y = across.at(view.runs[0]), up.at(view.runs[1])
        start = x - 2 - text_width(view.runs_text)
        above = min([y, *(height for place, height in curve if start < place < x)])
        shapes.append(Disc((x, y), 3.2, "ring"))
        if start > across.start:
            shapes.append(Words((x - 2, above - 7), view.runs_text, "small", "end"))
        else:  # So little flow stands close to the axis, and the curve of the pipes rises steeply there.
            shapes.append(Words((x + 12, y - 7), view.runs_text, "small"))
    return [each for each in shapes if not isinstance(each, Words) or each.text]


def _in_words(view: PumpView) -> str:
    def said(point: Point) -> str:
        flow = numeral(point[0], 2 if point[0] < WHOLE_FROM else 0, view.group)
        return f"{flow} {view.flow_unit} at {numeral(point[1], 1)} {view.head_unit}"

    parts = [f"{view.name} gives {', '.join(map(said, view.curve))}"] if view.curve else []
    parts += [f"needed {said(view.needed)}"] if view.needed else []
    parts += [f"it runs at {said(view.runs)}"] if view.runs else []
    parts += [f"{name} alone at {said(point)}" for name, point in view.alone]
    return f"{'; '.join(parts)}."
