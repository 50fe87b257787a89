"""Open jobs: the text of the head revision, the design that follows from it, and what an edit did to it.

A desk is held in memory and can be made anew from the book at any time. Its lock lets one change of a
job happen after the other; reading goes on meanwhile with the design as it was.
"""

from __future__ import annotations

import logging
from collections import OrderedDict
from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from itertools import count
from secrets import token_hex
from threading import RLock

from heatledger.book.errors import BookError, MovedOn
from heatledger.book.opening import Book
from heatledger.book.records import Revision, WrongEntry
from heatledger.job.accounts import said_of
from heatledger.job.edits import EditError
from heatledger.job.load import read_job
from heatledger.job.model import Job
from heatledger.job.text import walk
from heatledger.ledger.presets import Preset
from heatledger.steps.design import Design, design
from heatledger.web.keeping import keep
from heatledger.web.later import Later
from heatledger.web.slips import Sentences, clash, read_with_slips, told

MOST_DRAWINGS = 12
JOB_FILE = "job file"
"""What the text of a revision is called where a line of it is named."""
_RUN = token_hex(4)
MOST_OPEN = 6
"""Jobs held in memory at once; the one used longest ago is put back."""
GATES = 8
TRIES = 3

TextEdit = Callable[[str], str]


@dataclass(frozen=True)
class State:
    """One revision of a job, read and designed; ``before`` is the design as it was before the last change."""

    revision: Revision
    job: Job
    house: Design
    before: Design | None = None
    told: dict[str, Design] = field(default_factory=dict)

    def in_units(self, units: Preset) -> Design:
        """The design as a reader of these units is told of it."""
        if units.name not in self.told:
            told = self.told[units.name] = self.house.told_in(units)
            # The figures are the same; only what is said of them is not.
            told.__dict__.setdefault("results", self.house.results)
        return self.told[units.name]


@dataclass(frozen=True)
class Outcome:
    """What came of a change: the new state, and what is to be said of it.

    ``fault`` is the entry that was kept because it cannot be read; ``refused`` is true for a change that
    was not made and left nothing behind.
    """

    state: State
    said: str
    fault: WrongEntry | None = None
    changed: bool = True
    refused: bool = False


