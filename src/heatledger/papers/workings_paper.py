"""The paper "Workings": every figure of the design worked out, sheet by sheet, down to what was typed."""

from __future__ import annotations

from heatledger.papers import blocks as b
from heatledger.papers.addresses import Stage
from heatledger.papers.from_design import tape_note
from heatledger.papers.printing import Printing
from heatledger.papers.references import references
from heatledger.papers.tables import tape
from heatledger.papers.workings_from import groups_of

TITLE = "Workings"
INTRO = (
    "Every figure of the design as a pencil would do it. The circle gives its address: line over sheet. A "
    "small number beside a figure leads to its working, or to what was typed (sheet 1). The other papers "
    "name figures by the same sheet and line."
)


def workings_paper(printing: Printing) -> b.Paper:
    """All sheets in their order, then what was put in, then the sources."""
    found = printing.found
    stages = [each for each in found.stages if each.groups]
    blocks: list[b.Block] = [b.Paragraph(INTRO), _contents(stages, printing)]
    running: list[b.Block] = []
    for stage in stages:
        set_out: set[int] = set()
        groups = tuple(each for group in stage.groups for each in groups_of(group, found, set_out))
        running += [b.Heading(f"Sheet {stage.sheet}: {stage.title}"), b.Workings(groups)]
    running.append(b.Tape(tape(printing.design, found, found.stages), tape_note(printing.design)))
    running.append(b.References(references(found.stages, printing.design.findings)))
    return b.Paper(printing.head(TITLE), (*blocks, b.Flow(tuple(running)), printing.caution()))


def _contents(stages: list[Stage], printing: Printing) -> b.Facts:
    """Which lines stand on which sheet."""
    facts = []
    for stage in stages:
        lines = [each for group in stage.groups for each in (*group.blocks, *group.lines)]
        first, last = printing.found.key(lines[0]), printing.found.key(lines[-1])
        words = ", ".join(each.title for each in stage.groups)
        facts.append(b.Fact(f"Sheet {stage.sheet}: {stage.title}", f"{first} to {last}", note=words))
    given = [each for stage in printing.found.stages for group in stage.given for each in group.lines]
    if given:
        last = printing.found.key(given[-1])
        facts.append(b.Fact("Sheet 1: down to the tape", f"1·1 to {last}", note="What was put in, as typed"))
    return b.Facts(tuple(facts), ("Sheet", "Lines", "What is on it"))
