"""Findings on sizes that do not go together: walls past their rooms, windows past their walls."""

from __future__ import annotations

from collections.abc import Iterator
from math import isnan, sqrt

from heatledger.job.model import Room
from heatledger.ledger import dimensions as d
from heatledger.ledger.findings import Finding, Mend, NotChecked, Weight
from heatledger.ledger.sources import JUDGMENT, cite
from heatledger.steps.review.house import Part, is_called
from heatledger.steps.review.kinds import Limit, Look, finding, set_to
from heatledger.steps.review.readings import is_given, other_lengths
from heatledger.steps.surfaces import SurfaceLoss

Found = Iterator[Finding | NotChecked]
FOOT = 0.3048
LONG_KINDS = ("wall", "below-grade wall", "slab edge")
SLOPED = ("slop", "pitch", "vault", "cathedral", "rafter", "dormer", "knee", "roof")
"""Words in the name of a ceiling that may be larger than the floor under it."""


@finding(
    "wall-longer-than-room",
    Weight.DECIDE,
    cite("", "a wall of a room is no longer than the room", JUDGMENT),
    fires="A wall is longer than {0} of the longer side of its room, and by more than 1 ft (0.3 m). Held "
    "against the whole outline instead are a slab edge, the only wall of a room, and every wall of a room "
    "whose sides are not given (taken {1} times as long as wide).",
    why="a wall ten times too long is a loss ten times too large, and no total shows it",
    mend="Measure the wall again, or correct the size of the room.",
    limits=(
        Limit("wall-longer-than-room", "110 %", d.RATIO, "wall over the side of its room"),
        Limit("wall-longer-than-room-shape", "4", d.COUNT, "length over width of a room without sides"),
    ),
)
def _wall_longer_than_room(look: Look) -> Found:
    for part in look.house.own_parts:
        length = part.surface.length
        if part.opening or part.construction.kind not in LONG_KINDS or length is None:
            continue
        holds = _holds(look, part)
        if isnan(length) or isnan(holds):
            yield look.wants(part.path, length, look.house.losses.rooms[part.room.id].floor_area)
        elif float(length) > max(look.limit * holds, holds + FOOT) + 1e-6:
            yield look.found(
                part.path,
                f"{part.name} is {look.say(length)} long; {_room_of(look, part, holds)}.",
                length,
                _shorter(look, part, holds),
            )


def _goes_around(part: Part) -> bool:
    """True for a slab edge, and for the only wall of its room, which may turn its corners."""
    kind = part.construction.kind
    walls = [each for each in part.room.surfaces.values() if each.construction.kind == kind]
    return kind == "slab edge" or len(walls) == 1


def _holds(look: Look, part: Part) -> float:
    """The longest such a surface can be in its room, m."""
    room = part.room
    if room.length is None or room.width is None:
        floor, shape = float(look.house.losses.rooms[room.id].floor_area), look.limit_at(1)
        return 2 * (sqrt(floor * shape) + sqrt(floor / shape))
    sides = (float(room.length), float(room.width))
    return 2 * sum(sides) if _goes_around(part) else max(sides)


def _room_of(look: Look, part: Part, holds: float) -> str:
    """What the room of a surface is that is too long for it."""
    room, outline = part.room, f"an outline of {look.say(holds, d.LENGTH)}"
    if room.length is None or room.width is None:
        floor = look.say(look.house.losses.rooms[room.id].floor_area)
        shape = f"even {look.limit_shown(1)} times as long as wide"
        return f"{room.name} has {floor} of floor, and {outline} {shape}"
    sides = f"{room.name} is {look.say(room.length)} by {look.say(room.width)}"
    return f"{sides}, with {outline}" if _goes_around(part) else sides


def _shorter(look: Look, part: Part, holds: float) -> tuple[Mend, ...]:
    """Ways to make a wall shorter, that leave room for its windows."""
    mends = [Mend(look.kind.mend)]
    lost, length = part.lost, part.surface.length
    assert isinstance(lost, SurfaceLoss) and length is not None
    share = 0.0
    if lost.openings and lost.gross_area is not None and lost.net_area is not None:
        share = 1 - float(lost.net_area) / float(lost.gross_area)
    texts = other_lengths(length, max(holds * 0.2, share * float(length)), holds * 1.001)
    mends = [*(Mend(f"Read it as {each}.", (_as_long(look, part, each),)) for each in texts), *mends]
    if part.room.length is not None and share * float(length) < holds:
        to = look.text(holds, d.LENGTH)
        mends.append(Mend(f"Make it as long as the room has place for, {to}.", (_as_long(look, part, to),)))
    return tuple(mends)


