"""The pencil rule: how many places each printed number needs so that a pencil gets the answer.

Each number starts with the places it is shown with elsewhere; one typed in this unit stands as
typed. While the result worked out from the printed numbers is more than one unit of the answer's
last place away, the number whose rounding moves the answer most gets one more place, to at most six
figures; when none can, the answer loses a place. Only where numbers of six figures give no answer at all
(a division by two that look the same) do they get as many as it takes.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from heatledger.ledger.terms import Term, compared, rounded, values_in, visible_places, worked_out

MOST_FIGURES = 6
MOST_EXTRA_PLACES = 3
"""Places that may be added beyond the rule, so that a pencil's result rounds to the very answer."""
ALL_FIGURES = 17
"""Significant figures that tell any number from its neighbor."""
HUGE = 1e9
"""From here on a number that nobody typed is written with six figures and a power of ten."""
FEWEST_PLACES = -300
SMALLEST = 5e-324
EXACT = 1e-9
STARTING_FIGURES = 4
"""Significant figures of a constant or a unit factor that is not exact in the unit shown."""


@dataclass(frozen=True)
class Penciled:
    """The printed numbers of a tree by ``id`` of the term, with their places, and the answer's places.

    ``figures_left`` is false when the answer lost its last figure: it is then "less than" one unit.
    ``told_apart`` is false when no number of figures gives a pencil an answer: it then stands unrounded.
    ``comes_out_even`` is true when the printed numbers give the printed answer, and nothing is left over.
    """

    printed: dict[int, float]
    places: dict[int, int]
    answer: float
    answer_places: int
    figures_left: bool
    told_apart: bool = True
    comes_out_even: bool = False


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


def answer_places(exact: float, places: int) -> int:
    """Decimals an answer starts with; a huge one has six figures."""
    places = visible_places(exact, places)
    return min(places, places_for(exact, MOST_FIGURES)) if abs(exact) >= HUGE else places


def input_places(exact: float, places: int) -> int:
    """Decimals a found input starts with: what gives more than six figures is left out behind the point."""
    places = answer_places(exact, places)
    return min(places, max(places_for(exact, MOST_FIGURES), 0)) if exact else places


def pencil(tree: Term, exact: float, places: int) -> Penciled:
    """Places for every number of ``tree`` and for its answer ``exact`` (in the unit shown)."""
    terms = values_in(tree)
    used = {id(each): _start(each) for each in terms}
    printed = {id(each): _as_printed(each, used[id(each)]) for each in terms}
    tests = [each for each in _every(tree) if each.op == "where"]
    most = MOST_FIGURES
    while True:
        for each in tests:
            _settle(each, terms, used, printed)
        off = _off(tree, printed, rounded(exact, places))
        if off <= 10.0**-places * (1 - 1e-9):
            break
        most = MOST_FIGURES if off < math.inf else most
        best = _most_moving(tree, terms, used, printed, most)
        if best is not None:
            used[id(best)] += 1
            printed[id(best)] = _as_printed(best, used[id(best)])
        elif off < math.inf:
            places -= 1
            if figures_of(exact, places) < 1:
                while _off(tree, printed, 0.0) >= 10.0**-places and places > FEWEST_PLACES:
                    places -= 1
                return Penciled(printed, used, 10.0**-places, places, False)
        elif most < ALL_FIGURES:
            most = ALL_FIGURES
        else:
            return Penciled(printed, used, rounded(exact, places), places, True, told_apart=False)
    answer = rounded(exact, places)
    if answer == 0.0 and exact != 0.0:
        return Penciled(printed, used, 10.0**-places, places, False)
    used, printed = _rounding_right(tree, terms, used, printed, answer, places)
    left_over = max(abs(exact - answer), _off(tree, printed, answer))
    return Penciled(printed, used, answer, places, True, comes_out_even=left_over <= EXACT * abs(answer))


def _rounding_right(
    tree: Term, terms: list[Term], used: dict[int, int], printed: dict[int, float], answer: float, places: int
) -> tuple[dict[int, int], dict[int, float]]:
    """A few more places where they make the pencil's own result round to the answer, else as it stands."""
    tried, shown = dict(used), dict(printed)
    for _ in range(MOST_EXTRA_PLACES + 1):
        if rounded(worked_out(tree, shown), places) == answer:
            return tried, shown
        best = _most_moving(tree, terms, tried, shown, MOST_FIGURES)
        if best is None:
            break
        tried[id(best)] += 1
        shown[id(best)] = _as_printed(best, tried[id(best)])
    return used, printed


def _settle(test: Term, terms: list[Term], used: dict[int, int], printed: dict[int, float]) -> None:
    """More places until a printed comparison holds; one that never does is said in words."""
    left, right, _ = test.args
    difference = Term("sub", (left, right), left.unit)
    while not test.detail.startswith("just") and not compared(
        test.detail, worked_out(left, printed), worked_out(right, printed)
    ):
        best = _most_moving(difference, terms, used, printed, MOST_FIGURES)
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
    tree: Term, terms: list[Term], used: dict[int, int], printed: dict[int, float], most_figures: int
) -> Term | None:
    """The number whose rounding moves the answer most, of those that may still get a place."""
    now = _off(tree, printed, 0.0)
    best, most = None, 0.0
    for each in terms:
        key = id(each)
        if each.typed or printed[key] == each.exact or figures_of(each.exact, used[key]) >= most_figures:
            continue
        moved = _off(tree, {**printed, key: each.exact}, 0.0)
        if math.isfinite(moved) != math.isfinite(now):
            move = math.inf
        else:
            move = abs(moved - now) if math.isfinite(now) else SMALLEST
        if move > most:
            best, most = each, move
    return best
