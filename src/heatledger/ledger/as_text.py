"""A working as plain text, 80 columns, for the terminal."""

from __future__ import annotations

import textwrap

from heatledger.ledger.compose import working_of
from heatledger.ledger.figures import Figure, Names, Placed, flat
from heatledger.ledger.layout import glued_text_of, text_of
from heatledger.ledger.presets import Preset
from heatledger.ledger.workings import ByHandLine, Row, Working

WIDTH = 80
INDENT = "    "
DEEP = INDENT * 2
GLUE = "\x1f"
"""Stands for a space at which a line is not broken: between a number and its unit."""


def working(figure: Figure, units: Preset, deep: bool = False) -> str:
    """The working of a figure as text; ``deep`` opens everything below it, each thing once."""
    names = figure.names if isinstance(figure, Placed) else None
    blocks = [as_text(working_of(figure, units))]
    if deep:
        start = figure.original if isinstance(figure, Placed) else figure
        blocks += [as_text(working_of(each, units, names)) for each in below(start)]
    return "\n\n".join(blocks) + "\n"


def below(figure: Figure) -> list[Figure]:
    """Every figure this one is built on, nearest first, each once."""
    found: list[Figure] = []
    seen = {id(figure)}
    queue = list(flat(figure.inputs))
    while queue:
        each = queue.pop(0)
        if id(each) in seen:
            continue
        seen.add(id(each))
        found.append(each)
        queue.extend(flat(each.inputs))
    return found


def as_text(made: Working, names: Names | None = None) -> str:
    """One working as text."""
    lines = [made.title or "Figure", *_wrapped(made.plain)]
    if made.formula:
        lines += _wrapped(text_of(made.formula), later=DEEP)
    lines.append("")
    lines += _steps(made)
    lines += _column(made)
    for side, label in zip(made.sides, ("One side:", "Other side:"), strict=False):
        lines += ["", INDENT + label, *(INDENT + each for each in as_text(side).splitlines())]
    lines += _after(made)
    lines = [line.rstrip() for line in lines]
    return "\n".join(line for i, line in enumerate(lines) if line or (i and lines[i - 1]))


def _wrapped(text: str, first: str = INDENT, later: str | None = None) -> list[str]:
    lines = textwrap.wrap(text, WIDTH - 4, initial_indent=first, subsequent_indent=later or first,
                          break_long_words=False, break_on_hyphens=False)  # fmt: skip
    return [each.replace(GLUE, " ") for each in lines]


def _steps(made: Working) -> list[str]:
    lines: list[str] = []
    for each in made.steps:
        result = f"= {each.number}{GLUE if each.unit else ''}{each.unit.replace(' ', GLUE)}".replace(
            " ", GLUE
        )
        lines += _wrapped(f"{each.letter} = {glued_text_of(each.expression, GLUE)} {result}", later=DEEP)
    return [*lines, ""] if lines else []


def _column(made: Working) -> list[str]:
    if made.kind == "waiting":
        return [line for each in made.waiting for line in _wrapped(f"waits for {each}", later=DEEP)]
    width = max([len(each.number) for each in made.rows] + [len(made.answer)] + [4])
    units = max([len(each.unit) for each in made.rows] + [len(made.unit)])
    lines = [line for each in made.rows for line in _row(each, width, units)]
    if made.line:
        lines += _wrapped(glued_text_of(made.line, GLUE), INDENT + "  ", DEEP)
    if lines:
        lines.append(f"{INDENT}  {'-' * (width + 2)}")
    number = f"less than {made.answer}" if made.less_than else made.answer
    lines.append(f"{INDENT}  {number:>{width + 2}} {made.unit:<{units}}  {made.remark}")
    if made.is_total:
        lines.append(f"{INDENT}  {'=' * (width + 2)}")
    return lines


def _row(row: Row, width: int, units: int) -> list[str]:
    start = f"{INDENT}  {row.op or ' '} {row.number:>{width}} {row.unit:<{units}}  "
    if row.expression:
        note = f"= {glued_text_of(row.expression, GLUE)}"
    else:
        note = f"{row.words}, shown as {row.carried}" if row.carried else row.words
    return _wrapped(note, start, " " * len(start)) or [start]


def _by_hand(hand: ByHandLine) -> list[str]:
    result = f"{'less than ' if hand.less_than else ''}{hand.number} {hand.unit}".replace(" ", GLUE)
    remark = f"  ({hand.remark})" if hand.remark else ""
    text = f"By hand: {glued_text_of(hand.expression, GLUE)} ={GLUE}{result}{remark.replace(' ', GLUE)}"
    return [
        "",
        *_wrapped(text, later=" " * 13),
        *_wrapped(f"leaves out {hand.neglects}", INDENT + "  ", DEEP),
    ]


def _after(made: Working) -> list[str]:
    lines = _by_hand(made.by_hand) if made.by_hand else []
    if made.found_together:
        lines += ["", *_wrapped(f"Found together with {', '.join(made.found_together)}", later=DEEP)]
    if made.notes:
        lines += ["", *(line for each in made.notes for line in _wrapped(each, later=DEEP))]
    if made.inputs:
        lines += ["", f"{INDENT}Down to the tape"]
        width = min(26, max(len(each.shown) for each in made.inputs))
        for each in made.inputs:
            known = f"; {each.known}" if each.known else ""
            start = f"{INDENT}  {each.shown:<{width}}  "
            lines += _wrapped(f"{each.words}: {each.origin}{known}", start, " " * len(start))
    if made.sources:
        lines.append("")
    for words, citation in made.sources:
        said = f"{words}: " if words else ""
        lines += _wrapped(f"[{said}{citation}; {citation.standing.value}]", later=INDENT + " ")
    return lines
