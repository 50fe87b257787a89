"""A PostgreSQL server of the tests' own: started when first asked for, in a folder that goes with it.

Where there is none to start, the tests that need one are skipped, and say why.
"""

from __future__ import annotations

import importlib.util
import os
import shutil
import subprocess
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path

import pytest
from sqlalchemy import create_engine, text
from sqlalchemy.pool import NullPool

from tests.needed import leave_out

USER, NOBODY = "heat", "nobody"
DEBIAN = Path("/usr/lib/postgresql")
PROGRAMS = ("initdb", "pg_ctl", "postgres")


@dataclass
class Server:
    """A running server, reached through a socket in its folder only."""

    folder: Path
    made: int = 0
    free: list[str] = field(default_factory=list)

    def url(self, database: str = "postgres") -> str:
        return f"postgresql+psycopg://{USER}@/{database}?host={self.folder}"

    @contextmanager
    def lent(self) -> Iterator[str]:
        """The URL of an empty database; it is emptied again and lent anew, since each takes time and room."""
        if not self.free:
            self.made += 1
            self.free.append(f"book{self.made}")
            self._say("postgres", f"CREATE DATABASE {self.free[-1]}")
        name = self.free.pop()
        yield self.url(name)
        others = "pid <> pg_backend_pid() AND datname = current_database()"
        self._say(
            name,
            f"SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE {others}",
            "DROP SCHEMA public CASCADE",
            "CREATE SCHEMA public",
        )
        self.free.append(name)

    def _say(self, database: str, *commands: str) -> None:
        engine = create_engine(self.url(database), isolation_level="AUTOCOMMIT", poolclass=NullPool)
        with engine.connect() as connection:
            for each in commands:
                connection.execute(text(each))
        engine.dispose()


def programs() -> Path | None:
    """The folder of the server's programs, None when this machine has none."""
    found = shutil.which("initdb")
    places = [Path(found).resolve().parent] if found else []
    places += sorted(DEBIAN.glob("*/bin"), reverse=True)
    return next((each for each in places if all((each / name).exists() for name in PROGRAMS)), None)


def why_not() -> str:
    """Why no server can be started here; empty when it can."""
    if importlib.util.find_spec("psycopg") is None:
        return "the driver for PostgreSQL is not installed: pip install 'heatledger[postgres]'"
    if programs() is None:
        return "no PostgreSQL server is installed (Debian: apt install postgresql)"
    if is_root() and shutil.which("setpriv") is None:
        return "PostgreSQL refuses to run as root, and setpriv is not installed (Debian: util-linux)"
    return ""


def is_root() -> bool:
    return hasattr(os, "geteuid") and os.geteuid() == 0


@contextmanager
def running() -> Iterator[Server]:
    """A server for as long as it is needed."""
    bin, folder = programs(), Path(tempfile.mkdtemp(prefix="heat-pg-"))
    assert bin is not None
    as_whom: list[str] = []
    if is_root():  # the server refuses root
        shutil.chown(folder, NOBODY)
        as_whom = ["setpriv", "--reuid", NOBODY, "--regid", "nogroup", "--clear-groups"]

    def run(*words: str | Path) -> None:
        command = [*as_whom, *map(str, words)]
        environment = {**os.environ, "LC_ALL": "C", "HOME": str(folder)}
        done = subprocess.run(
            command, cwd=folder, stdin=subprocess.DEVNULL, stdout=subprocess.PIPE,
            stderr=subprocess.STDOUT, encoding="utf-8", env=environment,
        )  # fmt: skip
        assert done.returncode == 0, f"{command} failed:\n{done.stdout}"

    data, log = folder / "data", folder / "log"
    try:
        run(bin / "initdb", "-D", data, "-U", USER, "-A", "trust", "-E", "UTF8", "--no-sync")
        options = f"-c listen_addresses='' -k {folder} -c fsync=off -c max_connections=60"
        run(bin / "pg_ctl", "-D", data, "-l", log, "-w", "-o", options, "start")
        try:
            yield Server(folder)
        finally:
            run(bin / "pg_ctl", "-D", data, "-m", "immediate", "-w", "stop")
    finally:
        shutil.rmtree(folder, ignore_errors=True)


@pytest.fixture(scope="session")
def postgres() -> Iterator[Server]:
    """One server for all tests of a process; each process of a run in parallel has its own."""
    reason = why_not()
    if reason:
        leave_out(reason)
    with running() as server:
        yield server
