"""What is said about a unit that does not fit: what was meant, what is expected, what to write."""

from __future__ import annotations

import re

from heatledger.ledger import dimensions as d
from heatledger.ledger.dimensions import Dimension
from heatledger.ledger.numerals import NotationError, Numeral
from heatledger.ledger.presets import METRIC, US, Preset
from heatledger.ledger.unit_words import allowed, is_metric, meanings, nearest, unit_named
from heatledger.ledger.units import UNITS


def expected(dimension: Dimension) -> str:
    """The kind that is expected, with its units: "a length (ft, in, yd, m, cm, mm)"."""
    texts = [unit.text for unit in allowed(dimension) if unit.text != "1"]
    return f"{_a(dimension)} ({', '.join(texts) or 'a number without a unit'})"


def _a(dimension: Dimension) -> str:
    if dimension.name.endswith("s"):
        return dimension.name
    return f"{'an' if dimension.name[0] in 'aeioR' else 'a'} {dimension.name}"


def other_kind(
    typed: str, value: float, kind: Dimension, dimension: Dimension, units: Preset
) -> NotationError:
    """An R typed where a U is expected and the like; ``value`` is what was typed, in SI of ``kind``."""
    if {kind, dimension} != {d.RESISTANCE, d.TRANSMITTANCE}:
        return NotationError("wrong-unit", f"{typed} is {_a(kind)}; expected here: {expected(dimension)}")
    offers: tuple[str, ...] = ()
    if value > 0:
        unit = units.shown(dimension).unit
        offers = (f"{unit.from_si(1 / value):.4g} {unit.text}",)
    message = (
        f"{typed} is {_a(kind)}, and {_a(dimension)} of the whole assembly is expected here. "
        "The rating of a batt leaves out framing, films and the other layers"
    )
    return NotationError("wrong-unit", message, offers)


def no_unit(numeral: Numeral, dimension: Dimension) -> NotationError:
    """A number without a unit where one is needed."""
    texts = dict.fromkeys(preset.shown(dimension).unit.text for preset in (US, METRIC))
    number = numeral.text.replace(",", "")
    return NotationError(
        "no-unit",
        f"{numeral.text} has no unit, and one is needed here: {expected(dimension)}",
        tuple(f"{number} {text}" for text in texts),
    )


def no_such_unit(numeral: Numeral, words: str, dimension: Dimension) -> NotationError:
    """Words behind a number that name no unit of this kind, with the nearest ones that do."""
    trap = _trap(numeral, words, dimension) or _second_number(numeral, words)
    if trap:
        return trap
    named = [UNITS[each] for each in meanings(words)]
    if not named:
        offers = tuple(_with(numeral, each) for each in nearest(words, dimension))
        message = f"{words} is not a unit that is known here; expected: {expected(dimension)}"
        return NotationError("unknown-unit", message, offers)
    # A unit of the same measure but another kind (cfm of a fan test, inches of insulation) is no slip of
    # the pen: the same number in another unit would be wrong by a factor nobody sees.
    offers = ()
    if all(unit.exponents != dimension.exponents for unit in named):
        offers = tuple(
            _with(numeral, each) for each in nearest(words, dimension) or _turned(words, dimension)
        )
    message = f"{words} is not a unit of {dimension.name}; expected: {expected(dimension)}"
    return NotationError("wrong-unit", message, offers)


def _turned(words: str, dimension: Dimension) -> tuple[str, ...]:
    """The unit of this kind in the same system, when the one typed is this kind upside down."""
    first = UNITS[meanings(words)[0]]
    if first.exponents != tuple(-each for each in dimension.exponents):
        return ()
    return tuple(each.text for each in allowed(dimension) if is_metric(each) == is_metric(first))


def _with(numeral: Numeral, unit: str) -> str:
    number = numeral.text.replace(",", "") if is_metric(UNITS[unit]) else numeral.text
    return f"{number} {unit}"


def _second_number(numeral: Numeral, words: str) -> NotationError | None:
    """Two numbers in one entry; groups of three parted by spaces are offered as one number."""
    if not re.match(r"[-+]? ?[0-9.]", words):
        return None
    groups = re.match(r"[0-9]{3}(?: [0-9]{3})*(?![0-9.,/])", words)
    short = len(numeral.text.lstrip("+-")) <= 3
    offers: tuple[str, ...] = ()
    if groups and short and numeral.places == 0:
        offers = (numeral.text + groups.group().replace(" ", "") + words[groups.end() :],)
    return NotationError("not-a-number", f"{numeral.text} {words} has more than one number in it", offers)


def _trap(numeral: Numeral, words: str, dimension: Dimension) -> NotationError | None:
    """Words of the trade that mean something else here, or two things."""
    key = re.sub(r"[\s.()·-]", "", words.casefold())
    typed = f"{numeral.text} {words}"
    if re.fullmatch(r"(?:ach|ac/h|1?/h)(?:@|at)?50(?:pa)?", key):
        message = f"{typed} is from a fan test at 50 Pa, many times what the weather does"
        return NotationError("wrong-unit", f"{message}; expected here: {expected(dimension)}")
    if re.fullmatch(r"mbtu(?:h|/h|/hr|perhour)?", key):
        unit = "kBtu" if key == "mbtu" else "kBtu/h"
        offers = (f"{numeral.value:.12g} {unit}", f"{numeral.value * 1000:.12g} {unit}")
        fits = unit_named(unit, dimension) is not None
        message = f"{typed} may mean thousands or millions of Btu"
        return NotationError("two-readings", message, offers if fits else ())
    if key in ("ton", "tons") and dimension is d.HEAT_RATE:
        message = f"{typed}: tons of cooling are not read; one is 12,000 Btu/h"
        return NotationError("unknown-unit", message, (f"{numeral.value * 12:.12g} kBtu/h",))
    if key in ("mw", "megawatt", "megawatts", "milliwatt", "milliwatts"):
        message = f"{typed}: millions and thousandths of a watt are not read; expected: {expected(dimension)}"
        return NotationError("unknown-unit", message)
    if key == "psia" and dimension is d.PRESSURE:
        message = f"{typed} counts from vacuum; pressures here are those a gauge shows"
        return NotationError("wrong-unit", message)
    return None