def _as_long(look: Look, part: Part, text: str) -> dict[str, object]:
    """The change that gives a surface another length, and leaves its other side."""
    other = part.surface.width if part.surface.height is None else part.surface.height
    if is_given(look, f"{part.path}/size") and other is not None:
        return dict(set_to(f"{part.path}/size", f"{text} × {look.text(float(other), d.LENGTH, 4)}"))
    return dict(set_to(f"{part.path}/length", text))


@finding(
    "ceiling-larger-than-room",
    Weight.DECIDE,
    cite("", "a flat ceiling is as large as the floor under it", JUDGMENT),
    fires="The ceilings of a room add to more than {0} of its floor; to more than {1} where one of them is a "
    "roof or a slope by its name.",
    why="ceiling counted twice is loss counted twice; a slope of 45 degrees is 1.41 times its floor",
    mend="Correct the ceiling, or the floor of the room.",
    limits=(
        Limit("ceiling-larger-than-room", "110 %", d.RATIO, "flat ceiling over floor"),
        Limit("ceiling-larger-than-room-sloped", "160 %", d.RATIO, "sloped ceiling over floor"),
    ),
)
def _ceiling_larger_than_room(look: Look) -> Found:
    for room, lost in look.house.rooms:
        given = [
            each for each in room.surfaces.values()
            if each.construction.kind == "ceiling" and not each.from_other
        ]  # fmt: skip
        areas = [lost.surfaces[each.id].gross_area for each in given]
        total, floor = sum(float(each) for each in areas if each is not None), float(lost.floor_area)
        if given and (isnan(total) or isnan(floor)):
            yield look.wants(f"rooms/{room.id}", lost.floor_area, *areas)
            continue
        sloped = any(is_called(SLOPED, each.id, each.name, each.construction.name) for each in given)
        if not total > look.limit_at(1 if sloped else 0) * floor + 1e-9:
            continue
        mends = [Mend(look.kind.mend)]
        path = f"rooms/{room.id}/surfaces/{given[0].id}"
        by_area = is_given(look, f"{path}/area") or is_given(look, f"{path}/size")
        if len(given) == 1 and by_area and not given[0].openings:
            to = look.text(floor, d.AREA)
            mends.append(Mend("Make the ceiling as large as the floor.", (set_to(f"{path}/area", to),)))
        yield look.found(
            f"rooms/{room.id}",
            f"{room.name} has {look.say(lost.floor_area)} of floor, and {look.say(total, d.AREA)} of "
            "ceiling over it.",
            lost.floor_area,
            tuple(mends),
        )


@finding(
    "opening-past-its-wall",
    Weight.DECIDE,
    cite("", "a window fits into its wall", JUDGMENT),
    fires="One window or door is wider than {0} of the length of its wall, or as much higher than the wall.",
    why="the area alone may fit where the window does not; then a width, a height or a unit is wrong",
    mend="Measure the window again, or put it into the wall it is in.",
    limits=(Limit("opening-past-its-wall", "100 %", d.RATIO, "opening against its wall"),),
)
def _opening_past_its_wall(look: Look) -> Found:
    for part in look.house.own_parts:
        opening, wall = part.opening, part.surface
        if opening is None or wall.construction.kind != "wall" or opening.width is None:
            continue
        if opening.height is None or wall.length is None or wall.height is None:
            continue
        sizes = (opening.width, opening.height, wall.length, wall.height)
        if any(isnan(each) for each in sizes):
            yield look.wants(part.path, *sizes)
            continue
        wide, high = float(opening.width), float(opening.height)
        long, tall = look.limit * float(wall.length) + 1e-6, look.limit * float(wall.height) + 1e-6
        if wide <= long and high <= tall:
            continue
        mends = [Mend(look.kind.mend)]
        if high <= long and wide <= tall:
            turned = (look.text(each, d.LENGTH, 4) for each in (high, wide))
            to = set_to(f"{part.path}/size", " × ".join(turned))
            mends.insert(0, Mend("Take the width for the height, and the height for the width.", (to,)))
        past = (
            f"{look.say(opening.width)} wide, in a wall of {look.say(wall.length)}"
            if wide > long
            else f"{look.say(opening.height)} high, in a wall {look.say(wall.height)} high"
        )
        yield look.found(part.path, f"{part.name} is {past}.", opening.width, tuple(mends))


