"""The first page of the owner's report: what the house loses, how sure that is, where it goes."""

from __future__ import annotations

from heatledger.drawings.hatches import CAUSE_NAMES
from heatledger.drawings.heat_charts import likely_rule, section_of
from heatledger.ledger.dimensions import HEAT_RATE
from heatledger.papers import blocks as b
from heatledger.papers import front
from heatledger.papers.answers import figure, listed, said, share
from heatledger.papers.printing import Printing
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
    drawing = likely_rule(design, printing.units, made)
    if drawing is not None:
        blocks.append(b.Picture(drawing, width=SMALL_PICTURE))
    return [*blocks, *(b.Paragraph(each) for each in answer.sentences[1:])]


def _section(printing: Printing) -> b.Picture:
    return b.Picture(
        section_of(printing.design, printing.units),
        f"In {printing.unit(HEAT_RATE)}: the thicker an arrow, the more of it.",
    )


def by_cause(printing: Printing) -> b.Text:
    """The causes in a sentence, the largest first, each with its loss and its share."""
    causes = printing.design.losses.house.causes
    known = [each for each in causes if not causes[each].loss.is_missing]
    ranked = sorted(known, key=lambda each: -float(causes[each].loss))
    pieces = [
        said(
            f"{CAUSE_NAMES[each].lower()} ", figure(printing, causes[each].loss), " (",
            share(printing, causes[each].share), ")",
        )
        for each in ranked
    ]  # fmt: skip
    return listed(pieces)
