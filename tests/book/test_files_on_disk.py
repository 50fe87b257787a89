"""Claim: a job goes to disk and back with every comment; a file somebody changed is never overwritten."""

from __future__ import annotations

import errno
import os
from pathlib import Path

import pytest

from heatledger.book.book import Book
from heatledger.book.errors import BookError, DiskFull, FileMovedOn
from heatledger.book.on_disk import open_file, state_on_disk, take_from_disk, write_back, write_to
from heatledger.book.records import Revision
from heatledger.job.errors import JobErrors
from tests.book.helping import TEXT, begun

CHANGED = TEXT + "built: 1926  # says the deed\n"


@pytest.fixture
def file(tmp_path: Path) -> Path:
    path = tmp_path / "kiln-lane.yaml"
    path.write_bytes(TEXT.encode())
    return path


def edit(book: Book, last: Revision, text: str = CHANGED) -> Revision:
    return book.save(last.job_id, text, "Kiln Lane", "", "Edit", "Ann", last.number)


def test_a_file_begins_a_job_and_comes_back_letter_for_letter(book: Book, file: Path) -> None:
    made = open_file(book, file, "Ann")
    entry = book.job(made.job_id)
    assert (made.text, made.said, entry.name) == (TEXT, "Opened from kiln-lane.yaml", "Kiln Lane")
    assert (entry.file, entry.file_number, entry.file_by) == (str(file.resolve()), 1, "Ann")
    assert state_on_disk(book, made.job_id) == "same"
    assert write_back(book, made.job_id, "Ann") == file.resolve()
    assert file.read_bytes() == TEXT.encode()


def test_an_edit_is_written_back(book: Book, file: Path) -> None:
    made = open_file(book, file, "Ann")
    edit(book, made)
    write_back(book, made.job_id, "Ben")
    assert file.read_text("utf-8") == CHANGED
    entry = book.job(made.job_id)
    assert (entry.file_number, entry.file_by, state_on_disk(book, made.job_id)) == (2, "Ben", "same")
    assert [each.name for each in file.parent.iterdir() if each.name.endswith(".part")] == []


@pytest.mark.parametrize(
    ("mark", "end"), [(b"", b"\r\n"), (b"\xef\xbb\xbf", b"\n"), (b"\xef\xbb\xbf", b"\r\n")]
)
def test_line_ends_and_the_mark_at_the_start_stay(book: Book, file: Path, mark: bytes, end: bytes) -> None:
    file.write_bytes(mark + TEXT.encode().replace(b"\n", end))
    made = open_file(book, file, "Ann")
    assert made.text == TEXT
    edit(book, made)
    write_back(book, made.job_id, "Ann")
    assert file.read_bytes() == mark + CHANGED.encode().replace(b"\n", end)


def test_a_file_changed_behind_the_app_is_not_overwritten(book: Book, file: Path) -> None:
    made = open_file(book, file, "Ann")
    edited = edit(book, made)
    theirs = TEXT + "built: 1930\n"
    file.write_text(theirs, "utf-8")
    assert state_on_disk(book, made.job_id) == "changed"
    with pytest.raises(FileMovedOn, match="was changed on disk") as said:
        write_back(book, made.job_id, "Ann")
    assert "Take the file into the book" in said.value.mend
    assert file.read_text("utf-8") == theirs
    taken = take_from_disk(book, made.job_id, "Ben")
    assert (taken.number, taken.parent, taken.text, taken.by) == (3, 2, theirs, "Ben")
    assert book.undo(made.job_id, 3) == edited, "what was edited here is still there"
    assert state_on_disk(book, made.job_id) == "same"
    write_back(book, made.job_id, "Ann")
    assert file.read_text("utf-8") == CHANGED


