"""The form of the tables: a new book gets today's, an old one is brought up to it after a backup."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from sqlalchemy import Connection, inspect, text

from heatledger.book.copies import automatic_backup
from heatledger.book.errors import BookError, NewerBook
from heatledger.book.store import Store
from heatledger.book.tables import FIRST_TABLES, VERSION_TABLE, VERSIONS, metadata

if TYPE_CHECKING:
    from alembic.config import Config


def bring_up(store: Store, with_backup: bool = True) -> None:
    """Make the tables of a new book; bring those of an old one to the form of this version.

    An old book that holds anything is backed up first. Raises BookError, NewerBook when a later version
    wrote the book.
    """
    if _form(store) == VERSIONS[-1]:
        return
    if with_backup and _form(store):
        automatic_backup(store, f"before-upgrade-to-{VERSIONS[-1]}")
    with store.changing_form() as connection:
        now = form_of(connection, store.place)  # another program may have been quicker
        if now == VERSIONS[-1]:
            return
        if now:
            upgrade(connection)
        else:
            _make(connection)


def form_of(connection: Connection, place: str) -> str:
    """The number of the form the tables have; empty for a new book. Raises BookError when it is not ours."""
    tables = set(inspect(connection).get_table_names())
    if VERSION_TABLE not in tables:
        ours = tables & set(FIRST_TABLES)
        file = connection.dialect.name == "sqlite"
        if ours or (file and tables):
            raise BookError(
                f"{place} holds other tables and is no book.",
                "Name another file or database for the book; this one was left as it is.",
            )
        return ""
    rows = connection.execute(text(f"SELECT version_num FROM {VERSION_TABLE}")).scalars().all()
    form = str(rows[0]) if rows else ""
    if form not in VERSIONS:
        raise NewerBook(
            f"The book {place} was written by a newer version of Heatledger (form {form or 'unknown'}; "
            f"this one knows up to {VERSIONS[-1]}).",
            "Nothing was changed. Install the newer version, or open another book.",
        )
    return form


def _form(store: Store) -> str:
    with store.reading() as connection:
        return form_of(connection, store.place)


def _make(connection: Connection) -> None:
    metadata.create_all(connection)
    connection.execute(text(f"CREATE TABLE {VERSION_TABLE} (version_num VARCHAR(32) NOT NULL PRIMARY KEY)"))
    connection.execute(text(f"INSERT INTO {VERSION_TABLE} VALUES (:form)"), {"form": VERSIONS[-1]})


def upgrade(connection: Connection, to: str = "head") -> None:
    """Run the migrations that are due, in the transaction of the connection. Raises BookError."""
    from alembic import command  # a third of a second, so only when it is due

    command.upgrade(alembic_settings(connection), to)
    if connection.dialect.name == "sqlite":
        broken = connection.execute(text("PRAGMA foreign_key_check")).all()
        if broken:
            raise BookError(
                f"The book could not be brought to the form of this version: {len(broken)} rows do not fit.",
                "Nothing was changed. Restore the last backup, or go on with the version used before.",
            )


def alembic_settings(connection: Connection) -> Config:
    """What Alembic needs to know, without a file of settings: where the steps lie, and the connection."""
    from alembic.config import Config

    settings = Config()
    folder = str(Path(__file__).parent / "migrations")
    settings.set_main_option("script_location", folder.replace("%", "%%"))
    settings.set_main_option("path_separator", "os")
    settings.attributes["connection"] = connection
    return settings
