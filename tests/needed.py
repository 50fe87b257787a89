"""What some tests need from the machine, where it is, and how to get it.

A test asks with ``@pytest.mark.needs("chromium")`` or, in a fixture, with ``tool("chromium")``. Where the
thing is missing, the test is left out and named at the end of the run; with HEATLEDGER_LEAVE_NOTHING_OUT=1 it
fails.

    python tests/needed.py              says what is missing
    python tests/needed.py --install    installs it first where it may: root, on a Debian
    python tests/needed.py --strict     exit code 1 while something is missing
"""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path
from typing import NamedTuple, NoReturn

LEAVE_NOTHING_OUT = "HEATLEDGER_LEAVE_NOTHING_OUT"
LEFT_OUT = "left out: "
"""How the reason of a skipped test begins when the machine lacks something."""


class Need(NamedTuple):
    """A thing of the machine: the programs one of which must be there, and who looks for it."""

    what: str
    programs: tuple[str, ...]
    packages: tuple[str, ...]
    asked_by: str
    folders: tuple[str, ...] = ()
    always: bool = True

    def find(self) -> str:
        """Where the program is; empty when there is none."""
        for program in self.programs:
            if found := shutil.which(program):
                return found
            for pattern in self.folders:
                beside = sorted(Path("/").glob(f"{pattern}/{program}"), key=_by_version)
                if beside:
                    return str(beside[-1])
        return ""


def _by_version(path: Path) -> tuple[int, ...]:
    return tuple(int(each) for each in path.parts if each.isdigit())


NEEDS = {
    "chromium": Need(
        "Chromium", ("chromium", "chromium-browser", "google-chrome"), ("chromium",), "the browser tests"
    ),
    "postgresql": Need(
        "PostgreSQL server",
        ("initdb",),
        ("postgresql",),
        "the tests of the book on PostgreSQL",
        ("usr/lib/postgresql/*/bin", "usr/pgsql-*/bin"),
    ),
    "poppler": Need("poppler", ("pdftoppm",), ("poppler-utils",), "the tests that look at printed pages"),
    "make": Need("make", ("make",), ("make",), "the tests of the Makefile"),
    "node": Need("Node", ("node", "nodejs"), ("nodejs",), "the check of the scripts' types", always=False),
    "npm": Need("npm", ("npm",), ("npm",), "the check of the scripts' types", always=False),
}


def leaves_nothing_out() -> bool:
    """True when a missing thing is a failure."""
    return os.environ.get(LEAVE_NOTHING_OUT, "") not in ("", "0")


def missing() -> dict[str, Need]:
    """What is not here. Node is asked for only where nothing may be left out."""
    asked = {name: need for name, need in NEEDS.items() if need.always or leaves_nothing_out()}
    return {name: need for name, need in asked.items() if not need.find()}


def reason(name: str) -> str:
    """Why a test cannot run here, and what would mend it."""
    need = NEEDS[name]
    return f"{LEFT_OUT}there is no {need.what}. On Debian: apt-get install {' '.join(need.packages)}"


def tool(name: str) -> str:
    """The path of a program that a test needs.

    Skips the test when it is missing, or fails it where nothing may be left out. ``name`` is a key of NEEDS.
    """
    found = NEEDS[name].find()
    if not found:
        leave_out(reason(name))
    return found


def leave_out(why: str) -> NoReturn:
    """Leave the running test out for want of something; fail it where nothing may be left out."""
    import pytest

    words = why.removeprefix(LEFT_OUT)
    if leaves_nothing_out():
        pytest.fail(words, pytrace=False)
    pytest.skip(LEFT_OUT + words)


def may_install() -> bool:
    """True for root on a Debian; nobody else's machine is changed by a test run."""
    return hasattr(os, "geteuid") and os.geteuid() == 0 and shutil.which("apt-get") is not None


def install(needs: dict[str, Need]) -> None:
    """Install what can be installed, one thing at a time, so that one that fails keeps no other away."""
    quiet = {**os.environ, "DEBIAN_FRONTEND": "noninteractive"}
    say(f"Installing {', '.join(each.what for each in needs.values())}, once ...")
    _run(["apt-get", "update", "-qq"], quiet)
    for need in needs.values():
        _run(["apt-get", "install", "-y", "-qq", "--no-install-recommends", *need.packages], quiet)


def _run(command: list[str], environment: dict[str, str]) -> None:
    """Run quietly; what it said is shown only when it fails."""
    done = subprocess.run(command, env=environment, stdout=subprocess.PIPE, stderr=subprocess.STDOUT)
    if done.returncode:
        said = done.stdout.decode(errors="replace").strip().splitlines()[-3:]
        say(f"{' '.join(command)} did not work: {' '.join(said)}")


def say(words: str) -> None:
    """Talk goes to standard error."""
    sys.stderr.write(f"{words}\n")
    sys.stderr.flush()


def main(arguments: list[str]) -> int:
    """Install where asked and allowed, then say what is missing."""
    if "--install" in arguments and missing() and may_install():
        install(missing())
    lacking = missing()
    if lacking:
        packages = " ".join(each for need in lacking.values() for each in need.packages)
        for need in lacking.values():
            say(f"Not here: {need.what}. Without it {need.asked_by} cannot run.")
        say(f"On Debian, as root: apt-get install {packages}")
    return 1 if lacking and "--strict" in arguments else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
