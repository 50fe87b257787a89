"""Setting a paper of blocks: plain data for the template, and the PDF."""

from __future__ import annotations

from dataclasses import fields
from functools import cache
from typing import Any, get_args

from heatledger.drawings.shapes import Drawing
from heatledger.drawings.to_svg import to_svg
from heatledger.ledger.figures import Figure
from heatledger.papers.blocks import Block, Paper
from heatledger.papers.compile import Prepared, compiled, prepared

TEMPLATE = "paper.typ"
BLOCKS = frozenset(get_args(Block))


def paper_pdf(paper: Paper, sheet: str = "letter") -> bytes:
    """The paper as PDF on ``letter`` or ``a4``; raises PaperError when it cannot be made cleanly."""
    made = paper_prepared(paper, sheet)
    del paper  # a long one would lie beside what the compiler makes of it
    return compiled(made)


def paper_prepared(paper: Paper, sheet: str = "letter") -> Prepared:
    """The texts that the compiler takes of a paper."""
    return prepared(TEMPLATE, content(paper), sheet)


def content(paper: Paper) -> dict[str, Any]:
    """All that the template takes: blocks by name, drawings as pictures, and the keys answered here."""
    return {**plain(paper), "answered": dict.fromkeys(paper.keys(), True)}


def plain(thing: Any) -> Any:
    """A block or any part of it as dicts, lists and texts; ``block`` names which one it is."""
    if isinstance(thing, Figure):
        raise TypeError(f"a paper takes texts, not {thing!r}; show it first")
    if thing is None or isinstance(thing, str | int | float):
        return thing
    if isinstance(thing, tuple):
        return [plain(each) for each in thing]
    if isinstance(thing, Drawing):
        return picture(thing)
    kind = thing.__class__
    made = {name: plain(getattr(thing, name)) for name in _names(kind)}
    if kind in BLOCKS:
        made["block"] = kind.__name__
    return made


@cache
def _names(kind: type) -> tuple[str, ...]:
    return tuple(each.name for each in fields(kind))


def picture(drawing: Drawing) -> dict[str, Any]:
    """A drawing for the template: as SVG, with its words for those who do not see it."""
    words = f"{drawing.title}: {drawing.words}"
    return {"svg": to_svg(drawing), "alt": words, "width": drawing.width, "height": drawing.height}
