"""What every edit begins and ends with: the place it is meant for, and a look at what it came to."""

from __future__ import annotations

from typing import Any

from heatledger.job.edit_errors import EditError
from heatledger.job.edit_letters import MARK, Letters
from heatledger.job.edit_trees import Steps, form_at, same_order, steps_of
from heatledger.job.errors import JobErrors
from heatledger.job.fields import Field
from heatledger.job.reparse import parsed
from heatledger.job.text import Mapping, Node, plain

DETAILS = ("known", "within", "because")
"""What can be said of a value beside it."""
VALUE_KEYS = frozenset(("is", *DETAILS))


def opened(text: str, path: str) -> tuple[Letters, Steps]:
    """The letters of a text and the steps of a path; EditError for what is no path."""
    steps = steps_of(path)
    if not steps or not all(steps):
        raise EditError(path, f"`{path}` is not a path.", "A path is names joined by slashes: site/outdoor")
    return Letters(text), steps


def is_value(node: Node | None, steps: Steps) -> bool:
    """True for ``{is: ...}`` where one value is expected."""
    form = form_at(steps)
    one_value = form is None or (isinstance(form, Field) and form.kind not in ("map", "list"))
    if not isinstance(node, Mapping) or not one_value:
        return False
    return bool(node.entries) and set(node.entries) <= VALUE_KEYS


def checked(text: str, made: str, whole: Any, path: str, ordered: Steps | None = None) -> str:
    """The text made, once it reads as the change on the tree; EditError when it does not.

    ``ordered``: the parent whose children must stand in the order of the tree too.
    """
    try:
        tree = parsed(made).tree
    except JobErrors as why:
        raise EditError(path, "The text could not be changed there.", why.errors[0].message) from None
    read = plain(tree)
    same = read == whole
    if same and ordered is not None:
        one, other = read, whole
        for step in ordered:
            one, other = (each[int(step) if isinstance(each, list) else step] for each in (one, other))
        same = same_order(list(one), list(other)) if isinstance(one, dict) else True
    if not same:
        raise EditError(path, "The text could not be changed there alone.", "Change it in the text itself.")
    return (MARK if text.startswith(MARK) else "") + made
