"""The Makefile: every target has a line of help, and what a fresh machine lacks is said in words."""

from __future__ import annotations

import re
import shutil
import subprocess
from pathlib import Path

import pytest

from tests.house_rules.tree import ROOT, text

MAKEFILE = ROOT / "Makefile"
needs_make = pytest.mark.needs("make")


def targets() -> list[str]:
    (line,) = re.findall(r"^\.PHONY: (.*)$", text(MAKEFILE), re.MULTILINE)
    return str(line).split()


@pytest.fixture
def bare_tree(tmp_path: Path) -> Path:
    """A tree in which nothing is installed yet."""
    for name in ("Makefile", "pyproject.toml", "constraints.txt"):
        shutil.copy(ROOT / name, tmp_path / name)
    return tmp_path


def python_that(folder: Path, script: str) -> Path:
    """A stand-in for a machine's Python."""
    path = folder / "python"
    path.write_text(f"#!/bin/sh\n{script}\n", encoding="utf-8")
    path.chmod(0o755)
    return path


def make(folder: Path, *arguments: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(["make", "-C", str(folder), *arguments], capture_output=True, encoding="utf-8")


@needs_make
def test_make_alone_lists_every_target(bare_tree: Path) -> None:
    said = make(bare_tree).stdout
    for each in targets():
        assert re.search(rf"^make {each} +\w+", said, re.MULTILINE), f"{each} has no line of help"


@needs_make
def test_an_older_python_is_named_as_the_reason(bare_tree: Path) -> None:
    done = make(bare_tree, f"PYTHON={python_that(bare_tree, 'exit 1')}", "demo")
    assert done.returncode != 0
    assert "Python 3.11 or newer is needed" in done.stderr
    assert not (bare_tree / ".venv").exists()


@needs_make
def test_a_python_without_venv_is_named_as_the_reason(bare_tree: Path) -> None:
    lacks = python_that(bare_tree, 'case "$2" in *ensurepip*) exit 1 ;; esac')
    done = make(bare_tree, f"PYTHON={lacks}", "test")
    assert done.returncode != 0
    assert "apt-get install python3-venv" in done.stderr
    assert not (bare_tree / ".venv").exists()
