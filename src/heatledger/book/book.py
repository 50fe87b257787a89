"""The book: every method is one transaction, kept whole or not at all, and safe to call from any thread."""

from __future__ import annotations

from datetime import UTC, datetime
from pathlib import Path
from typing import Any

from sqlalchemy import delete, insert, select, update
from sqlalchemy.exc import IntegrityError

from heatledger.book import figures, history
from heatledger.book import tables as t
from heatledger.book.checking import check_store
from heatledger.book.copies import write_copy
from heatledger.book.errors import BookError
from heatledger.book.records import Checked, JobEntry, Kept, Revision, RevisionLine, WrongEntry
from heatledger.book.restoring import Restored, restore_into
from heatledger.book.store import Store

LONGEST_PATH = 2000
_TRIES = 50

_ENTRY = select(
    t.job, t.revision.c.name, t.revision.c.address, t.revision.c.at.label("head_at"), t.kept.c.summary
).select_from(
    t.job.join(t.revision, (t.revision.c.job_id == t.job.c.id) & (t.revision.c.number == t.job.c.head))
    .outerjoin(t.kept, (t.kept.c.job_id == t.job.c.id) & (t.kept.c.number == t.job.c.head))
)  # fmt: skip


class Book:
    """Jobs and every revision of them. Whatever its user has to know is raised as a BookError."""

    def __init__(self, store: Store) -> None:
        self.store = store

    @property
    def place(self) -> str:
        """What people call this book: its file, or its server without the password."""
        return self.store.place

    def close(self) -> None:
        """Let go of the file or the server."""
        self.store.close()

    def jobs(self, put_away: bool = False) -> list[JobEntry]:
        """The jobs in use, or those put away; the one touched last comes first."""
        asked = _ENTRY.where(t.job.c.put_away == put_away).order_by(t.job.c.touched.desc(), t.job.c.id)
        with self.store.reading() as connection:
            return [_entry(row) for row in connection.execute(asked).mappings()]

    def job(self, id: str) -> JobEntry:
        """One job. Raises NoSuchJob."""
        with self.store.reading() as connection:
            row = connection.execute(_ENTRY.where(t.job.c.id == id)).mappings().first()
        if row is None:
            raise history.no_job(id)
        return _entry(row)

    def add_job(self, text: str, name: str, address: str, said: str, by: str, file: str = "") -> Revision:
        """Begin a job: its first revision. The id is made from the name."""
        content = {"text": text, "name": name, "address": address, "said": said, "by": by}
        for left in range(_TRIES, -1, -1):
            try:
                with self.store.writing() as connection:
                    id = history.free_id(connection, name)
                    made = history.begin(connection, id, content)
                    if file:
                        connection.execute(update(t.job).where(t.job.c.id == id).values(file=file))
                    return made
            except IntegrityError:  # another computer was given the same id; the next one is free
                if not left:
                    raise
        raise AssertionError("the last try raises or returns")

    def head(self, id: str) -> Revision:
        """The revision a job stands at."""
        with self.store.reading() as connection:
            number = connection.execute(select(t.job.c.head).where(t.job.c.id == id)).scalar()
            if number is None:
                raise history.no_job(id)
            return history.read(connection, id, number)

    def revision(self, id: str, number: int) -> Revision:
        """Any revision of a job. Raises NoSuchJob."""
        with self.store.reading() as connection:
            return history.read(connection, id, number)

    def revisions(self, id: str) -> list[RevisionLine]:
        """Every revision of a job without its text, oldest first."""
        with self.store.reading() as connection:
            return history.lines(connection, id)

    def save(self, id: str, text: str, name: str, address: str, said: str, by: str, base: int) -> Revision:
        """A new revision behind ``base``. Raises MovedOn when the job no longer stands there."""
        content = {"text": text, "name": name, "address": address, "said": said, "by": by}
        with self.store.writing() as connection:
            return history.follow(connection, id, content, base)

    def undo(self, id: str, base: int) -> Revision:
        """Stand at the revision before; nothing is lost. Raises NothingToUndo, MovedOn."""
        with self.store.writing() as connection:
            return history.go_back(connection, id, base)

    def redo(self, id: str, base: int) -> Revision:
        """Stand at the revision that was left last by undo. Raises NothingToUndo, MovedOn."""
        with self.store.writing() as connection:
            return history.go_forward(connection, id, base)

    def go_to(self, id: str, number: int, base: int) -> Revision:
        """Stand at any revision. Raises NoSuchJob, MovedOn."""
        with self.store.writing() as connection:
            return history.go_straight(connection, id, number, base)

    def can_undo(self, id: str) -> bool:
        """Whether there is a revision before the one the job stands at."""
        with self.store.reading() as connection:
            return history.parent_of(connection, id, self._head_number(connection, id)) is not None

    def can_redo(self, id: str) -> bool:
        """Whether a revision was left by undo from where the job stands."""
        with self.store.reading() as connection:
            return history.left_to(connection, id, self._head_number(connection, id)) is not None

    def put_away(self, id: str) -> None:
        """Take a job out of the list of those in use; nothing of it is deleted."""
        self._set(id, put_away=True)

    def take_out(self, id: str) -> None:
        """Put a job that was put away back among those in use."""
        self._set(id, put_away=False)

    def keep(self, id: str, number: int, kept: Kept, at: datetime | None = None) -> None:
        """Keep the figures that a revision showed, of the one made ``at`` that time where it is given.

        Raises NoSuchJob, also when another book was put back and holds another revision of that number.
        """
        with self.store.writing() as connection:
            history.locked_job(connection, id)
            asked = select(t.revision.c.at).where(
                (t.revision.c.job_id == id) & (t.revision.c.number == number)
            )
            made = connection.execute(asked).scalar()
            if made is None or (at is not None and made != at):
                raise history.no_revision(id, number)
            figures.put_kept(connection, id, number, kept)

    def kept(self, id: str, number: int) -> Kept | None:
        """The figures that a revision showed, None when none were kept."""
        with self.store.reading() as connection:
            return figures.kept_at(connection, id, number)

    def set_wrong(self, id: str, path: str, typed: str, what: str, mend: str, by: str) -> None:
        """Remember an entry that could not be taken as typed, in the place of the one before at its path."""
        if len(path) > LONGEST_PATH:
            raise BookError("The place of that entry is too long to keep.", "Give its room a shorter id.")
        here = (t.wrong_entry.c.job_id == id) & (t.wrong_entry.c.path == t.storable(path))
        row = {"path": path, "typed": typed, "what": what, "mend": mend, "by": by, "at": datetime.now(UTC)}
        with self.store.writing() as connection:
            history.locked_job(connection, id)
            connection.execute(delete(t.wrong_entry).where(here))
            connection.execute(insert(t.wrong_entry).values(job_id=id, **row))

    def wrong(self, id: str) -> list[WrongEntry]:
        """The entries of a job that could not be taken, in the order they were typed."""
        c = t.wrong_entry.c
        asked = (
            select(c.path, c.typed, c.what, c.mend, c.by, c.at).where(c.job_id == id).order_by(c.at, c.path)
        )
        with self.store.reading() as connection:
            return [WrongEntry(**row) for row in connection.execute(asked).mappings()]

    def clear_wrong(self, id: str, path: str) -> None:
        """Forget the wrong entry at a path; nothing happens when there is none."""
        here = (t.wrong_entry.c.job_id == id) & (t.wrong_entry.c.path == t.storable(path))
        with self.store.writing() as connection:
            connection.execute(delete(t.wrong_entry).where(here))

    def set_file(self, id: str, file: str, digest: str, number: int, by: str) -> None:
        """Remember the file on disk, the fingerprint of what it holds and the revision that is."""
        seen = {"file_digest": digest, "file_number": number, "file_by": by, "file_at": datetime.now(UTC)}
        self._set(id, file=file, **seen)

    def file_digest(self, id: str) -> str:
        """The fingerprint of the file on disk as it was last read or written; empty when it never was."""
        with self.store.reading() as connection:
            row = connection.execute(select(t.job.c.file_digest).where(t.job.c.id == id)).first()
        if row is None:
            raise history.no_job(id)
        return row.file_digest or ""

    def backup(self, to: Path) -> Path:
        """Write the whole book into a new SQLite file. A file that is there is left alone."""
        return write_copy(self.store, Path(to))

    def restore(self, from_: Path) -> Restored:
        """Put a backup in the place of everything in this book, which is backed up itself before."""
        return restore_into(self.store, Path(from_))

    def check(self) -> Checked:
        """Read the whole book through. Raises BookDamaged with what was found."""
        return check_store(self.store)

    def _set(self, id: str, **values: Any) -> None:
        with self.store.writing() as connection:
            if not connection.execute(update(t.job).where(t.job.c.id == id).values(**values)).rowcount:
                raise history.no_job(id)

    def _head_number(self, connection: Any, id: str) -> int:
        number = connection.execute(select(t.job.c.head).where(t.job.c.id == id)).scalar()
        if number is None:
            raise history.no_job(id)
        return int(number)


def _entry(row: Any) -> JobEntry:
    plain = ("id", "name", "address", "head", "head_at", "latest", "begun", "touched", "put_away", "file_at")
    return JobEntry(
        **{each: row[each] for each in plain},
        file=row["file"] or "",
        summary=row["summary"] or {},
        file_number=row["file_number"] or 0,
        file_by=row["file_by"] or "",
    )
