"""Findings on walls, floors and openings as they stand in the rooms."""

from __future__ import annotations

from collections.abc import Iterator
from math import isnan

from heatledger.job.model import Level, Room, Unheated
from heatledger.ledger import dimensions as d
from heatledger.ledger.findings import Finding, Mend, NotChecked, Weight
from heatledger.ledger.sources import JUDGMENT, SEEN, cite
from heatledger.steps.review.house import is_called, path_of
from heatledger.steps.review.kinds import Limit, Look, finding, set_to

Found = Iterator[Finding | NotChecked]
BASEMENT = ("basement", "cellar")
OUTER_SPACES = ("garage", "porch", "attic", "crawl", "basement", "cellar", "shed", "store")


@finding(
    "openings-over-wall",
    Weight.NOTE,
    cite("", "share of glass in one wall", JUDGMENT),
    fires="Windows and doors take more than {0} of one surface. Where they are larger than the surface, the "
    "job is refused at the door.",
    why="the wall left over is thin, and a slip in a size shows here first",
    mend="Correct the sizes, or decide that it is a glass wall.",
    limits=(Limit("openings-over-wall", "60 %", d.RATIO, "share of openings"),),
)
def _openings_over_wall(look: Look) -> Found:
    for part in look.house.own_parts:
        lost = look.house.losses.rooms[part.room.id].surfaces[part.surface.id]
        if part.opening or not part.surface.openings or lost.gross_area is None:
            continue
        openings = sum(float(each.total_area) for each in lost.openings.values())
        if openings > look.limit * float(lost.gross_area) + 1e-9:
            yield look.found(
                part.path,
                f"{part.name}: {look.say(openings, d.AREA)} of windows and doors in "
                f"{look.say(lost.gross_area)} of wall.",
                lost.gross_area,
            )


@finding(
    "opening-size-odd",
    Weight.NOTE,
    cite("", "sizes of windows in dwellings", JUDGMENT),
    fires="One window is larger than {0} or smaller than {1}.",
    why="inches read as feet make a window 144 times too large",
    mend="Type its size again, with its units; or give a group of windows by `count`.",
    limits=(
        Limit("opening-size-odd", "100 ft2", d.AREA, "largest window"),
        Limit("opening-size-odd-low", "0.8 ft2", d.AREA, "smallest window"),
    ),
)
def _opening_size_odd(look: Look) -> Found:
    for part in look.house.own_parts:
        if part.opening is None or part.construction.kind != "window":
            continue
        area = look.house.area_of(part)
        one = float(area) / float(part.opening.count)
        if one > look.limit + 1e-9 or one < look.limit_at(1) - 1e-9:
            yield look.found(
                part.path, f"{part.name} has {look.say(one, d.AREA)} of glass in one window.", area
            )


@finding(
    "floor-larger-than-room",
    Weight.DECIDE,
    cite("", "a floor is as large as its room", JUDGMENT),
    fires="The floors of a room that lose heat (on joists or below grade) add to more than its floor area "
    "by {0}.",
    why="floor counted twice is loss counted twice",
    mend="Correct the floor of the room or that of the surface.",
    limits=(Limit("floor-larger-than-room", "10 %", d.RATIO, "floor over floor area"),),
)
def _floor_larger_than_room(look: Look) -> Found:
    for room, lost in look.house.rooms:
        floors = [
            (id, each)
            for id, each in lost.surfaces.items()
            if room.surfaces[id].construction.kind in ("floor", "below-grade floor")
            and not room.surfaces[id].from_other
            and each.gross_area is not None
        ]
        total = sum(float(each.gross_area) for _, each in floors if each.gross_area is not None)
        if floors and total > (1 + look.limit) * float(lost.floor_area) + 1e-9:
            mends = [Mend("Correct the floor of the room or that of the surface.")]
            given = room.surfaces[floors[0][0]]
            if len(floors) == 1 and given.length is None:
                to = set_to(
                    f"rooms/{room.id}/surfaces/{given.id}/area", look.text(float(lost.floor_area), d.AREA)
                )
                mends.append(Mend("Make the floor as large as its room.", (to,)))
            yield look.found(
                f"rooms/{room.id}",
                f"{room.name} has {look.say(lost.floor_area)} of floor and loses heat through "
                f"{look.say(total, d.AREA)} of it.",
                lost.floor_area,
                tuple(mends),
            )


@finding(
    "rim-joist-left-out",
    Weight.DECIDE,
    cite("HOF-ch17", "walls are taken from floor to floor", SEEN),
    fires="The outside walls of every story (of two or more), or of the one story over an unheated space "
    "that has no wall to outdoors, are no more than {0} higher than the ceilings.",
    why="the band between two floors is outside wall too, about 1 ft (0.3 m) high all around",
    mend="Take the wall height from floor to floor, or add the band as a surface.",
    limits=(Limit("rim-joist-left-out", "3 in", d.LENGTH, "wall over ceiling"),),
)
def _rim_joist_left_out(look: Look) -> Found:
    gaps: dict[str, float] = {}
    for id in look.house.losses.levels:
        gap = _gap(look, look.house.job.levels[id])
        if gap is None:
            return
        gaps[id] = gap
    if not gaps or any(isnan(each) for each in gaps.values()) or max(gaps.values()) > look.limit + 1e-6:
        return
    under = _closed_space_under(look)
    if len(gaps) < 2 and not under:
        return
    level = look.house.job.levels[next(iter(gaps))]
    mends = [Mend("Take the wall height from floor to floor, or add the band as a surface.")]
    if _takes_height_of(look, level):
        to = set_to(
            f"levels/{level.id}/wall_height", look.text(float(level.ceiling_height) + 0.3048, d.LENGTH)
        )
        mends.insert(0, Mend("Add the band to the walls of the level.", (to,)))
    place = f"between the {level.name.lower()} and {under or 'the floor above'}"
    yield look.found(
        f"levels/{level.id}",
        f"The band {place} is missing: the walls are as high as the ceilings, "
        f"{look.say(level.ceiling_height)}.",
        level.wall_height,
        tuple(mends),
    )


