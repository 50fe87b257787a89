"""Units as they are printed, sized by a general units library and by no table of ours."""

from __future__ import annotations

import re
import tokenize
from functools import cache

import pint

REGISTRY = pint.UnitRegistry()


class Wrong(AssertionError):
    """The printed arithmetic does not hold."""


Dims = tuple[float, float, float, float]
PLAIN: Dims = (0.0, 0.0, 0.0, 0.0)


_WORDS = {
    "Btu": "Btu_it", "kBtu": "(1000*Btu_it)", "MBH": "(1000*Btu_it/hour)", "therm": "(100000*Btu_it)",
    "°F": "delta_degF", "°R": "delta_degF", "°C": "delta_degC", "K": "kelvin",
    "h": "hour", "min": "minute", "s": "second", "day": "day", "lb": "pound", "gal": "gallon",
    "imp gal": "imperial_gallon", "in. w.c.": "(conventional_water*inch*standard_gravity)",
    "ACH": "(1/hour)", "cfm": "(foot**3/minute)", "cfm50": "(foot**3/minute)", "gpm": "(gallon/minute)",
    "imp gpm": "(imperial_gallon/minute)", "ft": "foot", "in": "inch", "Wh": "(watt*hour)", "%": "(0.01)",
    "ppm": "(0.000001)",
    "Cv": "(gallon/minute/psi**0.5)", "Kv": "(meter**3/hour/bar**0.5)",
    "L": "liter", "yd": "yard", "bar": "bar", "mbar": "millibar",
}  # fmt: skip
SUPERSCRIPTS = str.maketrans("⁻⁰¹²³⁴⁵⁶⁷⁸⁹", "-0123456789")


@cache
def unit_in_si(text: str) -> tuple[float, Dims]:
    """SI size and dimensions (m, kg, s, K) of a printed unit."""
    if not text:
        return 1.0, PLAIN
    text = text.replace("m³/h at 50 Pa", "m³/h").replace("ft/100 ft", "%").replace("m/100 m", "%")

    def factor(match: re.Match[str]) -> str:
        word, power = match.group(1), match.group(2)
        name = _WORDS.get(word, word)
        if word == "in. w.c.":
            name = "(1000*kilogram/meter**3*inch*standard_gravity)"
        power = power.lstrip("^").translate(SUPERSCRIPTS) if power else ""
        return f"{name}**({power})" if power else name

    spelled = re.sub(r"(in\. w\.c\.|imp gal|imp gpm|[A-Za-z°%µ]+\d*)([⁻⁰¹²³⁴⁵⁶⁷⁸⁹]+|\^[\d.]+)?", factor, text)
    try:
        quantity = (
            REGISTRY.Quantity(1.0) * REGISTRY.parse_expression(spelled.replace("·", "*"))
        ).to_base_units()
    except (
        pint.PintError,
        pint.UndefinedUnitError,
        AttributeError,
        TypeError,
        ValueError,
        tokenize.TokenError,
    ) as fault:
        raise Wrong(f"{text!r} is not a unit: {fault}") from None
    powers = dict(quantity.dimensionality)
    dims = tuple(float(powers.get(f"[{each}]", 0)) for each in ("length", "mass", "time", "temperature"))
    return float(quantity.magnitude), dims  # type: ignore[return-value]