def test_a_change_at_the_last_moment_is_noticed(
    book: Book, file: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    made = open_file(book, file, "Ann")
    edit(book, made)
    monkeypatch.setattr(os, "fsync", lambda _: file.write_text("their own\n", "utf-8"))
    with pytest.raises(FileMovedOn):
        write_back(book, made.job_id, "Ann")
    assert file.read_text("utf-8") == "their own\n"
    assert [each.name for each in file.parent.iterdir() if each.name.endswith(".part")] == []


def test_a_file_that_is_gone_is_not_made_again_silently(book: Book, file: Path) -> None:
    made = open_file(book, file, "Ann")
    file.unlink()
    assert state_on_disk(book, made.job_id) == "gone"
    with pytest.raises(FileMovedOn, match="is no longer in"):
        write_back(book, made.job_id, "Ann")
    assert not file.exists()
    with pytest.raises(JobErrors, match="no file"):
        take_from_disk(book, made.job_id, "Ann")
    assert write_to(book, made.job_id, file) == file.resolve()
    assert (file.read_text("utf-8"), state_on_disk(book, made.job_id)) == (TEXT, "same")


def test_writing_under_another_name_overwrites_nothing(book: Book, file: Path, tmp_path: Path) -> None:
    made = begun(book)
    assert state_on_disk(book, made.job_id) == "none"
    with pytest.raises(BookError, match="no file yet"):
        write_back(book, made.job_id, "Ann")
    with pytest.raises(BookError, match="no file on disk"):
        take_from_disk(book, made.job_id, "Ann")
    file.write_text("theirs\n", "utf-8")
    with pytest.raises(BookError, match="there already"):
        write_to(book, made.job_id, file)
    assert (file.read_text("utf-8"), book.job(made.job_id).file) == ("theirs\n", "")
    write_to(book, made.job_id, tmp_path / "new.yaml")
    assert book.job(made.job_id).file == str((tmp_path / "new.yaml").resolve())


def test_no_room_for_the_file_leaves_the_old_one(
    book: Book, file: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    made = open_file(book, file, "Ann")
    edit(book, made)

    def no_room(_: int) -> None:
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    monkeypatch.setattr(os, "fsync", no_room)
    with pytest.raises(DiskFull, match=r"kiln-lane\.yaml is full"):
        write_back(book, made.job_id, "Ann")
    with pytest.raises(DiskFull):
        write_to(book, made.job_id, tmp_path / "new.yaml")
    assert file.read_text("utf-8") == TEXT
    assert sorted(each.name for each in tmp_path.glob("*.yaml*")) == ["kiln-lane.yaml"]
    assert state_on_disk(book, made.job_id) == "same"


def test_a_file_opened_again_is_the_same_job(book: Book, file: Path) -> None:
    made = open_file(book, file, "Ann")
    edited = edit(book, made)
    assert open_file(book, file, "Ben") == edited, "unchanged on disk: what was edited here goes on"
    book.put_away(made.job_id)
    file.write_text(TEXT + "built: 1930\n", "utf-8")
    taken = open_file(book, file, "Ben")
    assert (taken.job_id, taken.number, taken.text) == (made.job_id, 3, TEXT + "built: 1930\n")
    assert [each.id for each in book.jobs()] == [made.job_id]


def test_a_file_that_says_what_the_job_says_makes_no_revision(book: Book, file: Path) -> None:
    made = open_file(book, file, "Ann")
    edited = edit(book, made)
    file.write_text(CHANGED, "utf-8")
    assert take_from_disk(book, made.job_id, "Ann") == edited
    assert len(book.revisions(made.job_id)) == 2
    assert state_on_disk(book, made.job_id) == "same"


def test_a_file_that_is_no_job_changes_nothing(book: Book, file: Path) -> None:
    made = open_file(book, file, "Ann")
    file.write_text("format: 1\nunits: us\nrooms: [1\n", "utf-8")
    with pytest.raises(JobErrors):
        take_from_disk(book, made.job_id, "Ann")
    with pytest.raises(JobErrors):
        open_file(book, file.parent / "never.yaml", "Ann")
    assert book.head(made.job_id) == made
    assert len(book.jobs()) == 1
