"""Replacing a boiler: the output needed, seen from both sides, the lowest supply, what to check on site."""

from __future__ import annotations

from collections import Counter

from heatledger.drawings.band_rule import band_rule
from heatledger.ledger.dimensions import HEAT_RATE
from heatledger.ledger.figures import Figure
from heatledger.ledger.show import grouping, show_range
from heatledger.papers import blocks as b
from heatledger.papers.answers import RESTS_ON, figure, not_reached, said, waiting
from heatledger.papers.owner_plant import by_weather, times_over, warm_enough
from heatledger.papers.printing import LOCAL_CODE, Printing
from heatledger.steps.design import Design
from heatledger.studies.replacement import BillBand, Replacement, replacement
from heatledger.studies.uncertainty import SENTENCE, Band

TITLE = "Replacing the boiler"
STAGES = ("heat-loss", "bills", "emitters", "boiler_room")
NOT_THE_OLD = (
    "The size of the old boiler proves nothing: most were put in larger than the house. The loss and the "
    "fuel do."
)
APART = (
    "The two sides do not meet within their bands. Something is wrong on one of them: other use on the "
    "bills, a stove, closed rooms, a part of the house entered wrong. Find it before anything is bought."
)
WALK = (
    "In the order of the walk. Tick a box only for what you have seen yourself, and write down what you read."
)
WAITED = "What the boiler room needs and nobody has given:"
ASBESTOS = (
    "Old lagging may hold asbestos, flue gas kills without a smell, and water from relief valves and "
    "drains scalds."
)


def applies(design: Design) -> bool:
    """Due where a boiler or bills are given and the piping is not: the piping stays, the plant goes."""
    system = design.job.system
    return not system.circuits and bool(system.bills or system.plant.boiler is not None)


def replacement_paper(printing: Printing) -> b.Paper:
    """The answer first, then both sides, the water, and the walk through the house."""
    found = replacement(printing.design)
    blocks: list[b.Block] = [*_answer(found, printing), printing.caution(ASBESTOS)]
    blocks += [b.Heading("From both sides"), *_sides(found, printing)]
    blocks += [
        b.Heading("The old boiler"),
        b.Paragraph(_old(found, printing)),
        b.Paragraph(NOT_THE_OLD, "small"),
    ]
    blocks += [b.Heading("What water it must make"), *_water(found, printing)]
    if found.unknown:
        blocks += [b.Heading("Not known yet"), b.Paragraph(_waited_for(found))]
    blocks += [b.Heading("To check on site"), b.Paragraph(WALK, "small"), _walk(found)]
    blocks += [b.Heading("Open"), _open(printing), b.Paragraph(RESTS_ON, "small")]
    blocks.append(b.Flow((printing.sources(*STAGES, sheets=(2, 3, 5)),)))
    return b.Paper(printing.head(TITLE), tuple(blocks))


def _answer(found: Replacement, printing: Printing) -> list[b.Block]:
    load = found.load.figure
    if load.is_missing:
        return [b.Paragraph(waiting(printing, load), "lead")]
    lead = said(
        "The new plant must give ", figure(printing, load, True), " on the coldest night, and should give no "
        "more than ",
        figure(printing, found.largest_output), ".",
    )  # fmt: skip
    if not found.bills:
        more: b.Text = not_reached(
            "the other side: fuel bills of a winter with its degree-days are not given."
        )
    elif found.low is None or found.high is None:
        more = (b.Run(APART, "bold", mark="decide"),)
    else:
        more = said("Loss and bills meet at ", (b.Run(_range(found.low, found.high, printing), "bold"),), ".")
    return [b.Paragraph(lead, "lead"), b.Paragraph(more)]


def _range(low: float, high: float, printing: Printing) -> str:
    return show_range(low, high, printing.units, HEAT_RATE)


def _sides(found: Replacement, printing: Printing) -> list[b.Block]:
    """Each side with its band, in a table and on a rule."""
    columns = (
        b.Column("Side", width="1.6fr"), b.Column("Figure", "right", unit=printing.unit(HEAT_RATE)),
        b.Column("Likely", "right", unit=printing.unit(HEAT_RATE)),
    )  # fmt: skip
    rows = [_side("Loss of the house, with its mains", found.load, printing)]
    for each in found.bills:
        rows.append(_side(f"{each.name}, counted as a loss is counted", each.like_for_like, printing))
        rows.append(
            _side(f"{each.name}, less the free heat of sun, people and lights", each.after_gains, printing)
        )
    blocks: list[b.Block] = [b.Table(columns, tuple(rows), SENTENCE, whole=True)]
    return [*blocks, *_rule(found, printing)]


