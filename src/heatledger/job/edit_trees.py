"""What an edit should come to: the same change made on the job as nested texts.

The text after an edit is read again and held against these, so no edit can change more than it says.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from heatledger.job.edit_errors import EditError
from heatledger.job.fields import Field, Shape
from heatledger.job.shapes import DECISION
from heatledger.job.text import Listing, Mapping, Node, Scalar, index_of
from heatledger.job.what_ifs import shape_at

Steps = tuple[str, ...]
_PARENTS = ("shape", "map", "list", "any")


def steps_of(path: str) -> Steps:
    """The steps of a path. A decision on one place has slashes in its own key."""
    if path.startswith("decisions/") and "@" in path:
        key, _, last = path.removeprefix("decisions/").rpartition("/")
        if last in DECISION.by_key and "@" in key:
            return ("decisions", key, last)
        return ("decisions", path.removeprefix("decisions/"))
    return tuple(path.split("/")) if path else ()


def inner(node: Node | None, step: str) -> Node | None:
    """What stands one step further, or None."""
    if isinstance(node, Mapping):
        return node.entries.get(step)
    if isinstance(node, Listing) and 0 <= index_of(step) < len(node.items):
        return node.items[int(step)]
    return None


def node_at(tree: Node, steps: Sequence[str]) -> Node | None:
    """What stands at the end of the steps, or None."""
    node: Node | None = tree
    for step in steps:
        node = inner(node, step)
        if node is None:
            return None
    return node


def form_at(steps: Sequence[str]) -> Shape | Field | None:
    """What can stand there by the form of the job."""
    return shape_at("/".join(steps[:1])) if steps and steps[0] == "decisions" else shape_at("/".join(steps))


def check_parents(tree: Mapping, steps: Steps) -> None:
    """EditError when a parent is a thing that is not there, or is a value."""
    path = "/".join(steps)
    for i in range(1, len(steps)):
        above, step = steps[: i - 1], steps[i - 1]
        node = node_at(tree, steps[:i])
        if isinstance(node, Mapping | Listing):
            continue
        form = form_at(above)
        is_thing = isinstance(form, Field) and form.kind == "map"
        field = form.by_key.get(step) if isinstance(form, Shape) else None
        is_value = isinstance(form, Shape) and (field is None or field.kind not in _PARENTS)
        given = isinstance(node, Scalar) and not node.is_empty
        in_list = isinstance(node_at(tree, above), Listing)
        if given or is_value or in_list or (node is None and is_thing):
            where = "/".join(steps[:i])
            raise EditError(path, f"There is no `{where}` to put `{steps[i]}` in.", f"Add `{where}` first.")


def put(whole: Any, steps: Steps, value: Any, gone: Sequence[str] = ()) -> Any:
    """The nested texts with a value put in; what is in ``gone`` beside it is taken away."""
    here = whole
    for step in steps[:-1]:
        if isinstance(here, list):
            here = here[int(step)]
            continue
        if here.get(step, "") == "":
            here[step] = {}
        here = here[step]
    last = steps[-1]
    if isinstance(here, list):
        if not 0 <= index_of(last) <= len(here):
            raise EditError("/".join(steps), f"There is no place `{last}` in the list.", "Add at its end.")
        here[int(last) : int(last) + 1] = [value]
        return whole
    for each in gone:
        here.pop(each, None)
    here[last] = value
    return whole


def drop(whole: Any, steps: Steps, flow: bool) -> Any:
    """The nested texts without an entry. What is left of a parent in rows, when it was the last, is a key
    with nothing behind it; braces stay braces."""
    above: Any = None
    here = whole
    for step in steps[:-1]:
        above, here = here, here[int(step)] if isinstance(here, list) else here[step]
    last = steps[-1]
    if isinstance(here, list):
        del here[int(last)]
    else:
        del here[last]
    if not here and not flow and above is not None:
        step = steps[-2]
        above[int(step) if isinstance(above, list) else step] = ""
    return whole


def reorder(whole: Any, steps: Steps, order: Sequence[int]) -> Any:
    """The nested texts with the children of a parent in another order."""
    here = whole
    for step in steps:
        here = here[int(step)] if isinstance(here, list) else here[step]
    if isinstance(here, list):
        here[:] = [here[each] for each in order]
        return whole
    pairs = list(here.items())
    here.clear()
    here.update(pairs[each] for each in order)
    return whole


def same_order(one: Any, other: Any) -> bool:
    """True when two nested texts are equal, the order of keys counted."""
    if isinstance(one, dict) and isinstance(other, dict):
        return list(one) == list(other) and all(same_order(each, other[key]) for key, each in one.items())
    if isinstance(one, list) and isinstance(other, list):
        return len(one) == len(other) and all(map(same_order, one, other))
    return bool(one == other)
