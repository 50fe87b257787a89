"""Startup as rows: each step of the checklist, its target, and the readings written down at it."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property, lru_cache

from markupsafe import Markup, escape

from heatledger.drawings.gauge import gauge
from heatledger.ledger.dimensions import RATIO
from heatledger.ledger.figures import Figure
from heatledger.ledger.show import show, show_percent
from heatledger.steps.check_fire import with_the_fire
from heatledger.steps.check_running import handing_over, running
from heatledger.steps.check_water import before_the_fire
from heatledger.steps.said import SLOT, CheckStep, Said
from heatledger.steps.targets import CAUTION_LOCAL
from heatledger.studies.startup_lines import Line, stands_first, startup_lines
from heatledger.web.charts import svg
from heatledger.web.entries import field_at
from heatledger.web.page import Page
from heatledger.web.said_markup import said

FIRE = ("combustion", "spillage", "input", "alarms")
PLATE = "what its plate says"
NOTES = {
    "safeties": "the licensed trade and the local code come first",
    "fire": "licensed trade, by the boiler’s own sheet",
    "running": "zones as they call, 20 minutes in",
}
TITLES = {
    "before": "Before firing", "safeties": "Safeties", "fire": "Combustion and draft",
    "running": "Running", "handing-over": "Handing over", "on-file": "Also on file",
}  # fmt: skip


@dataclass(frozen=True, eq=False)
class LineRow:
    """One reading on the page: its number, its target in words, its entry and its gauge."""

    page: Page
    number: str
    line: Line

    @cached_property
    def target(self) -> Markup:
        """The target as a sentence, its figures to be opened."""
        return spoken(self.page, self.line.target)

    @property
    def is_choice(self) -> bool:
        """Whether it is one of a few words."""
        field = field_at(self.line.path)
        return field is not None and field.kind == "choice"

    @property
    def example(self) -> str:
        """What stands in an empty entry: the unit."""
        field = field_at(self.line.path)
        if field is None or field.dimension is None:
            return ""
        return "%" if field.dimension is RATIO else self.page.units.shown(field.dimension).unit.text

    @property
    def held(self) -> Markup:
        """What follows from a reading and is held to the target in its place."""
        line = self.line
        if not line.held_words or line.held is None or line.held.is_missing:
            return Markup("")
        return Markup("{} {}").format(line.held_words, self.page.fig(line.held))

    @property
    def gauge(self) -> Markup:
        """The target as a bracket, and the reading in it or outside; empty without a target."""
        line = self.line
        if line.low is None and line.high is None:
            return Markup("")
        read = line.held
        shown = None if read is None or read.is_missing else float(read)
        return _drawn(line.words, line.low, line.high, shown, self._in_words(read), f"gauge-{self.id}")

    def _in_words(self, read: Figure | None) -> str:
        if read is None or read.is_missing:
            return "not read yet"
        text = show_percent(float(read), 1) if read.dimension is RATIO else show(read, self.page.units)
        return f"{self.line.held_words} {text}, {self.line.state} the target".strip()

    @property
    def id(self) -> str:
        """Its id on the page, for a link."""
        return line_id(self.line)

    @property
    def words(self) -> str:
        """What is read, as a row begins."""
        return self.line.words[:1].upper() + self.line.words[1:]


@dataclass(frozen=True, eq=False)
class StepRow:
    """One step: what to do, when it has passed, what can hurt, and its readings. ``step`` is None for
    readings that no step of this job asks for."""

    page: Page
    number: str
    step: CheckStep | None
    caution: str
    lines: tuple[LineRow, ...]

    @property
    def title(self) -> str:
        """What the step is called."""
        return "" if self.step is None else self.step.title

    @property
    def do(self) -> Markup:
        """What is done."""
        if self.step is None:
            return Markup("")
        if self.step.id == "pressure-test":
            return spoken(
                self.page, Said(self.step.do.text, (self.page.house.startup.startup.test_pressure,))
            )
        return spoken(self.page, self.step.do)

    @property
    def passes(self) -> Markup:
        """When it has passed."""
        return Markup("") if self.step is None else spoken(self.page, self.step.pass_)

    @property
    def has_own_words(self) -> bool:
        """Whether what is asked for says more than the target of its one reading."""
        return self.step is not None and not self.step.pass_.figures


@dataclass(frozen=True, eq=False)
class Group:
    """The steps of one part of the work. ``waits`` says that something must be read before it."""

    key: str
    rows: tuple[StepRow, ...]
    others: str
    waits: bool

    @property
    def title(self) -> str:
        """What the part is called."""
        return TITLES[self.key]

    @property
    def note(self) -> str:
        """What goes for all of it."""
        return NOTES.get(self.key, "")

    @cached_property
    def lines(self) -> list[Line]:
        """Its readings."""
        return [each.line for row in self.rows for each in row.lines]

    @property
    def read(self) -> int:
        """How many of them are on file."""
        return sum(each.is_read for each in self.lines)

    @property
    def outside(self) -> int:
        """How many of them miss their target."""
        return sum(each.is_outside for each in self.lines)

    @property
    def is_done(self) -> bool:
        """Whether all of it that the job can hold is read and as it should be."""
        return bool(self.lines) and self.read == len(self.lines) and not self.outside


def line_id(line: Line) -> str:
    """The id of a reading's row."""
    return "line-" + line.path.removeprefix("readings/").replace("/", "-").replace("_", "-")


