"""Which heading an entry stands under: its room, its construction, its circuit, the site, a source."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from heatledger.job.model import Job
from heatledger.ledger.figures import Figure, Leaf, LeafKind

FIRST = ("Site", "House", "Air of the house", "Constructions", "Catalog and sources")
LAST = ("Boiler room", "Controls", "Readings")
_PLACES = {
    "constructions": "Constructions", "site": "Site", "air": "Air of the house", "plant": "Boiler room",
    "controls": "Controls", "readings": "Readings",
}  # fmt: skip


def given_under(figure: Figure, job: Job) -> str:
    """The heading that an entry stands under."""
    origin: Leaf = figure.origin
    steps, among = origin.path.split("/"), _among(job)
    if steps[0] in among and len(steps) > 1 and steps[1] in among[steps[0]]:
        return str(among[steps[0]][steps[1]].name)
    if origin.kind is not LeafKind.JOB and steps[0] != "constructions":
        return "Catalog and sources"
    return _PLACES.get(steps[0], "House")


def in_order(titles: list[str], job: Job) -> list[str]:
    """Headings as they are read: the house, its rooms, then what heats them, as the job lists it."""
    named = [str(each.name) for things in _among(job).values() for each in things.values()]
    order = [*FIRST, *named, *LAST]
    return sorted(titles, key=lambda each: order.index(each) if each in order else len(order))


def _among(job: Job) -> dict[str, Mapping[str, Any]]:
    """The things of a job that have a name and entries of their own."""
    found: dict[str, Mapping[str, Any]] = {
        "levels": job.levels, "rooms": job.rooms, "unheated": job.unheated, "neighbors": job.neighbors,
    }  # fmt: skip
    system = getattr(job, "system", None)
    for each in ("emitters", "circuits", "zones", "bills"):
        found[each] = getattr(system, each, None) or {}
    return found
