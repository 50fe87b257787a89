"""The pencil rule: how many places each printed number needs so that a pencil gets the answer.

Each number starts with the places it is shown with elsewhere; one typed in this unit stands as
typed. While the result worked out from the printed numbers is more than one unit of the answer's
last place away, the number whose rounding moves the answer most gets one more place, to at most six
figures; when none can, the answer loses a place.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from heatledger.ledger.terms import Term, compared, rounded, values_in, worked_out

MOST_FIGURES = 6
STARTING_FIGURES = 4
"""Significant figures of a constant or a unit factor that is not exact in the unit shown."""


@dataclass(frozen=True)
class Penciled:
    """The printed numbers of a tree by ``id`` of the term, with their places, and the answer's places.

    ``figures_left`` is false when the answer lost its last figure: it is then "less than" one unit.
    """

    printed: dict[int, float]
    places: dict[int, int]
    answer: float
    answer_places: int
    figures_left: bool


def figures_of(number: float, places: int) -> int:
    """Significant figures that ``number`` shows with ``places`` decimals."""
    shown = rounded(number, places)
    if shown == 0.0:
        return 0
    return math.floor(math.log10(abs(shown)) + 1e-12) + 1 + places


def places_for(number: float, figures: int) -> int:
    """Decimals that give ``number`` so many significant figures."""
    if number == 0.0 or not math.isfinite(number):
        return 0
    return figures - 1 - math.floor(math.log10(abs(number)) + 1e-12)


def pencil(tree: Term, exact: float, places: int) -> Penciled:
    """Places for every number of ``tree`` and for its answer ``exact`` (in the unit shown)."""
    terms = values_in(tree)
    used = {id(each): _start(each) for each in terms}
    printed = {id(each): _as_printed(each, used[id(each)]) for each in terms}
    tests = [each for each in _every(tree) if each.op == "where"]
    while True:
        for each in tests:
            _settle(each, terms, used, printed)
        if _off(tree, printed, rounded(exact, places)) <= 10.0**-places * (1 - 1e-9):
            break
        best = _most_moving(tree, terms, used, printed)
        if best is not None:
            used[id(best)] += 1
            printed[id(best)] = _as_printed(best, used[id(best)])
            continue
        places -= 1
        if figures_of(exact, places) < 1:
            while _off(tree, printed, 0.0) >= 10.0**-places:
                places -= 1
            return Penciled(printed, used, 10.0**-places, places, False)
    answer = rounded(exact, places)
    if answer == 0.0 and exact != 0.0:
        return Penciled(printed, used, 10.0**-places, places, False)
    return Penciled(printed, used, answer, places, True)


def _settle(test: Term, terms: list[Term], used: dict[int, int], printed: dict[int, float]) -> None:
    """More places until a printed comparison holds; one that never does is said in words."""
    left, right, _ = test.args
    difference = Term("sub", (left, right), left.unit)
    while not test.detail.startswith("just") and not compared(
        test.detail, worked_out(left, printed), worked_out(right, printed)
    ):
        best = _most_moving(difference, terms, used, printed)
        if best is None:
            test.detail = f"just {test.detail[0]}"
            return
        used[id(best)] += 1
        printed[id(best)] = _as_printed(best, used[id(best)])


def _every(term: Term) -> list[Term]:
    return [term, *(one for each in term.args for one in _every(each))]


def _off(tree: Term, printed: dict[int, float], answer: float) -> float:
    try:
        off = abs(worked_out(tree, printed) - answer)
    except (ZeroDivisionError, ValueError, OverflowError):
        return math.inf
    return off if math.isfinite(off) else math.inf


def _start(term: Term) -> int:
    if term.detail == "pi":
        return 5
    if term.places is None:
        exact_places = next((n for n in range(7) if rounded(term.exact, n) == term.exact), None)
        if exact_places is not None and figures_of(term.exact, exact_places) <= MOST_FIGURES:
            return exact_places
        return places_for(term.exact, STARTING_FIGURES)
    return term.places


def _as_printed(term: Term, places: int) -> float:
    return term.exact if term.typed else rounded(term.exact, places)


def _most_moving(
    tree: Term, terms: list[Term], used: dict[int, int], printed: dict[int, float]
) -> Term | None:
    """The number whose rounding moves the answer most, of those that may still get a place."""
    now = _off(tree, printed, 0.0)
    best, most = None, 0.0
    for each in terms:
        key = id(each)
        if each.typed or printed[key] == each.exact or figures_of(each.exact, used[key]) >= MOST_FIGURES:
            continue
        moved = _off(tree, {**printed, key: each.exact}, 0.0)
        move = abs(moved - now) if math.isfinite(moved) and math.isfinite(now) else math.inf
        if move > most:
            best, most = each, move
    return best
