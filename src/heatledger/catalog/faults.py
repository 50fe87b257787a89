"""What can be wrong with a table: each check gives a sentence for every fault it finds."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from itertools import pairwise
from typing import Any

from heatledger.ledger.dimensions import EDGE_LOSS, RESISTANCE, TRANSMITTANCE, Dimension
from heatledger.ledger.sources import Citation, Standing, bibliography
from heatledger.ledger.units import UNITS

KINDS = (
    "wall", "ceiling", "floor", "window", "door", "below-grade wall", "below-grade floor", "slab edge",
)  # fmt: skip
"""What a construction may be."""

QUANTITIES: dict[str, tuple[Dimension, str]] = {
    "u_value": (TRANSMITTANCE, "U-value"),
    "r_value": (RESISTANCE, "R-value"),
    "f_factor": (EDGE_LOSS, "F-factor"),
}
"""Columns that say how much heat a construction passes, with their dimension and word."""

BEST_INSULATOR = 0.019
"""W/(m·K), just below the best foam boards of the material tables; less can only be a slip."""

_HEAD = {
    "title", "source", "place", "standing", "kind", "units", "bounds", "rises", "falls", "across", "stamps",
    "rows",
}  # fmt: skip
_ROW = {"name", "source", "place", "standing", "thickness_in", "thickness_mm"}


def faults_of_head(raw: Mapping[str, Any]) -> Iterator[str]:
    """Faults of everything above the rows."""
    for key in ("title", "standing", "units", "bounds", "rows"):
        if not raw.get(key):
            yield f"it has no {key!r}"
    for key in raw:
        if key not in _HEAD:
            yield f"unknown entry {key!r}"
    for key in ("units", "bounds", "rows"):
        if key in raw and not isinstance(raw[key], dict):
            yield f"{key!r} is not a mapping"
            return
    for column, unit in raw.get("units", {}).items():
        if unit not in UNITS:
            yield f"column {column!r} has the unit {unit!r}, which is not in the table of units"
        elif column in QUANTITIES and UNITS[unit].exponents != QUANTITIES[column][0].exponents:
            yield f"column {column!r} is a {QUANTITIES[column][0]}, and {unit!r} is no unit of one"
        bounds = raw.get("bounds", {}).get(column)
        if bounds is None:
            yield f"column {column!r} has no bounds"
        elif (
            not isinstance(bounds, list) or [_number(each) for each in bounds].count(None) or len(bounds) != 2
        ):
            yield f"bounds of {column!r} are not two numbers"
    for order in ("rises", "falls"):
        for column in raw.get(order, ()):
            if column not in raw.get("units", {}):
                yield f"{column!r} {order}, but there is no such column"
    yield from _faults_of_stamps(raw)
    if raw.get("kind") and raw["kind"] not in KINDS:
        yield f"kind {raw['kind']!r} is not one of: {', '.join(KINDS)}"
    if raw.get("kind") and not any(each in QUANTITIES for each in raw.get("units", {})):
        yield f"a table of a kind needs a column {', '.join(QUANTITIES)}"


def _faults_of_stamps(raw: Mapping[str, Any]) -> Iterator[str]:
    stamps = raw.get("stamps", {})
    if not isinstance(stamps, dict):
        yield "'stamps' is not a mapping"
        return
    for column, stamp in stamps.items():
        if column not in raw.get("units", {}):
            yield f"{column!r} has a stamp, but there is no such column"
        elif not isinstance(stamp, dict) or set(stamp) - {"source", "place", "standing"}:
            yield f"the stamp of {column!r} is made of source, place and standing"
        else:
            try:
                stamp_of(stamp)
            except ValueError as fault:
                yield f"the stamp of {column!r}: {fault.args[0]}"


def faults_of_row(raw: Mapping[str, Any], number: int, key: str, cells: Any) -> Iterator[str]:
    """Faults of one row by itself."""
    where = f"row {number} ({key})"
    if not isinstance(cells, dict):
        yield f"{where}: it is not a mapping"
        return
    if not re.fullmatch(r"[a-z0-9][a-z0-9-]*", key):
        yield f"{where}: a key is made of small letters, digits and hyphens"
    if not cells.get("name"):
        yield f"{where}: it has no 'name'"
    for each in cells:
        if each not in _ROW and each not in raw["units"]:
            yield f"{where}: unknown column {each!r}"
    try:
        citation_of(raw, cells)
    except ValueError as fault:
        yield f"{where}: {fault.args[0]}"
    for column, unit in raw["units"].items():
        value = _number(cells.get(column))
        if value is None:
            yield f"{where}: {column} is {cells.get(column)!r}, not a number"
            continue
        low, high = (float(each) for each in raw["bounds"][column])
        if not low <= value <= high:
            yield f"{where}: {column} {cells[column]} {unit} is outside {low:g} to {high:g}"
    yield from _faults_of_thickness(raw, where, cells)


def _faults_of_thickness(raw: Mapping[str, Any], where: str, cells: Mapping[str, str]) -> Iterator[str]:
    for column, unit in (("thickness_in", "in"), ("thickness_mm", "mm")):
        thickness, resistance = _number(cells.get(column)), _number(cells.get("r_value"))
        if thickness is None or not resistance or "r_value" not in raw["units"]:
            continue
        meters = UNITS[unit].to_si(thickness)
        conductivity = meters / UNITS[raw["units"]["r_value"]].to_si(resistance)
        if conductivity < BEST_INSULATOR:
            yield (
                f"{where}: R {cells['r_value']} in {thickness:g} {unit} means a conductivity of "
                f"{conductivity:.4f} W/(m·K), better than any insulation"
            )


def faults_between_rows(raw: Mapping[str, Any]) -> Iterator[str]:
    """Faults of the order down the rows and across the columns, when every row is sound."""
    rows = list(raw["rows"].items())
    pairs = list(pairwise(rows))
    for order, sign in (("rises", 1), ("falls", -1)):
        for column in raw.get(order, ()):
            for (_, above), (key, below) in pairs:
                if sign * (float(below[column]) - float(above[column])) < 0:
                    yield (
                        f"{column} {order} down the table, but {key} has {below[column]} "
                        f"after {above[column]}"
                    )
    for columns in raw.get("across", ()):
        for key, cells in rows:
            values = [float(cells[each]) for each in columns]
            if values != sorted(values):
                typed = " to ".join(cells[each] for each in columns)
                yield f"{key}: {' to '.join(columns)} falls ({typed})"


def _number(text: object) -> float | None:
    try:
        return float(text) if isinstance(text, str) else None
    except ValueError:
        return None


def citation_of(raw: Mapping[str, Any], cells: Mapping[str, Any]) -> Citation:
    """The citation of a row, from its own stamp or that of the table. Raises ``ValueError``."""
    return stamp_of({key: cells.get(key, raw.get(key, "")) for key in ("source", "place", "standing")})


def stamp_of(stamp: Mapping[str, Any]) -> Citation:
    """The citation that a stamp of source, place and standing gives. Raises ``ValueError``."""
    source, standing = stamp.get("source", ""), stamp.get("standing", "")
    if standing not in Standing.__members__:
        raise ValueError(f"standing {standing!r} is not one of: {', '.join(Standing.__members__)}")
    if source and source not in bibliography():
        raise ValueError(f"source {source!r} is not in the bibliography")
    if not source and standing in ("SEEN", "SECOND_HAND", "MEMORY"):
        raise ValueError(f"a row that is {standing} must name its source")
    return Citation(source, stamp.get("place", ""), Standing[standing])
