"""Reading quantities in the notation of the trade: 12' 6", R-19, U-0.30, 70F, 34 kBtu/h.

The caller says which kind of quantity is expected; the text alone never decides. The units are
those of the closed table, a bare number takes the reader's unit of that kind, and whatever could be
read in two ways is an error that offers each reading.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass
from math import inf, isfinite
from typing import NoReturn, TypeVar

from heatledger.ledger import dimensions as d
from heatledger.ledger.dimensions import Dimension
from heatledger.ledger.numerals import NotationError, Numeral, comma_error, plain, take
from heatledger.ledger.presets import Preset
from heatledger.ledger.refusals import no_such_unit, no_unit, other_kind
from heatledger.ledger.unit_words import is_metric, is_neutral, meanings, unit_named
from heatledger.ledger.units import INCH_M, UNITS, Unit

__all__ = ["NotationError", "Reading", "read", "read_pair", "read_percent"]

T = TypeVar("T")


@dataclass(frozen=True)
class Reading:
    """A quantity as it was read.

    ``value`` is in SI, ``unit`` the text of the unit in the table, ``typed_value`` the number in
    that unit, ``places`` the decimals typed (None when it was typed in parts, as a fraction or with
    an exponent), ``text`` what was typed.
    """

    value: float
    unit: str
    typed_value: float
    places: int | None
    text: str


_LABEL = re.compile(r"(RSI|USI|R|U|F)(?:[ -]?(?:value|factor))? ?[-=:]? ?(?=[0-9.])", re.IGNORECASE)
_LABELLED = {
    "R": d.RESISTANCE, "RSI": d.RESISTANCE, "U": d.TRANSMITTANCE, "USI": d.TRANSMITTANCE, "F": d.EDGE_LOSS,
}  # fmt: skip
_LABEL_UNIT = {"RSI": "m²·K/W", "USI": "W/(m²·K)"}
# 15ft6in is read too, but not 15ft2, which is an area.
_IN_PARTS = re.compile(
    r"([+-]?)([0-9][0-9,.]*) ?(?:'|(?:ft\b\.?|feet\b|foot\b)|(?:ft|feet|foot)(?=[0-9][0-9./ -]*(?:\"|in)))"
    r" ?-? ?([0-9].*)",
    re.IGNORECASE,
)
_INCHES_BEHIND = re.compile(r"(?:\"|in\.?|inch|inches)?", re.IGNORECASE)
_OF_HEAD = re.compile(r" ?(?:of )?head$", re.IGNORECASE)
_PAIR = re.compile(r"\s*[x×*]\s*|\s+by\s+", re.IGNORECASE)
_DASHED = re.compile(r"([0-9]{1,3}) ?- ?([0-9]{1,2}) ?(?:\"|in\.?)?", re.IGNORECASE)
_NO_UNIT = re.compile(r"[0-9.,/ +-]+(?:[eE][+-]?[0-9]+)?")
_DEGREES = ("°", "deg", "degree", "degrees")


def read(text: str, dimension: Dimension, units: Preset, bare: bool = True) -> Reading:
    """The quantity that ``text`` gives, as one of kind ``dimension``.

    ``units`` is the reader's preset, whose unit a number without one takes; ``bare=False`` refuses
    such a number. Raises NotationError with a code, a message and texts that can be read instead.
    """
    return _only_readable_offers(text, lambda each: _read(each, dimension, units, bare))


def _only_readable_offers(text: str, reader: Callable[[str], T]) -> T:
    """What ``reader`` makes of ``text``; its error keeps only those offers that it can read itself."""
    try:
        return reader(text)
    except NotationError as error:
        offers = []
        for offer in error.offers:
            with suppress(NotationError):
                reader(offer)
                offers.append(offer)
        raise NotationError(error.code, error.message, tuple(offers)) from None


def _read(text: str, dimension: Dimension, units: Preset, bare: bool) -> Reading:
    typed = plain(text)
    label = _LABEL.match(typed)
    if label:
        return _read_label(label.group(1).upper(), typed[label.end() :], typed, text, dimension, units)
    if dimension is d.HEAD:
        typed = _OF_HEAD.sub("", typed) or typed
    if dimension in (d.LENGTH, d.HEAD):
        _refuse_dashed(typed)
        parts = _IN_PARTS.fullmatch(typed)
        if parts:
            return _read_feet_and_inches(parts, typed, text)
    numeral, words = take(typed)
    if words.casefold() in _DEGREES and dimension in (d.TEMPERATURE, d.TEMPERATURE_DIFFERENCE):
        words = ""
    if words:
        unit = unit_named(words, dimension) or _refuse(numeral, words, dimension, units)
    else:
        unit = units.shown(dimension).unit
        if not bare and unit.text not in ("1", "ACH"):
            raise no_unit(numeral, dimension)
    return _reading(numeral, words, unit, dimension, units, text)


def _reading(
    numeral: Numeral, words: str, unit: Unit, dimension: Dimension, units: Preset, text: str
) -> Reading:
    """The reading of a number in a unit that fits, after the checks on both together."""
    metric_reader = is_metric(units.shown(d.LENGTH).unit)
    if numeral.commas and (is_metric(unit) or (metric_reader and is_neutral(unit))):
        sign = numeral.text[0] if numeral.text[0] in "+-" else ""
        raise comma_error(sign, numeral.text, words)
    if dimension is d.COUNT and not numeral.value.is_integer():
        raise NotationError("not-whole", f"{numeral.text} is not a whole number, and things are counted here")
    value = unit.to_si(numeral.value, dimension.absolute)
    if not isfinite(value):
        raise NotationError("not-finite", f"{numeral.text[:20]} is too large to be a quantity")
    if dimension.absolute and value < 0:
        raise NotationError("below-absolute-zero", f"{text.strip()} is colder than anything can be")
    return Reading(value, unit.text, numeral.value, numeral.places, text.strip())


def _refuse(numeral: Numeral, words: str, dimension: Dimension, units: Preset) -> NoReturn:
    """Raise what fits a unit that is not of this kind; an R for a U and the like say so."""
    for each in meanings(words):
        unit = UNITS[each]
        for kind in (d.RESISTANCE, d.TRANSMITTANCE):
            if unit.exponents == kind.exponents:
                typed = f"{numeral.text} {words}"
                raise other_kind(typed, unit.to_si(numeral.value), kind, dimension, units)
    raise no_such_unit(numeral, words, dimension)


def _read_feet_and_inches(parts: re.Match[str], typed: str, text: str) -> Reading:
    """A length in feet and inches; the second number counts inches, with or without their mark."""
    sign, feet_text, rest = parts.groups()
    feet, _ = take(feet_text)
    inches, behind = take(rest)
    if not _INCHES_BEHIND.fullmatch(behind):
        raise NotationError("unknown-unit", f"{typed} is not a length in feet and inches, such as 12' 6\"")
    if feet.places != 0:
        raise NotationError(
            "two-readings", f"{typed} has a part of a foot and inches beside it; give one of them",
            (f"{sign}{feet_text.rstrip('.')}'",),
        )  # fmt: skip
    if inches.value >= 12:
        whole = feet.value * 12 + inches.value
        raise NotationError(
            "two-readings", f"{typed} has 12 inches or more beside its feet",
            (f"{sign}{whole // 12:g}' {whole % 12:g}\"", f"{sign}{whole:g}\""),
        )  # fmt: skip
    total = feet.value * 12 + inches.value
    total = -total if sign == "-" else total
    return Reading(total * INCH_M, "ft", total / 12, None, text.strip())


def _read_label(label: str, rest: str, typed: str, text: str, dimension: Dimension, units: Preset) -> Reading:
    """A number behind R, U or F, which name the kind; RSI and USI name the metric unit too."""
    kind = _LABELLED[label]
    numeral, words = take(rest)
    if words:
        named = unit_named(words, kind)
        if named is None:
            raise no_such_unit(numeral, words, kind)
        unit = named
        wanted = _LABEL_UNIT.get(label, unit.text)
        if unit.text != wanted:
            raise NotationError(
                "wrong-unit", f"{label} stands for {wanted}, and {typed} says {unit.text}",
                (f"{numeral.text} {wanted}", f"{numeral.text} {unit.text}"),
            )  # fmt: skip
    else:
        unit = UNITS[_LABEL_UNIT[label]] if label in _LABEL_UNIT else units.shown(kind).unit
    if kind is not dimension:
        raise other_kind(typed, unit.to_si(numeral.value), kind, dimension, units)
    if label == "R" and not words and is_metric(unit):
        # Insulation is labelled in both systems, nearly six times apart, so a metric job must say which.
        raise NotationError(
            "two-readings", f"{typed} may be metric or inch-pound; give its unit",
            (f"RSI {numeral.text}", f"{numeral.text} h·ft²·°F/Btu"),
        )  # fmt: skip
    return _reading(numeral, words, unit, dimension, units, text)


def _refuse_dashed(typed: str) -> None:
    """An error that offers 15' 6" for 15-6."""
    dashed = _DASHED.fullmatch(typed)
    if dashed and int(dashed[2]) < 12:
        raise NotationError(
            "not-a-number", f"{typed} has no marks for its feet and inches", (_marked(*dashed.groups()),)
        )


