"""Sheet 5: from load to output, the water and its tank, pressures, fuel bills, and the parts."""

from __future__ import annotations

from typing import Any

from heatledger.drawings.firing_chart import firing_range
from heatledger.drawings.schematic import schematic
from heatledger.papers.printing import Printing
from heatledger.papers.schematic_from import schematic_views, undrawn
from heatledger.studies.replacement import replacement
from heatledger.web.charts import chart_fragment, svg
from heatledger.web.fragments import Fragment
from heatledger.web.page import Page
from heatledger.web.parts import questions, working_fragment
from heatledger.web.records import record

TITLE = "Boiler room"
CSS = "boiler-room.css"
WIDTH = 540.0
PARTS = ("plant", "plant/boiler", "plant/tank", "plant/mains", "bills")


def left(page: Page) -> list[Fragment]:
    """What the boiler must supply, the water and its tank, the pressures, the bills."""
    return [
        Fragment("from-load", "boiler_load.html"),
        Fragment("factors", "boiler_factors.html"),
        Fragment("water-and-tank", "boiler_water.html"),
        Fragment("pressures", "boiler_pressures.html"),
        Fragment("circulators", "boiler_pumps.html"),
        Fragment("bills", "boiler_bills.html", _bills(page)),
        *_drawing(page),
    ]


def right(page: Page) -> list[Fragment]:
    """The boiler against its load, the working, the questions, and the forms of the plant."""
    return [
        Fragment("lead", "boiler_lead.html", css="lead"),
        *chart_fragment(firing_range(page.house, page.units), titled=False),
        working_fragment(page),
        questions(page, 5),
        Fragment("parts", "boiler_parts.html", {"parts": PARTS, "picked": _picked(page)}),
        *_form(page),
    ]


def _picked(page: Page) -> str:
    return page.picked if page.picked.startswith(("plant", "bills")) else "plant/boiler"


def _form(page: Page) -> list[Fragment]:
    picked = _picked(page)
    return [] if picked == "bills" else [record(page, picked)]


def _bills(page: Page) -> dict[str, Any]:
    bills = page.house.bills.bills
    return {"bills": bills, "made": replacement(page.house) if bills else None}


def _drawing(page: Page) -> list[Fragment]:
    if not page.house.circuits.circuits:
        return []
    view = schematic_views(Printing(page.house, page.units))[0]
    data = {"drawing": svg(schematic(view, WIDTH), "plant-drawing"), "undrawn": undrawn(view)}
    return [Fragment("schematic", "boiler_schematic.html", data)]
