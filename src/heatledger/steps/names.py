"""What the figures of a design are called, from the place where they stand."""

from __future__ import annotations

from heatledger.job.model import Job
from heatledger.ledger.figures import NO_NAMES, Figure, Leaf
from heatledger.ledger.formulas import words_of
from heatledger.ledger.solving import Solved
from heatledger.steps.titles import part_of_water, title_of_place, weather_of

_PLACES = (
    "rooms", "unheated", "levels", "neighbors", "constructions", "surfaces", "openings", "emitters", "zones",
    "circuits", "bills", "circulators",
)  # fmt: skip
_OF_SYSTEM = ("emitters", "zones", "circuits", "bills")
_PARTS = {
    "house": "House", "site": "Site", "plant": "Boiler room", "controls": "Controls", "startup": "Startup",
    "readings": "Readings", "boiler": "Boiler", "tank": "Expansion tank", "mains": "Mains",
    "combustion": "Combustion",
}  # fmt: skip
_WHOLE = ("house", "site")
"""Parts of the job that nothing else with a name is in."""
_OF_RESULTS = {("controls", "reset"): weather_of, ("plant", "volumes"): part_of_water}
"""Things that only the results have, with what names them."""
_INSIDE = {"plant": ("boiler", "tank", "mains"), "readings": ("combustion",)}


def title_at(path: str, figure: Figure, job: Job) -> str:
    """The title of a figure: what it is, then the things it belongs to, from the largest.

    An emitter comes before the room it stands in.
    """
    own = NO_NAMES.title(figure)
    if not path or path.startswith("catalog/"):
        return own[:1].upper() + own[1:]
    things, rest = things_at(path, job)
    place = title_of_place(path)
    if place:
        said = place
    elif isinstance(figure.origin, Leaf):
        said = figure.origin.words
    elif isinstance(figure.origin, Solved):
        said = words_of(rest[-1]) if rest else own
    elif len(rest) >= 2 and rest[0] == "causes":
        said = rest[1] if rest[-1] == "loss" else f"{words_of(rest[-1])} of {rest[1]}"
    elif rest and rest[-1] == "loss" and not any(each in path for each in ("surfaces/", "air/")):
        said = "heat loss"
    else:
        said = own or words_of(rest[-1] if rest else path)
    return ", ".join([said[:1].upper() + said[1:], *things])


def things_at(path: str, job: Job) -> tuple[list[str], list[str]]:
    """Names of the things a path passes through, and the steps that are left."""
    steps = path.split("/")
    things: list[str] = []
    at: object = job
    i = 0
    while i < len(steps):
        step, before = steps[i], steps[i - 1] if i else ""
        if step in _PARTS and (not i or step in _INSIDE.get(before, ())):
            things.append(_part_of(step, job))
            i += 1
            if step in _WHOLE:
                break
        elif i == 1 and (before, step) in _OF_RESULTS and len(steps) > 3:
            things.append(_OF_RESULTS[before, step](steps[2], job))
            i += 2
        elif before and steps[0] == "circuits" and i == 2 and step in ("common", "runs"):
            names, i = _piping(steps, job)
            things += names
        elif step in _PLACES and i + 1 < len(steps):
            among = _among(step, at, job)
            thing = among.get(steps[i + 1]) if isinstance(among, dict) else None
            things += _names_of(step, thing, steps[i + 1], job)
            at = thing
            i += 2
        else:
            break
    return things, steps[i:]


def _part_of(step: str, job: Job) -> str:
    """What a part of the job is called; a boiler by the name it was given."""
    boiler = job.system.plant.boiler
    return boiler.name if step == "boiler" and boiler is not None else _PARTS[step]


def _among(step: str, at: object, job: Job) -> object:
    """The things by id among which the next step of a path names one."""
    if step in _OF_SYSTEM:
        return getattr(job.system, step)
    if step == "circulators":
        return job.system.plant.circulators
    return getattr(at, step, None)


def _piping(steps: list[str], job: Job) -> tuple[list[str], int]:
    """The name of a piece of a circuit, and how many steps of the path it took."""
    if steps[2] == "common":
        return ["Common piping"], 3
    if len(steps) < 4:
        return ["Runs"], 3
    emitter = job.system.emitters.get(steps[3])
    return [f"Run of {getattr(emitter, 'name', words_of(steps[3].replace('-', ' ')))}"], 4


def _names_of(step: str, thing: object, id: str, job: Job) -> list[str]:
    """What a thing is called; an emitter with the room it stands in."""
    name = _name_of(thing, id, job)
    if step != "emitters":
        return [name]
    room = job.rooms.get(str(getattr(thing, "room", "")))
    return [name] if room is None else [name, room.name]


def _name_of(thing: object, id: str, job: Job) -> str:
    """What a thing is called; a surface that another space gave says whose it is."""
    name = str(getattr(thing, "name", "") or words_of(id.replace("-", " ")))
    giver = str(getattr(thing, "from_other", "")).split("/")
    if len(giver) < 2:
        return name
    owner = getattr(job, giver[0], {}).get(giver[1])
    return f"{name} of {getattr(owner, 'name', giver[1])}"
