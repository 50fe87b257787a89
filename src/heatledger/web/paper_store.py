"""Papers as they are set for the screen: pictures of their pages and PDFs, each made once for a revision.

Setting takes seconds the first time. Only who asks for a page waits for it; whoever asks for the same one
meanwhile waits for the same work. What was asked for longest ago is let go when it becomes much.
"""

from __future__ import annotations

import struct
from collections import OrderedDict
from collections.abc import Callable
from concurrent.futures import Future
from dataclasses import dataclass
from itertools import count
from threading import Lock
from typing import TYPE_CHECKING
from weakref import WeakKeyDictionary

from heatledger.ledger.presets import Preset
from heatledger.papers.all_papers import PAPERS, PaperKind
from heatledger.papers.compile import PaperError, Prepared, compiled, pictures
from heatledger.papers.paper import paper_prepared
from heatledger.papers.survey_sheet import survey_sheet
from heatledger.steps.design import Design
from heatledger.web.addresses import printing_of

if TYPE_CHECKING:
    from heatledger.web.desks import Desk, State

SURVEY = "survey-sheet"
KINDS = {each.name: each for each in PAPERS}
SHEET_SIZES = {"letter": "Letter", "a4": "A4"}
SHARP, COARSE = 120.0, 96.0
"""Dots to the inch of a picture; a paper of forty pages has the coarser ones."""
MOST_BYTES = 24_000_000
"""Bytes of pictures and PDFs that are kept. The one asked for last is kept whatever it takes."""
MOST_TOLD = 400
"""Papers of which the number and size of their pages is remembered, also when their pictures are gone."""

Key = tuple[int, int, str, str, str]
Pages = tuple[tuple[int, int], ...]
"""Width and height of each page, in dots."""


class NoSuchPaper(LookupError):
    """There is no paper of this name, or the job has nothing for it yet."""


@dataclass(frozen=True)
class Wanted:
    """A paper of one revision, for a reader and a sheet."""

    desk: Desk
    state: State
    units: Preset
    sheet: str
    name: str

    @property
    def key(self) -> Key:
        """What tells it from any other."""
        return (_number(self.desk), self.state.revision.number, self.units.name, self.sheet, self.name)


@dataclass(frozen=True)
class Told:
    """What is known of a paper without its pictures: its pages, or why it could not be set."""

    pages: Pages = ()
    fault: str = ""


class PaperStore:
    """The papers that have been set."""

    def __init__(self, most: int = MOST_BYTES) -> None:
        self._most = most
        self._kept: OrderedDict[tuple[Key, str], Future[list[bytes]]] = OrderedDict()
        self._told: OrderedDict[Key, Told] = OrderedDict()
        self._lock = Lock()

    def told(self, wanted: Wanted) -> Told | None:
        """What is known of a paper; None when it has not been set yet."""
        with self._lock:
            return self._told.get(wanted.key)

    def pages(self, wanted: Wanted) -> list[bytes]:
        """The pages as PNG. Raises NoSuchPaper, or PaperError when it cannot be set."""
        return self._made(wanted, "png", lambda: self._pictured(wanted))

    def pdf(self, wanted: Wanted) -> bytes:
        """The paper as PDF. Raises as ``pages`` does."""
        return self._made(wanted, "pdf", lambda: [compiled(filled(wanted))])[0]

    def _pictured(self, wanted: Wanted) -> list[bytes]:
        kind = KINDS.get(wanted.name)
        try:
            made = pictures(filled(wanted), COARSE if kind is not None and kind.large else SHARP)
        except PaperError as fault:
            self._tell(wanted.key, Told(fault=str(fault)))
            raise
        self._tell(wanted.key, Told(tuple(size_of(each) for each in made)))
        return made

    def _tell(self, key: Key, told: Told) -> None:
        with self._lock:
            self._told[key] = told
            while len(self._told) > MOST_TOLD:
                self._told.popitem(last=False)

    def _made(self, wanted: Wanted, form: str, make: Callable[[], list[bytes]]) -> list[bytes]:
        key = (wanted.key, form)
        with self._lock:
            held = self._kept.get(key)
            ours = held is None
            coming = self._kept[key] = Future() if held is None else held
            self._kept.move_to_end(key)
        if ours:
            try:
                coming.set_result(make())
            except BaseException as fault:
                with self._lock:
                    self._kept.pop(key, None)
                coming.set_exception(fault)
            self._shrink()
        return coming.result()

    def _shrink(self) -> None:
        with self._lock:
            sizes = {key: sum(map(len, each.result())) for key, each in self._kept.items() if each.done()}
            over = sum(sizes.values()) - self._most
            for key in [*sizes][:-1]:
                if over <= 0:
                    break
                del self._kept[key]
                over -= sizes[key]


STORE = PaperStore()
"""The one store of the app: what it may take is a bound on all jobs together."""

_NUMBERS: WeakKeyDictionary[Desk, int] = WeakKeyDictionary()
_NEXT = count(1)
_GUARD = Lock()


def _number(desk: Desk) -> int:
    """A number for a desk that no other has had: revisions of two books may have the same ones."""
    with _GUARD:
        return _NUMBERS.setdefault(desk, next(_NEXT))


def due(house: Design) -> list[PaperKind]:
    """The papers that a job has something for."""
    return [each for each in PAPERS if each.applies(house)] if house.losses.rooms else []


def filled(wanted: Wanted) -> Prepared:
    """What the compiler takes of a paper."""
    if wanted.name == SURVEY:
        return paper_prepared(survey_sheet(wanted.units), wanted.sheet)
    kind = next((each for each in due(wanted.state.house) if each.name == wanted.name), None)
    if kind is None:
        raise NoSuchPaper(wanted.name)
    printing = printing_of(wanted.desk, wanted.state, wanted.units)
    try:
        return kind.prepared(printing, wanted.sheet)
    finally:
        printing.found.let_go()


def size_of(png: bytes) -> tuple[int, int]:
    """Width and height of a picture, as its head says."""
    width, height = struct.unpack(">II", png[16:24])
    return width, height
