"""The tree of what was typed in a job file: texts, mappings and lists, each with its line and its place."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Any

DEEPEST = 24
"""Levels of nesting. A job needs eight."""


@dataclass(slots=True)
class Scalar:
    """One value as typed. ``start`` and ``end`` are its span in the text of the file."""

    text: str
    line: int = 0
    start: int = 0
    end: int = 0
    style: str = ""
    """Empty for plain text, else the quote or block mark it was written with."""
    replaced: str = ""
    """What stood here before a what-if."""
    by: str = ""
    """The what-if that put it here."""

    @property
    def is_empty(self) -> bool:
        """True when a key has nothing after its colon."""
        return not self.text and not self.style


@dataclass(slots=True)
class Mapping:
    """Keys and values in the order of the file."""

    line: int = 0
    start: int = 0
    end: int = 0
    flow: bool = False
    entries: dict[str, Node] = field(default_factory=dict)
    key_lines: dict[str, int] = field(default_factory=dict)
    key_starts: dict[str, int] = field(default_factory=dict)


@dataclass(slots=True)
class Listing:
    """A list of values. ``end`` is known where it stands in brackets (``flow``)."""

    line: int = 0
    items: list[Node] = field(default_factory=list)
    start: int = 0
    end: int = 0
    flow: bool = False


Node = Scalar | Mapping | Listing
_AFTER_COMMA = re.compile(r"\d+(\D|\Z)")


def is_rest_of_number(key: str, node: Node) -> bool:
    """True for a key that is what a comma inside braces has cut off a number: `225,000 Btu/h`."""
    return isinstance(node, Scalar) and node.is_empty and bool(_AFTER_COMMA.match(key))


def index_of(step: str) -> int:
    """The place in a list that a step of a path names, -1 when it names none."""
    return int(step) if step.isdecimal() and len(step) < 9 else -1


def walk(tree: Node, path: str) -> Node | None:
    """The node at a path of the job, or None."""
    node: Node = tree
    for step in path.split("/") if path else ():
        if isinstance(node, Mapping) and step in node.entries:
            node = node.entries[step]
        elif isinstance(node, Listing) and 0 <= index_of(step) < len(node.items):
            node = node.items[int(step)]
        else:
            return None
    return node


def line_of(tree: Mapping, path: str) -> int:
    """Line of the entry at ``path``, or of the nearest parent that stands in the file."""
    node: Node = tree
    line = tree.line
    for step in path.split("/") if path else ():
        if isinstance(node, Mapping) and step not in node.entries and "size" in node.entries:
            return node.key_lines.get("size", line) or line
        if isinstance(node, Mapping) and step in node.entries:
            line = node.key_lines.get(step, 0) or line
            node = node.entries[step]
        elif isinstance(node, Listing) and 0 <= index_of(step) < len(node.items):
            node = node.items[int(step)]
            line = node.line or line
        else:
            break
    return line


def plain(node: Node) -> Any:
    """The node as nested dicts and lists of the texts typed."""
    if isinstance(node, Scalar):
        return node.text
    if isinstance(node, Mapping):
        return {key: plain(each) for key, each in node.entries.items()}
    return [plain(each) for each in node.items]


def node_of(value: Any, line: int = 0) -> Node:
    """A tree from nested dicts, lists and texts (as a finding's mend or a program gives them)."""
    if isinstance(value, Scalar | Mapping | Listing):
        return value
    if isinstance(value, dict):
        entries = {str(key): node_of(each, line) for key, each in value.items()}
        return Mapping(line, entries=entries, key_lines=dict.fromkeys(entries, line))
    if isinstance(value, list | tuple):
        return Listing(line, [node_of(each, line) for each in value])
    if isinstance(value, bool):
        return Scalar("yes" if value else "no", line)
    return Scalar(str(value), line)


def scalars(node: Node) -> Iterator[Scalar]:
    """Every scalar below a node, in order."""
    if isinstance(node, Scalar):
        yield node
    elif isinstance(node, Mapping):
        for each in node.entries.values():
            yield from scalars(each)
    else:
        for each in node.items:
            yield from scalars(each)
