"""Every sign that the app writes stands in its own typefaces."""

from __future__ import annotations

import ast
import hashlib
import re
import tomllib
from collections import defaultdict
from pathlib import Path

import pytest

from heatledger.ledger.units import UNITS

PACKAGE = Path(__file__).resolve().parents[2] / "src" / "heatledger"
STATIC = PACKAGE / "web" / "static"
FONTS = STATIC / "fonts"
NOTE = tomllib.loads((FONTS / "fonts.toml").read_text(encoding="utf-8"))
LARGEST_IN_ALL = 150_000
NOT_ON_SCREEN = {
    "ledger/numerals.py": "signs that are read and never written",
    "ledger/sizes.py": "signs that are read and never written",
    "ledger/unit_words.py": "signs that are read and never written",
    "papers/cells.py": "first signs of cells that a sheet would take for a formula",
    "cli/common.py": "marks of the terminal",
    "cli/findings_text.py": "marks of the terminal",
    "book/tables.py": "stands for a sign that a database cannot keep",
}


def held(family: str) -> set[str]:
    """Characters that every file of a family holds."""
    files = [row for row in NOTE.values() if row["family"] == family]
    return set.intersection(*(_characters(row["characters"]) for row in files))


def _characters(ranges: list[str]) -> set[str]:
    ends = [[int(end, 16) for end in each.split("-")] for each in ranges]
    return {chr(code) for first, last in ends for code in range(first, last + 1)}


def written() -> dict[str, set[str]]:
    """Each printable sign in the texts, the tables and the templates of the package, and where it stands."""
    found: dict[str, set[str]] = defaultdict(set)
    for path in sorted(PACKAGE.rglob("*")):
        place = path.relative_to(PACKAGE).as_posix()
        if place in NOT_ON_SCREEN or path.suffix not in (".py", ".yaml", ".html"):
            continue
        words = path.read_text(encoding="utf-8")
        texts = _constants(words) if path.suffix == ".py" else [words]
        for each in set("".join(texts)):
            # The sign for letters that could not be read is looked for, not written.
            if each != "\ufffd" and (each.isprintable() or each in "\u00a0\u202f\u2009"):
                found[each].add(place)
    return found


def _constants(code: str) -> list[str]:
    nodes = ast.walk(ast.parse(code))
    return [each.value for each in nodes if isinstance(each, ast.Constant) and isinstance(each.value, str)]


def test_every_sign_the_app_writes_is_in_its_typefaces() -> None:
    known = held("Ledger Sans")
    faults = [
        f"{each!r} U+{ord(each):04X} in {sorted(at)}" for each, at in written().items() if each not in known
    ]
    assert not faults, "\n  ".join(["", *faults, "Add the sign to docs/make_fonts.py, then: make fonts"])


def test_every_unit_can_be_written_in_both() -> None:
    signs = set("".join(UNITS))
    assert {"°", "·", "²"} <= signs
    assert signs <= held("Ledger Sans")
    behind = held("Ledger Serif") | held("Ledger Sans")
    assert signs <= behind


def test_the_display_face_leans_on_the_text_face() -> None:
    """It lacks a few signs, such as the raised minus; they must not come from whatever the machine has."""
    lacking = {each for each in written() if each not in held("Ledger Serif")}
    assert lacking <= held("Ledger Sans")
    (families,) = re.findall(r"--serif:\s*([^;]+);", _styles())
    assert re.match(r'"Ledger Serif",\s*"Ledger Sans"', families)


def _styles() -> str:
    return "\n".join(each.read_text(encoding="utf-8") for each in sorted(STATIC.glob("*.css")))


def test_a_reader_waits_for_few_bytes() -> None:
    files = {each.name: each.read_bytes() for each in FONTS.glob("*.woff2")}
    assert set(files) == set(NOTE)
    assert sum(map(len, files.values())) <= LARGEST_IN_ALL


@pytest.mark.parametrize("name", sorted(NOTE))
def test_a_file_is_the_one_that_was_looked_into(name: str) -> None:
    assert hashlib.sha256((FONTS / name).read_bytes()).hexdigest() == NOTE[name]["sha256"]


@pytest.mark.parametrize("name", sorted(NOTE))
def test_a_file_is_named_by_the_styles(name: str) -> None:
    row = NOTE[name]
    rule = next(each for each in re.findall(r"@font-face\s*{([^}]+)}", _styles()) if name in each)
    assert f'"{row["family"]}"' in rule and f"font-style: {row['style']}" in rule
    first, *last = re.findall(r"font-weight: (\d+)(?: (\d+))?;", rule)[0]
    assert int(first) <= row["weight"] <= int(last[0] or first)


def test_the_licence_goes_with_them() -> None:
    words = (FONTS / "LICENSE.txt").read_text(encoding="utf-8")
    assert "SIL OPEN FONT LICENSE" in words and "Reserved Font" in words
