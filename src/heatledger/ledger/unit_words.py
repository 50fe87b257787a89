"""The many spellings of the units of the table, and which units a kind of quantity may take.

A spelling is read as a product of atoms: everything behind the first stroke stands below it, as the
trade writes ``Btu/h-ft2-F``. What the atoms come to must be a unit of the closed table; nothing is
made up from parts that merely fit.
"""

from __future__ import annotations

import re
from difflib import get_close_matches
from fractions import Fraction
from functools import cache, lru_cache

from heatledger.ledger import dimensions as d
from heatledger.ledger.dimensions import Dimension
from heatledger.ledger.units import UNITS, Unit

_SPELLINGS = {
    "m": "meter meters metre metres",
    "cm": "centimeter centimeters centimetre centimetres",
    "mm": "millimeter millimeters millimetre millimetres",
    "ft": "foot feet '",
    "in": 'inch inches "',
    "yd": "yard yards",
    "kg": "kilogram kilograms",
    "g": "gram grams",
    "lb": "lbs lbm pound pounds",
    "s": "sec second seconds",
    "min": "minute minutes",
    "h": "hr hrs hour hours",
    "day": "d days",
    "K": "kelvin kelvins",
    "°C": "C Celsius",
    "°F": "F Fahrenheit",
    "°R": "R Rankine",
    "L": "liter liters litre litres",
    "gal": "gallon gallons usgal",
    "imp gal": "impgal",
    "J": "joule joules",
    "kJ": "kilojoule kilojoules",
    "MJ": "megajoule megajoules",
    "Btu": "Btus",
    "kBtu": "",
    "therm": "therms",
    "W": "watt watts",
    "kW": "kilowatt kilowatts",
    "MBH": "",
    "Pa": "pascal pascals",
    "kPa": "kilopascal kilopascals",
    "bar": "bars",
    "mbar": "millibar millibars",
    "psi": "psig",
    "%": "percent pct",
    "ppm": "",
    "Cv": "",
    "Kv": "",
}
# Runs of letters that stand for several atoms. Where a run could also be one atom with a prefix
# (mK), the table holds no such atom.
_RUNS: dict[str, tuple[tuple[str, int], ...]] = {
    "mK": (("m", 1), ("K", 1)),
    "kgK": (("kg", 1), ("K", 1)),
    "Wh": (("W", 1), ("h", 1)),
    "kWh": (("kW", 1), ("h", 1)),
    "btuh": (("Btu", 1), ("h", -1)),
    "kbtuh": (("kBtu", 1), ("h", -1)),
    "hft": (("h", 1), ("ft", 1)),
    "hrft": (("h", 1), ("ft", 1)),
    "ftf": (("ft", 1), ("°F", 1)),
    "hf": (("h", 1), ("°F", 1)),
    "hrf": (("h", 1), ("°F", 1)),
    "lbf": (("lb", 1), ("°F", 1)),
    "gpm": (("gal", 1), ("min", -1)),
    "usgpm": (("gal", 1), ("min", -1)),
    "impgpm": (("imp gal", 1), ("min", -1)),
    "igpm": (("imp gal", 1), ("min", -1)),
    "cfm": (("ft", 3), ("min", -1)),
    "cfh": (("ft", 3), ("h", -1)),
    "fpm": (("ft", 1), ("min", -1)),
    "fps": (("ft", 1), ("s", -1)),
    "lpm": (("L", 1), ("min", -1)),
    "lps": (("L", 1), ("s", -1)),
    "lph": (("L", 1), ("h", -1)),
}
# Large and small letters mean different things here, so these are read only as written.
_AS_WRITTEN = ("K", "MJ", "mK", "kgK", "Wh", "kWh")

_EXACT = {word: atom for atom, more in _SPELLINGS.items() for word in (atom, *more.split())}
_FOLDED = {word.casefold(): atom for word, atom in _EXACT.items() if word not in _AS_WRITTEN}
_FOLDED_RUNS = {run.casefold(): made for run, made in _RUNS.items() if run not in _AS_WRITTEN}

