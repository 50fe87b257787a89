"""The list of jobs: where each stands as a line of eight stations, its bottom line, when it was touched."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from markupsafe import Markup

from heatledger.book.opening import Book
from heatledger.book.records import JobEntry
from heatledger.ledger.dimensions import AREA, HEAD, HEAT_RATE, TEMPERATURE, VOLUME_FLOW, Dimension
from heatledger.ledger.presets import Preset
from heatledger.ledger.show import show, show_speaking
from heatledger.web.states import SHEETS
from heatledger.web.when import moment

STEP, EDGE, MIDDLE = 23, 8, 9
STATE_WORDS = {
    "settled": "settled", "begun": "begun", "decide": "to decide", "must": "must fix", "none": "not begun",
}  # fmt: skip
SHOWN = {
    "loss": HEAT_RATE, "load": HEAT_RATE, "output": HEAT_RATE, "area": AREA, "supply": TEMPERATURE,
    "return": TEMPERATURE, "flow": VOLUME_FLOW, "head": HEAD,
}  # fmt: skip
"""The kind of each figure that a summary keeps."""
UP = ("supply",)
"""Temperatures that must be enough are rounded up."""


@dataclass(frozen=True)
class JobRow:
    """One job in the list, in the words of one reader; figures that are not known are empty."""

    entry: JobEntry
    line: Markup
    loss: str
    supply: str
    open: str
    touched: str
    ready: bool


@dataclass(frozen=True)
class Lately:
    """One revision of a job in short: its number, when, what, and the design load before and after."""

    number: int
    when: str
    said: str
    by: str
    before: str
    after: str


def rows(entries: Sequence[JobEntry], units: Preset, now: datetime | None = None) -> list[JobRow]:
    """The jobs as the list shows them, in the order given."""
    return [_row(each, units, now) for each in entries]


def _row(entry: JobEntry, units: Preset, now: datetime | None) -> JobRow:
    summary = entry.summary
    return JobRow(
        entry=entry,
        line=job_line(summary.get("states", ())),
        loss=said(summary, "loss", units),
        supply=said(summary, "supply", units),
        open=str(summary["open"]) if "open" in summary else "",
        touched=moment(entry.touched, units, now),
        ready=bool(summary),
    )


def found(entries: Sequence[JobEntry], words: str) -> list[JobEntry]:
    """The jobs whose name, address or file holds every one of the words."""
    wanted = words.casefold().split()
    return [
        each for each in entries
        if all(word in f"{each.name} {each.address} {each.file}".casefold() for word in wanted)
    ]  # fmt: skip


def said(summary: dict[str, Any], key: str, units: Preset) -> str:
    """A figure of a summary in the reader's units; empty when it is not known."""
    value = summary.get(key)
    if not isinstance(value, int | float):
        return ""
    kind: Dimension = SHOWN[key]
    if kind is HEAT_RATE or kind is AREA:
        return show(float(value), units, kind, places=_places(units, kind))
    return show_speaking(float(value), units, kind, up=key in UP)


def _places(units: Preset, kind: Dimension) -> int | None:
    return 0 if kind is AREA or units.shown(kind).places == 0 else None


def job_line(states: Sequence[str]) -> Markup:
    """Eight stations in the order of the work, heavy as far as the job has come."""
    shapes = [each if each in STATE_WORDS else "begun" for each in states][: len(SHEETS)]
    shapes += ["none"] * (len(SHEETS) - len(shapes))
    reached = max((i for i, each in enumerate(shapes) if each != "none"), default=-1)
    ends = EDGE + STEP * (len(SHEETS) - 1)
    width, height = ends + EDGE, 2 * MIDDLE
    parts = [f'<path d="M{EDGE} {MIDDLE}H{ends}" class="way" stroke="#A89D88"/>']
    if reached > 0:
        far = EDGE + STEP * reached
        parts.append(f'<path d="M{EDGE} {MIDDLE}H{far}" stroke="#1F1D1A" stroke-width="2"/>')
    parts += [_station(shape, EDGE + STEP * i) for i, shape in enumerate(shapes)]
    return Markup(
        '<svg class="jobline" viewBox="0 0 {0} {1}" width="{0}" height="{1}" role="img" '
        'aria-label="{2}">{3}</svg>'
    ).format(width, height, line_words(shapes), Markup("".join(parts)))


def line_words(shapes: Sequence[str]) -> str:
    """The job line in words: the sheets of each state, what must be fixed first."""
    order = ("must", "decide", "begun", "settled", "none")
    said = []
    for shape in order:
        names = [name for (_, name), each in zip(SHEETS, shapes, strict=True) if each == shape]
        if len(names) == len(SHEETS):
            return f"All sheets {STATE_WORDS[shape]}"
        if names:
            said.append(f"{STATE_WORDS[shape]}: {', '.join(names)}")
    return "; ".join(said).capitalize()


def _station(shape: str, x: int) -> str:
    y = MIDDLE
    if shape == "settled":
        return f'<circle cx="{x}" cy="{y}" r="4" fill="#1F1D1A"/>'
    if shape == "begun":
        return f'<circle cx="{x}" cy="{y}" r="4.3" fill="#FCFAF4" stroke="#1F1D1A" stroke-width="1.8"/>'
    if shape == "decide":
        points = f"M{x} {y - 6.5}l6.5 6.5-6.5 6.5-6.5-6.5z"
        return f'<path d="{points}" fill="#FCFAF4" stroke="#80540A" stroke-width="1.7"/>'
    if shape == "must":
        return f'<path d="M{x} {y - 6.5}l6.5 11.5h-13z" fill="#85194A"/>'
    return f'<path d="M{x} {y - 3.5}v7" stroke="#A89D88"/>'


def lately(
    book: Book, entry: JobEntry, units: Preset, most: int = 5, now: datetime | None = None
) -> list[Lately]:
    """The last revisions on the way to where the job stands, newest first."""
    by_number = {each.number: each for each in book.revisions(entry.id)}
    found: list[Lately] = []
    number = entry.head
    while number in by_number and len(found) < most:
        line = by_number[number]
        after, before = _kept_load(book, entry.id, number), _kept_load(book, entry.id, line.parent)
        shown = [show(each, units, HEAT_RATE, places=_places(units, HEAT_RATE)) if each is not None else ""
                 for each in (before, after)]  # fmt: skip
        if shown[0] == shown[1]:
            shown[0] = ""
        found.append(Lately(number, moment(line.at, units, now), line.said, line.by, *shown))
        if line.parent is None:
            break
        number = line.parent
    return found


def _kept_load(book: Book, id: str, number: int | None) -> float | None:
    kept = book.kept(id, number) if number is not None else None
    value = kept.summary.get("loss") if kept is not None else None
    return float(value) if isinstance(value, int | float) else None
