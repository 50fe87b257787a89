"""The figures a revision showed, packed: the paths once for all revisions that share them, and the values."""

from __future__ import annotations

import json
import struct
import zlib
from typing import TYPE_CHECKING, Any

from sqlalchemy import Connection, delete, insert, select

from heatledger import __version__
from heatledger.book import tables as t
from heatledger.book.records import Kept, Kinds
from heatledger.book.tables import Unreadable, digest_of

if TYPE_CHECKING:
    from heatledger.steps.design import Design


def kept_of(house: Design, summary: dict[str, Any]) -> Kept:
    """What to keep of a design: every figure of it, and a summary for the list of jobs."""
    figures = {path: (float(each), each.dimension.name) for path, each in house.figures.items()}
    return Kept(__version__, summary, figures)


def put_kept(connection: Connection, id: str, number: int, given: Kept) -> None:
    """Keep the figures of a revision, in the place of those kept for it before."""
    content, si = packed(given.figures)
    digest = digest_of(content)
    known = select(t.figure_list.c.digest).where(t.figure_list.c.digest == digest)
    if connection.execute(known).first() is None:
        connection.execute(_unless_there(connection).values(digest=digest, content=content))
    here = (t.kept.c.job_id == id) & (t.kept.c.number == number)
    connection.execute(delete(t.kept).where(here))
    row = {"job_id": id, "number": number, "version": given.version, "summary": given.summary}
    connection.execute(insert(t.kept).values(**row, list_digest=digest, si=si))


def kept_at(connection: Connection, id: str, number: int) -> Kept | None:
    """The figures kept for a revision, None when none were."""
    both = (
        select(t.kept.c.version, t.kept.c.summary, t.kept.c.si, t.figure_list.c.content)
        .join(t.figure_list, t.figure_list.c.digest == t.kept.c.list_digest)
        .where((t.kept.c.job_id == id) & (t.kept.c.number == number))
    )
    row = connection.execute(both).first()
    return None if row is None else Kept(row.version, row.summary, unpacked(row.content, row.si))


def packed(figures: Kinds) -> tuple[str, bytes]:
    """The list of paths and dimensions as text, and the SI values in its order as bytes."""
    names = list(dict.fromkeys(kind for _, kind in figures.values()))
    numbers = {name: i for i, name in enumerate(names)}
    kinds = [numbers[kind] for _, kind in figures.values()]
    content = json.dumps([names, kinds, list(figures)], separators=(",", ":"))
    values = struct.pack(f"<{len(figures)}d", *(si for si, _ in figures.values()))
    return content, zlib.compress(values, 6)


def unpacked(content: str, si: bytes) -> Kinds:
    """The figures that were packed. Raises Unreadable."""
    try:
        names, kinds, paths = json.loads(content)
        values = struct.unpack(f"<{len(paths)}d", zlib.decompress(si))
        return {path: (value, names[kind]) for path, value, kind in zip(paths, values, kinds, strict=True)}
    except (ValueError, TypeError, IndexError, struct.error, zlib.error) as fault:
        raise Unreadable(f"the kept figures: {fault}") from fault


def _unless_there(connection: Connection) -> Any:
    """An insert of a list of paths; where another revision brought the same one meanwhile, nothing."""
    if connection.dialect.name == "postgresql":
        from sqlalchemy.dialects.postgresql import insert as of_postgres

        return of_postgres(t.figure_list).on_conflict_do_nothing()
    return insert(t.figure_list)