# Phrases brought to one spelling before the atoms are read; dots are gone by then.
_PHRASES = tuple(
    (re.compile(pattern, re.IGNORECASE), put)
    for pattern, put in (
        (r"\bdeg(?:rees|ree|s)? ?(?=[FCR]\b|Fahrenheit|Celsius|Rankine)", "°"),
        (r"° (?=[FCR])", "°"),
        (r"\b([FCR])°", r"°\1"),
        (r"°(Fahrenheit|Celsius|Rankine)", r"\1"),
        (r"℉", "°F"),
        (r"℃", "°C"),
        (r"\b(?:square|sq) ?(ft|foot|feet|inch|inches|in|met(?:er|re)s?|m|cm|mm)\b", r"\g<1>2"),
        (r"\b(?:cubic|cu) ?(ft|foot|feet|met(?:er|re)s?|m)\b", r"\g<1>3"),
        (r"\bsqft\b|\bsf\b", "ft2"),
        (r"\bcuft\b", "ft3"),
        (r"\bsqm\b", "m2"),
        (r"\b(?:imperial|imp|UK|i) ?gal(?:lons?)?\b", "impgal"),
        (r"\b(?:imperial|imp|UK) ?gpm\b", "impgpm"),
        (r"\bUS ?gal(?:lons?)?\b", "usgal"),
        (r"\bUS ?gpm\b", "usgpm"),
        (r"\bair changes|\bchanges|\bac(?=/h)", "1"),
        (r" ?\b(?:per|an)\b ?", "/"),
    )
)
_WATER_COLUMN = re.compile(
    r'(?:in|inch|inches|") ?(?:of )?(?:wc|wg|w c|w g|h2o|h₂o|water(?: column| gauge)?)', re.IGNORECASE
)
_AT_50 = re.compile(r"(?: ?(?:@|at) ?50(?: ?pa(?:scals?)?)?|(?<=cfm) ?50(?: ?pa)?)$", re.IGNORECASE)
_FAN_TEST = ("cfm50", "m³/h at 50 Pa")
_FRICTION = re.compile(r"(ft|m)/100 ?(ft|m)", re.IGNORECASE)
_SUPERSCRIPT = str.maketrans("⁰¹²³⁴⁻", "01234-")
_PIECE = re.compile(r"(°?[A-Za-z]+|['\"%])\^?(-?[1-4])?")

Powers = frozenset[tuple[str, Fraction]]


def _merged(pieces: list[tuple[str, int]]) -> Powers:
    totals: dict[str, int] = {}
    for atom, power in pieces:
        totals[atom] = totals.get(atom, 0) + power
    return frozenset((atom, Fraction(power)) for atom, power in totals.items() if power)


@cache
def _by_powers() -> dict[Powers, tuple[str, ...]]:
    found: dict[Powers, tuple[str, ...]] = {}
    for unit in UNITS.values():
        if unit.text not in ("1", *_FAN_TEST, "ft/100 ft", "m/100 m"):
            # As it is written, not as it is sized: a degree Rankine cancels against one Fahrenheit.
            key = _powers(unit.text) or frozenset(unit.powers)
            found[key] = (*found.get(key, ()), unit.text)
    return found


def _atoms(run: str, power: int) -> list[tuple[str, int]] | None:
    """Atoms of one run of letters; only its last atom takes the power."""
    atom = _EXACT.get(run) or _FOLDED.get(run.casefold())
    if atom:
        return [(atom, power)]
    made = _RUNS.get(run) or _FOLDED_RUNS.get(run.casefold())
    if not made:
        return None
    return [*made[:-1], (made[-1][0], made[-1][1] * power)] if power > 0 else None


def _powers(words: str) -> Powers | None:
    """Powers of the atoms a spelling comes to, or None when a part of it is no atom."""
    if words.count("(") != words.count(")") or words.startswith(")"):
        return None
    words = re.sub(r"[·⋅•∙*×]|(?<=\S)\.(?=\S)", " ", words.translate(_SUPERSCRIPT).replace("**", "^"))
    words = re.sub(r"(?<=[A-Za-z0-9)])-(?=[A-Za-z°(])", " ", words.replace(".", ""))
    top, stroke, bottom = re.sub(r"[()]", " ", words).partition("/")
    if stroke and not bottom.strip():
        return None
    pieces: list[tuple[str, int]] = []
    for part, sign in ((top, 1), (bottom.replace("/", " "), -1)):
        for token in part.split():
            if token == "1":
                continue
            found = _PIECE.findall(token)
            if "".join(run + power for run, power in found) != token.replace("^", ""):
                return None
            for run, power in found:
                atoms = _atoms(run, int(power or 1))
                if atoms is None:
                    return None
                pieces += [(atom, sign * each) for atom, each in atoms]
    return _merged(pieces)


def _spelled_out(words: str) -> str:
    """``words`` with dots of abbreviations dropped and phrases brought to one spelling."""
    words = re.sub(r"\.(?=\s|$|[\"'])", "", words)
    words = re.sub(r"\b(sq|cu|imp)\.", r"\1 ", words, flags=re.IGNORECASE)
    for pattern, put in _PHRASES:
        words = pattern.sub(put, words)
    return words.strip()


