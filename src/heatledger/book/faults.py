"""Turns what a driver or the system says into a sentence for the person who uses the book."""

from __future__ import annotations

import errno
import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager

from sqlalchemy.exc import DBAPIError
from sqlalchemy.exc import TimeoutError as NoneFree

from heatledger.book.errors import BookDamaged, BookError, BookLocked, DiskFull
from heatledger.book.tables import Unreadable

_BUSY, _FULL, _DAMAGED, _READ_ONLY = (5, 6), (13,), (11, 26), (3, 8, 14, 23)
_INPUT_OUTPUT, _LOCKS = (10,), (15,)
_ROOM = (errno.ENOSPC, getattr(errno, "EDQUOT", errno.ENOSPC))
_SAFE = "Everything kept before is safe."


@contextmanager
def told(place: str) -> Iterator[None]:
    """Whatever goes wrong inside with the book at ``place`` is raised as a BookError.

    What can only be a mistake of the program goes on as it is.
    """
    try:
        yield
    except (DBAPIError, sqlite3.Error) as fault:
        found = _of_driver(fault.orig if isinstance(fault, DBAPIError) else fault, place)
        if found is None:
            raise
        raise found from fault
    except NoneFree as fault:
        raise locked(place) from fault
    except Unreadable as fault:
        raise damaged(place, str(fault)) from fault
    except OSError as fault:
        raise of_system(fault, place) from fault


def of_system(fault: OSError, place: str) -> BookError:
    """What the system said about writing or reading ``place``."""
    if fault.errno in _ROOM:
        return full(place)
    reason = fault.strerror or str(fault)
    return BookError(
        f"{place} cannot be used: {reason[:1].lower()}{reason[1:]}.",
        "Name a place in a folder that exists and that you may write to.",
    )


def locked(place: str) -> BookLocked:
    """The book is in the hands of another program."""
    return BookLocked(
        f"The book {place} is held by another program, so this was not kept.",
        f"{_SAFE} Wait until that program is done, or close it, then try again.",
    )


def full(place: str) -> DiskFull:
    """There is no room."""
    return DiskFull(
        f"The disk that holds {place} is full, so this was not kept.",
        f"{_SAFE} Make room on that disk, then try again.",
    )


def damaged(place: str, detail: str = "") -> BookDamaged:
    """The book does not hold what was written."""
    more = f" ({detail})" if detail else ""
    return BookDamaged(
        f"The book {place} is damaged and cannot be read{more}.",
        "Nothing was changed. Move that book aside, keep it, and restore the last backup:"
        "  heatledger book restore FILE . Backups lie in the folder  backups  beside the book.",
    )


def over_network(place: str) -> BookError:
    """The folder does not keep locks and shared memory as a local one does."""
    return BookError(
        f"The book {place} would lie in a network folder, where it could be damaged.",
        "Keep it in a folder of this computer, or use a PostgreSQL server for several computers.",
    )


def not_written(place: str, reason: str) -> BookError:
    """The book, or its folder, cannot be written."""
    return BookError(
        f"The book {place} cannot be written: {reason}.",
        "Give yourself the right to write there, or name another book with  --book .",
    )


def _of_driver(fault: BaseException | None, place: str) -> BookError | None:
    if isinstance(fault, sqlite3.Error):
        return _of_sqlite(fault, place)
    return None if fault is None else _of_postgres(fault, place)


def _of_sqlite(fault: sqlite3.Error, place: str) -> BookError | None:
    code, said = getattr(fault, "sqlite_errorcode", 0) & 0xFF, str(fault)
    if code in _BUSY:
        return locked(place)
    if code in _FULL:
        return full(place)
    if code in _DAMAGED or "Could not decode" in said or "no such " in said:
        return damaged(place, said)
    if code in _READ_ONLY:
        return not_written(place, said)
    if code in _LOCKS:
        return over_network(place)
    if code in _INPUT_OUTPUT:
        return BookError(
            f"The disk that holds {place} failed while it was read or written ({said}).",
            f"{_SAFE} Check that the disk is connected and has room, then try again.",
        )
    return None


def _of_postgres(fault: BaseException, place: str) -> BookError | None:
    state = getattr(fault, "sqlstate", None) or ""
    said = " ".join(str(fault).split())[:200]
    if state == "53100":
        return full(place)
    if state in ("55P03", "57014", "40001", "40P01", "53300"):
        return locked(place)
    if state[:2] == "XX" or state in ("42P01", "42703"):
        return damaged(place, said)
    if state in ("42501", "25006"):
        return not_written(place, said)
    if state[:2] in ("28", "3D") or (not state and ("authentication" in said or "does not exist" in said)):
        return BookError(
            f"The PostgreSQL server does not let you into {place} ({said}).",
            "Check the name, the password and the database in the address of the book.",
        )
    if not state or state[:2] in ("08", "57"):
        return BookError(
            f"The PostgreSQL server of {place} cannot be reached ({said}).",
            f"{_SAFE} Check that the server runs and that the network is up, then try again.",
        )
    return None
