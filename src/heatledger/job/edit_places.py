"""Puts letters into the text of a job and takes them out: the one place where a text is changed."""

from __future__ import annotations

from typing import Any

from heatledger.job.edit_errors import EditError
from heatledger.job.edit_letters import Letters, start_of
from heatledger.job.edit_trees import Steps, form_at
from heatledger.job.edit_writing import in_one_line, in_rows, item_in_line, written
from heatledger.job.fields import Shape
from heatledger.job.shapes import JOB
from heatledger.job.text import Listing, Mapping, Node, Scalar

_SECTIONS = ("map", "shape", "any", "list")


def replaced(letters: Letters, steps: Steps, typed: str) -> str:
    """The text with another value in the place of a single one, or of braces."""
    text, node = letters.text, letters.at(steps)
    parent = letters.at(steps[:-1])
    if node is None or isinstance(parent, Scalar) or parent is None:
        raise EditError("/".join(steps), f"There is no `{'/'.join(steps)}`.")
    new = written(typed, parent.flow, "/".join(steps))
    return over(letters, steps, node, new) if text else text


def over(letters: Letters, steps: Steps, node: Node, new: str) -> str:
    """The text with new letters over those of a value in one piece."""
    text, parent = letters.text, letters.at(steps[:-1])
    start = start_of(node)
    if isinstance(node, Scalar) and node.is_empty:
        end = node.end
        if new and not isinstance(parent, Scalar) and parent is not None and parent.flow:
            end = _behind(letters, end, node)
        return text[:start] + (f" {new}" if new else "") + text[end:]
    own = parent.key_starts[steps[-1]] if isinstance(parent, Mapping) else start
    return text[:start] + new + text[letters.end(node, own) :]


def renamed(letters: Letters, steps: Steps, key: str, typed: str) -> str:
    """The text with another key and value in the place of an entry."""
    parent = letters.at(steps[:-1])
    if not isinstance(parent, Mapping):
        raise EditError("/".join(steps), f"There is no `{'/'.join(steps)}`.")
    start = parent.key_starts[steps[-1]]
    end = letters.end(parent.entries[steps[-1]], start)
    new = written(typed, parent.flow, "/".join((*steps[:-1], key)))
    return f"{letters.text[:start]}{key}: {new}{letters.text[end:]}"


def inserted(letters: Letters, steps: Steps, value: Any, braces: bool, inside: bool = True) -> str:
    """The text with a new entry; parents that are not there are made with it.

    ``braces``: it may go into braces on one line; ``inside``: so may what is in it.
    """
    depth = len(steps) - 1
    while depth and letters.at(steps[:depth]) is None:
        depth -= 1
    if depth < len(steps) - 1:
        for step in reversed(steps[depth + 1 :]):
            value = {step: value}
        braces = inside = False
    above, key, path = steps[:depth], steps[depth], "/".join(steps)
    parent = letters.at(above)
    if isinstance(parent, Scalar):
        return _under_empty(letters, above, parent, key, value, path)
    if isinstance(parent, Listing):
        return _into_list(letters, parent, value, path)
    if not isinstance(parent, Mapping):
        raise EditError(path, f"There is no `{'/'.join(above)}`.")
    if parent.flow:
        return _into_braces(letters, parent, above, f"{key}: {in_one_line(value, path)}")
    rows = in_rows(key, value, letters.column_inside(parent), path, braces, inside)
    place = _place(parent, above, key, value)
    slots = letters.slots(parent)
    block = letters.eol.join(rows)
    text = letters.text
    if place < 0 and letters.stands_alone(letters.key_start(parent, 0)):
        return text[: slots[0][0]] + block + letters.eol + text[slots[0][0] :]
    end = slots[max(place, 0)][1]
    apart = not above and isinstance(value, dict) and place == len(slots) - 1
    gap = letters.eol * (2 if apart and letters.eol * 2 in text else 1)
    return text[:end] + gap + block + text[end:]


def _under_empty(
    letters: Letters, steps: Steps, node: Scalar, key: str, value: Any, path: str
) -> str:  # fmt: skip
    """A first entry under a key that has nothing behind it yet."""
    parent = letters.at(steps[:-1])
    if not node.is_empty:
        raise EditError(path, f"`{'/'.join(steps)}` is one value.", "Clear it first.")
    if isinstance(parent, Mapping) and not parent.flow:
        end, column = letters.behind_empty(steps)
        rows = in_rows(key, value, column, path)
        return letters.text[:end] + letters.eol + letters.eol.join(rows) + letters.text[end:]
    return over(letters, steps, node, in_one_line({key: value}, path))


def _place(parent: Mapping, steps: Steps, key: str, value: Any) -> int:
    """Index of the entry behind which a new key goes, in the order of the form; -1 for the front."""
    last = len(parent.entries) - 1
    form = form_at(steps)
    if key == "known" and not isinstance(form, Shape):
        return -1
    if not isinstance(form, Shape) or key not in form.by_key:
        return last
    if form is JOB and form.by_key[key].kind in _SECTIONS:
        return last
    order = list(form.by_key)
    if form is not JOB and key == "known":
        order = [*(each for each in ("name",) if each in form.by_key), "known"]
    keys = list(parent.entries)
    before = [each for each in order[: order.index(key)] if each in keys]
    return keys.index(before[-1]) if before else -1


