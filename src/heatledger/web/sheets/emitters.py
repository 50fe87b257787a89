"""Sheet 3: what hangs in each room, the water it needs, and what it gives at the water that is set."""

from __future__ import annotations

from typing import Any

from heatledger.drawings.emitter_charts import ends_of_rule, wall_bars_of_rooms, water_temperatures
from heatledger.ledger.dimensions import TEMPERATURE
from heatledger.ledger.show import show_percent
from heatledger.studies.side_by_side import ALL_OF_IT, carried, is_short
from heatledger.web.charts import chart_fragment, svg
from heatledger.web.fragments import Fragment
from heatledger.web.page import Page
from heatledger.web.parts import questions, waiting_for, working_fragment
from heatledger.web.records import record

TITLE = "Emitters"
CSS = "emitters.css"
BAR = 168.0
JUST_RIGHT = "just right"


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
    heat = page.house.emitters
    known = any(not each.given_share.is_missing for each in heat.rooms.values())
    shown = page.units.shown(TEMPERATURE).unit
    supply = heat.house.supply
    low, high = map(round, ends_of_rule(page.house, page.units))
    return {
        "carried": carried(heat) if known else None,
        "heated": len({each.room for each in heat.emitters.values()}),
        "unit": shown.text, "low": low, "high": high,
        "at": "" if supply.is_missing else f"{shown.from_si(float(supply), TEMPERATURE.absolute):.0f}",
        "chosen": bool(page.at("plant/supply").typed),
        "results": page.house.boiler_room.plant.drop_design is not heat.house.drop,
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
    heat = page.house.emitters.rooms[id]
    if heat.given_share.is_missing:
        return "none", "not known yet"
    if any(each.suggested and each.room == id for each in page.house.emitters.emitters.values()):
        return "begun", "length suggested"
    off = float(heat.given_share) - 1
    if is_short(heat):
        return "must", f"short {show_percent(-off)}"
    return "fine", f"over by {show_percent(off)}" if off > 1 - ALL_OF_IT else JUST_RIGHT


def _setter(page: Page) -> dict[str, Any]:
    whole = page.house.emitters.house
    name = page.job.rooms[whole.set_by].name if whole.set_by in page.job.rooms else ""
    heated = {each.room for each in page.house.emitters.emitters.values()}
    return {"whole": whole, "name": name, "cold": [each for each in page.job.rooms if each not in heated]}


def _lead(page: Page, room: str) -> dict[str, Any]:
    """What stands first of a room; that it is short says the word, so the amount has no sign of its own."""
    shape, words = _verdict(page, room) if room in page.house.emitters.rooms else ("none", "")
    over = page.text(f"rooms/{room}/over", places=0, unit=False)
    names = {id: one.name for id, one in page.house.emitters.emitters.items() if one.room == room}
    return {
        "room": room, "short": shape == "must", "even": words == JUST_RIGHT,
        "lack": over.removeprefix("−"), "names": names,
    }  # fmt: skip


def _adding(page: Page) -> list[Fragment]:
    return [Fragment("add-emitter", "emitters_add.html", {"picked": picked_room(page)})]