def _gap(look: Look, level: Level) -> float | None:
    """By how much the highest outside wall of a level passes the ceiling; None when no wall has a height."""
    gaps = [
        float(surface.height) - float(room.ceiling_height)
        for room, _ in look.house.rooms
        if room.level.id == level.id
        for surface in room.surfaces.values()
        if surface.construction.kind == "wall"
        and surface.beyond.kind == "outdoors"
        and surface.height is not None
    ]
    return max(gaps) if gaps else None


def _takes_height_of(look: Look, level: Level) -> bool:
    return any(
        surface.height is not None and path_of(surface.height) == f"levels/{level.id}/wall_height"
        for room, _ in look.house.rooms
        for surface in room.surfaces.values()
    )


def _closed_space_under(look: Look) -> str:
    """Name of an unheated space below a floor that shows no wall to outdoors, or empty."""
    for room, _ in look.house.rooms:
        for each in room.surfaces.values():
            if each.construction.kind == "floor" and each.beyond.kind == "unheated":
                space = look.house.job.unheated[each.beyond.id]
                if not any(
                    one.construction.kind == "wall" and one.beyond.kind == "outdoors"
                    for one in space.surfaces.values()
                ):
                    return f"the {space.name.lower()}"
    return ""


@finding(
    "basement-wall-as-wall",
    Weight.MUST_FIX,
    cite("HOF-ch18", "Table 22", SEEN),
    fires="A basement or cellar (by its name, or by that of its level) has walls to outdoors and none below "
    "grade.",
    why="bare concrete 7 ft (2.1 m) down passes a quarter of what it does in the wind: 0.170 against 0.69 "
    "Btu/(h·ft²·°F) (0.97 against 3.9 W/(m²·K))",
    mend="Split the wall at grade, and give the lower part a construction of kind below-grade wall.",
)
def _basement_wall_as_wall(look: Look) -> Found:
    for path, space in look.house.spaces:
        names = (
            space.id,
            space.name,
            space.level.name if space.level else "",
            space.level.id if space.level else "",
        )
        kinds = {each.construction.kind for each in space.surfaces.values()}
        if not is_called(BASEMENT, *names) or "below-grade wall" in kinds:
            continue
        walls = [
            each
            for each in space.surfaces.values()
            if each.construction.kind == "wall" and each.beyond.kind == "outdoors"
        ]
        if walls:
            yield look.found(
                f"{path}/surfaces/{walls[0].id}",
                f"{walls[0].name}, {space.name}: a basement wall figured as if all of it stood in the wind.",
            )


@finding(
    "ground-methods-mixed",
    Weight.DECIDE,
    cite("HOF-ch18", "below grade to the ground, slab edges to outdoor air", SEEN),
    fires="One room or space has a floor below grade, figured to the ground, and a slab edge, figured to "
    "outdoor air.",
    why="the two count the same floor by two methods, each with a temperature of its own",
    mend="Keep one of the two; keep both only where part of the floor is at grade, as in a walk-out "
    "basement.",
)
def _ground_methods_mixed(look: Look) -> Found:
    for path, space in look.house.spaces:
        edges = [each for each in space.surfaces.values() if each.construction.kind == "slab edge"]
        floors = [each for each in space.surfaces.values() if each.construction.kind == "below-grade floor"]
        if edges and floors:
            gone = tuple({"remove": f"{path}/surfaces/{each.id}"} for each in edges)
            yield look.found(
                f"{path}/surfaces/{edges[0].id}",
                f"{space.name} has a floor below grade figured to the ground and a slab edge figured to "
                "outdoor air.",
                "",
                (Mend("Leave out the slab edge.", gone), Mend(look.kind.mend)),
            )


@finding(
    "buffer-space-as-outdoors",
    Weight.NOTE,
    cite("HOF-ch17", "unheated spaces beside rooms", SEEN),
    fires="A surface of a heated room names a garage, porch, attic, crawlspace, basement or store, and has "
    "outdoors beyond it.",
    why="a closed space without heat stands between indoors and outdoors, often near midway",
    mend="Put the unheated space beyond it, with its own surfaces and air.",
)
def _buffer_space_as_outdoors(look: Look) -> Found:
    for part in look.house.own_parts:
        said = f"{part.surface.id} {part.surface.name}".lower()
        word = next((each for each in OUTER_SPACES if each in said), "")
        if part.opening or part.surface.beyond.kind != "outdoors" or not word or _is_own(part.room, word):
            continue
        there = next(
            (id for id, each in look.house.job.unheated.items() if word in f"{id} {each.name}".lower()), ""
        )
        mends = [Mend(look.kind.mend)]
        if there:
            to = set_to(f"{part.path}/beyond", f"unheated/{there}")
            mends.insert(0, Mend(f"Put the {look.house.job.unheated[there].name.lower()} beyond it.", (to,)))
        yield look.found(
            part.path,
            f"{part.name}: the {word} beyond it is taken as outdoors.",
            part.lost.loss,
            tuple(mends),
        )


def _is_own(space: Room | Unheated, word: str) -> bool:
    """True when the space itself is the one the word names: the wall of a heated basement."""
    return word in f"{space.id} {space.name} {space.level.name if space.level else ''}".lower()
