"""The terms of a displayed tree, and what a pencil gets from them."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Context, Decimal
from typing import Any

from heatledger.ledger.figures import Figure
from heatledger.ledger.units import Unit


@dataclass(eq=False)
class Term:
    """One node of the displayed tree.

    ``op``: "value" for a printed number, else what is done to ``args``. ``exact``: the unrounded value
    in ``unit`` (of a value only). ``places``: decimals it starts with, None for a number that stands as
    it is. ``words``: what it is. ``figure``: the figure it shows, if it is an input.
    """

    op: str
    args: tuple[Term, ...]
    unit: Unit
    exact: float = math.nan
    places: int | None = None
    words: str = ""
    figure: Figure | None = None
    detail: Any = None
    typed: bool = False


def value(exact: float, unit: Unit, words: str, places: int | None, **more: Any) -> Term:
    """A printed number."""
    return Term("value", (), unit, exact, places, words, **more)


_EXACT = Context(prec=400)
OPPOSITE = {"<": ">=", "<=": ">", ">": "<=", ">=": "<"}


def compared(sign: str, left: float, right: float) -> bool:
    """Whether a printed comparison holds."""
    return {"<": left < right, "<=": left <= right, ">": left > right, ">=": left >= right}[sign]


MORE_PLACES = 4
"""Places added at most so that a small number does not show as zero."""


def rounded(number: float, places: int) -> float:
    """``number`` to ``places`` decimals (negative: tens, hundreds), halves away from zero."""
    made = float(Decimal(repr(float(number))).quantize(Decimal(1).scaleb(-places), ROUND_HALF_UP, _EXACT))
    return made or 0.0


RATIO_FIGURES = 4
LEAST_RATIO_FIGURES = 2


def places_of_ratio(number: float, places: int) -> int:
    """Decimals of a plain ratio: ``places``, fewer behind a large number, and two figures of a small one."""
    if not number or not math.isfinite(number):
        return places
    first = math.floor(math.log10(abs(number)) + 1e-12)
    return min(max(places, LEAST_RATIO_FIGURES - 1 - first), max(RATIO_FIGURES - 1 - first, 0), MOST_PLACES)


MOST_PLACES = 9


def visible_places(number: float, places: int) -> int:
    """``places``, or as many more as it takes for a figure to show, to at most four more."""
    more = 0
    while more < MORE_PLACES and number and not rounded(number, places + more):
        more += 1
    return places + more if number and rounded(number, places + more) else places


def decimals(number: float) -> int:
    """Decimals a constant was written with."""
    exponent = Decimal(repr(number)).normalize().as_tuple().exponent
    return max(0, -int(exponent))


_WAYS: dict[str, Callable[[float, float], float]] = {
    "add": lambda one, last: one + last,
    "sub": lambda one, last: one - last,
    "mul": lambda one, last: one * last,
    "div": lambda one, last: one / last,
    "neg": lambda one, _: -one,
    "power": lambda one, last: float(one**last),
    "log": lambda one, _: math.log(one),
    "exp": lambda one, _: math.exp(one),
    "sqrt": lambda one, _: math.sqrt(one),
    "larger": max,
    "smaller": min,
}


def worked_out(term: Term, printed: dict[int, float] | None = None) -> float:
    """The value of a displayed tree; ``printed`` gives the numbers as printed, by ``id`` of the term."""
    if term.op == "value":
        return term.exact if printed is None else printed.get(id(term), term.exact)
    inner = [worked_out(each, printed) for each in term.args]
    if term.op == "chain":
        result = 1.0
        for op, each in zip(term.detail, inner, strict=True):
            result = result * each if op == "mul" else result / each
        return result
    if term.op == "where":
        return inner[2]
    if term.op == "total":
        return sum(inner)
    if term.op == "pow":
        return float(inner[0] ** term.detail)
    return float(_WAYS[term.op](inner[0], inner[-1]))


def values_in(term: Term) -> list[Term]:
    """The printed numbers of a displayed tree, in order."""
    if term.op == "value":
        return [term]
    return [each for one in term.args for each in values_in(one)]
