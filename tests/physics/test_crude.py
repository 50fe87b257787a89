"""Claim: the crude estimate is floor area times a rate times a difference, and says nothing more."""

from __future__ import annotations

import pytest

from heatledger.ledger.sources import JUDGMENT
from heatledger.physics.crude import crude_heat_loss


def test_it_grows_with_area_and_difference():
    one = crude_heat_loss(floor_area=100.0, loss_per_floor_area=1.7, indoor=293.15, outdoor=253.15)
    assert one == pytest.approx(6800.0)
    twice = crude_heat_loss(floor_area=200.0, loss_per_floor_area=1.7, indoor=293.15, outdoor=253.15)
    assert twice == pytest.approx(2 * one)
    assert crude_heat_loss(floor_area=100.0, loss_per_floor_area=1.7, indoor=293.15, outdoor=293.15) == 0.0


def test_it_is_our_own_judgment():
    assert crude_heat_loss.formula.citation.standing is JUDGMENT
