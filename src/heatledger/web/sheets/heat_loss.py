"""Sheet 2: what each room loses on the design day, by cause, and what matters most to the whole."""

from __future__ import annotations

from typing import Any

from heatledger.drawings.figure_words import amount
from heatledger.drawings.hatches import CAUSE_NAMES, CAUSES
from heatledger.drawings.heat_charts import bars_of_rooms, heat_by_cause, likely_range
from heatledger.drawings.load_chart import load_by_weather
from heatledger.studies.replacement import replacement
from heatledger.studies.uncertainty import SENTENCE
from heatledger.web.charts import chart_later, chip, svg
from heatledger.web.fragments import Fragment
from heatledger.web.matters import matters
from heatledger.web.page import Page
from heatledger.web.parts import crude, questions, waiting_for, working_fragment

TITLE = "Heat loss"
CSS = "heat-loss.css"
LARGEST = "largest"
BAR, RULE = 112.0, 372.0
"""Widths in points of a bar in the table, and of the rule beside the design load."""


def left(page: Page) -> list[Fragment]:
    """The rooms by cause, the load by the weather, and what speaks for the total."""
    if not page.job.rooms:
        return [Fragment("rooms", "heat_loss_none.html")]
    return [
        Fragment("rooms", "heat_loss_rooms.html", _rooms(page)),
        *chart_later(page, "load-by-weather", lambda: load_by_weather(page.house, page.units)),
        Fragment("checks", "heat_loss_checks.html", _checks(page)),
    ]


def right(page: Page) -> list[Fragment]:
    """The design load with its range, the open working, what matters most, the open questions."""
    if not page.job.rooms:
        return [*crude(page), working_fragment(page)]
    return [
        Fragment("lead", "heat_loss_lead.html", _lead(page), css="lead"),
        *waiting_for(page, "house/loss"),
        working_fragment(page),
        *matters(page, "house/loss"),
        questions(page, 2),
        *chart_later(page, "where-the-heat-goes", lambda: heat_by_cause(page.house, page.units)),
    ]


def _rooms(page: Page) -> dict[str, Any]:
    house = page.house
    floors = list(page.job.levels)
    ids = sorted(house.losses.rooms, key=lambda each: _floor(page, each, floors))
    if page.view == LARGEST:
        ids.sort(key=lambda each: -amount(house.losses.rooms[each].loss))
    bars = bars_of_rooms(house, page.units, BAR)
    return {
        "rooms": ids,
        "bars": {id: svg(bars[id], f"bar-{id}") for id in ids},
        "causes": [(each, CAUSE_NAMES[each]) for each in CAUSES if each in house.losses.house.causes],
        "chip": chip,
        "largest": page.view == LARGEST,
        "groups": {} if page.view == LARGEST else _levels(page, ids),
    }


def _levels(page: Page, ids: list[str]) -> dict[str, str]:
    """The name of the level at the first room of each, where there are several."""
    found: dict[str, str] = {}
    seen: set[str] = set()
    levels = [_level(page, id) for id in ids]
    if len(set(levels)) < 2 or len(ids) > 14:
        return found
    for id, level in zip(ids, levels, strict=True):
        if level not in seen:
            seen.add(level)
            found[id] = level
    return found


def _level(page: Page, id: str) -> str:
    level = page.job.rooms[id].level
    return level.name if level is not None else ""


def _lead(page: Page) -> dict[str, Any]:
    return {"chart": likely_range(page.house, page.units, RULE), "sentence": SENTENCE}


def _checks(page: Page) -> dict[str, Any]:
    bills = [each for each in page.house.bills.bills.values() if not each.like_for_like.is_missing]
    return {"bill": next(iter(bills), None), "made": replacement(page.house) if bills else None}


def _floor(page: Page, id: str, floors: list[str]) -> int:
    """Where the level of a room stands in the job; rooms of none come last, as on the sheet House."""
    level = page.job.rooms[id].level
    return floors.index(level.id) if level is not None and level.id in floors else len(floors)
