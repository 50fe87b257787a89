"""Figures as texts for tables and sentences of the papers."""

from __future__ import annotations

from heatledger.ledger.dimensions import LENGTH
from heatledger.ledger.figures import Figure
from heatledger.ledger.presets import Preset
from heatledger.ledger.show import number_text, show
from heatledger.ledger.units import UNITS

SECONDS_OF_A_MINUTE, MINUTES_OF_AN_HOUR = 60, 60
FROM_HERE_ONE_DECIMAL = 10
_SAME_SIGNS = (
    ("′", "'"),
    ("″", '"'),
    ("−", "-"),
    ("²", "2"),
    ("³", "3"),
    ("·", ""),
    ("*", ""),
    ("(", ""),
    (")", ""),
    (",", ""),
    (" ft", "'"),
)


def whole(figure: Figure, units: Preset) -> str:
    """A figure to whole units, for headlines; empty when it has no value."""
    return "" if figure.is_missing else show(figure, units, places=0)


def spoken_time(figure: Figure, units: Preset) -> str:
    """A time as it is said: minutes below an hour."""
    minutes = float(figure) / SECONDS_OF_A_MINUTE
    return f"{number_text(minutes, 0)} min" if 1.0 <= minutes < MINUTES_OF_AN_HOUR else show(figure, units)


def times(figure: Figure, units: Preset) -> str:
    """How many times one thing is another, as it is spoken: two decimals, one from ten on."""
    return number_text(float(figure), 2 if abs(float(figure)) < FROM_HERE_ONE_DECIMAL else 1)


def height_above_sea(figure: Figure, units: Preset) -> str:
    """An elevation in whole feet or meters, never in inches; empty when it has no value."""
    if figure.is_missing:
        return ""
    unit = UNITS["ft"] if units.feet_and_inches else units.shown(LENGTH).unit
    return f"{number_text(unit.from_si(float(figure)), 0)} {unit.text}"


def floors_word(units: Preset, many: bool = False) -> str:
    """What one floor of a house is called by this reader."""
    american = units.feet_and_inches
    return ("stories" if many else "story") if american else ("storeys" if many else "storey")


def same_text(typed: str, printed: str) -> bool:
    """Whether what was typed and what is printed differ in the shape of their signs alone.

    ``U-0.35`` is 0.35 in the unit of the reader, and ``6'`` is 6 feet and no inches.
    """
    said, shown = _plain(typed), _plain(printed)
    if said[:1] in ("u", "r"):
        said = said[1:].lstrip("-=")
        said = f"0{said}" if said.startswith(".") else said
        return bool(said) and shown.startswith(said) and not shown[len(said) :][:1].isdigit()
    return said == shown


def _plain(text: str) -> str:
    for sign, plain in _SAME_SIGNS:
        text = text.replace(sign, plain)
    text = "".join(text.split()).lower()
    text = f"0{text}" if text.startswith(".") else text
    return text.removesuffix('0"') if text.endswith("'0\"") else text