def _into_braces(letters: Letters, parent: Mapping, steps: Steps, piece: str) -> str:
    text = letters.text
    if not parent.entries:
        return f"{text[: parent.start]}{{{piece}}}{text[parent.end :]}"
    end = _behind(letters, letters.slots(parent)[-1][1], list(parent.entries.values())[-1])
    return f"{text[:end]}, {piece}{text[end:]}"


def _behind(letters: Letters, end: int, node: Node) -> int:
    """Where a comma can stand behind a value in braces; behind nothing a space stays in front of it."""
    if isinstance(node, Scalar) and node.is_empty:
        while letters.text[end : end + 1] == " ":
            end += 1
    return end


def _into_list(letters: Letters, parent: Listing, value: Any, path: str) -> str:
    """A new item at the end of a list."""
    text = letters.text
    piece = item_in_line(value, path, parent.flow)
    if parent.flow:
        if not parent.items:
            return f"{text[: parent.start]}[{piece}]{text[parent.end :]}"
        end = letters.slots(parent)[-1][1]
        return f"{text[:end]}, {piece}{text[end:]}"
    end = letters.slots(parent)[-1][1]
    return f"{text[:end]}{letters.eol}{' ' * letters.column_inside(parent)}- {piece}{text[end:]}"


def removed(letters: Letters, steps: Steps) -> str:
    """The text without an entry, its comments gone with it."""
    parent = letters.at(steps[:-1])
    if not isinstance(parent, Mapping | Listing) or letters.at(steps) is None:
        raise EditError("/".join(steps), f"There is no `{'/'.join(steps)}`.")
    keys = list(parent.entries) if isinstance(parent, Mapping) else [str(i) for i in range(len(parent.items))]
    index = keys.index(steps[-1])
    slots = letters.slots(parent)
    if parent.flow:
        return _out_of_braces(letters, parent, slots, index)
    text, (start, end) = letters.text, slots[index]
    if isinstance(parent, Mapping) and not letters.stands_alone(parent.key_starts[steps[-1]]):
        if len(keys) == 1:
            raise EditError(
                "/".join(steps), "It is the only entry behind its hyphen.", "Remove the whole item."
            )
        return text[: parent.key_starts[steps[-1]]] + text[parent.key_starts[keys[index + 1]] :]
    if len(keys) == 1 and len(steps) == 1:
        raise EditError("/".join(steps), "It is the only entry of the job.")
    return text[:start] + text[letters.next_row(end) :]


def _out_of_braces(
    letters: Letters, parent: Mapping | Listing, slots: list[tuple[int, int]], index: int
) -> str:
    """Take one entry and its comma out of braces or brackets; comments on its neighbors stay."""
    text, (start, end) = letters.text, slots[index]
    if index + 1 < len(slots):
        following = slots[index + 1][0]
        gap = text[end:following]
        first, _, below = gap.partition("\n")
        if "#" in below:
            # What stands above the next one is about that one.
            head = text[:start].rstrip(" ")
            rest = end + len(first)
            return head + (text[letters.next_row(rest) :] if head.endswith("\n") else text[rest:])
        return text[:start] + text[following:]
    if index == 0:
        inside = text[end : parent.end - 1]
        return text[:start] + (text[end : parent.end - 1] if "#" in inside else "") + text[parent.end - 1 :]
    before = slots[index - 1][1]
    gap = text[before:start]
    if "#" not in gap:
        return text[:before] + text[end:]
    comma = before + gap.index(",")
    return text[:comma] + text[comma + 1 : start] + text[end:].lstrip(" ")


def reordered(letters: Letters, steps: Steps, order: list[int]) -> str:
    """The text with the children of a parent in another order; what stands between them stays."""
    parent = letters.at(steps)
    if not isinstance(parent, Mapping | Listing):
        raise EditError("/".join(steps), f"There is nothing to order in `{'/'.join(steps)}`.")
    text, slots = letters.text, letters.slots(parent)
    pieces = [text[start:end] for start, end in slots]
    made = text[: slots[0][0]]
    for i, each in enumerate(order):
        made += pieces[each]
        made += text[slots[i][1] : slots[i + 1][0]] if i + 1 < len(slots) else ""
    return made + text[slots[-1][1] :]


def copied(letters: Letters, steps: Steps, new_id: str) -> str:
    """The text with an entry once more behind itself, under another key."""
    parent = letters.at(steps[:-1])
    if not isinstance(parent, Mapping):
        raise EditError("/".join(steps), f"There is no `{'/'.join(steps)}`.")
    text, key = letters.text, steps[-1]
    index = list(parent.entries).index(key)
    start, end = parent.key_starts[key], letters.slots(parent)[index][1]
    rest = text[start + len(key) : end]
    if parent.flow:
        end = _behind(letters, end, parent.entries[key])
        return f"{text[:end]}, {new_id}{rest}{text[end:]}"
    space = " " * (start - letters.row_start(start))
    return f"{text[:end]}{letters.eol}{space}{new_id}{rest}{text[end:]}"
