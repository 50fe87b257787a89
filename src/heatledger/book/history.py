"""The tree of revisions of a job: a new one behind the head, and the head moved along it."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Mapping
from datetime import UTC, datetime
from itertools import pairwise
from typing import Any

from sqlalchemy import Connection, bindparam, insert, select, update

from heatledger import __version__
from heatledger.book import tables as t
from heatledger.book.errors import MovedOn, NoSuchJob, NothingToUndo
from heatledger.book.records import Revision, RevisionLine
from heatledger.book.tables import Unreadable, digest_of

LONGEST_ID = 60
LARGEST_NUMBER = 2**31 - 1
_LINE = (
    t.revision.c.job_id, t.revision.c.number, t.revision.c.parent, t.revision.c.said, t.revision.c.by,
    t.revision.c.at, t.revision.c.version,
)  # fmt: skip


def free_id(connection: Connection, name: str) -> str:
    """An id for a job of that name that no other job has: ``kiln-lane``, ``kiln-lane-2``."""
    plain = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode().lower()
    stem = re.sub(r"[^a-z0-9]+", "-", plain).strip("-")[:LONGEST_ID].strip("-") or "job"
    like = select(t.job.c.id).where(t.job.c.id.startswith(stem, autoescape=True))
    taken = set(connection.execute(like).scalars())
    found, count = stem, 1
    while found in taken:
        count += 1
        found = f"{stem}-{count}"
    return found


def begin(connection: Connection, id: str, content: Mapping[str, str]) -> Revision:
    """A new job with its first revision; ``content`` is text, name, address, said and by."""
    now = datetime.now(UTC)
    row = {"id": id, "head": 1, "latest": 1, "begun": now, "touched": now, "put_away": False}
    connection.execute(insert(t.job).values(**row))
    return _add(connection, id, 1, None, content, now)


def follow(connection: Connection, id: str, content: Mapping[str, str], base: int) -> Revision:
    """A new revision behind the head, which must be ``base``; it becomes the head."""
    job = locked_job(connection, id, base)
    now = datetime.now(UTC)
    made = _add(connection, id, job.latest + 1, job.head, content, now)
    _move(connection, id, made.number, now, latest=made.number)
    return made


def go_back(connection: Connection, id: str, base: int) -> Revision:
    """Move the head to the revision it was made from."""
    job = locked_job(connection, id, base)
    parent = _parents(connection, id)[job.head]
    if parent is None:
        raise NothingToUndo(
            "There is nothing to undo: the job stands as it was begun.", "Make an edit instead."
        )
    return _step_to(connection, id, job.head, parent)


def go_forward(connection: Connection, id: str, base: int) -> Revision:
    """Move the head to the revision that was last left behind by going back."""
    job = locked_job(connection, id, base)
    there = left_to(connection, id, job.head)
    if there is None:
        raise NothingToUndo(
            "There is nothing to redo: no revision was undone from here.",
            "Choose a revision from the list of all revisions.",
        )
    return _step_to(connection, id, job.head, there)


def go_straight(connection: Connection, id: str, number: int, base: int) -> Revision:
    """Move the head to any revision of the job."""
    job = locked_job(connection, id, base)
    if number not in _parents(connection, id):
        raise no_revision(id, number)
    return _step_to(connection, id, job.head, number)


def left_to(connection: Connection, id: str, number: int) -> int | None:
    """The revision that redo leads to from ``number``."""
    asked = select(t.revision.c.left_to).where(_at(id, number))
    return connection.execute(asked).scalar()


def parent_of(connection: Connection, id: str, number: int) -> int | None:
    """The revision that undo leads to from ``number``."""
    return connection.execute(select(t.revision.c.parent).where(_at(id, number))).scalar()


def read(connection: Connection, id: str, number: int) -> Revision:
    """One revision with its text. Raises NoSuchJob; Unreadable when the text is not what was written."""
    if not 0 < number <= LARGEST_NUMBER:  # no database can look for it
        raise no_revision(id, number)
    columns = (*_LINE, t.revision.c.text, t.revision.c.digest)
    row = connection.execute(select(*columns).where(_at(id, number))).mappings().first()
    if row is None:
        raise no_revision(id, number)
    if digest_of(row["text"]) != row["digest"]:
        raise Unreadable(f"revision {number} of {id} is not what was written")
    return Revision(**{key: each for key, each in row.items() if key != "digest"})


def lines(connection: Connection, id: str) -> list[RevisionLine]:
    """Every revision without its text, oldest first."""
    asked = select(*_LINE).where(t.revision.c.job_id == id).order_by(t.revision.c.number)
    found = [RevisionLine(**each) for each in connection.execute(asked).mappings()]
    if not found:
        raise no_job(id)
    return found


def locked_job(connection: Connection, id: str, base: int | None = None) -> Any:
    """The row of a job, held until the transaction ends. Raises NoSuchJob, and MovedOn off ``base``."""
    job = connection.execute(select(t.job).where(t.job.c.id == id).with_for_update()).first()
    if job is None:
        raise no_job(id)
    if base is not None and job.head != base:
        at = connection.execute(select(*_LINE).where(_at(id, job.head))).mappings().one()
        raise MovedOn(RevisionLine(**at), base)
    return job


def no_job(id: str) -> NoSuchJob:
    """There is no such job."""
    return NoSuchJob(f"The book has no job {id!r}.", "Choose one from the list of jobs.")


def no_revision(id: str, number: int) -> NoSuchJob:
    """There is no such revision."""
    return NoSuchJob(
        f"The book has no revision {number} of {id!r}.", "Choose one from its list of revisions."
    )


def _at(id: str, number: int) -> Any:
    return (t.revision.c.job_id == id) & (t.revision.c.number == number)


def _add(
    connection: Connection, id: str, number: int, parent: int | None, content: Mapping[str, str], at: datetime
) -> Revision:
    row = {"job_id": id, "number": number, "parent": parent, "at": at, "version": __version__}
    row |= {"digest": digest_of(content["text"]), **content}
    connection.execute(insert(t.revision).values(**row))
    said, by = t.storable(content["said"]), t.storable(content["by"])
    return Revision(id, number, parent, said, by, at, __version__, content["text"])


def _parents(connection: Connection, id: str) -> dict[int, int | None]:
    asked = select(t.revision.c.number, t.revision.c.parent).where(t.revision.c.job_id == id)
    return {row.number: row.parent for row in connection.execute(asked)}


def _step_to(connection: Connection, id: str, from_: int, to: int) -> Revision:
    """Move the head; where that goes back along its own line, redo will lead forward again step by step."""
    parents = _parents(connection, id)
    way = [from_]
    while way[-1] != to and (before := parents[way[-1]]) is not None:
        way.append(before)
    if way[-1] == to:
        steps = [{"parent_at": parent, "child_at": child} for child, parent in pairwise(way)]
        if steps:  # all at once: one by one ten thousand would take seconds
            here = (t.revision.c.job_id == id) & (t.revision.c.number == bindparam("parent_at"))
            connection.execute(update(t.revision).where(here).values(left_to=bindparam("child_at")), steps)
    _move(connection, id, to, datetime.now(UTC))
    return read(connection, id, to)


def _move(connection: Connection, id: str, head: int, now: datetime, **more: int) -> None:
    connection.execute(update(t.job).where(t.job.c.id == id).values(head=head, touched=now, **more))
