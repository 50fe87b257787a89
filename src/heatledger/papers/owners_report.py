"""The owner's report: what the house loses and why, room by room, boiler, water, bills, what to settle."""

from __future__ import annotations

from dataclasses import replace

from heatledger.papers import blocks as b
from heatledger.papers.answers import RESTS_ON
from heatledger.papers.findings_by_sheet import poison
from heatledger.papers.heat_loss_data import FindingLine
from heatledger.papers.owner_front import first_page
from heatledger.papers.owner_plant import bill_blocks, change_blocks, design_water, right_size, which_water
from heatledger.papers.owner_questions import owner_questions
from heatledger.papers.owner_rooms import has_emitters, in_words, legend, milder_days, room_table
from heatledger.papers.printing import LOCAL_CODE, Printing

TITLE = "Your heating, and why it is so"
STAGES = ("heat-loss", "bills", "emitters", "boiler_room", "controls")
WEIGHTS = (
    ("must fix", "Before anything is installed", "Nothing stands in the way of the work."),
    ("decide", "To decide with you", "Nothing waits for your decision."),
)  # fmt: skip
SETTLE = (
    "What a careful designer would not leave open. Reasons and sources stand in the review; nothing is "
    "installed from these papers while the first list is not empty."
)
POISON = (
    "Readings report flue gas or carbon monoxide, which kills without a smell. The boiler stays off, and no "
    "decision lifts that, until it is mended and read again by who is licensed for it. What is needed:"
)
ASKED = (
    "Twenty questions that owners ask. Where the design does not reach, it says so: a blank is better "
    "than a guess."
)


def owners_report(printing: Printing) -> b.Paper:
    """The report in plain words; every figure with the address of its working."""
    blocks: list[b.Block] = first_page(printing)
    blocks += [
        b.Heading(_rooms_title(printing)),
        room_table(printing),
        legend(),
        *in_words(printing, design_water(printing)),
        *milder_days(printing),
    ]
    blocks += [b.Heading("Is the boiler the right size?"), b.Paragraph(right_size(printing))]
    if has_emitters(printing):
        blocks += [b.Heading("What water the house needs"), *which_water(printing)]
    blocks += [b.Heading("What the bills say"), *bill_blocks(printing)]
    blocks += [b.Heading("What would change it"), *change_blocks(printing)]
    blocks += _settle(printing)
    blocks += [b.Heading("Twenty questions"), b.Paragraph(ASKED, "small"), owner_questions(printing)]
    blocks += [b.Paragraph(RESTS_ON, "small"), b.Flow((printing.sources(*STAGES),))]
    return b.Paper(printing.head(TITLE), tuple(blocks))


def _rooms_title(printing: Printing) -> str:
    return "Room by room" if len(printing.design.losses.rooms) > 1 else "The house as one space"


def _settle(printing: Printing) -> list[b.Block]:
    """What is open, without reasons and sources: what it is, what can hurt, and how it may be mended."""
    open_ = [
        line
        for line, each in zip(printing.finding_lines(), printing.design.findings, strict=True)
        if each.decided is None
    ]
    blocks: list[b.Block] = [b.Heading("What to settle"), b.Paragraph(SETTLE, "small")]
    found = poison(printing.design)
    if found:
        blocks.append(b.Frame("Stop.", (f"{POISON} {', '.join(found)}.", LOCAL_CODE)))
    for weight, heading, none in WEIGHTS:
        none = "What the frame above says." if found and weight == "must fix" else none
        lines = tuple(_short(each) for each in open_ if each.weight == weight)
        blocks += [b.Heading(heading, 2), b.Findings(lines, none)]
    return blocks


def _short(line: FindingLine) -> FindingLine:
    return replace(line, why="", key="", source=None)
