"""What matters most to a figure: the entries that move it, longest bar first."""

from __future__ import annotations

from dataclasses import dataclass

from heatledger.drawings.chart import NARROW, Chart, ChartCell, unit_of
from heatledger.drawings.figure_words import without_unit
from heatledger.drawings.hatches import hatched
from heatledger.drawings.lettering import fitted, text_width
from heatledger.drawings.naming import headed
from heatledger.drawings.once import once_a_design
from heatledger.drawings.shapes import Drawing, Shape, Words, box, line
from heatledger.ledger.figures import Figure, Leaf
from heatledger.ledger.presets import Preset
from heatledger.ledger.show import show
from heatledger.steps.design import Design
from heatledger.studies.by_cause import causes_of
from heatledger.studies.uncertainty import Swing, band, half_range_text

TITLE = "What matters most"
MOST_MATTERS = 7
ROW, TOLD, SWING = 28.0, 0.5, 44.0
STROKES = {"measured": "known-measured", "from plans": "known-plans", "told": "known-plans",
           "assumed": "known-assumed"}  # fmt: skip


@dataclass(frozen=True)
class Matter:
    """One input: its name, its value and how far that may be off, its swing in the unit shown, its cause.

    ``entry`` is the figure itself; None where several stand together.
    """

    name: str
    value: str
    swing: str
    half: float
    cause: str
    known: str
    entry: Figure | None


def matters_of(house: Design, units: Preset, figure: Figure, swings: tuple[Swing, ...]) -> list[Matter]:
    """The inputs that move a figure most, longest first, at most seven."""
    if not swings:
        return []
    listed = swings[:MOST_MATTERS]
    found = []
    for each, cause in zip(listed, causes_of(house, listed), strict=True):
        entry = each.entries[0] if len(each.entries) == 1 else None
        name = headed(entry, house, "House") if entry is not None else each.words
        off = half_range_text(each, units)
        value = f"{show(entry, units)}, {off}" if entry is not None else off
        origin = each.entries[0].origin
        known = origin.known if isinstance(origin, Leaf) else ""
        found.append(Matter(name, value, _swing(each.swing, figure, units), each.swing, cause, known, entry))
    return found


def _swing(swing: float, figure: Figure, units: Preset) -> str:
    """How far the figure moves, in its own unit; a temperature moves by a difference."""
    shown = units.shown(figure.dimension)
    number = swing / shown.unit.factor
    places = shown.places
    if not figure.dimension.absolute:
        text = show(swing, units, figure.dimension, places=places)
        return f"± {without_unit(text, figure, units)}"
    return f"± {number:.{places}f}"


def matters_note(swings: tuple[Swing, ...], what: str = "load") -> str:
    """How many inputs are not listed, and how a swing comes about."""
    more = len(swings) - MOST_MATTERS
    rest = f"and {more} smaller. " if more > 0 else ""
    return (
        f"{rest}A swing is how far the input may be off times how fast the {what} changes with it."
        if swings
        else ""
    )


@once_a_design
def what_matters(house: Design, units: Preset, path: str, width: float = NARROW) -> Chart | None:
    """The inputs that move the figure at a path; None where nothing does, or it has no value.

    Raises NoSuchFigure for a path that holds none.
    """
    made = band(house, path)
    found = matters_of(house, units, made.figure, made.swings)
    if not found or not max(each.half for each in found) > 0:
        return None
    most = found[0]
    title = house.names.title(made.figure)
    unit = unit_of(units, made.figure.dimension)
    unit = "" if unit == "1" else unit
    said = f"{most.name} moves it most, {f'{most.swing} {unit}'.strip()}."
    rows = tuple(
        (ChartCell(each.name, "" if each.entry is None else house.names.path(each.entry)),
         ChartCell(each.value), ChartCell(each.swing))
        for each in found
    )  # fmt: skip
    head = ("Input", "As taken", f"Moves it by, {unit}" if unit else "Moves it by")
    drawing = matter_rows(f"{TITLE}: {title}", said, found, width)
    note = matters_note(made.swings, "figure")
    return Chart(f"matters-{path.replace('/', '-')}", TITLE, drawing, said, head, rows, note)


def matter_rows(title: str, words: str, rows: list[Matter], width: float = NARROW) -> Drawing:
    """A row an input: name, value over its line type, bar about the result, swing."""
    swing = max(SWING, *(text_width(each.swing, 9.0) + 10 for each in rows))
    start, end = width * TOLD, width - swing
    middle, longest = (start + end) / 2, max(each.half for each in rows)
    shapes: list[Shape] = []
    for number, each in enumerate(rows):
        y = ROW * number
        shapes.append(Words((0, y + 11), fitted(each.name, start - 8, 9.0), "text"))
        told = fitted(each.value, start - 8)
        shapes.append(Words((0, y + 22), told, "small"))
        if each.known in STROKES:
            shapes.append(line(0, y + 24.4, text_width(told) * 0.92, y + 24.4, STROKES[each.known]))
        half = max((end - start) / 2 * each.half / longest, 0.8)
        bar = box(middle - half, y + 9, 2 * half, 10, "plain")
        shapes += hatched(bar.points, each.cause) if each.cause else (bar,)
        shapes.append(Words((width, y + 17), each.swing, "text", "end"))
        shapes.append(line(0, y + ROW, width, y + ROW, "hair"))
    shapes.append(line(middle, 2, middle, ROW * len(rows), "mark-thin"))
    return Drawing(title, words, width, ROW * len(rows) + 2, tuple(shapes))
