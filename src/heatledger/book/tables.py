"""The tables of the book, one form for both engines."""

from __future__ import annotations

import hashlib
import json
import zlib
from collections.abc import Callable
from datetime import UTC, datetime
from typing import Any

from sqlalchemy import (
    Boolean,
    Column,
    ForeignKey,
    ForeignKeyConstraint,
    Integer,
    LargeBinary,
    MetaData,
    String,
    Table,
    Text,
)
from sqlalchemy.types import TypeDecorator

VERSIONS = ("0001", "0002")
"""Every form the tables have had, oldest first; each is a migration."""
VERSION_TABLE = "book_version"

_NAMES = {
    "pk": "pk_%(table_name)s",
    "fk": "fk_%(table_name)s_%(column_0_name)s",
    "uq": "uq_%(table_name)s_%(column_0_name)s",
    "ix": "ix_%(table_name)s_%(column_0_name)s",
}


class Unreadable(ValueError):
    """A cell that does not hold what was written into it."""


def _read(reader: Callable[[Any], Any], cell: Any) -> Any:
    try:
        return reader(cell)
    except (ValueError, TypeError, zlib.error) as fault:
        raise Unreadable(str(fault)) from fault


def _unpacked(cell: bytes) -> str:
    return zlib.decompress(cell).decode("utf-8", "surrogatepass")


class Moment(TypeDecorator[datetime]):
    """A time as text in UTC, to the microsecond: it sorts, and reads the same in either engine."""

    impl = String(32)
    cache_ok = True

    def process_bind_param(self, value: datetime | None, dialect: Any) -> str | None:
        """The text of a time."""
        return None if value is None else value.astimezone(UTC).isoformat(timespec="microseconds")

    def process_result_value(self, value: str | None, dialect: Any) -> datetime | None:
        """The time of a text."""
        return None if value is None else _read(datetime.fromisoformat, value)


class Words(TypeDecorator[str]):
    """Words of any kind; a sign that no database can hold (zero, half a pair) is shown as one that it can."""

    impl = Text
    cache_ok = True

    def process_bind_param(self, value: str | None, dialect: Any) -> str | None:
        """The words as they are stored."""
        return None if value is None else storable(value)


class Packed(TypeDecorator[str]):
    """Long text, compressed; every letter comes back as it was."""

    impl = LargeBinary
    cache_ok = True

    def process_bind_param(self, value: str | None, dialect: Any) -> bytes | None:
        """The text packed."""
        return None if value is None else zlib.compress(value.encode("utf-8", "surrogatepass"), 6)

    def process_result_value(self, value: bytes | None, dialect: Any) -> str | None:
        """The text unpacked."""
        return None if value is None else _read(_unpacked, value)


class Summary(TypeDecorator[dict[str, Any]]):
    """A small dictionary as JSON text."""

    impl = Text
    cache_ok = True

    def process_bind_param(self, value: dict[str, Any] | None, dialect: Any) -> str | None:
        """The dictionary as text; ASCII only, so that it holds any sign."""
        return None if value is None else json.dumps(value)

    def process_result_value(self, value: str | None, dialect: Any) -> dict[str, Any] | None:
        """The dictionary of a text."""
        return None if value is None else _read(lambda text: dict(json.loads(text)), value)


def digest_of(words: str) -> str:
    """The fingerprint of a text."""
    return hashlib.sha256(words.encode("utf-8", "surrogatepass")).hexdigest()


def storable(words: str) -> str:
    """``words`` without what a database refuses."""
    return words.replace("\0", "\u2400").encode("utf-8", "replace").decode("utf-8")


metadata = MetaData(naming_convention=_NAMES)

job = Table(
    "job",
    metadata,
    Column("id", String(80), primary_key=True),
    Column("head", Integer, nullable=False),
    Column("latest", Integer, nullable=False),
    Column("begun", Moment, nullable=False),
    Column("touched", Moment, nullable=False),
    Column("put_away", Boolean, nullable=False),
    Column("file", Words),
    Column("file_digest", String(64)),
    Column("file_number", Integer),
    Column("file_by", Words),
    Column("file_at", Moment),
)

revision = Table(
    "revision",
    metadata,
    Column("job_id", String(80), ForeignKey("job.id"), primary_key=True),
    Column("number", Integer, primary_key=True, autoincrement=False),
    Column("parent", Integer),
    Column("left_to", Integer),
    Column("name", Words, nullable=False),
    Column("address", Words, nullable=False),
    Column("text", Packed, nullable=False),
    Column("digest", String(64), nullable=False),
    Column("said", Words, nullable=False),
    Column("by", Words, nullable=False),
    Column("at", Moment, nullable=False),
    Column("version", String(40), nullable=False),
)

figure_list = Table(
    "figure_list",
    metadata,
    Column("digest", String(64), primary_key=True),
    Column("content", Packed, nullable=False),
)

kept = Table(
    "kept",
    metadata,
    Column("job_id", String(80), primary_key=True),
    Column("number", Integer, primary_key=True, autoincrement=False),
    Column("version", String(40), nullable=False),
    Column("summary", Summary, nullable=False),
    Column("list_digest", String(64), ForeignKey("figure_list.digest"), nullable=False),
    Column("si", LargeBinary, nullable=False),
    ForeignKeyConstraint(["job_id", "number"], ["revision.job_id", "revision.number"]),
)

wrong_entry = Table(
    "wrong_entry",
    metadata,
    Column("job_id", String(80), ForeignKey("job.id"), primary_key=True),
    Column("path", Words, primary_key=True),
    Column("typed", Words, nullable=False),
    Column("what", Words, nullable=False),
    Column("mend", Words, nullable=False),
    Column("by", Words, nullable=False),
    Column("at", Moment, nullable=False),
)

FIRST_TABLES = ("job", "revision")
"""The tables that every form of the book has."""
