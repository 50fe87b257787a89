"""What stands in a job at a place, in a few words."""

from __future__ import annotations

from heatledger.job.text import Listing, Mapping, Node, Scalar

_MOST = 4


def value_words(node: Node | None) -> str:
    """One value as typed; of a thing its name and its first entries; empty where there is nothing."""
    if node is None:
        return ""
    if isinstance(node, Scalar):
        return node.text
    if isinstance(node, Listing):
        return f"{len(node.items)} entries"
    inner = node.entries.get("is")
    if isinstance(inner, Scalar):
        return inner.text
    return _thing(node)


def _thing(node: Mapping) -> str:
    said = [
        f"{key.replace('_', ' ')} {each.text}" if key not in ("name", "kind", "catalog") else each.text
        for key, each in node.entries.items()
        if isinstance(each, Scalar) and each.text and key != "known"
    ]
    more = len(said) - _MOST
    return ", ".join(said[:_MOST]) + (f" and {more} more" if more > 0 else "")
