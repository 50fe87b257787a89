"""Lengths of tube to buy: the pieces added up, and what is lost in cutting."""

from __future__ import annotations

from heatledger.ledger.dimensions import Length, Ratio
from heatledger.ledger.formulas import Parts, formula
from heatledger.ledger.functions import total
from heatledger.ledger.sources import DERIVED, cite

ADDITION = cite("", "a sum of parts", DERIVED)
SHARE = cite("", "by its meaning", DERIVED)


@formula(ADDITION, title="Length in place")
def lengths_total(lengths: Parts[Length]) -> Length:
    """Lengths of tube of one size added up.

    Valid for: tube of one size and kind.
    Leaves out: nothing; no lengths give 0.

    >>> round(lengths_total(lengths=[12.5, 7.5]), 2)
    20.0
    """
    return total(lengths)


@formula(SHARE, title="Length to buy")
def length_to_buy(length: Length, waste: Ratio) -> Length:
    """Length in place with what is lost in cutting, bends and mistakes.

    Valid for: tube cut on site.
    Leaves out: ends of coils too short for a run.

    >>> round(length_to_buy(length=100.0, waste=0.1), 2)
    110.0
    """
    return length * (1 + waste)
