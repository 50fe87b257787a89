"""Findings on lengths, heights and areas: feet for meters, rooms left out, walls that do not close."""

from __future__ import annotations

from collections.abc import Iterator
from math import isnan

from heatledger.job.model import Level, Room
from heatledger.ledger import dimensions as d
from heatledger.ledger.figures import Figure
from heatledger.ledger.findings import Finding, Mend, NotChecked, Weight
from heatledger.ledger.sources import JUDGMENT, SEEN, cite
from heatledger.steps.review.house import path_of, typed_of
from heatledger.steps.review.kinds import Limit, Look, finding, set_to

Found = Iterator[Finding | NotChecked]
OTHER_UNIT = {"ft": ("m", 1.0), "m": ("ft", 0.3048)}
SIDES = (("north", "south"), ("east", "west"))
FT = 0.3048


@finding(
    "feet-meters-crossed",
    Weight.MUST_FIX,
    cite("", "heights of rooms in dwellings", JUDGMENT),
    fires="The ceiling of a heated room is higher than {0} or lower than {1}.",
    why="8 ft read as 8 m makes the loss of walls and air 3.3 times too large",
    mend="Type the height again, with its unit; or decide that the room is that high.",
    limits=(
        Limit("feet-meters-crossed", "20 ft", d.LENGTH, "highest ceiling"),
        Limit("feet-meters-crossed-low", "6.5 ft", d.LENGTH, "lowest ceiling"),
    ),
)
def _feet_metres_crossed(look: Look) -> Found:
    low, high = look.limit_at(1) - 1e-6, look.limit + 1e-6
    odd: dict[str, tuple[Figure, list[str]]] = {}
    for room, _ in look.house.rooms:
        height = room.ceiling_height
        if isnan(height):
            yield look.wants(f"rooms/{room.id}", height)
        elif not low <= float(height) <= high:
            odd.setdefault(path_of(height), (height, []))[1].append(room.name)
    for path, (height, names) in odd.items():
        number, unit = typed_of(height)
        other, size = OTHER_UNIT.get(unit, ("", 0.0))
        mends = [Mend("Type the height again, with its unit; or decide that the room is that high.")]
        if other and low <= number * size <= high:
            mends.insert(0, Mend(f"Read it as {number:g} {other}.", (set_to(path, f"{number:g} {other}"),)))
        have = "have a ceiling" if len(names) > 1 else "has a ceiling"
        yield look.found(
            path,
            f"{_listed(names)} {have} at {look.say(height)}; feet and meters look crossed.",
            height,
            tuple(mends),
        )


def _listed(names: list[str]) -> str:
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"


@finding(
    "wall-lower-than-ceiling",
    Weight.DECIDE,
    cite("HOF-ch17", "walls are taken from floor to floor", SEEN),
    fires="On a level, the wall height (floor to floor) is less than the ceiling height (floor to ceiling).",
    why="a wall for loads runs from floor to floor, past the ceiling",
    mend="Measure the height from floor to floor.",
)
def _wall_lower_than_ceiling(look: Look) -> Found:
    for id in look.house.losses.levels:
        level = look.house.job.levels[id]
        wall, ceiling = level.wall_height, level.ceiling_height
        if float(wall) < float(ceiling) - 0.0005:
            to = set_to(f"levels/{id}/wall_height", look.text(float(ceiling), d.LENGTH))
            yield look.found(
                f"levels/{id}",
                f"On the {level.name.lower()} the walls are {look.say(wall)} high and the ceiling "
                f"{look.say(ceiling)}.",
                wall,
                (Mend("Make the wall at least as high as the ceiling.", (to,)),),
            )


@finding(
    "floor-areas-disagree",
    Weight.DECIDE,
    cite("MORIN", "areas within 5 % on permit papers", SEEN),
    fires="The floor of the rooms and the heated floor area as stated differ by more than {0} of the "
    "stated; it must be fixed above {1}.",
    why="a missing hall is a missing load",
    mend="Add the room that is missing, or correct the stated area.",
    limits=(
        Limit("floor-areas-disagree", "10 %", d.RATIO, "difference of areas"),
        Limit("floor-areas-disagree-must", "25 %", d.RATIO, "difference that must be fixed"),
    ),
)
def _floor_areas_disagree(look: Look) -> Found:
    stated, rooms = look.house.job.heated_floor_area, look.house.losses.house.floor_area
    if stated is None:
        yield look.wants("heated_floor_area", words="the heated floor area as stated")
    elif isnan(stated) or isnan(rooms):
        yield look.wants("heated_floor_area", stated, rooms)
    else:
        apart = abs(float(rooms) - float(stated)) / float(stated)
        if apart > look.limit + 1e-9:
            to = set_to("heated_floor_area", look.text(float(rooms), d.AREA))
            missing = "; a hall, stair or closet may be missing" if float(rooms) < float(stated) else ""
            yield look.found(
                "heated_floor_area",
                f"The rooms add to {look.say(rooms)} of floor, but the house is stated as "
                f"{look.say(stated)}{missing}.",
                rooms,
                (Mend("Add the room that is missing."), Mend("Correct the stated area.", (to,))),
                Weight.MUST_FIX if apart > look.limit_at(1) + 1e-9 else None,
            )


