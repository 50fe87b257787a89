"""Claim: a pipe loses what cases worked out apart say, less with insulation in all but the thinnest skins."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from heatledger.ledger.units import UNITS
from heatledger.physics.pipes import (
    pipe_coefficient,
    pipe_loss,
    pipes_total,
    water_in_iron,
    water_in_length,
    water_in_sections,
    water_so_far,
    water_total,
)


@pytest.mark.parametrize(
    ("outside", "insulation", "loss"), [(0.0222, 0.0, 0.697), (0.0222, 0.020, 0.217), (0.0286, 0.025, 0.226)]
)
def test_loss_of_a_length(outside, insulation, loss):
    """Computed: surface 10 W/(m²·K), insulation 0.04 W/(m·K)."""
    assert pipe_coefficient(outside=outside, insulation=insulation) == pytest.approx(loss, abs=1e-3)


@given(outside=st.floats(0.012, 0.06), one=st.floats(0.005, 0.05), more=st.floats(0.001, 0.05))
def test_more_insulation_loses_less(outside, one, more):
    thin, thick = (pipe_coefficient(outside=outside, insulation=each) for each in (one, one + more))
    assert thick < thin


@given(first=st.floats(0, 50), second=st.floats(0, 50))
def test_two_lengths_lose_as_much_as_one_of_both(first, second):
    losses = [pipe_loss(0.22, each, water=340.0, around=285.0) for each in (first, second)]
    assert pipes_total(losses=losses) == pytest.approx(pipe_loss(0.22, first + second, 340.0, 285.0))
    volumes = [water_in_length(water_per=3e-4, length=each) for each in (first, second)]
    assert water_total(volumes=volumes) == pytest.approx(3e-4 * (first + second))
    assert water_so_far(volumes=volumes) == water_total(volumes=volumes)


def test_old_iron_by_its_radiation_and_by_its_sections():
    """Twelve sections of 5 ft² are 60 ft², 0.14 gal each: 8.4 gal."""
    by_radiation = water_in_iron(edr=UNITS["ft²"].to_si(60))
    by_sections = water_in_sections(section=UNITS["gal"].to_si(0.70), sections=12.0)
    assert UNITS["gal"].from_si(by_radiation) == pytest.approx(8.4)
    assert by_sections == pytest.approx(by_radiation)


def test_a_pipe_as_warm_as_its_space_loses_nothing():
    assert pipe_loss(coefficient=0.3, length=10.0, water=290.0, around=290.0) == 0