class Rows:
    """All rows of a page, and what stands out among them."""

    def __init__(self, page: Page) -> None:
        self.page = page
        self.lines = startup_lines(page.house)
        self.groups = [each for each in self._groups() if each.rows or each.others]
        self.by_path = {
            row.line.path: row for group in self.groups for step in group.rows for row in step.lines
        }

    @property
    def first(self) -> LineRow | None:
        """The row that keeps the boiler from being left alone."""
        line = stands_first(self.page.house, self.lines)
        return None if line is None else self.by_path.get(line.path)

    @property
    def unread(self) -> list[LineRow]:
        """The rows that wait for their reading, in order."""
        return [each for each in self.by_path.values() if not each.line.is_read]

    def _groups(self) -> list[Group]:
        house, number = self.page.house, 0
        safe = [each for each in with_the_fire(house) if each.id not in FIRE]
        parts = {
            "before": list(before_the_fire(house)), "safeties": safe,
            "fire": [each for each in with_the_fire(house) if each.id in FIRE],
            "running": list(running(house)), "handing-over": list(handing_over(house)),
        }  # fmt: skip
        groups, waits = [], not house.startup.startup.may_run
        for key, steps in parts.items():
            groups.append(self._group(key, steps, number, waits and key in ("running", "handing-over")))
            number += len(steps)
        known = {each.id for steps in parts.values() for each in steps}
        left = [each for each in self.lines if each.step not in known]
        if left:
            rows = tuple(LineRow(self.page, f"{number + i}", each) for i, each in enumerate(left, 1))
            groups.append(Group("on-file", (StepRow(self.page, "", None, "", rows),), "", False))
        return groups

    def _group(self, key: str, steps: list[CheckStep], before: int, waits: bool) -> Group:
        rows, others, told = [], [], {""}
        for number, step in enumerate(steps, before + 1):
            lines = [each for each in self.lines if each.step == step.id]
            if not step.applies and not lines:
                others.append(f"{number} {step.title}")
                continue
            caution = step.caution.removesuffix(CAUTION_LOCAL).strip()
            rows.append(self._step(step, number, lines, "" if caution in told else caution))
            told.add(caution)
        return Group(key, tuple(rows), ", ".join(others), waits)

    def _step(self, step: CheckStep, number: int, lines: list[Line], caution: str) -> StepRow:
        letters = [f"{number}{chr(97 + i)}" for i in range(len(lines))] if len(lines) > 1 else [str(number)]
        made = tuple(LineRow(self.page, no, each) for each, no in zip(lines, letters, strict=False))
        return StepRow(self.page, str(number), step, caution, made)


def spoken(page: Page, sentence: Said) -> Markup:
    """A sentence with its figures; a relief valve that the job does not give is not given here either."""
    if not sentence.figures:
        return escape(sentence.text)
    boiler = page.house.job.system.plant.boiler
    given = boiler is not None and boiler.relief is not None and not boiler.relief.is_missing
    reckoned = page.house.boiler_room.plant.relief_pressure
    if given or not any(each is reckoned for each in sentence.figures):
        return said(page, sentence)
    texts, kept = sentence.text.split(SLOT), []
    out = texts[0]
    for figure, text in zip(sentence.figures, texts[1:], strict=True):
        out += (PLATE if figure is reckoned else SLOT) + text
        kept += [] if figure is reckoned else [figure]
    return said(page, Said(out, tuple(kept)))


@lru_cache(maxsize=256)
def _drawn(
    title: str, low: float | None, high: float | None, reading: float | None, words: str, id: str
) -> Markup:
    return svg(gauge(title, low, high, reading, words), id)
