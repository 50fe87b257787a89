"""Sheet and line of the figures on a screen, as they stand on the papers of the same revision.

Numbering a house takes a second, so no request does it: the hand that works behind the answers does, in short
strokes between which it gives way, once for a revision and a reader. What is no longer the newest is dropped.
"""

from __future__ import annotations

import re
import time
from collections import OrderedDict
from concurrent.futures import Future
from threading import Lock
from typing import TYPE_CHECKING
from weakref import WeakKeyDictionary

from heatledger.ledger.figures import Figure, Leaf, ancestors, flat, original_of
from heatledger.ledger.formulas import Formula
from heatledger.ledger.outline import outline_of
from heatledger.ledger.presets import Preset
from heatledger.ledger.results import walk_results
from heatledger.papers.addresses import GIVEN
from heatledger.papers.groups_of_steps import STEPS
from heatledger.papers.printing import Printing
from heatledger.steps.design import Design, NoSuchFigure
from heatledger.web.inner_paths import figure_at
from heatledger.web.states import SHEETS

if TYPE_CHECKING:
    from heatledger.web.desks import Desk, State
    from heatledger.web.page import Page

Callout = tuple[int, int]
"""Sheet and line; line 0 while the lines are still being numbered."""
MOST_KEPT = 2
"""Printings of one job that are kept: of one revision in two kinds of units, or of two revisions."""
STROKE, PAUSE = 12, 0.002
"""Figures that are looked at in one go, and seconds given to others after that."""
ADDRESS = re.compile(r"\s*([1-7])\s*[·.,/-]\s*([1-9][0-9]{0,4})\s*")


class Superseded(Exception):
    """The revision that was to be numbered is no longer the newest."""


class Numbered:
    """The printings of one job by revision and units, each with its book of addresses."""

    def __init__(self) -> None:
        self._made: OrderedDict[tuple[int, str], Future[Printing]] = OrderedDict()
        self._lock = Lock()

    def ready(self, house: Design) -> Printing | None:
        """The printing of this very design, when it is there."""
        with self._lock:
            made = [each for each in self._made.values() if each.done() and each.exception() is None]
        return next((each.result() for each in made if each.result().design is house), None)

    def claim(self, state: State, units: Preset) -> tuple[Future[Printing], bool]:
        """The printing of a revision as it comes, and whether it is for the caller to make it."""
        key, house = (state.revision.number, units.name), state.in_units(units)
        with self._lock:
            held = self._made.get(key)
            if held is not None and (not held.done() or _is_of(held, house)):
                self._made.move_to_end(key)
                return held, False
            made = self._made[key] = Future()
            self._made.move_to_end(key)
            while len(self._made) > MOST_KEPT:
                self._made.popitem(last=False)
            return made, True


def _is_of(held: Future[Printing], house: Design) -> bool:
    return held.exception() is None and held.result().design is house


_OF_DESKS: WeakKeyDictionary[Desk, Numbered] = WeakKeyDictionary()
_GUARD = Lock()


def numbered(desk: Desk) -> Numbered:
    """What has been numbered of the job on a desk."""
    with _GUARD:
        return _OF_DESKS.setdefault(desk, Numbered())


def printing_of(desk: Desk, state: State, units: Preset) -> Printing:
    """The printing of a revision with its book of addresses, made now if need be: up to seconds."""
    made, _ = numbered(desk).claim(state, units)
    _fill(made, state, units)
    try:
        return made.result()
    except Superseded:
        return printing_of(desk, state, units)


def number_later(desk: Desk, state: State, units: Preset) -> Future[Printing]:
    """Have the lines of the newest revision numbered when the answer is out."""
    made, ours = numbered(desk).claim(state, units)
    if ours:
        desk._later(lambda: _fill(made, state, units, desk))
    return made


