"""Reads the text of a job that an edit has made: only the rows of the thing that changed are read anew.

The rest of the tree is that of a text read before, moved by as many letters and lines as the edit added.
A test holds the tree equal to one read from nothing.
"""

from __future__ import annotations

from collections import OrderedDict
from dataclasses import dataclass, replace
from threading import Lock

from heatledger.job.parsing import LARGEST, STRANGE, tree_of
from heatledger.job.quick import OTHER_BREAKS, quick_rows
from heatledger.job.text import Listing, Mapping, Node, Scalar

KEPT = 6
"""Texts whose trees are kept: an edit reads what the edit before it has made."""
_DEEPEST = 2
"""Steps down to which the change is looked for: a section, and a thing in it."""


@dataclass(frozen=True)
class Parsed:
    """The tree of a text. All but what is at ``steps`` was taken from the tree ``before``, if any."""

    text: str
    tree: Mapping
    before: Mapping | None = None
    steps: tuple[str, ...] = ()


_KEPT: OrderedDict[str, Parsed] = OrderedDict()
_LOCK = Lock()


def parsed(text: str, base: Parsed | None = None) -> Parsed:
    """The tree of a text, kept from before, read beside the base or another text kept, or read from nothing.

    Raises JobErrors as ``tree_of`` does. A tree is shared and must not be changed.
    """
    with _LOCK:
        found = _KEPT.get(text)
        others = [each for each in reversed(_KEPT.values()) if each is not found]
    if found is None or (base is not None and base.text != text and found.before is not base.tree):
        bases = ([base] if base is not None else []) + ([] if found else others)
        beside = next((each for each in (_beside(one, text) for one in bases) if each is not None), None)
        found = beside or found or Parsed(text, tree_of(text))
    with _LOCK:
        _KEPT[text] = found
        _KEPT.move_to_end(text)
        while len(_KEPT) > KEPT:
            _KEPT.popitem(last=False)
    return found


def forget() -> None:
    """Keep no tree any longer."""
    with _LOCK:
        _KEPT.clear()


def _beside(base: Parsed, text: str) -> Parsed | None:
    """The tree of a text that differs from another in one thing only; None where it differs in more."""
    if len(text) > LARGEST or STRANGE.search(text):
        return None
    old = base.text
    if old == text:
        return Parsed(text, base.tree, base.tree, ("",))
    first = _alike(old, text)
    most = min(len(old), len(text)) - first
    last = _alike(old[: -most - 1 : -1], text[: -most - 1 : -1]) if most else 0
    return _with_rows(base, text, first, len(old) - last)


def _alike(one: str, other: str) -> int:
    """How many letters two texts have in common in front."""
    low, high = 0, min(len(one), len(other))
    while low < high:
        middle = (low + high + 1) // 2
        if one[low:middle] == other[low:middle]:
            low = middle
        else:
            high = middle - 1
    return low


def _with_rows(base: Parsed, text: str, first: int, last: int) -> Parsed | None:
    """``first`` and ``last`` bound the letters that changed in the text of the base."""
    old = base.text
    place: tuple[tuple[str, ...], int, int, int] | None = None
    node: Node = base.tree
    start, stop = 0, len(old)
    steps: tuple[str, ...] = ()
    while len(steps) < _DEEPEST and isinstance(node, Mapping) and not node.flow:
        found = _around(old, node, first, last, stop)
        if found is None:
            break
        key, start, stop, column = found
        steps = (*steps, key)
        node = node.entries[key]
        place = (steps, start, stop, column)
    if place is None:
        return None
    steps, start, stop, column = place
    if OTHER_BREAKS.search(old, start, stop):  # the full reader has counted these rows in its own way
        return None
    line = _line(base.tree, steps)
    moved = len(text) - len(old)
    rows = quick_rows(text, start, stop + moved, line)
    if rows is None or list(rows.entries) != [steps[-1]] or rows.start != start + column:
        return None
    lines = text.count("\n", start, stop + moved) - old.count("\n", start, stop)
    tree = _put(base.tree, steps, rows, start, lines, moved)
    return Parsed(text, tree, base.tree, steps)


def _around(old: str, node: Mapping, first: int, last: int, stop: int) -> tuple[str, int, int, int] | None:
    """The entry whose rows hold all that changed: its key, where its rows begin and end, its indent."""
    keys, starts = list(node.key_starts), list(node.key_starts.values())
    for i, key in enumerate(keys):
        row = old.rfind("\n", 0, starts[i]) + 1
        end = old.rfind("\n", 0, starts[i + 1]) + 1 if i + 1 < len(keys) else stop
        # The row the next entry begins in is left alone, and so is the key itself.
        behind_key = starts[i] + len(key) + 1
        if behind_key <= first and (last < end or (end == len(old) and last <= end)):
            if old[row : starts[i]].strip(" ") or old[starts[i] : behind_key] != f"{key}:":
                return None
            return key, row, end, starts[i] - row
    return None


def _line(tree: Mapping, steps: tuple[str, ...]) -> int:
    node = tree
    for step in steps[:-1]:
        inner = node.entries[step]
        node = inner if isinstance(inner, Mapping) else node
    return node.key_lines[steps[-1]]


def _put(node: Mapping, steps: tuple[str, ...], rows: Mapping, start: int, lines: int, moved: int) -> Mapping:
    """The mapping with the entry read anew, and all behind it moved."""
    made = replace(node, entries={}, key_lines={}, key_starts={})
    for key, each in node.entries.items():
        at, line = node.key_starts[key], node.key_lines[key]
        if key == steps[0]:
            made.entries[key] = (
                _put(each, steps[1:], rows, start, lines, moved)
                if len(steps) > 1 and isinstance(each, Mapping)
                else rows.entries[key]
            )
        elif at > start and (lines or moved):
            made.entries[key] = _moved(each, lines, moved)
            at, line = at + moved, line + lines
        else:
            made.entries[key] = each
        made.key_lines[key], made.key_starts[key] = line, at
    return made


def _moved(node: Node, lines: int, moved: int) -> Node:
    """A copy of a node so many lines and letters further down."""
    if isinstance(node, Scalar):
        return Scalar(
            node.text,
            node.line + lines,
            node.start + moved,
            node.end + moved,
            node.style,
            node.replaced,
            node.by,
        )
    end = node.end + moved if node.flow else node.end
    if isinstance(node, Mapping):
        return Mapping(
            node.line + lines,
            node.start + moved,
            end,
            node.flow,
            {key: _moved(each, lines, moved) for key, each in node.entries.items()},
            {key: each + lines for key, each in node.key_lines.items()},
            {key: each + moved for key, each in node.key_starts.items()},
        )
    return Listing(
        node.line + lines,
        [_moved(each, lines, moved) for each in node.items],
        node.start + moved,
        end,
        node.flow,
    )
