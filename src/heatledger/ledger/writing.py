"""How the numbers of a working are written: figures, grouping, powers of ten, units."""

from __future__ import annotations

from decimal import Decimal

from heatledger.ledger.pencil import figures_of, places_for
from heatledger.ledger.presets import Preset
from heatledger.ledger.show import grouping, number_text
from heatledger.ledger.terms import decimals, rounded
from heatledger.ledger.units import Unit

INNER_FIGURES = 5
SMALLEST_WRITTEN_OUT = 1e-4
"""A smaller number is written with a power of ten: 1.7×10⁻⁵."""
LARGEST_WRITTEN_OUT = 1e9
_SUPER = str.maketrans("-0123456789", "⁻⁰¹²³⁴⁵⁶⁷⁸⁹")


def written(number: float, places: int, unit: Unit, units: Preset, keep_zeros: bool = True) -> str:
    """A rounded number as it is printed; ``keep_zeros`` false drops zeros at the end."""
    huge = places < 0 and abs(number) >= LARGEST_WRITTEN_OUT
    if number and (huge or abs(number) < SMALLEST_WRITTEN_OUT):
        return _with_power(number, places + Decimal(repr(number)).adjusted(), keep_zeros)
    text = number_text(number, places, grouping(unit, units))
    return text if keep_zeros or "." not in text else text.rstrip("0").rstrip(".")


def _with_power(number: float, places: int, keep_zeros: bool = False) -> str:
    """``number`` with a power of ten and ``places`` decimals before it."""
    exact = Decimal(repr(number))
    power = exact.adjusted()
    text = number_text(float(exact.scaleb(-power)), max(places, 0))
    if not keep_zeros and "." in text:
        text = text.rstrip("0").rstrip(".")
    return f"{text}×10{str(power).translate(_SUPER)}"


def plain_number(value: float) -> str:
    """A number of a formula in words, as its author wrote it."""
    if value and (abs(value) < SMALLEST_WRITTEN_OUT or abs(value) >= LARGEST_WRITTEN_OUT):
        return _with_power(value, 12)
    return number_text(value, decimals(value), "")


def unit_text(unit: Unit) -> str:
    """A unit as printed; nothing for a plain number."""
    return "" if unit.text == "1" else unit.text


def inner_number(amount: float, unit: Unit, units: Preset) -> str:
    """An inner result with five significant figures, zeros at the end dropped."""
    if abs(amount) >= LARGEST_WRITTEN_OUT:
        return _with_power(rounded(amount, places_for(amount, INNER_FIGURES)), INNER_FIGURES - 1)
    places = max(places_for(amount, INNER_FIGURES), 0)
    if figures_of(amount, places) == 0:
        places = 0
    return written(rounded(amount, places), places, unit, units, keep_zeros=False)


def nearest_words(number: float, places: int, unit: Unit, units: Preset) -> str:
    """Words for an answer that lost places before the point: "to the nearest 10".

    One with a power of ten shows its last place itself.
    """
    if places >= 0 or abs(number) >= LARGEST_WRITTEN_OUT:
        return ""
    return f"to the nearest {number_text(10.0**-places, 0, grouping(unit, units))}"
