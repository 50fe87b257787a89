"""The inspector's set: who and which code, design conditions, loads and plant, safety, tests, open items."""

from __future__ import annotations

from heatledger.ledger.dimensions import RATIO
from heatledger.ledger.figures import Figure
from heatledger.papers import blocks as b
from heatledger.papers import front
from heatledger.papers.answers import RESTS_ON, said
from heatledger.papers.inspector_questions import inspector_questions
from heatledger.papers.inspector_tables import (
    emitters_table,
    parts_table,
    pipe_table,
    rooms_table,
    safety_table,
    test_table,
    to_plant,
)
from heatledger.papers.owner_rooms import has_emitters
from heatledger.papers.printing import Printing
from heatledger.papers.workings_from import known_of
from heatledger.steps.sequence import sequence_of

TITLE = "Inspector's set"
STAGES = ("heat-loss", "bills", "emitters", "circuits", "boiler_room", "controls", "startup")
INTRO = (
    "Loads, plant, safety parts, pipes, tests and controls of this job, for the permit. A small number "
    "such as 2·1 names sheet and line of the paper Workings, where that figure is worked out. A rule is a "
    "blank: the job does not know it, and nothing was put in its place."
)
DEFERS = "This set gives loads and settings. The adopted code and its inspector decide what may be built."
TRADES = (
    "Not worked out here, to be shown by the trade that does it. What stays on an old chimney when a "
    "boiler leaves it must be looked at too."
)
NOTES = "Notes, and what could not be checked, stand in the review of the design."
ASKED = "Twenty questions that inspectors ask, and where the proof of each answer stands."
WIDE = 120.0


def inspector_paper(printing: Printing) -> b.Paper:
    """The set as one paper; blanks where the job does not know."""
    blocks: list[b.Block] = [b.Paragraph(INTRO), _front(printing)]
    blocks += [b.Heading("What it is built of, and what each part loses"), parts_table(printing)]
    blocks += [b.Heading("Loads room by room"), rooms_table(printing)]
    blocks += [b.Heading("From the loss to the plant"), to_plant(printing), *_appliance(printing)]
    blocks += _emitters(printing)
    blocks += [b.Heading("Safety parts and pressures"), safety_table(printing)]
    blocks += [*_pipes(printing), b.Heading("Pressure tests"), test_table(printing), *_sequence(printing)]
    blocks += [b.Heading("Open items"), _open(printing), b.Paragraph(NOTES, "small")]
    blocks += [b.Heading("Twenty questions"), b.Paragraph(ASKED, "small"), inspector_questions(printing)]
    blocks += [b.Heading("Signatures"), _signatures(), printing.caution(DEFERS)]
    blocks += [b.Paragraph(RESTS_ON, "small"), b.Flow((printing.sources(*STAGES, sheets=range(2, 8)),))]
    return b.Paper(printing.head(TITLE), tuple(blocks))


def or_blank(text: str, wide: float = WIDE) -> b.Text:
    """A text of the job, or a rule to write on."""
    return text if text else (b.Run("", blank=wide),)


def _front(printing: Printing) -> b.Columns:
    left = (b.Heading("Who, and to which code"), _who(printing))
    right = (b.Heading("Design conditions"), _conditions(printing))
    return b.Columns((left, right), (1.0, 1.15))


def _who(printing: Printing) -> b.Table:
    job, head = printing.design.job, printing.head(TITLE)
    codes = job.system.codes
    rows = tuple(
        b.Row((b.Cell(name), b.Cell(or_blank(value))))
        for name, value in (
            ("Permit number", ""), ("Code adopted, edition", codes.adopted), ("Authority", codes.authority),
            ("Prepared by", job.prepared_by), ("License", codes.licence), ("Date", job.date),
            ("Revision", head.revision), ("Made with", head.version),
        )
    )  # fmt: skip
    return b.Table((b.Column("Title block", width="1fr"), b.Column("", width="1.25fr")), rows)


def _conditions(printing: Printing) -> b.Facts:
    """Design conditions and the air that each room has to warm."""
    facts = [
        b.Fact(each.name, each.value, each.key, each.note, each.known, each.standing)
        for each in front.conditions(printing.design, printing.found)
    ]
    stated = printing.design.job.heated_floor_area
    if stated is not None:
        facts.append(printing.fact("Floor area as stated", stated))
    return b.Facts(
        (*facts, *(printing.fact("Air changes an hour", each, note) for each, note in airs(printing)))
    )


