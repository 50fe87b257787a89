"""What can be done to a job in one change, as an edit of its text."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from heatledger.job import edits
from heatledger.job.fields import Field, Shape
from heatledger.job.model import Job
from heatledger.job.parsing import tree_of
from heatledger.job.text import Mapping, Scalar, index_of, walk
from heatledger.job.what_ifs import shape_at
from heatledger.ledger.presets import Preset
from heatledger.web.entries import with_unit

SIDES_OF_SIZE = re.compile(r"\s*[×xX*]\s*")
SIDES: dict[str, tuple[tuple[str, int], ...]] = {
    "length": (("height", 1),), "width": (("height", 1),), "height": (("length", 0), ("width", 0)),
}  # fmt: skip
"""The other side of a size, and where it stands in it, by the side that is set."""


@dataclass(frozen=True)
class Change:
    """What is asked for: set, known, add, copy, remove or move, where, and with what."""

    do: str
    path: str
    value: str = ""
    name: str = ""


@dataclass(frozen=True)
class TextChange:
    """An edit of the text, and how it is told of where comparing the jobs would not say it well."""

    edit: Callable[[str], str]
    said: str = ""
    typed: str = ""
    """The value as it is stored: a bare number with the unit of the reader."""


def text_edit(change: Change, job: Job, units: Preset) -> TextChange:
    """The edit of the text that a change means. Raises EditError for what cannot be asked for."""
    path, value = change.path.strip("/"), change.value.strip()
    if change.do == "set":
        typed = with_unit(value, path, units, job.units)
        if not typed and walk(job.source.base, path) is None:
            return TextChange(lambda text: text)
        return TextChange(_setter(path, typed), typed=typed)
    if change.do == "unset":
        return TextChange(lambda text: edits.unset(text, path))
    if change.do == "known":
        return TextChange(lambda text: edits.set_known(text, path, value))
    if change.do in ("within", "because"):
        return TextChange(lambda text: edits.set_detail(text, path, change.do, value))
    if change.do == "add":
        id = edits.free_id(_ids(job, path), change.name or value or "new")
        new = starting(path, change.name or value, job, value)
        return TextChange(lambda text: edits.add_thing(text, f"{path}/{id}", new))
    if change.do == "copy":
        head = path.rpartition("/")[0]
        name = change.name or f"{_name_of(job, path)}, copy"
        id = edits.free_id(_ids(job, head), name)
        return TextChange(lambda text: edits.copy_thing(text, path, id, name))
    if change.do == "remove":
        return TextChange(lambda text: edits.remove_thing(text, path))
    if change.do == "move":
        to = max(0, index_of(value))
        return TextChange(lambda text: edits.move_thing(text, path, to))
    raise edits.EditError(
        path, f"“{change.do}” is nothing that can be done to a job.", "Use the page itself."
    )


def _setter(path: str, typed: str) -> Callable[[str], str]:
    """Sets an entry; one side of a thing given as a size leaves it the other side, by its own key."""
    thing, _, key = path.rpartition("/")
    others = [(one, at) for one, at in SIDES.get(key, ()) if thing and _has_key(thing, one)]

    def both(text: str) -> str:
        # Of the text that is edited: the page may have been drawn from an older one.
        size = walk(tree_of(text), f"{thing}/size") if others else None
        size = size.entries.get("is") if isinstance(size, Mapping) else size
        sides = SIDES_OF_SIZE.split(size.text) if isinstance(size, Scalar) else []
        if len(sides) != 2 or not typed:
            return edits.set_entry(text, path, typed)
        other, at = others[0]
        kept = edits.set_entry(text, f"{thing}/{other}", sides[at].strip())
        return edits.set_entry(kept, path, typed)

    return both


def _has_key(thing: str, key: str) -> bool:
    shape = shape_at(thing)
    return isinstance(shape, Shape) and key in shape.by_key


def starting(path: str, name: str, job: Job, near: str = "") -> dict[str, Any] | str:
    """What a new thing starts with: its name, and what it cannot be read without.

    ``near`` is the id of the room that an emitter is to stand in.
    """
    shape = shape_at(path)
    inner = shape.shape if isinstance(shape, Field) else shape
    made: dict[str, Any] = {}
    keys = inner.by_key if isinstance(inner, Shape) else {}
    if "name" in keys and name:
        made["name"] = name
    if "level" in keys and job.levels:
        made["level"] = next(iter(job.levels))
    if path == "constructions":
        made |= {"kind": "wall", "u_value": ""}
    if path == "emitters":
        made |= {
            "room": near if near in job.rooms else next(iter(job.rooms), ""),
            "kind": "fin-tube baseboard",
        }
    if path == "circuits":
        made["kind"] = "series loop"
    if path.endswith("/surfaces"):
        made |= {"construction": _of_kind(job, "wall"), "beyond": "outdoors", "length": ""}
    if path.endswith("/openings"):
        made |= {"construction": _of_kind(job, "window"), "size": ""}
    return made or ""


def _of_kind(job: Job, kind: str) -> str:
    return next((id for id, each in job.constructions.items() if each.kind == kind), "")


def _ids(job: Job, path: str) -> list[str]:
    node = walk(job.source.base, path)
    return list(node.entries) if isinstance(node, Mapping) else []


def _name_of(job: Job, path: str) -> str:
    node = walk(job.source.base, f"{path}/name")
    return getattr(node, "text", "") or path.rpartition("/")[2].replace("-", " ").capitalize()
