"""Parts of a heating system by name: tubes and fittings, emitters, fuels, efficiency of boilers.

Every number is a leaf with its row of the catalog, its source and the rows beside it.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from heatledger.catalog.loader import Table, figure_of, load_table
from heatledger.catalog.tubes import (
    FAMILIES,
    FITTING_KINDS,
    Family,
    TubeRow,
    family_of,
    fitting_lengths,
    nearest_tubes,
    roughness_of,
    tube,
    tubes,
    tubes_of,
)
from heatledger.ledger import dimensions as d
from heatledger.ledger.dimensions import Dimension
from heatledger.ledger.figures import Figure

__all__ = [
    "EMITTER_TABLES", "FAMILIES", "FITTING_KINDS", "EmitterRow", "Family", "TubeRow", "efficiency_rows",
    "emitter_row", "emitter_rows", "family_of", "fitting_lengths", "heat_content_of", "nearest_tubes",
    "roughness_of", "tube", "tubes", "tubes_of",
]  # fmt: skip

EMITTER_TABLES = {
    "fin_tube": "fin-tube baseboard",
    "iron_baseboard": "cast-iron baseboard",
    "panel_radiators": "panel radiator",
    "iron_columns": "cast-iron radiator",
    "iron_tubes": "cast-iron radiator",
}
"""Tables of emitters, and the kind that a job calls their rows."""

_COLUMNS: dict[str, tuple[str, Dimension, str]] = {
    "rating": ("rating", d.HEAT_PER_LENGTH, "rated output per length"),
    "output": ("output", d.HEAT_RATE, "rated output"),
    "rated_water": ("water", d.TEMPERATURE, "mean water of the rating"),
    "rated_supply": ("supply", d.TEMPERATURE, "supply of the rating"),
    "rated_return": ("return", d.TEMPERATURE, "return of the rating"),
    "rated_air": ("air", d.TEMPERATURE, "air of the rating"),
    "rated_flow": ("flow", d.VOLUME_FLOW, "flow of the rating"),
    "exponent": ("exponent", d.RATIO, "exponent"),
    "flow_exponent": ("flow_exponent", d.RATIO, "exponent of flow"),
    "heating_effect": ("heating_effect", d.RATIO, "heating-effect factor"),
    "water_per": ("content", d.AREA, "water in each length"),
    "emission": ("emission", d.HEAT_FLUX, "emission of a square foot"),
}


@dataclass(frozen=True)
class EmitterRow:
    """An emitter of the catalog; what its kind has not is None.

    ``rating`` is per length, ``output`` and ``water`` per piece. A radiator of sections has
    ``section_edr``, ``section_water`` and the ``emission`` of one square foot at ``rated_water``.
    """

    key: str
    name: str
    kind: str
    table: str
    rating: Figure | None = None
    output: Figure | None = None
    rated_water: Figure | None = None
    rated_supply: Figure | None = None
    rated_return: Figure | None = None
    rated_air: Figure | None = None
    rated_flow: Figure | None = None
    exponent: Figure | None = None
    flow_exponent: Figure | None = None
    heating_effect: Figure | None = None
    water: Figure | None = None
    water_per: Figure | None = None
    section_edr: Figure | None = None
    section_water: Figure | None = None
    emission: Figure | None = None


def emitter_row(key: str) -> EmitterRow | None:
    """The emitter of this key, or None."""
    for name in EMITTER_TABLES:
        # The first word of a key tells its table, so that only one is read.
        if key.startswith(_FIRST_WORDS[name]) and key in _emitters_in(name):
            return _emitters_in(name)[key]
    return None


_FIRST_WORDS = {
    "fin_tube": ("fin-",),
    "iron_baseboard": ("iron-",),
    "panel_radiators": ("panel-",),
    "iron_columns": ("column-", "window-", "wall-"),
    "iron_tubes": ("tube-",),
}


def emitter_rows() -> dict[str, EmitterRow]:
    """Every emitter of the catalog by its key."""
    return {key: row for name in EMITTER_TABLES for key, row in _emitters_in(name).items()}


@cache
def _emitters_in(name: str) -> dict[str, EmitterRow]:
    table = load_table(name)
    if name not in ("iron_columns", "iron_tubes"):
        return {
            key: EmitterRow(key, row.name, EMITTER_TABLES[name], name, **_figures(table, key))
            for key, row in table.rows.items()
        }
    square_foot = _figures(load_table("iron_rating"), "square-foot")
    return {
        key: EmitterRow(
            key, row.name, EMITTER_TABLES[name], name, **square_foot,
            section_edr=figure_of(table, key, "edr", d.AREA, "square feet of a section"),
            section_water=figure_of(table, key, "water", d.WATER_VOLUME, "water in a section"),
        )
        for key, row in table.rows.items()
    }  # fmt: skip


def _figures(table: Table, key: str) -> dict[str, Figure]:
    found = {
        field: figure_of(table, key, column, dimension, words)
        for field, (column, dimension, words) in _COLUMNS.items()
        if column in table.columns and not (field == "rated_water" and "output" in table.columns)
    }
    if "output" in table.columns:
        found["water"] = figure_of(table, key, "water", d.WATER_VOLUME, "water in it")
    return found


@cache
def heat_content_of(fuel: str) -> Figure | None:
    """Heat in a volume of natural gas, propane or oil; None for electricity, which is heat by itself.

    Raises ``KeyError`` for another fuel.
    """
    name, key = {
        "natural gas": ("gas_heat", "natural-gas"),
        "propane": ("liquid_heat", "propane"),
        "oil": ("liquid_heat", "oil"),
        "electricity": ("", ""),
    }[fuel]
    return figure_of(load_table(name), key, "heat_content", d.HEAT_CONTENT, "heat content") if name else None


@cache
def efficiency_rows() -> dict[str, dict[str, Figure]]:
    """Efficiency of a condensing boiler by the water that comes back, cool to warm.

    Each row has ``return`` (a temperature) and ``efficiency`` (a ratio).
    """
    table = load_table("condensing_efficiency")
    return {
        key: {
            "return": figure_of(table, key, "return", d.TEMPERATURE, "return water"),
            "efficiency": figure_of(table, key, "efficiency", d.RATIO, "efficiency"),
        }
        for key in table.rows
    }
