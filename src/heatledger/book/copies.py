"""Backups: the whole book of either engine as one SQLite file, row for row, whatever form it has."""

from __future__ import annotations

import os
import re
import tempfile
from datetime import UTC, datetime
from pathlib import Path

from sqlalchemy import Connection, Engine, MetaData, Table, create_engine, event, insert, inspect, select
from sqlalchemy.engine import URL
from sqlalchemy.pool import NullPool

from heatledger.book.addresses import data_folder
from heatledger.book.errors import BookError, DiskFull
from heatledger.book.faults import full, told
from heatledger.book.store import Store
from heatledger.book.tables import VERSION_TABLE, metadata

AT_ONCE = 100
"""Rows held in memory while they are copied."""


def write_copy(store: Store, to: Path) -> Path:
    """Write the whole book into a new SQLite file; the file. A file that is there is left alone.

    The copy has its name only once it is whole and on the disk. Raises BookError.
    """
    with told(str(to)):
        if to.exists():
            raise BookError(f"{to} is there already and was left as it is.", "Choose another name.")
        to.parent.mkdir(parents=True, exist_ok=True)
        handle, name = tempfile.mkstemp(".part", f"{to.name}.", to.parent)
        os.close(handle)
        part = Path(name)
        try:
            with store.reading() as source, _new_file(part) as target:
                _copy_all(source, target)
            with part.open("rb+") as file:
                os.fsync(file.fileno())
            os.replace(part, to)
        except DiskFull:
            raise full(str(to)) from None  # the disk of the copy, not that of the book
        finally:
            part.unlink(missing_ok=True)
    return to


def automatic_backup(store: Store, reason: str) -> Path:
    """Back the book up into the folder ``backups`` beside it (of the user's data for a server); the file."""
    folder = (store.path.parent if store.path else data_folder()) / "backups"
    stem = store.path.stem if store.path else f"server-{store.url.database or 'book'}"
    stamp = datetime.now(UTC).strftime("%Y%m%d-%H%M%S")
    name = re.sub(r"[^A-Za-z0-9-]+", "-", f"{stem}-{reason}-{stamp}")
    target, count = folder / f"{name}.sqlite", 1
    while target.exists():
        count += 1
        target = folder / f"{name}-{count}.sqlite"
    return write_copy(store, target)


def plain_tables(connection: Connection) -> list[Table]:
    """The tables of a book as they lie there, cells as stored, in an order in which they can be filled."""
    names = [*metadata.tables, VERSION_TABLE]
    there = set(inspect(connection).get_table_names())
    found = MetaData()
    found.reflect(connection, only=[each for each in names if each in there])
    for table in found.tables.values():
        for column in table.columns:
            column.type, column.server_default = column.type.as_generic(), None
    return found.sorted_tables


def copy_rows(source: Connection, target: Connection, tables: list[Table]) -> None:
    """Every row of these tables, from one connection to the other."""
    for table in tables:
        with source.execute(select(table), execution_options={"yield_per": AT_ONCE}) as rows:
            for some in rows.mappings().partitions():
                target.execute(insert(table), [dict(each) for each in some])


def _copy_all(source: Connection, target: Engine) -> None:
    with target.begin() as connection:
        tables = plain_tables(source)
        for table in tables:
            table.create(connection)
        copy_rows(source, connection, tables)


class _new_file:
    """An engine on a new file, let go of at the end."""

    def __init__(self, path: Path) -> None:
        self.engine = create_engine(URL.create("sqlite", database=str(path)), poolclass=NullPool)
        event.listen(self.engine, "connect", lambda raw, _: raw.execute("PRAGMA synchronous=FULL"))

    def __enter__(self) -> Engine:
        return self.engine

    def __exit__(self, *_: object) -> None:
        self.engine.dispose()
