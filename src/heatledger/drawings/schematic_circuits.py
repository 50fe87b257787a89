"""One circuit of a schematic as a band: its branch, its runs, and its way back to the return main."""

from __future__ import annotations

from dataclasses import dataclass

from heatledger.drawings.lettering import SIZES, fitted, fitted_apart, text_width
from heatledger.drawings.schematic_view import HOME_RUN, CircuitView, RunView
from heatledger.drawings.shapes import Disc, Path, Shape, Words, box, line
from heatledger.drawings.symbols import UNIT, head, symbol

RUNG, LINK = 17.0, 20.0
FIRST, LAST, BELOW = 18.0, 16.0, 34.0
VALVE = 18.0
LADDER = 66.0
FLOW, LENGTH = 44.0, 42.0
LEAST_NAME = 22.0


@dataclass(frozen=True)
class Band:
    """Where a circuit is drawn: from its supply rail at ``left`` to its return rail at ``right``.

    ``top`` is the height of its branch and ``back`` that of its return.
    """

    circuit: CircuitView
    left: float
    right: float
    top: float

    @property
    def back(self) -> float:
        """The height of the return pipe."""
        pitch = RUNG if self.circuit.kind == HOME_RUN else LINK
        return self.top + FIRST + pitch * max(len(self.circuit.runs) - 1, 0) + LAST


def height_of(circuit: CircuitView) -> float:
    """The height that a circuit takes, down to where the next may begin."""
    return Band(circuit, 0, 0, 0).back + BELOW


def narrowest(circuit: CircuitView) -> float:
    """The least width in which a circuit can be drawn, with its longest texts cut."""
    return _runs_at(circuit, 0.0) + LADDER + 8 + LEAST_NAME + FLOW + LENGTH + 8


def band(place: Band) -> list[Shape]:
    """The circuit drawn in its band, without the rails."""
    runs = _ladder(place) if place.circuit.kind == HOME_RUN else _chain(place)
    return [*runs, *_branch(place), *_back(place)]


def _stops(circuit: CircuitView) -> list[str]:
    """What stands in the branch, in the order of the water."""
    return [*(["circulator"] if circuit.circulator else []), *(["zone valve"] if circuit.zone_valve else [])]


def _runs_at(circuit: CircuitView, left: float) -> float:
    return left + 14.0 + VALVE * max(len(_stops(circuit)), 1)


def _text_at(place: Band) -> float:
    """Where the texts begin: right of the ladder, or right of the chain."""
    start = _runs_at(place.circuit, place.left)
    return start + (LADDER + 8 if place.circuit.kind == HOME_RUN else 20.0)


def _branch(place: Band) -> list[Shape]:
    start = _runs_at(place.circuit, place.left)
    stops = _stops(place.circuit)
    shapes: list[Shape] = [line(place.left, place.top, start, place.top, "supply")]
    for number, name in enumerate(stops):
        shapes += symbol(name, (place.left + 19 + VALVE * number, place.top))
    shapes.append(head((place.left + 9.5, place.top), (1, 0), "flow-supply", 5.5))
    named = ", ".join(each for each in (place.circuit.name, place.circuit.circulator) if each)
    at, size = start + 9, 9.0
    flow = place.circuit.flow
    shapes.append(Words((place.right - 8, place.top + 3), flow, "bold", "end"))
    room = place.right - 8 - at - (6.0 * len(flow) + 6 if flow else 0.0)
    shapes.append(Words((at, place.top + 3), fitted(named, room, size), "bold"))
    return [each for each in shapes if not isinstance(each, Words) or each.text]


def _ladder(place: Band) -> list[Shape]:
    """The manifolds upright, one rung a run between them."""
    supply = _runs_at(place.circuit, place.left)
    back = supply + LADDER
    first = place.top + FIRST
    last = place.back - LAST
    shapes: list[Shape] = []
    for number, (run, name) in enumerate(zip(place.circuit.runs, _names(place), strict=True)):
        y = first + RUNG * number
        shapes += [line(supply, y, supply + 24, y, "supply-run"), line(supply + 44, y, back, y, "return-run")]
        shapes += symbol(run.emitter, (supply + 34, y), unit=UNIT * 0.86)
        if run.balancing:
            shapes += symbol("balancing valve", (supply + 11, y), unit=UNIT * 0.86)
        shapes.append(head((supply + 23.5, y), (1, 0), "flow-supply", 5.0))
        shapes += symbol("shutoff", (back - 10, y), unit=UNIT * 0.86)
        shapes += _texts(place, run, name, y)
    bars = [box(supply - 2, place.top - 1, 4, last - place.top + 7, "manifold-supply"),
            box(back - 2, first - 6, 4, place.back - first + 7, "manifold-return")]  # fmt: skip
    return [*shapes, *bars, line(back + 2, place.back, place.right, place.back, "return")]


def _chain(place: Band) -> list[Shape]:
    """The emitters of a loop one after another: water of the first goes on to the next."""
    x = _runs_at(place.circuit, place.left)
    last = place.back - LAST
    shapes: list[Shape] = [line(x, place.top, x, last, "supply")]
    shapes.append(Path(((x, last), (x, place.back), (place.right, place.back)), "return"))
    for number, (run, name) in enumerate(zip(place.circuit.runs, _names(place), strict=True)):
        y = place.top + FIRST + LINK * number
        shapes.append(head((x, y - 5), (0, 1), "flow-supply", 5.0))
        shapes += symbol(run.emitter, (x, y))
        shapes += _texts(place, run, name, y)
    return shapes


def _columns(place: Band) -> tuple[float, float]:
    """Widths of the columns of lengths and of flows, each with the gap before it; 0 for one without texts."""
    runs = place.circuit.runs
    lengths = max((text_width(each.length) for each in runs), default=0.0)
    flows = max((text_width(each.flow) for each in runs), default=0.0)
    return (min(lengths, LENGTH) + 6 if lengths else 0.0), (min(flows, FLOW) + 6 if flows else 0.0)


def _names(place: Band) -> list[str]:
    """The rooms as they are printed, told apart where they must be cut."""
    room = place.right - 8 - sum(_columns(place)) - _text_at(place)
    return fitted_apart([each.room for each in place.circuit.runs], room, SIZES["text"])


def _texts(place: Band, run: RunView, name: str, y: float) -> list[Shape]:
    """Room, flow and length beside a run, in columns that end at the return rail."""
    end = place.right - 8
    lengths, _ = _columns(place)
    shapes = [
        Words((end, y + 3), fitted(run.length, LENGTH), "small", "end"),
        Words((end - lengths, y + 3), fitted(run.flow, FLOW), "small", "end"),
        Words((_text_at(place), y + 3), name, "text"),
    ]
    return [each for each in shapes if each.text]


def _back(place: Band) -> list[Shape]:
    """What stands on the return of a circuit: thermometer, purge drain, shutoff toward the boiler."""
    y = place.back
    end = place.right
    shapes: list[Shape] = [
        Disc((end - 56, y), 1.7, "ink"), line(end - 56, y, end - 56, y + 8, "cold"),
        *symbol("thermometer", (end - 56, y + 12.5), unit=UNIT * 0.9),
        Disc((end - 38, y), 1.7, "ink"), *symbol("purge drain", (end - 38, y), unit=UNIT),
        *symbol("shutoff", (end - 22, y)), head((end - 6, y), (1, 0), "flow-return", 5.5),
    ]  # fmt: skip
    return shapes
