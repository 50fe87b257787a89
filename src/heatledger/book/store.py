"""The two engines of a book: one that writes, one that only reads; the same for SQLite and PostgreSQL."""

from __future__ import annotations

import sqlite3
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from threading import Lock
from typing import Any

from sqlalchemy import create_engine, event, text
from sqlalchemy.engine import URL, Connection, Engine

from heatledger.book.addresses import on_network, place_of
from heatledger.book.errors import BookError
from heatledger.book.faults import locked, over_network, told

PATIENCE = 5.0
"""Seconds to wait for another program before the book is said to be locked."""
_PAUSE = 0.01
_UPGRADE_KEY = 5_432_018
"""Of the PostgreSQL lock that lets one program at a time change the form of the tables."""


class Store:
    """Opens transactions on the book at a URL. ``patience`` is in seconds."""

    def __init__(self, url: URL, patience: float = PATIENCE) -> None:
        self.url, self.patience = url, patience
        self.place = place_of(url)
        self.path = Path(url.database or "") if url.get_backend_name() == "sqlite" else None
        self._turn = Lock()
        if self.path is not None:
            self._make_folder(self.path)
            self.writer, self.reader = self._sqlite("BEGIN IMMEDIATE"), self._sqlite("BEGIN", "query_only=ON")
        else:
            self.writer = self._postgres({})
            self.reader = self._postgres({"postgresql_readonly": True, "isolation_level": "REPEATABLE READ"})

    @contextmanager
    def writing(self) -> Iterator[Connection]:
        """A transaction that may write: kept whole at the end, or not at all. Raises BookError."""
        with told(self.place), self._own_turn(), self.writer.begin() as connection:
            yield connection

    @contextmanager
    def reading(self) -> Iterator[Connection]:
        """A transaction that sees one state of the book and cannot write. Raises BookError."""
        with told(self.place), self.reader.begin() as connection:
            yield connection

    @contextmanager
    def changing_form(self) -> Iterator[Connection]:
        """A transaction for one program alone, in which tables may be made and changed."""
        with told(self.place), self._own_turn(), self.writer.connect() as connection:
            sqlite = self.path is not None
            raw = connection.connection.dbapi_connection
            if sqlite and isinstance(raw, sqlite3.Connection):
                raw.execute("PRAGMA foreign_keys=OFF")  # a table that is made anew is dropped on the way
            try:
                with connection.begin():
                    if not sqlite:
                        connection.execute(text(f"SELECT pg_advisory_xact_lock({_UPGRADE_KEY})"))
                    yield connection
            finally:
                if sqlite and isinstance(raw, sqlite3.Connection):
                    raw.execute("PRAGMA foreign_keys=ON")

    def close(self) -> None:
        """Let go of the file or the server."""
        self.writer.dispose()
        self.reader.dispose()

    @contextmanager
    def _own_turn(self) -> Iterator[None]:
        """Threads of this program write one after the other, without asking the file again and again."""
        if self.path is None:
            yield
            return
        if not self._turn.acquire(timeout=self.patience):
            raise locked(self.place)
        try:
            yield
        finally:
            self._turn.release()

    def _make_folder(self, path: Path) -> None:
        with told(self.place):
            path.parent.mkdir(parents=True, exist_ok=True)
        if on_network(path.parent):
            raise over_network(self.place)

    def _sqlite(self, begin: str, *pragmas: str) -> Engine:
        engine = create_engine(self.url, connect_args={"timeout": self.patience})

        @event.listens_for(engine, "connect")
        def _connected(connection: Any, _record: Any) -> None:
            connection.isolation_level = None  # BEGIN is said below
            self._write_ahead(connection)
            for each in ("foreign_keys=ON", "synchronous=FULL", *pragmas):
                connection.execute(f"PRAGMA {each}")

        @event.listens_for(engine, "begin")
        def _begun(connection: Connection) -> None:
            connection.exec_driver_sql(begin)

        return engine

    def _write_ahead(self, connection: sqlite3.Connection) -> None:
        """Turn the write-ahead log on; the file may be held by one who is just doing the same."""
        until = time.monotonic() + self.patience
        while True:
            try:
                (mode,) = connection.execute("PRAGMA journal_mode").fetchone()
                if mode != "wal":
                    (mode,) = connection.execute("PRAGMA journal_mode=WAL").fetchone()
                break
            except sqlite3.OperationalError as fault:
                if "locked" not in str(fault) or time.monotonic() > until:
                    raise
                time.sleep(_PAUSE)
        if mode != "wal":
            raise over_network(self.place)

    def _postgres(self, options: dict[str, Any]) -> Engine:
        wait = max(1, round(self.patience * 1000))
        arguments = {
            "connect_timeout": max(2, round(self.patience)),
            "options": f"-c lock_timeout={wait} -c client_encoding=UTF8",
        }
        try:
            return create_engine(
                self.url, connect_args=arguments, execution_options=options, pool_pre_ping=True
            )
        except ImportError as fault:
            raise BookError(
                "The driver for PostgreSQL is not installed.",
                "Install it with  pip install 'heatledger[postgres]' , or keep the book in a file.",
            ) from fault
