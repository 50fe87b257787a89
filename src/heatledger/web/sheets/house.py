"""Sheet 1: what the house is, measured and chosen; and what the picked thing of it comes to."""

from __future__ import annotations

from markupsafe import Markup

from heatledger.drawings.cause_bar import cause_bar
from heatledger.drawings.figure_words import bare
from heatledger.drawings.hatches import CAUSE_NAMES, CAUSES
from heatledger.drawings.heat_charts import amounts_of
from heatledger.job.missing import missing_entries
from heatledger.job.model import Room, Unheated
from heatledger.ledger.dimensions import HEAT_RATE, TEMPERATURE
from heatledger.studies.crude import crude_estimate
from heatledger.web import first_room
from heatledger.web.charts import svg
from heatledger.web.entries import field_at
from heatledger.web.fragments import Fragment
from heatledger.web.house_view import (
    Picked,
    air_entry,
    built_of,
    choices_of,
    picked_of,
    spaces_beyond,
    stories,
    value_of,
)
from heatledger.web.page import Page
from heatledger.web.parts import questions, working_fragment
from heatledger.web.record_entries import name_of
from heatledger.web.records import record, title_of

TITLE = "House"
CSS = "house.css"
VIEWS = (("", "Rooms"), ("built", "Built of"), ("around", "Around it"), ("job", "The job"))
"""Ways to look at the left page: the word in the address and the words shown."""
BAR = 410.0
MOST_MISSING = 6
LEDGERS = {"built": ("constructions", "levels"), "around": ("unheated", "neighbors"),
           "job": ("expectations", "limits", "ranges")}  # fmt: skip
PARTS = {"around": ("site", "air"), "job": ("", "codes")}
SAID = {"built": "What it is built of", "around": "What is around it", "job": "The job itself"}


def left(page: Page) -> list[Fragment]:
    """What is known: rooms by level, the design day, and the table of the picked room."""
    head = [Fragment("house-head", "house_head.html", {"views": VIEWS, "said": said_of(page)}), mend(page)]
    if page.view in first_room.STEPS and newest(page) is not None:
        return [*head, step(page)]
    if page.view in LEDGERS:
        parts = [record(page, each, f"part-{each or 'job'}-record") for each in PARTS.get(page.view, ())]
        maps = [record(page, each, f"map-{each}-record") for each in LEDGERS[page.view]]
        extra = [catalog(page)] if page.view == "built" else []
        return [*head, *parts, *maps[:1], *extra, *maps[1:]]
    picked = picked_of(page)
    if not page.job.rooms:
        begun = {"levels": page.job.levels, "crude": crude_estimate(page.job)}
        return [*head, Fragment("first-room", "house_first.html", begun), day(page, picked)]
    rooms = {"stories": stories(page), "home": picked.home}
    more = {"it": picked, "air": air_entry(page, picked.home)}
    return [
        *head,
        Fragment("house-rooms", "house_rooms.html", rooms),
        day(page, picked),
        Fragment("house-table", "house_table.html", more),
    ]


def said_of(page: Page) -> str:
    """The line of context under the title."""
    job = page.job
    if page.view in SAID:
        return SAID[page.view]
    told = [f"built {job.built}"] if job.built else []
    told += [f"measured {job.measured}"] if job.measured else []
    count = len(job.rooms)
    return ", ".join(
        ["no room yet" if not count else "1 heated room" if count == 1 else f"{count} heated rooms", *told]
    )


def mend(page: Page) -> Fragment:
    """What waits for an entry, and entries that cannot be read."""
    lacking = [(each.path, sentence(page, each.path, each.words), thing_of(each.path))
               for each in missing_entries(page.job) if each.path != "rooms"]  # fmt: skip
    wrong = [(each.path, thing_of(each.path), each.what) for each in page.wrong.values()]
    return Fragment(
        "house-mend", "house_mend.html", {"lacking": lacking, "wrong": wrong, "most": MOST_MISSING}
    )


def sentence(page: Page, path: str, words: str) -> str:
    """What waits, by where the entry stands in the job."""
    head = path.partition("/")[0]
    waits = {"emitters": "What emitters give", "circuits": "Piping", "plant": "The boiler room",
             "controls": "Controls", "bills": "The reading of the bills", "zones": "Zones"}  # fmt: skip
    thing, entry = thing_of(path), field_at(path)
    # A job file says outdoor; a sentence says of what.
    if (
        entry is not None
        and entry.dimension is TEMPERATURE
        and "temperature" not in words
        and "site/" in path
    ):
        words = f"{words} temperature"
    of = f", {name_of(page, thing)}" if "/" in thing else ""
    return f"{waits.get(head, 'Heat loss')} needs the {words}{of}"


