"""Writes one entry into the text of a job: only its own letters change, comments and layout stay."""

from __future__ import annotations

import json
from typing import Any

from heatledger.job.errors import JobErrors
from heatledger.job.parsing import tree_of
from heatledger.job.text import Listing, Mapping, Node, Scalar, plain, walk


class SaveError(ValueError):
    """An entry that has no place in the text, with the reason."""


def with_entry(text: str, path: str, new_text: str) -> str:
    """The text with ``new_text`` at ``path``.

    An entry that is there is replaced, span for span; one that is not yet there is added to its mapping.
    Where it says ``{is: ...}`` the value behind ``is`` is meant. Raises SaveError when there is no such
    place, and JobErrors when the text is no job at all.
    """
    mark = "\ufeff" if text.startswith("\ufeff") else ""
    text = text.removeprefix("\ufeff")
    tree = tree_of(text)
    node = walk(tree, path)
    if isinstance(node, Mapping) and isinstance(node.entries.get("is"), Scalar):
        path, node = f"{path}/is", node.entries["is"]
    if isinstance(node, Mapping | Listing):
        raise SaveError(f"`{path}` is not one value; name the entry inside it")
    wanted = _wanted(tree, path, new_text)
    for written in _ways_to_write(new_text):
        changed = _replaced(text, node, written) if node is not None else _added(text, tree, path, written)
        try:
            if plain(tree_of(changed)) == wanted:
                return mark + changed
        except JobErrors:
            continue
    raise SaveError(f"`{new_text[:60]}` cannot be written at `{path}`")


def _ways_to_write(new_text: str) -> tuple[str, ...]:
    return (new_text, f"'{new_text}'", json.dumps(new_text, ensure_ascii=False))


def _wanted(tree: Mapping, path: str, new_text: str) -> Any:
    """The whole job as nested texts with the new one in its place."""
    whole = plain(tree)
    here = whole
    *way, last = path.split("/")
    for step in way:
        inside = here[int(step)] if isinstance(here, list) and step.isdigit() else here.get(step)
        if inside == "" and isinstance(here, dict):
            inside = here[step] = {}
        if not isinstance(inside, dict | list):
            raise SaveError(f"there is no `{'/'.join(way)}` to put `{last}` in")
        here = inside
    if isinstance(here, list):
        here[int(last)] = new_text
    else:
        here[last] = new_text
    return whole


def _replaced(text: str, node: Scalar, written: str) -> str:
    if node.is_empty:
        return text[: node.start] + (f" {written}" if written else "") + text[node.end :]
    end = "\n" if node.style in ("|", ">") and text[node.start : node.end].endswith("\n") else ""
    return text[: node.start] + written + end + text[node.end :]


def _added(text: str, tree: Mapping, path: str, written: str) -> str:
    """The text with a new key behind the last entry of its mapping."""
    head, _, key = path.rpartition("/")
    parent = walk(tree, head) if head else tree
    if isinstance(parent, Mapping) and parent.flow:
        comma = ", " if parent.entries else ""
        return f"{text[: parent.end - 1].rstrip(' ')}{comma}{key}: {written}{text[parent.end - 1 :]}"
    if isinstance(parent, Mapping):
        indent = parent.start - (text.rfind("\n", 0, parent.start) + 1)
        end = _end_of(parent)
    elif isinstance(parent, Scalar) and parent.is_empty:
        start = text.rfind("\n", 0, parent.start) + 1
        row = text[start : parent.start]
        indent = len(row) - len(row.lstrip(" ")) + 2
        end = parent.end
    else:
        raise SaveError(f"there is no `{head}` to put `{key}` in")
    stop = text.find("\n", end)
    stop = len(text) if stop < 0 else stop
    if text[end - 1 : end] == "\n":
        stop = end - 1
    return f"{text[:stop]}\n{' ' * indent}{key}: {written}{text[stop:]}"


def _end_of(node: Node) -> int:
    """Where the last letter of a node stands."""
    if isinstance(node, Scalar):
        return node.end
    inside = [_end_of(each) for each in (node.entries.values() if isinstance(node, Mapping) else node.items)]
    return max([node.end if isinstance(node, Mapping) else 0, *inside])
