"""What a revision keeps of the design it showed: its figures, and the few that the list of jobs needs."""

from __future__ import annotations

import logging
from math import isnan
from typing import TYPE_CHECKING, Any

from heatledger.book.errors import BookError
from heatledger.book.figures import kept_of
from heatledger.book.opening import Book
from heatledger.steps.design import Design
from heatledger.web.job_summary import more_of
from heatledger.web.states import sheet_states

if TYPE_CHECKING:
    from heatledger.web.desks import State

BOTTOM_LINE = {
    "loss": "house/loss", "area": "house/floor_area", "supply": "house/supply",
    "load": "plant/load", "output": "plant/output",
}  # fmt: skip


def keep(book: Book, id: str, state: State) -> None:
    """Write the figures of a revision into the book, once."""
    try:
        if book.kept(id, state.revision.number) is not None:
            return
        book.keep(id, state.revision.number, kept_of(state.house, summary_of(state.house)), state.revision.at)
    except BookError as fault:
        logging.getLogger("heatledger").warning(
            "figures of revision %s not kept: %s", state.revision.number, fault
        )


def summary_of(house: Design) -> dict[str, Any]:
    """What the list of jobs shows of one (SI), with where each sheet stands."""
    states = sheet_states(house)
    return {
        **{key: _number(house, path) for key, path in BOTTOM_LINE.items()},
        "rooms": len(house.job.rooms),
        "open": sum(each.decided is None for each in house.findings),
        "must": sum(each.decided is None and each.weight.value == "must fix" for each in house.findings),
        "units": house.job.units.name,
        "states": [each.shape for each in states],
        "invented": house.job.invented,
        **more_of(house),
    }


def _number(house: Design, path: str) -> float | None:
    figure = house.results.get(path)
    return None if figure is None or isnan(float(figure)) else float(figure)
