"""Claim: the book is listed, backed up, restored and checked from the command line, in plain words."""

from __future__ import annotations

import sqlite3
from contextlib import closing
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from heatledger.book.opening import open_book
from heatledger.cli.group import commands


@pytest.fixture
def place(tmp_path: Path) -> Path:
    """A book of two jobs, one put away."""
    path = tmp_path / "book.sqlite"
    book = open_book(str(path))
    made = book.add_job("format: 1\n", "Kiln Lane", "", "Begun", "Ann")
    book.save(made.job_id, "format: 1\nunits: us\n", "Kiln Lane", "", "Units", "Ann", 1)
    book.put_away(
        book.add_job("format: 1\n", "A house with a very long name on Weir Road", "", "", "").job_id
    )
    book.close()
    return path


def run(*words: object, code: int = 0) -> Result:
    result = CliRunner().invoke(commands, ["book", *map(str, words)], prog_name="heatledger")
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    assert "Traceback" not in result.output
    assert result.exit_code == code, result.output
    return result


def test_jobs_are_listed(place: Path) -> None:
    lines = run("list", "--book", place).stdout.splitlines()
    assert lines[0].split() == ["Job", "Id", "Revision", "Touched"]
    assert lines[1].split()[:4] == ["Kiln", "Lane", "kiln-lane", "2"]
    away = run("list", "--put-away", "--book", place).stdout
    assert "A house with a very long name on …" in away and "kiln-lane" not in away


def test_an_empty_list_says_so(place: Path) -> None:
    book = open_book(str(place))
    book.put_away("kiln-lane")
    book.close()
    assert run("list", "--book", place).stdout == "The book holds no jobs in use.\n"


def test_a_backup_goes_back(place: Path, tmp_path: Path) -> None:
    file, other = tmp_path / "all.sqlite", tmp_path / "other" / "book.sqlite"
    assert run("backup", file, "--book", place).stdout == f"Wrote {file}.\n"
    assert run("restore", file, "--book", other).stdout == f"{other} now holds 2 jobs in 3 revisions.\n"
    assert run("check", "--book", other).stdout == "The book is whole: 2 jobs, 3 revisions.\n"
    again = run("restore", file, "--book", other).stdout.splitlines()[1]
    kept = Path(again.removeprefix("What it held before lies in ").removesuffix("."))
    assert kept.is_file()


def test_a_file_that_is_there_is_left_alone(place: Path, tmp_path: Path) -> None:
    (tmp_path / "letter").write_text("Dear Ann", "utf-8")
    assert "is there already" in run("backup", tmp_path / "letter", "--book", place, code=1).stderr
    assert (tmp_path / "letter").read_text("utf-8") == "Dear Ann"


@pytest.mark.parametrize("words", [("list",), ("check",), ("backup", "all.sqlite")])
def test_a_book_that_is_not_there_is_not_made(tmp_path: Path, words: tuple[str, ...]) -> None:
    result = run(*words, "--book", tmp_path / "none.sqlite", code=2)
    assert "no book at" in result.stderr and "--book" in result.stderr
    assert list(tmp_path.iterdir()) == []


def test_damage_is_found_and_said(place: Path) -> None:
    with closing(sqlite3.connect(place)) as plain, plain:
        plain.execute("UPDATE revision SET text = x'00' WHERE number = 2")
    said = run("check", "--book", place, code=1).stderr
    assert "damaged" in said and "heatledger book restore FILE" in said
    assert "damaged" in run("backup", place.with_name("all.sqlite"), "--book", place, code=1).stderr


def test_an_address_that_is_none_is_said() -> None:
    assert "no address of a book" in run("list", "--book", "mysql://ann@host/jobs", code=1).stderr


def test_your_own_book_is_meant_when_no_other_is_named(place: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("HEATLEDGER_BOOK", str(place))
    assert "kiln-lane" in run("list").stdout
