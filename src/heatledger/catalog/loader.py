"""Read the tables of the catalog, each of which checks itself.

A table is a YAML file of this folder: title, source, place and standing (stamped on every row unless the
row names its own, or ``stamps`` names another for a column), the unit of each column, bounds, which
columns rise or fall down the rows, and the rows by key. Values are kept as the text in the file, in the
unit the source prints.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from importlib import resources
from typing import Any

from heatledger.catalog.faults import (
    QUANTITIES,
    citation_of,
    faults_between_rows,
    faults_of_head,
    faults_of_row,
    stamp_of,
)
from heatledger.catalog.plain import plain_table
from heatledger.ledger.dimensions import AIR_CHANGES, Dimension
from heatledger.ledger.figures import Figure, Leaf, LeafKind, leaf
from heatledger.ledger.sources import Citation
from heatledger.ledger.units import UNITS

CONSTRUCTION_TABLES = (
    "walls", "ceilings", "floors", "windows_operable", "windows_fixed", "skylights", "doors", "wood_door",
    "below_grade", "below_grade_floors", "slab_edges", "code_slab_edges",
)  # fmt: skip


class CatalogError(Exception):
    """A table that is not sound; the message names every fault in it."""


@dataclass(frozen=True)
class Row:
    """One row: its key, what it is called, the text of each column, and its source.

    ``stamps`` holds the citations of columns that do not come from the source of the row.
    """

    key: str
    name: str
    typed: Mapping[str, str]
    citation: Citation
    stamps: Mapping[str, Citation]


@dataclass(frozen=True)
class Table:
    """A table of the catalog. ``columns`` gives the unit text of each column."""

    name: str
    title: str
    citation: Citation
    kind: str
    columns: Mapping[str, str]
    rows: Mapping[str, Row]


@dataclass(frozen=True)
class ConstructionRow:
    """A construction of the catalog: one number that says how much heat it passes.

    ``quantity`` is ``u_value``, ``r_value`` or ``f_factor``; ``typed`` its text in ``unit``; ``beside``
    the neighboring rows of its table in words.
    """

    key: str
    name: str
    kind: str
    quantity: str
    typed: str
    unit: str
    citation: Citation
    beside: tuple[str, ...]
    table: str


@cache
def load_table(name: str) -> Table:
    """The table of this name. Raises ``CatalogError`` when there is none or it is not sound."""
    return table_from(text_of_table(name), name)


@cache
def text_of_table(name: str) -> str:
    """The file of a table, unread. Raises ``CatalogError`` when there is none."""
    place = resources.files("heatledger.catalog").joinpath(name + ".yaml")
    # A name that is not plain could lead out of the folder.
    if not name.isidentifier() or not place.is_file():
        raise CatalogError(f"the catalog has no table called {name!r}")
    return place.read_text("utf-8")


def table_from(text: str, name: str) -> Table:
    """A table from the text of its file. Raises ``CatalogError`` with every fault found."""
    raw = _read(text, name)
    faults = list(faults_of_head(raw))
    if faults:
        raise CatalogError(_message(name, faults))
    rows, faults = {}, []
    stamps = {column: stamp_of(stamp) for column, stamp in raw.get("stamps", {}).items()}
    for number, (key, cells) in enumerate(raw["rows"].items(), 1):
        faults += faults_of_row(raw, number, key, cells)
        if not faults:
            typed = {each: cells[each] for each in raw["units"]}
            rows[key] = Row(key, cells["name"], typed, citation_of(raw, cells), stamps)
    faults = faults or list(faults_between_rows(raw))
    if faults:
        raise CatalogError(_message(name, faults))
    return Table(name, raw["title"], citation_of(raw, {}), raw.get("kind", ""), raw["units"], rows)


def _message(name: str, faults: list[str]) -> str:
    return f"catalog table {name!r}: " + "; ".join(faults)


def _read(text: str, name: str) -> dict[str, Any]:
    # Every scalar is kept as text, so that a value stays as the source prints it (0.70, not 0.7).
    plain = plain_table(text)
    if plain is not None:
        return plain
    from ruamel.yaml import YAML
    from ruamel.yaml.error import YAMLError

    try:
        raw = YAML(typ="base", pure=True).load(text)
    except YAMLError as fault:
        raise CatalogError(f"catalog table {name!r} is not YAML: {fault}") from None
    if not isinstance(raw, dict):
        raise CatalogError(f"catalog table {name!r} is empty or is not a mapping")
    return raw


@cache
def constructions() -> dict[str, ConstructionRow]:
    """Every construction of the catalog by its key. Raises ``CatalogError`` when two tables share one."""
    found: dict[str, ConstructionRow] = {}
    for name in CONSTRUCTION_TABLES:
        for key, row in _constructions_in(name).items():
            if key in found:
                raise CatalogError(f"{key!r} stands in two tables: {found[key].table} and {name}")
            found[key] = row
    return found


def construction(key: str) -> ConstructionRow | None:
    """The construction of this key, or None; only the tables whose text holds the key are read."""
    for name in CONSTRUCTION_TABLES:
        if key in text_of_table(name) and key in _constructions_in(name):
            return _constructions_in(name)[key]
    return None


@cache
def _constructions_in(name: str) -> dict[str, ConstructionRow]:
    table = load_table(name)
    quantity = next(each for each in table.columns if each in QUANTITIES)
    return {
        key: ConstructionRow(
            key, row.name, table.kind, quantity, row.typed[quantity], table.columns[quantity],
            row.citation, _beside(table, key, quantity), name,
        )
        for key, row in table.rows.items()
    }  # fmt: skip


def _beside(table: Table, key: str, column: str) -> tuple[str, ...]:
    keys = list(table.rows)
    here = keys.index(key)
    near = [keys[each] for each in (here - 1, here + 1) if 0 <= each < len(keys)]
    return tuple(f"{table.rows[each].name} {table.rows[each].typed[column]}" for each in near)


def row_leaf(row: ConstructionRow, words: str = "") -> Figure:
    """The number of a construction as a leaf; ``words`` say what it is where it is used."""
    dimension, word = QUANTITIES[row.quantity]
    column = row.quantity.replace("_", "-")
    return _cell(
        dimension, f"catalog/{row.table}/{row.key}/{column}", words or word, row.typed, row.unit,
        row.citation, row.beside,
    )  # fmt: skip


def air_changes_rows() -> dict[str, Figure]:
    """Air changes of a room by the sides that have windows or outside doors: the leaf of each row."""
    table = load_table("air_changes_by_sides")
    return {
        key: _cell(
            AIR_CHANGES, f"catalog/{table.name}/{key}/changes", "air changes", row.typed["changes"],
            table.columns["changes"], row.citation, _beside(table, key, "changes"),
        )
        for key, row in table.rows.items()
    }  # fmt: skip


def row_for_sides(sides: int) -> str:
    """Key of the row for a number of exposed sides; more than three count as three.

    Raises ``ValueError`` for a negative number.
    """
    if sides < 0:
        raise ValueError(f"a room cannot have {sides} exposed sides")
    return ("no-side", "one-side", "two-sides", "three-sides")[min(sides, 3)]


def figure_of(table: Table, key: str, column: str, dimension: Dimension, words: str) -> Figure:
    """The value of one column of a row as a leaf; beside it the rows above and below in words."""
    row = table.rows[key]
    return _cell(
        dimension, f"catalog/{table.name}/{key}/{column.replace('_', '-')}", words, row.typed[column],
        table.columns[column], row.stamps.get(column, row.citation), _beside(table, key, column),
    )  # fmt: skip


def _cell(
    dimension: Dimension,
    path: str,
    words: str,
    typed: str,
    unit: str,
    citation: Citation,
    beside: tuple[str, ...],
) -> Figure:
    places = len(typed.partition(".")[2])
    origin = Leaf(
        LeafKind.CATALOG, path, words, typed=typed, unit=unit, typed_value=float(typed), places=places,
        citation=citation, beside=beside,
    )  # fmt: skip
    return leaf(UNITS[unit].to_si(float(typed), dimension.absolute), dimension, origin)