@finding(
    "wall-height-out-of-line",
    Weight.DECIDE,
    cite("", "a floor is about 1 ft thick", JUDGMENT),
    fires="On a level, the wall height (floor to floor) is more than {0} of the ceiling height (floor to "
    "ceiling).",
    why="every wall of the level that has no height of its own takes this one",
    mend="Measure the height from floor to floor.",
    limits=(Limit("wall-height-out-of-line", "150 %", d.RATIO, "wall against ceiling"),),
)
def _wall_height_out_of_line(look: Look) -> Found:
    for id in look.house.losses.levels:
        level = look.house.job.levels[id]
        wall, ceiling = level.wall_height, level.ceiling_height
        if isnan(wall) or isnan(ceiling):
            yield look.wants(f"levels/{id}", wall, ceiling)
        elif float(wall) > look.limit * float(ceiling) + 1e-6:
            path = f"levels/{id}/wall_height"
            texts = other_lengths(wall, float(ceiling), float(ceiling) * min(look.limit, 1.25))
            usual = look.text(float(ceiling) + FOOT, d.LENGTH)
            mends = [Mend(f"Read it as {each}.", (set_to(path, each),)) for each in texts]
            if float(ceiling) + FOOT <= look.limit * float(ceiling):
                mends.append(
                    Mend(
                        f"Take it {look.say(FOOT, d.LENGTH)} over the ceiling, {usual}.",
                        (set_to(path, usual),),
                    )
                )
            yield look.found(
                f"levels/{id}",
                f"On the {level.name.lower()} the walls are {look.say(wall)} high from floor to floor, and "
                f"the ceiling is at {look.say(ceiling)}.",
                wall,
                (*mends, Mend(look.kind.mend)),
            )


@finding(
    "room-very-long",
    Weight.DECIDE,
    cite("", "shapes of rooms in dwellings", JUDGMENT),
    fires="A room that is lived in is more than {0} times as long as wide.",
    why="a side typed ten times too long makes the air and the floor ten times too large",
    mend="Measure the room again; or mark it as not lived in, where it is a hall.",
    limits=(Limit("room-very-long", "6", d.COUNT, "length over width"),),
)
def _room_very_long(look: Look) -> Found:
    for room, _ in look.house.rooms:
        if room.length is None or room.width is None or not room.habitable:
            continue
        short, long = sorted((float(room.length), float(room.width)))
        if isnan(short) or isnan(long):
            yield look.wants(f"rooms/{room.id}", room.length, room.width)
        elif long > look.limit * short * (1 + 1e-9):
            yield look.found(
                f"rooms/{room.id}",
                f"{room.name} is {look.say(room.length)} by {look.say(room.width)}, {long / short:.3g} times "
                "as long as wide.",
                room.length,
                (*_less_long(look, room, short), Mend(look.kind.mend)),
            )


def _less_long(look: Look, room: Room, short: float) -> tuple[Mend, ...]:
    assert room.length is not None and room.width is not None
    first = float(room.length) > short
    long, other = (room.length, room.width) if first else (room.width, room.length)
    texts = other_lengths(long, short, short * look.limit)
    kept = look.text(float(other), d.LENGTH, 4)
    mends = []
    for each in texts:
        size = f"{each} × {kept}" if first else f"{kept} × {each}"
        mends.append(Mend(f"Read {look.say(long)} as {each}.", (set_to(f"rooms/{room.id}/size", size),)))
    hall = set_to(f"rooms/{room.id}/habitable", "no")
    return (*mends, Mend("Mark it as a room not lived in.", (hall,)))
