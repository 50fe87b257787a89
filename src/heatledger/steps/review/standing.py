"""Findings on how well entries are known: measured by no test, off by more than they are, or nothing."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from functools import cache
from math import isnan
from typing import Any

from heatledger.job.model import Job
from heatledger.ledger import dimensions as d
from heatledger.ledger.figures import Figure
from heatledger.ledger.findings import Finding, Mend, NotChecked, Weight
from heatledger.ledger.sources import JUDGMENT, cite
from heatledger.steps.review.house import known_of, leaf_of, path_of
from heatledger.steps.review.kinds import Limit, Look, finding, set_to
from heatledger.steps.review.readings import is_given

Found = Iterator[Finding | NotChecked]
_MOST_NAMED = 4
_PARTS = ("site", "air", "heated_floor_area", "constructions", "levels", "rooms", "unheated", "neighbors")
_NOT_WEIGHED = (d.TEMPERATURE, d.COUNT)
"""Kinds whose half-range is not held against the value: 2 °F beside 0 °F says nothing."""


@finding(
    "measured-without-test",
    Weight.NOTE,
    cite("", "what a tape does not measure", JUDGMENT),
    fires="Air changes, the ground, the soil, the temperature of a neighbor's dwelling, or the "
    "efficiency and the degree days of a bill stand as measured, only because a `known: measured` "
    "further up holds for them too.",
    why="air takes a fan test, soil a probe, a season's efficiency a heat meter; what is measured stands "
    "as well known, and asks for no test",
    mend="Write `known: measured` beside those that were tested, and by what under `because`.",
)
def _measured_without_test(look: Look) -> Found:
    inherited = {
        words: each
        for words, each in _of_tests(look)
        if known_of(each) == "measured" and not _own(look, each) and not path_of(each).startswith("catalog/")
    }
    if not inherited:
        return
    names = list(inherited)
    more = f" and {len(names) - _MOST_NAMED} more" if len(names) > _MOST_NAMED else ""
    said = f"{', '.join(names[:_MOST_NAMED])}{more}"
    changes = tuple(
        set_to(path_of(each), {"is": origin.typed, "known": "assumed"})
        for each in inherited.values()
        if (origin := leaf_of(each)) is not None
    )
    yield look.found(
        "known",
        f"These stand as measured by a `known` further up, and it is not said by what test: {said}.",
        "",
        (Mend(look.kind.mend), Mend("Mark them as assumed until they are tested.", changes)),
    )


def _of_tests(look: Look) -> Iterator[tuple[str, Figure]]:
    """Entries in use that take a test to measure, with what they are."""
    job = look.house.job
    for path, each in look.house.rates.items():
        home = path.split("/")
        words = "the air changes" if home[0] == "air" else f"the air of {job.rooms[home[1]].name}"
        if isinstance(each, Figure):
            yield words, each
    for space in job.unheated.values():
        if space.air.changes is not None:
            yield f"the air of {space.name}", space.air.changes
    beyond = {each.beyond.kind for _, space in look.house.spaces for each in space.surfaces.values()}
    if "ground" in beyond:
        yield "the mean ground temperature", job.site.ground_temperature
        yield "the ground amplitude", job.site.ground_amplitude
        yield "the soil conductivity", job.site.soil_conductivity
    for neighbor in job.neighbors.values():
        yield f"the temperature of {neighbor.name}", neighbor.temperature
    for bill in job.system.bills.values():
        yield f"the efficiency of {bill.name}", bill.efficiency
        yield f"the degree days of {bill.name}", bill.degree_days


def _own(look: Look, figure: Figure) -> bool:
    """True when the entry says itself how it is known, or the air or neighbor it belongs to does."""
    path = path_of(figure)
    parent = path.rpartition("/")[0]
    # A meter on a bill measures its fuel, neither the efficiency nor the weather.
    shared = parent.startswith(("site", "bills/"))
    return is_given(look, f"{path}/known") or (not shared and is_given(look, f"{parent}/known"))


@finding(
    "half-range-over-value",
    Weight.DECIDE,
    cite("", "a half-range is a part of its value", JUDGMENT),
    fires="The half-range of an entry (`within`, or one under `ranges`) is more than {0} of its value. "
    "Temperatures and the elevation are not looked at.",
    why="`within: 0.1` beside U-0.08 is 0.1 of the unit, not 10 %, and the range of the loss opens wide",
    mend="Write the half-range as a percentage of the value.",
    limits=(Limit("half-range-over-value", "100 %", d.RATIO, "half-range against the value"),),
)
def _half_range_over_value(look: Look) -> Found:
    job = look.house.job
    # No entry has a half-range of its own unless the file or a change over it says so; every
    # expectation says `within` once.
    own = job.source.text.count("within:") > len(job.expectations)
    if not own and not job.ranges and not job.source.laid:
        return
    for path, figure in _entries(job):
        origin = leaf_of(figure)
        if origin is None or figure.dimension in _NOT_WEIGHED or isnan(figure) or not float(figure):
            continue
        share = origin.half_range / abs(float(figure))
        if not share > look.limit * (1 + 1e-9):
            continue
        typed = origin.typed if path == origin.path else job.constructions[path.split("/")[1]].catalog
        to = {"is": typed, "known": origin.known or "told", "within": "10 %"}
        yield look.found(
            path,
            f"{look.design.names.title(figure)}: {look.say(figure)} is said to be off by as much as "
            f"{look.say(origin.half_range, _step(figure.dimension))}, {look.say(share, d.RATIO)} of it.",
            figure,
            (Mend("Take 10 % of the value.", (set_to(path, to),)), Mend(look.kind.mend)),
        )


def _step(dimension: d.Dimension) -> d.Dimension:
    return d.TEMPERATURE_DIFFERENCE if dimension.absolute else dimension


def _entries(job: Job) -> Iterator[tuple[str, Figure]]:
    """Every value that was typed into the house, once, by the path it is changed at."""
    seen: set[int] = set()
    for part in _PARTS:
        yield from _within(getattr(job, part), part, seen)


def _within(thing: Any, path: str, seen: set[int]) -> Iterator[tuple[str, Figure]]:
    if isinstance(thing, Figure):
        origin = leaf_of(thing)
        if origin is None or id(thing) in seen or path == "site/elevation":
            return
        seen.add(id(thing))
        if path.startswith("constructions/") and origin.path.startswith("catalog/"):
            yield f"{path.rpartition('/')[0]}/catalog", thing
        elif not origin.path.startswith("catalog/"):
            yield origin.path, thing
    elif isinstance(thing, dict):
        for key, each in thing.items():
            yield from _within(each, f"{path}/{key}", seen)
    elif id(thing) not in seen:
        seen.add(id(thing))
        for name in _names(thing.__class__):
            yield from _within(getattr(thing, name), f"{path}/{name}", seen)


@cache
def _names(kind: type) -> tuple[str, ...]:
    """The parts of a thing of the job that belong to it alone; none of what is no such thing."""
    if not is_dataclass(kind):
        return ()
    return tuple(each.name for each in fields(kind) if each.name not in ("raw", "construction", "level"))


@finding(
    "air-change-none",
    Weight.NOTE,
    cite("", "every room breathes", JUDGMENT),
    fires="The air of a room, or of all rooms, changes less than {0}, whatever it is known by.",
    why="even a house that is tested tight takes in air to breathe, by a fan if not by its cracks",
    mend="Give the air that a fan brings in as air changes; keep it where the room takes only air of others.",
    limits=(Limit("air-change-none", "0.05 ACH", d.AIR_CHANGES, "least air of a room"),),
)
def _air_change_none(look: Look) -> Found:
    still: dict[str, tuple[Figure, list[str]]] = {}
    for room, lost in look.house.rooms:
        rate = lost.air.changes
        if float(rate) < look.limit * (1 - 1e-9):
            where = "air" if path_of(rate).startswith("air/") else f"rooms/{room.id}"
            still.setdefault(where, (rate, []))[1].append(room.name)
    given = look.house.job.air.changes if look.house.job.air else None
    for where, (rate, names) in still.items():
        mends = [Mend(look.kind.mend)]
        if where != "air" and given is not None and float(given) >= look.limit:
            mends.append(Mend("Give it the air changes of the house.", ({"remove": f"{where}/air"},)))
        who = names[0] if len(names) == 1 else f"{len(names)} rooms"
        yield look.found(where, f"The air of {who} changes {look.say(rate)}.", rate, tuple(mends))
