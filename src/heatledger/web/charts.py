"""Charts of the drawings on a page: the picture, its sentence, and the table of its points."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import TYPE_CHECKING

from markupsafe import Markup

from heatledger.drawings.chart import Chart
from heatledger.drawings.hatches import swatch
from heatledger.drawings.shapes import Drawing
from heatledger.drawings.to_svg import ON_SCREEN, to_svg
from heatledger.web.fragments import Fragment

if TYPE_CHECKING:
    from heatledger.web.page import Page


def chart_fragment(chart: Chart | None, css: str = "", titled: bool = True) -> list[Fragment]:
    """A chart as a fragment of its own; none where there is nothing to draw yet."""
    if chart is None:
        return []
    return [Fragment(f"chart-{chart.id}", "chart.html", {"chart": chart, "titled": titled}, css)]


def chart_later(
    page: Page, id: str, charted: Callable[[], Chart | None], titled: bool = True
) -> list[Fragment]:
    """A chart that follows after an edit has been answered; till then it stays as it was."""
    if not page.ready:
        return [Fragment(f"chart-{id}", "chart_wait.html", waits=True)]
    return [replace(each, waits=True) for each in chart_fragment(charted(), titled=titled)]


def svg(drawing: Drawing, id: str, scale: float = ON_SCREEN) -> Markup:
    """A drawing as markup; its ids begin with ``id``."""
    return Markup(to_svg(drawing, id, scale))


def picture(chart: Chart) -> Markup:
    """The picture of a chart as markup."""
    return Markup(chart.svg())


def chip(cause: str) -> Markup:
    """The hatch of a cause, for the head of its column."""
    drawing = Drawing(cause, cause, 15.0, 11.0, swatch(cause, 15.0, 11.0))
    return Markup('<span class="chip" aria-hidden="true">{}</span>').format(
        Markup(to_svg(drawing, f"chip-{cause}", 1.0))
    )
