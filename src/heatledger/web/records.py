"""The record of a thing: every key that the job file allows at it, made from the tables of the job's form.

What is given stands open; what else may be given is offered folded, so that nothing is missing. Things
inside it stand as a ledger with one row each, whose names lead to their own record.
"""

from __future__ import annotations

from collections.abc import Mapping as Keyed
from dataclasses import dataclass, field

from markupsafe import Markup

from heatledger.job.changes import RIVALS
from heatledger.job.fields import Field, Shape
from heatledger.job.shapes import JOB, RESERVED
from heatledger.job.text import Mapping, Node, walk
from heatledger.job.what_ifs import shape_at
from heatledger.web.fragments import Fragment
from heatledger.web.page import Page
from heatledger.web.record_entries import entry_for, in_words, name_of, words_of
from heatledger.web.record_lists import TITLES, Editor, decision_of, editor_of
from heatledger.web.record_maps import Ledger, ledger_of

SINGLE = ("text", "yes-no", "choice", "quantity", "size", "whole", "percent")
"""Kinds of a key that holds one value."""
ALWAYS: dict[str, tuple[str, ...]] = {
    "job": ("name", "address", "prepared_by", "date", "built", "measured", "units"),
    "site": ("place", "outdoor", "indoor", "elevation"),
    "construction": ("name", "kind"), "level": ("name", "wall_height", "ceiling_height"),
    "room": ("name", "level", "free_wall", "habitable"), "surface": ("name", "construction", "beyond"),
    "opening": ("name", "construction", "count"), "unheated space": ("name",),
    "neighbor": ("name", "temperature"), "air entry": ("changes",),
    "emitter": ("name", "room", "kind", "catalog", "length"), "zone": ("name", "thermostat"),
    "circuit": ("name", "kind", "zone", "circulator", "tube", "length"), "run": ("tube", "length", "valve"),
    "boiler": ("name", "fuel", "kind", "input", "output"), "tank": ("kind", "volume", "precharge", "placed"),
    "piece of mains": ("tube", "length", "insulation", "through"),
    "circulator": ("name", "shutoff", "middle_flow", "middle_head", "high_flow", "high_head"),
    "boiler room": ("supply", "drop", "height", "fill"), "set of controls": ("outdoor_reset",),
    "bill": ("name", "fuel", "degree_days", "base", "efficiency"),
    "set of readings": ("date", "by", "outdoor", "room", "supply", "return"),
    "combustion reading": ("oxygen", "carbon_monoxide", "draft", "room_carbon_monoxide", "spillage"),
    "set of codes": ("adopted", "licence", "authority"), "expectation": ("of", "about", "within", "because"),
    "what-if": ("name",),
}  # fmt: skip
"""Keys that stand open in a record also while they are not given, by the kind of thing."""


@dataclass(frozen=True)
class Line:
    """One entry with the words before it."""

    path: str
    words: str
    html: Markup


@dataclass(frozen=True)
class Link:
    """A part of the job that has a record of its own."""

    path: str
    words: str
    count: int


@dataclass
class Section:
    """The keys of one mapping: those that stand open, those folded, the parts inside, ledgers and editors."""

    path: str
    title: str
    lines: list[Line] = field(default_factory=list)
    folded: list[Line] = field(default_factory=list)
    parts: list[Section] = field(default_factory=list)
    folded_parts: list[Section] = field(default_factory=list)
    ledgers: list[Ledger] = field(default_factory=list)
    editors: list[Editor] = field(default_factory=list)
    links: list[Link] = field(default_factory=list)

    @property
    def anchor(self) -> str:
        """Its id on the page."""
        return "part-" + (self.path.replace("/", "-") or "job")


@dataclass(frozen=True)
class Acts:
    """What can be done to the thing as a whole: its place among its siblings, and what it is called."""

    path: str
    name: str
    at: int
    among: int


def record(page: Page, path: str, id: str = "record") -> Fragment:
    """The record of the thing at a path of the job: the whole job where the path is empty.

    A map of things gives its ledger, a decision its three entries. A path that leads nowhere says so.
    """
    path = path.strip("/")
    if path == "decisions" or path.startswith("decisions/"):
        made = decision_of(page, path.removeprefix("decisions").strip("/"))
        return Fragment(id, "record_decision.html", {"it": made}, waits=True)
    shape = shape_at(path)
    node = walk(page.job.source.base, path)
    if isinstance(shape, Field) and shape.kind == "map":
        return Fragment(id, "record_map.html", {"ledger": ledger_of(page, path, shape)})
    if isinstance(shape, Field) and shape.kind == "any":
        return Fragment(id, "record_any.html", {"editor": editor_of(page, path, shape)})
    if not isinstance(shape, Shape) or not _is_there(page, path):
        return Fragment(id, "record_none.html", {"path": path, "near": _nearest(page, path)})
    section = section_of(page, path, shape, node, "")
    return Fragment(
        id, "record.html", {"section": section, "title": title_of(path), "acts": acts_of(page, path)}
    )


