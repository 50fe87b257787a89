"""Every paper that is made of a design: its name, what fills it, and when it has something to say."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from heatledger.papers import (
    boiler_room_paper,
    circuits_paper,
    emitters_paper,
    inspector_paper,
    material_list,
    owners_report,
    replacement_paper,
    review_paper,
    startup_paper,
    wall_card,
    workings_paper,
)
from heatledger.papers.blocks import Paper
from heatledger.papers.due import with_boiler, with_circuits, with_emitters, with_plant
from heatledger.papers.from_design import heat_loss_paper
from heatledger.papers.heat_loss import heat_loss_pdf
from heatledger.papers.paper import paper_pdf
from heatledger.papers.printing import Printing
from heatledger.steps.design import Design

Files = dict[str, bytes]
"""What is written of one paper, by the ending of the file."""


@dataclass(frozen=True)
class PaperKind:
    """A paper by the name of its file. ``files`` makes it on a sheet; ``applies`` says whether it is due."""

    name: str
    files: Callable[[Printing, str], Files]
    applies: Callable[[Design], bool]
    large: bool = False
    """Whether it is so long that it is set after all others."""


def always(design: Design) -> bool:
    """Due for any house that has a room."""
    return True


def has(*steps: str) -> Callable[[Design], bool]:
    """Due once the design has results of all these steps."""
    return lambda design: all(getattr(design, each, None) is not None for each in steps)


def of_blocks(build: Callable[[Printing], Paper]) -> Callable[[Printing, str], Files]:
    """A paper of blocks as PDF."""
    return lambda printing, sheet: {"pdf": paper_pdf(build(printing), sheet)}


def _heat_loss(printing: Printing, sheet: str) -> Files:
    return {"pdf": heat_loss_pdf(heat_loss_paper(printing.design, printing.units, printing.found), sheet)}


PAPERS: tuple[PaperKind, ...] = (
    PaperKind("owners-report", of_blocks(owners_report.owners_report), always),
    PaperKind("inspector", of_blocks(inspector_paper.inspector_paper), always),
    PaperKind("replacement", of_blocks(replacement_paper.replacement_paper), replacement_paper.applies),
    PaperKind("heat-loss", _heat_loss, always),
    PaperKind("emitters", of_blocks(emitters_paper.emitters_paper), with_emitters),
    PaperKind("circuits", of_blocks(circuits_paper.circuits_paper), with_circuits),
    PaperKind("boiler-room", of_blocks(boiler_room_paper.boiler_room_paper), with_plant),
    PaperKind("startup", of_blocks(startup_paper.startup_paper), with_boiler),
    PaperKind("boiler-room-card", of_blocks(wall_card.wall_card), with_boiler),
    PaperKind("material-list", material_list.files, material_list.applies),
    PaperKind("review", of_blocks(review_paper.review_paper), always),
    PaperKind("workings", of_blocks(workings_paper.workings_paper), always, large=True),
)
"""The papers in the order in which they are written. A new one is one line here."""
