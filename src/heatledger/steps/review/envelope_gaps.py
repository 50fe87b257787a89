"""Findings on parts of the shell that are left out: roofs, floors, windows, outer walls."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from math import isnan
from typing import Any

from heatledger.job.model import Level, Room
from heatledger.ledger import dimensions as d
from heatledger.ledger.findings import Finding, Mend, NotChecked, Weight
from heatledger.ledger.sources import JUDGMENT, cite
from heatledger.steps.review.house import is_called
from heatledger.steps.review.kinds import Limit, Look, finding, set_to

Found = Iterator[Finding | NotChecked]
FOOT = 0.3048
FLOORS = ("floor", "below-grade floor", "slab edge")
OUTSIDE = ("outdoors", "ground", "unheated")


def _levels(look: Look) -> list[tuple[Level, list[Room]]]:
    """Levels with heated rooms from the lowest up; a file that begins with the roof is turned around."""
    found = [
        (level, rooms)
        for id, level in look.house.job.levels.items()
        if (rooms := [room for room, _ in look.house.rooms if room.level.id == id])
    ]
    if len(found) > 1:
        first, last = found[0][1], found[-1][1]
        upside_down = _has(first, ("ceiling",)) and _has(last, FLOORS)
        if upside_down and not _has(first, FLOORS) and not _has(last, ("ceiling",)):
            found.reverse()
    return found


def _has(rooms: list[Room], kinds: tuple[str, ...]) -> bool:
    return any(each.construction.kind in kinds for room in rooms for each in room.surfaces.values())


def _floor_of(look: Look, rooms: list[Room]) -> float:
    return sum(float(look.house.losses.rooms[each.id].floor_area) for each in rooms)


@finding(
    "top-without-ceiling",
    Weight.DECIDE,
    cite("", "a house has a roof", JUDGMENT),
    fires="No room of the highest level (the last in the file that has rooms) has a ceiling.",
    why="the ceiling left out is often the largest surface of the house",
    mend="Give each room its ceiling, and what is beyond it: outdoors, an attic, a dwelling.",
)
def _top_without_ceiling(look: Look) -> Found:
    levels = _levels(look)
    if not levels or _has(levels[-1][1], ("ceiling",)):
        return
    level, rooms = levels[-1]
    if not any(each.surfaces for each in rooms):
        yield look.wants(f"levels/{level.id}", words=f"the surfaces of the rooms on the {level.name.lower()}")
        return
    floor = _floor_of(look, rooms)
    said = f", with {look.say(floor, d.AREA)} of floor under the roof" if floor > 0 else ""
    yield look.found(
        f"levels/{level.id}",
        f"No room on the {level.name.lower()} has a ceiling{said}.",
        "",
        (*_ceilings(look, rooms), Mend(look.kind.mend)),
    )


def _ceilings(look: Look, rooms: list[Room]) -> tuple[Mend, ...]:
    """A ceiling over each room, of the ceiling that the job has already."""
    made_of = next((id for id, each in look.house.job.constructions.items() if each.kind == "ceiling"), "")
    areas = {each.id: float(look.house.losses.rooms[each.id].floor_area) for each in rooms}
    taken = any("ceiling" in each.surfaces for each in rooms)
    if not made_of or taken or any(isnan(each) for each in areas.values()):
        return ()
    spaces = look.house.job.unheated.items()
    attic = next((id for id, each in spaces if is_called(("attic", "loft"), id, each.name)), "")
    beyond = f"unheated/{attic}" if attic else "outdoors"
    changes = tuple(
        {
            "add": f"rooms/{id}/surfaces/ceiling",
            "to": {"construction": made_of, "area": look.text(area, d.AREA), "beyond": beyond},
        }
        for id, area in areas.items()
    )
    name = look.house.job.constructions[made_of].name
    return (Mend(f"Give each room a ceiling as large as its floor, of {name.lower()}.", changes),)


@finding(
    "bottom-without-floor",
    Weight.DECIDE,
    cite("", "a house stands on something", JUDGMENT),
    fires="No room of the lowest level (the first in the file that has rooms) has a floor or a slab edge.",
    why="the floor left out is a loss left out, and the rooms on it come out too small",
    mend="Give each room its floor, and what is beyond it; a slab on grade is given by its edge.",
)
def _bottom_without_floor(look: Look) -> Found:
    levels = _levels(look)
    if not levels or _has(levels[0][1], FLOORS):
        return
    level, rooms = levels[0]
    if not any(each.surfaces for each in rooms):
        yield look.wants(f"levels/{level.id}", words=f"the surfaces of the rooms on the {level.name.lower()}")
        return
    floor = _floor_of(look, rooms)
    said = f" for {look.say(floor, d.AREA)} of rooms" if floor > 0 else ""
    yield look.found(
        f"levels/{level.id}",
        f"No room on the {level.name.lower()} has a floor or a slab edge{said}.",
        "",
        (*_edges(look, rooms), Mend(look.kind.mend)),
    )


def _edges(look: Look, rooms: list[Room]) -> tuple[Mend, ...]:
    """A slab edge along the outside walls of each room, of the edge that the job has already."""
    made_of = next((id for id, each in look.house.job.constructions.items() if each.kind == "slab edge"), "")
    changes: list[Mapping[str, Any]] = []
    for room in rooms:
        length = sum(_walls(room, 0.0))
        if isnan(length) or "edge" in room.surfaces:
            return ()
        if length > 0:
            to = {"construction": made_of, "length": look.text(length, d.LENGTH)}
            changes.append({"add": f"rooms/{room.id}/surfaces/edge", "to": to})
    if not made_of or not changes:
        return ()
    return (Mend("Give each room a slab edge as long as its walls to outdoors.", tuple(changes)),)


def _walls(room: Room, least: float) -> list[float]:
    """Lengths of the walls to outdoors that are higher than ``least`` m."""
    return [
        float(each.length)
        for each in room.surfaces.values()
        if each.construction.kind == "wall"
        and each.beyond.kind == "outdoors"
        and each.length is not None
        and (each.height is None or not float(each.height) < least)
    ]


@finding(
    "edge-past-walls",
    Weight.DECIDE,
    cite("", "over the edge of a slab stands an outside wall", JUDGMENT),
    fires="The slab edges of a room are longer than {0} of its walls to outdoors and unheated "
    "spaces, and by more than 3 ft (1 m). A room with a wall that is given by its area is left out.",
    why="an edge without a wall over it is a wall left out, and walls lose more than edges",
    mend="Give the wall over the edge, or measure the edge again.",
    limits=(Limit("edge-past-walls", "110 %", d.RATIO, "slab edges against walls"),),
)
def _edge_past_walls(look: Look) -> Found:
    for room, _ in look.house.rooms:
        edges = [each for each in room.surfaces.values() if each.construction.kind == "slab edge"]
        walls = [
            each for each in room.surfaces.values()
            if each.construction.kind == "wall" and each.beyond.kind in ("outdoors", "unheated")
        ]  # fmt: skip
        if not edges or any(each.length is None for each in (*edges, *walls)):
            continue
        edge, wall = (
            sum(float(each.length) for each in some if each.length is not None) for some in (edges, walls)
        )
        if isnan(edge) or isnan(wall):
            yield look.wants(f"rooms/{room.id}", *(each.length for each in (*edges, *walls)))
        elif edge > max(look.limit * wall, wall + 3 * FOOT) + 1e-6:
            mends = [Mend(look.kind.mend)]
            if len(edges) == 1 and wall > 0:
                to = set_to(f"rooms/{room.id}/surfaces/{edges[0].id}/length", look.text(wall, d.LENGTH))
                mends.append(Mend("Make the edge as long as the walls over it.", (to,)))
            over = f"only {look.say(wall, d.LENGTH)} of wall" if wall > 0 else "no wall"
            yield look.found(
                f"rooms/{room.id}",
                f"{room.name} has {look.say(edge, d.LENGTH)} of slab edge, and {over} over it.",
                edges[0].length if edges[0].length is not None else "",
                tuple(mends),
            )


@finding(
    "inner-room-large",
    Weight.DECIDE,
    cite("", "rooms that are lived in have an outer wall", JUDGMENT),
    fires="A room that is lived in and takes more than {0} of the heated floor has no surface to outdoors, "
    "ground or an unheated space.",
    why="only a hall or a closet lies within; a room of this size has lost its walls on the way to the file",
    mend="Give its outside walls, its ceiling or its floor; or decide that it lies within the house.",
    limits=(Limit("inner-room-large", "10 %", d.RATIO, "share of the heated floor"),),
)
def _inner_room_large(look: Look) -> Found:
    house = float(look.house.losses.house.floor_area)
    for room, lost in look.house.rooms:
        if not room.habitable or any(each.beyond.kind in OUTSIDE for each in room.surfaces.values()):
            continue
        share = float(lost.floor_area) / house if house > 0 else float("nan")
        if isnan(share):
            yield look.wants(f"rooms/{room.id}", lost.floor_area, look.house.losses.house.floor_area)
        elif share > look.limit + 1e-9:
            yield look.found(
                f"rooms/{room.id}",
                f"{room.name} is {look.say(share, d.RATIO)} of the heated floor, and nothing of it meets "
                "outdoors, ground or an unheated space.",
                lost.floor_area,
            )


@finding(
    "no-window-in-house",
    Weight.DECIDE,
    cite("", "a dwelling has windows", JUDGMENT),
    fires="No heated room of the house has a window.",
    why="windows pass several times as much heat as the walls they are in",
    mend="Give the windows of each room, under `openings` of the walls they are in.",
)
def _no_window_in_house(look: Look) -> Found:
    windows = any(each.opening and each.construction.kind == "window" for each in look.house.parts)
    if look.house.job.rooms and not look.house.parts:
        yield look.wants("house", words="the surfaces of the rooms")
    elif look.house.job.rooms and not windows:
        count = len(look.house.job.rooms)
        rooms = "its one heated room" if count == 1 else f"its {count} heated rooms"
        yield look.found("house", f"The house has no window in {rooms}.")


@finding(
    "room-walled-all-around",
    Weight.DECIDE,
    cite("", "rooms of one level touch one another", JUDGMENT),
    fires="The walls of a room to outdoors are longer than {0} of its outline, and there are other rooms on "
    "its level. Walls lower than six tenths of the ceiling height are not counted.",
    why="a wall between two rooms that is given to outdoors is charged with the whole span",
    mend="Give the walls to other rooms as `beyond: rooms/ID`, or leave them out.",
    limits=(Limit("room-walled-all-around", "95 %", d.RATIO, "outside walls against the outline"),),
)
def _room_walled_all_around(look: Look) -> Found:
    rooms = [room for room, _ in look.house.rooms]
    for room in rooms:
        others = any(each.level.id == room.level.id and each is not room for each in rooms)
        if room.length is None or room.width is None or not others:
            continue
        outline = 2 * (float(room.length) + float(room.width))
        walls = sum(_walls(room, 0.6 * float(room.ceiling_height)))
        if isnan(outline) or isnan(walls):
            yield look.wants(f"rooms/{room.id}", room.length, room.width, words="the lengths of its walls")
        elif walls > look.limit * outline * (1 + 1e-9):
            yield look.found(
                f"rooms/{room.id}",
                f"{room.name} has {look.say(walls, d.LENGTH)} of wall to outdoors on an outline of "
                f"{look.say(outline, d.LENGTH)}, and there are other rooms on the {room.level.name.lower()}.",
                room.length,
            )