def airs(printing: Printing) -> list[tuple[Figure, str]]:
    """The air changes of the rooms, each entry once with the rooms it holds for."""
    by_entry: dict[int, tuple[Figure, list[str]]] = {}
    rooms = printing.design.losses.rooms
    for each in rooms.values():
        by_entry.setdefault(id(each.air.changes), (each.air.changes, []))[1].append(each.name)
    return [
        (changes, "all rooms" if len(names) == len(rooms) > 1 else ", ".join(names))
        for changes, names in by_entry.values()
    ]


def _plate(printing: Printing, name: str, figure: Figure) -> b.Fact:
    """A line of the plate; a ratio as a percentage, as in the answers."""
    if figure.dimension is not RATIO:
        return printing.fact(name, figure)
    return b.Fact(name, printing.percent(figure), printing.found.key(figure), known=known_of(figure))


def _appliance(printing: Printing) -> list[b.Block]:
    """The boiler as chosen, with blanks for its listing and for what other trades show."""
    boiler = printing.design.job.system.plant.boiler
    facts: list[b.Fact] = []
    if boiler is not None:
        facts = [
            b.Fact("Name", or_blank(boiler.name, 60.0)), b.Fact("Fuel, kind",
            f"{boiler.fuel}, {boiler.kind}"),
            *(
                _plate(printing, name, each)
                for name, each in (
                    ("Input", boiler.input), ("Output", boiler.output), ("Efficiency", boiler.efficiency),
                    ("Least output", boiler.least_output), ("Highest pressure", boiler.highest_pressure),
                )
                if each is not None
            ),
        ]  # fmt: skip
    by_trades = b.Blanks((
        b.Blank("Listing and standard"), b.Blank("Vent: kind, route, terminal"),
        b.Blank("Combustion air: openings"),
        b.Blank("Fuel pipe: all inputs, length, size"), b.Blank("What else draws air in the room"),
    ))  # fmt: skip
    left: tuple[b.Block, ...] = (b.Paragraph("The appliance is not chosen yet."),)
    if facts:
        left = (b.Facts(tuple(facts)),)
    return [
        b.Heading("Appliance, vent, air and fuel"),
        b.Columns((left, (b.Paragraph(TRADES, "small"), by_trades)), (1.1, 1.0)),
    ]


def _emitters(printing: Printing) -> list[b.Block]:
    if not has_emitters(printing):
        return [b.Heading("Emitters"), b.Paragraph("Emitters are not given yet.")]
    house, run = printing.design.emitters.house, printing.run
    opening = said(
        "Design supply ", (run(house.supply, bold=True),), ", temperature drop (ΔT) ", (run(house.drop),),
        ", mean water ", (run(house.mean_water),), ". Lowest supply that serves every room: ",
        (run(house.lowest_supply),), ".",
    )  # fmt: skip
    return [b.Heading("Emitters"), b.Paragraph(opening), emitters_table(printing)]


def _pipes(printing: Printing) -> list[b.Block]:
    table = pipe_table(printing)
    if table is None:
        return [b.Heading("Pipes"), b.Paragraph("Nothing is piped yet.")]
    mains = printing.design.job.system.plant.mains
    blocks: list[b.Block] = [b.Heading("Pipes"), table]
    if mains is not None:
        through = mains.through.partition("/")[2]
        space = printing.design.losses.unheated.get(through)
        where = f" They run through {space.name}, which is not heated." if space is not None else ""
        thick: b.Text = " without insulation given." if mains.insulation is None else said(
            " with insulation of ", (printing.run(mains.insulation),), "."
        )  # fmt: skip
        blocks.append(b.Paragraph(said("Mains", thick, where), "small"))
    return blocks


def _sequence(printing: Printing) -> list[b.Block]:
    found = sequence_of(printing.design)
    if not found:
        return [b.Heading("Sequence of operation"), b.Paragraph("There is nothing to control yet.")]
    columns = (b.Column("", "right", width="16pt"), b.Column("What happens, in its order", width="1fr"))
    rows = tuple(
        b.Row((b.Cell(str(number)), b.Cell(printing.spoken(each)))) for number, each in enumerate(found, 1)
    )
    return [b.Heading("Sequence of operation"), b.Table(columns, rows)]


def _open(printing: Printing) -> b.Findings:
    """What must be fixed, what is to be decided, then what was decided; notes stand in the review."""
    lines = [each for each in printing.finding_lines() if each.weight != "note"]
    order = ("must fix", "decide")
    ranked = sorted(lines, key=lambda each: (bool(each.decided), order.index(each.weight)))
    return b.Findings(tuple(ranked))


def _signatures() -> b.Blanks:
    names = ("Prepared by, license", "Date", "Installed by, license", "Date", "Inspected by", "Date")
    return b.Blanks(tuple(b.Blank(each) for each in names), 2)
