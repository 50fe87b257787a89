"""Sentences of answers: pieces joined, things listed, and the plain word that something is not reached."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from heatledger.ledger.figures import Figure, waits_for
from heatledger.papers import blocks as b
from heatledger.papers.printing import Printing

RESTS_ON = "What the figures of this paper rest on, each source with its standing:"
NOT_REACHED = "Not reached by this design yet:"
MOST_WAITED_FOR = 3


def said(*pieces: b.Text) -> b.Text:
    """Texts joined into one, without empty pieces."""
    flat: list[str | b.Run] = []
    for each in pieces:
        flat += [each] if isinstance(each, str) else each
    return tuple(each for each in flat if each != "")


def not_reached(words: str) -> b.Text:
    """What this design does not answer, and what is missing for it."""
    return (b.Run(NOT_REACHED, "bold"), f" {words}")


def listed(items: Sequence[b.Text], last: str = "and") -> b.Text:
    """Texts as a list in a sentence."""
    pieces: list[b.Text] = []
    for number, each in enumerate(items):
        between = "" if number == 0 else f" {last} " if number == len(items) - 1 else ", "
        pieces += [between, each]
    return said(*pieces)


def figure(printing: Printing, one: Figure, bold: bool = False) -> b.Text:
    """A figure inside a sentence, with its key."""
    return (printing.run(one, bold),)


def length(printing: Printing, one: Figure) -> b.Text:
    """A length inside a sentence: feet and inches, or meters to the centimeter, with its key."""
    places = None if printing.units.feet_and_inches else 2
    return (b.Run(printing.show(one, places) or "not known yet", key=printing.found.key(one)),)


def share(printing: Printing, one: Figure) -> b.Text:
    """A ratio inside a sentence as a percentage, with its key."""
    return (printing.run(one, percent=True),)


def for_want_of(figures: Iterable[Figure]) -> str:
    """What figures without a value wait for, in the words of the job; empty when none is waited for."""
    words = dict.fromkeys(
        str(each.origin.words) for one in figures if one.is_missing for each in waits_for(one)
    )
    names = list(words)
    more = len(names) - MOST_WAITED_FOR
    return ", ".join(names[:MOST_WAITED_FOR]) + (f" and {more} more" if more > 0 else "")


def waiting(printing: Printing, *figures: Figure) -> b.Text:
    """That an answer waits for entries which are not given."""
    return not_reached(f"it waits for {for_want_of(figures) or 'entries that are not given'}.")
