"""Every paper that is made of a design: its name, what fills it, and when it has something to say."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

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
from heatledger.papers.compile import Prepared, compiled
from heatledger.papers.due import with_boiler, with_circuits, with_emitters, with_plant
from heatledger.papers.from_design import heat_loss_paper
from heatledger.papers.heat_loss import heat_loss_prepared
from heatledger.papers.paper import paper_prepared
from heatledger.papers.printing import Printing
from heatledger.steps.design import Design

Files = dict[str, bytes]
"""What is written of one paper, by the ending of the file."""


def no_files(printing: Printing) -> Files:
    """A paper that stands alone."""
    return {}


@dataclass(frozen=True)
class PaperKind:
    """A paper by the name of its file, and what it is called and for.

    ``prepared`` fills it for a sheet, ``applies`` says whether it is due, ``beside`` gives the files of the
    same content that are no paper.
    """

    name: str
    words: str
    says: str
    prepared: Callable[[Printing, str], Prepared]
    applies: Callable[[Design], bool]
    beside: Callable[[Printing], Files] = no_files
    large: bool = False
    """Whether it is so long that it is set after all others."""
    landscape: bool = False

    def files(self, printing: Printing, sheet: str) -> Files:
        """The paper as PDF, with the files that go beside it."""
        made = self.prepared(printing, sheet)
        return {"pdf": compiled(made), **self.beside(printing)}


def always(design: Design) -> bool:
    """Due for any house that has a room."""
    return True


def has(*steps: str) -> Callable[[Design], bool]:
    """Due once the design has results of all these steps."""
    return lambda design: all(getattr(design, each, None) is not None for each in steps)


def of_blocks(build: Callable[[Printing], Paper]) -> Callable[[Printing, str], Prepared]:
    """A paper of blocks, filled."""
    return lambda printing, sheet: paper_prepared(build(printing), sheet)


def _heat_loss(printing: Printing, sheet: str) -> Prepared:
    paper = heat_loss_paper(printing.design, printing.units, printing.found)
    return heat_loss_prepared(replace(paper, head=printing.head(paper.head.title)), sheet)


PAPERS: tuple[PaperKind, ...] = (
    PaperKind("owners-report", "Owner’s report", "what it loses, why, what is proposed",
              of_blocks(owners_report.owners_report), always),
    PaperKind("inspector", "Inspector’s set", "held against what is asked for",
              of_blocks(inspector_paper.inspector_paper), always),
    PaperKind("replacement", "Replacing the boiler", "the radiators that stay, a boiler for them",
              of_blocks(replacement_paper.replacement_paper), replacement_paper.applies),
    PaperKind("heat-loss", "Heat loss", "room by room, every part of it", _heat_loss, always),
    PaperKind("emitters", "Emitter schedule", "what hangs in each room",
              of_blocks(emitters_paper.emitters_paper), with_emitters),
    PaperKind("circuits", "Circuit schedule", "tube, flow and valve of each run",
              of_blocks(circuits_paper.circuits_paper), with_circuits),
    PaperKind("boiler-room", "Boiler room", "its schematic, parts and pressures",
              of_blocks(boiler_room_paper.boiler_room_paper), with_plant),
    PaperKind("startup", "Startup sheet", "checks and readings, in order",
              of_blocks(startup_paper.startup_paper), with_boiler),
    PaperKind("boiler-room-card", "Boiler-room wall card", "to hang beside the boiler",
              of_blocks(wall_card.wall_card), with_boiler, landscape=True),
    PaperKind("material-list", "Material list", "what must be on site, no prices",
              material_list.filled, material_list.applies, material_list.beside),
    PaperKind("review", "Review of the design", "what is open, by its weight",
              of_blocks(review_paper.review_paper), always),
    PaperKind("workings", "Working sheets", "every figure, by hand",
              of_blocks(workings_paper.workings_paper), always, large=True),
)  # fmt: skip
"""The papers in the order in which they are written. A new one is one entry here."""
