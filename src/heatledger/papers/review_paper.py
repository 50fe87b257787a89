"""The review: what a careful senior designer says on reading the design, by its weight."""

from __future__ import annotations

import re
from dataclasses import replace

from heatledger.papers import blocks as b
from heatledger.papers.findings_by_sheet import SHEETS, sheet_of
from heatledger.papers.heat_loss_data import FindingLine
from heatledger.papers.printing import LOCAL_CODE, Printing
from heatledger.papers.references import references
from heatledger.papers.tables import plain

TITLE = "Review of the design"
INTRO = (
    "What a careful senior designer would say on reading this design. Must fix comes first: while one is "
    "open, every paper is a draft and nothing is installed from it. Decide is for the people of the job to "
    "settle and to write down. A note is good to know."
)
WEIGHTS = (
    ("must fix", "Must fix", "Nothing must be fixed."), ("decide", "To decide", "Nothing is left to decide."),
    ("note", "Notes", "There are no notes."),
)  # fmt: skip
LIMITS = (
    "A check sees only what the job says. It is no inspection: what is on site, hidden or not entered is "
    "seen by nobody here."
)


def review_paper(printing: Printing) -> b.Paper:
    """Open findings by weight, those decided, and what could not be checked."""
    design = printing.design
    lines = list(zip(design.findings, printing.finding_lines(), strict=True))
    open_lines = [_on_sheet(line, sheet_of(each.id)) for each, line in lines if each.decided is None]
    decided = [_on_sheet(line, sheet_of(each.id)) for each, line in lines if each.decided is not None]
    blocks: list[b.Block] = [b.Paragraph(INTRO, "lead"), _counts(open_lines, decided)]
    blocks += _hurts(printing)
    for weight, heading, none in WEIGHTS:
        of_weight = tuple(each for each in open_lines if each.weight == weight)
        blocks += [b.Heading(heading), b.Findings(of_weight, none)]
    if decided:
        blocks += [b.Heading("Decided"), b.Findings(tuple(decided))]
    blocks += _not_checked(printing)
    blocks += [printing.caution(LIMITS), b.References(references([], design.findings))]
    return b.Paper(printing.head(TITLE), tuple(blocks))


def _on_sheet(line: FindingLine, sheet: int) -> FindingLine:
    """The finding under the name of its sheet, where it does not name a thing of the house."""
    return line if line.where else replace(line, where=SHEETS[sheet])


def _counts(open_lines: list[FindingLine], decided: list[FindingLine]) -> b.Facts:
    """How many of each weight are open, by sheet of the design."""
    facts = []
    for weight, heading, _ in WEIGHTS:
        count = sum(each.weight == weight for each in open_lines)
        mark: b.Mark = weight if count else "fine"  # type: ignore[assignment]
        facts.append(b.Fact(heading, str(count), mark=mark))
    facts.append(b.Fact("Decided", str(len(decided)), note="with the reason given and who gave it"))
    return b.Facts(tuple(facts))


def _hurts(printing: Printing) -> list[b.Block]:
    """The cautions of what is open, each sentence once, before anything else; who decides comes last."""
    said = dict.fromkeys(
        sentence
        for each in printing.design.findings
        if each.caution and each.decided is None
        for sentence in sentences(plain(each.caution))
        if sentence != LOCAL_CODE
    )
    return [b.Frame("Before anything else.", (*said, LOCAL_CODE))] if said else []


def sentences(text: str) -> list[str]:
    """A text in its sentences."""
    return [each for each in re.split(r"(?<=[.]) (?=[A-Z])", text) if each]


def _not_checked(printing: Printing) -> list[b.Block]:
    by_sheet = [(SHEETS[sheet], printing.not_checked(sheet)) for sheet in SHEETS]
    found = [(title, lines) for title, lines in by_sheet if lines]
    if not found:
        return []
    rows = [b.Fact(title, " ", note="; ".join(lines) + ".") for title, lines in found]
    return [b.Heading("Not checked"), b.Facts(tuple(rows))]
