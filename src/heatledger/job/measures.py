"""How large a surface or opening is: a size taken apart, stand-ins, and two measures that must agree."""

from __future__ import annotations

from typing import Any

from heatledger.job.model import Level
from heatledger.job.quantities import Reader
from heatledger.job.reading import Typed
from heatledger.ledger import dimensions as d
from heatledger.ledger.figures import Figure, Leaf, LeafKind, leaf, missing
from heatledger.ledger.sources import JUDGMENT, cite

Measures = dict[str, Figure | None]

MEASURES = ("size", "area", "length", "height", "width", "depth", "top", "bottom")
TAKES: dict[str, tuple[str, ...]] = {
    "wall": ("size", "area", "length", "height"),
    "ceiling": ("size", "area", "length", "width"),
    "floor": ("size", "area", "length", "width"),
    "below-grade wall": ("length", "top", "bottom"),
    "below-grade floor": ("area", "width", "depth"),
    "slab edge": ("length",),
}
"""Measures that each kind of surface takes."""
SAME = 0.01
"""Two measures of one thing may differ by this share before it is an error: the rounding of a hand."""

AT_GRADE = cite("", "top of a wall below grade at grade where the job does not say", JUDGMENT)


def read_measures(
    reader: Reader,
    values: dict[str, Any],
    path: str,
    kind: str,
    level: Level | None,
    floor_area: Figure | None,
) -> Measures:
    """The measures of a surface, a size taken apart, with what stands in for those not given."""
    found: Measures = {each: values[each] for each in MEASURES if each != "size"}
    given = [each for each in MEASURES if values["node"].entries.get(each) is not None]
    takes = TAKES.get(kind)
    if takes is None:
        return found
    strange = [each for each in given if each not in takes]
    for each in strange:
        reader.error(
            "measure-not-for-kind",
            f"{path}/{each}",
            f"A {kind} has no `{each}`.",
            f"It takes: {', '.join(takes)}.",
        )
    second = "height" if kind == "wall" else "width"
    if "size" in takes:
        apply_size(reader, values["size"], path, found, ("length", second))
    if not given and kind != "below-grade floor":
        reader.error(
            "no-area",
            path,
            "There is no way to the area of the surface.",
            f"Give one of: {', '.join(takes)}.",
        )
        return found
    if strange:
        return found
    _fill(path, kind, found, level, floor_area)
    top, bottom = found["top"], found["bottom"]
    if kind == "below-grade wall" and top is not None and bottom is not None and float(top) >= float(bottom):
        reader.error(
            "top-below-bottom",
            f"{path}/bottom",
            "The bottom of the wall is not deeper than its top.",
            "Both are depths below grade: top 0 ft, bottom 6 ft.",
        )
    return found


def apply_size(
    reader: Reader, typed: Typed | None, path: str, found: Measures, names: tuple[str, str]
) -> None:
    """Put the two lengths of a size into ``found``; an error where another measure does not agree."""
    first, second = reader.sides(typed, path, names)
    for name, side in zip(names, (first, second), strict=True):
        if side is None:
            continue
        other = found[name]
        if other is not None and _differ(float(other), float(side)):
            _two_sizes(reader, path, name)
        found[name] = side
    long, high, area = found[names[0]], found[names[1]], found["area"]
    if area is not None and long is not None and high is not None:
        if _differ(float(area), float(long) * float(high)):
            _two_sizes(reader, path, "area")
        found["area"] = None


def _two_sizes(reader: Reader, path: str, name: str) -> None:
    reader.error(
        "two-sizes",
        f"{path}/{name}",
        f"The {name} given and the other measures do not agree.",
        "Keep the one that was measured.",
    )


def _differ(first: float, second: float) -> bool:
    return abs(first - second) > SAME * max(abs(first), abs(second))


def _fill(path: str, kind: str, found: Measures, level: Level | None, floor_area: Figure | None) -> None:
    """Stand-ins: the height of the level, the top at grade, and figures without a value for the rest."""

    def need(name: str, words: str) -> None:
        if found[name] is None:
            found[name] = missing(d.LENGTH, f"{path}/{name}", words)

    if kind in ("below-grade wall", "slab edge"):
        need("length", "length")
    if kind == "below-grade wall":
        need("bottom", "depth of bottom")
        if found["top"] is None:
            found["top"] = leaf(
                0.0,
                d.LENGTH,
                Leaf(LeafKind.SOURCE, f"{path}/top", "depth of top", "0 ft", "ft", 0.0, 0, citation=AT_GRADE),
            )
    elif kind == "below-grade floor":
        need("width", "width of the basement")
        need("depth", "depth of floor")
        if found["area"] is None:
            found["area"] = floor_area
    elif found["area"] is None and kind == "wall":
        if found["height"] is None and level is not None:
            found["height"] = level.wall_height
        need("length", "length")
        need("height", "height")
    elif found["area"] is None and kind in ("ceiling", "floor"):
        need("length", "length")
        need("width", "width")


def gross_area(kind: str, measures: Measures) -> float | None:
    """Gross area in m² as a plain number, for checks only; None when it is not known."""
    if measures["area"] is not None:
        return float(measures["area"])
    length = measures["length"]
    if length is None:
        return None
    if kind == "below-grade wall" and measures["bottom"] is not None and measures["top"] is not None:
        return float(length) * (float(measures["bottom"]) - float(measures["top"]))
    other = measures["height"] if kind == "wall" else measures["width"]
    return float(length) * float(other) if other is not None else None
