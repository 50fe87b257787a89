"""The first page of the owner's report: what the house loses, how sure that is, where it goes."""

from __future__ import annotations

from heatledger.drawings.band_rule import band_rule
from heatledger.drawings.house_section import Stream, house_section
from heatledger.drawings.shapes import Drawing
from heatledger.ledger.dimensions import HEAT_RATE
from heatledger.papers import blocks as b
from heatledger.papers import front, tables
from heatledger.papers.answers import figure, listed, said, share
from heatledger.papers.front import NAMES
from heatledger.papers.heat_loss_data import CauseLine
from heatledger.papers.house_view import house_view
from heatledger.papers.printing import Printing
from heatledger.steps.surfaces import CAUSES
from heatledger.studies.uncertainty import band

INTRO = (
    "This report says how much heat your house loses on the coldest night it is planned for, where that "
    "goes, and what follows for radiators, boiler and water. A small number such as 2·1 names the sheet "
    "and the line on which a figure is worked out: ask, and we go through any of them with you."
)
SAFETY = (
    "If a carbon monoxide alarm sounds, everyone goes out and calls from outside. Never cap or plug the "
    "pipe of the relief valve, and never stop a limit from working. Water, pipes and radiators can scald."
)
SMALL_PICTURE = 236.0


def first_page(printing: Printing) -> list[b.Block]:
    """The opening, safety before anything else, the loss beside the section through the house."""
    left = (b.Heading("What it loses"), *_loss(printing))
    right = (b.Heading("Where it goes"), _section(printing))
    return [b.Paragraph(INTRO, "lead"), printing.caution(SAFETY), b.Columns((left, right), (1.0, 1.06))]


def _loss(printing: Printing) -> list[b.Block]:
    design = printing.design
    made = band(design, "house/loss")
    answer = front.answer(design, printing.found, made)
    blocks: list[b.Block] = []
    if answer.load:
        spoken = f"{answer.load} {printing.unit(HEAT_RATE)}"
        blocks.append(b.Paragraph((b.Run(spoken, "bold", answer.key),), "lead"))
    blocks.append(b.Paragraph(answer.opening))
    if answer.waits_for:
        blocks.append(b.Paragraph((b.Run("Waits for", "bold"), f" {answer.waits_for}.")))
    blocks += [b.Paragraph(each) for each in answer.sentences[:1]]
    rule = answer.band
    if rule is not None:
        drawing = band_rule(
            "Likely range", rule.low, rule.high, rule.figure, rule.others, words=rule.words, group=rule.group
        )
        blocks.append(b.Picture(drawing, width=SMALL_PICTURE))
    return [*blocks, *(b.Paragraph(each) for each in answer.sentences[1:])]


def cause_lines(printing: Printing) -> tuple[CauseLine, ...]:
    """The six causes of the house as they are printed."""
    return tuple(tables.cause_line(cause, printing.design, printing.found) for cause in CAUSES)


def _section(printing: Printing) -> b.Picture:
    return b.Picture(
        section(printing), f"In {printing.unit(HEAT_RATE)}: the thicker an arrow, the more of it."
    )


def section(printing: Printing) -> Drawing:
    """The section through the house with an arrow a cause."""
    streams = tuple(
        Stream(each.cause, each.name, each.amount, each.share.text, each.loss.text)
        for each in cause_lines(printing)
    )
    return house_section(
        "Where the heat goes", house_view(printing.design, printing.units), streams, printing.unit(HEAT_RATE)
    )


def by_cause(printing: Printing) -> b.Text:
    """The causes in a sentence, the largest first, each with its loss and its share."""
    causes = printing.design.losses.house.causes
    known = [each for each in causes if not causes[each].loss.is_missing]
    ranked = sorted(known, key=lambda each: -float(causes[each].loss))
    pieces = [
        said(
            f"{NAMES[each].lower()} ", figure(printing, causes[each].loss), " (",
            share(printing, causes[each].share), ")",
        )
        for each in ranked
    ]  # fmt: skip
    return listed(pieces)
