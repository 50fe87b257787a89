"""Findings on the lengths of emitters against the walls that hold them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from math import isnan, sqrt
from typing import Any

from heatledger.job.model import Room
from heatledger.job.system_model import BY_LENGTH
from heatledger.ledger import dimensions as d
from heatledger.ledger.figures import Figure
from heatledger.ledger.findings import Finding, Mend, NotChecked, Weight
from heatledger.ledger.sources import JUDGMENT, SEEN, cite
from heatledger.ledger.units import UNITS
from heatledger.steps.review.emitter_look import (
    A_LITTLE_MORE,
    SAME,
    each_emitter,
    each_room,
    known,
    name_of,
    panel_for,
)
from heatledger.steps.review.kinds import Limit, Look, finding, set_to
from heatledger.steps.review.readings import other_lengths

Found = Iterator[Finding | NotChecked]
SHORTEST = 0.15
"""Lengths below half a foot are no reading of one that was typed large, m."""
LONG_ROOM = 1.3
"""Outline of a room of no known shape over that of a square as large: one about four times as long as "
"wide."""


@finding(
    "length-past-room",
    Weight.MUST_FIX,
    cite("", "nothing stands along more wall than a room has", JUDGMENT),
    fires="The finned length of the baseboards of a room, or its free wall, is longer than {0} of its "
    "outline: that of its size, or of its outside walls where they are longer; else 1.3 times that of a "
    "square as large as its floor.",
    why="144 in (3.7 m) read as 144 ft (44 m) gives twelve times the heat, and hides that the room is cold",
    mend="Measure it again, and write its unit.",
    limits=(Limit("length-past-room", "100 %", d.RATIO, "length over the outline of the room"),),
)
def _length_past_room(look: Look) -> Found:
    for id, room in look.house.job.rooms.items():
        outline = _outline(look, room)
        fins = [
            (f"emitters/{key}", "length", emitter.name, emitter.length)
            for key, emitter, _ in each_emitter(look)
            if emitter.room == id and emitter.kind in BY_LENGTH and known(emitter.length)
        ]
        walls = [(f"rooms/{id}", "free_wall", f"The free wall of {room.name}", room.free_wall)]
        both = (fins, walls if known(room.free_wall) else [])
        if isnan(outline):
            if any(both):
                yield look.wants(f"rooms/{id}", look.house.losses.rooms[id].floor_area)
            continue
        for some in both:
            length = sum(length_of(each[3]) for each in some)
            if length > look.limit * outline * (1 + SAME):
                yield _too_long(look, room, outline, max(some, key=lambda each: length_of(each[3])))


def length_of(entry: Figure | None) -> float:
    """An entry as a plain number, m; none counts as nothing."""
    return 0.0 if entry is None else float(entry)


def _too_long(look: Look, room: Room, outline: float, one: tuple[str, str, str, Figure | None]) -> Finding:
    """The longest of the entries, with the other ways it may be read."""
    where, word, name, length = one
    assert length is not None
    texts = other_lengths(length, SHORTEST, look.limit * outline)
    mends = [Mend(f"Read it as {each}.", (set_to(f"{where}/{word}", each),)) for each in texts]
    return look.found(
        where,
        f"{name} is {look.say(length)} long, more than the {look.say(outline, d.LENGTH)} that {room.name} is "
        "around; it may have been meant in another unit.",
        length,
        (*mends, Mend(look.kind.mend)),
    )


def _outline(look: Look, room: Room) -> float:
    """The longest that the walls of a room can be together, m."""
    walls = [
        float(each.length)
        for each in room.surfaces.values()
        if each.length is not None and each.construction.kind in ("wall", "below-grade wall")
    ]
    outside = sum(each for each in walls if not isnan(each))
    if known(room.length, room.width):
        assert room.length is not None and room.width is not None
        return max(2 * (float(room.length) + float(room.width)), outside)
    return max(4 * sqrt(float(look.house.losses.rooms[room.id].floor_area)) * LONG_ROOM, outside)


@finding(
    "baseboard-past-free-wall",
    Weight.DECIDE,
    cite("DX-LOOP", "an owner's baseboard that found no wall", SEEN),
    fires="A room needs more baseboard than its free wall holds, by more than {0}.",
    why="cabinets, doors and appliances take the wall",
    mend="Take a kickspace fan unit, a tall panel on an inner wall, or a floor or ceiling panel.",
    limits=(Limit("baseboard-past-free-wall", "0 in", d.LENGTH, "length past the wall"),),
)
def _baseboard_past_free_wall(look: Look) -> Found:
    for id, room, here in each_room(look):
        if room.needed_length is None:
            continue
        wall = "free wall" if room.free_wall is None else ""
        if room.free_wall is None or not known(room.needed_length):
            yield look.wants(f"rooms/{id}", room.needed_length, words=wall)
        elif float(room.needed_length) > float(room.free_wall) + look.limit + SAME:
            key, one = next(iter(here.items()))
            supply = look.design.emitters.house.supply
            changes: tuple[Mapping[str, Any], ...] = ()
            if len(here) == 1 and known(supply):
                panel = panel_for(look, id, float(supply), A_LITTLE_MORE)
                changes = (set_to(f"emitters/{key}", {"name": one.name, **panel}),) if panel else ()
            yield look.found(
                f"rooms/{id}",
                f"{name_of(look, id)} needs {look.say(room.needed_length)} of baseboard and has "
                f"{look.say(room.free_wall)} of free wall.",
                room.needed_length,
                (
                    Mend("Take a tall panel radiator instead.", changes),
                    Mend("Take a kickspace fan unit, or a floor or ceiling panel."),
                ),
            )


@finding(
    "cabinet-length-as-fin",
    Weight.NOTE,
    cite("PM-HEF", "active length against that of the cabinet", SEEN),
    fires="The finned length of a baseboard is the free wall of its room, within {0}.",
    why="end caps, valves and elbows carry no fins",
    mend="Measure the fins, or take 4 to 12 in. (10 to 30 cm) off each end.",
    limits=(Limit("cabinet-length-as-fin", "2 in", d.LENGTH, "fins against wall"),),
)
def _cabinet_length_as_fin(look: Look) -> Found:
    for id, emitter, found in each_emitter(look):
        wall = look.house.job.rooms[emitter.room].free_wall
        if emitter.kind not in BY_LENGTH or emitter.length is None or wall is None:
            continue
        if known(wall, emitter.length) and abs(float(wall) - float(emitter.length)) <= look.limit + SAME:
            shorter = max(float(emitter.length) - UNITS["in"].to_si(8), UNITS["in"].to_si(6))
            yield look.found(
                f"emitters/{id}",
                f"{emitter.name} counts {look.say(emitter.length)} of fins on {look.say(wall)} of free wall; "
                "the ends of a cabinet carry none.",
                found.length if found.length is not None else emitter.length,
                (
                    Mend(
                        f"Take {look.say(UNITS['in'].to_si(4), d.LENGTH)} off each end.",
                        (set_to(f"emitters/{id}/length", look.text(shorter, d.LENGTH)),),
                    ),
                    Mend("Measure the fins."),
                ),
            )
