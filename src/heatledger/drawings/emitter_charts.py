"""Emitters of a design: the water that each room needs, and its free wall to scale."""

from __future__ import annotations

from math import isfinite

from heatledger.drawings.chart import WIDE, Chart, ChartCell, cell, known, shown, unit_of
from heatledger.drawings.figure_words import enough
from heatledger.drawings.once import once_a_design
from heatledger.drawings.shapes import Drawing
from heatledger.drawings.wall_bars import WallBar, wall_bar, wall_bars
from heatledger.drawings.water_rule import RoomOnRule, span, water_rule
from heatledger.ledger.dimensions import LENGTH, TEMPERATURE
from heatledger.ledger.figures import Figure
from heatledger.ledger.presets import Preset
from heatledger.ledger.show import show
from heatledger.steps.design import Design
from heatledger.studies.side_by_side import carried

WATER, WALLS = "Lowest supply that carries each room", "On the wall, to scale"
CONDENSING = "condensing"


@once_a_design
def water_drawing(house: Design, units: Preset, width: float = WIDE, least: int = 1) -> Drawing | None:
    """Every room on the rule; None with fewer than ``least`` rooms that are known."""
    unit, rooms = units.shown(TEMPERATURE).unit, _on_rule(house, units)
    if len(rooms) < least:
        return None
    supply = house.emitters.house.supply
    setting = None if supply.is_missing else shown(supply, units, TEMPERATURE)
    words = "" if supply.is_missing else f"design supply {show(supply, units)}"
    return water_rule(WATER, rooms, setting, words, unit.text, width, _condenses(house, units))


def _on_rule(house: Design, units: Preset) -> tuple[RoomOnRule, ...]:
    """The rooms whose lowest supply is known."""
    unit = units.shown(TEMPERATURE).unit
    return tuple(
        RoomOnRule(
            str(house.job.rooms[id].name),
            shown(each.lowest_supply, units, TEMPERATURE),
            enough(each.lowest_supply, units).removesuffix(unit.text).strip(),
        )
        for id, each in house.emitters.rooms.items()
        if not each.lowest_supply.is_missing
    )


def ends_of_rule(house: Design, units: Preset) -> tuple[float, float]:
    """First and last temperature on the rule, in the reader's unit: a slider above it runs as far."""
    supply, unit = house.emitters.house.supply, units.shown(TEMPERATURE).unit
    values = [each.supply for each in _on_rule(house, units)]
    values += [] if supply.is_missing else [shown(supply, units, TEMPERATURE)]
    first, last, _ = span([each for each in values if isfinite(each)], unit.text)
    return first, last


def _condenses(house: Design, units: Preset) -> tuple[float, str] | None:
    """The supply up to which the return of the design day lies under the limit of a condensing boiler."""
    boiler, drop = house.job.system.plant.boiler, house.emitters.house.drop
    limit = boiler.return_limit if boiler is not None and boiler.kind == CONDENSING else None
    if limit is None or not known(limit, drop):
        return None
    supply = shown(float(limit) + float(drop), units, TEMPERATURE)
    return supply, f"return under {show(limit, units)}: the boiler condenses"


@once_a_design
def water_temperatures(house: Design, units: Preset, width: float = WIDE) -> Chart | None:
    """The water that each room needs; None while no room has an emitter that is known."""
    drawing = water_drawing(house, units, width)
    if drawing is None:
        return None
    rooms, supply = house.emitters.rooms, house.emitters.house.supply
    names, whole = house.job.rooms, house.emitters.house
    order = sorted((id for id, each in rooms.items() if not each.lowest_supply.is_missing),
                   key=lambda each: float(rooms[each].lowest_supply))  # fmt: skip
    said = []
    if not supply.is_missing:
        count = carried(house.emitters)
        many = f"{count} of {len(rooms)} rooms are" if count < len(rooms) else "every room is"
        said.append(f"At {show(supply, units)} supply water {many} carried.")
    if whole.set_by in names and not whole.lowest_supply.is_missing:
        said.append(f"{names[whole.set_by].name} needs {enough(whole.lowest_supply, units)}, the most.")
    rows = tuple(
        (ChartCell(str(names[id].name)), cell(rooms[id].lowest_supply, house, units),
         cell(rooms[id].needed, house, units), cell(rooms[id].given, house, units))
        for id in order
    )  # fmt: skip
    unit, heat = unit_of(units, TEMPERATURE), unit_of(units, rooms[order[0]].needed.dimension)
    head = ("Room", f"Lowest supply, {unit}", f"Needs, {heat}", f"Gets at the design supply, {heat}")
    note = "Temperatures on the rule are rounded up: they must be enough."
    return Chart("water-by-room", WATER, drawing, " ".join(said), head, rows, note)


