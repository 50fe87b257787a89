"""A working as plain dictionaries and lists, for the paper and for other programs."""

from __future__ import annotations

from typing import Any

from heatledger.ledger.figures import NO_NAMES, Figure, Names, Placed
from heatledger.ledger.layout import text_of
from heatledger.ledger.sources import Citation
from heatledger.ledger.workings import ByHandLine, InputLine, Row, Step, Tokens, Working

Data = dict[str, Any]


def as_data(made: Working, names: Names | None = None) -> Data:
    """One working as data that JSON can hold; every text is as it is printed."""
    names = names or _names_of(made.figure)
    return {
        "kind": made.kind,
        "title": made.title,
        "path": names.path(made.figure),
        "plain": made.plain,
        "formula": tokens(made.formula),
        "steps": [_step(each) for each in made.steps],
        "rows": [_row(each, names) for each in made.rows],
        "line": tokens(made.line),
        "answer": made.answer,
        "unit": made.unit,
        "less_than": made.less_than,
        "is_total": made.is_total,
        "remark": made.remark,
        "by_hand": _by_hand(made.by_hand) if made.by_hand else None,
        "sides": [as_data(each, names) for each in made.sides],
        "found_together": list(made.found_together),
        "waiting": list(made.waiting),
        "notes": list(made.notes),
        "inputs": [_input(each, names) for each in made.inputs],
        "sources": [source(words, citation) for words, citation in made.sources],
    }


def tokens(line: Tokens) -> list[dict[str, str]]:
    """Kind and text of each piece of a line."""
    return [{"kind": each.kind, "text": each.text} for each in line]


def source(words: str, citation: Citation) -> Data:
    """What a source is cited for, the citation, and how well it is known."""
    return {
        "words": words,
        "key": citation.key,
        "place": citation.place,
        "text": str(citation),
        "standing": citation.standing.value,
    }


def _names_of(figure: Figure) -> Names:
    return figure.names if isinstance(figure, Placed) else NO_NAMES


def _step(step: Step) -> Data:
    return {
        "letter": step.letter,
        "expression": tokens(step.expression),
        "number": step.number,
        "unit": step.unit,
        "text": f"{step.letter} = {text_of(step.expression)} = {step.number} {step.unit}".strip(),
    }


def _row(row: Row, names: Names) -> Data:
    return {
        "op": row.op,
        "number": row.number,
        "unit": row.unit,
        "words": row.words,
        "expression": tokens(row.expression),
        "carried": row.carried,
        "path": names.path(row.figure) if row.figure is not None else "",
    }


def _by_hand(hand: ByHandLine) -> Data:
    return {
        "expression": tokens(hand.expression),
        "number": hand.number,
        "unit": hand.unit,
        "less_than": hand.less_than,
        "remark": hand.remark,
        "neglects": hand.neglects,
    }


def _input(line: InputLine, names: Names) -> Data:
    return {
        "shown": line.shown,
        "words": line.words,
        "origin": line.origin,
        "known": line.known,
        "path": names.path(line.figure),
    }
