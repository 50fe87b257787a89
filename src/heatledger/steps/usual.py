"""Usual values that stand in where a job says nothing: each a figure with its source and standing."""

from __future__ import annotations

from functools import cache

from heatledger.ledger.dimensions import Dimension
from heatledger.ledger.figures import Figure, Leaf, LeafKind, leaf
from heatledger.ledger.notation import read
from heatledger.ledger.presets import US
from heatledger.ledger.sources import Citation


@cache
def usual(path: str, words: str, text: str, dimension: Dimension, citation: Citation) -> Figure:
    """A usual value, typed as its source has it; ``path`` is where the job could give its own."""
    read_ = read(text, dimension, US)
    origin = Leaf(
        LeafKind.SOURCE, path, words, text, read_.unit, read_.typed_value, read_.places, citation=citation
    )
    return leaf(read_.value, dimension, origin)
