"""Lengths of tube to buy: what is lost in cutting."""

from __future__ import annotations

from heatledger.ledger.dimensions import Length, Ratio
from heatledger.ledger.formulas import formula
from heatledger.ledger.sources import DERIVED, cite

SHARE = cite("", "by its meaning", DERIVED)


@formula(SHARE, title="Length to buy")
def length_to_buy(length: Length, waste: Ratio) -> Length:
    """Length in place with what is lost in cutting, bends and mistakes.

    Valid for: tube cut on site.
    Leaves out: ends of coils too short for a run.

    >>> round(length_to_buy(length=100.0, waste=0.1), 2)
    110.0
    """
    return length * (1 + waste)
