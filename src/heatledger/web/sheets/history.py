"""The sheet History: every revision, any two of them compared, and what another version made of one."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from heatledger.book.records import RevisionLine
from heatledger.web.comparing import asked_for, compared, since_it_was_kept
from heatledger.web.fragments import Fragment
from heatledger.web.page import Page
from heatledger.web.parts import working_fragment
from heatledger.web.when import moment

TITLE = "History"
CSS = "history.css"
MOST_MOVED = 40
MOST_SHOWN = 200
"""Revisions in the list at once; older ones come with ``?view=all``."""


@dataclass(frozen=True)
class Row:
    """One revision in the list; ``on_the_way`` says whether the job as it stands rests on it."""

    line: RevisionLine
    when: str
    is_head: bool
    on_the_way: bool


def left(page: Page) -> list[Fragment]:
    """The revisions, newest first."""
    return [Fragment("revisions", "history_list.html", _list(page))]


def right(page: Page) -> list[Fragment]:
    """Two revisions compared; the job as it stands and the one before where none are asked for."""
    if not page.ready:
        return [Fragment("compared", "history_wait.html", waits=True), working_fragment(page)]
    lines = {each.number: each for each in _lines(page)}
    ends = asked_for(page)
    parent = lines[page.revision.number].parent if page.revision.number in lines else None
    if ends is None and parent is not None:
        ends = (parent, page.revision.number)
    parts = []
    if ends is not None:
        data = {"made": compared(page, *ends), "ends": [lines.get(each) for each in ends], "moment": moment}
        parts.append(Fragment("compared", "history_compared.html", data, "lead", waits=True))
    else:
        parts.append(Fragment("compared", "history_first.html", {}, "lead", waits=True))
    number = ends[1] if ends is not None else page.revision.number
    moved = since_it_was_kept(page, number) if number in lines else None
    if moved is not None:
        data = {"moved": moved, "number": number, "most": MOST_MOVED}
        parts.append(Fragment("moved", "history_moved.html", data, waits=True))
    return [*parts, working_fragment(page)]


def _lines(page: Page) -> list[RevisionLine]:
    return page.desk.book.revisions(page.id) if page.desk is not None else []


def _list(page: Page) -> dict[str, Any]:
    lines = _lines(page)
    parents = {each.number: each.parent for each in lines}
    way: set[int] = set()
    number: int | None = page.revision.number
    while number is not None and number not in way:
        way.add(number)
        number = parents.get(number)
    head = page.revision.number
    rows = [
        Row(each, moment(each.at, page.units, always=True), each.number == head, each.number in way)
        for each in reversed(lines)
    ]
    shown = rows if page.view == "all" else rows[:MOST_SHOWN]
    ends = asked_for(page) or (parents.get(page.revision.number) or 0, page.revision.number)
    return {"rows": shown, "older": len(rows) - len(shown), "all": len(rows), "ends": ends}
