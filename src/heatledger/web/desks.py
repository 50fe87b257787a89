"""Open jobs: the text of the head revision, the design that follows from it, and what an edit did to it.

A desk is held in memory and can be made anew from the book at any time. Its lock lets one change of a
job happen after the other; reading goes on meanwhile with the design as it was.
"""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Callable
from dataclasses import dataclass, field
from itertools import count
from secrets import token_hex
from threading import RLock
from typing import Any

from heatledger.book.errors import MovedOn
from heatledger.book.opening import Book
from heatledger.book.records import Revision, WrongEntry
from heatledger.job.accounts import said_of
from heatledger.job.again import read_again
from heatledger.job.edits import EditError
from heatledger.job.errors import JobError, JobErrors
from heatledger.job.load import read_job
from heatledger.job.model import Job
from heatledger.ledger.presets import Preset
from heatledger.papers.write import in_units
from heatledger.steps.design import Design, design
from heatledger.web.keeping import keep
from heatledger.web.later import Later

MOST_DRAWINGS = 12
_RUN = token_hex(4)
MOST_OPEN = 6
"""Jobs held in memory at once; the one used longest ago is put back."""
GATES = 8

TextEdit = Callable[[str], str]
Sentences = tuple[str, str]
"""What is wrong, and how to mend it."""


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
            self.told[units.name] = in_units(self.house, units)
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
        self.wrong: dict[str, WrongEntry] = {each.path: each for each in book.wrong(id)}

    def fresh(self) -> State:
        """The state of the head revision; made anew when another process has moved it."""
        with self.lock:
            head = self.book.job(self.id).head
            if head != self.state.revision.number:
                self._take(self._opened(self.book.head(self.id), since=self.state.house))
                self.wrong = {each.path: each for each in self.book.wrong(self.id)}
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
        self, edit: TextEdit, path: str, typed: str, by: str, base: int, told: str = "", entry: bool = True
    ) -> Outcome:
        """Change the text at one path. An ``entry`` that cannot be read is kept beside the job and changes
        nothing; any other change that cannot be made is refused.

        ``base`` is the revision that the page showed. An edit made on an older one is laid on the newest
        where nobody else touched the same entry.
        """
        with self.lock:
            state = self.fresh()
            clash = self._clash(state, path, base)
            if clash:
                return self._refused(path, typed, by, clash, entry)
            try:
                text = edit(state.revision.text)
            except EditError as fault:
                return self._refused(path, typed, by, (fault.what, fault.mend), entry)
            text, job, fixed, faults = self._read_with_slips(text, path, state.job)
            if job is None:
                return self._refused(path, typed, by, _told(faults, path), entry)
            for each in (path, *fixed):
                self._forget(each)
            if text == state.revision.text:
                return Outcome(state, "Nothing changed.", changed=False)
            said = told or said_of(state.job, job)
            self._take(self._saved(text, job, said, by, state))
            return Outcome(self.state, said)

    def replace(self, text: str, said: str, by: str, base: int) -> Outcome:
        """Put a whole new text in, as one revision; raises JobErrors when it is no job."""
        with self.lock:
            state = self.fresh()
            if base != state.revision.number:
                raise MovedOn(state.revision)
            job = read_job(text, self._file_name(state.revision))
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
            self._forget(path)
            return Outcome(self.state, "The entry is as it was.", changed=False)

    def _read_with_slips(
        self, text: str, path: str, since: Job
    ) -> tuple[str, Job | None, list[str], list[JobError]]:
        """The job in a text, with the entries that wait to be mended where they can be read now."""
        from heatledger.job.edits import set_entry

        faults: list[JobError] = []
        waiting = [each for each in self.wrong.values() if each.path != path]
        together = text
        try:
            for each in waiting:
                together = set_entry(together, each.path, each.typed)
            if waiting:
                return together, read_again(together, since), [each.path for each in waiting], []
        except (JobErrors, EditError):
            pass
        try:
            return text, read_again(text, since), [], []
        except JobErrors as errors:
            faults = list(errors.errors)
        return text, None, [], faults

    def _clash(self, state: State, path: str, base: int) -> Sentences | None:
        """A fault when somebody else changed the same entry since the page was drawn."""
        from heatledger.job.parsing import tree_of
        from heatledger.job.text import plain, walk

        if base == state.revision.number or base <= 0:
            return None
        then = walk(tree_of(self.book.revision(self.id, base).text), path)
        now = walk(state.job.source.base, path)
        if (None if then is None else plain(then)) == (None if now is None else plain(now)):
            return None
        value = "taken away" if now is None else f"set to {_short(plain(now))}"
        return (
            f"This entry was {value} by {state.revision.by or 'another page'} meanwhile, in revision "
            f"{state.revision.number}.",
            "Type yours again to put it in its place, or leave it as it is now.",
        )

    def _refused(self, path: str, typed: str, by: str, why: Sentences, entry: bool) -> Outcome:
        what, mend = why
        if not entry:
            return Outcome(self.state, f"{what} {mend}".strip(), changed=False, refused=True)
        self.book.set_wrong(self.id, path, typed, what, mend, by)
        self.wrong = {each.path: each for each in self.book.wrong(self.id)}
        return Outcome(self.state, f"{what} {mend}".strip(), self.wrong.get(path), changed=False)

    def _forget(self, path: str) -> None:
        if path in self.wrong:
            self.book.clear_wrong(self.id, path)
            del self.wrong[path]

    def _saved(self, text: str, job: Job, said: str, by: str, state: State) -> State:
        house = design(job, since=state.house)
        revision = self.book.save(self.id, text, job.name, job.address, said, by, base=state.revision.number)
        return State(revision, job, house, state.house)

    def _opened(self, revision: Revision, since: Design | None = None) -> State:
        job = read_job(revision.text, self._file_name(revision))
        return State(revision, job, design(job, since=since), since)

    def _file_name(self, revision: Revision) -> str:
        return f"revision {revision.number}"

    def _take(self, state: State) -> None:
        self.state = state
        self._later(lambda: keep(self.book, self.id, state))


def _told(faults: list[JobError], path: str) -> Sentences:
    """The fault that stands at the entry itself or closest to it, and how many more there are."""

    def far(each: JobError) -> int:
        if each.path == path:
            return 0
        return 1 if path.startswith(each.path) or each.path.startswith(path) else 2

    first = min(faults, key=far)
    what = first.message if far(first) < 2 else f"{first.path}: {first.message}"
    more = len(faults) - 1
    rest = f" The same change is at odds with {more} more." if more else ""
    return what + rest, first.mend


def _short(value: Any) -> str:
    text = str(value.get("is", "changed") if isinstance(value, dict) else value)
    return f"“{text[:40]}”" if text else "blank"


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
