"""Findings on what rooms get of their emitters, and on the walls that hold them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from heatledger.ledger import dimensions as d
from heatledger.ledger.findings import Finding, Mend, NotChecked, Weight
from heatledger.ledger.sources import JUDGMENT, PRACTICE, cite
from heatledger.steps.emitters import EmitterHeat, RoomHeat
from heatledger.steps.review.emitter_look import (
    A_LITTLE_MORE,
    HOTTEST,
    SAME,
    each_emitter,
    each_room,
    known,
    length_to,
    longer,
    name_of,
    panel_for,
    share_that_results,
    supply_to,
)
from heatledger.steps.review.kinds import Limit, Look, finding, set_to

Found = Iterator[Finding | NotChecked]
ALIKE = 0.56
"""Rooms that ask for water within 1 °F of each other ask for the same, K."""


@finding(
    "room-without-emitter",
    Weight.MUST_FIX,
    cite("", "every heated room has heat of its own", PRACTICE),
    fires="A room of a job that has emitters needs heat, and no emitter stands in it.",
    why="borrowed heat needs an open doorway; it fails when the door shuts",
    mend="Add an emitter, or take the room for unheated and say where its heat comes from.",
)
def _room_without_emitter(look: Look) -> Found:
    for id, room, here in each_room(look):
        if here or not known(room.needed) or float(room.needed) <= SAME:
            continue
        mends = [Mend("Take it for an unheated space, and say which rooms it borrows from.")]
        if known(look.design.emitters.house.supply):
            supply = float(look.design.emitters.house.supply)
            panel = panel_for(look, id, supply, A_LITTLE_MORE)
            new = {"name": f"{name_of(look, id)} panel", **panel}
            changes = ({"add": f"emitters/{id}-panel", "to": new},) if panel else ()
            mends.insert(0, Mend("Add a panel radiator.", changes))
        yield look.found(
            f"rooms/{id}",
            f"{name_of(look, id)} loses {look.say(room.needed)} and nothing in it gives heat.",
            room.needed,
            tuple(mends),
        )


@finding(
    "supply-not-given",
    Weight.NOTE,
    cite("", "the supply is the designer's to choose", JUDGMENT),
    fires="The job has emitters and no design supply; the lowest that serves every room is taken.",
    why="every output, flow, drop and return rests on the temperature of the water",
    mend="Type the design supply.",
)
def _supply_not_given(look: Look) -> Found:
    found = look.design.emitters
    if not found.emitters or look.house.job.system.plant.supply is not None:
        return
    if not known(found.house.supply):
        words = "a design supply, or the size of every emitter, from which the lowest follows that will do"
        yield look.wants("plant/supply", words=words)
    else:
        yield look.found(
            "plant/supply",
            f"No design supply is given; {look.say(found.house.supply)} is taken, the lowest that serves "
            "every room.",
            found.house.supply,
            (
                Mend(
                    "Type it.", (set_to("plant/supply", look.text(float(found.house.supply), d.TEMPERATURE)),)
                ),
            ),
        )


@finding(
    "emitter-without-load",
    Weight.NOTE,
    cite("", "heat that nobody asks for", JUDGMENT),
    fires="An emitter stands in a room that needs no heat on the design day.",
    why="what it gives is not asked for, and nothing sizes it",
    mend="Leave it out, or see why the room needs no heat.",
)
def _emitter_without_load(look: Look) -> Found:
    for id, emitter, found in each_emitter(look):
        if known(found.load) and float(found.load) <= SAME:
            yield look.found(
                f"emitters/{id}",
                f"{emitter.name} stands in {name_of(look, emitter.room)}, which asks for no heat.",
                found.load,
            )


@finding(
    "room-left-cold",
    Weight.DECIDE,
    cite("", "output against load at the design supply", JUDGMENT),
    fires="At the design supply and flows a room gets less than {0} of what it needs. Below {1} it must be "
    "mended; where circulators have curves, it counts what the room gets at the flows that result.",
    why="loss and output have one answer, and more flow cannot pass the largest output",
    mend="Give it more element, or hotter water, or a smaller loss.",
    limits=(
        Limit("room-left-cold", "97 %", d.RATIO, "heat given over heat needed"),
        Limit("room-left-very-cold", "90 %", d.RATIO, "heat given over heat needed, to be mended"),
    ),
)
def _room_left_cold(look: Look) -> Found:
    for id, room, here in each_room(look):
        if here and not known(room.given_share):
            yield look.wants(f"rooms/{id}", room.given_share)
        if not here or not float(room.given_share) < look.limit - SAME:
            continue
        # The flow that results weighs: a design flow below it makes a room look colder than it is.
        share, really = float(room.given_share), share_that_results(look, id)
        said = ""
        if really is not None:
            share = really
            heat = look.say(share * float(room.needed), d.HEAT_RATE)
            said = f" At the flow that results it gets {heat}, {look.say(share, d.RATIO)} of its need."
        yield look.found(
            f"rooms/{id}",
            f"{name_of(look, id)} needs {look.say(room.needed)} and gets {look.say(room.given)} at "
            f"{look.say(look.design.emitters.house.supply)}: {look.say(-float(room.over), d.HEAT_RATE)} "
            f"short.{said}",
            room.given_share,
            _more_heat(look, room, here),
            Weight.MUST_FIX if share < look.limit_at(1) - SAME else None,
        )


def _more_heat(look: Look, room: RoomHeat, here: dict[str, EmitterHeat]) -> tuple[Mend, ...]:
    mends = []
    id, one = next(iter(here.items()))
    if len(here) == 1 and one.needed_length is not None and known(one.needed_length):
        said = look.say(one.needed_length)
        words = f"Give it {said} of element or more, here {longer(look, float(one.needed_length))}."
        mends.append(Mend(words, length_to(look, id, one.needed_length)))
    elif len(here) == 1 and one.needed_rated is not None and known(one.needed_rated):
        effect = float(look.house.job.system.emitters[id].heating_effect)
        text = look.text(1.01 * effect * float(one.needed_rated), d.HEAT_RATE)
        mends.append(Mend(f"Take one of {text} at its rating.", (set_to(f"emitters/{id}/output", text),)))
    hottest = _hottest_of_the_cold(look)
    if known(room.lowest_supply) and float(room.lowest_supply) <= HOTTEST + SAME:
        mends.append(
            Mend(
                f"Run the water at {look.say(hottest, d.TEMPERATURE)}, if boiler and other rooms allow.",
                supply_to(look, hottest, HOTTEST),
            )
        )
    return (*mends, Mend("Make its loss smaller: look at its largest surface first."))


def _hottest_of_the_cold(look: Look) -> float:
    """The supply that serves every room which gets too little, as far as water may be so hot."""
    asked = [
        float(room.lowest_supply)
        for _, room, here in each_room(look)
        if here and known(room.lowest_supply) and float(room.given_share) < look.limit
    ]
    return max((each for each in asked if each <= HOTTEST + SAME), default=HOTTEST)


@finding(
    "room-driven-hot",
    Weight.NOTE,
    cite("", "output against load at the design supply", JUDGMENT),
    fires="A room without a thermostat gets more than {0} of its load, counted against the room of its "
    "thermostat where that is over its load too; above {1} it is to be decided.",
    why="while the room of the thermostat is right, this one is too warm all winter",
    mend="Shorten the element or close its damper, add a radiator valve, or make it a zone.",
    limits=(
        Limit("room-driven-hot", "125 %", d.RATIO, "heat given over heat needed"),
        Limit("room-driven-very-hot", "150 %", d.RATIO, "heat given over heat needed, to be decided"),
    ),
)
def _room_driven_hot(look: Look) -> Found:
    stats = {each.thermostat for each in look.house.job.system.zones.values()}
    for id, room, here in each_room(look):
        share = float(room.given_share)
        if id in stats or not here or not known(share) or float(room.needed) <= SAME:
            continue
        beside = _share_at_thermostat(look, here)
        if share / beside <= look.limit + SAME:
            continue
        key, one = next(iter(here.items()))
        mends = [Mend("Close its damper, or give it a radiator valve.")]
        if len(here) == 1 and one.needed_length is not None and known(one.needed_length):
            changes = length_to(look, key, float(one.needed_length) * min(beside, look.limit))
            mends.insert(0, Mend("Shorten the element to its load.", changes))
        yield look.found(
            f"rooms/{id}",
            f"{name_of(look, id)} gets {look.say(room.given)} for {look.say(room.needed)}; while the room of "
            "the thermostat is right, it is too warm.",
            room.given_share,
            tuple(mends),
            Weight.DECIDE if share / beside > look.limit_at(1) + SAME else None,
        )


def _share_at_thermostat(look: Look, here: dict[str, EmitterHeat]) -> float:
    """How far the room of the thermostat is over its load, at least 1."""
    system, rooms = look.house.job.system, look.design.emitters.rooms
    for circuit in system.circuits.values():
        zone = system.zones.get(circuit.zone)
        if zone is not None and zone.thermostat in rooms and any(id in circuit.runs for id in here):
            share = float(rooms[zone.thermostat].given_share)
            return max(1.0, share) if known(share) else 1.0
    return 1.0


@finding(
    "supply-beyond-reach",
    Weight.MUST_FIX,
    cite("", "water of a house is seldom let above 200 °F", PRACTICE),
    fires="A room is served only by water hotter than {0}, or by none at all.",
    why="boilers are limited to about 200 °F (93 °C), so what is missing must come from a larger emitter",
    mend="Give the room a larger emitter, or a second one.",
    limits=(Limit("supply-beyond-reach", "200 °F", d.TEMPERATURE, "hottest water"),),
)
def _supply_beyond_reach(look: Look) -> Found:
    for id, room, here in each_room(look):
        lowest = float(room.lowest_supply)
        sized = bool(here) and all(known(each.rated_here, each.load, each.capacity) for each in here.values())
        if sized and not lowest <= look.limit + SAME:
            asked = look.say(room.lowest_supply) if known(lowest) else "hotter water than there is"
            yield look.found(
                f"rooms/{id}",
                f"To heat {name_of(look, id)} its emitters need {asked}.",
                room.lowest_supply if known(lowest) else "",
            )


@finding(
    "one-room-sets-supply",
    Weight.DECIDE,
    cite("", "one room against all the others", JUDGMENT),
    fires="One room, or several that need the same within 1 °F (0.6 K), needs water more than {0} hotter "
    "than all the others would do with.",
    why="the hottest need sets the water for the whole house, and a condensing boiler pays for it all winter",
    mend="Give that room a larger emitter.",
    limits=(Limit("one-room-sets-supply", "15 °F", d.TEMPERATURE_DIFFERENCE, "hotter than the next"),),
)
def _one_room_sets_supply(look: Look) -> Found:
    house = look.design.emitters.house
    asked = {id: room.lowest_supply for id, room, here in each_room(look) if here}
    if not known(house.lowest_supply, *asked.values()):
        return
    top = float(house.lowest_supply)
    alike = [id for id, each in asked.items() if float(each) > top - ALIKE]
    others = [each for id, each in asked.items() if id not in alike]
    # Where half of the rooms ask for the same, it is the house that sets the water.
    if not others or (len(alike) > 1 and len(alike) > len(others)):
        return
    below = max(others, key=float)
    if top - float(below) > look.limit + SAME:
        names = [name_of(look, id) for id in alike]
        said = " and ".join([*([", ".join(names[:-1])] if names[:-1] else []), names[-1]])
        changes: list[Mapping[str, Any]] = []
        for id, name in zip(alike, names, strict=True):
            panel = panel_for(look, id, float(below)) if float(below) <= HOTTEST else {}
            if panel:
                new = {"name": f"{name} second panel", **panel}
                changes.append({"add": f"emitters/{id}-second", "to": new})
        rest = "the other room" if len(others) == 1 else "all other rooms"
        yield look.found(
            f"rooms/{house.set_by}",
            f"{said} {'asks' if len(alike) == 1 else 'ask'} for {look.say(house.lowest_supply)}; {rest} "
            f"would do with {look.say(below)}.",
            house.lowest_supply,
            (_second_emitter(said, changes if len(changes) == len(alike) else []),),
        )


def _second_emitter(said: str, changes: list[Mapping[str, Any]]) -> Mend:
    """More emitter where it asks for most; a panel of a size where that is not out of all measure."""
    if not changes:
        return Mend(f"Give {said} more emitter, or take less heat from it: walls, glass, air.")
    return Mend(f"Give {said} a second emitter, here a panel radiator.", tuple(changes))
