"""The picked job of the list: its bottom line, open questions, what-ifs, last revisions and its file."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from heatledger.book.on_disk import state_on_disk
from heatledger.book.opening import Book
from heatledger.book.records import JobEntry
from heatledger.job.errors import JobError, JobErrors
from heatledger.ledger.presets import Preset
from heatledger.papers.findings_by_sheet import SHEETS as FINDING_SHEETS
from heatledger.web.desks import Desks
from heatledger.web.job_list import Lately, lately, said
from heatledger.web.job_summary import questions_of
from heatledger.web.states import SHEETS

SHAPES = {"must fix": "must", "decide": "decide", "note": "note"}
MOST_SHOWN = 5


@dataclass(frozen=True)
class Fact:
    """One line of the bottom line: what it is, the figure, and where its working opens."""

    words: str
    text: str
    sheet: str
    path: str


@dataclass(frozen=True)
class Question:
    """One open question in short, with the sheet that it stands on."""

    shape: str
    weight: str
    what: str
    sheet: str
    number: int


@dataclass(frozen=True)
class WhatIfRow:
    """A what-if below its job in the list."""

    id: str
    name: str
    loss: str
    supply: str


@dataclass(frozen=True)
class Picked:
    """All that the right page says of one job. ``faults`` are there when its text cannot be read."""

    entry: JobEntry
    facts: tuple[Fact, ...]
    questions: tuple[Question, ...]
    more: int
    what_ifs: tuple[WhatIfRow, ...]
    lately: tuple[Lately, ...]
    disk: str
    faults: tuple[JobError, ...] = ()

    @property
    def invented(self) -> bool:
        """Whether the job is made up for an example."""
        return bool(self.entry.summary.get("invented"))


def picked(book: Book, desks: Desks, entry: JobEntry, units: Preset) -> Picked:
    """What the right page says of a job; its design is asked for only where what was kept will not do."""
    summary = entry.summary
    questions, faults = _questions(desks, entry, units)
    return Picked(
        entry=entry,
        facts=tuple(_facts(summary, units)),
        questions=tuple(questions),
        more=max(int(summary.get("open", 0)) - len(questions), 0),
        what_ifs=tuple(what_if_rows(summary, units)),
        lately=tuple(lately(book, entry, units)),
        disk=state_on_disk(book, entry.id),
        faults=tuple(faults),
    )


def _facts(summary: dict[str, Any], units: Preset) -> list[Fact]:
    def one(key: str) -> str:
        return said(summary, key, units)

    rooms = summary.get("rooms", 0)
    area = one("area")
    heated = f"{area}, {rooms} {'room' if rooms == 1 else 'rooms'}" if area else ""
    ratio = summary.get("output") or 0.0
    load = summary.get("load") or 0.0
    over = f", {ratio / load:.2f} × its load" if ratio and load else ""
    return [
        Fact("Heated", heated, "house", "house/floor_area"),
        Fact("Design load", one("loss"), "heat-loss", "house/loss"),
        Fact("Supply and return", _both(one("supply"), one("return")), "emitters", "house/supply"),
        Fact("Flow and head", _both(one("flow"), one("head"), ", "), "piping", "plant/flow"),
        Fact("Boiler output", one("output") and f"{one('output')}{over}", "boiler-room", "plant/output"),
    ]


def _both(first: str, second: str, between: str = " and ") -> str:
    return f"{first}{between}{second}" if first and second else first


def _questions(desks: Desks, entry: JobEntry, units: Preset) -> tuple[list[Question], list[JobError]]:
    """The kept ones where they speak in the reader's units, else those of the design itself."""
    summary = entry.summary
    if not summary:
        return [], []
    kept = summary.get("questions")
    if kept is None or summary.get("units") != units.name:
        try:
            kept = questions_of(desks.open(entry.id).fresh().in_units(units))
        except JobErrors as fault:
            return [], list(fault.errors)
    return [_question(*each) for each in kept[:MOST_SHOWN]], []


def _question(weight: str, what: str, number: int) -> Question:
    sheet = SHEETS[number - 1][0] if number in FINDING_SHEETS else "heat-loss"
    return Question(SHAPES.get(weight, "note"), weight.capitalize(), what, sheet, number)


def what_if_rows(summary: dict[str, Any], units: Preset) -> list[WhatIfRow]:
    """The what-ifs that a summary keeps, in the reader's units."""
    return [
        WhatIfRow(each["id"], each["name"], said(each, "loss", units), said(each, "supply", units))
        for each in summary.get("what_ifs", ())
    ]