def _side(name: str, made: Band, printing: Printing) -> b.Row:
    unit = printing.unit(HEAT_RATE)
    likely = (
        b.NONE
        if made.figure.is_missing
        else b.Cell(_range(made.low, made.high, printing).removesuffix(unit).strip())
    )
    return b.Row((b.Cell(name), printing.cell(made.figure), likely))


def _rule(found: Replacement, printing: Printing) -> list[b.Block]:
    load, unit = found.load, printing.units.shown(HEAT_RATE).unit
    if load.figure.is_missing or not load.high > load.low:
        return []
    others = tuple(
        (_shown(made.figure, printing), name)
        for each in found.bills[:1]
        for made, name in _rings(each)
        if not made.figure.is_missing
    )
    drawing = band_rule(
        "The loss with its band, and the bills", unit.from_si(load.low), unit.from_si(load.high),
        _shown(load.figure, printing), others, 360.0, group=grouping(unit, printing.units),
    )  # fmt: skip
    return [b.Picture(drawing, f"Loss with its band, and the bills, in {unit.text}.")]


def _rings(each: BillBand) -> tuple[tuple[Band, str], ...]:
    return ((each.like_for_like, "bills"),)


def _shown(one: Figure, printing: Printing) -> float:
    return float(printing.units.shown(HEAT_RATE).unit.from_si(float(one)))


def _old(found: Replacement, printing: Printing) -> b.Text:
    boiler = printing.design.job.system.plant.boiler
    if boiler is None or found.old_output is None or found.old_ratio is None:
        return not_reached("what the old boiler can give; read its plate.")
    if found.old_output.is_missing or found.old_ratio.is_missing:
        return waiting(printing, found.old_output, found.old_ratio)
    return said(
        f"{boiler.name or 'It'} ({boiler.fuel}) can give ", figure(printing, found.old_output), ", which is ",
        times_over(printing, found.old_ratio), " times the load.",
    )  # fmt: skip


def _water(found: Replacement, printing: Printing) -> list[b.Block]:
    if found.lowest_supply.is_missing:
        return [b.Paragraph(waiting(printing, found.lowest_supply))]
    several = len(printing.design.job.rooms) > 1
    setter = f" {found.set_by} sets it." if found.set_by and several else ""
    rest: b.Text = ""
    if found.next_lowest is not None and not found.next_lowest.is_missing:
        rest = said(" For all the others ", (warm_enough(printing, found.next_lowest),), " would do.")
    what = "in every room" if several else "of the house as one space"
    back = printing.design.boiler_room.plant.return_design
    text = said(
        "The emitters that hang there carry the loss ", what, " with ", (warm_enough(printing,
        found.lowest_supply, True),),
        " supply water on the coldest night.", setter, rest, " It comes back at ", figure(printing, back),
        ".",
    )  # fmt: skip
    note = (
        "" if several else "As one space, warm and cold rooms are one: a room with too little radiator asks "
        "for hotter water than this. Survey room by room before cooler water is promised."
    )  # fmt: skip
    return [b.Paragraph(text), *([b.Paragraph(note)] if note else []), b.Paragraph(by_weather(printing))]


def _waited_for(found: Replacement) -> str:
    """What is waited for, alike things counted."""
    counts = Counter(each.partition(", ")[0] for each in found.unknown)
    pieces = [each if count == 1 else f"{each} ({count} of them)" for each, count in counts.items()]
    return f"{WAITED} {'; '.join(pieces)}."


def _walk(found: Replacement) -> b.Checklist:
    return b.Checklist(tuple(
        b.Check(str(number), each.what, "", each.why, caution=each.caution.removesuffix(LOCAL_CODE).strip())
        for number, each in enumerate(found.checks, 1)
    ))  # fmt: skip


def _open(printing: Printing) -> b.Findings:
    """What must be fixed or decided on the house, its emitters and its plant."""
    return b.Findings(tuple(each for each in printing.finding_lines(2, 3, 5) if each.weight != "note"))
