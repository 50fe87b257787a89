"""Things made from a small form in one change: a new thing with its first entries, a value under a key.

What is typed is read before it is kept. Whatever cannot be read is told all at once and the form keeps
what was typed.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from collections.abc import Mapping as Fields
from typing import Any

from heatledger.catalog.loader import construction, constructions
from heatledger.job import edits
from heatledger.job.edits import EditError
from heatledger.job.fields import Field, Shape
from heatledger.job.model import Job
from heatledger.job.shapes import DECISION
from heatledger.job.text import Listing, Mapping, walk
from heatledger.job.what_ifs import shape_at
from heatledger.ledger.presets import Preset
from heatledger.web.entries import with_unit
from heatledger.web.record_entries import one_of

TextEdit = Callable[[str], str]
AN_AREA = re.compile(r"(?:\bsq\b|\bsf\b|square|(?:ft|m|in)\s?(?:2|²|\^2))", re.IGNORECASE)
FIELD = "f:"
"""What the name of a form's field begins with where it is a key of the new thing."""


def made(what: str, path: str, given: Fields[str, str], job: Job, units: Preset) -> TextEdit:
    """The edit that a form asks for. Raises EditError for what lacks a name or cannot be made."""
    if what == "thing":
        return new_thing(path, given, job, units)
    if what == "value":
        return new_value(path, given)
    if what == "change":
        return new_change(path, given, job)
    if what == "catalog":
        return from_catalog(given, job)
    raise EditError(path, "That cannot be added here.", "Use the page itself.")


def new_thing(path: str, given: Fields[str, str], job: Job, units: Preset) -> TextEdit:
    """A thing with the entries that were typed; those left blank that it cannot do without wait."""
    typed = {key.removeprefix(FIELD): value.strip() for key, value in given.items() if key.startswith(FIELD)}
    id, name = given.get("key", "").strip(), given.get("name", "").strip()
    keys = keys_at(path)
    if not id and not name:
        raise EditError(path, f"The new {one_of(path)} has no name.", "Give it a name first.")
    id = id or edits.free_id(ids_at(job, path), name)
    value: dict[str, Any] = {"name": name} if name and "name" in keys else {}
    if path == "constructions":
        typed = _as_its_kind_is_rated(typed)
    value |= entries_of(f"{path}/{id}", typed, job, units, keys)
    if path == "what-ifs":
        value["changes"] = [{"set": typed.get("set", ""), "to": typed.get("to", "")}]
    return lambda text: edits.add_thing(text, f"{path}/{id}", value or "")


def _as_its_kind_is_rated(typed: Fields[str, str]) -> dict[str, str]:
    """The value of a construction under the key that its kind takes: below grade an R, at an edge an F."""
    key = {"below-grade wall": "r_value", "below-grade floor": "r_value", "slab edge": "f_factor"}
    own = key.get(typed.get("kind", ""), "u_value")
    return {own if each == "u_value" else each: text for each, text in typed.items()}


def entries_of(
    path: str, typed: Fields[str, str], job: Job, units: Preset, keys: Fields[str, Field]
) -> dict[str, str]:
    """What was typed by key, with the reader's unit on a bare number. A length of two sides is a size,
    and an area is one."""
    found: dict[str, str] = {}
    for key, text in typed.items():
        if key not in keys:
            continue
        if key == "length" and any(sign in text for sign in ("×", "x", "*")) and "size" in keys:
            key = "size"
        elif key in ("length", "size") and AN_AREA.search(text) and "area" in keys:
            key = "area"
        needed = keys[key].kind in ("quantity", "size") and key not in ("count",)
        if text or needed:
            found[key] = with_unit(text, f"{path}/{key}", units, job.units) if text else ""
    return found


def keys_at(path: str) -> Fields[str, Field]:
    """The keys that a thing in the map at a path may have."""
    if path == "decisions":
        return DECISION.by_key
    form = shape_at(path)
    inner = form.shape if isinstance(form, Field) else form
    return inner.by_key if isinstance(inner, Shape) else {}


def new_value(path: str, given: Fields[str, str]) -> TextEdit:
    """One value under a key that was chosen: fittings by kind, a threshold, a half-range."""
    key, value = given.get("key", "").strip(), given.get("value", "").strip()
    if not key or not value:
        raise EditError(path, "Nothing was typed.", "Type the value, then add it.")
    return lambda text: edits.set_entry(text, f"{path}/{key}", value)


def new_change(path: str, given: Fields[str, str], job: Job) -> TextEdit:
    """One more change at the end of a what-if."""
    verb, target, to = (given.get(each, "").strip() for each in ("key", "at", "value"))
    if not target:
        raise EditError(path, "It is not said where the change is.", "Type the path, such as air/changes.")
    node = walk(job.source.base, path)
    count = len(node.items) if isinstance(node, Listing) else 0
    change = {verb: target} if verb == "remove" else {verb: target, "to": to}
    if not count:
        return lambda text: edits.add_thing(text, path, [change])
    return lambda text: edits.add_thing(text, f"{path}/{count}", change)


def ids_at(job: Job, path: str) -> list[str]:
    """The ids of the things at a path."""
    node = walk(job.source.base, path)
    return list(node.entries) if isinstance(node, Mapping) else []


def from_catalog(given: Fields[str, str], job: Job) -> TextEdit:
    """A construction that takes its value from a row of the catalog, by the row's key or its name."""
    typed = given.get("row", "").strip()
    row = construction(typed) or next(
        (each for each in constructions().values() if each.name.lower() == typed.lower()), None
    )
    if row is None:
        raise EditError(
            "constructions", f"The catalog has no construction “{typed[:60]}”.",
            "Choose one from the list that opens below the field.",
        )  # fmt: skip
    name = given.get("name", "").strip() or row.name
    id = edits.free_id(ids_at(job, "constructions"), name)
    value = {"name": name, "kind": row.kind, "catalog": row.key, "known": "assumed"}
    return lambda text: edits.add_thing(text, f"constructions/{id}", value)
