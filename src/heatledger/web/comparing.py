"""Two revisions of a job beside each other: inputs that changed, figures that changed, and by how much."""

from __future__ import annotations

import re
from collections import OrderedDict
from dataclasses import dataclass
from weakref import WeakKeyDictionary

from heatledger import __version__
from heatledger.book.errors import NoSuchJob
from heatledger.book.moved import Moved, moved
from heatledger.job.accounts import InputChange, inputs_changed
from heatledger.job.errors import JobErrors
from heatledger.ledger.show import show_percent
from heatledger.steps.design import Design
from heatledger.studies.revisions import FigureChange, figures_changed
from heatledger.web.desks import Desk, State
from heatledger.web.page import Page

MOST_FIGURES = 60
MOST_KEPT = 4
BOTTOM_LINE = (
    ("Design load", "house/loss", 0, False), ("Supply", "house/supply", None, True),
    ("Return", "plant/return_design", 0, False), ("Total flow", "plant/flow", None, False),
    ("Boiler load", "plant/load", 0, False), ("Boiler output", "plant/output", 0, False),
)  # fmt: skip
"""Words, path, decimals, and whether it is rounded up because it must be enough."""
_VIEW = re.compile(r"(\d{1,9})\.\.(\d{1,9})\Z")
_KEPT: WeakKeyDictionary[Desk, OrderedDict[int, State]] = WeakKeyDictionary()


@dataclass(frozen=True)
class Line:
    """One figure in both revisions, in the reader's units; empty where there is none."""

    words: str
    before: str
    after: str
    share: str
    path: str
    places: int | None = None
    up: bool = False

    @property
    def same(self) -> bool:
        """Whether both read the same."""
        return self.before == self.after


@dataclass(frozen=True)
class Comparison:
    """What is not the same in two revisions. ``fault`` says why one of them cannot be read."""

    first: int
    second: int
    inputs: tuple[InputChange, ...] = ()
    bottom: tuple[Line, ...] = ()
    figures: tuple[Line, ...] = ()
    more: int = 0
    opens: bool = False
    fault: str = ""


def asked_for(page: Page) -> tuple[int, int] | None:
    """The two revisions that the address asks for, the older one first; None when it asks for none."""
    found = _VIEW.match(page.view)
    ends = (
        found.groups()
        if found
        else tuple(next(iter(page.asked.get(each, ())), "") for each in ("from", "to"))
    )
    if not all(each.isdecimal() and len(each) < 10 for each in ends):
        return None
    first, second = (int(each) for each in ends)
    return (first, second) if first != second else None


def compared(page: Page, first: int, second: int) -> Comparison:
    """The second revision as it differs from the first."""
    assert page.desk is not None
    try:
        before, after = (_state(page, page.desk, each) for each in (first, second))
    except NoSuchJob as fault:
        return Comparison(first, second, fault=str(fault))
    except JobErrors as faults:
        words = faults.errors[0].message
        return Comparison(first, second, fault=f"One of the two cannot be read by this version: {words}")
    old, new = before.in_units(page.units), after.in_units(page.units)
    changes = figures_changed(old, new)
    lines = [line for each in changes if not (line := _line(page, each)).same]
    bottom = [_bottom(page, old, new, *each) for each in BOTTOM_LINE]
    return Comparison(
        first, second,
        inputs=tuple(inputs_changed(before.job.source.base, after.job.source.base)),
        bottom=tuple(each for each in bottom if each.before or each.after),
        figures=tuple(lines[:MOST_FIGURES]),
        more=max(len(lines) - MOST_FIGURES, 0),
        opens=second == page.revision.number,
    )  # fmt: skip


def since_it_was_kept(page: Page, number: int) -> Moved | None:
    """What moved since another version worked a revision out; None when this one did, or none was kept."""
    assert page.desk is not None
    kept = page.desk.book.kept(page.id, number)
    if kept is None or kept.version == __version__:
        return None
    try:
        state = _state(page, page.desk, number)
    except JobErrors:
        return None
    return moved(kept, state.in_units(page.units), page.units)


def _state(page: Page, desk: Desk, number: int) -> State:
    """The state of a revision; the last few that were asked for are kept."""
    if number == page.revision.number == desk.state.revision.number:
        return desk.state
    kept = _KEPT.setdefault(desk, OrderedDict())
    found = kept.get(number)
    if found is None:
        found = kept[number] = desk.at(number)
        while len(kept) > MOST_KEPT:
            kept.popitem(last=False)
    return found


def _bottom(
    page: Page, old: Design, new: Design, words: str, path: str, places: int | None, up: bool
) -> Line:
    before, after = (page.text(each.results.get(path), places, up=up) for each in (old, new))
    return Line(words, before, after, "", path, places, up)


def _line(page: Page, change: FigureChange) -> Line:
    share = show_percent(change.share, 1 if change.share < 0.1 else 0)
    both = change.before is not None and change.after is not None
    known = both and not (change.before.is_missing or change.after.is_missing)  # type: ignore[union-attr]
    return Line(
        change.title, page.text(change.before), page.text(change.after), share if known else "", change.path
    )
