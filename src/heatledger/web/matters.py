"""What matters most to a figure: its inputs with how far each may move it, longest first."""

from __future__ import annotations

from heatledger.drawings.charts import what_matters
from heatledger.web.charts import chart_fragment
from heatledger.web.fragments import Fragment
from heatledger.web.page import Page


def matters(page: Page, path: str) -> list[Fragment]:
    """The swings of a figure as a chart; none where nothing moves it."""
    return chart_fragment(what_matters(page.house, page.units, path))
