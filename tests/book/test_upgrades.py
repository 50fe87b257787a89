"""Claim: tables, migrations and the list of forms agree; an old book is backed up, then brought up."""

from __future__ import annotations

import zlib
from pathlib import Path

import pytest
from alembic import command
from alembic.script import ScriptDirectory
from sqlalchemy import inspect, text

from heatledger.book import forms
from heatledger.book.addresses import url_of
from heatledger.book.errors import BookError
from heatledger.book.opening import open_book
from heatledger.book.records import Kept
from heatledger.book.store import Store
from heatledger.book.tables import VERSION_TABLE, VERSIONS, digest_of, metadata
from tests.book.helping import TEXT, child, edited

WHEN = "2026-03-04T05:06:07.000008+00:00"


def old_book(url: str) -> None:
    """A book as the first version made it, with one job of two revisions."""
    store = Store(url_of(url))
    with store.changing_form() as connection:
        forms.upgrade(connection, VERSIONS[0])
        job = "INSERT INTO job VALUES ('kiln-lane', 2, 2, :at, :at, :no)"
        connection.execute(text(job), {"at": WHEN, "no": False})
        for number, parent in ((1, None), (2, 1)):
            content = TEXT + f"built: 192{number}\n"
            row = "INSERT INTO revision VALUES ('kiln-lane', :number, :parent, NULL, 'Kiln Lane', '', "
            row += ":text, :digest, 'Edit', 'Ann', :at, '0.0.1')"
            values = {"number": number, "parent": parent, "at": WHEN, "digest": digest_of(content)}
            connection.execute(text(row), {**values, "text": zlib.compress(content.encode())})
    store.close()


def backups(tmp_path: Path) -> list[Path]:
    return sorted(tmp_path.glob("**/backups/*.sqlite"))


def form(url: str) -> str:
    store = Store(url_of(url))
    with store.reading() as connection:
        found = forms.form_of(connection, "it")
    store.close()
    return found


def test_an_old_book_is_backed_up_then_brought_up(url: str, tmp_path: Path) -> None:
    old_book(url)
    book = open_book(url)
    (kept,) = backups(tmp_path)
    assert (form(url), form(str(kept))) == (VERSIONS[-1], VERSIONS[0])
    assert book.head("kiln-lane").text == TEXT + "built: 1922\n"
    assert book.job("kiln-lane").begun.isoformat(timespec="microseconds") == WHEN
    assert book.check().revisions == 2
    book.keep("kiln-lane", 2, Kept("1", {}, {"house/loss": (1.0, "heat rate")}))
    book.set_file("kiln-lane", "kiln.yaml", "0" * 64, 2, "Ann")
    assert edited(book, book.head("kiln-lane"), TEXT).number == 3
    assert [each.revisions for each in (book.restore(kept), book.check())] == [2, 2]
    assert form(str(kept)) == VERSIONS[0], "the backup itself stays as it was"
    book.close()


def test_a_book_that_is_up_to_date_is_not_backed_up_again(url: str, tmp_path: Path) -> None:
    for _ in range(2):
        open_book(url).close()
    assert backups(tmp_path) == []


def test_an_upgrade_without_room_for_its_backup_leaves_the_book(
    url: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    old_book(url)

    def refused(*_: object) -> None:
        raise BookError("No room.", "Make some.")

    monkeypatch.setattr(forms, "automatic_backup", refused)
    with pytest.raises(BookError, match="No room"):
        open_book(url)
    assert form(url) == VERSIONS[0]


def test_an_upgrade_that_fails_leaves_the_book_as_it_was(url: str, monkeypatch: pytest.MonkeyPatch) -> None:
    old_book(url)
    whole = forms.upgrade

    def fails(connection: object) -> None:
        whole(connection)  # type: ignore[arg-type]
        raise RuntimeError("in the middle")

    with monkeypatch.context() as patch:
        patch.setattr(forms, "upgrade", fails)
        with pytest.raises(RuntimeError, match="in the middle"):
            open_book(url)
    assert form(url) == VERSIONS[0]
    book = open_book(url)
    assert book.check().revisions == 2
    book.close()


@pytest.mark.parametrize("by", ["new", "upgraded"])
def test_tables_and_migrations_agree(url: str, by: str) -> None:
    if by == "upgraded":
        old_book(url)
    open_book(url).close()
    store = Store(url_of(url))
    with store.changing_form() as connection:
        command.check(forms.alembic_settings(connection))
        found = inspect(connection)
        for table in metadata.tables.values():
            there = {each["name"]: each for each in found.get_columns(table.name)}
            assert set(there) == set(table.columns.keys())
            assert all(there[each.name]["nullable"] == each.nullable for each in table.columns)
            assert found.get_pk_constraint(table.name)["constrained_columns"] == list(
                table.primary_key.columns.keys()
            )
            assert len(found.get_foreign_keys(table.name)) == len(table.foreign_key_constraints)
    store.close()


def test_the_forms_are_the_migrations_in_their_order(tmp_path: Path) -> None:
    store = Store(url_of(str(tmp_path / "book.sqlite")))
    with store.changing_form() as connection:
        steps = ScriptDirectory.from_config(forms.alembic_settings(connection)).walk_revisions()
        assert [each.revision for each in steps] == list(reversed(VERSIONS))
    store.close()


def test_a_migration_can_be_taken_back(url: str) -> None:
    old_book(url)
    open_book(url).close()
    store = Store(url_of(url))
    with store.changing_form() as connection:
        command.downgrade(forms.alembic_settings(connection), VERSIONS[0])
        assert {*inspect(connection).get_table_names()} == {"job", "revision", VERSION_TABLE}
    store.close()
    book = open_book(url)
    assert book.check().revisions == 2
    book.close()


def test_a_book_that_needs_no_upgrade_is_opened_without_the_migrations(url: str) -> None:
    opens = (
        "import sys; from heatledger.book.opening import open_book; book = open_book(sys.argv[1]);"
        "book.jobs(); print(sorted({'alembic', 'mako', 'sqlalchemy.orm'} & {*sys.modules}))"
    )
    said, faults = child(opens, url).communicate(timeout=120)
    assert said == "[]\n", faults


def test_migrations_do_not_lean_on_the_tables_of_today() -> None:
    folder = Path(forms.__file__).parent / "migrations" / "versions"
    steps = list(folder.glob("0*.py"))
    assert len(steps) == len(VERSIONS)
    for each in steps:
        assert "heatledger" not in each.read_text("utf-8"), each.name


def test_help_of_the_command_line_needs_no_book() -> None:
    lists = (
        "import sys; from heatledger.cli.group import commands; commands(['--help'], standalone_mode=False);"
    )
    said, faults = child(lists + "print('sqlalchemy' in sys.modules)").communicate(timeout=120)
    assert said.splitlines()[-1] == "False", faults
