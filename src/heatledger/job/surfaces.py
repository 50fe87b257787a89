"""Surfaces: what they are made of, how large they are, and what is beyond them."""

from __future__ import annotations

from heatledger.job.around import Around, construction_of
from heatledger.job.measures import gross_area, read_measures
from heatledger.job.model import Beyond, Surface
from heatledger.job.openings import check_openings, read_openings
from heatledger.job.quantities import Reader
from heatledger.job.reading import in_words, offer
from heatledger.job.shapes import SURFACE
from heatledger.job.text import Node

BEYOND_OF = {"below-grade wall": "ground", "below-grade floor": "ground", "slab edge": "outdoors"}
_AGAINST_GROUND = "Against the ground use a construction of kind below-grade wall or floor, or a slab edge."


def read_surfaces(reader: Reader, node: Node | None, around: Around, inherited: str) -> dict[str, Surface]:
    """The surfaces of a space, each with its openings."""
    path = f"{around.space}/surfaces"
    mapping = reader.mapping(node, path, "the surfaces")
    known = reader.known(mapping, path, inherited)
    things = reader.things(node, path, "surfaces") if mapping.entries else {}
    return {key: read_surface(reader, key, each, around, known) for key, each in things.items()}


def read_surface(reader: Reader, id: str, node: Node, around: Around, inherited: str) -> Surface:
    """One surface, checked for a way to its area."""
    path = f"{around.space}/surfaces/{id}"
    values = reader.fields(SURFACE, node, path, inherited)
    made_of = construction_of(reader, values, path, around, opening=False)
    beyond = read_beyond(reader, values["beyond"], path, around, made_of.kind)
    measures = read_measures(reader, values, path, made_of.kind, around.level, around.floor_area)
    openings = read_openings(reader, values, path, around, made_of.kind)
    check_openings(reader, path, gross_area(made_of.kind, measures), openings)
    return Surface(
        id,
        values["name"] or in_words(id),
        made_of,
        beyond,
        measures["area"],
        measures["length"],
        measures["height"],
        measures["width"],
        measures["depth"],
        measures["top"],
        measures["bottom"],
        openings,
        "",
        values["raw"],
    )


def read_beyond(reader: Reader, text: str | None, path: str, around: Around, kind: str) -> Beyond:
    """What is beyond a surface; below grade it is the ground, and for a slab edge outdoors, by itself."""
    here = f"{path}/beyond"
    if not text:
        if kind not in BEYOND_OF and kind:
            reader.error(
                "no-beyond",
                path,
                "It is not said what is beyond the surface.",
                "Write  beyond: outdoors  (or rooms/ID, unheated/ID, neighbors/ID).",
            )
        return Beyond(BEYOND_OF.get(kind, ""))
    if text in ("outdoors", "ground"):
        if kind and text != BEYOND_OF.get(kind, "outdoors"):
            right = BEYOND_OF.get(kind)
            mend = f"Write  beyond: {right}" if right else _AGAINST_GROUND
            reader.error("ground-mismatch", here, f"Beyond a {kind} there cannot be {text}.", mend)
        return Beyond(text)
    where, _, name = text.partition("/")
    if where not in around.names or not name:
        every = [
            "outdoors",
            "ground",
            *(f"{each}/{one}" for each in around.names for one in around.names[each]),
        ]
        ends = [each for each in every if each.split("/")[-1] == text]
        mend = f"Did you mean `{ends[0]}`?" if ends else offer(text, every)
        reader.error("unknown-beyond", here, f"`{text}` does not say what is beyond the surface.", mend)
        return Beyond("")
    one = {"rooms": "room", "unheated": "unheated", "neighbors": "neighbor"}[where]
    if name not in around.names[where]:
        words = {"room": "room", "unheated": "unheated space", "neighbor": "neighbor"}[one]
        mend = offer(name, around.names[where])
        reader.error(f"unknown-{one}", here, f"There is no {words} `{name}`.", mend)
        return Beyond("")
    if text == around.space:
        reader.error(
            "beyond-itself",
            here,
            f"`{text}` is the space the surface belongs to.",
            "Name what is on the other side.",
        )
    elif kind in BEYOND_OF:
        reader.error(
            "ground-mismatch",
            here,
            f"Beyond a {kind} there cannot be `{text}`.",
            f"Write  beyond: {BEYOND_OF[kind]}",
        )
    return Beyond(one, name)
