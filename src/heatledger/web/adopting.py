"""What-ifs and mends made the job itself: their changes written into its text, as one revision."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from heatledger.job import edits
from heatledger.job.edits import EditError
from heatledger.job.model import Change, Job
from heatledger.job.text import Mapping, Node, Scalar, plain, walk


def adopted(text: str, job: Job, ids: Sequence[str]) -> str:
    """The text with the changes of these what-ifs in it, and without the what-ifs themselves.

    Raises JobErrors when they cannot be laid together, EditError when a change has no place in the text.
    """
    job.with_what_ifs(*ids)
    for id in ids:
        text = with_changes(text, job.what_ifs[id].changes)
    for id in ids:
        text = edits.remove_thing(text, f"what-ifs/{id}")
    left = walk(_tree(text), "what-ifs")
    if left is not None and not (isinstance(left, Mapping) and left.entries):
        text = edits.remove_thing(text, "what-ifs")
    return text


def with_changes(text: str, changes: Iterable[Change]) -> str:
    """The text with changes written into it, one after the other."""
    for change in changes:
        text = _with(text, change)
    return text


def _with(text: str, change: Change) -> str:
    there = walk(_tree(text), change.path)
    if change.kind == "remove":
        return text if there is None else edits.remove_thing(text, change.path)
    if change.to is None:
        raise EditError(change.path, "It is not said what to put there.")
    value = _value_of(change.to)
    if value is not None:
        return _with_value(text, change.path, value, change.to)
    if there is not None:
        place = _place(_tree(text), change.path)
        text = edits.remove_thing(text, change.path)
        return edits.move_thing(edits.add_thing(text, change.path, plain(change.to)), change.path, place)
    return edits.add_thing(text, change.path, plain(change.to))


def _with_value(text: str, path: str, value: str, node: Node) -> str:
    """One value, with how well it is known where that is said; what was known of the old one goes with it."""
    there = walk(_tree(text), path)
    if isinstance(there, Mapping):
        text = edits.unset(text, path)
    text = edits.set_entry(text, path, value)
    if not isinstance(node, Mapping):
        return text
    for key, said in node.entries.items():
        if not isinstance(said, Scalar) or not said.text or key == "is":
            continue
        text = (
            edits.set_known(text, path, said.text)
            if key == "known"
            else edits.set_detail(text, path, key, said.text)
        )
    return text


def _value_of(node: Node) -> str | None:
    """The text of one value, bare or with how well it is known; None for a thing."""
    if isinstance(node, Scalar):
        return node.text
    inner = node.entries.get("is") if isinstance(node, Mapping) else None
    return inner.text if isinstance(inner, Scalar) else None


def _place(tree: Mapping, path: str) -> int:
    parent = walk(tree, path.rpartition("/")[0])
    keys = [each for each in parent.entries if each != "known"] if isinstance(parent, Mapping) else []
    last = path.rpartition("/")[2]
    return keys.index(last) if last in keys else len(keys)


def _tree(text: str) -> Mapping:
    from heatledger.job.parsing import tree_of

    return tree_of(text)
