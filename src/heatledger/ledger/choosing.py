"""Choosing, looking up and counting, so that what was not taken stays in sight.

A figure read from something chosen carries the choice: the rule, the reason, and the losers.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Callable, Iterable, Mapping
from difflib import get_close_matches
from typing import Any, TypeVar

from heatledger.ledger.dimensions import COUNT
from heatledger.ledger.figures import Counting, Figure, LedgerError, make

Thing = TypeVar("Thing")
Rule = Callable[[Mapping[str, Any]], str]


@dataclasses.dataclass(frozen=True, eq=False)
class Choice:
    """Origin of a figure that was chosen: the winner's name, the rule in words, why, and the losers."""

    winner: str
    rule: str
    because: str
    losers: tuple[tuple[str, Any], ...]

    @property
    def name(self) -> str:
        """Words for the working."""
        return f"{self.rule}: {self.winner}"


def _named_rule(words: str, pick: Callable[[dict[str, float]], str]) -> Rule:
    def rule(candidates: Mapping[str, Any]) -> str:
        return pick({name: float(each) for name, each in candidates.items()})

    rule.__doc__ = words
    return rule


largest = _named_rule("the largest", lambda values: max(values, key=values.__getitem__))
smallest = _named_rule("the smallest", lambda values: min(values, key=values.__getitem__))


def first_that(test: Callable[[Any], bool], words: str) -> Rule:
    """The rule that takes the first candidate that passes ``test``; ``words`` say what it asks."""

    def rule(candidates: Mapping[str, Any]) -> str:
        for name, each in candidates.items():
            if test(each):
                return name
        raise LedgerError(f"no candidate is {words}: {', '.join(candidates)}")

    rule.__doc__ = words
    return rule


def choose(candidates: Mapping[str, Thing], rule: Rule, because: str) -> Thing:
    """The candidate the rule picks, with the choice kept.

    Candidates are figures, or frozen things made of figures. A candidate without a value makes the
    choice wait: the result has no value either.
    """
    if not candidates:
        raise LedgerError("nothing to choose from")
    missing = next(
        (each for each in candidates.values() if isinstance(each, Figure) and each.is_missing), None
    )
    if missing is not None:
        return missing
    winner = rule(candidates)
    losers = tuple((name, each) for name, each in candidates.items() if name != winner)
    choice = Choice(winner, (rule.__doc__ or "chosen").strip(), because, losers)
    taken: Thing = _carrying(candidates[winner], choice)
    return taken


def look_up(
    rows: Mapping[str, Mapping[str, Figure]], key: str, because: str, by: Figure | None = None
) -> dict[str, Figure]:
    """The figures of one row of a table, each carrying the look-up and the row's neighbors.

    ``by`` is the figure the key was found from; it goes in beside the row.
    Raises ``LedgerError`` with the nearest keys when there is no such row.
    """
    if key not in rows:
        near = get_close_matches(key, list(rows), n=3)
        hint = f"; the nearest are {', '.join(near)}" if near else f"; there are {', '.join(rows)}"
        raise LedgerError(f"no row {key!r} in the table{hint}")
    names = list(rows)
    at = names.index(key)
    beside = tuple((name, rows[name]) for name in names[max(0, at - 1) : at + 2] if name != key)
    return {
        column: _carrying(
            figure, Choice(key, "looked up", because, tuple((n, r.get(column)) for n, r in beside)), by
        )
        for column, figure in rows[key].items()
    }


def count(things: Iterable[str], words: str) -> Figure:
    """How many things there are, as a figure that lists them."""
    listed = tuple(things)
    return make(float(len(listed)), COUNT, Counting(words, listed), ())


def _carrying(thing: Any, choice: Choice, by: Figure | None = None) -> Any:
    if isinstance(thing, Figure):
        return make(float(thing), thing.dimension, choice, (thing,) if by is None else (thing, by))
    if dataclasses.is_dataclass(thing) and not isinstance(thing, type):
        changed = {
            each.name: _carrying(getattr(thing, each.name), choice)
            for each in dataclasses.fields(thing)
            if isinstance(getattr(thing, each.name), Figure)
        }
        return dataclasses.replace(thing, **changed)
    return thing
