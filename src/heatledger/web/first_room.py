"""The first room, step by step: two sides, outside walls, windows and doors, what is above and below.

Each step is one plain form and everything it asks is kept as ordinary entries of the job.
"""

from __future__ import annotations

import re
from collections.abc import Mapping as Fields
from typing import Any

from heatledger.catalog.loader import construction
from heatledger.job import edits
from heatledger.job.edits import EditError
from heatledger.job.model import Job, Room
from heatledger.ledger.presets import Preset
from heatledger.web.entries import typeset, with_unit
from heatledger.web.making import TextEdit, ids_at

SIDES = ("north", "east", "south", "west")
STEPS = ("walls", "windows", "covers")
"""The steps after the two sides, by the word in the address."""
TIMES = re.compile(r"\s*[x×*]\s*|\s+by\s+", re.IGNORECASE)


def first(what: str, path: str, given: Fields[str, str], job: Job, units: Preset) -> TextEdit | None:
    """The edit of one step; None when it is no step of these."""
    if what == "room":
        return new_room(given, job, units)
    room = job.rooms.get(path.removeprefix("rooms/"))
    if what not in STEPS:
        return None
    if room is None:
        raise EditError(path, "There is no such room.", "Begin with its two sides.")
    made = {"walls": outside_walls, "windows": windows_and_doors, "covers": above_and_below}[what]
    return made(room, given, job, units)


def new_room(given: Fields[str, str], job: Job, units: Preset) -> TextEdit:
    """A room with its two sides; its level too where the job has none."""
    name, one, other = (given.get(each, "").strip() for each in ("name", "one", "other"))
    if not (name and one and other):
        raise EditError("rooms", "A room needs its name and its two sides.", "Type all three.")
    id = edits.free_id(ids_at(job, "rooms"), name)
    sides = (_length(one, units, job), _length(other, units, job))
    level = given.get("level", "").strip() or next(iter(job.levels), "")
    size = f"{sides[0]} × {sides[1]}"

    def edit(text: str) -> str:
        where = level
        if where not in job.levels:
            where = "ground"
            heights = {key: _length(given.get(key, "").strip(), units, job)
                       for key in ("ceiling_height", "wall_height")}  # fmt: skip
            text = edits.add_thing(text, "levels/ground", {"name": units_level(units), **heights})
        return edits.add_thing(text, f"rooms/{id}", {"name": name, "level": where, "size": size})

    return edit


def units_level(units: Preset) -> str:
    """What the lowest story is called by readers of these units."""
    return "Ground floor" if units.name.lower() == "metric" else "First floor"


def sides_of(room: Room) -> tuple[str, str]:
    """The two sides of a room as they were typed."""
    size = room.raw.get("size", "")
    text = size.get("is", "") if isinstance(size, dict) else str(size)
    found = TIMES.split(text)
    return (typeset(found[0]), typeset(found[1])) if len(found) == 2 else ("", "")


def prefilled(room: Room) -> dict[str, str]:
    """Lengths of the four sides: north and south the first side of the room, east and west the second."""
    one, other = sides_of(room)
    return {"north": one, "east": other, "south": one, "west": other}


def outside_walls(room: Room, given: Fields[str, str], job: Job, units: Preset) -> TextEdit:
    """The sides that are outside walls, each with its length and what it is built of."""
    chosen = [side for side in SIDES if given.get(side) == "yes"]
    built = given.get("construction", "")

    def edit(text: str) -> str:
        made, text = _built(text, built, job, units)
        for side in chosen:
            length = _length(given.get(f"{side}-length", "").strip(), units, job)
            wall = {"name": f"{side.capitalize()} wall", "construction": made, "length": length,
                    "beyond": given.get(f"{side}-beyond", "outdoors")}  # fmt: skip
            text = edits.add_thing(text, f"rooms/{room.id}/surfaces/{side}-wall", wall)
        return text

    return edit if chosen else _same


