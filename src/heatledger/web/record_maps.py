"""Things of one kind as a ledger: one row a thing, its main entries in line, and a form for one more."""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup

from heatledger.job.fields import Field, Shape
from heatledger.job.text import Mapping, Node, walk
from heatledger.web.entry_markup import choices_at
from heatledger.web.page import Page
from heatledger.web.record_entries import LISTED, entry_for, name_of, one_of

Columns = tuple[tuple[str, ...], ...]
COLUMNS: dict[str, Columns] = {
    "construction": (("kind",), ("u_value", "catalog", "r_value", "f_factor")),
    "level": (("ceiling_height",), ("wall_height",)),
    "room": (("level",), ("size", "floor_area")),
    "unheated space": (("floor_area", "volume"), ("ceiling_height",)),
    "neighbor": (("temperature",),),
    "surface": (("construction",), ("beyond",), ("length", "size", "area")),
    "opening": (("construction",), ("size", "area", "width"), ("count",)),
    "emitter": (("room",), ("kind",), ("length", "sections", "output")),
    "zone": (("thermostat",),),
    "circuit": (("kind",), ("zone",), ("circulator",)),
    "run": (("tube",), ("length",), ("valve",)),
    "circulator": (("shutoff",), ("power",)),
    "bill": (("fuel",), ("energy", "volume", "gas"), ("degree_days",)),
    "expectation": (("of",), ("about",), ("within",)),
}  # fmt: skip
"""Main entries of a row by the kind of thing: of those in one column the first that is given."""
ASKED: dict[str, tuple[str, ...]] = {
    "construction": ("kind", "u_value"), "level": ("ceiling_height", "wall_height"),
    "room": ("level", "size"), "unheated space": ("floor_area", "ceiling_height"),
    "neighbor": ("temperature",), "surface": ("construction", "beyond", "length"),
    "opening": ("construction", "size", "count"), "emitter": ("room", "kind", "length"),
    "zone": ("thermostat",), "circuit": ("kind", "zone"), "run": ("length",), "circulator": ("shutoff",),
    "bill": ("fuel",), "expectation": ("of", "about", "because"),
}  # fmt: skip
"""What the form for one more thing asks besides its name."""
ASKED_AS = {("construction", "u_value"): "U-value (R below grade, F of an edge)",
            ("surface", "length"): "length, two sides or area"}  # fmt: skip
HEADS = {"u_value": "U-value or row", "length": "Size", "floor_area": "Size", "size": "Size",
         "energy": "Fuel used"}  # fmt: skip


@dataclass(frozen=True)
class Cell:
    """A cell of a ledger: the entry, and whether it is a column of numbers."""

    html: Markup
    num: bool


@dataclass(frozen=True)
class Row:
    """A thing: where it is, what it is called, its main entries, its place among the others."""

    path: str
    name: str
    cells: tuple[Cell, ...]
    at: int


@dataclass(frozen=True)
class Asked:
    """One field of the form for one more: a list to choose from where it has ``choices``."""

    key: str
    words: str
    choices: tuple[tuple[str, str], ...]
    example: str
    listed: str = ""


@dataclass(frozen=True)
class Ledger:
    """All things of one kind at one place of the job."""

    path: str
    title: str
    one: str
    head: tuple[tuple[str, bool], ...]
    rows: tuple[Row, ...]
    asked: tuple[Asked, ...]
    picks_id: tuple[tuple[str, str], ...] = ()

    @property
    def anchor(self) -> str:
        """Its id on the page."""
        return "map-" + self.path.replace("/", "-")


def ledger_of(page: Page, path: str, field: Field) -> Ledger:
    """The ledger of the things at a path."""
    assert field.shape is not None
    shape = field.shape
    node = walk(page.job.source.base, path)
    things = node.entries if isinstance(node, Mapping) else {}
    columns = COLUMNS.get(shape.name, ())
    ids = [each for each in things if each != "known"]
    rows = tuple(
        Row(
            f"{path}/{id}", name_of(page, f"{path}/{id}"), _cells(page, f"{path}/{id}", shape, things[id]), at
        )
        for at, id in enumerate(ids)
    )
    head = tuple((_head(shape, keys), _is_number(shape.by_key[keys[0]])) for keys in columns)
    picks = _emitters_left(page, ids) if shape.name == "run" else ()
    title = field.words[:1].upper() + field.words[1:]
    return Ledger(path, title, one_of(path), head, rows, asked_of(page, path, shape), picks)


def asked_of(page: Page, path: str, shape: Shape) -> tuple[Asked, ...]:
    """The fields of the form for one more thing."""
    found = []
    for key in ASKED.get(shape.name, ()):
        each = shape.by_key[key]
        choices = choices_at(f"{path}/new/{key}", page.job)
        pairs = tuple(choices.items()) if isinstance(choices, dict) else tuple((one, one) for one in choices)
        if key == "construction":
            pairs = tuple(one for one in pairs if _fits(page, one[0], shape.name)) or pairs
        words = ASKED_AS.get((shape.name, key), each.words)
        found.append(Asked(key, words, pairs, each.example, key if key in LISTED else ""))
    if shape.name == "what-if":
        found += [Asked("set", "path of the value to set", (), "air/changes", "set"),
                  Asked("to", "what to put there", (), "0.35 ACH")]  # fmt: skip
    return tuple(found)


def _fits(page: Page, id: str, thing: str) -> bool:
    """Windows and doors are openings; everything else is a surface."""
    kind = page.job.constructions[id].kind if id in page.job.constructions else ""
    return (kind in ("window", "door")) == (thing == "opening")


def _cells(page: Page, path: str, shape: Shape, node: Node) -> tuple[Cell, ...]:
    given = node.entries if isinstance(node, Mapping) else {}
    found = []
    for keys in COLUMNS.get(shape.name, ()):
        key = next((each for each in keys if each in given), keys[0])
        field = shape.by_key[key]
        words = f"{name_of(page, path)}, {field.words}"
        num = _is_number(shape.by_key[keys[0]])
        found.append(Cell(entry_for(page, f"{path}/{key}", field, words, "row"), num))
    return tuple(found)


def _head(shape: Shape, keys: tuple[str, ...]) -> str:
    words = HEADS.get(keys[0], "") if len(keys) > 1 else ""
    words = words or shape.by_key[keys[0]].words
    return words[:1].upper() + words[1:]


def _is_number(field: Field) -> bool:
    return field.kind in ("quantity", "size", "whole", "percent")


def _emitters_left(page: Page, taken: list[str]) -> tuple[tuple[str, str], ...]:
    """Emitters that no row names yet: a run has the id of its emitter."""
    return tuple((id, each.name) for id, each in page.job.system.emitters.items() if id not in taken)
