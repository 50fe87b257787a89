"""What the section through the house shows: read from what its walls, floors and ceilings look onto."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from heatledger.drawings.figure_words import amount, without_unit
from heatledger.drawings.house_section import Layer, Stack
from heatledger.job.model import Beyond
from heatledger.ledger.dimensions import LENGTH
from heatledger.ledger.figures import Figure
from heatledger.ledger.presets import Preset
from heatledger.ledger.show import show
from heatledger.ledger.units import UNITS
from heatledger.steps.design import Design
from heatledger.steps.losses import RoomLoss
from heatledger.steps.surfaces import SurfaceLoss

_LEAST_TO_STAND_IN = UNITS["ft"].to_si(5.0)


def house_view(design: Design, units: Preset) -> Stack:
    """The floors from the top, what lies under the lowest, and what is under the roof."""
    losses, levels = design.losses, _top_down(design)
    onto, above = _under_and_over(levels)
    layers = [
        Layer(_range([each.indoor for each in rooms], units), losses.levels[id].name, buried=_buried(rooms))
        for id, rooms in levels
    ]
    under, base = _under(onto, design, units)
    attic = losses.unheated[above.id].temperature if above and above.kind == "unheated" else None
    outdoor = losses.site.outdoor
    return Stack(
        (*layers, *under),
        "not given" if outdoor.is_missing else show(outdoor, units),
        base,
        "" if attic is None else _text(attic, units),
    )


def drawn_spaces(design: Design) -> set[str]:
    """The unheated spaces that the section has room for: under the lowest floor, and under the roof."""
    sides = _under_and_over(_top_down(design))
    return {each.id for each in sides if each is not None and each.kind == "unheated"}


def _under_and_over(levels: list[tuple[str, list[RoomLoss]]]) -> tuple[Beyond | None, Beyond | None]:
    """What most of the lowest floor looks onto, and most of the ceilings."""
    onto = _most([_kept(room, each) for _, rooms in levels[-1:] for room, each in _of("floor", rooms)])
    every = [room for _, rooms in levels for room in rooms]
    above = _most([_kept(room, each) for room, each in _of("ceiling", every) if each.beyond != onto])
    return onto, above


def _top_down(design: Design) -> list[tuple[str, list[RoomLoss]]]:
    """Levels with their rooms from the top; a job lists them from the ground unless its floors say else."""
    levels = [
        (id, [each for each in design.losses.rooms.values() if each.level == id])
        for id in design.losses.levels
    ]
    levels.sort(key=lambda each: _buried(each[1]), reverse=True)
    if len(levels) > 1 and not _buried(levels[0][1]) and _height(levels[0][1]) > _height(levels[-1][1]):
        return levels
    return levels[::-1]


def _height(rooms: list[RoomLoss]) -> float:
    """How much a level looks like the top: area under a roof less area over the ground."""
    up = _areas(rooms, "ceiling", lambda beyond: beyond.kind in ("outdoors", "unheated"))
    return up - _areas(rooms, "floor", lambda beyond: beyond.kind in ("outdoors", "unheated", "ground"))


def _buried(rooms: list[RoomLoss]) -> bool:
    """Whether more of its walls faces ground than outdoors."""
    ground = _areas(rooms, "walls", lambda beyond: beyond.kind == "ground")
    return ground > _areas(rooms, "walls", lambda beyond: beyond.kind == "outdoors")


def _areas(rooms: list[RoomLoss], cause: str, wanted: Callable[[Beyond], bool]) -> float:
    return sum(_kept(room, each)[1] for room, each in _of(cause, rooms) if wanted(each.beyond))


def _of(cause: str, rooms: list[RoomLoss]) -> Iterator[tuple[RoomLoss, SurfaceLoss]]:
    """The surfaces of one cause that lead out of the heated house."""
    for room in rooms:
        for each in room.surfaces.values():
            if each.cause == cause and each.beyond.kind != "room":
                yield room, each


def _kept(room: RoomLoss, surface: SurfaceLoss) -> tuple[Beyond, float]:
    """What a surface looks onto, and its area; the edge of a slab stands for the floor of its room."""
    if surface.net_area is None:
        return Beyond("slab"), amount(room.floor_area)
    return surface.beyond, amount(surface.gross_area if surface.gross_area is not None else surface.net_area)


def _most(onto: list[tuple[Beyond, float]]) -> Beyond | None:
    """What most of the area looks onto; None where nothing is said."""
    areas: dict[Beyond, float] = {}
    for beyond, area in onto:
        areas[beyond] = areas.get(beyond, 0.0) + area
    return max(areas, key=lambda each: areas[each]) if areas else None


def _under(onto: Beyond | None, design: Design, units: Preset) -> tuple[list[Layer], str]:
    """What lies under the lowest heated floor, and what that stands on."""
    if onto is None:
        return [], ""
    if onto.kind == "neighbor":
        each = design.job.neighbors[onto.id]
        return [Layer(_text(each.temperature, units), each.name, heated=False)], ""
    if onto.kind == "unheated":
        found = design.losses.unheated[onto.id]
        toward = {each.beyond.kind for each in found.surfaces.values()}
        # A space of which neither side is said is taken to lie in the ground.
        buried = "ground" in toward or "outdoors" not in toward
        text = _text(found.temperature, units)
        return [Layer(text, found.name, False, _is_low(onto.id, design), buried)], ""
    return [], {"slab": "slab", "outdoors": "piers"}.get(onto.kind, "")


def _is_low(id: str, design: Design) -> bool:
    """Whether nobody can stand in an unheated space, by its height or, where none is given, its name."""
    space = design.job.unheated[id]
    depths = [each.bottom for each in space.surfaces.values() if each.bottom is not None]
    level = space.level.ceiling_height if space.level is not None else None
    for height in (space.ceiling_height, level, *depths):
        if height is not None and height.dimension is LENGTH and not height.is_missing:
            return float(height) < _LEAST_TO_STAND_IN
    return "crawl" in f"{id} {space.name}".lower()


def _range(temperatures: list[Figure], units: Preset) -> str:
    """The temperatures of a level: one, or the lowest and the highest."""
    given = sorted((each for each in temperatures if not each.is_missing), key=float)
    if not given:
        return ""
    low, high = show(given[0], units), show(given[-1], units)
    return high if low == high else f"{without_unit(low, given[0], units)} to {high}"


def _text(figure: Figure, units: Preset) -> str:
    return "" if figure.is_missing else show(figure, units)
