"""The command that fetches vendored files: what is missing is written, what differs is named and left."""

from __future__ import annotations

import hashlib
import sys
from pathlib import Path

import pytest

from tests.house_rules.tree import ROOT

sys.path.insert(0, str(ROOT / "docs"))
import make_vendor

BROUGHT = b"var a = 1;\n"


@pytest.fixture
def note(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A note on one file of a package that brings BROUGHT."""
    path = tmp_path / "note.toml"
    row = {
        "package": "a",
        "version": "1.0.0",
        "member": "a.js",
        "sha256": hashlib.sha256(BROUGHT).hexdigest(),
    }
    lines = [f'{key} = "{value}"' for key, value in row.items()]
    path.write_text("\n".join(['["a.js"]', *lines]), encoding="utf-8")
    monkeypatch.setattr(make_vendor, "ROOT", tmp_path)
    monkeypatch.setattr(make_vendor, "package", lambda *_: {"a.js": BROUGHT})
    return path


def test_a_missing_file_is_put_in_its_place(note: Path) -> None:
    assert list(make_vendor.compare(note, note.parent)) == []
    assert (note.parent / "a.js").read_bytes() == BROUGHT


def test_a_file_that_differs_is_named_and_left(note: Path) -> None:
    (note.parent / "a.js").write_bytes(b"changed")
    assert list(make_vendor.compare(note, note.parent)) == ["a.js: differs from what a 1.0.0 brings"]
    assert (note.parent / "a.js").read_bytes() == b"changed"


def test_a_package_that_changed_is_never_written(note: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(make_vendor, "package", lambda *_: {"a.js": b"other"})
    (fault,) = make_vendor.compare(note, note.parent)
    assert fault == "a.js: a 1.0.0 has another hash than the note"
    assert not (note.parent / "a.js").exists()
