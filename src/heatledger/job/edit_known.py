"""Says beside a value how well it is known, within what, and why."""

from __future__ import annotations

from typing import Any

from heatledger.job import edit_places as places
from heatledger.job.edit_checked import DETAILS, VALUE_KEYS, checked
from heatledger.job.edit_errors import EditError
from heatledger.job.edit_letters import Letters
from heatledger.job.edit_trees import Steps, drop, form_at, put, steps_of
from heatledger.job.edit_writing import in_one_line
from heatledger.job.fields import Field, Shape
from heatledger.job.text import Listing, Mapping, Scalar, plain


def set_known(text: str, path: str, known: str) -> str:
    """The text with how well a value, or all of a thing, is known; nothing takes the word away again."""
    return set_detail(text, path, "known", known)


def set_detail(text: str, path: str, key: str, typed: str) -> str:
    """The text with ``known``, ``within`` or ``because`` said of a value; ``known`` of a thing too.

    A value ``X`` becomes ``{is: X, known: told}``, and ``X`` again when nothing is said of it any more.
    """
    if key not in DETAILS:
        raise EditError(path, f"`{key}` is not said of a value.", f"It can be {', '.join(DETAILS)}.")
    letters = Letters(text)
    steps = steps_of(path)
    node = letters.at(steps)
    if node is None or isinstance(node, Listing):
        raise EditError(path, f"There is no `{path}` to say how well it is known.", "Give the value first.")
    form = form_at(steps)
    is_thing = isinstance(form, Shape) or (isinstance(form, Field) and form.kind == "map") or not steps
    if is_thing:
        if key != "known":
            raise EditError(path, f"`{key}` is said of single values.", "Name the entry inside it.")
        return _known_of_thing(text, letters, steps, typed)
    said = dict(plain(node)) if isinstance(node, Mapping) else {"is": node.text} if node.text else {}
    if isinstance(node, Mapping) and not set(said) <= VALUE_KEYS:
        raise EditError(path, f"`{path}` is not one value.", "Name the entry inside it.")
    said.pop(key, None)
    if typed:
        said[key] = typed
    value = said if set(said) - {"is"} else said.get("is", "")
    return _replace_value(text, letters, steps, value, path)


def _known_of_thing(text: str, letters: Letters, steps: Steps, typed: str) -> str:
    here = (*steps, "known")
    path = "/".join(here)
    node, parent = letters.at(here), letters.at(steps)
    if typed == "":
        if node is None:
            return text
        flow = isinstance(parent, Mapping) and parent.flow
        return checked(text, places.removed(letters, here), drop(plain(letters.tree), here, flow), path)
    whole = put(plain(letters.tree), here, typed)
    if isinstance(node, Scalar):
        return checked(text, places.replaced(letters, here, typed), whole, path)
    return checked(text, places.inserted(letters, here, typed, True), whole, path)


def _replace_value(text: str, letters: Letters, steps: Steps, value: Any, path: str) -> str:
    """The text with a single value, or braces, in the place of one of the two."""
    node = letters.at(steps)
    whole = put(plain(letters.tree), steps, value)
    if isinstance(node, Mapping) and not node.flow:
        # Rows of is, known and because: what stays keeps its rows, unless the value is to stand alone.
        return checked(text, _in_rows_again(letters, steps, node, value), whole, path)
    if isinstance(value, dict):
        made = places.over(letters, steps, node, in_one_line(value, path)) if node is not None else ""
    else:
        made = places.replaced(letters, steps, value)
    return checked(text, made, whole, path)


def _in_rows_again(letters: Letters, steps: Steps, node: Mapping, value: Any) -> str:
    if not isinstance(value, dict):
        made = places.removed(letters, steps)
        return places.inserted(Letters(made), steps, value, True)
    made = letters.text
    for key in node.entries:
        if key not in value:
            made = places.removed(Letters(made), (*steps, key))
    for key, each in value.items():
        now = Letters(made)
        there = now.at((*steps, key))
        if not isinstance(there, Scalar):
            made = places.inserted(now, (*steps, key), each, True)
        elif there.text != each:
            made = places.replaced(now, (*steps, key), each)
    return made
