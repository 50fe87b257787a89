"""Findings on single rooms, held against the house they are in."""

from __future__ import annotations

from collections.abc import Iterator
from math import isnan

from heatledger.job.model import Room
from heatledger.ledger import dimensions as d
from heatledger.ledger.findings import Finding, Mend, NotChecked, Weight
from heatledger.ledger.sources import DERIVED, JUDGMENT, PRACTICE, SEEN, cite
from heatledger.steps.losses import RoomLoss
from heatledger.steps.review.kinds import Limit, Look, finding, set_to

Found = Iterator[Finding | NotChecked]


@finding(
    "no-rooms-yet",
    Weight.MUST_FIX,
    cite("", "a heat loss is that of rooms", DERIVED),
    fires="The job has no heated room.",
    why="the loss of the house is the sum of its rooms, so there is nothing to add up",
    mend="Give at least one room under `rooms`.",
)
def _no_rooms_yet(look: Look) -> Found:
    if not look.house.job.rooms:
        yield look.found("rooms", "There are no heated rooms yet, so there is no heat loss.")


@finding(
    "room-out-of-line",
    Weight.NOTE,
    cite("", "rooms of one house compared", JUDGMENT),
    fires="A room loses for each floor area more than {0} or less than {1} of the mean of the house. Rooms "
    "with more than 30 % of glass in their outside walls, with three outside walls or more, with a floor "
    "over outdoors or an unheated space other than a basement, or with nothing outside are left out.",
    why="a slip in one room moves the emitter of that room by the same factor",
    mend="Open the sheet of the room; correct it, or decide that there is a reason.",
    limits=(
        Limit("room-out-of-line", "250 %", d.RATIO, "most of the mean"),
        Limit("room-out-of-line-low", "35 %", d.RATIO, "least of the mean"),
    ),
)
def _room_out_of_line(look: Look) -> Found:
    mean = float(look.house.losses.house.per_area)
    if isnan(mean):
        yield look.wants("house", look.house.losses.house.per_area)
        return
    for room, lost in look.house.rooms:
        own = float(lost.per_area)
        inside = look.limit_at(1) * mean - 1e-9 <= own <= look.limit * mean + 1e-9
        if mean > 0 and not inside and not _has_a_reason(look, room, lost):
            yield look.found(
                f"rooms/{room.id}",
                f"{room.name} loses {look.say(lost.per_area)} against {look.say(mean, d.HEAT_FLUX)} for "
                "the house; check its walls and windows.",
                lost.per_area,
            )


def _has_a_reason(look: Look, room: Room, lost: RoomLoss) -> bool:
    outer = [
        (each, lost.surfaces[id])
        for id, each in room.surfaces.items()
        if each.beyond.kind in ("outdoors", "unheated")
    ]
    walls = [
        (each, done)
        for each, done in outer
        if each.construction.kind == "wall" and each.beyond.kind == "outdoors"
    ]
    gross = sum(float(done.gross_area) for _, done in walls if done.gross_area is not None)
    glass = sum(float(one.total_area) for _, done in walls for one in done.openings.values())
    cold_floor = any(
        each.construction.kind == "floor"
        and (
            each.beyond.kind == "outdoors"
            or "basement" not in look.house.job.unheated[each.beyond.id].name.lower()
        )
        for each, _ in outer
    )
    nothing = not outer and not any(each.beyond.kind == "ground" for each in room.surfaces.values())
    return nothing or len(walls) >= 3 or cold_floor or (gross > 0 and glass > 0.3 * gross)


@finding(
    "room-without-outside",
    Weight.NOTE,
    cite("", "a room within the house", JUDGMENT),
    fires="A heated room has no surface to outdoors, ground or an unheated space.",
    why="its load is then the outdoor air alone, which reaches it through other rooms",
    mend="See that no outside surface is missing; the room may take its heat from the rooms around it.",
)
def _room_without_outside(look: Look) -> Found:
    for room, lost in look.house.rooms:
        if not any(each.beyond.kind in ("outdoors", "ground", "unheated") for each in room.surfaces.values()):
            yield look.found(
                f"rooms/{room.id}",
                f"{room.name} has nothing to outdoors, ground or an unheated space.",
                lost.loss,
            )


