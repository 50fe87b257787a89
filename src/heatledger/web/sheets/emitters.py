"""Sheet 3: what hangs in each room, the water it needs, and what it gives at the water that is set."""

from __future__ import annotations

from typing import Any

from heatledger.drawings.emitter_charts import wall_bars_of_rooms, water_temperatures
from heatledger.ledger.dimensions import TEMPERATURE
from heatledger.ledger.show import show_percent
from heatledger.web.charts import chart_fragment, svg
from heatledger.web.fragments import Fragment
from heatledger.web.page import Page
from heatledger.web.parts import questions, waiting_for, working_fragment
from heatledger.web.records import record

TITLE = "Emitters"
CSS = "emitters.css"
EVEN = 0.005
"""A room within half a percent of its need is neither over nor short."""
BAR = 168.0
SLIDER = {True: (75, 200), False: (25, 95)}
"""Ends of the slider of the supply water, in °F and in °C."""


def left(page: Page) -> list[Fragment]:
    """The water, the rule with every room on it, and the rooms with what hangs on their walls."""
    if not page.house.emitters.emitters:
        return [Fragment("none", "emitters_none.html")]
    return [
        Fragment("water", "emitters_water.html", _water(page)),
        *chart_fragment(water_temperatures(page.house, page.units), titled=False),
        Fragment("rooms", "emitters_rooms.html", _rooms(page)),
        Fragment("lowest", "emitters_lowest.html", _setter(page)),
    ]


def right(page: Page) -> list[Fragment]:
    """The picked room, or the one that sets the water: needs, gives, ways to mend; its emitters' forms."""
    room = picked_room(page)
    if not room:
        return [working_fragment(page), *_adding(page), questions(page, 3)]
    own = [id for id, each in page.house.emitters.emitters.items() if each.room == room]
    picked = page.picked.removeprefix("emitters/") if page.picked.startswith("emitters/") else ""
    shown = [picked] if picked in own else own[:1]
    return [
        Fragment("lead", "emitters_lead.html", _lead(page, room), css="lead"),
        *waiting_for(page, f"rooms/{room}/given"),
        working_fragment(page),
        questions(page, 3),
        *(record(page, f"emitters/{id}") for id in shown),
        *_adding(page),
    ]


def picked_room(page: Page) -> str:
    """The room that is picked, else the one that sets the lowest supply, else the first with an emitter."""
    heat = page.house.emitters
    head, _, id = page.picked.partition("/")
    if head == "emitters" and id in heat.emitters:
        return str(heat.emitters[id].room)
    if head == "rooms" and id.partition("/")[0] in heat.rooms:
        return id.partition("/")[0]
    opened = page.opened.split("/")
    if opened[0] == "emitters" and len(opened) > 1 and opened[1] in heat.emitters:
        return str(heat.emitters[opened[1]].room)
    if opened[0] == "rooms" and len(opened) > 1 and opened[1] in heat.rooms:
        return opened[1]
    if heat.house.set_by in heat.rooms:
        return str(heat.house.set_by)
    return next((each.room for each in heat.emitters.values()), "")


def _water(page: Page) -> dict[str, Any]:
    rooms = page.house.emitters.rooms.values()
    known = [each for each in rooms if not each.given_share.is_missing]
    carried = sum(float(each.given_share) >= 1 - EVEN for each in known)
    shown = page.units.shown(TEMPERATURE).unit
    supply = page.house.emitters.house.supply
    low, high = SLIDER[shown.text == "°F"]
    return {
        "carried": carried if known else None, "count": len(known), "unit": shown.text, "low": low,
        "high": high,
        "at": "" if supply.is_missing else f"{shown.from_si(float(supply), TEMPERATURE.absolute):.0f}",
        "chosen": bool(page.at("plant/supply").typed),
    }  # fmt: skip


def _rooms(page: Page) -> dict[str, Any]:
    bars = wall_bars_of_rooms(page.house, page.units, BAR)
    by_room: dict[str, list[str]] = {}
    for id, each in page.house.emitters.emitters.items():
        by_room.setdefault(str(each.room), []).append(id)
    return {
        "rooms": list(page.house.emitters.rooms),
        "bars": {id: svg(each, f"wall-{id}") for id, each in bars.items()},
        "by_room": by_room,
        "verdict": lambda room: _verdict(page, room),
        "picked": picked_room(page),
    }


def _verdict(page: Page, id: str) -> tuple[str, str]:
    """The shape and the words of what a room gets at this water."""
    share = page.house.emitters.rooms[id].given_share
    if share.is_missing:
        return "none", "not known yet"
    if any(each.suggested and each.room == id for each in page.house.emitters.emitters.values()):
        return "begun", "length suggested"
    off = float(share) - 1
    if abs(off) <= EVEN:
        return "fine", "just right"
    return ("fine", f"over by {show_percent(off)}") if off > 0 else ("must", f"short {show_percent(-off)}")


def _setter(page: Page) -> dict[str, Any]:
    whole = page.house.emitters.house
    name = page.job.rooms[whole.set_by].name if whole.set_by in page.job.rooms else ""
    return {"whole": whole, "name": name}


def _lead(page: Page, room: str) -> dict[str, Any]:
    each = page.house.emitters.rooms.get(room)
    short = each is not None and not each.over.is_missing and float(each.over) < 0
    names = {id: one.name for id, one in page.house.emitters.emitters.items() if one.room == room}
    return {"room": room, "each": each, "short": short, "names": names}


def _adding(page: Page) -> list[Fragment]:
    return [Fragment("add-emitter", "emitters_add.html", {"picked": picked_room(page)})]
