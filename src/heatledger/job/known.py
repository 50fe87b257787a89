"""How well each thing is known, and how far off it may be.

The half-ranges are our own judgment, not taken from any source: they say how far off a value of that
kind usually is when it was measured, read from plans, told or assumed. A job may change any of them
under ``ranges:``, and give its own beside a value (``within: 8 %``).
"""

from __future__ import annotations

from dataclasses import dataclass

from heatledger.ledger.dimensions import (
    AIR_CHANGES,
    AREA,
    BORE,
    CONCENTRATION,
    CONDUCTIVITY,
    COUNT,
    DRAFT,
    EDGE_LOSS,
    ENERGY,
    FLOW_COEFFICIENT,
    HEAD,
    HEAT_CONTENT,
    HEAT_PER_LENGTH,
    HEAT_RATE,
    LENGTH,
    POWER,
    PRESSURE,
    RESISTANCE,
    TEMPERATURE,
    TEMPERATURE_DIFFERENCE,
    TRANSMITTANCE,
    VOLUME,
    VOLUME_FLOW,
    WATER_VOLUME,
    Dimension,
)
from heatledger.ledger.sources import JUDGMENT, Citation, cite

STANDING: Citation = cite("", "half-ranges of inputs", JUDGMENT)
DEFAULT = "told"
"""What is taken when neither the value nor anything around it says."""

CHOSEN = "chosen"
"""A value that is decided, not found out: design temperatures, and what is counted."""


@dataclass(frozen=True)
class HalfRange:
    """A share of the value (0.01), or a width in SI, and the words it was given in."""

    words: str
    share: float = 0.0
    width: float = 0.0

    def of(self, value: float) -> float:
        """The half-range of a value, both in SI."""
        return self.share * abs(value) + self.width


def _percent(measured: float, plans: float, told: float, assumed: float) -> dict[str, HalfRange]:
    shares = {"measured": measured, "from plans": plans, "told": told, "assumed": assumed}
    return {known: HalfRange(f"{each:g} %", share=each / 100) for known, each in shares.items()}


def _kelvin(measured: float, plans: float, told: float, assumed: float) -> dict[str, HalfRange]:
    widths = {"measured": measured, "from plans": plans, "told": told, "assumed": assumed}
    return {known: HalfRange(f"{each:g} K", width=each) for known, each in widths.items()}


RANGES: dict[str, dict[str, HalfRange]] = {
    "length": _percent(1, 2, 5, 10),
    "area": _percent(2, 4, 8, 15),
    "volume": _percent(3, 5, 10, 20),
    "u-value": _percent(5, 8, 12, 15),
    "r-value": _percent(5, 8, 12, 15),
    "edge-loss": _percent(10, 15, 20, 25),
    "soil": _percent(10, 20, 25, 30),
    "air-changes": _percent(10, 20, 25, 30),
    "heat": _percent(10, 15, 20, 30),
    "temperature": _kelvin(0.5, 1, 2, 3),
    "temperature-swing": _kelvin(0.5, 1, 2, 3),
    "elevation": _percent(1, 1, 2, 5),
    "rated-output": _percent(5, 5, 10, 15),
    "rated-per-length": _percent(5, 5, 10, 15),
    "exponent": _percent(2, 2, 4, 6),
    "tube-length": _percent(5, 10, 15, 25),
    "thickness": _percent(5, 10, 15, 25),
    "water": _percent(5, 10, 15, 30),
    "flow": _percent(5, 10, 15, 25),
    "head": _percent(5, 5, 10, 20),
    "pressure": _percent(3, 5, 10, 20),
    "flow-coefficient": _percent(5, 5, 15, 25),
    "power": _percent(5, 10, 15, 25),
    "plate": _percent(1, 2, 5, 15),
    "efficiency": _percent(2, 3, 5, 8),
    "fuel-used": _percent(1, 2, 5, 15),
    "gas-used": _percent(1, 2, 5, 15),
    "oil-used": _percent(1, 2, 5, 15),
    "heat-content": _percent(1, 2, 3, 5),
    "degree-days": _percent(2, 3, 5, 10),
    "gas-reading": _percent(5, 10, 20, 30),
    "oxygen": _percent(5, 10, 20, 30),
    "draft": _percent(10, 10, 20, 40),
}
"""Half-range by the name of the kind, then by how it is known. All judgment."""

_BY_DIMENSION: dict[Dimension, str] = {
    LENGTH: "length", AREA: "area", VOLUME: "volume", TRANSMITTANCE: "u-value", RESISTANCE: "r-value",
    EDGE_LOSS: "edge-loss", CONDUCTIVITY: "soil", AIR_CHANGES: "air-changes", HEAT_RATE: "heat",
    TEMPERATURE: "temperature", TEMPERATURE_DIFFERENCE: "temperature-swing", COUNT: CHOSEN,
    HEAT_PER_LENGTH: "rated-per-length", WATER_VOLUME: "water", BORE: "thickness", VOLUME_FLOW: "flow",
    HEAD: "head", PRESSURE: "pressure", FLOW_COEFFICIENT: "flow-coefficient", POWER: "power",
    ENERGY: "fuel-used", HEAT_CONTENT: "heat-content", CONCENTRATION: "gas-reading", DRAFT: "draft",
}  # fmt: skip


def range_name(dimension: Dimension) -> str:
    """Name of the half-range that a kind of quantity takes unless its entry names another."""
    return _BY_DIMENSION.get(dimension, CHOSEN)


def half_range(
    name: str, known: str, value: float, own: dict[str, dict[str, HalfRange]]
) -> tuple[float, str]:
    """Half-range (SI) of a value and the words for it; ``own`` are the job's, by name and known."""
    if name == CHOSEN:
        return 0.0, ""
    given = own.get(name, {}).get(known)
    if given is not None:
        return given.of(value), f"{given.words}, the job's own for {name} {known}"
    usual = RANGES[name][known]
    return usual.of(value), f"{usual.words}, judgment for {name} {known}"
