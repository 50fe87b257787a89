"""Every row of the catalog that a job can take or that a working rests on, in words, group by group."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from heatledger.catalog.loader import constructions, load_table
from heatledger.catalog.parts import EMITTER_TABLES, FAMILIES, tubes_of
from heatledger.ledger.figures import Figure, Leaf
from heatledger.ledger.sources import Citation

KINDS = ("wall", "ceiling", "floor", "window", "door", "below-grade wall", "below-grade floor", "slab edge")
FITTING_TABLES = {
    "fittings_copper": "Fittings of copper",
    "fittings_pex": "Fittings of PEX",
    "fittings_steel": "Fittings of steel",
}


@dataclass(frozen=True)
class Listed:
    """One row in words: the group it stands in, its name in a job, what it is, its value and its source."""

    group: str
    key: str
    name: str
    value: str
    citation: Citation


def listing() -> list[Listed]:
    """Every row, group by group: constructions, tubes, fittings, emitters, fuels, boilers."""
    parts: tuple[Callable[[], Iterator[Listed]], ...] = (
        _constructions, _tubes, _fittings, _emitters, _fuels, _boilers,
    )  # fmt: skip
    return [each for part in parts for each in part()]


def _constructions() -> Iterator[Listed]:
    rows = constructions().values()
    for kind in KINDS:
        for row in rows:
            if row.kind == kind:
                yield Listed(kind.capitalize(), row.key, row.name, f"{row.typed} {row.unit}", row.citation)


def _tubes() -> Iterator[Listed]:
    for family in FAMILIES.values():
        title = load_table(family.table).title
        for row in tubes_of(family.key).values():
            value = f"bore {_text(row.bore)}, outside {_text(row.outside)}"
            yield Listed(title, row.key, row.name, value, _citation(row.bore))
    for key, roughness in load_table("tube_roughness").rows.items():
        value = f"{roughness.typed['roughness']} mm"
        yield Listed("Roughness of tubes", key, roughness.name, value, roughness.citation)


def _fittings() -> Iterator[Listed]:
    for name, group in FITTING_TABLES.items():
        table = load_table(name)
        for key, row in table.rows.items():
            sizes = {column: _inches(column) for column in table.columns}
            value = ", ".join(f"{sizes[each]} in: {row.typed[each]}" for each in table.columns)
            yield Listed(group, key, row.name, f"{value} ft", row.citation)


def _inches(column: str) -> str:
    # 3-4 is three quarters, 1-1-4 is one and a quarter, 2 is two.
    whole, _, rest = column.rpartition("-")
    return f"{whole}/{rest}" if whole else rest


RATINGS = {
    "fin_tube": "{rating} {of_rating} at {water} °F water, {air} °F air and {flow} gpm",
    "iron_baseboard": "{rating} {of_rating} at {water} °F water, {air} °F air and {flow} gpm",
    "panel_radiators": "{output} W at {supply}/{return}/{air} °C, {water} L of water",
    "iron_columns": "{edr} ft² a section",
    "iron_tubes": "{edr} ft² a section",
    "iron_rating": "{emission} {of_emission} at {water} °F water and {air} °F air",
}
"""How the rating of a row is said, by its table."""


def _emitters() -> Iterator[Listed]:
    for name, words in RATINGS.items():
        table = load_table(name)
        units = {f"of_{column}": unit for column, unit in table.columns.items()}
        group = EMITTER_TABLES.get(name, "rating of a cast-iron radiator").capitalize()
        for key, row in table.rows.items():
            yield Listed(group, key, row.name, words.format(**row.typed, **units), row.citation)


def _fuels() -> Iterator[Listed]:
    for name in ("gas_heat", "liquid_heat"):
        table = load_table(name)
        for key, row in table.rows.items():
            value = f"{row.typed['heat_content']} {table.columns['heat_content']}"
            yield Listed("Heat content of fuels", key, row.name, value, row.citation)


def _boilers() -> Iterator[Listed]:
    table = load_table("condensing_efficiency")
    for key, row in table.rows.items():
        yield Listed(
            "Efficiency of a condensing boiler", key, row.name, f"{row.typed['efficiency']} %", row.citation
        )


def _leaf(figure: Figure) -> Leaf:
    origin = figure.origin
    if not isinstance(origin, Leaf):
        raise TypeError("a row of the catalog is a leaf")
    return origin


def _text(figure: Figure) -> str:
    return f"{_leaf(figure).typed} {_leaf(figure).unit}"


def _citation(figure: Figure) -> Citation:
    found = _leaf(figure).citation
    if found is None:
        raise ValueError("a row of the catalog names its source")
    return found
