"""Windows and doors, and the check that they fit into their surface."""

from __future__ import annotations

from typing import Any

from heatledger.job.around import Around, construction_of
from heatledger.job.known import CHOSEN
from heatledger.job.measures import apply_size
from heatledger.job.model import Opening
from heatledger.job.quantities import Reader
from heatledger.job.reading import in_words
from heatledger.job.shapes import OPENING
from heatledger.job.text import Node
from heatledger.ledger import dimensions as d
from heatledger.ledger.figures import Leaf, LeafKind, leaf, missing

BELOW_GRADE = ("below-grade wall", "below-grade floor")
FITS = 1 + 1e-9
"""Openings as large as their surface are no error; this much is the rounding of the arithmetic."""


def read_openings(
    reader: Reader, values: dict[str, Any], path: str, around: Around, kind: str
) -> dict[str, Opening]:
    """The windows and doors of a surface by id."""
    node = values["node"].entries.get("openings")
    here = f"{path}/openings"
    mapping = reader.mapping(node, here, "the openings")
    known = reader.known(mapping, here, values["known"])
    things = reader.things(node, here, "openings") if mapping.entries else {}
    if things and kind in BELOW_GRADE:
        reader.error(
            "opening-below-grade",
            here,
            f"A {kind} lies against the ground, so no window or door in it can lose heat to outdoors.",
            "Give the part above grade as a wall of its own with  beyond: outdoors  and put them there.",
        )
    elif things and kind == "slab edge":
        reader.error(
            "opening-not-here",
            here,
            f"A {kind} has no windows or doors.",
            "Put them under the wall or ceiling they are in.",
        )
    return {key: _opening(reader, key, each, f"{here}/{key}", around, known) for key, each in things.items()}


def _opening(reader: Reader, id: str, node: Node, path: str, around: Around, inherited: str) -> Opening:
    values = reader.fields(OPENING, node, path, inherited)
    made_of = construction_of(reader, values, path, around, opening=True)
    found = {each: values[each] for each in ("area", "width", "height")}
    apply_size(reader, values["size"], path, found, ("width", "height"))
    if all(values["node"].entries.get(each) is None for each in ("size", "area", "width", "height")):
        reader.error(
            "no-area",
            path,
            "There is no way to the area of the opening.",
            "Give size (width × height) or area.",
        )
    elif found["area"] is None:
        for each in ("width", "height"):
            if found[each] is None:
                found[each] = missing(d.LENGTH, f"{path}/{each}", each)
    count = values["count"]
    if count is None:
        count = leaf(1.0, d.COUNT, Leaf(LeafKind.JOB, f"{path}/count", "count", "1", "1", 1.0, 0, CHOSEN))
    return Opening(
        id,
        values["name"] or in_words(id),
        made_of,
        found["area"],
        found["width"],
        found["height"],
        count,
        values["raw"],
    )


def check_openings(reader: Reader, path: str, gross: float | None, openings: dict[str, Opening]) -> None:
    """An error when the openings are larger than the surface they are in."""
    if gross is None or not openings:
        return
    total = 0.0
    for each in openings.values():
        one = float(each.area) if each.area is not None else float("nan")
        if each.area is None and each.width is not None and each.height is not None:
            one = float(each.width) * float(each.height)
        total += one * float(each.count)
    if total > gross * FITS:
        metric = reader.units.name == "metric"
        unit, factor = ("m²", 1.0) if metric else ("ft²", 0.3048**2)
        reader.error(
            "openings-over-surface",
            path,
            f"The openings come to {total / factor:.1f} {unit}, the whole surface to "
            f"{gross / factor:.1f} {unit}.",
            "Check the sizes; the surface is given gross.",
        )
