"""Fuel bills, readings on site, and the codes the papers are drawn to."""

from __future__ import annotations

from typing import Any

from heatledger.job.names_given import named, two_ways
from heatledger.job.plant import check_efficiency
from heatledger.job.quantities import Reader
from heatledger.job.reading import in_words
from heatledger.job.system_model import FUELS, Bill, Codes, Combustion, Readings, Zone
from heatledger.job.system_shapes import BILL, CODES, COMBUSTION, READINGS
from heatledger.job.text import Node
from heatledger.ledger import dimensions as d
from heatledger.ledger.dimensions import Dimension
from heatledger.ledger.figures import Figure, missing

AMOUNTS = ("energy", "volume", "gas")
MEASURED_BY = {
    "natural gas": ("energy", "gas"), "propane": ("energy", "volume"), "oil": ("energy", "volume"),
    "electricity": ("energy",),
}  # fmt: skip
"""How the use of each fuel is told: by its heat, as a liquid, or as a gas."""


def read_bills(reader: Reader, node: Node | None, known: str) -> dict[str, Bill]:
    """The fuel bills by id."""
    mapping = reader.mapping(node, "bills", "the bills")
    inherited = reader.known(mapping, "bills", known)
    things = reader.things(node, "bills", "bills") if mapping.entries else {}
    return {key: _bill(reader, key, each, inherited) for key, each in things.items()}


def _bill(reader: Reader, id: str, node: Node, known: str) -> Bill:
    path = f"bills/{id}"
    values = reader.fields(BILL, node, path, known)
    fuel = values["fuel"] or ""
    if values["fuel"] is None:
        reader.error(
            "no-fuel",
            path,
            f"The bill `{id}` does not say for which fuel.",
            f"Write  fuel: {' or '.join(FUELS)}",
        )
    check_efficiency(reader, f"{path}/efficiency", values["efficiency"])
    given = [each for each in AMOUNTS if values[each] is not None]
    if len(given) > 1:
        two_ways(reader, path, given[0], given[1])
    elif given and fuel and given[0] not in MEASURED_BY[fuel]:
        reader.error(
            "fuel-not-measured-so",
            f"{path}/{given[0]}",
            f"The use of {fuel} is not told by `{given[0]}`.",
            f"Give one of: {', '.join(MEASURED_BY[fuel])}.",
        )
        fuel = ""
    energy = values["energy"]
    if not given:
        energy = missing(d.ENERGY, f"{path}/energy", "fuel used")

    def need(key: str, dimension: Dimension, words: str) -> Figure:
        return missing(dimension, f"{path}/{key}", words) if values[key] is None else values[key]

    return Bill(
        id=id,
        name=values["name"] or in_words(id),
        fuel=fuel,
        energy=energy,
        volume=values["volume"],
        gas=values["gas"],
        heat_content=_heat_content(values, fuel, path, given),
        other_use=values["other_use"],
        efficiency=need("efficiency", d.RATIO, "efficiency over the season"),
        degree_days=need("degree_days", d.TEMPERATURE_DIFFERENCE, "degree days"),
        base=need("base", d.TEMPERATURE, "base of the degree days"),
    )


def _heat_content(values: dict[str, Any], fuel: str, path: str, given: list[str]) -> Figure | None:
    """Heat in each volume of the fuel, as typed or from the catalog; None where the heat itself is told."""
    if values["heat_content"] is not None or not given or given[0] == "energy":
        return values["heat_content"]
    if not fuel:
        return missing(d.HEAT_CONTENT, f"{path}/heat_content", "heat content")
    from heatledger.catalog.parts import heat_content_of

    return heat_content_of(fuel)


def read_readings(reader: Reader, node: Node | None, known: str, zones: dict[str, Zone]) -> Readings:
    """The readings on site; a reading not taken yet is None."""
    values = reader.fields(READINGS, node, "readings", known)
    text = values["calling"] or ""
    calling = tuple(each.strip() for each in text.split(",") if each.strip())
    for each in calling:
        named(reader, "readings/calling", "zone", each, zones)
    read = {key: values[key] for key in (
        "outdoor", "room", "supply", "flow", "cold_pressure", "hot_pressure", "precharge", "test_pressure",
    )}  # fmt: skip
    return Readings(
        date=values["date"] or "",
        by=values["by"] or "",
        return_=values["return"],
        calling=tuple(dict.fromkeys(calling)),
        combustion=_combustion(reader, values["node"].entries.get("combustion"), values["known"]),
        **read,
    )


def _combustion(reader: Reader, node: Node | None, known: str) -> Combustion:
    values = reader.fields(COMBUSTION, node, "readings/combustion", known)
    keys = ("oxygen", "carbon_monoxide", "draft", "stack", "room_carbon_monoxide")
    return Combustion(**{key: values[key] for key in keys}, spillage=values["spillage"] or "")


def read_codes(reader: Reader, node: Node | None, known: str) -> Codes:
    """The code adopted, the licence, and the office that decides; blank until known."""
    values = reader.fields(CODES, node, "codes", known)
    return Codes(*(values[key] or "" for key in ("adopted", "licence", "authority")))
