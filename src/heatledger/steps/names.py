"""What the figures of a design are called, from the place where they stand."""

from __future__ import annotations

from heatledger.job.model import Job
from heatledger.ledger.figures import NO_NAMES, Figure, Leaf
from heatledger.ledger.formulas import words_of
from heatledger.ledger.solving import Solved

_PLACES = ("rooms", "unheated", "levels", "neighbors", "constructions", "surfaces", "openings")
_HOUSE = {"house": "House", "site": "Site"}


def title_at(path: str, figure: Figure, job: Job) -> str:
    """The title of a figure: what it is, then the things it belongs to, from the largest."""
    own = NO_NAMES.title(figure)
    if not path or path.startswith("catalog/"):
        return own[:1].upper() + own[1:]
    things, rest = things_at(path, job)
    if isinstance(figure.origin, Leaf):
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
        step = steps[i]
        if step in _HOUSE and not things:
            things.append(_HOUSE[step])
            i += 1
            break
        if step not in _PLACES or i + 1 >= len(steps):
            break
        among = getattr(at, step, None)
        thing = among.get(steps[i + 1]) if isinstance(among, dict) else None
        things.append(_name_of(thing, steps[i + 1], job))
        at = thing
        i += 2
    return things, steps[i:]


def _name_of(thing: object, id: str, job: Job) -> str:
    """What a thing is called; a surface that another space gave says whose it is."""
    name = str(getattr(thing, "name", "") or words_of(id.replace("-", " ")))
    giver = str(getattr(thing, "from_other", "")).split("/")
    if len(giver) < 2:
        return name
    owner = getattr(job, giver[0], {}).get(giver[1])
    return f"{name} of {getattr(owner, 'name', giver[1])}"
