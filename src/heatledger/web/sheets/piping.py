"""Sheet 4: the schematic, every run with its head, and the circulator against the pipes."""

from __future__ import annotations

from typing import Any

from heatledger.drawings.pump_from import pump_and_circuits
from heatledger.drawings.schematic import schematic
from heatledger.drawings.schematic_legend import schematic_legend
from heatledger.job.system_model import HOME_RUN
from heatledger.ledger.dimensions import FLOW_COEFFICIENT
from heatledger.papers.printing import Printing
from heatledger.papers.schematic_from import schematic_views, undrawn
from heatledger.web.charts import chart_later, svg
from heatledger.web.fragments import Fragment
from heatledger.web.page import Page
from heatledger.web.parts import questions, working_fragment
from heatledger.web.records import record

TITLE = "Piping"
CSS = "piping.css"
WIDTH = 540.0
FIRST = 6
"""Circuits whose runs stand open; the runs of further ones fold to a line until one of them is picked."""


def left(page: Page) -> list[Fragment]:
    """The schematic, then each circuit with its runs."""
    circuits = page.house.circuits.circuits
    if not circuits:
        return [Fragment("none", "piping_none.html"), _adding(page)]
    found = [Fragment("schematic", "piping_schematic.html", _drawings(page))]
    picked = picked_circuit(page)
    for number, id in enumerate(circuits):
        is_open = number < FIRST or id == picked
        found.append(Fragment(f"circuit-{id}", "piping_circuit.html", _circuit(page, id, is_open)))
    return [*found, _adding(page)]


def right(page: Page) -> list[Fragment]:
    """The circulators with the pipes they meet, the working, the questions, the picked circuit's form."""
    pumps = page.house.circuits.plant.circulators
    charts = [each for id in pumps for each in _curve(page, id)]
    picked = picked_circuit(page)
    forms = [record(page, f"circuits/{picked}")] if picked else []
    deep = page.picked.startswith("circuits/") and page.picked.count("/") > 1
    if deep or page.picked.startswith("zones/"):
        forms = [record(page, page.picked)]
    return [
        Fragment("lead", "piping_lead.html", {"pumps": pumps}, css="lead"), working_fragment(page), *charts,
        Fragment("calls", "piping_calls.html"), questions(page, 4),
        Fragment("zones", "piping_zones.html"), *forms,
    ]  # fmt: skip


def _curve(page: Page, id: str) -> list[Fragment]:
    """A circulator and the pipes it meets."""
    return chart_later(page, f"pump-{id}", lambda: pump_and_circuits(page.house, page.units, id))


def picked_circuit(page: Page) -> str:
    """The circuit that is picked, or that of the open figure; empty where there is none."""
    for path in (page.picked, page.opened):
        head, _, rest = path.partition("/")
        id = rest.partition("/")[0]
        if head == "circuits" and id in page.house.circuits.circuits:
            return id
    return ""


def _drawings(page: Page) -> dict[str, Any]:
    printing = Printing(page.house, page.units)
    views = schematic_views(printing)
    return {
        "drawings": [svg(schematic(each, WIDTH, legend=False), f"pipes-{i}") for i, each in enumerate(views)],
        "legend": svg(schematic_legend(views[0], WIDTH), "signs"),
        "undrawn": undrawn(views[0]),
        "homes": sum(len(each.runs) for each in page.house.circuits.circuits.values()),
    }


def _circuit(page: Page, id: str, is_open: bool) -> dict[str, Any]:
    each = page.house.circuits.circuits[id]
    emitters = page.job.system.emitters
    names = {run: emitters[run].name if run in emitters else run for run in each.runs}
    return {
        "id": id, "each": each, "names": names, "manifold": each.kind == HOME_RUN, "open": is_open,
        "valve_unit": page.units.shown(FLOW_COEFFICIENT).unit.text,
        "picked": page.picked if page.picked.startswith(f"circuits/{id}/runs/") else page.opened,
    }  # fmt: skip


def _adding(page: Page) -> Fragment:
    return Fragment("add-circuit", "piping_add.html")