def section_of(page: Page, path: str, shape: Shape, node: Node | None, title: str) -> Section:
    """Every key of a mapping, each in the form that its kind asks for."""
    made = Section(path, title)
    entries = node.entries if isinstance(node, Mapping) else {}
    always = ALWAYS.get(shape.name, ())
    shown = [each for each in always if not _said_otherwise(each, entries)]
    ordered = sorted(shape.fields, key=lambda each: (each.key == "known", _rank(each, always)))
    for each in ordered:
        here = f"{path}/{each.key}" if path else each.key
        inner = entries.get(each.key)
        if each.kind in SINGLE:
            line = Line(here, words_of(here, each), entry_for(page, here, each))
            stands_open = inner is not None or each.key in shown or here in page.wrong
            (made.lines if stands_open else made.folded).append(line)
        elif each.kind == "shape" and each.shape is not None:
            _add_part(page, made, here, each, inner)
        elif each.kind == "map" and shape is not JOB:
            made.ledgers.append(ledger_of(page, here, each))
        elif shape is JOB:
            if inner is not None or each.key not in RESERVED:
                made.links.append(Link(here, title_of(here), _count(inner)))
        else:
            made.editors.append(editor_of(page, here, each))
    return made


def _add_part(page: Page, made: Section, here: str, each: Field, inner: Node | None) -> None:
    """A mapping inside a mapping: in place, folded while it is not begun, or a link from the whole job."""
    assert each.shape is not None
    if not made.path:
        made.links.append(Link(here, title_of(here), _count(inner)))
        return
    part = section_of(page, here, each.shape, inner, each.words)
    begun = inner is not None or any(wrong.startswith(f"{here}/") for wrong in page.wrong)
    (made.parts if begun else made.folded_parts).append(part)


def title_of(path: str) -> str:
    """What the thing or part at a path is called where it has no name of its own."""
    above, _, key = path.rpartition("/")
    shape = shape_at(above) if above else JOB
    field = shape.by_key.get(key) if isinstance(shape, Shape) else None
    words = TITLES.get(path) or (field.words if field and key not in RESERVED else in_words(key))
    return words[:1].upper() + words[1:]


def _said_otherwise(key: str, given: Keyed[str, Node]) -> bool:
    """Whether what a key would say is said by another way that is given."""
    ways = (each for group in RIVALS if key in group for each in group if each != key)
    return key not in given and any(each in given for each in ways)


def _rank(each: Field, always: tuple[str, ...]) -> int:
    return always.index(each.key) if each.key in always else len(always)


def _count(node: Node | None) -> int:
    return len([each for each in node.entries if each != "known"]) if isinstance(node, Mapping) else 0


def _is_there(page: Page, path: str) -> bool:
    """Whether each thing on the way to a path is in the job; a part such as ``plant/tank`` need not be."""
    steps = path.split("/")
    for i in range(1, len(steps)):
        above = shape_at("/".join(steps[:i]))
        is_thing = isinstance(above, Field) and above.kind == "map"
        if is_thing and walk(page.job.source.base, "/".join(steps[: i + 1])) is None:
            return False
    return True


def _nearest(page: Page, path: str) -> str:
    """The closest thing above a path that is there."""
    while path:
        path = path.rpartition("/")[0]
        if path and walk(page.job.source.base, path) is not None and shape_at(path) is not None:
            return path
    return ""


def acts_of(page: Page, path: str) -> Acts | None:
    """What can be done to the thing at a path; None for what is no thing among others."""
    above, _, id = path.rpartition("/")
    form = shape_at(above) if above else None
    parent = walk(page.job.source.base, above) if above else None
    if not (isinstance(form, Field) and form.kind == "map" and isinstance(parent, Mapping)):
        return None
    ids = [each for each in parent.entries if each != "known"]
    if id not in ids:
        return None
    return Acts(path, name_of(page, path), ids.index(id), len(ids))
