"""What-ifs in the text of a job: one more written down, or some made part of the job itself."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import Any

from heatledger.job import edit_places as places
from heatledger.job.changes import RIVALS
from heatledger.job.edit_errors import EditError
from heatledger.job.edit_letters import MARK, Letters
from heatledger.job.edit_trees import Steps, steps_of
from heatledger.job.edit_writing import as_texts, in_one_line
from heatledger.job.edits import add_thing, free_id, remove_thing
from heatledger.job.load import read_job
from heatledger.job.model import Change, Job
from heatledger.job.text import Mapping as Tree
from heatledger.job.text import Node, Scalar, node_of, plain
from heatledger.job.what_ifs import VERBS

SECTION = "what-ifs"


def add_what_if(text: str, name: str, changes: Iterable[Mapping[str, Any]]) -> tuple[str, str]:
    """The text with a what-if at the end of the section, and its id.

    ``changes`` are as a job writes them: ``{"set": path, "to": "R-30"}``, add or remove. Raises EditError.
    """
    made = [as_texts(each) for each in changes]
    for each in made:
        if len([verb for verb in VERBS if verb in each]) != 1:
            raise EditError(SECTION, "A change says one of set, add and remove.")
        if "to" not in each and "remove" not in each:
            raise EditError(SECTION, f"It is not said what to put at `{next(iter(each.values()))}`.")
    if not made:
        raise EditError(SECTION, "A what-if without changes says nothing.", "Change something first.")
    section = Letters(text).at((SECTION,))
    taken = section.entries if isinstance(section, Tree) else {}
    id = free_id(taken, name)
    if id == "known":
        id = free_id({*taken, id}, name)
    return add_thing(text, f"{SECTION}/{id}", {"name": name, "changes": made}), id


def adopt_what_ifs(text: str, ids: Sequence[str]) -> str:
    """The text with the changes of some what-ifs made in the job itself, in order, and these taken away.

    Raises JobErrors when they do not go together, and EditError when one cannot be written.
    """
    job = read_job(text)
    # Laid over the job first, so that what does not go together is told as ever.
    wanted = plain(job.with_what_ifs(*ids).source.tree)
    made = text
    for id in ids:
        for change in job.what_ifs[id].changes:
            made = _with_change(made, change)
    for id in dict.fromkeys(ids):
        made = remove_thing(made, f"{SECTION}/{id}")
        wanted[SECTION].pop(id)
    now = plain(Letters(made).tree)
    if _filled(now) != _filled(wanted):
        raise EditError(SECTION, "The what-ifs could not be written into the job.", "Change the job itself.")
    return made


def adopted_name(job: Job, ids: Sequence[str]) -> str:
    """One line on what was adopted: Adopted low-e in the old windows, and air sealing."""
    names = [job.what_ifs[each].name if each in job.what_ifs else each for each in ids]
    return (
        f"What-if adopted: {', '.join(names)}" if len(names) == 1 else f"What-ifs adopted: {', '.join(names)}"
    )


def _filled(whole: Any) -> Any:
    """Nested texts where what holds nothing is nothing: the last thing of a section leaves its key."""
    if isinstance(whole, dict):
        inside = {key: _filled(each) for key, each in whole.items()}
        return {key: each for key, each in inside.items() if each not in ("", {}, [])}
    return [_filled(each) for each in whole] if isinstance(whole, list) else whole


def _with_change(text: str, change: Change) -> str:
    """The text with one change of a what-if written into it."""
    letters = Letters(text)
    steps = steps_of(change.path)
    node = letters.at(steps)
    if change.kind == "remove":
        # Another of the what-ifs may have taken it away.
        return text if node is None else remove_thing(text, change.path)
    value = as_texts(plain(node_of(change.to)))
    mark = MARK if text.startswith(MARK) else ""
    made = text
    for rival in _rivals(letters, steps):
        made = remove_thing(made, "/".join((*steps[:-1], rival)))
    if node is None:
        return mark + places.inserted(Letters(made), steps, value, True)
    return _put_over(made, steps, value, change.path)


def _put_over(text: str, steps: Steps, value: Any, path: str) -> str:
    """The text with a value or a whole thing in the place of what stands there."""
    letters = Letters(text)
    node = letters.at(steps)
    if node is not None and plain(node) == value:
        return text
    mark = MARK if text.startswith(MARK) else ""
    if node is not None and _in_one_piece(node):
        parent = letters.at(steps[:-1])
        in_braces = bool(isinstance(value, dict | list) or (isinstance(parent, Tree) and parent.flow))
        return mark + places.over(letters, steps, node, in_one_line(value, path, in_braces))
    parent = letters.at(steps[:-1])
    if not isinstance(parent, Tree):
        raise EditError(path, f"There is no `{path}`.")
    place = list(parent.entries).index(steps[-1])
    last = len(parent.entries) - 1
    if last == 0:
        inner = Letters(remove_thing(text, path))
        return mark + places.inserted(inner, steps, value, False)
    made = Letters(remove_thing(text, path))
    made = Letters(places.inserted(made, steps, value, False))
    home = made.at(steps[:-1])
    if not isinstance(home, Tree):
        raise EditError(path, f"There is no `{path}`.")
    keys = list(home.entries)
    order = [each for each in range(len(keys)) if keys[each] != steps[-1]]
    order.insert(place, keys.index(steps[-1]))
    return mark + places.reordered(made, steps[:-1], order)


def _in_one_piece(node: Node) -> bool:
    return isinstance(node, Scalar) or node.flow


def _rivals(letters: Letters, steps: Steps) -> list[str]:
    parent = letters.at(steps[:-1])
    if not isinstance(parent, Tree):
        return []
    rivals = [each for group in RIVALS if steps[-1] in group for each in group if each != steps[-1]]
    return [each for each in dict.fromkeys(rivals) if each in parent.entries]
