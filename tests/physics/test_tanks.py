"""Claim: growth, tank and pressure hot agree with one another and with cases worked out apart."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from heatledger.ledger.units import UNITS
from heatledger.physics.tanks import (
    acceptance_factor,
    diaphragm_tank,
    en_cold_fill,
    en_highest,
    en_precharge,
    en_reserve,
    en_small_tank,
    en_tank,
    expanded_volume,
    gas_left,
    growth_by_line,
    highest_at_tank,
    hot_pressure,
    metal_growth,
    net_growth,
    plain_share,
    plain_tank,
    water_growth,
)
from heatledger.physics.water import water_density

AIR = 101325.0
STEEL, COPPER = 6.5e-6 * 1.8, 9.5e-6 * 1.8


def si(value, unit, absolute=False):
    return UNITS[unit].to_si(value, absolute)


def psi(value):
    return si(value, "psi")


def gallons(value):
    return UNITS["gal"].from_si(float(value))


def growth(cold, hot, metal=0.0, unit="°F"):
    low, high = si(cold, unit, True), si(hot, unit, True)
    water = water_growth(
        cold_density=water_density(temperature=low), hot_density=water_density(temperature=high)
    )
    return net_growth(water=water, metal=metal_growth(growth=metal, cold=low, hot=high))


@pytest.mark.parametrize(
    ("volume", "cold", "hot", "metal", "fill", "highest", "share", "factor", "tank"),
    [
        (50, 60, 180, STEEL, 12, 27, 0.027158, 0.359747, 3.77458),
        (50, 60, 180, 0.0, 12, 27, 0.029498, 0.359747, 4.09981),
        (50, 50, 180, COPPER, 12, 27, 0.026501, 0.359747, 3.68328),
        (80, 40, 200, STEEL, 18, 27, 0.035231, 0.21585, 13.0577),
        (60, 40, 120, 0.0, 12, 27, 0.01158, 0.359747, 1.93),
        (60, 40, 120, STEEL, 12, 27, 0.01002, 0.359747, 1.67),
        (60, 40, 180, 0.0, 12, 27, 0.03049, 0.359747, 5.09),
    ],
)
def test_diaphragm_tank(volume, cold, hot, metal, fill, highest, share, factor, tank):
    """Computed: 50, 60 and 80 gal between temperatures and pressures."""
    grown = growth(cold, hot, metal)
    assert grown == pytest.approx(share, rel=5e-3)
    takes = acceptance_factor(cold=psi(fill), hot=psi(highest), air=AIR)
    assert takes == pytest.approx(factor, abs=2e-5)
    expanded = expanded_volume(volume=si(volume, "gal"), growth=grown)
    assert gallons(diaphragm_tank(expanded=expanded, acceptance=takes)) == pytest.approx(tank, rel=5e-3)


def test_a_metric_system():
    """Computed: 400 L from 10 to 80 °C, 1.0 to 2.5 bar: 11.49 L of growth, tank 26.91 L."""
    grown = growth(10, 80, unit="°C")
    expanded = expanded_volume(volume=0.4, growth=grown)
    assert 1000 * expanded == pytest.approx(11.4899, rel=2e-3)
    takes = acceptance_factor(cold=1e5, hot=2.5e5, air=AIR)
    assert 1000 * diaphragm_tank(expanded=expanded, acceptance=takes) == pytest.approx(26.9114, rel=2e-3)


def test_the_line_is_far_too_short_for_warm_floors():
    """Computed: 60 gal at 120 °F asks for 1.67 gal by density and 0.43 gal by the line."""
    takes = acceptance_factor(cold=psi(12), hot=psi(27), air=AIR)
    by_line = diaphragm_tank(
        expanded=si(60, "gal") * growth_by_line(hot=si(120, "°F", True)), acceptance=takes
    )
    assert gallons(by_line) == pytest.approx(0.43, abs=0.005)
    assert growth_by_line(hot=si(180, "°F", True)) == pytest.approx(growth(60, 180, STEEL), abs=1e-4)


def test_european_tanks():
    """Computed: 200 L with 3 L of reserve is 16.3 L; 100 L takes the form for small tanks, 4.13 L."""
    low, high = en_precharge(static=0.6e5), en_highest(relief=3e5)
    assert (low, high) == (pytest.approx(0.9e5), pytest.approx(2.5e5))
    tank = en_tank(expanded=0.00444, reserve=en_reserve(volume=0.2), precharge=low, highest=high)
    assert 1000 * tank == pytest.approx(16.3, abs=0.1)
    low = en_precharge(static=0.5e5)
    assert 1000 * en_tank(0.001181, en_reserve(volume=0.1), low, high) == pytest.approx(8.61, abs=0.02)
    assert 1000 * en_small_tank(expanded=0.001181, precharge=low, highest=high) == pytest.approx(
        4.13, abs=0.02
    )
    assert en_cold_fill(precharge=low) == pytest.approx(1.25e5)
    assert 1000 * en_small_tank(expanded=0.002353, precharge=low, highest=high) == pytest.approx(
        8.24, abs=0.03
    )
    assert en_precharge(static=0.1e5) == pytest.approx(0.7e5)
    assert en_highest(relief=6e5) == pytest.approx(5.4e5)


def test_highest_pressure_is_the_stricter_of_two():
    assert UNITS["psi"].from_si(highest_at_tank(relief=psi(30))) == pytest.approx(25)
    assert UNITS["psi"].from_si(highest_at_tank(relief=psi(75))) == pytest.approx(67.5)


def test_a_wrong_charge_takes_the_room():
    """Computed: 4.4 gal filled to 20 psi takes 1.4 gal to 25 psi when charged to 12, and 0.4 when filled so.

    Charged to 12 psi and filled to 20, more than a gallon is in it before the first fire.
    """
    tank = si(4.4, "gal")
    right = tank * (1 - (psi(12) + AIR) / (psi(25) + AIR))
    wrong = tank * (psi(12) + AIR) / (psi(20) + AIR) * (1 - (psi(20) + AIR) / (psi(25) + AIR))
    assert gallons(right) == pytest.approx(1.44, abs=0.02)
    assert gallons(wrong) == pytest.approx(0.43, abs=0.05)
    for fill, takes in ((12, right), (20, wrong)):
        gas = gas_left(tank=tank, precharge=psi(12), fill=psi(fill), air=AIR, expanded=takes)
        assert hot_pressure(tank=tank, precharge=psi(12), air=AIR, gas=gas) == pytest.approx(psi(25))


@given(
    volume=st.floats(0.02, 2), grown=st.floats(0.005, 0.05), fill=st.floats(4e4, 1.5e5),
    room=st.floats(2e4, 2e5), air=st.floats(7e4, 1.05e5),
)  # fmt: skip
def test_a_tank_as_sized_reaches_just_its_highest(volume, grown, fill, room, air):
    expanded = expanded_volume(volume=volume, growth=grown)
    takes = acceptance_factor(cold=fill, hot=fill + room, air=air)
    tank = diaphragm_tank(expanded=expanded, acceptance=takes)
    gas = gas_left(tank=tank, precharge=fill, fill=fill, air=air, expanded=expanded)
    if gas > 0.021 * tank:
        assert hot_pressure(tank=tank, precharge=fill, air=air, gas=gas) == pytest.approx(
            fill + room, rel=1e-6
        )


@given(fill=st.floats(4e4, 1.5e5), room=st.floats(2e4, 2e5))
def test_a_plain_tank_is_never_smaller_than_one_with_a_diaphragm(fill, room):
    plain = plain_tank(expanded=0.005, cold=fill, hot=fill + room, air=AIR)
    other = diaphragm_tank(0.005, acceptance_factor(cold=fill, hot=fill + room, air=AIR))
    assert plain > other


@given(charge=st.floats(0, 3e5), fill=st.floats(0, 3e5), expanded=st.floats(0, 0.1))
def test_the_gas_never_runs_out_nor_outgrows_its_tank(charge, fill, expanded):
    gas = gas_left(tank=0.02, precharge=charge, fill=fill, air=AIR, expanded=expanded)
    assert 0.0004 * (1 - 1e-9) <= gas <= 0.02 * (1 + 1e-9)


@given(
    cold=st.floats(5e4, 1.5e5), more=st.floats(2e4, 1.5e5), air=st.floats(7e4, 1.05e5),
    expanded=st.floats(1e-3, 1e-2),
)  # fmt: skip
def test_a_plain_tank_takes_its_share_and_comes_to_the_highest_pressure(cold, more, air, expanded):
    hot = cold + more
    tank = plain_tank(expanded=expanded, cold=cold, hot=hot, air=air)
    assert tank * plain_share(cold=cold, hot=hot, air=air) == pytest.approx(expanded)
    assert plain_share(cold=cold, hot=hot, air=air) < acceptance_factor(cold=cold, hot=hot, air=air)
    gas = gas_left(tank=tank, precharge=0.0, fill=cold, air=air, expanded=expanded)
    assert gas > 0.02 * tank
    assert hot_pressure(tank=tank, precharge=0.0, air=air, gas=gas) == pytest.approx(hot)
