"""Edits of a job's text. Each touches only its own letters: comments, order and layout elsewhere stay.

Every function takes the whole text and gives the whole text. What it made is read again and held against
the same change made on the tree, so an edit never changes more than it says. An edit that has no place in
the job raises EditError; a text that is no job at all raises JobErrors.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Collection
from typing import Any

from heatledger.job import edit_places as places
from heatledger.job.changes import RIVALS
from heatledger.job.edit_checked import checked, is_value, opened
from heatledger.job.edit_errors import EditError
from heatledger.job.edit_known import set_detail, set_known
from heatledger.job.edit_letters import Letters
from heatledger.job.edit_trees import Steps, check_parents, drop, form_at, put, reorder
from heatledger.job.edit_writing import as_texts, in_one_line
from heatledger.job.fields import Field, Shape
from heatledger.job.reading import ID
from heatledger.job.text import Listing, Mapping, Scalar, plain

__all__ = [
    "EditError", "add_thing", "copy_thing", "free_id", "move_thing", "remove_thing", "set_detail",
    "set_entry", "set_known", "unset",
]  # fmt: skip


def set_entry(text: str, path: str, typed: str) -> str:
    """The text with one value set; nothing typed leaves the key with nothing behind it.

    A key that is not there is added, parents such as ``plant/boiler`` with it; a rival way to say the same
    (a size beside an area) is taken away. Behind ``{is: ...}`` the value alone changes.
    """
    letters, steps = opened(text, path)
    node = letters.at(steps)
    if is_value(node, steps):
        steps = (*steps, "is")
        node = letters.at(steps)
    if isinstance(node, Mapping | Listing):
        raise EditError(path, f"`{path}` is not one value.", "Name the entry inside it.")
    form = form_at(steps)
    if isinstance(form, Shape) or (isinstance(form, Field) and form.kind == "map"):
        raise EditError(path, f"`{path}` is not one value.", "Name the entry inside it.")
    gone = _rivals(letters, steps) if typed else []
    if node is None and typed == "":
        return text
    if node is None:
        check_parents(letters.tree, steps)
    whole = put(plain(letters.tree), steps, typed, gone)
    if node is not None:
        made = places.replaced(letters, steps, typed)
    elif gone and _is_in_one_piece(letters, (*steps[:-1], gone[0])):
        made = places.renamed(letters, (*steps[:-1], gone[0]), steps[-1], typed)
        gone = gone[1:]
    else:
        made = places.inserted(letters, steps, typed, True)
    for each in gone:
        made = places.removed(Letters(made), (*steps[:-1], each))
    return checked(text, made, whole, path)


def unset(text: str, path: str) -> str:
    """The text without a key, and without the comment lines that stand directly above it."""
    letters, steps = opened(text, path)
    parent = letters.at(steps[:-1])
    if letters.at(steps) is None or not isinstance(parent, Mapping | Listing):
        raise EditError(path, f"There is no `{path}`.")
    return checked(text, places.removed(letters, steps), drop(plain(letters.tree), steps, parent.flow), path)


def remove_thing(text: str, path: str) -> str:
    """The text without a thing and the comments that belong to it."""
    return unset(text, path)


def add_thing(text: str, path: str, value: Any) -> str:
    """The text with a thing added (nested dicts, lists and texts); parents that are not there are made."""
    letters, steps = opened(text, path)
    node = letters.at(steps)
    made_of = as_texts(value)
    if node is not None and not (isinstance(node, Scalar) and node.is_empty):
        raise EditError(path, f"`{path}` is there already.", "Give the new one another id.")
    if isinstance(node, Scalar) and isinstance(letters.at(steps[:-1]), Mapping):
        return _fill(text, letters, steps, made_of, path)
    above = form_at(steps[:-1])
    if isinstance(above, Field) and above.kind == "map" and not ID.match(steps[-1]):
        raise EditError(path, f"`{steps[-1]}` cannot be an id.", "Ids are small letters, digits and hyphens.")
    check_parents(letters.tree, steps)
    whole = put(plain(letters.tree), steps, made_of)
    made = places.inserted(letters, steps, made_of, _siblings_in_braces(letters, steps))
    return checked(text, made, whole, path)


def _fill(text: str, letters: Letters, steps: Steps, value: Any, path: str) -> str:
    """Put a thing behind a key that has nothing behind it."""
    whole = put(plain(letters.tree), steps, value)
    if not isinstance(value, dict) or not value:
        letters_of = in_one_line(value, path, False)
        node = letters.at(steps)
        made = places.over(letters, steps, node, letters_of) if node is not None else letters.text
        return checked(text, made, whole, path)
    made = letters.text
    for key, each in value.items():
        made = places.inserted(Letters(made), (*steps, key), each, True)
    return checked(text, made, whole, path)


def _siblings_in_braces(letters: Letters, steps: Steps) -> bool:
    """True when the things beside a new one are written in braces, or there are none."""
    parent = letters.at(steps[:-1])
    inside = parent.entries.values() if isinstance(parent, Mapping) else ()
    beside = [each for each in inside if isinstance(each, Mapping)]
    return len(steps) > 1 and (not beside or beside[-1].flow)


def copy_thing(text: str, path: str, new_id: str, name: str) -> str:
    """The text with a copy of a thing behind the original, under a new id and name.

    Ids inside the copy stay; what points at the original goes on pointing at it alone.
    """
    letters, steps = opened(text, path)
    node, parent = letters.at(steps), letters.at(steps[:-1])
    if not isinstance(parent, Mapping) or node is None:
        raise EditError(path, f"There is no `{path}`.")
    if not ID.match(new_id):
        raise EditError(path, f"`{new_id}` cannot be an id.", "Ids are small letters, digits and hyphens.")
    if new_id in parent.entries:
        raise EditError(path, f"`{new_id}` is there already.", "Give the copy another id.")
    whole = plain(letters.tree)
    here = (*steps[:-1], new_id)
    made = places.copied(letters, steps, new_id)
    value = plain(node)
    if isinstance(node, Mapping):
        made = _with_name(made, here, node, name)
        value.pop("name", None)
        value |= {"name": name} if name else {}
    put(whole, here, value)
    keys = list(parent.entries)
    at = keys.index(steps[-1]) + 1
    order = [*range(at), len(keys), *range(at, len(keys))]
    return checked(text, made, reorder(whole, steps[:-1], order), path, steps[:-1])


def _with_name(made: str, steps: Steps, node: Mapping, name: str) -> str:
    here = (*steps, "name")
    if name and "name" in node.entries:
        return places.replaced(Letters(made), here, name)
    if name:
        return places.inserted(Letters(made), here, name, True)
    return places.removed(Letters(made), here) if "name" in node.entries else made


def move_thing(text: str, path: str, to: int) -> str:
    """The text with a thing moved among its siblings (0 is the first); its comments go with it."""
    letters, steps = opened(text, path)
    parent = letters.at(steps[:-1])
    if letters.at(steps) is None or not isinstance(parent, Mapping | Listing):
        raise EditError(path, f"There is no `{path}`.")
    keys = list(parent.entries) if isinstance(parent, Mapping) else [str(i) for i in range(len(parent.items))]
    # A word on how well all are known is no sibling and keeps its place.
    things = [i for i, each in enumerate(keys) if each != "known"]
    now = keys.index(steps[-1])
    if now not in things:
        raise EditError(path, f"`{path}` has no place among others.")
    moved = [each for each in things if each != now]
    moved.insert(max(0, min(to, len(moved))), now)
    waiting = iter(moved)
    order = [next(waiting) if i in things else i for i in range(len(keys))]
    whole = reorder(plain(letters.tree), steps[:-1], order)
    return checked(text, places.reordered(letters, steps[:-1], order), whole, path, steps[:-1])


def free_id(taken: Collection[str], name: str) -> str:
    """An id made from a name that none of the taken ones has: ``bedroom-4``."""
    letters = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode().lower()
    base = re.sub(r"[^a-z0-9]+", "-", letters).strip("-") or "new"
    if base not in taken:
        return base
    found = re.fullmatch(r"(.*?)-(\d{1,6})", base)
    stem, number = (found[1], int(found[2])) if found else (base, 2)
    while f"{stem}-{number}" in taken:
        number += 1
    return f"{stem}-{number}"


def _rivals(letters: Letters, steps: Steps) -> list[str]:
    """Keys beside this one that say the same in another way."""
    parent = letters.at(steps[:-1])
    if not isinstance(parent, Mapping) or not isinstance(form_at(steps[:-1]), Shape):
        return []
    last = steps[-1]
    rivals = (each for group in RIVALS if last in group for each in group if each != last)
    return [each for each in dict.fromkeys(rivals) if each in parent.entries]


def _is_in_one_piece(letters: Letters, steps: Steps) -> bool:
    node = letters.at(steps)
    return not (isinstance(node, Mapping | Listing) and not node.flow)
