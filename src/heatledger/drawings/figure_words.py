"""Figures as texts and sizes for drawings, charts and tables."""

from __future__ import annotations

from math import ceil

from heatledger.ledger.dimensions import TEMPERATURE
from heatledger.ledger.figures import Figure
from heatledger.ledger.presets import Preset
from heatledger.ledger.show import number_text, show


def bare(figure: Figure, units: Preset, places: int | None = None) -> str:
    """A figure without its unit, with ``places`` decimals where a column lines up; empty when missing."""
    if figure.is_missing:
        return ""
    return without_unit(show(figure, units, places=places), figure, units)


def without_unit(text: str, figure: Figure, units: Preset) -> str:
    """The text of a figure less its unit."""
    return text.removesuffix(units.shown(figure.dimension).unit.text).strip()


def enough(figure: Figure, units: Preset) -> str:
    """A temperature that must carry something, in whole degrees and never too low.

    What is rounded up is the figure as the tables print it, so that 158.0 is 158 and not 159.
    """
    if figure.is_missing:
        return ""
    shown = units.shown(TEMPERATURE)
    printed = round(shown.unit.from_si(float(figure), TEMPERATURE.absolute), shown.places)
    return f"{number_text(ceil(printed), 0)} {shown.unit.text}"


def amount(figure: Figure) -> float:
    """The size of a figure for a drawing; nothing when it has no value."""
    return 0.0 if figure.is_missing else float(figure)
