"""Findings on unheated spaces and neighbors, and on the rooms beside them."""

from __future__ import annotations

from collections.abc import Iterator
from math import isnan

from heatledger.ledger import dimensions as d
from heatledger.ledger.findings import Finding, Mend, NotChecked, Weight
from heatledger.ledger.sources import JUDGMENT, SEEN, cite
from heatledger.steps.review.house import factor_of, is_called, u_of
from heatledger.steps.review.kinds import Limit, Look, finding, set_to
from heatledger.steps.spaces import UnheatedSpace, every

Found = Iterator[Finding | NotChecked]
WARM_WORDS = ("basement", "cellar", "crawl", "garage", "attic", "porch")
COLD_FLOOR = (40 + 459.67) / 1.8
"""A space below a floor that is colder than 40 °F is a cold one."""
EMPTY_DWELLING = (41 + 459.67) / 1.8
"""A dwelling nobody heats is kept from freezing, at 41 °F."""


@finding(
    "space-closed-in",
    Weight.MUST_FIX,
    cite("HOF-ch17", "heat balance of an unheated space", SEEN),
    fires="An unheated space touches neither outdoors nor ground nor a neighbor nor another space, and no "
    "outdoor air passes through it; or it touches nothing at all.",
    why="without a way out it comes to the temperature of the rooms, and the surfaces toward it lose nothing",
    mend="Give the space its roof, walls or floor to outdoors or ground, and its air.",
)
def _space_closed_in(look: Look) -> Found:
    for id, space in look.house.losses.unheated.items():
        ways = [each for each in space.surfaces.values() if each.beyond.kind != "room"]
        if not ways and (space.air is None or float(space.air.conductance) == 0):
            comes = f"it comes to {look.say(space.temperature)}" if space.surfaces else "nothing touches it"
            yield look.found(
                f"unheated/{id}", f"{space.name} shows no way for heat to leave; {comes}.", space.temperature
            )


@finding(
    "space-freezes",
    Weight.DECIDE,
    cite("NASHOBA", "frozen heating pipes", SEEN),
    fires="An unheated space that is given heat of its own (pipes, a boiler) comes out colder than {0}.",
    why="what gives heat there holds water, and water that stands freezes",
    mend="Insulate the space from outdoors, lessen its air, or keep water out of it.",
    limits=(Limit("space-freezes", "32 °F", d.TEMPERATURE, "coldest space with pipes"),),
)
def _space_freezes(look: Look) -> Found:
    for id, space in look.house.losses.unheated.items():
        if space.heat is None or not float(space.heat) > 0:
            continue
        if isnan(space.temperature):
            yield look.wants(f"unheated/{id}", space.temperature)
        elif float(space.temperature) < look.limit - 1e-6:
            mends = [Mend(look.kind.mend)]
            rate = _air_to_stay_warm(space, look.limit, look.house.outdoor)
            if rate > 0:
                to = look.text(rate, d.AIR_CHANGES)
                mends.insert(0, Mend(f"Lessen its air to {to}.", (set_to(f"unheated/{id}/air/changes", to),)))
            yield look.found(
                f"unheated/{id}",
                f"{space.name} comes to {look.say(space.temperature)} on the design day, and there is "
                "water in it.",
                space.temperature,
                tuple(mends),
            )


def _air_to_stay_warm(space: UnheatedSpace, warmth: float, outdoor: float) -> float:
    """Air changes at which a space stays just above a temperature, or zero when air alone cannot do it."""
    if space.air is None or not float(space.air.conductance) > 0:
        return 0.0
    through_air = float(space.air.conductance)
    other = sum(float(each.conductance) for each in every(space.surfaces.values()))
    heat = (float(space.temperature) - outdoor) * (through_air + other)
    may_be = heat / (warmth + 0.3 - outdoor) - other
    return float(space.air.changes) * may_be / through_air


@finding(
    "neighbor-may-shut-down",
    Weight.DECIDE,
    cite("", "an empty dwelling next door is a design state", JUDGMENT),
    fires="With a neighbor's dwelling at the yearly mean of the ground, or 41 °F (5 °C) where that is "
    "warmer, a room would need {0} more heat.",
    why="an empty house next door is a design state, not an accident",
    mend="Size the room for it, or accept it and say so.",
    limits=(Limit("neighbor-may-shut-down", "15 %", d.RATIO, "more heat with the neighbor cold"),),
)
def _neighbor_may_shut_down(look: Look) -> Found:
    site = look.house.job.site
    for room, lost in look.house.rooms:
        toward = [
            (look.house.job.neighbors[each.beyond.id], each)
            for each in lost.surfaces.values()
            if each.beyond.kind == "neighbor"
        ]
        if not toward:
            continue
        if isnan(site.ground_temperature) or isnan(lost.loss):
            yield look.wants(f"rooms/{room.id}", site.ground_temperature, lost.loss)
            continue
        cold = max(float(site.ground_temperature), EMPTY_DWELLING)
        extra = sum(float(each.conductance) * (float(there.temperature) - cold) for there, each in toward)
        if extra > look.limit * max(float(lost.loss), 0.0) * (1 + 1e-9) and extra > 0:
            ids = {there.id: there for there, _ in toward}
            to = look.text(cold, d.TEMPERATURE)
            yield look.found(
                f"rooms/{room.id}",
                f"{room.name} counts on the heat of {' and '.join(each.name for each in ids.values())}; "
                "with that side "
                f"cold it needs {look.say(extra, d.HEAT_RATE)} more.",
                lost.loss,
                (
                    Mend(
                        f"Size the room with the neighbor at {to}.",
                        tuple(set_to(f"neighbors/{id}/temperature", to) for id in ids),
                    ),
                    Mend("Accept it and say so."),
                ),
            )


