"""What the tests of notation share: the codes of its errors, and a check of each error raised."""

from __future__ import annotations

import pytest

from heatledger.ledger.dimensions import DIMENSIONS
from heatledger.ledger.notation import NotationError, read
from heatledger.ledger.presets import US
from heatledger.ledger.unit_words import allowed

CODES = {
    "empty", "too-long", "not-a-number", "not-finite", "not-whole", "comma", "two-readings", "unknown-unit",
    "wrong-unit", "no-unit", "below-absolute-zero", "not-a-pair", "not-a-size",
}  # fmt: skip
FOOT, INCH = 0.3048, 0.0254


def refused(text, dimension, units=US, bare=True):
    """The error that reading raises; every text it offers can be read."""
    with pytest.raises(NotationError) as caught:
        read(text, dimension, units, bare)
    error = caught.value
    assert error.code in CODES
    assert str(error) == error.message != ""
    for offer in error.offers:
        read(offer, dimension, units, bare)
    return error


PLACED = [(dimension, unit) for dimension in DIMENSIONS.values() for unit in allowed(dimension)]
"""Every kind of quantity with each unit it may be typed in."""
