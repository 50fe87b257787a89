"""What is shown in which unit: one preset for US, metric and Canadian readers.

A preset belongs to the reader of a page, never to the design. ``places`` is where the pencil rule
starts for a found value: decimals behind the point in the unit shown.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from heatledger.ledger import dimensions as d
from heatledger.ledger.dimensions import Dimension, Exponents
from heatledger.ledger.terms import places_of_ratio
from heatledger.ledger.units import UNITS, Unit


@dataclass(frozen=True)
class Shown:
    """The unit a dimension is shown in, and the decimals it starts with."""

    unit: Unit
    places: int

    def start(self, number: float) -> int:
        """The decimals a found number starts with, in this unit."""
        return places_of_ratio(number, self.places) if self.unit.text == "1" and self.places else self.places


@dataclass(frozen=True, eq=False)
class Preset:
    """How one reader sees every dimension, date and sheet of paper."""

    name: str
    table: dict[Dimension, Shown]
    feet_and_inches: bool
    paper: str
    day_first: bool
    atoms: dict[str, str]
    """Which atom this reader uses in place of another, for units no dimension names."""

    def shown(self, dimension: Dimension) -> Shown:
        """Unit and starting decimals of ``dimension``."""
        return self.table[dimension]

    @cached_property
    def by_exponents(self) -> dict[Exponents, Unit]:
        """The unit an unnamed inner result is shown in, by its exponents."""
        return {each.exponents: self.table[each].unit for each in _INNER}


# Inner results of a working have no dimension of their own; these are what they are taken for.
_INNER = (
    d.LENGTH, d.AREA, d.VOLUME, d.HEAT_RATE, d.TEMPERATURE_DIFFERENCE, d.TRANSMITTANCE, d.RESISTANCE,
    d.EDGE_LOSS, d.CONDUCTANCE, d.AIR_FLOW, d.PRESSURE, d.HEAT_FLUX, d.VELOCITY, d.DENSITY,
    d.VOLUME_HEAT,
)  # fmt: skip


def _table(rows: dict[Dimension, tuple[str, int]]) -> dict[Dimension, Shown]:
    return {dimension: Shown(UNITS[unit], places) for dimension, (unit, places) in rows.items()}


_BOTH: dict[Dimension, tuple[str, int]] = {
    d.RATIO: ("1", 3),
    d.COUNT: ("1", 0),
    d.REYNOLDS: ("1", 0),
    d.TIME: ("h", 1),
    d.AIR_CHANGES: ("ACH", 2),
    d.MASS: ("lb", 1),
    d.POWER: ("W", 0),
    d.CONCENTRATION: ("ppm", 0),
}
_INCH_POUND: dict[Dimension, tuple[str, int]] = {
    **_BOTH,
    d.LENGTH: ("ft", 2),
    d.HEAD: ("ft", 2),
    d.AREA: ("ft²", 2),
    d.VOLUME: ("ft³", 1),
    d.VELOCITY: ("ft/s", 1),
    d.ACCELERATION: ("ft/s²", 2),
    d.DENSITY: ("lb/ft³", 4),
    d.PRESSURE: ("psi", 2),
    d.ENERGY: ("Btu", 0),
    d.HEAT_RATE: ("Btu/h", 0),
    d.HEAT_FLUX: ("Btu/(h·ft²)", 1),
    d.TEMPERATURE: ("°F", 1),
    d.TEMPERATURE_DIFFERENCE: ("°F", 1),
    d.ABSOLUTE_TEMPERATURE: ("°R", 2),
    d.TRANSMITTANCE: ("Btu/(h·ft²·°F)", 4),
    d.RESISTANCE: ("h·ft²·°F/Btu", 2),
    d.CONDUCTIVITY: ("Btu/(h·ft·°F)", 3),
    d.EDGE_LOSS: ("Btu/(h·ft·°F)", 3),
    d.CONDUCTANCE: ("Btu/(h·°F)", 2),
    d.VOLUME_FLOW: ("gpm", 2),
    d.AIR_FLOW: ("cfm", 1),
    d.LEAKAGE_AT_50_PA: ("cfm50", 0),
    d.MASS_FLOW: ("lb/h", 0),
    d.SPECIFIC_HEAT: ("Btu/(lb·°F)", 3),
    d.VOLUME_HEAT: ("Btu/(ft³·°F)", 5),
    d.GAS_CONSTANT: ("Btu/(lb·°F)", 5),
    d.VISCOSITY: ("lb/(ft·h)", 3),
    d.RADIATION: ("Btu/(h·ft²·°R⁴)", 4),
    d.LAPSE: ("°F/ft", 5),
    d.HEAT_PER_LENGTH: ("Btu/(h·ft)", 0),
    d.HEAT_CONTENT: ("Btu/gal", 0),
    d.WATER_VOLUME: ("gal", 2),
    d.BORE: ("in", 3),
    d.FRICTION: ("ft/100 ft", 2),
    d.DRAFT: ("in. w.c.", 2),
    d.KINEMATIC_VISCOSITY: ("mm²/s", 3),
    d.WATER_HEAT: ("Btu/(h·gpm·°F)", 1),
    d.FLOW_COEFFICIENT: ("Cv", 2),
    d.EXPANSION: ("°F⁻¹", 6),
}
_METRIC: dict[Dimension, tuple[str, int]] = {
    **_BOTH,
    d.MASS: ("kg", 2),
    d.LENGTH: ("m", 3),
    d.HEAD: ("m", 3),
    d.AREA: ("m²", 2),
    d.VOLUME: ("m³", 2),
    d.VELOCITY: ("m/s", 2),
    d.ACCELERATION: ("m/s²", 3),
    d.DENSITY: ("kg/m³", 3),
    d.PRESSURE: ("kPa", 1),
    d.ENERGY: ("kWh", 0),
    d.HEAT_RATE: ("W", 0),
    d.HEAT_FLUX: ("W/m²", 1),
    d.TEMPERATURE: ("°C", 1),
    d.TEMPERATURE_DIFFERENCE: ("K", 1),
    d.ABSOLUTE_TEMPERATURE: ("K", 2),
    d.TRANSMITTANCE: ("W/(m²·K)", 3),
    d.RESISTANCE: ("m²·K/W", 2),
    d.CONDUCTIVITY: ("W/(m·K)", 3),
    d.EDGE_LOSS: ("W/(m·K)", 3),
    d.CONDUCTANCE: ("W/K", 2),
    d.VOLUME_FLOW: ("L/h", 0),
    d.AIR_FLOW: ("m³/h", 1),
    d.LEAKAGE_AT_50_PA: ("m³/h at 50 Pa", 0),
    d.MASS_FLOW: ("kg/h", 1),
    d.SPECIFIC_HEAT: ("kJ/(kg·K)", 4),
    d.VOLUME_HEAT: ("Wh/(m³·K)", 4),
    d.GAS_CONSTANT: ("J/(kg·K)", 2),
    d.VISCOSITY: ("Pa·s", 6),
    d.RADIATION: ("W/(m²·K⁴)", 4),
    d.LAPSE: ("K/m", 4),
    d.HEAT_PER_LENGTH: ("W/m", 0),
    d.HEAT_CONTENT: ("kWh/L", 2),
    d.WATER_VOLUME: ("L", 1),
    d.BORE: ("mm", 1),
    d.FRICTION: ("m/100 m", 2),
    d.DRAFT: ("Pa", 0),
    d.KINEMATIC_VISCOSITY: ("mm²/s", 3),
    d.WATER_HEAT: ("Wh/(L·K)", 4),
    d.FLOW_COEFFICIENT: ("Kv", 2),
    d.EXPANSION: ("K⁻¹", 6),
}
_TO_METRIC = {
    "ft": "m", "in": "m", "yd": "m", "lb": "kg", "°F": "K", "°R": "K", "gal": "L", "imp gal": "L",
    "Btu": "J", "kBtu": "kJ", "therm": "MJ", "MBH": "kW", "psi": "kPa", "in. w.c.": "Pa",
}  # fmt: skip
_TO_INCH_POUND = {
    "m": "ft", "cm": "in", "mm": "in", "kg": "lb", "g": "lb", "K": "°F", "L": "gal", "J": "Btu",
    "kJ": "Btu", "MJ": "Btu", "W": "Btu/h", "Pa": "psi", "kPa": "psi", "bar": "psi", "mbar": "psi",
}  # fmt: skip

US = Preset("US", _table(_INCH_POUND), True, "letter", False, _TO_INCH_POUND)
METRIC = Preset("metric", _table(_METRIC), False, "a4", True, _TO_METRIC)
CANADIAN = Preset(
    "Canadian",
    _table({**_INCH_POUND, d.TEMPERATURE: ("°C", 1), d.TEMPERATURE_DIFFERENCE: ("°C", 1),
            d.ABSOLUTE_TEMPERATURE: ("K", 2)}),
    True, "letter", False, _TO_INCH_POUND,
)  # fmt: skip
PRESETS: dict[str, Preset] = {each.name.lower(): each for each in (US, METRIC, CANADIAN)}
"""The three presets by name in lower case."""
