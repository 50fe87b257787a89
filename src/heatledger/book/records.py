"""What the book gives out: frozen records, times as aware UTC."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import datetime
from typing import Any

Kinds = dict[str, tuple[float, str]]
"""Figures by path: the SI value (NaN when missing) and the name of its dimension."""


@dataclass(frozen=True)
class JobEntry:
    """One job of the book. ``head`` is the revision it stands at, made at ``head_at``; ``latest`` the highest
    number given out.

    ``file`` is the job file on disk, empty when there is none; ``file_number`` the revision it was last read
    from or written to, by ``file_by`` at ``file_at``. ``summary`` is what was kept with the head revision.
    """

    id: str
    name: str
    address: str
    head: int
    head_at: datetime
    latest: int
    file: str
    begun: datetime
    touched: datetime
    put_away: bool
    summary: dict[str, Any] = field(default_factory=dict)
    file_number: int = 0
    file_by: str = ""
    file_at: datetime | None = None


@dataclass(frozen=True)
class RevisionLine:
    """One line of a job's history: what changed, by whom, when, and which version wrote it."""

    job_id: str
    number: int
    parent: int | None
    said: str
    by: str
    at: datetime
    version: str


@dataclass(frozen=True)
class Revision(RevisionLine):
    """A revision with the whole text of the job file."""

    text: str


@dataclass(frozen=True)
class Kept:
    """The figures a revision showed, with the version that worked them out, and a summary for lists."""

    version: str
    summary: dict[str, Any]
    figures: Kinds


@dataclass(frozen=True)
class WrongEntry:
    """An entry that could not be taken as typed; the last good value stays in use."""

    path: str
    typed: str
    what: str
    mend: str
    by: str
    at: datetime


@dataclass(frozen=True)
class Checked:
    """How much of the book was read through and found whole."""

    jobs: int
    revisions: int
