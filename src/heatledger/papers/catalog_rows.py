"""Entries that come from the catalog: the row they stand in, its neighbors, and why it was taken."""

from __future__ import annotations

from heatledger.catalog.loader import load_table
from heatledger.ledger.figures import Leaf, LeafKind


def row_name(origin: Leaf) -> str:
    """What the row of a catalog entry is called; empty for any other entry."""
    return _rows(origin).get(_step(origin, 2), "")


def beside_it(origin: Leaf) -> list[str]:
    """What belongs to an entry, in words: its neighbors in the table, the reason given, its what-if."""
    names = tuple(_rows(origin).values())
    said = []
    for each in origin.beside:
        if names and each.startswith(names):
            said.append(f"beside it {each}")
        else:
            said.append(each if each.startswith("from the what-if ") else f"because: {each}")
    return said


def _rows(origin: Leaf) -> dict[str, str]:
    """The rows of the table by key; none for an entry of the job."""
    if origin.kind is not LeafKind.CATALOG or _step(origin, 0) != "catalog":
        return {}
    return {key: row.name for key, row in load_table(_step(origin, 1)).rows.items()}


def _step(origin: Leaf, number: int) -> str:
    steps = origin.path.split("/")
    return steps[number] if number < len(steps) else ""
