"""Claim: whatever befalls the book is said with a way out, and the last good revision stands."""

from __future__ import annotations

import os
import sqlite3
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest
from sqlalchemy import text

from heatledger.book import addresses
from heatledger.book.book import Book
from heatledger.book.errors import BookDamaged, BookError, BookLocked, DiskFull, NewerBook
from heatledger.book.history import locked_job
from heatledger.book.opening import open_book
from heatledger.book.tables import VERSION_TABLE
from tests.book.helping import LARGE, TEXT, begun, edited
from tests.book.postgres import Server


def file_of(book: Book) -> Path:
    assert book.store.path is not None
    return book.store.path


@contextmanager
def no_room(book: Book) -> Iterator[None]:
    """Inside, the engine itself says that the disk is full when a large revision is written."""

    def limit(pages: int) -> None:
        with book.store.writer.connect() as connection:
            connection.exec_driver_sql(f"PRAGMA max_page_count={pages}")

    def trigger(words: str) -> None:
        with book.store.writing() as connection:
            connection.execute(text(words))

    if book.store.path is not None:
        limit(1)  # the engine takes as many as there are
        yield
        limit(2_000_000)
        return
    trigger(
        "CREATE FUNCTION no_room() RETURNS trigger LANGUAGE plpgsql AS "
        "$$ BEGIN RAISE EXCEPTION 'could not extend file' USING ERRCODE = '53100'; END $$"
    )
    trigger("CREATE TRIGGER no_room AFTER INSERT ON revision FOR EACH ROW EXECUTE FUNCTION no_room()")
    yield
    trigger("DROP TRIGGER no_room ON revision")


def test_a_full_disk_costs_only_the_edit_that_had_no_room(book: Book) -> None:
    first = begun(book)
    with no_room(book):
        with pytest.raises(DiskFull) as said:
            edited(book, first, LARGE)
        assert "full" in said.value.what and "room" in said.value.mend
        with pytest.raises(DiskFull):
            begun(book, LARGE)
        assert book.head(first.job_id) == first
        assert len(book.revisions(first.job_id)) == 1
    second = edited(book, first, LARGE)
    assert second.number == 2
    assert book.head(first.job_id).text == LARGE
    assert book.check().revisions == 2


def test_a_book_held_by_another_program_is_said_to_be(url: str) -> None:
    other, waits = open_book(url), open_book(url, patience=0.2)
    try:
        first = begun(other)
        with other.store.writing() as connection:
            locked_job(connection, first.job_id)
            with pytest.raises(BookLocked) as said:
                edited(waits, first, TEXT)
            assert waits.head(first.job_id) == first, "who only reads does not wait"
        assert "another program" in said.value.what
        assert "try again" in said.value.mend
        assert edited(waits, first, TEXT).number == 2
    finally:
        other.close()
        waits.close()


def test_a_file_held_for_itself_by_another_program_is_said_when_opened(tmp_path: Path) -> None:
    path = tmp_path / "book.sqlite"
    open_book(str(path)).close()
    holder = sqlite3.connect(path, isolation_level=None)
    try:
        holder.execute("PRAGMA locking_mode=EXCLUSIVE")
        holder.execute("BEGIN EXCLUSIVE")
        with pytest.raises(BookLocked, match="another program"):
            open_book(str(path), patience=0.2)
    finally:
        holder.close()
    open_book(str(path)).close()


def test_a_thread_that_holds_the_book_too_long_is_said(tmp_path: Path) -> None:
    book = open_book(str(tmp_path / "book.sqlite"), patience=0.1)
    first = begun(book)
    with book.store.writing(), pytest.raises(BookLocked):
        edited(book, first, TEXT)
    book.close()


def test_a_file_that_is_something_else_is_left_alone(tmp_path: Path) -> None:
    letter, table = tmp_path / "letter.txt", tmp_path / "other.sqlite"
    letter.write_text("Dear Ann,\n" * 200, "utf-8")
    with sqlite3.connect(table) as connection:
        connection.execute("CREATE TABLE birds (name)")
    connection.close()
    with pytest.raises(BookDamaged):
        open_book(str(letter))
    assert letter.read_text("utf-8") == "Dear Ann,\n" * 200
    with pytest.raises(BookError, match="is no book"):
        open_book(str(table))


def test_a_book_of_a_newer_version_is_left_alone(book: Book, url: str) -> None:
    first = begun(book)
    with book.store.writing() as connection:
        connection.execute(text(f"UPDATE {VERSION_TABLE} SET version_num = '0999'"))
    with pytest.raises(NewerBook) as said:
        open_book(url)
    assert "newer version" in said.value.what and "0999" in said.value.what
    assert book.head(first.job_id) == first


