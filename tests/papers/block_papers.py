"""A paper with every kind of block in it, in the words of any reader."""

from __future__ import annotations

from heatledger.drawings.cause_bar import cause_swatch
from heatledger.ledger.dimensions import HEAT_RATE, TEMPERATURE, VOLUME_FLOW
from heatledger.ledger.presets import Preset
from heatledger.ledger.show import show
from heatledger.ledger.sources import Standing
from heatledger.papers import blocks as b
from heatledger.papers.heat_loss_data import Entry, EntryGroup, FindingLine, Head, Reference
from heatledger.papers.workings_data import Answer, ColumnRow, Line, SourceUse, Token, Working, WorkingGroup

HEAD = Head(
    "A paper of every block", "Ferrow house", "14 Kiln Lane", "6 December 2026", "J. Ondry", "heatledger 1",
    draft="Draft, not for installation", invented="Invented demo job",
)  # fmt: skip
CAUTION = "Gas, vent and electrical work belongs to licensed trades and to the local code."


def every_kind(units: Preset) -> b.Paper:
    heat, flow = show(1500.0, units, HEAT_RATE), show(1e-4, units, VOLUME_FLOW)
    supply = show(344.0, units, TEMPERATURE)
    blocks = (
        b.Paragraph("The first thing said, in serif.", "lead"),
        b.Heading("How much it gives"),
        b.Paragraph((
            "It gives ", b.Run(heat, "bold", key="2·1"), " at ", b.Run(supply, key="3·14", known="assumed"),
            ", ", b.Run("a page", standing=Standing.SEEN.value), " and ", b.Run("short", "bold",
            mark="must fix"),
            ", name ", b.Run("", blank=60.0), " ", b.Run("yes", box=True),
        )),
        b.Frame("Before anything else.", (CAUTION, ("Never plug a ", b.Run("relief valve", "bold"), "."))),
        *forms(supply), *tables(units, heat, flow), *lists(heat),
        b.PageBreak(),
        b.Flow((workings(heat), b.Tape((tape(heat),), "The number at the end is the line of the job."))),
    )  # fmt: skip
    return b.Paper(HEAD, blocks)


def forms(supply: str) -> tuple[b.Block, ...]:
    readings = (b.Blank("Draft", "Pa", 40.0), b.Blank("Spillage", options=("none", "some")))
    return (
        b.Heading("To fill in"),
        b.Blanks((b.Blank("Plate"), b.Blank("Fuel", options=("gas", "oil")), b.Blank("Supply", "°F", 50.0)),
        3),
        b.Checklist((
            b.Check("1", "Air out.", "Open the highest vent.", ("Water runs to ", b.Run(supply, key="7·2"),
            "."),
                    readings, "Water can scald."),
            b.Check("2", "Glycol.", "", "Does not apply: plain water.", applies=False),
        )),
        b.Grid(14.0, 5, 8, "One square is one foot."),
    )  # fmt: skip


def tables(units: Preset, heat: str, flow: str) -> tuple[b.Block, ...]:
    columns = (
        b.Column("Room", width="1fr"), b.Column("Heat", "right", unit="as shown"),
        b.Column("Flow", "right", "70pt"), b.Column("State", "center"),
    )  # fmt: skip
    rows = (
        b.Row((b.Cell("Ground floor", span=3), b.NOTHING), "group"),
        b.Row((b.Cell("Kitchen"), b.Cell(heat, "3·1", "told"), b.Cell(flow, "4·2"), b.Cell("short",
        mark="must fix"))),
        b.Row((b.Cell("Hall"), b.Cell(""), b.NONE, b.Cell("well", mark="fine"))),
        b.Row((b.Cell("Study", drawing=cause_swatch("walls")), b.Cell(heat,
        standing=Standing.PRACTICE.value), b.NOTHING,
               b.Cell("ask", mark="decide"))),
        b.Row((b.Cell("House"), b.Cell(heat, "3·9", total=True), b.NOTHING, b.NOTHING), "total"),
    )  # fmt: skip
    blank = b.Table((b.Column("Room", width="1fr"), b.Column("Length", width="80pt")),
                    (b.Row((b.NOTHING, b.NOTHING)),) * 3, ruled=True, row_height=20.0)  # fmt: skip
    return (
        b.Heading("In a table"),
        b.Table(columns, rows, f"Read by a reader of {units.name} units.", whole=True),
        b.Columns((
            (b.Heading("Left"), b.Facts((
                b.Fact("Supply", heat, "3·2", "as read", "measured", Standing.YOURS.value), b.Fact("Return",
                ""),
            ), ("What", "Value", "How it is known"))),
            (b.Heading("Right"), blank),
        ), (1.2, 1.0)),
    )  # fmt: skip


def lists(heat: str) -> tuple[b.Block, ...]:
    found = FindingLine("must fix", "Kitchen", "It is short.", f"It gives {heat}.", ("add a panel",), "3·4",
                        source=SourceUse("by its weight", Standing.JUDGMENT.value))  # fmt: skip
    return (
        b.Heading("Open", 2),
        b.Findings((found,)),
        b.Findings((), "Nothing else is open."),
        b.Questions((b.Question("Will it be warm?", ("Yes, at ", b.Run(heat, key="2·1"), ".")),)),
        b.Picture(cause_swatch("walls"), "A swatch as a picture.", 30.0),
        b.References((Reference("BOOK: A book", "rules", (SourceUse("page 3", Standing.SEEN.value),)),)),
        b.Paragraph("A small note at the end.", "small"),
    )


def workings(heat: str) -> b.Workings:
    number, _, unit = heat.rpartition(" ")
    made = Working(
        "2·1", "Heat loss", (ColumnRow("", number, unit, "walls", "1·1", "told"),), Answer(number, unit)
    )
    line = Line("2·2", "Share", (Token("number", number), Token("key", "1·1")), "1", "")
    return b.Workings((WorkingGroup("House", (made,), (line,)),))


def tape(heat: str) -> EntryGroup:
    return EntryGroup("Site", (Entry("1·1", "Outdoor", heat, "12", "told"),))
