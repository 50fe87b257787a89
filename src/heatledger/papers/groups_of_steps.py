"""The headings of any step after the heat loss, read from the paths and the names of its results.

A result that is kept under an id (``circuits/upper``, ``emitters/kitchen``) has a heading of its own, with
its runs and pieces under it; what belongs to the whole step stands before them.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from heatledger.ledger.figures import Figure
from heatledger.ledger.formulas import words_of
from heatledger.papers.addresses import Group, Stage
from heatledger.steps.design import Design
from heatledger.steps.titles import weather_of

Titles = list[tuple[Figure, tuple[str, str]]]


@dataclass(frozen=True)
class Step:
    """A step of the design: where a ``Design`` holds it, its sheet and its title."""

    attribute: str
    sheet: int
    title: str


STEPS = (
    Step("bills", 2, "Bills"),
    Step("emitters", 3, "Emitters"),
    Step("circuits", 4, "Piping"),
    Step("boiler_room", 5, "Boiler room"),
    Step("controls", 6, "Controls"),
    Step("startup", 7, "Startup"),
)
"""The steps after the heat loss, as they follow one another. Bills bear witness to the loss: sheet 2."""

_OF_THE_HOUSE = ("house", "plant", "controls", "startup")
_HEADED = {"house": "The house", "plant": "Boiler room"}
_WITH_HEADING = ("emitters", "rooms", "circuits", "circulators", "bills", "zones")
"""Kinds of thing that have a heading each; other things by id stand under their owner."""


@dataclass(frozen=True)
class Found:
    """A figure of a step: its path, and the names of the things that the path passes, by step of it."""

    path: tuple[str, ...]
    names: tuple[str, ...]
    figure: Figure


def step_stage(step: Step, design: Design) -> tuple[Stage, Titles] | None:
    """The headings of one step, with what its figures are called; None while the design has not got it."""
    results = getattr(design, step.attribute, None)
    if results is None:
        return None
    groups: dict[tuple[str, ...], Group] = {}
    titles: Titles = []
    for each in walk(results, design):
        depth = _depth(each.path)
        place = each.path[:depth]
        title = _heading(each, depth, step)
        group = groups.setdefault(place, Group(title, owner=title, compact=True))
        group.asked.append(each.figure)
        titles.append((each.figure, _title(each, depth)))
    ordered = sorted(groups.items(), key=lambda each: len(each[0]) > 1)
    shared = Group("Shared figures", compact=True, shared=True)
    return Stage(step.attribute, step.sheet, step.title, [*(group for _, group in ordered), shared]), titles


def walk(
    thing: Any, design: Design, path: tuple[str, ...] = (), names: tuple[str, ...] = ()
) -> Iterator[Found]:
    """Every figure of nested results with its path, and what each step of the path is called."""
    if isinstance(thing, Figure):
        yield Found(path, names, thing)
    elif isinstance(thing, Mapping):
        for key, each in thing.items():
            yield from walk(
                each, design, (*path, str(key)), (*names, _name(each, path[-1:], str(key), design))
            )
    elif dataclasses.is_dataclass(thing) and not isinstance(thing, type):
        for field in dataclasses.fields(thing):
            each = getattr(thing, field.name)
            if getattr(each, "__path__", None) == "":
                yield from walk(each, design, path, names)
            else:
                said = "" if _is_kept_by_id(each) else words_of(field.name.strip("_"))
                yield from walk(each, design, (*path, field.name), (*names, said))


def _is_kept_by_id(thing: Any) -> bool:
    """Whether a field holds things under their ids: then they are named, and it is not."""
    return isinstance(thing, Mapping) and not any(isinstance(each, Figure) for each in thing.values())


def _name(thing: Any, among: tuple[str, ...], key: str, design: Design) -> str:
    """What a thing kept under an id is called: its own name, else that of the thing of the job."""
    own = getattr(thing, "name", "")
    if own:
        return str(own)
    if among == ("reset",):
        return weather_of(key, design.job)
    run = "run of " if among == ("runs",) else ""
    system = getattr(design.job, "system", None)
    kept = {"runs": getattr(system, "emitters", {}), "rooms": design.job.rooms}
    places = [kept.get(each, getattr(system, each, {})) for each in among]
    found = next((each[key] for each in places if isinstance(each, Mapping) and key in each), None)
    return run + str(getattr(found, "name", "") or words_of(key.replace("-", " ")))


def _depth(path: tuple[str, ...]) -> int:
    """How many steps of a path name the thing that its heading is about."""
    headed = [i + 2 for i, each in enumerate(path[:-2]) if each in _WITH_HEADING]
    return headed[0] if headed else 1


def _heading(found: Found, depth: int, step: Step) -> str:
    if depth > 1:
        return found.names[depth - 1]
    first = found.path[0]
    if first in _OF_THE_HOUSE:
        return _HEADED.get(first, step.title)
    return _capital(found.names[0])


def _title(found: Found, depth: int) -> tuple[str, str]:
    """Under its heading: the piece, and what of it; a figure of the thing itself is a title alone."""
    between = ", ".join(each for each in found.names[depth:-1] if each)
    return (_capital(between), found.names[-1]) if between else (_capital(found.names[-1]), "")


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
