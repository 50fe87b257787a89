"""Room by room for a spreadsheet: what each room loses by cause, and what it is given, as CSV and XLSX."""

from __future__ import annotations

from heatledger.drawings.hatches import CAUSE_NAMES
from heatledger.ledger import dimensions as d
from heatledger.ledger.dimensions import Dimension
from heatledger.ledger.figures import Figure
from heatledger.ledger.presets import Preset
from heatledger.papers.cells import CellValue, TableFile, csv_of, workbook_of
from heatledger.papers.printing import Printing
from heatledger.papers.words import floors_word
from heatledger.steps.design import Design
from heatledger.steps.surfaces import CAUSES

TITLE = "Room by room"
NAME, NUMBER = 24, 14


def rooms_csv(printing: Printing) -> bytes:
    """The table as CSV."""
    return csv_of(rooms_table(printing))


def rooms_workbook(printing: Printing) -> bytes:
    """The table as XLSX."""
    return workbook_of(rooms_table(printing))


def rooms_table(printing: Printing) -> TableFile:
    """A row a room and one for the house, in the reader's units, each with one decimal more than on paper.

    A figure without a value is a blank cell, never 0; a cause that a room lacks is 0.
    """
    house, units = printing.design, printing.units
    heat = units.shown(d.HEAT_RATE).unit.text
    columns = [
        ("Room", NAME), (floors_word(units).capitalize(), NAME),
        (_with_unit("Floor area", d.AREA, units), NUMBER),
        (_with_unit("Indoors", d.TEMPERATURE, units), NUMBER),
        *((f"{CAUSE_NAMES[each].capitalize()}, {heat}", NUMBER) for each in CAUSES),
        (f"Room loss, {heat}", NUMBER), (_with_unit("Per area", d.HEAT_FLUX, units), NUMBER),
        (f"Given by emitters, {heat}", NUMBER), ("Given, % of needed", NUMBER),
        (_with_unit("Lowest supply water that carries it", d.TEMPERATURE, units), NUMBER),
    ]  # fmt: skip
    rows = [_row(house, id, units) for id in house.losses.rooms]
    rows.append(_house_row(house, units))
    return TableFile("Rooms", printing.head(TITLE), columns, rows)


def _with_unit(words: str, dimension: Dimension, units: Preset) -> str:
    return f"{words}, {units.shown(dimension).unit.text}"


def _row(house: Design, id: str, units: Preset) -> list[CellValue]:
    room, found = house.losses.rooms[id], house.results
    levels = house.job.levels
    causes = [room.causes[each].loss if each in room.causes else None for each in CAUSES]
    given, share, supply = (
        found.get(f"rooms/{id}/{each}") for each in ("given", "given_share", "lowest_supply")
    )
    return [
        room.name, str(levels[room.level].name) if room.level in levels else "",
        *(_number(each, units) for each in (room.floor_area, room.indoor)),
        *(0.0 if each is None else _number(each, units) for each in causes),
        *(_number(each, units) for each in (room.loss, room.per_area, given)),
        _percent(share), _number(supply, units),
    ]  # fmt: skip


def _house_row(house: Design, units: Preset) -> list[CellValue]:
    whole, given = house.losses.house, house.results.get("house/given")
    causes = [whole.causes[each].loss if each in whole.causes else None for each in CAUSES]
    return [
        "House", "", _number(whole.floor_area, units), None,
        *(0.0 if each is None else _number(each, units) for each in causes),
        *(_number(each, units) for each in (whole.loss, whole.per_area, given)), None, None,
    ]  # fmt: skip


def _number(figure: Figure | None, units: Preset) -> float | None:
    """A figure in the reader's unit, with one decimal more than its column on paper."""
    if figure is None or figure.is_missing:
        return None
    shown = units.shown(figure.dimension)
    return round(shown.unit.from_si(float(figure), figure.dimension.absolute), shown.places + 1)


def _percent(share: Figure | None) -> float | None:
    return None if share is None or share.is_missing else round(float(share) * 100, 1)
