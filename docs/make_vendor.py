"""Fetch the vendored files again and compare them with the hashes in their notes.

    make vendor

A file that is missing is put in its place when its hash is right; one that differs is left as it is and
named.
To take a newer version: change version and hash in ``note.toml``, delete the file, run this.
"""

from __future__ import annotations

import hashlib
import subprocess
import sys
import tarfile
import tempfile
import tomllib
from collections.abc import Iterator
from functools import cache
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
NOTES = (
    ROOT / "src" / "heatledger" / "web" / "static" / "vendor" / "note.toml",
    ROOT / "tests" / "browser" / "vendor" / "note.toml",
)


@cache
def package(name: str, version: str, folder: Path) -> dict[str, bytes]:
    """Every file of an npm package by its place in it."""
    command = ["npm", "pack", "--silent", f"{name}@{version}"]
    packed = subprocess.run(command, cwd=folder, check=True, capture_output=True, text=True)
    with tarfile.open(folder / packed.stdout.split()[-1]) as archive:
        members = [each for each in archive.getmembers() if each.isfile()]
        return {each.name.removeprefix("package/"): archive.extractfile(each).read() for each in members}


def compare(note: Path, folder: Path) -> Iterator[str]:
    """Put missing files in place; yield what does not agree with the note."""
    for name, row in tomllib.loads(note.read_text(encoding="utf-8")).items():
        here = note.parent / name
        fetched = package(row["package"], row["version"], folder)[row["member"]]
        shown = here.relative_to(ROOT).as_posix()
        if hashlib.sha256(fetched).hexdigest() != row["sha256"]:
            yield f"{shown}: {row['package']} {row['version']} has another hash than the note"
        elif not here.exists():
            here.write_bytes(fetched)
            print(f"{shown}: written")
        elif here.read_bytes() != fetched:
            yield f"{shown}: differs from what {row['package']} {row['version']} brings"


def main() -> int:
    """Compare all; 1 when something differs."""
    with tempfile.TemporaryDirectory() as folder:
        faults = [each for note in NOTES for each in compare(note, Path(folder))]
    print("\n".join(faults) or "Every vendored file is what its note says.")
    return bool(faults)


if __name__ == "__main__":
    sys.exit(main())
