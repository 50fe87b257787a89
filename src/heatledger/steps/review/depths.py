"""Findings on what lies in the ground: depths, the width of a basement, soil, a floor left out."""

from __future__ import annotations

from collections.abc import Iterator
from math import isnan, sqrt

from heatledger.job.model import Room, Surface, Unheated
from heatledger.ledger import dimensions as d
from heatledger.ledger.figures import Figure
from heatledger.ledger.findings import Finding, Mend, NotChecked, Weight
from heatledger.ledger.sources import JUDGMENT, SEEN, cite
from heatledger.ledger.units import UNITS
from heatledger.steps.review.house import is_called, typed_of
from heatledger.steps.review.kinds import Limit, Look, finding, set_to
from heatledger.steps.review.readings import other_lengths
from heatledger.steps.surfaces import floor_area_of, gross_area

Found = Iterator[Finding | NotChecked]
BURIED = ("basement", "cellar", "crawl")
SHALLOW = 0.15
"""Depths below half a foot are no reading of a depth that was typed large, m."""


def _in_ground(look: Look) -> Iterator[tuple[str, Room | Unheated, Surface]]:
    """Surfaces to the ground, by path, each where it is given."""
    for path, space in look.house.spaces:
        for each in space.surfaces.values():
            if each.beyond.kind == "ground" and not each.from_other:
                yield f"{path}/surfaces/{each.id}", space, each


@finding(
    "below-grade-too-deep",
    Weight.DECIDE,
    cite("", "depths of basements of dwellings", JUDGMENT),
    fires="A wall or floor below grade lies deeper than {0}. The deepest of each room or space is told.",
    why="the deeper, the less it loses: 66 in (1.7 m) read as 66 ft (20 m) takes nearly all of the loss away",
    mend="Measure the depth below grade again, with its unit.",
    limits=(Limit("below-grade-too-deep", "12 ft", d.LENGTH, "deepest wall or floor"),),
)
def _below_grade_too_deep(look: Look) -> Found:
    deepest: dict[str, tuple[str, str, Figure, Surface]] = {}
    for path, space, surface in _in_ground(look):
        word, depth = ("bottom", surface.bottom) if surface.bottom is not None else ("depth", surface.depth)
        if depth is None:
            continue
        if isnan(depth):
            yield look.wants(path, depth)
            continue
        home = path.split("/surfaces/")[0]
        if home not in deepest or float(depth) > float(deepest[home][2]):
            deepest[home] = (f"{path}/{word}", space.name, depth, surface)
    for entry, name, depth, surface in deepest.values():
        if float(depth) > look.limit + 1e-6:
            least = max(SHALLOW, float(surface.top) + 0.01 if surface.top is not None else 0.0)
            texts = other_lengths(depth, least, look.limit)
            mends = [Mend(f"Read it as {each}.", (set_to(entry, each),)) for each in texts]
            yield look.found(
                entry.rpartition("/")[0],
                f"{surface.name}, {name}, reaches {look.say(depth)} below grade.",
                depth,
                (*mends, Mend(look.kind.mend)),
            )


@finding(
    "basement-width-odd",
    Weight.DECIDE,
    cite("HOF-ch18", "shortest width of the basement", SEEN),
    fires="The shortest width given with a floor below grade is less than {0}, or more than {1} of the side "
    "of a square as large as the largest floor of the house.",
    why="the formula takes the shortest width of the whole basement, not a side of the room or its area",
    mend="Give the shortest width of the whole basement.",
    limits=(
        Limit("basement-width-odd", "5 ft", d.LENGTH, "least width"),
        Limit("basement-width-odd-wide", "115 %", d.RATIO, "width against the side of a square"),
    ),
)
def _basement_width_odd(look: Look) -> Found:
    square = sqrt(_footprint(look))
    most = look.limit_at(1) * square
    for path, space, surface in _in_ground(look):
        width = surface.width
        if surface.construction.kind != "below-grade floor" or width is None:
            continue
        if isnan(width) or isnan(square):
            yield look.wants(path, width, words="the floor areas of the house" if isnan(square) else "")
        elif not look.limit - 1e-6 <= float(width) <= most + 1e-6:
            texts = other_lengths(width, look.limit, most)
            mends = [Mend(f"Read it as {each}.", (set_to(f"{path}/width", each),)) for each in texts]
            if float(width) > most and square >= look.limit:
                to = look.text(square, d.LENGTH)
                mends.append(Mend(f"Until then, take a square, {to}.", (set_to(f"{path}/width", to),)))
            yield look.found(
                path,
                f"{surface.name}, {space.name}: the shortest width is given as {look.say(width)}; the "
                f"largest floor of the house, were it square, is {look.say(square, d.LENGTH)} wide.",
                width,
                (*mends, Mend(look.kind.mend)),
            )


