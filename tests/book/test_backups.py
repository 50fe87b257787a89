"""Claim: a backup is the whole book in one file, goes back into either engine, and overwrites nothing."""

from __future__ import annotations

import errno
import os
import sqlite3
from collections.abc import Iterator
from contextlib import ExitStack, closing
from pathlib import Path
from typing import Any

import pytest

from heatledger.book.book import Book
from heatledger.book.errors import BookDamaged, BookError, DiskFull, NewerBook, NoSuchJob
from heatledger.book.opening import open_book
from heatledger.book.records import Kept
from heatledger.book.tables import VERSION_TABLE
from tests.book.helping import TEXT, begun, edited


def filled(book: Book) -> str:
    """A book with a bit of everything; the id of its first job."""
    first = begun(book)
    second = edited(book, first, TEXT + "built: 1926\n")
    edited(book, second, TEXT + "built: 1930\n")
    book.undo(first.job_id, 3)
    book.keep(first.job_id, 2, Kept("0.0.9", {"loss": 1}, {"house/loss": (9.5, "heat rate")}))
    book.set_wrong(first.job_id, "built", "193x", "No year.", "Write 1930.", "Ben")
    away = begun(book, name="Put away")
    book.put_away(away.job_id)
    return first.job_id


def contents(book: Book) -> list[Any]:
    """Everything a book can be asked for."""
    found: list[Any] = []
    for entry in [*book.jobs(), *book.jobs(put_away=True)]:
        lines = book.revisions(entry.id)
        found += [entry, lines, book.wrong(entry.id), book.can_undo(entry.id), book.can_redo(entry.id)]
        found += [book.revision(entry.id, each.number) for each in lines]
        found += [book.kept(entry.id, each.number) for each in lines]
    return found


@pytest.fixture(params=["into sqlite", "into postgresql"])
def other(request: pytest.FixtureRequest, tmp_path: Path) -> Iterator[Book]:
    """Another book to restore into, of either engine."""
    with ExitStack() as stack:
        if request.param == "into sqlite":
            place = str(tmp_path / "other.sqlite")
        else:
            place = stack.enter_context(request.getfixturevalue("postgres").lent())
        made = open_book(place)
        yield made
        made.close()


def test_a_backup_of_either_engine_restores_into_either(book: Book, other: Book, tmp_path: Path) -> None:
    id = filled(book)
    file = book.backup(tmp_path / "backups of ann" / "all.sqlite")
    before = contents(book)
    edited(book, book.head(id), "after the backup\n")
    restored = other.restore(file)
    assert (restored.jobs, restored.revisions, restored.before) == (2, 4, None)
    assert contents(other) == before
    assert other.check().revisions == 4
    assert other.redo(id, 2).number == 3
    assert edited(other, other.head(id), "goes on\n").number == 4


def test_restoring_keeps_what_was_there_in_a_backup(book: Book, tmp_path: Path) -> None:
    filled(book)
    file = book.backup(tmp_path / "all.sqlite")
    late = begun(book, name="Begun later")
    restored = book.restore(file)
    with pytest.raises(NoSuchJob):
        book.job(late.job_id)
    assert restored.before is not None and restored.before.parent.name == "backups"
    book.restore(restored.before)
    assert book.head(late.job_id) == late


def test_a_backup_is_one_plain_file_that_opens_as_a_book(book: Book, tmp_path: Path) -> None:
    filled(book)
    file = book.backup(tmp_path / "all.sqlite")
    assert [each.name for each in tmp_path.iterdir() if each.name.startswith("all")] == ["all.sqlite"]
    with closing(sqlite3.connect(file)) as plain:
        assert plain.execute("PRAGMA journal_mode").fetchone() == ("delete",)
        assert plain.execute("PRAGMA integrity_check").fetchone() == ("ok",)
    copy = open_book(str(file))
    assert contents(copy) == contents(book)
    copy.close()


def test_a_backup_overwrites_nothing(book: Book, tmp_path: Path) -> None:
    (tmp_path / "letter").write_text("Dear Ann", "utf-8")
    with pytest.raises(BookError, match="there already"):
        book.backup(tmp_path / "letter")
    assert (tmp_path / "letter").read_text("utf-8") == "Dear Ann"


def test_a_backup_for_which_there_is_no_room_leaves_no_half_file(
    book: Book, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    filled(book)

    def no_room(_: int) -> None:
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    monkeypatch.setattr(os, "fsync", no_room)
    with pytest.raises(DiskFull, match="full"):
        book.backup(tmp_path / "to" / "all.sqlite")
    assert list((tmp_path / "to").iterdir()) == []


def test_a_backup_into_no_folder_is_said(book: Book, tmp_path: Path) -> None:
    (tmp_path / "file").write_text("", "utf-8")
    with pytest.raises(BookError, match="cannot be used"):
        book.backup(tmp_path / "file" / "all.sqlite")


def test_what_is_no_backup_changes_nothing(book: Book, tmp_path: Path) -> None:
    filled(book)
    before = contents(book)
    letter, empty, newer = (tmp_path / each for each in ("letter.txt", "empty.sqlite", "newer.sqlite"))
    letter.write_text("Dear Ann,\n" * 500, "utf-8")
    empty.write_bytes(b"")
    book.backup(newer)
    with closing(sqlite3.connect(newer)) as plain, plain:
        plain.execute(f"UPDATE {VERSION_TABLE} SET version_num = '0999'")
    for file, kind, said in (
        (letter, BookDamaged, "damaged"),
        (empty, BookError, "holds no book"),
        (newer, NewerBook, "newer version"),
        (tmp_path / "nowhere", BookError, "no file"),
        (tmp_path, BookError, "no file"),
    ):
        with pytest.raises(kind, match=said) as refused:
            book.restore(file)
        assert str(file) in str(refused.value)
    assert contents(book) == before


def test_a_damaged_backup_changes_nothing(book: Book, tmp_path: Path) -> None:
    filled(book)
    file = book.backup(tmp_path / "all.sqlite")
    with closing(sqlite3.connect(file)) as plain, plain:
        plain.execute("UPDATE revision SET text = x'00' WHERE number = 2")
    before = contents(book)
    with pytest.raises(BookDamaged, match=r"all\.sqlite"):
        book.restore(file)
    assert contents(book) == before