def thing_of(path: str) -> str:
    """The thing that an entry stands at: what is to be picked to reach it."""
    return path.rpartition("/")[0].removesuffix("/air")


def day(page: Page, picked: Picked) -> Fragment:
    """The design day, what the picked room is built of, and heights."""
    spaces = [picked.space] if picked.space is not None else []
    made = [(id, name, f"constructions/{id}/{way}", value_of(page, id) if way == "catalog" else None)
            for id, name, way in built_of(page, spaces)]  # fmt: skip
    home = picked.space.level.id if picked.space is not None and picked.space.level else ""
    levels = [each for each in page.job.levels.values() if each.id == home] or list(page.job.levels.values())
    beyond = {
        each.beyond.id
        for space in spaces
        for each in space.surfaces.values()
        if each.beyond.kind == "unheated"
    }
    touched = [(id, each.name) for id, each in page.job.unheated.items() if id in beyond]
    return Fragment("house-day", "house_day.html", {"built": made, "levels": levels, "touched": touched})


def newest(page: Page) -> Room | None:
    """The room that the steps are about: the picked one, else the last of the job."""
    picked = page.job.rooms.get(page.picked.removeprefix("rooms/"))
    return picked or next(reversed(page.job.rooms.values()), None)


def step(page: Page) -> Fragment:
    """One step of the first room as a plain form."""
    room = newest(page)
    assert room is not None
    given = {"room": room, "beyond": spaces_beyond(page), "at": first_room.STEPS.index(page.view)}
    if page.view == "walls":
        given |= {"sides": first_room.prefilled(room), "walls": choices_of(page, "wall")}
    elif page.view == "windows":
        given |= {"windows": choices_of(page, "window"), "doors": choices_of(page, "door")}
    else:
        given |= {"ceilings": choices_of(page, "ceiling"), "floors": choices_of(page, "floor")}
    return Fragment(f"step-{page.view}", f"house_step_{page.view}.html", given)


def catalog(page: Page) -> Fragment:
    """A construction from the catalog by its name."""
    return Fragment("from-catalog", "house_catalog.html")


def right(page: Page) -> list[Fragment]:
    """What the picked thing comes to, the open working, its record, its open questions."""
    picked = picked_of(page)
    found = [lead(page, picked), working_fragment(page)]
    on_the_left = (*PARTS.get(page.view, ()), *LEDGERS.get(page.view, ()))
    if picked.path and picked.path not in on_the_left and page.view not in first_room.STEPS:
        found.append(record(page, picked.path))
    where = picked.path if picked.path and "/" in picked.path else ""
    return [*found, questions(page, where=where) if where else questions(page, 1, 2)]


def lead(page: Page, picked: Picked) -> Fragment:
    """The head figures of the picked thing."""
    path, space = picked.path, picked.space
    if isinstance(space, Room) and path == picked.home:
        loss = page.house.losses.rooms[space.id]
        texts = {cause: bare(each.loss, page.units, page.units.shown(HEAT_RATE).places)
                 for cause, each in loss.causes.items()}  # fmt: skip
        amounts = amounts_of(loss)
        whole = sum(max(each, 0.0) for each in amounts.values())
        bar = (
            svg(cause_bar(space.name, amounts, texts, whole, BAR, 13.0), "bar-room")
            if whole > 0
            else Markup("")
        )
        causes = [(each, CAUSE_NAMES[each]) for each in CAUSES if each in loss.causes]
        return Fragment("lead", "house_lead.html", {"room": space, "bar": bar, "causes": causes}, "lead")
    if isinstance(space, Unheated) and path == picked.home:
        return Fragment("lead", "house_lead_space.html", {"space": space, "home": picked.home}, "lead")
    title = (name_of(page, path) if "/" in path else title_of(path)) if path else page.name
    kind = page.job.constructions.get(path.removeprefix("constructions/"))
    value = value_of(page, kind.id) if kind else None
    given = {"title": title, "made": kind, "value": value, "path": path}
    return Fragment("lead", "house_lead_thing.html", given, "lead")
