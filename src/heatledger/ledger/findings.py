"""What a careful senior designer would say on reading a design."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from enum import Enum
from typing import Any

from heatledger.ledger.figures import Figure
from heatledger.ledger.formulas import Formula
from heatledger.ledger.sources import Citation


class Weight(Enum):
    """How much a finding weighs, with the words that are shown."""

    MUST_FIX = "must fix"
    DECIDE = "decide"
    NOTE = "note"


@dataclass(frozen=True)
class Mend:
    """A way to mend a finding: words, and the changes as a what-if writes them, so it can be tried."""

    words: str
    changes: tuple[Mapping[str, Any], ...] = ()


@dataclass(frozen=True)
class Decided:
    """What the user decided on a finding, and why."""

    words: str
    because: str
    by: str


@dataclass(frozen=True, eq=False)
class Finding:
    """Where, what, why, how to mend it, on whose word, and how much it weighs.

    ``where`` is the path of the thing it stands at. ``why`` is the figure behind it, or words when
    there is none. ``threshold`` says the limit that was used. ``caution`` is set when someone could be
    hurt.
    """

    id: str
    where: str
    what: str
    why: Figure | str
    mends: tuple[Mend, ...]
    citation: Citation
    weight: Weight
    threshold: str = ""
    caution: str = ""
    explains: tuple[str, ...] = ()
    decided: Decided | None = None


@dataclass(frozen=True)
class NotChecked:
    """A finding that could not be checked, and for want of what."""

    id: str
    where: str
    for_want_of: str


def outside_ranges(figures: Iterable[Figure]) -> list[tuple[Figure, str, float, float, float]]:
    """Figures whose formula was used outside its range: figure, parameter, SI value, low, high."""
    found = []
    for figure in figures:
        formula = figure.origin
        if not isinstance(formula, Formula) or not formula.valid:
            continue
        for parameter, given in zip(formula.parameters, figure.inputs, strict=True):
            low, high = formula.valid.get(parameter.name, (float("-inf"), float("inf")))
            for each in given if parameter.many else (given,):
                if not each.is_missing and not low <= float(each) <= high:
                    found.append((figure, parameter.words, float(each), low, high))
    return found
