"""A chart: its picture, the sentence that gives its result, and the table of its points."""

from __future__ import annotations

from dataclasses import dataclass

from heatledger.drawings.figure_words import bare
from heatledger.drawings.shapes import Drawing
from heatledger.drawings.to_svg import ON_SCREEN, to_svg
from heatledger.ledger.dimensions import Dimension
from heatledger.ledger.figures import Figure
from heatledger.ledger.presets import Preset
from heatledger.ledger.show import grouping
from heatledger.steps.design import Design

WIDE, NARROW = 516.0, 360.0
"""Widths in points of a chart on a left page and on a right one."""


@dataclass(frozen=True)
class ChartCell:
    """A cell of the table: its text, and the path of the figure that opens where there is one."""

    text: str
    path: str = ""


@dataclass(frozen=True)
class Chart:
    """A chart with its table. ``head`` names the columns, ``note`` says what it leaves out."""

    id: str
    title: str
    drawing: Drawing
    sentence: str
    head: tuple[str, ...]
    rows: tuple[tuple[ChartCell, ...], ...]
    note: str = ""

    def svg(self, scale: float = ON_SCREEN) -> str:
        """The picture for a page, its ids after the chart's own."""
        return to_svg(self.drawing, self.id, scale)


NONE = ChartCell("–")


def cell(figure: Figure | None, house: Design, units: Preset, places: int | None = None) -> ChartCell:
    """A figure in a column that names its unit; a dash where there is none, empty where it is missing."""
    if figure is None:
        return NONE
    places = units.shown(figure.dimension).places if places is None else places
    return ChartCell(bare(figure, units, places), house.names.path(figure))


def shown(value: float, units: Preset, dimension: Dimension) -> float:
    """An SI value in the reader's unit, for a place on a drawing."""
    return float(units.shown(dimension).unit.from_si(float(value), dimension.absolute))


def unit_of(units: Preset, dimension: Dimension) -> str:
    """The reader's unit of a dimension."""
    return units.shown(dimension).unit.text


def group_of(units: Preset, dimension: Dimension) -> str:
    """What parts thousands in the reader's unit of a dimension."""
    return grouping(units.shown(dimension).unit, units)


def known(*figures: Figure | None) -> bool:
    """Whether all of them are there and have a value."""
    return all(each is not None and not each.is_missing for each in figures)
