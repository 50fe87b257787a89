"""Writing quantities: grouped figures, feet and inches, one unit behind each number.

Three precisions: what was typed stands as typed; a found value is written with the starting places
of its kind and zeros at the end dropped; a headline is spoken in three figures. Whatever is written
here can be read back.
"""

from __future__ import annotations

from decimal import ROUND_CEILING, ROUND_HALF_UP, Context, Decimal
from functools import lru_cache
from math import floor, inf, isfinite, isnan, log10

from heatledger.ledger import dimensions as d
from heatledger.ledger.dimensions import Dimension
from heatledger.ledger.figures import Figure, Leaf, LedgerError
from heatledger.ledger.presets import Preset
from heatledger.ledger.unit_words import is_metric, is_neutral
from heatledger.ledger.units import INCH_M, Unit

NOT_KNOWN = "not known yet"
"""What stands in the place of a figure without a value."""

NARROW_SPACE = "\u202f"
_EXACT = Context(prec=800)
_EIGHTHS = ("", "⅛", "¼", "⅜", "½", "⅝", "¾", "⅞")
_MORE_PLACES = 4
_HUGE = 1e15
"""From here on a found value is written with a power of ten."""
_WHOLE_DEGREES = (d.TEMPERATURE, d.TEMPERATURE_DIFFERENCE)


def number_text(value: float, places: int, group: str = ",") -> str:
    """``value`` rounded to ``places`` decimals as a person rounds (a half goes away from zero).

    Thousands are parted by ``group``; a negative number has a true minus, and zero never has one.
    ``places`` below zero rounds to tens, hundreds and so on. Raises ValueError when not finite.
    """
    return _number_text(float(value), places, group)


@lru_cache(maxsize=8192)
def _number_text(value: float, places: int, group: str) -> str:
    """The same of a plain float, so that no figure is held here."""
    return _grouped(_rounded(value, places, ROUND_HALF_UP), max(places, 0), group)


def _rounded(value: float, places: int, how: str) -> Decimal:
    if not isfinite(value):
        raise ValueError(f"{value} has no number to write")
    return Decimal(repr(float(value))).quantize(Decimal(1).scaleb(-places), how, _EXACT)


def _grouped(number: Decimal, places: int, group: str) -> str:
    text = f"{abs(number):,.{places}f}".replace(",", group)
    return f"−{text}" if number < 0 else text


def grouping(unit: Unit, units: Preset) -> str:
    """What parts thousands in this unit for this reader: a comma, or a narrow space.

    A comma with a metric unit can be misread, and so can one with a number of hours or things in a
    metric text; it is refused there when read, and never written.
    """
    metric_reader = is_metric(units.shown(d.LENGTH).unit)
    spaced = is_metric(unit) or (metric_reader and is_neutral(unit))
    return NARROW_SPACE if spaced else ","


def show(value: float, units: Preset, dimension: Dimension | None = None, places: int | None = None) -> str:
    """A figure, or an SI value of kind ``dimension``, with its unit, as the reader sees it.

    ``places`` fixes the decimals in the reader's unit; without it zeros at the end are dropped, and
    a value typed in that very unit stands as typed. Lengths are feet and inches to the nearest
    eighth for readers who use them. A figure without a value is "not known yet".
    """
    kind = _kind(value, dimension)
    if isnan(value):
        return NOT_KNOWN
    if kind is d.LENGTH and units.feet_and_inches and places is None:
        return _typed_length(value) or feet_and_inches(float(value))
    shown = units.shown(kind)
    group = grouping(shown.unit, units)
    typed = _typed_in(value, shown.unit.text) if places is None else None
    if typed:
        return _with_unit(number_text(typed.typed_value, typed.places or 0, group), shown.unit)
    number = shown.unit.from_si(float(value), kind.absolute)
    if places is not None:
        return _with_unit(number_text(number, places, group), shown.unit)
    if kind is d.RADIATION or _HUGE <= abs(number) < inf:
        return _with_unit(_with_exponent(number), shown.unit)
    return _with_unit(_trimmed(_visible(number, shown.start(number), group)), shown.unit)


def _kind(value: float, dimension: Dimension | None) -> Dimension:
    if isinstance(value, Figure):
        if dimension is not None and dimension is not value.dimension:
            raise LedgerError(f"a figure of kind {value.dimension} is not shown as {dimension}")
        return value.dimension
    if dimension is None:
        raise LedgerError("a plain number is shown only when its kind is given")
    return dimension


def _typed_in(value: float, unit: str) -> Leaf | None:
    """The leaf of a value that was typed in decimals in this very unit."""
    origin = value.origin if isinstance(value, Figure) else None
    if isinstance(origin, Leaf) and origin.unit == unit and origin.places is not None:
        return None if isnan(origin.typed_value) else origin
    return None


def _with_unit(number: str, unit: Unit) -> str:
    return number if unit.text == "1" else f"{number} {unit.text}"


