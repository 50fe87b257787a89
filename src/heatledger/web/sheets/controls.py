"""Sheet 6: the reset line, what each call does, the settings, and a call from its start to its end."""

from __future__ import annotations

from typing import Any

from markupsafe import Markup

from heatledger.drawings.reset_from import reset_line, reset_points
from heatledger.steps.sequence import has_zone_valves, sequence_of
from heatledger.steps.targets import burns
from heatledger.studies.calls import zones_alone
from heatledger.web.fragments import Fragment
from heatledger.web.page import Page
from heatledger.web.parts import questions, working_fragment
from heatledger.web.records import record
from heatledger.web.said_markup import said

TITLE = "Controls"
CSS = "controls.css"


FOLLOWS = {
    True: "supply water follows the outdoors", False: "no outdoor reset: one supply all winter",
    None: "whether the supply follows the weather is not said yet",
}  # fmt: skip
"""What the head says of the reset, as far as the job does."""
BURNER, ELEMENTS, ANY = (
    ("Burner", "fires on demand"),
    ("Elements", "come on as needed"),
    ("Boiler", "runs on demand"),
)
"""What makes the heat, and what it does in a call."""


def left(page: Page) -> list[Fragment]:
    """The reset line with its points, the calls, the settings."""
    reset = page.job.system.controls.outdoor_reset
    return [
        Fragment("head", "controls_head.html", {"said": FOLLOWS[None if reset is None else bool(reset)]}),
        Fragment("reset", "controls_reset.html", _reset(page)),
        Fragment("calls", "controls_calls.html", _calls(page)),
        record(page, "controls"),
    ]


def right(page: Page) -> list[Fragment]:
    """A call in order, the working, the questions."""
    steps = [_step(said(page, each)) for each in sequence_of(page.house)]
    return [
        Fragment("sequence", "controls_sequence.html", {"steps": steps}, css="lead"),
        working_fragment(page),
        questions(page, 6),
    ]


def _step(text: Markup) -> tuple[Markup, Markup]:
    """The head of a step, before its colon, and the rest."""
    head, colon, rest = str(text).partition(": ")
    # Both halves are markup already; a head with a figure in it is not parted.
    return (Markup(head), Markup(rest)) if colon and "<" not in head else (Markup(""), text)


def _reset(page: Page) -> dict[str, Any]:
    """The line with its points; no points where nothing is reset."""
    points = page.house.controls.controls.reset if page.job.system.controls.outdoor_reset else {}
    wanted = {id(each) for each in reset_points(page.house)}
    chart = reset_line(page.house, page.units, 300.0, 170.0)
    return {
        "chart": chart,
        "points": {key: each for key, each in points.items() if id(each) in wanted or not wanted},
    }


def _calls(page: Page) -> dict[str, Any]:
    pumps, boiler = page.job.system.plant.circulators, page.job.system.plant.boiler
    heat, fires = ANY if boiler is None else BURNER if burns(boiler) else ELEMENTS
    return {
        "alone": zones_alone(page.house), "pumps": {key: each.name or key for key, each in pumps.items()},
        "valves": has_zone_valves(page.house), "heat": heat, "fires": fires,
    }  # fmt: skip