def _footprint(look: Look) -> float:
    """Floor of the largest level, unheated space, or all that lies on the ground, m²."""
    found = [0.0]
    for id in look.house.losses.levels:
        rooms = [lost for room, lost in look.house.rooms if room.level.id == id]
        found.append(sum(float(each.floor_area) for each in rooms))
    for each in look.house.job.unheated.values():
        area = floor_area_of(each)
        found += [float(area)] if area is not None else []
    below = [
        gross_area(surface, space) for _, space, surface in _in_ground(look)
        if surface.construction.kind == "below-grade floor"
    ]  # fmt: skip
    found.append(sum(float(each) for each in below if each is not None))
    known = [each for each in found if not isnan(each)]
    return max(known) if max(known) > 0 else float("nan")


@finding(
    "soil-out-of-table",
    Weight.DECIDE,
    cite("HOF-ch26", "Table 8, soils from 0.78 to 2.25 W/(m·K)", SEEN),
    fires="The conductivity of the soil is more than {0} or less than {1}. It is a note where nothing of the "
    "house lies in the ground.",
    why="design values of soils run from 0.45 to 1.3 Btu/(h·ft·°F) (0.78 to 2.25 W/(m·K)); only rock is "
    "above them",
    mend="Take 0.8 Btu/(h·ft·°F) (1.4 W/(m·K)), or the row of the soil.",
    limits=(
        Limit("soil-out-of-table", "2.5 W/(m·K)", d.CONDUCTIVITY, "most of a soil"),
        Limit("soil-out-of-table-low", "0.4 W/(m·K)", d.CONDUCTIVITY, "least of a soil"),
    ),
)
def _soil_out_of_table(look: Look) -> Found:
    soil = look.house.job.site.soil_conductivity
    used = any(True for _ in _in_ground(look))
    if isnan(soil):
        if used:
            yield look.wants("site/soil_conductivity", soil)
        return
    low, high = look.limit_at(1) * (1 - 1e-9), look.limit * (1 + 1e-9)
    if low <= float(soil) <= high:
        return
    number, unit = typed_of(soil)
    mends: list[Mend] = []
    tried = [(number / 10, unit)] + ([(number / 12, unit)] if "ft" in unit else [])
    for value, each in tried:
        if unit in UNITS and low <= UNITS[unit].to_si(value) <= high and not mends:
            text = f"{value:.3g} {each}"
            mends.append(Mend(f"Read it as {text}.", (set_to("site/soil_conductivity", text),)))
    usual = "0.8 Btu/(h·ft·°F)" if "ft" in look.units.shown(d.CONDUCTIVITY).unit.text else "1.4 W/(m·K)"
    usually = (set_to("site/soil_conductivity", usual),)
    mends.append(Mend(f"Take {usual}, as the basement tables do.", usually))
    yield look.found(
        "site/soil_conductivity",
        f"The soil is given as {look.say(soil)}; no soil of the table passes that "
        f"{'much' if float(soil) > high else 'little'}.",
        soil,
        tuple(mends),
        None if used else Weight.NOTE,
    )


@finding(
    "buried-space-without-ground",
    Weight.NOTE,
    cite("HOF-ch18", "losses below grade", SEEN),
    fires="An unheated basement, cellar or crawlspace (by its name) has no surface to the ground and no slab "
    "edge.",
    why="the ground is warmer than the air on the design day, and keeps such a space warmer",
    mend="Give it the floor on the ground, and the walls below grade; bare earth is a floor too.",
)
def _buried_space_without_ground(look: Look) -> Found:
    for id, space in look.house.job.unheated.items():
        lies = any(
            each.beyond.kind == "ground" or each.construction.kind == "slab edge"
            for each in space.surfaces.values()
        )
        if is_called(BURIED, id, space.name) and not lies:
            temperature = look.house.losses.unheated[id].temperature
            comes = "" if isnan(temperature) else f"; it comes to {look.say(temperature)}"
            yield look.found(
                f"unheated/{id}", f"{space.name} shows nothing toward the ground{comes}.", temperature
            )
