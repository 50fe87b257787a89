"""Every source that is cited is in the bibliography, and every one in it is cited."""

from __future__ import annotations

import ast
import re
from pathlib import Path

from heatledger.ledger.sources import Standing, bibliography
from tests.house_rules.tree import calls, ending, files, listing, named, text, tree


def constants(path: Path) -> dict[str, str]:
    """Module-level names that stand for a plain string."""
    found = {}
    for node in tree(path).body:
        value = node.value if isinstance(node, ast.Assign) else None
        if isinstance(node, ast.Assign) and isinstance(value, ast.Constant) and isinstance(value.value, str):
            found.update({each.id: value.value for each in node.targets if isinstance(each, ast.Name)})
    return found


def cited_in_code() -> list[tuple[str, str | None]]:
    """Where, and which key; None where the key cannot be read from the code."""
    found: list[tuple[str, str | None]] = []
    for path in [*ending(".py", under="src/"), *ending(".py", under="tests/published/")]:
        known = constants(path)
        for call in calls(path, "cite"):
            said = [*call.args, *(each.value for each in call.keywords if each.arg == "key")]
            first = said[0] if said else None
            key = first.value if isinstance(first, ast.Constant) else known.get(getattr(first, "id", ""))
            found.append((f"{named(path)}:{call.lineno}", key if isinstance(key, str) else None))
    return found


def cited_in_tables() -> list[tuple[str, str]]:
    """Keys that the catalog's data files name as their source."""
    row = re.compile(r"\b(?:source|key): *[\"']?([A-Za-z0-9][\w.-]*)")
    return [
        (f"{named(path)}:{number}", found.group(1))
        for path in files()
        if path.suffix == ".yaml" and named(path).startswith("src/heatledger/catalog/")
        for number, line in enumerate(text(path).splitlines(), 1)
        if (found := row.search(line)) and not line.lstrip().startswith("#")
    ]


# The loader and the ledger make citations from rows that they read.
READS_KEYS_FROM_DATA = ("src/heatledger/catalog/", "src/heatledger/ledger/sources.py")


def test_no_source_is_undefined() -> None:
    known = bibliography()
    faults = [
        f"{place}: {key!r}" if key is not None else f"{place}: the key is not plain text"
        for place, key in cited_in_code()
        if key != "" and key not in known and not (key is None and place.startswith(READS_KEYS_FROM_DATA))
    ]
    faults += [f"{place}: {key!r}" for place, key in cited_in_tables() if key not in known]
    assert not faults, listing(faults, "Add it to ledger/sources.yaml: title, edition, what we use it for.")


def test_no_source_is_unused() -> None:
    used = {key for _, key in cited_in_code()} | {key for _, key in cited_in_tables()}
    unused = sorted(set(bibliography()) - used)
    assert not unused, listing(unused, "Nothing cites it: take it out of ledger/sources.yaml.")


def test_every_source_says_what_it_is_and_what_for() -> None:
    rows = bibliography().items()
    faults = [key for key, each in rows if not each.title.strip() or not each.used_for.strip()]
    assert not faults, listing(faults, "A source needs a title and what we use it for.")


def test_every_standing_is_one_of_ours() -> None:
    words = {each.name for each in Standing}
    row = re.compile(r"^\s*standing: *[\"']?([A-Za-z _]+)")
    faults = [
        f"{named(path)}:{number} {found.group(1)!r}"
        for path in ending(".yaml", under="src/heatledger/catalog/")
        for number, line in enumerate(text(path).splitlines(), 1)
        if (found := row.search(line)) and found.group(1).strip().upper().replace(" ", "_") not in words
    ]
    assert not faults, listing(faults, f"Standings are {', '.join(sorted(words))}.")