def _trimmed(text: str) -> str:
    return text.rstrip("0").rstrip(".") if "." in text else text


def _visible(number: float, places: int, group: str) -> str:
    """Rounded, with up to four more places where all its figures would be lost."""
    for more in range(_MORE_PLACES + 1):
        text = number_text(number, places + more, group)
        if text.strip("0.,−" + NARROW_SPACE):
            return text
    return number_text(number, places, group)


def _with_exponent(number: float) -> str:
    if number == 0:
        return "0"
    mantissa, _, power = f"{abs(number):.3e}".partition("e")
    return f"{'−' if number < 0 else ''}{_trimmed(mantissa)}e{int(power)}"


def feet_and_inches(meters: float) -> str:
    """A length as 12′ 6½″, to the nearest eighth of an inch; one below an eighth in decimal inches."""
    inches = abs(meters) / INCH_M
    eighths = int(_rounded(inches * 8, 0, ROUND_HALF_UP))
    sign = "−" if meters < 0 else ""
    if not eighths:
        text = _trimmed(_visible(inches, 2, ","))
        return "0″" if text == "0" else f"{sign}{text}″"
    feet, left = divmod(eighths, 96)
    whole, part = divmod(left, 8)
    if feet:
        return f"{sign}{feet:,}′ {whole}{_EIGHTHS[part]}″"
    return f"{sign}{whole or ('' if part else 0)}{_EIGHTHS[part]}″"


def _typed_length(value: float) -> str | None:
    """A length typed in decimal feet or inches that no eighth of an inch can show."""
    for unit, mark, eighths in (("ft", "′", 96), ("in", "″", 8)):
        typed = _typed_in(value, unit)
        if typed and not (typed.typed_value * eighths).is_integer():
            return number_text(typed.typed_value, typed.places or 0) + mark
    return None


def show_speaking(value: float, units: Preset, dimension: Dimension | None = None, up: bool = False) -> str:
    """A value for a headline: three figures, temperatures in whole degrees, lengths as in ``show``.

    ``up`` rounds upwards, for a temperature that must be enough.
    """
    kind = _kind(value, dimension)
    if isnan(value):
        return NOT_KNOWN
    if kind is d.LENGTH and units.feet_and_inches:
        return show(value, units, dimension)
    unit = units.shown(kind).unit
    if kind is d.RADIATION:
        return show(value, units, dimension)
    return _with_unit(
        _spoken(unit.from_si(float(value), kind.absolute), kind, grouping(unit, units), up), unit
    )


def _spoken(number: float, kind: Dimension, group: str, up: bool) -> str:
    places = 0
    if number and kind not in _WHOLE_DEGREES:
        places = 2 - floor(log10(abs(number)))
    # Noise in the last digits must not lift a whole number to the next one.
    settled = float(f"{number:.10g}")
    rounded = _rounded(settled, places, ROUND_CEILING if up else ROUND_HALF_UP)
    return _trimmed(_grouped(rounded, max(places, 0), group))


def show_range(
    low: float, high: float, units: Preset, dimension: Dimension | None = None, unit: bool = True
) -> str:
    """Two values as "33,100 to 39,400 Btu/h", in three figures; one where both round to the same.

    ``unit=False`` leaves the unit out, for a column that names it.
    """
    kind = _kind(low, dimension)
    _kind(high, dimension or kind)
    if isnan(low) or isnan(high):
        return NOT_KNOWN
    if kind is d.LENGTH and units.feet_and_inches:
        ends = [show(each, units, dimension) for each in (low, high)]
        return ends[0] if ends[0] == ends[1] else " to ".join(ends)
    shown = units.shown(kind).unit
    group = grouping(shown, units)
    ends = [_spoken(shown.from_si(float(each), kind.absolute), kind, group, False) for each in (low, high)]
    text = ends[0] if ends[0] == ends[1] else " to ".join(ends)
    return _with_unit(text, shown) if unit else text


def show_percent(share: float, places: int = 0) -> str:
    """A share as "15 %"; ``share`` is 0.15 for fifteen percent."""
    if isnan(share):
        return NOT_KNOWN
    return f"{number_text(float(_EXACT.multiply(Decimal(repr(float(share))), Decimal(100))), places)} %"


def show_half_range(entry: Figure, units: Preset) -> str:
    """How far an entry may be off either way: ``± 15 %``, or ``± 4 °F`` in the reader's unit.

    Empty for an entry that is taken as exact.
    """
    origin = entry.origin
    if not isinstance(origin, Leaf) or not origin.half_range:
        return ""
    words = origin.half_range_words.partition(",")[0]
    if words.endswith("%"):
        return f"± {words}"
    step = d.TEMPERATURE_DIFFERENCE if entry.dimension.absolute else entry.dimension
    return f"± {show(origin.half_range, units, step)}"
