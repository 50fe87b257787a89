"""Constructions: whole assemblies, typed in place or taken from the catalog by name."""

from __future__ import annotations

from typing import Any

from heatledger.job.model import Construction
from heatledger.job.quantities import Reader
from heatledger.job.reading import in_words
from heatledger.job.rows import known_row
from heatledger.job.shapes import CONSTRUCTION
from heatledger.job.text import Node
from heatledger.job.trade_words import mend_of_row
from heatledger.ledger import dimensions as d
from heatledger.ledger.figures import Figure, missing
from heatledger.ledger.units import UNITS

LARGEST_U = {"wall": 1.18, "ceiling": 1.28, "floor": 0.92, "window": 1.4, "door": 1.4}
"""U-values of bare air films, Btu/(h·ft²·°F): films 0.68, 0.61 and 0.92 indoors and 0.17 outdoors
(HOF-ch26, Table 10; sums worked out here). For windows and doors the bound is our judgment."""

WAYS = ("u_value", "r_value", "f_factor", "catalog")
_U = UNITS["Btu/(h·ft²·°F)"]
_R = UNITS["h·ft²·°F/Btu"]


def read_constructions(reader: Reader, node: Node | None, known: str) -> dict[str, Construction]:
    """Every construction of the job by id."""
    mapping = reader.mapping(node, "constructions", "the constructions")
    inherited = reader.known(mapping, "constructions", known)
    things = reader.things(node, "constructions", "constructions") if mapping.entries else {}
    found: dict[str, Construction] = {}
    for key, each in things.items():
        earlier = reader.again.construction(key) if reader.again is not None else None
        found[key] = earlier or read_construction(reader, key, each, inherited)
    return found


def read_construction(reader: Reader, id: str, node: Node, inherited: str) -> Construction:
    """One construction. What it lacks is a U-value that is missing (or an F-factor for a slab edge)."""
    path = f"constructions/{id}"
    values = reader.fields(CONSTRUCTION, node, path, inherited)
    given = [each for each in WAYS if values[each] is not None and values[each] != ""]
    if len(given) > 1:
        reader.error(
            "two-factors",
            f"{path}/{given[1]}",
            f"The construction is given by `{given[0]}` and by `{given[1]}`.",
            "Keep one of the two.",
        )
        given = []
    kind = values["kind"] or ""
    catalog = values["catalog"] or ""
    name = values["name"] or ""
    if catalog and given:
        kind, name = _from_catalog(reader, path, catalog, kind, name, values)
    elif values["kind"] is None:
        reader.error(
            "no-kind",
            path,
            f"The construction `{id}` does not say what kind it is.",
            "Write  kind: wall  (or ceiling, floor, window, door, below-grade wall, below-grade floor, "
            "slab edge).",
        )
    if given and given[0] != "catalog":
        _check_factor(reader, path, kind, given[0], values[given[0]])
    u_value, r_value, f_factor = values["u_value"], values["r_value"], values["f_factor"]
    if u_value is r_value is f_factor is None:
        u_value, r_value, f_factor = _missing(path, kind)
    return Construction(id, name or in_words(id), kind, u_value, r_value, f_factor, catalog, values["raw"])


def _missing(path: str, kind: str) -> tuple[Figure | None, Figure | None, Figure | None]:
    if kind == "slab edge":
        return None, None, missing(d.EDGE_LOSS, f"{path}/f_factor", "F-factor")
    if kind.startswith("below-grade"):
        return None, missing(d.RESISTANCE, f"{path}/r_value", "R-value"), None
    return missing(d.TRANSMITTANCE, f"{path}/u_value", "U-value"), None, None


def _from_catalog(
    reader: Reader, path: str, key: str, kind: str, name: str, values: dict[str, Any]
) -> tuple[str, str]:
    """Put the value of a catalog row into ``values``; the kind and name of the construction."""
    from heatledger.catalog.loader import construction, row_leaf

    row = construction(key)
    if row is None:
        reader.error(
            "unknown-catalog-row",
            f"{path}/catalog",
            f"The catalog has no construction `{key}`.",
            mend_of_row(key, kind),
        )
        return kind, name
    if kind and row.kind != kind:
        reader.error(
            "catalog-kind-differs",
            f"{path}/catalog",
            f"`{key}` is the row of a {row.kind}, and the construction is a {kind}.",
            f"Write  kind: {row.kind}  or choose another row.",
        )
    entry = values["node"].entries["catalog"]
    typed = reader.typed(entry, f"{path}/catalog", values["known"])
    if typed is not None:
        values[row.quantity] = known_row(reader, row_leaf(row), typed, f"{path}/catalog")
    return kind or row.kind, name or row.name


def _check_factor(reader: Reader, path: str, kind: str, way: str, figure: Figure) -> None:
    """Errors for a value that this kind is not described by, or that no assembly can have."""
    here = f"{path}/{way}"
    right = "f_factor" if kind == "slab edge" else "r_value" if kind.startswith("below-grade") else ""
    if kind and ((right and way != right) or (not right and way == "f_factor")):
        reader.error(
            "wrong-factor",
            here,
            f"A {kind} is not described by `{way}`.",
            f"Give `{right or 'u_value'}`, or `{'r_value' if not right else 'catalog'}`.",
        )
        return
    largest = LARGEST_U.get(kind)
    if largest is None or figure.is_missing:
        return
    typed = figure.origin.typed
    if way == "u_value" and _U.from_si(float(figure)) > largest:
        number = _U.from_si(float(figure))
        reader.error(
            "u-above-air-films",
            here,
            f"`{typed}` was read as U-{number:.4g} Btu/(h·ft²·°F). {_bound(kind, largest)}",
            f"If it is an R-value, write  r_value: R-{number:.4g}  (the same as U-{1 / number:.3g}).",
        )
    elif way == "r_value" and _R.from_si(float(figure)) < 1 / largest:
        number = _R.from_si(float(figure))
        reader.error(
            "r-below-air-films",
            here,
            f"`{typed}` was read as R-{number:.4g} h·ft²·°F/Btu. Bare air films alone are "
            f"R-{1 / largest:.2f} (HOF-ch26, Table 10), so no {kind} is below it.",
            f"If it is a U-value, write  u_value: U-{number:.4g}",
        )


def _bound(kind: str, largest: float) -> str:
    if kind in ("window", "door"):
        return (
            f"Bare air films let through U-1.18 (HOF-ch26, Table 10), and metal frames a little more: no "
            f"{kind} is above U-{largest:g}."
        )
    return f"Bare air films alone let through U-{largest:g} (HOF-ch26, Table 10), so no {kind} is above it."
