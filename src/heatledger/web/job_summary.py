"""What the list of jobs keeps of a design besides its bottom line: questions, what-ifs, flow."""

from __future__ import annotations

from math import isnan
from typing import Any

from heatledger.ledger.figures import Figure
from heatledger.papers.findings_by_sheet import sheet_of
from heatledger.steps.design import Design
from heatledger.studies.calls import hardest_pump
from heatledger.studies.side_by_side import Side, side_by_side

MOST_QUESTIONS = 5


def more_of(house: Design) -> dict[str, Any]:
    """Return, flow and head (SI), the first open questions in the words of the job's units, the what-ifs."""
    id = hardest_pump(house)
    return {
        "return": number(house.results.get("plant/return_design")),
        "flow": number(house.results.get("plant/flow")),
        "head": number(house.circuits.plant.circulators[id].needed_head if id else None),
        "questions": questions_of(house),
        "what_ifs": what_ifs_of(house),
    }


def questions_of(house: Design) -> list[list[Any]]:
    """The first open questions, each as weight, sentence, number of its sheet."""
    found = [each for each in house.findings if each.decided is None]
    return [[each.weight.value, each.what, sheet_of(each.id)] for each in found[:MOST_QUESTIONS]]


def what_ifs_of(house: Design) -> list[dict[str, Any]]:
    """Each what-if laid by itself: its design load and its supply (SI), None where it cannot be laid."""
    return [_what_if(house, each) for each in side_by_side(house)]


def _what_if(house: Design, side: Side) -> dict[str, Any]:
    supply = None if side.cannot else house.with_what_if(side.id).results.get("house/supply")
    return {"id": side.id, "name": side.name, "loss": number(side.loss), "supply": number(supply)}


def number(figure: Figure | None) -> float | None:
    """The SI value; None where there is none."""
    return None if figure is None or isnan(float(figure)) else float(figure)
