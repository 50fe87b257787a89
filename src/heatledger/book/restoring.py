"""Putting a backup in the place of the book, after the book itself was backed up."""

from __future__ import annotations

import sqlite3
import tempfile
from contextlib import closing
from dataclasses import dataclass
from pathlib import Path

from sqlalchemy import delete, func, select, text
from sqlalchemy.engine import URL

from heatledger.book import tables as t
from heatledger.book.checking import check_store
from heatledger.book.copies import automatic_backup, copy_rows, plain_tables
from heatledger.book.errors import BookError
from heatledger.book.faults import told
from heatledger.book.forms import bring_up, form_of
from heatledger.book.store import Store


@dataclass(frozen=True)
class Restored:
    """What a restored book holds, and where the book as it was before lies now (None: it was empty)."""

    jobs: int
    revisions: int
    before: Path | None


def restore_into(store: Store, from_: Path) -> Restored:
    """Replace everything in the book by what a backup holds, at once or not at all. Raises BookError.

    The backup is read through first; one of an earlier version is brought up on the way, and the file
    itself stays as it is.
    """
    with tempfile.TemporaryDirectory(prefix="heatledger-") as folder:
        copy = Store(URL.create("sqlite", database=str(_copied(from_, Path(folder)))))
        copy.place = str(from_)
        try:
            with copy.reading() as connection:
                if not form_of(connection, copy.place):
                    raise BookError(f"{from_} holds no book.", "Name a file that  backup  has written.")
            bring_up(copy, with_backup=False)
            checked = check_store(copy)
            before = automatic_backup(store, "before-restore") if _holds_jobs(store) else None
            _replace(store, copy)
        finally:
            copy.close()
    return Restored(checked.jobs, checked.revisions, before)


def _copied(from_: Path, folder: Path) -> Path:
    if not from_.is_file():
        raise BookError(f"There is no file {from_}.", "Name a file that  backup  has written.")
    target = folder / "copy.sqlite"
    with (
        told(str(from_)),
        closing(sqlite3.connect(f"{from_.resolve().as_uri()}?mode=ro", uri=True)) as old,
        closing(sqlite3.connect(target)) as new,
    ):
        old.backup(new)
    return target


def _holds_jobs(store: Store) -> bool:
    with store.reading() as connection:
        return bool(connection.execute(select(func.count()).select_from(t.job)).scalar())


def _replace(store: Store, copy: Store) -> None:
    with copy.reading() as source, store.writing() as target:
        if store.path is None:
            target.execute(text("LOCK TABLE job, revision IN EXCLUSIVE MODE"))
        for table in reversed(t.metadata.sorted_tables):
            target.execute(delete(table))
        copy_rows(source, target, [each for each in plain_tables(source) if each.name != t.VERSION_TABLE])