@finding(
    "buffer-space-as-heated",
    Weight.MUST_FIX,
    cite("HOF-ch17", "unheated spaces beside rooms", SEEN),
    fires="A basement, crawlspace, garage, attic or porch is given as a room of {0} or more with no surface "
    "to outdoors or ground, or as a neighbor of that temperature.",
    why="floors above it and pipes in it are then counted short, for nobody heats it",
    mend="Make it an unheated space with its own surfaces and air, or give it a load and an emitter.",
    limits=(Limit("buffer-space-as-heated", "60 °F", d.TEMPERATURE, "space taken as warm"),),
)
def _buffer_space_as_heated(look: Look) -> Found:
    for room, _ in look.house.rooms:
        outer = any(each.beyond.kind in ("outdoors", "ground", "unheated") for each in room.surfaces.values())
        if (
            is_called(WARM_WORDS, room.id, room.name)
            and float(room.indoor) >= look.limit - 1e-6
            and not outer
        ):
            yield look.found(
                f"rooms/{room.id}",
                f"{room.name} is taken as warm, {look.say(room.indoor)}, and loses nothing to outdoors "
                "or ground.",
                room.indoor,
            )
    for id, each in look.house.job.neighbors.items():
        if is_called(WARM_WORDS, id, each.name) and float(each.temperature) >= look.limit - 1e-6:
            yield look.found(
                f"neighbors/{id}",
                f"{each.name} is taken as warm, {look.say(each.temperature)}, and nobody heats it.",
                each.temperature,
            )


@finding(
    "floor-over-cold-space",
    Weight.DECIDE,
    cite("NASHOBA", "rooms over garages lead the frozen-pipe calls", SEEN),
    fires="The floor of a heated room is over outdoors, or over an unheated space colder than 40 °F (4 °C), "
    "and has less than {0}.",
    why="rooms over garages lead the calls for frozen pipes",
    mend="Insulate the floor and seal it against air.",
    limits=(Limit("floor-over-cold-space", "R-19", d.RESISTANCE, "least R-value of the floor"),),
)
def _floor_over_cold_space(look: Look) -> Found:
    for part in look.house.own_parts:
        made_of, lost = part.construction, look.house.losses.rooms[part.room.id].surfaces[part.surface.id]
        if (
            part.opening
            or made_of.kind != "floor"
            or part.surface.beyond.kind not in ("outdoors", "unheated")
        ):
            continue
        there, u_value = float(lost.beyond_temperature), u_of(made_of)
        if isnan(there) or isnan(u_value):
            yield look.wants(part.path, lost.beyond_temperature, factor_of(made_of))
        elif there < COLD_FLOOR - 1e-6 and u_value * look.limit > 1 + 1e-9:
            to = look.text(look.limit, d.RESISTANCE, 3)
            below = "outdoors"
            if part.surface.beyond.kind == "unheated":
                below = f"the {look.house.job.unheated[part.surface.beyond.id].name.lower()}"
            yield look.found(
                part.path,
                f"{part.room.name} stands over {below} at {look.say(there, d.TEMPERATURE)}; its floor has "
                f"{look.say(1 / u_value, d.RESISTANCE)} and loses {look.say(lost.loss)}.",
                lost.loss,
                (
                    Mend(
                        f"Insulate {made_of.name.lower()} to {look.limit_shown()} and seal it against air.",
                        (set_to(f"constructions/{made_of.id}/r_value", to),),
                    ),
                ),
            )


@finding(
    "entry-not-used",
    Weight.NOTE,
    cite("", "what is entered is meant to count", JUDGMENT),
    fires="An unheated space, a neighbor or a level is given, and no room touches it or stands on it.",
    why="a space that was entered and touches nothing is often a `beyond` that was left at outdoors",
    mend="Name it beyond the surfaces that touch it, or take it out.",
)
def _entry_not_used(look: Look) -> Found:
    job = look.house.job
    touched = {
        (each.beyond.kind, each.beyond.id)
        for _, space in look.house.spaces
        for each in space.surfaces.values()
    }
    stood_on = {each.level.id for each in job.rooms.values()} | {
        each.level.id for each in job.unheated.values() if each.level
    }
    for home, kind, things in (
        ("unheated", "unheated", job.unheated),
        ("neighbors", "neighbor", job.neighbors),
    ):
        for id, each in things.items():
            touching = home == "unheated" and any(
                b.beyond.kind == "room" for b in job.unheated[id].surfaces.values()
            )
            if (kind, id) not in touched and not touching:
                gone = Mend("Take it out.", ({"remove": f"{home}/{id}"},))
                yield look.found(
                    f"{home}/{id}",
                    f"{each.name} is given, and nothing touches it.",
                    "",
                    (Mend(look.kind.mend), gone),
                )
    for id, level in job.levels.items():
        if id not in stood_on:
            gone = Mend("Take it out.", ({"remove": f"levels/{id}"},))
            yield look.found(f"levels/{id}", f"{level.name} is given, and no room stands on it.", "", (gone,))
