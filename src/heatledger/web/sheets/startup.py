"""Sheet 7: the checklist with its readings, today's water, and what a reading that is off may come from."""

from __future__ import annotations

from typing import Any

from heatledger.drawings.reset_from import reset_line
from heatledger.ledger.dimensions import TEMPERATURE
from heatledger.ledger.findings import Finding
from heatledger.papers.findings_by_sheet import findings_of, not_checked_of, poison
from heatledger.papers.startup_paper import ELECTRIC_STAY, STAY, STOP
from heatledger.steps.targets import burns
from heatledger.studies.startup_lines import off_target
from heatledger.web.charts import chart_fragment
from heatledger.web.fragments import Fragment
from heatledger.web.page import Page
from heatledger.web.parts import working_fragment
from heatledger.web.startup_rows import Rows
from heatledger.web.states import startup_words

TITLE = "Startup"
CSS = "startup.css"
SHEET = 7


def left(page: Page) -> list[Fragment]:
    """What stands above everything, the steps in order with their readings, and the bar of a phone."""
    rows, degree = Rows(page), page.units.shown(TEMPERATURE).unit.text
    return [
        Fragment("head", "startup_head.html", {"read": startup_words(page.house)[0], "degree": degree}),
        Fragment("above", "startup_above.html", _above(page, rows)),
        *(
            Fragment(f"steps-{each.key}", "startup_group.html", {"group": each}, css="steps")
            for each in rows.groups
        ),
        Fragment("bar", "startup_bar.html", {"unread": rows.unread}, css="noprint"),
    ]


def right(page: Page) -> list[Fragment]:
    """Today's water, likely causes, the working, and what else is open."""
    return [
        Fragment("lead", "startup_lead.html", css="lead"),
        *chart_fragment(reset_line(page.house, page.units, 360.0, 165.0), titled=False),
        *_asked(page),
    ]


def _above(page: Page, rows: Rows) -> dict[str, Any]:
    found = page.house.startup.startup
    now = poison(page.house)
    boiler = page.job.system.plant.boiler
    return {
        "may_run": found.may_run, "poison": now,
        "waits": [each for each in found.waits_for if each not in now],
        "stay": STAY if boiler is None or burns(boiler) else ELECTRIC_STAY, "stop": STOP,
        "line": rows.first, "boiler": boiler is not None,
    }  # fmt: skip


def _asked(page: Page) -> list[Fragment]:
    """Likely causes before the working, the other questions after it; both wait for the findings."""
    if not page.ready:
        waits = {"findings": [], "not_checked": [], "wait": True}
        return [
            Fragment("causes", "startup_causes.html", {"causes": [], "rows": {}}, waits=True),
            working_fragment(page),
            Fragment("questions", "questions.html", waits, waits=True),
        ]
    rows = Rows(page)
    found = findings_of(page.house, SHEET)
    causes = off_target([each for each in found if each.decided is None], rows.lines)
    shown = {id(one) for each in causes for one in (each.finding, *each.agrees)}
    rest: list[Finding] = [each for each in found if id(each) not in shown]
    data = {"findings": rest, "not_checked": not_checked_of(page.house, SHEET), "wait": False}
    return [
        Fragment("causes", "startup_causes.html", {"causes": causes, "rows": rows.by_path}, waits=True),
        working_fragment(page),
        Fragment("questions", "questions.html", data, waits=True),
    ]