@finding(
    "room-on-two-sheets",
    Weight.MUST_FIX,
    cite("", "two rooms alike in name, level and floor", JUDGMENT),
    fires="Two rooms on one level have the same name and the same floor area.",
    why="the same room counted twice doubles its load",
    mend="Take one of them out, or give them different names.",
)
def _room_on_two_sheets(look: Look) -> Found:
    seen: dict[tuple[str, str, float], Room] = {}
    for room, lost in look.house.rooms:
        key = (room.level.id, room.name.strip().lower(), round(float(lost.floor_area), 4))
        first = seen.setdefault(key, room)
        if first is room or isnan(key[2]):
            continue
        named = Mend(
            "Give them different names.", (set_to(f"rooms/{room.id}/name", f"{room.name} ({room.id})"),)
        )
        mends = [named]
        if not any(each.beyond.kind == "room" for each in room.surfaces.values()):
            mends.insert(0, Mend("Take one of them out.", ({"remove": f"rooms/{room.id}"},)))
        yield look.found(
            f"rooms/{room.id}",
            f"{room.name} stands twice on the {room.level.name.lower()} with {look.say(lost.floor_area)} "
            "of floor; it looks like the same room.",
            lost.loss,
            tuple(mends),
        )


@finding(
    "outline-not-closed",
    Weight.DECIDE,
    cite("", "a closed outline has opposite sides of equal length", JUDGMENT),
    fires="On a level whose outside walls all say by their names which way they face, opposite sides differ "
    "in length by more than {0}, and by more than 3 ft (1 m). A level that shows walls on two sides only is "
    "not checked.",
    why="every foot of 8 ft wall that is missing is 47 Btu/h at U-0.084 and 70 °F (45 W a meter of 2.4 m "
    "wall at 0.48 W/(m²·K) and 39 K)",
    mend="Add the wall that is missing, or take out the one that is counted twice.",
    limits=(Limit("outline-not-closed", "5 %", d.RATIO, "difference of opposite sides"),),
)
def _outline_not_closed(look: Look) -> Found:
    for id in look.house.losses.levels:
        level = look.house.job.levels[id]
        sides, why_not = _sides(look, level)
        if why_not:
            yield look.wants(f"levels/{id}", words=why_not)
            continue
        if all(not (sides.get(one) and sides.get(other)) for one, other in SIDES):
            # A corner room or two: the level is entered in part.
            yield look.wants(f"levels/{id}", words="the walls of the other sides")
            continue
        apart = [pair for pair in SIDES if _differ(look.limit, *(sides.get(each, 0.0) for each in pair))]
        if apart:
            said = [
                f"{_wall(look, sides, one)} to the {one} and {_wall(look, sides, other)} to the {other}"
                for one, other in apart
            ]
            yield look.found(
                f"levels/{id}",
                f"The {level.name.lower()} has {', and '.join(said)}; a wall is missing or counted twice.",
            )


def _differ(limit: float, first: float, second: float) -> bool:
    apart = abs(first - second)
    return apart > limit * max(first, second) + 1e-6 and apart > 3 * FT + 1e-6


def _wall(look: Look, sides: dict[str, float], side: str) -> str:
    return f"{look.say(sides[side], d.LENGTH)} of wall" if sides.get(side) else "no wall"


def _sides(look: Look, level: Level) -> tuple[dict[str, float], str]:
    """Length of the walls of a level by the way they face; or why it cannot be told."""
    sides: dict[str, float] = {}
    for room, _ in look.house.rooms:
        if room.level.id != level.id:
            continue
        for surface in room.surfaces.values():
            kind = surface.construction.kind
            if kind == "below-grade wall":
                return {}, "an outline, as part of the level is below grade"
            if kind != "wall" or surface.beyond.kind == "room":
                continue
            said = f"{surface.id} {surface.name}".lower()
            faces = [each for pair in SIDES for each in pair if each in said]
            if len(faces) != 1 or surface.length is None or surface.length.is_missing:
                return {}, "the length and the way it faces of each outside wall"
            sides[faces[0]] = sides.get(faces[0], 0.0) + float(surface.length)
    return sides, ""


@finding(
    "floor-or-ceiling-left-out",
    Weight.NOTE,
    cite("", "rooms of one level compared", JUDGMENT),
    fires="More than {0} of the other rooms on a level (at least two) lose heat through a floor, or through "
    "a ceiling, and this room has none.",
    why="a floor or ceiling left out is a loss left out",
    mend="Give the floor or ceiling, or see that the room has a heated one beyond it.",
    limits=(Limit("floor-or-ceiling-left-out", "80 %", d.RATIO, "share of the other rooms"),),
)
def _floor_or_ceiling_left_out(look: Look) -> Found:
    for room, _ in look.house.rooms:
        others = [each for each, _ in look.house.rooms if each.level.id == room.level.id and each is not room]
        for word, kinds in (
            ("floor", ("floor", "below-grade floor", "slab edge")),
            ("ceiling", ("ceiling",)),
        ):
            has = [each for each in others if _has(each, kinds)]
            # A room within a slab has no edge of its own, so edges alone do not tell.
            floors = [each for each in has if _has(each, ("floor", "below-grade floor", "ceiling"))]
            if (
                len(floors) >= 2
                and len(floors) > look.limit * len(others)
                and not _has(room, kinds, rooms=True)
            ):
                yield look.found(
                    f"rooms/{room.id}",
                    f"{len(floors)} of the {len(others)} other rooms on the {room.level.name.lower()} "
                    "lose heat "
                    f"through a {word}, and {room.name} has none.",
                )


def _has(room: Room, kinds: tuple[str, ...], rooms: bool = False) -> bool:
    return any(
        each.construction.kind in kinds and (rooms or each.beyond.kind not in ("room", "neighbor"))
        for each in room.surfaces.values()
    )