def windows_and_doors(room: Room, given: Fields[str, str], job: Job, units: Preset) -> TextEdit:
    """Windows by count and size, and a door, in each wall of the room."""
    asked = [
        (wall, kind) for wall in room.surfaces for kind in ("window", "door")
        if given.get(f"{wall}-{kind}", "").strip()
    ]  # fmt: skip
    sizes = {each: given[f"{each[0]}-{each[1]}"].strip() for each in asked}

    def edit(text: str) -> str:
        built: dict[str, str] = {}
        for wall, kind in asked:
            if kind not in built:
                built[kind], text = _built(text, given.get(f"{kind}-construction", ""), job, units)
            typed = with_unit(sizes[wall, kind], "rooms/r/surfaces/s/openings/o/size", units, job.units)
            opening: dict[str, Any] = {"construction": built[kind], "size": typed}
            count = given.get(f"{wall}-count", "").strip()
            if kind == "window" and count not in ("", "1"):
                opening["count"] = count
            home = f"rooms/{room.id}/surfaces/{wall}/openings"
            id = edits.free_id(ids_at(job, home), kind)
            text = edits.add_thing(text, f"{home}/{id}", opening)
        return text

    return edit if asked else _same


def above_and_below(room: Room, given: Fields[str, str], job: Job, units: Preset) -> TextEdit:
    """Ceiling and floor, where what is beyond them is not heated like the room."""

    def edit(text: str) -> str:
        for part in ("ceiling", "floor"):
            beyond = given.get(part, "")
            if not beyond:
                continue
            if beyond.startswith("new/"):
                beyond, text = _new_space(text, beyond.removeprefix("new/"), job)
            made, text = _built(text, given.get(f"{part}-construction", ""), job, units)
            cover = {"name": part.capitalize(), "construction": made, "beyond": beyond}
            size = room.raw.get("size")
            cover["size" if size else "area"] = str(
                size.get("is", "") if isinstance(size, dict) else size or ""
            )
            id = edits.free_id(room.surfaces, part)
            text = edits.add_thing(text, f"rooms/{room.id}/surfaces/{id}", cover)
        return text

    return edit if given.get("ceiling") or given.get("floor") else _same


def _same(text: str) -> str:
    return text


def _new_space(text: str, name: str, job: Job) -> tuple[str, str]:
    """An unheated space begun by its name; what its temperature needs waits to be typed."""
    id = edits.free_id(ids_at(job, "unheated"), name)
    value = {"name": name.capitalize(), "floor_area": "", "ceiling_height": "", "air": {"changes": ""}}
    return f"unheated/{id}", edits.add_thing(text, f"unheated/{id}", value)


def _built(text: str, chosen: str, job: Job, units: Preset) -> tuple[str, str]:
    """The id of the construction that was chosen, and the text with it: one of the job or of the catalog."""
    if chosen in job.constructions:
        return chosen, text
    key = chosen.removeprefix("catalog/")
    row = construction(key)
    if row is None:
        raise EditError("constructions", "It is not said what it is built of.", "Choose one from the list.")
    found = next((each.id for each in job.constructions.values() if each.catalog == key), "")
    if found:
        return found, text
    id = edits.free_id(ids_at(job, "constructions"), row.kind)
    value = {"name": row.name, "kind": row.kind, "catalog": key, "known": "assumed"}
    if walk_has(text, id):
        id = edits.free_id([*ids_at(job, "constructions"), id], row.kind)
    return id, edits.add_thing(text, f"constructions/{id}", value)


def walk_has(text: str, id: str) -> bool:
    """Whether a construction of this id was put into the text by the same form."""
    from heatledger.job.parsing import tree_of
    from heatledger.job.text import walk

    return walk(tree_of(text), f"constructions/{id}") is not None


def _length(typed: str, units: Preset, job: Job) -> str:
    return with_unit(typed, "levels/l/wall_height", units, job.units) if typed else ""
