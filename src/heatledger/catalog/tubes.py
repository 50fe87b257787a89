"""Tubes by the size the trade calls them, and what their fittings resist."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, replace
from difflib import SequenceMatcher, get_close_matches
from functools import cache
from math import log

from heatledger.catalog.loader import Table, figure_of, load_table, text_of_table
from heatledger.ledger.dimensions import BORE, LENGTH
from heatledger.ledger.figures import Figure, Leaf, leaf
from heatledger.ledger.sources import Citation, Standing


@dataclass(frozen=True)
class Family:
    """One family of tube: its table, the material its roughness goes by, and the table of its fittings.

    ``nominal`` is the family of inch sizes whose fittings a metric size takes.
    """

    key: str
    words: str
    table: str
    material: str
    fittings: str
    nominal: str = ""


FAMILIES = {
    each.key: each
    for each in (
        Family("copper-k", "copper, type K", "tubes_copper_k", "copper", "fittings_copper"),
        Family("copper-l", "copper, type L", "tubes_copper_l", "copper", "fittings_copper"),
        Family("copper-m", "copper, type M", "tubes_copper_m", "copper", "fittings_copper"),
        Family("steel-40", "steel, schedule 40", "tubes_steel_40", "steel", "fittings_steel"),
        Family("pex", "PEX", "tubes_pex", "pex", "fittings_pex"),
        Family("pex-al-pex", "PEX-AL-PEX", "tubes_pex_al_pex", "pex", "fittings_pex"),
        Family(
            "copper-metric", "copper, metric", "tubes_copper_metric", "copper", "fittings_copper", "copper-m"
        ),
        Family("pex-metric", "PEX, metric", "tubes_pex_metric", "pex", "fittings_pex", "pex"),
    )
}
"""The families of tube by the word a job may write for one."""

FITTING_KINDS = {
    "90-ell": "90 degree elbow",
    "45-ell": "45 degree elbow",
    "tee-run": "tee, straight through",
    "tee-branch": "tee, into or out of the branch",
    "coupling": "coupling",
    "ball-valve": "ball valve",
    "check-valve": "swing check valve",
}
"""The kinds of fitting a job may count. Not every kind of tube has them all."""


@dataclass(frozen=True)
class TubeRow:
    """One size of tube, ``key`` as a job writes it (copper-m-3/4, pex-16x2)."""

    key: str
    name: str
    family: str
    size: str
    bore: Figure
    outside: Figure
    roughness: Figure


_INCHES = {each.replace("/", "-"): each for each in ["3/8", "1/2", "3/4", "1", "1-1/4", "1-1/2", "2"]}
"""Columns of the tables of fittings, and the sizes they stand for."""

_SIZE = re.compile(r"(?<![\w./])(?:(\d+)[ -]+)?(\d+/\d+|\d+)(?![\w./])")
_METRIC = re.compile(r"(\d+(?:[.,]\d+)?) ?(?:mm)? ?x ?(\d+(?:[.,]\d+)?) ?(?:mm)?")
_SCHEDULE = re.compile(r"(?:\b(?:schedule|sched|sch)\b\.?[ -]*|(?<=steel)[ -])40\b")
_STANDARD = re.compile(r"\b(?:astm|en iso|en|iso|asme|sdr)[ -]*[a-z]?\d+(?:\.\d+)?[a-z]?\b")
_IDLE = frozenset(["in", "mm", "inch", "type", "tube", "tubing", "pipe", "nominal", "nps", "metric", "water"])
_FAMILY_WORDS = {
    ("copper", "k"): "copper-k", ("copper", "l"): "copper-l", ("copper", "m"): "copper-m",
    ("steel",): "steel-40", ("black", "steel"): "steel-40", ("black", "iron"): "steel-40",
    ("pex",): "pex", ("al", "pex"): "pex-al-pex", ("pap",): "pex-al-pex",
    ("copper",): "copper-metric",
}  # fmt: skip


def _parted(text: str) -> tuple[str, str]:
    """Family and size that a text names, each empty where it names none."""
    words = text.casefold().replace("×", "x").replace('"', " in ").replace("″", " in ")
    words = _SCHEDULE.sub(" ", _STANDARD.sub(" ", words))
    words = re.sub(r"(?<=\d)(in|inch|inches|mm)\b", r" \1", words.replace("inches", "in"))
    metric, size = _METRIC.search(words), ""
    if metric:
        size = "x".join(f"{float(each.replace(',', '.')):g}" for each in metric.groups())
        words = words.replace(metric[0], " ")
    else:
        inch = _SIZE.search(words)
        if inch:
            size = "-".join(each for each in inch.groups() if each)
            words = words.replace(inch[0], " ")
    said = tuple(sorted(set(re.findall(r"[a-z]+", words)) - _IDLE))
    family = _FAMILY_WORDS.get(said, "")
    if family == "pex" and (metric or "metric" in text.casefold()):
        family = "pex-metric"
    if family == "copper-metric" and not metric and "metric" not in text.casefold():
        family = ""
    return family, size


@cache
def family_of(text: str) -> str:
    """The family that a text names without a size (copper M, pex, steel), else an empty text."""
    words = text.strip().casefold()
    if words in FAMILIES:
        return words
    family, size = _parted(text)
    return "" if size else family


@cache
def tube(text: str) -> TubeRow | None:
    """The tube that a text names as the trade does (3/4 in copper M, copper-m-3/4, 16x2 PEX), or None."""
    family, size = _by_row_key(text.strip().casefold()) or _parted(text)
    return tubes_of(family).get(size) if family and size else None


def _by_row_key(key: str) -> tuple[str, str] | None:
    # A key as its table writes it has no stroke and no point: copper-m-3-4, copper-28x1-5.
    for name, family in FAMILIES.items():
        if re.fullmatch(r"[a-z0-9-]+", key) and f"  {key}:" in text_of_table(family.table):
            # The words of a table hold other keys too, such as wall and bore.
            row = load_table(family.table).rows.get(key)
            if row is not None:
                return name, _size_of(row.name)
    return None


@cache
def tubes_of(family: str) -> Mapping[str, TubeRow]:
    """The sizes of one family by size, small to large."""
    kind = FAMILIES[family]
    table = load_table(kind.table)
    found = {}
    for key, row in table.rows.items():
        size = _size_of(row.name)
        found[size] = TubeRow(
            f"{family.removesuffix('-metric')}-{size}", row.name, family, size,
            figure_of(table, key, "bore", BORE, "bore"), figure_of(table, key, "outside", BORE, "outside"),
            roughness_of(kind.material),
        )  # fmt: skip
    return found


def _size_of(name: str) -> str:
    # A name begins with its size: 3/4 in copper, type M; 28x1.5 copper.
    return name.split(" ", 1)[0]


def roughness_of(material: str) -> Figure:
    """Roughness of a material of tube: copper, pex or steel. Raises ``KeyError`` for another."""
    return figure_of(load_table("tube_roughness"), material, "roughness", BORE, "roughness")


def tubes() -> dict[str, TubeRow]:
    """Every tube of the catalog by its key."""
    return {row.key: row for family in FAMILIES for row in tubes_of(family).values()}


def nearest_tubes(text: str) -> tuple[str, ...]:
    """Keys of tubes that a text may have meant, at most six, best first."""
    family, size = _parted(text)
    every = tubes()
    if size and not family:
        same = [row.key for row in every.values() if row.size == size]
        return tuple(sorted(same, key=lambda key: (-_likeness(text, key), len(key))))[:6]
    if family:
        rows = list(tubes_of(family).values())
        if not size:
            return tuple(row.key for row in rows)[:6]
        near = get_close_matches(size, [row.size for row in rows], n=6, cutoff=0.0)
        return tuple(tubes_of(family)[each].key for each in near)
    return tuple(get_close_matches(text.casefold(), list(every), n=6, cutoff=0.3))


def _likeness(text: str, key: str) -> int:
    """How many letters of a text stand in a key, in order."""
    pair = SequenceMatcher(None, text.casefold(), key, autojunk=False)
    return sum(block.size for block in pair.get_matching_blocks())


@cache
def fitting_lengths(row: TubeRow) -> dict[str, Figure]:
    """Length of tube that resists as much as one fitting, by kind; only the kinds that its table has.

    A size that the table has not takes the nearest one that it has, and its citation says so.
    """
    family = FAMILIES[row.family]
    table = load_table(family.fittings)
    column, beside = _column_of(table, row, family)
    found = {}
    for kind in table.rows:
        figure = figure_of(table, kind, column, LENGTH, "one " + FITTING_KINDS[kind])
        origin = figure.origin
        if not isinstance(origin, Leaf):
            raise TypeError("a row of the catalog is a leaf")
        origin = replace(origin, beside=_across(table, kind, column))
        if beside:
            taken = origin.citation or Citation("", "", Standing.JUDGMENT)
            said = replace(taken, place=f"{taken.place}; {beside}", standing=Standing.JUDGMENT)
            origin = replace(origin, citation=said)
        found[kind] = leaf(float(figure), LENGTH, origin)
    return found


def _column_of(table: Table, row: TubeRow, family: Family) -> tuple[str, str]:
    """The column of a tube's size, and words where it is the nearest and not its own."""
    own = row.size.replace("/", "-")
    if own in table.columns:
        return own, ""
    inches = {each.size.replace("/", "-"): each for each in tubes_of(family.nominal or family.key).values()}
    near = min(
        (each for each in table.columns if each in inches),
        key=lambda each: abs(log(float(inches[each].bore) / float(row.bore))),
    )
    return near, f"row of {inches[near].size} in, the nearest bore to {row.name}"


def _across(table: Table, kind: str, column: str) -> tuple[str, ...]:
    columns = list(table.columns)
    here = columns.index(column)
    near = [columns[each] for each in (here - 1, here + 1) if 0 <= each < len(columns)]
    row = table.rows[kind]
    return tuple(f"{row.name} {_INCHES[each]} in {row.typed[each]}" for each in near)