class Desk:
    """One open job."""

    def __init__(self, book: Book, id: str, later: Callable[[Callable[[], None]], None]) -> None:
        self.book, self.id, self.lock, self._later = book, id, RLock(), later
        self.drawings: OrderedDict[str, dict[str, str]] = OrderedDict()
        self._count = count()
        self.state = self._opened(book.head(id))
        self.wrong = self._waiting()

    def fresh(self) -> State:
        """The state of the head revision; made anew when another process has moved it."""
        with self.lock:
            job, now = self.book.job(self.id), self.state.revision
            # A book that was put back can hold another revision of the same number.
            if (job.head, job.head_at) != (now.number, now.at):
                self._take(self._opened(self.book.head(self.id), since=self.state.house))
                self.wrong = self._waiting()
            return self.state

    def at(self, number: int) -> State:
        """The state of any revision, designed for this once; the one that is open where it is that."""
        state = self.fresh()
        if number == state.revision.number:
            return state
        return self._opened(self.book.revision(self.id, number), since=state.house)

    def remember(self, parts: dict[str, str]) -> str:
        """Keep a drawing that a browser shows now, so that an answer brings only what changed; its name."""
        with self.lock:
            token = f"{_RUN}-{next(self._count)}"
            self.drawings[token] = parts
            while len(self.drawings) > MOST_DRAWINGS:
                self.drawings.popitem(last=False)
            return token

    def edit(
        self,
        edit: TextEdit,
        path: str,
        typed: str,
        by: str,
        base: int,
        said: str = "",
        entry: bool = False,
        beside: bool = False,
    ) -> Outcome:
        """Change the text at one path. An ``entry`` that cannot be read is kept beside the job and changes
        nothing; any other change that cannot be made is refused. ``beside``: something is said beside a
        value, and what was typed for the value itself goes on waiting.

        ``base`` is the revision that the page showed. An edit made on an older one is laid on the newest
        where nobody else touched the same entry, and again when another process was faster.
        """
        for left in range(TRIES - 1, -1, -1):
            try:
                return self._edited(edit, path, typed, by, base, said, entry, beside)
            except MovedOn:
                if not left:
                    raise
        raise AssertionError("the last try returns or raises")

    def _edited(
        self, edit: TextEdit, path: str, typed: str, by: str, base: int, said: str, entry: bool, beside: bool
    ) -> Outcome:
        with self.lock:
            state = self.fresh()
            self.wrong = self._waiting()
            found = self._clash(state, path, base)
            if found:
                return self._refused(path, typed, by, found, entry)
            try:
                text = edit(state.revision.text)
            except EditError as fault:
                return self._refused(path, typed, by, (fault.what, fault.mend), entry)
            read = read_with_slips(text, path, self.wrong.values(), state.job)
            if read.job is None:
                return self._refused(path, typed, by, told(read.faults, path), entry)
            changed = read.text != state.revision.text
            if changed:
                said = said or said_of(state.job, read.job)
                self._take(self._saved(read.text, read.job, said, by, state))
            # Only now: an edit that could not be saved leaves what waits where it is.
            done = [] if beside else _settled(self.wrong, path, read.job)
            for each in (*done, *read.taken):
                self._forget(each)
            return Outcome(self.state, said if changed else "Nothing changed.", changed=changed)

    def replace(self, text: str, said: str, by: str, base: int) -> Outcome:
        """Put a whole new text in, as one revision; raises JobErrors when it is no job."""
        with self.lock:
            state = self.fresh()
            if base != state.revision.number:
                raise MovedOn(state.revision)
            job = read_job(text, JOB_FILE)
            self._take(self._saved(text, job, said, by, state))
            return Outcome(self.state, said)

    def move(self, how: str, base: int, number: int = 0) -> Outcome:
        """Undo, redo, or go to a revision."""
        with self.lock:
            state = self.fresh()
            if how == "undo":
                revision = self.book.undo(self.id, base)
            elif how == "redo":
                revision = self.book.redo(self.id, base)
            else:
                revision = self.book.go_to(self.id, number, base)
            self._take(self._opened(revision, since=state.house))
            words = {"undo": "Undone", "redo": "Done again"}.get(how, f"Back at revision {revision.number}")
            return Outcome(self.state, f"{words}: {state.revision.said if how == 'undo' else revision.said}")

    def withdraw(self, path: str) -> Outcome:
        """Let go of an entry that could not be read; the last good value stays."""
        with self.lock:
            self.book.clear_wrong(self.id, path)
            self.wrong = self._waiting()
            return Outcome(self.state, "The entry is as it was.", changed=False)

    def _clash(self, state: State, path: str, base: int) -> Sentences | None:
        """A fault when somebody else changed the same entry since the page was drawn."""
        if base == state.revision.number or base <= 0:
            return None
        return clash(state.revision, state.job, self.book.revision(self.id, base).text, path)

    def _refused(self, path: str, typed: str, by: str, why: Sentences, entry: bool) -> Outcome:
        what, mend = why
        if not entry:
            return Outcome(self.state, f"{what} {mend}".strip(), changed=False, refused=True)
        self.book.set_wrong(self.id, path, typed, what, mend, by)
        self.wrong = self._waiting()
        return Outcome(self.state, f"{what} {mend}".strip(), self.wrong.get(path), changed=False)

    def _waiting(self) -> dict[str, WrongEntry]:
        """The entries that wait to be mended, those typed by way of another process too."""
        return {each.path: each for each in self.book.wrong(self.id)}

    def _forget(self, path: str) -> None:
        if path not in self.wrong:
            return
        try:
            self.book.clear_wrong(self.id, path)
        except BookError as fault:  # the edit itself is kept; what waited is still said to wait
            logging.getLogger("heatledger").warning("entry %s not cleared: %s", path, fault)
            return
        self.wrong = {key: each for key, each in self.wrong.items() if key != path}

    def _saved(self, text: str, job: Job, said: str, by: str, state: State) -> State:
        house = design(job, since=state.house)
        revision = self.book.save(self.id, text, job.name, job.address, said, by, base=state.revision.number)
        return State(revision, job, house, state.house)

    def _opened(self, revision: Revision, since: Design | None = None) -> State:
        job = read_job(revision.text, JOB_FILE)
        return State(revision, job, design(job, since=since), since)

    def _take(self, state: State) -> None:
        self.state = state
        self._later(lambda: keep(self.book, self.id, state))


def _settled(wrong: Iterable[str], path: str, job: Job) -> list[str]:
    """The entries that wait no longer after an edit at a path: the one there, and all in what it took out."""
    gone = walk(job.source.base, path) is None
    return [each for each in wrong if each == path or (gone and each.startswith(f"{path}/"))]


class Desks:
    """The jobs that are open, and one hand that does what can wait."""

    def __init__(self, book: Book) -> None:
        self.book = book
        self._open: OrderedDict[str, Desk] = OrderedDict()
        self._lock = RLock()
        # Opening a job takes a while; whoever asks for another one does not wait for it.
        self._gates = [RLock() for _ in range(GATES)]
        self._later = Later()

    def open(self, id: str) -> Desk:
        """The desk of a job; raises NoSuchJob, or JobErrors when its text cannot be read any more."""
        self._later.asked()
        desk = self._at_hand(id)
        if desk is not None:
            return desk
        with self._gates[hash(id) % GATES]:
            desk = self._at_hand(id)
            if desk is None:
                desk = Desk(self.book, id, self.later)
                with self._lock:
                    self._open[id] = desk
                    while len(self._open) > MOST_OPEN:
                        self._open.popitem(last=False)
            return desk

    def _at_hand(self, id: str) -> Desk | None:
        with self._lock:
            if id in self._open:
                self._open.move_to_end(id)
            return self._open.get(id)

    def later(self, work: Callable[[], None]) -> None:
        """Do something when what is asked for now has been answered."""
        self._later.put(work)

    def rest(self) -> None:
        """Wait until what was put off is done."""
        self._later.rest()

    def close(self) -> None:
        """Finish what was put off, and let go of the jobs."""
        self._later.close()
        self._open.clear()