def _fill(made: Future[Printing], state: State, units: Preset, desk: Desk | None = None) -> None:
    """Make a printing; with ``desk`` only as long as its revision is the newest, giving way to others.

    Who comes first makes it: a paper that is asked for does not wait for the hand behind the answers.
    """
    with _GUARD:
        if made.running() or made.done():
            return
        made.set_running_or_notify_cancel()
    try:
        house = state.in_units(units)
        if desk is not None:
            _look_ahead(house, units, desk, state)
        printing = Printing(house, units, f"revision {state.revision.number}")
        _ = printing.found
    except Exception as fault:
        # Its frames would hold the design for as long as this is kept.
        made.set_exception(fault.with_traceback(None))
    else:
        made.set_result(printing)


def _look_ahead(house: Design, units: Preset, desk: Desk, state: State) -> None:
    """Find the outlines of the workings, which is most of the work, stroke by stroke."""
    for i, figure in enumerate(house.results.values()):
        if i % STROKE == 0:
            time.sleep(PAUSE)
            if desk.state.revision.number != state.revision.number:
                raise Superseded
        outline_of(figure, units)


def callout_of(page: Page) -> Callout | None:
    """Sheet and line of the open figure, line 0 while the lines wait; None where it has no address."""
    desk = page.desk
    if desk is None or not page.opened:
        return None
    try:
        figure = _opened(page)
    except NoSuchFigure:
        return None
    printing = numbered(desk).ready(page.house)
    if printing is not None:
        return parsed(printing.found.key(figure))
    state = desk.state
    if state.revision.number != page.revision.number or state.in_units(page.units) is not page.house:
        return None  # a trial, or an older revision: its lines are not those of the papers
    number_later(desk, state, page.units)
    sheet = sheet_of(page.house, figure)
    return (sheet, 0) if sheet else None


def _opened(page: Page) -> Figure:
    path = page.opened.strip().strip("/")
    whole = f"{path}/loss"
    house = page.house
    return figure_at(house, whole if path not in house and whole in house else path)


def parsed(key: str) -> Callout | None:
    """Sheet and line of a key such as ``2·14``, of ``2.14`` or ``2-14``; None for anything else."""
    found = ADDRESS.fullmatch(key)
    return (int(found[1]), int(found[2])) if found else None


_SHEETS: WeakKeyDictionary[Design, dict[object, int]] = WeakKeyDictionary()


def sheet_of(house: Design, figure: Figure) -> int:
    """The sheet of a figure, told without the book: that of the first step that needs it; else 0."""
    figure = original_of(figure)
    if isinstance(figure.origin, Leaf):
        return GIVEN
    by = _SHEETS.get(house)
    if by is None:
        by = _SHEETS[house] = {}
        for attribute, sheet in (("losses", 2), *((each.attribute, each.sheet) for each in STEPS)):
            found = (each for _, each in walk_results(getattr(house, attribute)))
            for each in ancestors(*found):
                by.setdefault(_signature(each), sheet)
    return by.get(_signature(figure), 0)


def _signature(figure: Figure) -> object:
    """What two figures share that are one working: their formula and what goes into it."""
    if isinstance(figure.origin, Formula):
        return (id(figure.origin), *(id(each) for each in flat(figure.inputs)))
    return id(figure)


def path_at(printing: Printing, callout: Callout) -> str:
    """The path of the figure at an address; empty where there is none that opens by itself."""
    key = f"{callout[0]}·{callout[1]}"
    names, figures = printing.design.names, printing.design.figures
    found = printing.found
    for group in (*found.groups, *found.given):
        for figure in (*group.blocks, *group.lines):
            if found.key(figure) == key:
                place = names.path(figure)
                return place if place in figures else _same(printing, key)
    return ""


def _same(printing: Printing, key: str) -> str:
    """The path of another figure with this address: of one formula and the same inputs."""
    found = printing.found
    return next((path for path, each in printing.design.figures.items() if found.key(each) == key), "")


def last_lines(printing: Printing) -> dict[int, int]:
    """The last line of each sheet."""
    last: dict[int, int] = {}
    for key in printing.found.keys.values():
        sheet, _, line = key.partition("·")
        last[int(sheet)] = max(last.get(int(sheet), 0), int(line))
    return last


def sheet_key(number: int) -> str:
    """The name in an address of a sheet by its number."""
    return SHEETS[number - 1][0]
