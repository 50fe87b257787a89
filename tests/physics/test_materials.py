"""Claim: what is bought is what is laid and the share lost in cutting. Computed cases and laws."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from heatledger.physics.fittings import tube_length
from heatledger.physics.materials import length_to_buy


def test_a_loop_and_its_waste():
    """Computed: 62 + 70 + 78 ft is 210 ft; with 10 % lost 231 ft."""
    laid = tube_length(lengths=[62.0, 70.0, 78.0])
    assert laid == pytest.approx(210.0)
    assert length_to_buy(length=laid, waste=0.10) == pytest.approx(231.0)


@given(lengths=st.lists(st.floats(0, 500), min_size=1, max_size=20), waste=st.floats(0, 0.5))
def test_waste_on_the_sum_is_the_sum_of_the_waste(lengths, waste):
    together = length_to_buy(length=tube_length(lengths=lengths), waste=waste)
    apart = sum(length_to_buy(length=each, waste=waste) for each in lengths)
    assert together == pytest.approx(apart)
    assert together >= tube_length(lengths=lengths)