def _marked(feet: str, inches: str) -> str:
    return f"{int(feet)}' {int(inches)}\""


def read_pair(text: str, units: Preset, longest_bare: float = inf) -> tuple[Reading, Reading]:
    """Two lengths, as 12' × 9' or 3.8 m x 2.4 m; where only one has a unit, both have it.

    Where none has a unit and one is above ``longest_bare`` feet or meters, inches or millimeters may be
    meant. Raises NotationError (code not-a-pair, two-readings, or that of the side which cannot be read).
    """
    typed = plain(text)
    sides = _PAIR.split(text.strip())
    dashed = [_DASHED.fullmatch(plain(side)) for side in sides if side]
    if len(dashed) == len(sides) == 2 and any(each and int(each[2]) < 12 for each in dashed):
        marked = [_marked(*each.groups()) if each else side for each, side in zip(dashed, sides, strict=True)]
        message = f"{typed} has no marks for its feet and inches"
        raise NotationError("not-a-number", message, (" x ".join(marked),))
    if re.fullmatch("[1-9][0-9][1-9][0-9]", typed):
        offered = f"{_marked(typed[0], typed[1])} x {_marked(typed[2], typed[3])}"
        raise NotationError("not-a-pair", f"{typed} is not two lengths, such as 12' × 9'", (offered,))
    if len(sides) != 2 or not all(sides):
        raise NotationError("not-a-pair", f"{text.strip()} is not two lengths, such as 12' × 9'")
    first, second = (read(side, d.LENGTH, units) for side in sides)
    has_unit = [_NO_UNIT.fullmatch(plain(side)) is None for side in sides]
    if not any(has_unit) and max(first.typed_value, second.typed_value) > longest_bare:
        in_feet = first.unit == "ft"
        offers = tuple(
            f"{sides[0]}{mark} x {sides[1]}{mark}"
            for mark in (('"', "'") if in_feet else (" mm", " cm", " m"))
        )
        small = "inches or feet" if in_feet else "millimeters, centimeters or meters"
        raise NotationError("two-readings", f"{typed} has no units, and may be {small}", offers)
    if has_unit == [False, True]:
        first = read(f"{sides[0]} {second.unit}", d.LENGTH, units)
    if has_unit == [True, False]:
        second = read(f"{sides[1]} {first.unit}", d.LENGTH, units)
    return first, second


def read_percent(text: str) -> float:
    """A share given in percent, as 10 % or ± 10 %; 0.1 for ten percent.

    A number without the percent sign is refused: it may be meant either way.
    """
    return _only_readable_offers(text, _read_percent)


def _read_percent(text: str) -> float:
    typed = re.sub(r"^(?:±|\+ ?/ ?-|\+-) ?", "", plain(text))
    numeral, words = take(typed)
    if not words:
        number = numeral.text.replace(",", "")
        offers = [f"{number} %"] + ([f"{numeral.value * 100:.6g} %"] if 0 < abs(numeral.value) <= 1 else [])
        raise NotationError("no-unit", f"{number} has no percent sign", tuple(offers))
    if "%" not in meanings(words):
        raise NotationError("wrong-unit", f"{typed} is not a percentage", (f"{numeral.text} %",))
    return numeral.value / 100
