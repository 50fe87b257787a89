"""Claim: what was damaged is found, said, and never given out as if it were whole."""

from __future__ import annotations

import random
from pathlib import Path

import pytest
from sqlalchemy import text

from heatledger.book.book import Book
from heatledger.book.errors import BookDamaged
from heatledger.book.opening import open_book
from tests.book.helping import LARGE, TEXT, begun, edited


def test_a_text_that_was_tampered_with_is_never_given_out(book: Book) -> None:
    first = begun(book)
    second = edited(book, first, TEXT + "built: 1926\n")
    third = edited(book, second, TEXT + "built: 1930\n")
    with book.store.writing() as connection:
        connection.execute(text("UPDATE revision SET text = :bad WHERE number = 2"), {"bad": b"not packed"})
        swap = "UPDATE revision SET text = (SELECT text FROM revision WHERE number = 1) WHERE number = 3"
        connection.execute(text(swap))
    for number in (2, 3):
        with pytest.raises(BookDamaged, match="damaged") as said:
            book.revision(first.job_id, number)
        assert "restore" in said.value.mend
    with pytest.raises(BookDamaged):
        book.check()
    assert book.revision(first.job_id, 1) == first
    assert [each.number for each in book.revisions(first.job_id)] == [1, 2, third.number]


@pytest.mark.parametrize(
    "harm",
    [
        "UPDATE job SET latest = 5",
        "UPDATE job SET head = 9",
        "UPDATE revision SET parent = 7 WHERE number = 2",
        "UPDATE revision SET digest = 'x' WHERE number = 1",
    ],
)
def test_check_finds_a_history_that_does_not_hang_together(book: Book, harm: str) -> None:
    edited(book, begun(book), TEXT)
    assert book.check().revisions == 2
    with book.store.writing() as connection:
        connection.execute(text(harm))
    with pytest.raises(BookDamaged):
        book.check()


def overwrite(path: Path, start: int, length: int) -> None:
    with path.open("rb+") as file:
        file.seek(start)
        file.write(random.Random(start).randbytes(length))


def test_a_damaged_head_of_the_file_is_said_when_opened(tmp_path: Path) -> None:
    path = tmp_path / "book.sqlite"
    book = open_book(str(path))
    begun(book)
    book.close()
    overwrite(path, 0, 100)
    harmed = path.read_bytes()
    with pytest.raises(BookDamaged) as said:
        open_book(str(path))
    assert str(path) in said.value.what and "restore the last backup" in said.value.mend
    assert path.read_bytes() == harmed, "a damaged book is left for whoever can save it"


@pytest.mark.parametrize("start", [1, 2, 3, 5, 8, 13, 30])
def test_damage_anywhere_is_found(tmp_path: Path, start: int) -> None:
    path = tmp_path / "book.sqlite"
    book = open_book(str(path))
    last = begun(book, LARGE)
    edited(book, last, LARGE[::-1])
    book.close()
    overwrite(path, start * 4096, 4096)

    def reads_all() -> None:
        harmed = open_book(str(path))
        try:
            harmed.check()
        finally:
            harmed.close()

    with pytest.raises(BookDamaged):
        reads_all()


def test_a_backup_that_cannot_read_the_book_says_so_and_leaves_no_file(tmp_path: Path) -> None:
    path, file = tmp_path / "book.sqlite", tmp_path / "to" / "all.sqlite"
    book = open_book(str(path))
    begun(book)
    with book.store.reading() as connection:
        page = connection.execute(text("SELECT rootpage FROM sqlite_master WHERE name = 'revision'")).scalar()
    book.close()
    overwrite(path, (page - 1) * 4096, 4096)
    harmed = open_book(str(path))
    with pytest.raises(BookDamaged) as said:
        harmed.backup(file)
    harmed.close()
    assert str(path) in said.value.what
    assert list(file.parent.iterdir()) == []