def test_a_folder_that_cannot_be_made_or_written_is_said(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "file").write_text("in the way", "utf-8")
    with pytest.raises(BookError, match="cannot be used") as said:
        open_book(str(tmp_path / "file" / "book.sqlite"))
    assert "may write" in said.value.mend
    with pytest.raises(BookError, match="cannot be written"):
        open_book(str(tmp_path))

    def refuse(*_: object, **__: object) -> None:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(Path, "mkdir", refuse)
    with pytest.raises(BookError, match="permission denied"):
        open_book(str(tmp_path / "closed" / "book.sqlite"))


def test_a_book_that_may_only_be_read_says_so(tmp_path: Path) -> None:
    book = open_book(str(tmp_path / "book.sqlite"))
    first = begun(book)
    with book.store.writer.connect() as connection:
        connection.exec_driver_sql("PRAGMA query_only=ON")
    with pytest.raises(BookError, match="cannot be written"):
        edited(book, first, TEXT)
    assert book.head(first.job_id) == first
    book.close()


def test_the_reader_of_the_book_cannot_write(book: Book) -> None:
    begun(book)
    with pytest.raises(BookError, match="cannot be written"), book.store.reading() as connection:
        connection.execute(text("UPDATE job SET head = 4"))
    assert book.jobs()[0].head == 1


def test_a_network_folder_is_refused(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    mounts = (
        "/dev/sda1 / ext4 rw 0 0\nhost:/jobs /srv/jobs\\040here nfs4 rw 0 0\n//host/x /srv/x cifs rw 0 0\n"
    )
    assert addresses.kind_of_mount(Path("/srv/ann"), mounts) == "ext4"
    assert addresses.kind_of_mount(Path("/srv/jobs here/kiln"), mounts) == "nfs4"
    assert addresses.kind_of_mount(Path("/srv/x"), mounts) == "cifs"
    assert addresses.kind_of_mount(Path("/srv/xy"), mounts) == "ext4"
    assert not addresses.on_network(tmp_path)
    monkeypatch.setattr(addresses, "kind_of_mount", lambda *_: "nfs4")
    with pytest.raises(BookError, match="network folder") as said:
        open_book(str(tmp_path / "book.sqlite"))
    assert "PostgreSQL" in said.value.mend
    assert not (tmp_path / "book.sqlite").exists()


def test_a_server_that_cannot_be_reached_is_said(tmp_path: Path) -> None:
    with pytest.raises(BookError, match="cannot be reached") as said:
        open_book(f"postgresql://ann:secret@/jobs?host={tmp_path}")
    assert "secret" not in str(said.value)


def test_a_database_that_is_not_there_is_said(postgres: Server) -> None:
    with pytest.raises(BookError, match="does not let you into"):
        open_book(postgres.url("nowhere"))


def test_a_server_that_was_started_again_is_found_again(postgres: Server) -> None:
    others = "SELECT count(pg_terminate_backend(pid)) FROM pg_stat_activity WHERE pid <> pg_backend_pid()"
    with postgres.lent() as url:
        book, other = open_book(url), open_book(url)
        first = begun(book)
        with other.store.reading() as connection:
            assert connection.execute(text(f"{others} AND datname = current_database()")).scalar()
        assert book.head(first.job_id) == first
        assert edited(book, first, TEXT).number == 2
        book.close()
        other.close()


def test_a_driver_that_is_not_installed_is_said(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "psycopg", None)
    with pytest.raises(BookError, match="driver for PostgreSQL is not installed") as said:
        open_book("postgresql://ann@nowhere/jobs")
    assert "heatledger[postgres]" in said.value.mend


@pytest.mark.parametrize("address", ["mysql://ann@host/jobs", "sqlite://", "://", " ", "postgresql://:::/"])
def test_an_address_that_is_none_is_said(address: str) -> None:
    with pytest.raises(BookError, match="is no address of a book"):
        addresses.url_of(address)


def test_the_book_of_a_user_lies_in_the_data_folder(
    data_beside: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    book = open_book()
    assert file_of(book) == data_beside / "book.sqlite"
    assert file_of(book).exists()
    book.close()
    monkeypatch.setenv("HEATLEDGER_BOOK", str(data_beside / "other.sqlite"))
    other = open_book()
    assert os.path.basename(other.place) == "other.sqlite"
    other.close()
