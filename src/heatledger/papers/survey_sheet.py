"""The survey sheet: a blank to take to the house, with what to measure and why. It needs no design."""

from __future__ import annotations

from heatledger import __version__
from heatledger.ledger import dimensions as d
from heatledger.ledger.dimensions import Dimension
from heatledger.ledger.presets import Preset
from heatledger.papers import blocks as b
from heatledger.papers.heat_loss_data import Head
from heatledger.papers.paper import paper_pdf
from heatledger.papers.survey_words import AIR, BILLS, BOILER, BUILT_OF, HEIGHTS, PHOTOS, SAFETY, WATER, Ask
from heatledger.papers.words import floors_word
from heatledger.papers.workings_data import Known

TITLE = "Survey sheet"
INTRO = (
    "One sheet for each {floor}, pages 2 and 3 once a house. Take a tape, a pencil and a lamp. Write what "
    "you see, also where you are not sure, and draw under every number how you know it:"
)
HOW_KNOWN: tuple[Known, ...] = ("measured", "from plans", "told", "assumed")
LINE, ASKED = 18.0, 21.5
ROWS_OF_SIDES, ROWS_OF_EMITTERS = 14, 9


def survey_pdf(units: Preset, sheet: str = "") -> bytes:
    """The blank sheet for one reader, on ``letter`` or ``a4``, else on the sheet of the units."""
    return paper_pdf(survey_sheet(units), sheet or units.paper)


def survey_sheet(units: Preset) -> b.Paper:
    """What to measure and why: the plan of a floor, the house, the heating that is there."""
    head = Head(TITLE, "", "", "", "", f"heatledger {__version__}")
    blocks = (*_plan(units), b.PageBreak(), *_house(units), b.PageBreak(), *_heating(units))
    return b.Paper(head, blocks)


def _unit(units: Preset, dimension: Dimension) -> str:
    if dimension is d.LENGTH and units.feet_and_inches:
        return "ft, in"
    return units.shown(dimension).unit.text


def _plan(units: Preset) -> tuple[b.Block, ...]:
    """The first page: who, where, a grid for the plan, sides, windows and doors."""
    feet, length = units.feet_and_inches, _unit(units, d.LENGTH)
    floor = floors_word(units)
    known: list[str | b.Run] = [INTRO.format(floor=floor), "  "]
    for each in HOW_KNOWN:
        known += [b.Run(each, known=each), "   "]
    square = "1 foot" if feet else "half a meter"
    heavy = "5 feet" if feet else "2.5 m"
    note = (
        f"A square is {square}, a heavy line {heavy}. Draw the inside faces of the outside walls, mark "
        "north, name the rooms, and number windows W1, W2 and doors D1, D2. Add up each row of rooms and "
        "hold it against the length taped outside, less the walls: a room that does not close is found "
        "here, not later."
    )
    sides = (
        b.Column("Room", width="1.2fr"), b.Column("Side, faces", width="1fr"),
        b.Column("Length", width="0.9fr", unit=length), b.Column("Beyond it", width="1fr"),
    )  # fmt: skip
    openings = (
        b.Column("Mark", width="0.6fr"), b.Column("Width", width="0.9fr", unit=length),
        b.Column("Height", width="0.9fr", unit=length), b.Column("Panes, frame, label", width="1.6fr"),
    )  # fmt: skip
    return (
        b.Blanks((b.Blank("Job"), b.Blank("Address"), b.Blank("Day"), b.Blank("By"),
                  b.Blank(f"This {floor}"), b.Blank("Sheet", "of", 60.0)), 2),
        b.Paragraph(tuple(known)),
        b.Grid(12.6, 5, 19, note),
        b.Columns((
            (b.Heading("Sides of each room"), _form(sides, ROWS_OF_SIDES)),
            (b.Heading("Windows and doors"), _form(openings, ROWS_OF_SIDES)),
        )),
    )  # fmt: skip


def _form(columns: tuple[b.Column, ...], rows: int) -> b.Table:
    """A ruled table without a word in it."""
    blank = b.Row((b.NOTHING,) * len(columns))
    return b.Table(columns, (blank,) * rows, ruled=True, row_height=LINE)


def _asks(asks: tuple[Ask, ...], units: Preset) -> b.Table:
    """What to write, room to write it, and why it matters."""
    columns = (
        b.Column("What", width="1.2fr"), b.Column("Write here", width="1.2fr"), b.Column("", width="58pt"),
        b.Column("Why", width="1.3fr"),
    )  # fmt: skip
    return b.Table(columns, tuple(_ask(each, units) for each in asks), ruled=True, row_height=ASKED)


def _ask(ask: Ask, units: Preset) -> b.Row:
    what, why = b.Cell(ask.what), b.Cell((b.Run(ask.why, "small"),))
    if ask.boxes:
        runs: list[str | b.Run] = []
        for each in ask.boxes:
            runs += [b.Run(each, box=True), "  "]
        return b.Row((what, b.Cell(tuple(runs[:-1]), span=2), why))
    if ask.unit is None:
        return b.Row((what, b.Cell(" ", span=2), why))
    return b.Row((what, b.NOTHING, b.Cell((b.Run(_unit(units, ask.unit), "small"),)), why))


def _house(units: Preset) -> tuple[b.Block, ...]:
    """The second page: heights, what it is built of, air and fuel."""
    return (
        b.Heading("Heights"), _asks(HEIGHTS, units),
        b.Heading("What it is built of"), _asks(BUILT_OF, units),
        b.Heading("Air"), _asks(AIR, units),
        b.Heading("Fuel bills of a winter"), _asks(BILLS, units),
        b.Heading("Photos"), b.Blanks(tuple(b.Blank("", options=(each,)) for each in PHOTOS), 3),
    )  # fmt: skip


def _heating(units: Preset) -> tuple[b.Block, ...]:
    """The third page: emitters on the wall, the boiler room, water, what is looked for, photos."""
    length = _unit(units, d.LENGTH)
    emitters = (
        b.Column("Room", width="1.1fr"), b.Column("Kind: fins, columns, panel", width="1.5fr"),
        b.Column("Sections", width="0.7fr"), b.Column("Height", width="0.7fr",
        unit="in" if units.feet_and_inches else "mm"),
        b.Column("Length of fins", width="0.9fr", unit=length), b.Column("Free wall", width="0.9fr",
        unit=length),
    )  # fmt: skip
    return (
        b.Frame("Safety comes before any number.", SAFETY),
        b.Heading("Emitters on the wall, or free wall"),
        _form(emitters, ROWS_OF_EMITTERS),
        b.Paragraph("They give what the house gets today; the free wall bounds what can be hung.", "small"),
        b.Heading("Boiler room"), _asks(BOILER, units),
        b.Heading("Water and pressure"), _asks(WATER, units),
    )  # fmt: skip