@lru_cache(maxsize=4096)
def meanings(words: str) -> tuple[str, ...]:
    """Texts of every unit of the table that ``words`` may name; empty when there is none."""
    if words in UNITS and words != "1":
        return (words, *(each for each in _texts(words) if each != words))
    if _WATER_COLUMN.fullmatch(words.replace(".", "")):
        return ("in. w.c.",)
    if words.casefold() == "ach":
        return ("ACH",)
    friction = _FRICTION.fullmatch(words.strip())
    if friction:
        same = friction[1].casefold() == friction[2].casefold()
        return ({"ft": "ft/100 ft", "m": "m/100 m"}[friction[1].casefold()],) if same else ()
    if _AT_50.search(words):
        flow = _texts(_AT_50.sub("", words))
        return tuple(test for plain, test in zip(("cfm", "m³/h"), _FAN_TEST, strict=True) if plain in flow)
    return _texts(words)


def _texts(words: str) -> tuple[str, ...]:
    powers = _powers(_spelled_out(words))
    if not powers:
        return ()
    table = _by_powers()
    if powers not in table and len(powers) > 1:
        powers = frozenset(("K" if atom == "°C" else atom, power) for atom, power in powers)
    return table.get(powers, ())


_FLOWS = ("L/s", "L/min", "L/h", "m³/h", "m³/s")
_ONLY: dict[Dimension, tuple[str, ...]] = {
    d.RATIO: ("1", "%"),
    d.COUNT: ("1",),
    d.REYNOLDS: ("1",),
    d.VOLUME_FLOW: ("gpm", "imp gpm", *_FLOWS),
    d.AIR_FLOW: ("cfm", "ft³/h", *_FLOWS),
    d.LEAKAGE_AT_50_PA: ("cfm50", "m³/h at 50 Pa"),
    d.AIR_CHANGES: ("ACH",),
    d.ABSOLUTE_TEMPERATURE: ("K", "°R"),
    d.EDGE_LOSS: ("Btu/(h·ft·°F)", "W/(m·K)"),
    d.FRICTION: ("ft/100 ft", "m/100 m"),
    d.CONCENTRATION: ("ppm",),
    d.BORE: ("in", "mm"),
    d.DRAFT: ("in. w.c.", "Pa"),
    d.POWER: ("W", "kW"),
    d.PRESSURE: ("psi", "Pa", "kPa", "bar", "mbar", "in. w.c."),
    d.HEAT_CONTENT: ("Btu/gal", "Btu/ft³", "MJ/L", "MJ/m³", "kWh/L", "kWh/m³"),
    d.WATER_HEAT: ("Btu/(h·gpm·°F)", "Wh/(L·K)"),
    d.VOLUME_HEAT: ("Btu/(ft³·°F)", "J/(m³·K)", "kJ/(m³·K)", "Wh/(m³·K)"),
}


@cache
def allowed(dimension: Dimension) -> tuple[Unit, ...]:
    """The units a quantity of this kind may be typed in."""
    if dimension in _ONLY:
        return tuple(UNITS[text] for text in _ONLY[dimension])
    return tuple(unit for unit in UNITS.values() if unit.exponents == dimension.exponents)


def unit_named(words: str, dimension: Dimension) -> Unit | None:
    """The unit ``words`` name among those allowed for ``dimension``, or None."""
    named = meanings(words)
    return next((unit for unit in allowed(dimension) if unit.text in named), None)


def nearest(words: str, dimension: Dimension) -> tuple[str, ...]:
    """Units allowed for ``dimension`` that are spelled most like ``words``, best first."""
    pool = {unit.text.casefold(): unit.text for unit in allowed(dimension) if unit.text != "1"}
    close = get_close_matches(words.casefold(), list(pool), n=3, cutoff=0.5)
    return tuple(pool[each] for each in close)


_METRIC_ATOMS = frozenset(
    ("m", "cm", "mm", "kg", "g", "K", "°C", "L", "J", "kJ", "MJ", "W", "kW", "Pa", "kPa", "bar", "mbar")
)


_KNOWN_METRIC: dict[str, bool] = {}


def is_metric(unit: Unit) -> bool:
    """True for a unit with a metric atom in it (hours, counts and percents are neither)."""
    known = _KNOWN_METRIC.get(unit.text)
    if known is None:
        known = _KNOWN_METRIC[unit.text] = any(atom in _METRIC_ATOMS for atom, _ in unit.powers)
    return known


def is_neutral(unit: Unit) -> bool:
    """True for counts, percents and times, which both systems share."""
    return all(atom in ("s", "min", "h", "day", "%", "ppm", "Cv", "Kv") for atom, _ in unit.powers)