def walls_of(house: Design, units: Preset) -> dict[str, WallBar]:
    """Rooms whose emitters go by length, by id, in feet or meters."""
    found = {}
    for id, each in house.emitters.rooms.items():
        here = [one for one in house.emitters.emitters.values() if one.room == id and one.length is not None]
        if each.needed_length is None and not here:
            continue
        lengths = [one.length for one in here if one.length is not None]
        total = sum(map(float, lengths)) if lengths and known(*lengths) else None
        suggested = any(one.suggested for one in here)
        figures = (each.free_wall, total, each.needed_length)
        wall, length, needed = (_length(one, units) for one in figures)
        text = "" if total is None else show(total, units, LENGTH, None if units.feet_and_inches else 2)
        found[id] = WallBar(str(house.job.rooms[id].name), wall, length, needed, text, suggested)
    return {id: bar for id, bar in found.items() if bar.reach > 0}


def _length(figure: Figure | float | None, units: Preset) -> float | None:
    if figure is None or (isinstance(figure, Figure) and figure.is_missing):
        return None
    return shown(figure, units, LENGTH)


@once_a_design
def wall_bars_of_rooms(house: Design, units: Preset, width: float = 200.0) -> dict[str, Drawing]:
    """One bar a room by its id, all on one scale, for the rows of a table."""
    walls = walls_of(house, units)
    longest = max((each.reach for each in walls.values()), default=0.0)
    return {id: wall_bar(each, longest, _in_words(each, units), width) for id, each in walls.items()}


def _in_words(bar: WallBar, units: Preset) -> str:
    unit = unit_of(units, LENGTH)
    pairs = (("free wall", bar.wall), ("on it", bar.length), ("needed", bar.needed))
    return ", ".join(f"{name} {value:.1f} {unit}" for name, value in pairs if value is not None)


@once_a_design
def walls_to_scale(house: Design, units: Preset, width: float = WIDE) -> Chart | None:
    """The free wall of each room with what hangs on it; None where no emitter goes by length."""
    walls = walls_of(house, units)
    if not walls:
        return None
    rooms, unit = house.emitters.rooms, unit_of(units, LENGTH)
    short = [bar.name for bar in walls.values() if _is_short(bar)]
    told = [bar for bar in walls.values() if bar.length is not None and bar.needed is not None]
    said = f"Too little hangs in {', '.join(short)}." if short else (
        "Every wall carries the length that it needs." if told else "No length is known yet."
    )  # fmt: skip
    if any(bar.suggested for bar in walls.values()):
        said += " A bar without fins is a length that is suggested and hangs nowhere yet."
    places = 2
    rows = tuple(
        (ChartCell(bar.name), cell(rooms[id].free_wall, house, units, places),
         ChartCell("" if bar.length is None else f"{bar.length:.2f}", _own_path(id, house)),
         cell(rooms[id].needed_length, house, units, places))
        for id, bar in walls.items()
    )  # fmt: skip
    head = ("Room", f"Free wall, {unit}", f"On the wall, {unit}", f"Needed, {unit}")
    drawing = wall_bars(WALLS, said, tuple(walls.values()), unit, width)
    return Chart("on-the-wall", WALLS, drawing, said, head, rows)


def _is_short(bar: WallBar) -> bool:
    return bar.length is not None and bar.needed is not None and bar.needed > bar.length * 1.005


def _own_path(room: str, house: Design) -> str:
    """The path of the length where one emitter alone stands in the room."""
    here = [each.length for each in house.emitters.emitters.values() if each.room == room]
    given = [each for each in here if each is not None]
    return house.names.path(given[0]) if len(given) == 1 else ""
