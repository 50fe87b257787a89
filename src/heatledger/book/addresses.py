"""Where a book lies: a file of this computer, or a PostgreSQL server named by a URL."""

from __future__ import annotations

import os
import sys
from pathlib import Path

from sqlalchemy.engine import URL, make_url
from sqlalchemy.exc import ArgumentError

from heatledger.book.errors import BookError

ENVIRONMENT = "HEATLEDGER_BOOK"
"""Names the book when no other is asked for."""

_NETWORK = {"nfs", "nfs4", "cifs", "smb3", "smbfs", "afs", "ncpfs", "fuse.sshfs", "glusterfs", "davfs"}
_DRIVE_REMOTE = 4


def data_folder() -> Path:
    """The folder in which programs of this user keep their data, with our own name; it may not exist yet."""
    home = Path.home()
    if os.name == "nt":
        return Path(os.environ.get("LOCALAPPDATA") or home / "AppData" / "Local") / "Heatledger"
    if sys.platform == "darwin":
        return home / "Library" / "Application Support" / "Heatledger"
    return Path(os.environ.get("XDG_DATA_HOME") or home / ".local" / "share") / "heatledger"


def default_url() -> str:
    """The book of this user: what the environment names, else a SQLite file in the data folder."""
    named = os.environ.get(ENVIRONMENT, "").strip()
    return named or f"sqlite:///{(data_folder() / 'book.sqlite').as_posix()}"


def url_of(address: str) -> URL:
    """The URL that an address means; a plain path is a SQLite file. Raises BookError."""
    text = address.strip()
    if "://" not in text:
        return URL.create("sqlite", database=str(Path(text).expanduser())) if text else _refused(address)
    try:
        url = make_url(text)
        kind = url.get_backend_name()
    except (ArgumentError, ValueError):
        return _refused(address)
    if kind == "sqlite" and url.database and url.database != ":memory:":
        return URL.create("sqlite", database=str(Path(url.database).expanduser()))
    if kind in ("postgresql", "postgres"):
        return url.set(drivername="postgresql+psycopg")
    return _refused(address)


def _refused(address: str) -> URL:
    shown = address.partition("@")[2] or address
    raise BookError(
        f"{shown!r} is no address of a book.",
        "Name a file, as in  jobs/book.sqlite , or a server, as in  postgresql://name@host/database .",
    )


def place_of(url: URL) -> str:
    """What people call the book at a URL: the file, or the server without its password."""
    if url.get_backend_name() == "sqlite":
        return str(url.database)
    return url.set(drivername="postgresql").render_as_string(hide_password=True)


def on_network(folder: Path) -> bool:
    """Whether a folder lies on another computer, as far as this one can tell."""
    whole = folder.absolute()
    if str(whole).startswith(("\\\\", "//")):
        return True
    if os.name == "nt":
        return _remote_drive(whole)
    try:
        mounts = Path("/proc/self/mounts").read_text(encoding="utf-8", errors="replace")
    except OSError:
        return False
    return kind_of_mount(whole.resolve(), mounts) in _NETWORK


def kind_of_mount(folder: Path, mounts: str) -> str:
    """The kind of file system that ``folder`` lies on, by a list of what is mounted where."""
    found = Path(), ""
    for row in mounts.splitlines():
        parts = row.split(" ")
        if len(parts) < 3:
            continue
        at = Path(parts[1].replace("\\040", " "))
        if (folder == at or at in folder.parents) and len(at.parts) >= len(found[0].parts):
            found = at, parts[2]
    return found[1]


def _remote_drive(folder: Path) -> bool:
    import ctypes

    kernel = getattr(ctypes, "windll").kernel32  # noqa: B009 - only Windows has it
    return bool(kernel.GetDriveTypeW(f"{folder.drive}\\") == _DRIVE_REMOTE)