@finding(
    "no-window-in-room",
    Weight.NOTE,
    cite("", "rooms that are lived in have windows", JUDGMENT),
    fires="A room that is lived in has a wall to outdoors, and no window or door.",
    why="a window passes several times as much heat as the wall it is in",
    mend="Give its windows, or mark the room as not lived in.",
)
def _no_window_in_room(look: Look) -> Found:
    for room, _ in look.house.rooms:
        walls = [
            each
            for each in room.surfaces.values()
            if each.construction.kind == "wall" and each.beyond.kind == "outdoors"
        ]
        if room.habitable and walls and not any(each.openings for each in room.surfaces.values()):
            apart = set_to(f"rooms/{room.id}/habitable", "no")
            yield look.found(
                f"rooms/{room.id}",
                f"{room.name} is lived in and shows no window.",
                "",
                (Mend("Give its windows."), Mend("Mark it as a room not lived in.", (apart,))),
            )


@finding(
    "room-warmed-by-others",
    Weight.NOTE,
    cite("", "a load below zero", JUDGMENT),
    fires="A heated room loses nothing on the design day, or takes more heat from its neighbors than it "
    "loses.",
    why="nothing in it has to give heat; with a door shut or a neighbor cold it may",
    mend="See that its outside surfaces are all there, or make it an unheated space.",
)
def _room_warmed_by_others(look: Look) -> Found:
    for room, lost in look.house.rooms:
        if isnan(lost.loss):
            yield look.wants(f"rooms/{room.id}", lost.loss)
        elif float(lost.loss) <= 0:
            yield look.found(
                f"rooms/{room.id}", f"{room.name} comes out at {look.say(lost.loss)}.", lost.loss
            )


@finding(
    "tall-room-layers",
    Weight.NOTE,
    cite("", "warm air gathers under a high ceiling", PRACTICE),
    fires="The ceiling of a heated room is higher than {0}.",
    why="each 1 °F (0.6 K) warmer at the ceiling raises its loss by 1.4 % at a span of 70 °F (39 K)",
    mend="Heat it by its floor or low down, turn a slow ceiling fan, or figure the high surfaces warmer.",
    limits=(Limit("tall-room-layers", "12 ft", d.LENGTH, "ceiling of a tall room"),),
)
def _tall_room_layers(look: Look) -> Found:
    for room, _ in look.house.rooms:
        if float(room.ceiling_height) > look.limit + 1e-6:
            yield look.found(
                f"rooms/{room.id}",
                f"{room.name} is {look.say(room.ceiling_height)} high; warm air will stand above the "
                "people, and the ceiling loses more.",
            )


@finding(
    "altitude-counts",
    Weight.NOTE,
    cite("HOF-ch17", "air at the height of the site", SEEN),
    fires="The site is higher than {0}. The heat of the air is figured for that height already.",
    why="thin air carries less heat, and burners and baseboard are rated at sea level",
    mend="Ask for the output of burners and baseboard at this height, and use no constant of sea level for "
    "the air.",
    limits=(Limit("altitude-counts", "2000 ft", d.LENGTH, "height above the sea"),),
)
def _altitude_counts(look: Look) -> Found:
    elevation = look.house.job.site.elevation
    if isnan(elevation):
        yield look.wants("site/elevation", elevation)
    elif float(elevation) > look.limit + 1e-6:
        carries = float(look.house.losses.site.pressure) / 101325.0
        yield look.found(
            "site/elevation",
            f"At {look.say(elevation)} air carries {look.say(carries, d.RATIO)} of the heat it carries "
            "at sea level; the ratings of burners and baseboard change too.",
        )
