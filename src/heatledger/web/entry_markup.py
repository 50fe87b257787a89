"""Entries as markup: the field of a value, the list of a choice, and what is wrong with what was typed."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from typing import Any

from markupsafe import Markup, escape

from heatledger.book.records import WrongEntry
from heatledger.job.fields import Shape
from heatledger.job.model import Job
from heatledger.job.what_ifs import shape_at
from heatledger.web.entries import LINES, entry_at

WIDEST = 34
VALUE = re.compile(r"\s*[UR]?[-\s]*[0-9]", re.IGNORECASE)
"""What looks like a U-value or an R-value."""


def field_of(
    job: Job, wrong: Mapping[str, WrongEntry], path: str, words: str = "", example: str = "", css: str = "",
    wide: int = 0,
) -> Markup:  # fmt: skip
    """The field of the entry at a path, on its line type; its fault below it where it cannot be read."""
    entry = entry_at(job, path)
    bad = wrong.get(path)
    shown = bad.typed if bad else entry.set
    words = words or (entry.field.words if entry.field else path.rpartition("/")[2])
    hint = example or (entry.field.example if entry.field else "")
    line = "bad" if bad else LINES.get(entry.known, "")
    size = wide or min(max(len(shown), 3 if shown else min(len(hint), 12), 2), WIDEST)
    said = f"{words}, {entry.known}" if shown else words
    fault = f' aria-invalid="true" aria-describedby="{escape(fault_id(path))}"' if bad else ""
    value = escape(shown)
    # An f-string: a page holds hundreds of these, and Markup.format is ten times slower.
    html = Markup(
        f'<input class="in {f"{line} {css}".strip()}" data-entry="{escape(path)}" data-known="{entry.known}" '
        f'value="{value}" data-kept="{value}" size="{size}" aria-label="{escape(said)}" '
        f'placeholder="{escape("" if shown else hint)}" autocomplete="off" spellcheck="false"{fault}>'
    )
    return html if bad is None else html + fault_of(job, bad)


def list_of(job: Job, wrong: Mapping[str, WrongEntry], path: str, words: str = "", css: str = "") -> Markup:
    """The entry at a path that is one of a few words, as a list to choose from."""
    entry = entry_at(job, path)
    bad = wrong.get(path)
    choices = choices_at(path, job)
    words = words or (entry.field.words if entry.field else "")
    options = [("", "–")] + [(each, each) for each in choices]
    if isinstance(choices, dict):
        options = [("", "–"), *choices.items()]
    if entry.typed and entry.typed not in dict(options):
        options.append((entry.typed, entry.typed))
    inner = Markup("").join(
        Markup('<option value="{}"{}>{}</option>').format(
            value, Markup(" selected") if value == entry.typed else "", shown
        )
        for value, shown in options
    )
    html = Markup(
        '<select class="in {}" data-entry="{}" data-kept="{}" aria-label="{}" autocomplete="off">{}</select>'
    ).format(css, path, entry.typed, words, inner)
    return html if bad is None else html + fault_of(job, bad)


def fault_of(job: Job, wrong: WrongEntry) -> Markup:
    """The sentences below an entry that cannot be read, with the last good value that goes on being used."""
    entry = entry_at(job, wrong.path)
    kept = f" The last good value, {entry.set}, is still used." if entry.typed else ""
    return Markup(
        '<span class="fault" id="{}">{} {}{} <button class="btn quiet" data-withdraw="{}">'
        "Put back the old one</button></span>"
    ).format(fault_id(wrong.path), plainly(wrong.what), _mend(wrong), kept, wrong.path)


def plainly(sentence: str) -> str:
    """A sentence of the job file as it is said on a screen: words in quotes, no command of a terminal."""
    said = re.sub(r"`heatledger catalog[^`]*` lists", "The list at the entry shows", sentence)
    return re.sub(r"`([^`]*)`", lambda tick: f"“{_spoken(tick[1])}”", said)


def _spoken(words: str) -> str:
    """A key of the job file in the trade's words; anything else as it stands."""
    key, colon, rest = words.partition(":")
    plain = key.replace("_", " ") if re.fullmatch(r"[a-z_]+", key) else key
    return _SPOKEN.get(key, plain) + colon + rest


def _mend(wrong: WrongEntry) -> str:
    """How to mend an entry; where a value stands for a row of the catalog, also where the value goes."""
    own = ""
    if re.fullmatch(r"constructions/[^/]+/catalog", wrong.path) and VALUE.match(wrong.typed):
        own = " A value of your own goes in its U-value or R-value: touch its name, More that may be given."
    return plainly(wrong.mend) + own


def choices_at(path: str, job: Job) -> tuple[str, ...] | dict[str, str]:
    """What an entry may be: its fixed words, or the ids and names of what the job has."""
    head, _, last = path.rpartition("/")
    shape = shape_at(head)
    field = shape.by_key.get(last) if isinstance(shape, Shape) else None
    if field is None:
        return ()
    if field.choices:
        return field.choices
    if field.kind == "yes-no":
        return ("yes", "no")
    if last == "beyond":
        sides = {"outdoors": "outdoors", "ground": "ground"}
        return sides | _named("unheated", job.unheated) | _named("rooms", job.rooms) | _neighbors(job)
    if last == "through":
        return _named("unheated", job.unheated) | _neighbors(job)
    among = _AMONG.get(last)
    return {id: each.name for id, each in among(job).items()} if among else ()


_SPOKEN = {
    "u_value": "U-value", "r_value": "R-value", "f_factor": "F-factor", "catalog": "row of the catalog",
}  # fmt: skip
_AMONG: dict[str, Callable[[Job], Mapping[str, Any]]] = {
    "construction": lambda job: job.constructions,
    "level": lambda job: job.levels,
    "room": lambda job: job.rooms,
    "thermostat": lambda job: job.rooms,
    "zone": lambda job: job.system.zones,
    "circulator": lambda job: job.system.plant.circulators,
}
"""What an entry of a key names."""


def _named(kind: str, things: Mapping[str, Any]) -> dict[str, str]:
    return {f"{kind}/{id}": each.name for id, each in things.items()}


def _neighbors(job: Job) -> dict[str, str]:
    return _named("neighbors", job.neighbors)


def fault_id(path: str) -> str:
    """The id of the sentences below an entry."""
    return "fault-" + path.replace("/", "-")
