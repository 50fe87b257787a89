"""The closed table of units: atoms with exact sizes, and the units built from them.

A unit is a product of powers of atoms (``Btu/(h·ft²·°F)`` is Btu¹ h⁻¹ ft⁻² °F⁻¹), so a working can
cancel them as a person does and say which factor is left over. Every atom is built from the few
sizes that are exact by definition. The table is ours and small; a units library is its referee in
``tests/ledger/test_units.py``.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction
from functools import lru_cache
from math import prod

from heatledger.ledger.dimensions import Exponents, exponents

# Exact by definition: the inch (1959), the pound (1959), standard gravity (1901), the International
# Table calorie (1956, which fixes the Btu), the US gallon of 231 cubic inches and the imperial
# gallon of 4.54609 litres (1985). Everything else is arithmetic.
INCH_M = 0.0254
FOOT_M = 12 * INCH_M
POUND_KG = 0.45359237
GRAVITY_M_S2 = 9.80665
RANKINE_K = 5 / 9
BTU_J = 4186.8 * POUND_KG * RANKINE_K
US_GALLON_M3 = 231 * INCH_M**3
IMPERIAL_GALLON_M3 = 4.54609e-3
POUND_FORCE_N = POUND_KG * GRAVITY_M_S2
PSI_PA = POUND_FORCE_N / INCH_M**2
# Conventional water column: 1000 kg/m3 at standard gravity.
WATER_COLUMN_PA_M = 1000 * GRAVITY_M_S2

# A valve is rated with water at 60 °F (999.09 kg/m³): 1 gpm at 1 psi, or 1 m³/h at 1 bar. The density
# of that water belongs to the formulas, so the unit is flow over the root of a pressure.
RATED_CV = US_GALLON_M3 / 60 / PSI_PA**0.5
RATED_KV = 1 / 3600 / 1e5**0.5

FREEZING_K = 273.15
FAHRENHEIT_ZERO_R = 459.67

Powers = tuple[tuple[str, Fraction], ...]

ATOMS: dict[str, tuple[float, Exponents]] = {
    "m": (1.0, exponents(m=1)),
    "cm": (0.01, exponents(m=1)),
    "mm": (0.001, exponents(m=1)),
    "ft": (FOOT_M, exponents(m=1)),
    "in": (INCH_M, exponents(m=1)),
    "yd": (3 * FOOT_M, exponents(m=1)),
    "kg": (1.0, exponents(kg=1)),
    "g": (0.001, exponents(kg=1)),
    "lb": (POUND_KG, exponents(kg=1)),
    "s": (1.0, exponents(s=1)),
    "min": (60.0, exponents(s=1)),
    "h": (3600.0, exponents(s=1)),
    "day": (86400.0, exponents(s=1)),
    "K": (1.0, exponents(K=1)),
    "°C": (1.0, exponents(K=1)),
    "°F": (RANKINE_K, exponents(K=1)),
    "°R": (RANKINE_K, exponents(K=1)),
    "L": (0.001, exponents(m=3)),
    "gal": (US_GALLON_M3, exponents(m=3)),
    "imp gal": (IMPERIAL_GALLON_M3, exponents(m=3)),
    "J": (1.0, exponents(m=2, kg=1, s=-2)),
    "kJ": (1000.0, exponents(m=2, kg=1, s=-2)),
    "MJ": (1e6, exponents(m=2, kg=1, s=-2)),
    "Btu": (BTU_J, exponents(m=2, kg=1, s=-2)),
    "kBtu": (1000 * BTU_J, exponents(m=2, kg=1, s=-2)),
    "therm": (1e5 * BTU_J, exponents(m=2, kg=1, s=-2)),
    "W": (1.0, exponents(m=2, kg=1, s=-3)),
    "kW": (1000.0, exponents(m=2, kg=1, s=-3)),
    "MBH": (1000 * BTU_J / 3600, exponents(m=2, kg=1, s=-3)),
    "Pa": (1.0, exponents(m=-1, kg=1, s=-2)),
    "kPa": (1000.0, exponents(m=-1, kg=1, s=-2)),
    "bar": (1e5, exponents(m=-1, kg=1, s=-2)),
    "mbar": (100.0, exponents(m=-1, kg=1, s=-2)),
    "psi": (PSI_PA, exponents(m=-1, kg=1, s=-2)),
    "in. w.c.": (WATER_COLUMN_PA_M * INCH_M, exponents(m=-1, kg=1, s=-2)),
    "%": (0.01, exponents()),
    "ppm": (1e-6, exponents()),
    "Cv": (RATED_CV, exponents(m=3.5, kg=-0.5)),
    "Kv": (RATED_KV, exponents(m=3.5, kg=-0.5)),
}
"""Size in SI units and exponents of each atom, by the text it is written with."""


@dataclass(frozen=True)
class Unit:
    """A unit as it is written, with its size in coherent SI units.

    ``kelvin_at_zero`` is where a temperature scale has its zero; it counts only when an absolute
    temperature is read or written, never for a difference.
    """

    text: str
    powers: Powers
    kelvin_at_zero: float = 0.0
    factor: float = field(init=False, compare=False)
    exponents: Exponents = field(init=False, compare=False)

    def __post_init__(self) -> None:
        size = prod(ATOMS[atom][0] ** float(power) for atom, power in self.powers)
        totals = [
            sum((ATOMS[atom][1][i] * power for atom, power in self.powers), Fraction(0)) for i in range(4)
        ]
        object.__setattr__(self, "factor", float(size))
        object.__setattr__(self, "exponents", tuple(totals))

    def to_si(self, value: float, absolute: bool = False) -> float:
        """SI value of ``value`` in this unit; ``absolute`` for a temperature on its scale."""
        return value * self.factor + (self.kelvin_at_zero if absolute else 0.0)

    def from_si(self, value: float, absolute: bool = False) -> float:
        """``value`` (SI) in this unit; ``absolute`` for a temperature on its scale."""
        return (value - (self.kelvin_at_zero if absolute else 0.0)) / self.factor


_SUPER = str.maketrans("-0123456789", "⁻⁰¹²³⁴⁵⁶⁷⁸⁹")


def _power_text(atom: str, power: Fraction) -> str:
    if power == 1:
        return atom
    if power.denominator == 1:
        return atom + str(power.numerator).translate(_SUPER)
    return f"{atom}^{float(power):g}"


def text_of(powers: Powers) -> str:
    """``Btu/(h·ft²·°F)`` for the powers given; empty when nothing is left."""
    over = [_power_text(atom, power) for atom, power in powers if power > 0]
    if not over:
        return "·".join(_power_text(atom, power) for atom, power in powers)
    under = [_power_text(atom, -power) for atom, power in powers if power < 0]
    if not under:
        return "·".join(over)
    bottom = under[0] if len(under) == 1 else f"({'·'.join(under)})"
    return f"{'·'.join(over)}/{bottom}"


def parsed(text: str) -> Powers:
    """Powers of a unit text of the table itself (our own notation only)."""
    top, _, bottom = text.partition("/")
    signed = [(each, 1) for each in top.split("·") if each and each != "1"]
    signed += [(each, -1) for each in bottom.strip("()").split("·") if each]
    result: list[tuple[str, Fraction]] = []
    for each, sign in signed:
        atom, power = each, 1
        for mark, value in (("²", 2), ("³", 3), ("⁴", 4)):
            if each.endswith(mark):
                atom, power = each[: -len(mark)], value
        result.append((atom, Fraction(sign * power)))
    return tuple(result)


UNITS: dict[str, Unit] = {}
"""Every unit of the table, by the text it is written with."""


def _add(text: str, like: str | None = None, zero: float = 0.0) -> None:
    UNITS[text] = Unit(text, parsed(like or text), zero)


for _text in (
    "1", "%",
    "ft", "in", "yd", "m", "cm", "mm",
    "ft²", "in²", "m²", "cm²", "mm²",
    "ft³", "m³", "L", "gal", "imp gal",
    "s", "min", "h", "day",
    "ft/s", "ft/min", "m/s", "ft/s²", "m/s²",
    "lb", "kg", "g",
    "lb/ft³", "kg/m³",
    "psi", "Pa", "kPa", "bar", "mbar", "in. w.c.",
    "Btu", "kBtu", "therm", "J", "kJ", "MJ",
    "Btu/h", "kBtu/h", "MBH", "W", "kW",
    "Btu/(h·ft²)", "W/m²", "Btu/(h·ft)", "W/m",
    "Btu/(h·ft²·°F)", "W/(m²·K)", "h·ft²·°F/Btu", "m²·K/W",
    "Btu/(h·ft·°F)", "Btu·in/(h·ft²·°F)", "W/(m·K)",
    "Btu/(h·°F)", "W/K",
    "L/s", "L/min", "L/h", "m³/h", "m³/s", "ft³/h",
    "lb/h", "kg/s", "kg/h",
    "Btu/(lb·°F)", "kJ/(kg·K)", "J/(kg·K)",
    "Btu/(ft³·°F)", "J/(m³·K)", "kJ/(m³·K)",
    "Pa·s", "lb/(ft·h)",
    "K/m", "°F/ft",
    "W/(m²·K⁴)",
    "ft²/s", "mm²/s", "m²/s",
    "Btu/gal", "Btu/ft³", "MJ/L", "MJ/m³",
    "ppm", "Cv", "Kv",
):  # fmt: skip
    _add(_text)
_add("K", "K")
_add("°C", "°C", FREEZING_K)
_add("°F", "°F", FREEZING_K - 32 * RANKINE_K)
# A degree counted from absolute zero is the same step, so the two cancel in a working.
_add("°R", "°F")
_add("Btu/(h·ft²·°R⁴)", "Btu/(h·ft²·°F⁴)")
_add("cfm", "ft³/min")
_add("gpm", "gal/min")
_add("imp gpm", "imp gal/min")
_add("Wh/(m³·K)", "W·h/(m³·K)")
_add("kWh", "kW·h")
_add("Btu/(h·gpm·°F)", "Btu·min/(h·gal·°F)")
_add("Wh/(L·K)", "W·h/(L·K)")
_add("°F⁻¹", "1/°F")
_add("K⁻¹", "1/K")
_add("kWh/L", "kW·h/L")
_add("kWh/m³", "kW·h/m³")
_add("ft/100 ft", "%")
_add("m/100 m", "%")
_add("ACH", "1/h")
_add("cfm50", "ft³/min")
_add("m³/h at 50 Pa", "m³/h")

NO_UNIT = UNITS["1"]
_NAMED: dict[frozenset[tuple[str, Fraction]], str] = {}
for _unit in UNITS.values():
    if _unit.text not in ("ACH", "cfm50", "m³/h at 50 Pa", "1", "ft/100 ft", "m/100 m"):
        _NAMED.setdefault(frozenset(_unit.powers), _unit.text)


def combined(parts: list[tuple[Unit, Fraction]]) -> Unit:
    """The unit a product of powers of units comes to when equal atoms cancel."""
    totals: dict[str, Fraction] = {}
    for unit, power in parts:
        for atom, each in unit.powers:
            totals[atom] = totals.get(atom, Fraction(0)) + each * power
    powers = tuple((atom, power) for atom, power in totals.items() if power)
    return unit_of(powers)


@lru_cache(maxsize=1024)
def unit_of(powers: Powers) -> Unit:
    """The table's unit with these powers, else one written from its atoms."""
    if not powers:
        return NO_UNIT
    name = _NAMED.get(frozenset(powers))
    return UNITS[name] if name else Unit(text_of(powers), powers)
