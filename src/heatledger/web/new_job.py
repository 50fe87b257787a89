"""From what was typed in a form to a job to begin with, or to the faults of each field."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from heatledger.job import begin
from heatledger.job.edits import EditError, add_thing, free_id, set_entry, set_known
from heatledger.job.errors import JobErrors
from heatledger.job.load import read_job
from heatledger.job.model import Job
from heatledger.ledger.dimensions import LENGTH
from heatledger.ledger.notation import NotationError, read
from heatledger.ledger.presets import Preset
from heatledger.web import new_job_forms as forms
from heatledger.web.entries import with_unit
from heatledger.web.new_job_forms import BILL, BILLS, HOUSE, PLATE, ROOM, Ask, by_sections, radiators

UNNAMED = "New house"
Typed = Mapping[str, str]
WALLS = "rooms/house/surfaces/walls"


@dataclass
class Begun:
    """The text of a job and the job it is, or the faults by the key of the field they stand at."""

    text: str = ""
    job: Job | None = None
    faults: dict[str, str] = field(default_factory=dict)


def from_numbers(typed: Typed, units: Preset) -> Begun:
    """A job of three numbers."""
    return _made(begin.three_numbers(units), typed, forms.NUMBERS, units, {})


def from_room(typed: Typed, units: Preset, sides: Sequence[str], under_attic: bool) -> Begun:
    """A job with its first room: ``sides`` are its outside walls."""
    name = typed.get("room", "").strip() or "First room"
    text = begin.first_room(units, name, sides, under_attic)
    room = f"rooms/{free_id((), name)}"
    along, across = typed.get("along", "").strip(), typed.get("across", "").strip()
    own = {f"{room}/surfaces/{each}-wall/length": "along" if each in ("north", "south") else "across"
           for each in sides}  # fmt: skip
    values = {path: typed.get(key, "") for path, key in own.items()}
    size = f"{along} × {across}" if along and across else ""
    values |= {f"{room}/size": size}
    if under_attic:
        values[f"{room}/surfaces/ceiling/size"] = size
    keys = own | {f"{room}/size": "along", f"{room}/surfaces/ceiling/size": "along"}
    made = _made(text, typed, ROOM, units, values, keys)
    wrong = _sides_wrong(typed, units)
    if wrong:  # The size is both sides in one entry, and its fault would stand at the first of them.
        if typed.get("along", "").strip():
            made.faults.pop("along", None)
        made.faults |= wrong
    return made


def _sides_wrong(typed: Typed, units: Preset) -> dict[str, str]:
    """What is wrong with each of the two sides that was typed and cannot be read."""
    wrong = {}
    for key in ("along", "across"):
        side = typed.get(key, "").strip()
        try:
            if side:
                read(side, LENGTH, units)
        except NotationError as why:
            wrong[key] = f"{why}."
    return wrong


def from_boiler(typed: Typed, units: Preset) -> Begun:
    """A job for a boiler that is to be replaced: the house as one space, its bills, the plate."""
    values, keys = _envelope(typed)
    season = typed.get("season", "").strip()
    if season.replace(".", "", 1).isdigit():
        typed = {**typed, "season": f"{season} %"}
    text = begin.boiler_replacement(units)
    try:
        text = _openings(text, typed, keys, units)
        text = _emitters(text, typed, keys, units)
        if any(typed.get(each.key, "").strip() for each in BILLS):
            text = add_thing(text, BILL, {"name": "Fuel of last winter", "known": "told"})
            used = f"{BILL}/{_used_as(typed, units)}"
            values[used], keys[used] = typed.get("used", ""), "used"
    except EditError as fault:
        return Begun(faults={keys.get(fault.path, "name"): f"{fault.what} {fault.mend}"})
    made = _made(text, typed, (*HOUSE, *BILLS, *PLATE), units, values, keys)
    if made.job is not None and season:
        made.text = set_known(made.text, f"{BILL}/efficiency", "assumed")
    return made


def _envelope(typed: Typed) -> tuple[dict[str, str], dict[str, str]]:
    """What the walls, ceiling and floor are; the floor is taken as large as the ceiling."""
    values = {f"constructions/{kind}/catalog": typed.get(f"is-{kind}", "") for kind, _ in forms.SURFACE_KINDS}
    keys = {path: f"is-{path.split('/')[1]}" for path in values}
    values["rooms/house/surfaces/floor/area"] = typed.get("ceiling", "")
    keys["rooms/house/surfaces/floor/area"] = "ceiling"
    return values, keys


def _openings(text: str, typed: Typed, keys: dict[str, str], units: Preset) -> str:
    """The windows and doors in the walls, those of which anything is known."""
    for one, many in (("window", "windows"), ("door", "doors")):
        size, count = typed.get(one, "").strip(), typed.get(many, "").strip()
        if size or count:
            path = f"{WALLS}/openings/{many}"
            keys |= {f"{path}/size": one, f"{path}/count": many, path: one}
            size = with_unit(size, f"{path}/size", units, units)
            text = add_thing(text, path, {"construction": one, "size": size, "count": count})
    return text


def _emitters(text: str, typed: Typed, keys: dict[str, str], units: Preset) -> str:
    """The radiators that were chosen, each with its sections or its length."""
    names, taken = dict(radiators()), set[str]()
    for i in range(1, forms.EMITTERS + 1):
        row, count = typed.get(f"emitter-{i}", ""), typed.get(f"count-{i}", "").strip()
        if row not in names:
            continue
        name = typed.get(f"where-{i}", "").strip() or f"Radiator {i}"
        id = free_id(taken, name)
        taken.add(id)
        key = "sections" if by_sections(row) else "length"
        path = f"emitters/{id}"
        keys |= {f"{path}/{key}": f"count-{i}", f"{path}/name": f"where-{i}", path: f"emitter-{i}"}
        thing = {
            "name": name,
            "room": "house",
            "catalog": row,
            key: with_unit(count, f"{path}/{key}", units, units),
        }
        text = add_thing(text, path, thing)
    return text


def _used_as(typed: Typed, units: Preset) -> str:
    """The key that takes the fuel used, by the unit that was typed behind it."""
    used, fuel = typed.get("used", "").casefold(), typed.get("fuel", "")
    if any(each in used for each in ("therm", "btu", "kwh", "mj", "gj", "dth")):
        return "energy"
    if any(each in used for each in ("gal", "l")) and not any(
        each in used for each in ("ccf", "ft", "m3", "m³")
    ):
        return "volume"
    if any(each in used for each in ("ccf", "mcf", "ft3", "ft³", "m3", "m³", "cf")):
        return "gas"
    return "volume" if fuel in ("oil", "propane") else "energy"


def _made(
    text: str, typed: Typed, asks: Sequence[Ask], units: Preset, values: Typed, keys: Typed | None = None
) -> Begun:
    """The text with every value in it, read as a job; the faults of all fields at once where it is none."""
    faults = {
        each.key: f"{each.words}: such as {each.hint(units)}."
        for each in asks if each.must and not typed.get(each.key, "").strip()
    }  # fmt: skip
    where = {each.path: each.key for each in asks if each.path} | dict(keys or {})
    given = {each.path: typed.get(each.key, "") for each in asks if each.path} | dict(values)
    given[forms.NAME.path] = given.get(forms.NAME.path, "").strip() or UNNAMED
    for path, value in given.items():
        try:
            if value.strip():
                plain = path in (forms.NAME.path, forms.ADDRESS.path)
                text = set_entry(text, path, value if plain else with_unit(value.strip(), path, units, units))
        except EditError as fault:
            faults.setdefault(where.get(path, "name"), f"{fault.what} {fault.mend}")
    try:
        job = read_job(text, "the form")
    except JobErrors as errors:
        for each in errors.errors:
            faults.setdefault(_key_at(each.path, where), f"{each.message} {each.mend}".strip())
        return Begun(text, None, faults)
    return Begun(text, None if faults else job, faults)


def _key_at(path: str, where: Typed) -> str:
    """The field that put in what stands at a path, or nearest above or below it."""
    if path in where:
        return where[path]
    near = [each for each in where if path.startswith(f"{each}/") or each.startswith(f"{path}/")]
    return where[max(near, key=len)] if near else "name"
