"""Claim: the arithmetic of a startup sheet is right. Computed cases and laws."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from heatledger.ledger.units import UNITS
from heatledger.physics.startup import (
    air_free_carbon_monoxide,
    carbon_dioxide,
    clocked_input,
    drop_between,
    drop_off,
    excess_air,
    pressure_off,
    pressure_rise,
    purge_flow,
    return_by_drop,
    settled_drop,
    temperature_off,
)


def si(value, unit):
    return UNITS[unit].to_si(value)


@pytest.mark.parametrize(("ppm", "oxygen", "air_free"), [(40, 0.06, 56.1), (90, 0.09, 158.1), (7, 0.05, 9.2)])
def test_carbon_monoxide_air_free(ppm, oxygen, air_free):
    """Computed: measured parts times 20.9 over 20.9 less oxygen."""
    got = air_free_carbon_monoxide(measured=ppm * 1e-6, oxygen=oxygen)
    assert got * 1e6 == pytest.approx(air_free, abs=0.06)


PURGE = (
    ("1/2 in PEX", 0.475, 1.1, 2.2), ("3/4 in PEX", 0.671, 2.2, 4.4), ("3/4 in copper M", 0.811, 3.2, 6.4),
    ("1 in copper M", 1.055, 5.4, 10.9), ("1-1/4 in copper M", 1.291, 8.2, 16.3),
    ("1-1/2 in copper M", 1.527, 11.4, 22.8), ("2 in copper M", 2.009, 19.8, 39.5),
)  # fmt: skip


@pytest.mark.parametrize(("tube", "bore", "slow", "fast"), PURGE)
def test_flow_that_carries_air(tube, bore, slow, fast):
    """Computed: 2.448 times bore in inches squared times feet per second, in gpm."""
    for velocity, flow in ((2, slow), (4, fast)):
        got = purge_flow(bore=si(bore, "in"), velocity=si(velocity, "ft/s"))
        assert UNITS["gpm"].from_si(got) == pytest.approx(flow, abs=0.051), tube
        assert UNITS["gpm"].from_si(got) == pytest.approx(2.448 * bore**2 * velocity, rel=1e-4)


def test_flow_at_four_feet_a_second():
    """Computed: 3/4 in copper M, 4 ft/s: 6.44 gpm."""
    got = purge_flow(bore=si(0.811, "in"), velocity=si(4, "ft/s"))
    assert UNITS["gpm"].from_si(got) == pytest.approx(6.44, abs=0.01)


def test_clocking_a_meter():
    """Computed: 2 cubic feet of 1,025 Btu in 147.6 seconds are 50,000 Btu/h."""
    content = si(1025, "Btu") / si(1, "ft³")
    got = clocked_input(gas=si(2, "ft³"), time=147.6, heat_content=content)
    assert UNITS["Btu/h"].from_si(got) == pytest.approx(50_000, rel=1e-9)


@given(oxygen=st.floats(0.0, 0.2))
def test_air_and_carbon_dioxide_tell_the_same(oxygen):
    """Gas thinned by air: what is left of its carbon dioxide is 1 over 1 and the excess."""
    share = carbon_dioxide(largest=1.0, oxygen=oxygen)
    assert share * (1 + excess_air(oxygen=oxygen)) == pytest.approx(1.0)
    assert air_free_carbon_monoxide(measured=share * 1e-4, oxygen=oxygen) == pytest.approx(1e-4)


@given(fire=st.floats(0.5, 30), taken=st.floats(0.5, 30))
def test_settled_water_drops_by_no_more_than_the_fire_makes(fire, taken):
    found = settled_drop(fire=fire, taken=taken)
    assert found in (fire, taken)
    assert found <= fire
    assert return_by_drop(supply=340.0, drop=found) >= return_by_drop(supply=340.0, drop=taken)


def test_differences():
    assert pressure_rise(hot=120e3, cold=83e3) == pytest.approx(37e3)
    assert pressure_off(read=83e3, due=84e3) == pytest.approx(-1e3)
    assert temperature_off(read=333.0, due=334.5) == pytest.approx(-1.5)
    drop = drop_between(supply=333.15, return_water=323.15)
    assert drop_off(read=drop, due=12.0) == pytest.approx(-2.0)
