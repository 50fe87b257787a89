"""Claim: degree days and fuel bills agree with each other and with the gains. Computed cases and laws."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from heatledger.ledger.units import UNITS
from heatledger.physics.energy import (
    balance_temperature,
    coefficient_from_fuel,
    design_loss_from_fuel,
    fuel_energy,
    gas_energy,
    heat_from_fuel,
    heating_fuel,
    loss_like_for_like,
    season_fuel,
    season_heat,
)


def si(value, unit, absolute=False):
    return UNITS[unit].to_si(value, absolute)


def test_balance_temperature_and_fuel():
    """Computed: 500 Btu/(h·°F), 3,000 Btu/h of gains, 6,000 degree days, 82 %."""
    coefficient = si(500, "Btu/(h·°F)")
    base = balance_temperature(indoor=si(68, "°F", True), gains=si(3000, "Btu/h"), coefficient=coefficient)
    assert UNITS["°F"].from_si(base, absolute=True) == pytest.approx(62.0)
    heat = season_heat(coefficient=coefficient, degree_days=si(6000, "°F"))
    fuel = season_fuel(heat=heat, efficiency=0.82)
    assert UNITS["Btu"].from_si(fuel) == pytest.approx(87_804_878, abs=1)
    assert UNITS["therm"].from_si(fuel) == pytest.approx(878.05, abs=0.005)


def test_a_house_from_its_oil():
    """Computed: 800 gal of oil, 82 %, 7,000 degree days; the base, not room temperature, goes with it."""
    fuel = si(800 * 138_690, "Btu")
    coefficient = coefficient_from_fuel(fuel=fuel, efficiency=0.82, degree_days=si(7000, "°F"))
    assert UNITS["Btu/(h·°F)"].from_si(coefficient) == pytest.approx(541.551, abs=1e-3)
    for base, loss in ((65, 35_200.8), (70, 37_908.6)):
        got = design_loss_from_fuel(
            coefficient=coefficient, base=si(base, "°F", True), outdoor=si(0, "°F", True)
        )
        assert UNITS["Btu/h"].from_si(got) == pytest.approx(loss, abs=0.1)


@given(k=st.floats(10, 2000), days=st.floats(100, 10_000), efficiency=st.floats(0.3, 1.0))
def test_the_bills_give_back_the_coefficient(k, days, efficiency):
    fuel = season_fuel(heat=season_heat(coefficient=k, degree_days=days), efficiency=efficiency)
    assert coefficient_from_fuel(fuel=fuel, efficiency=efficiency, degree_days=days) == pytest.approx(k)


def test_a_winter_by_liquid_gas_and_meter():
    """Computed: 820 gal at 138,500 Btu/gal, and 98,000 ft³ at 1,037 Btu/ft³, 15 million Btu for hot water."""
    oil = fuel_energy(volume=si(820, "gal"), heat_content=si(138_500, "Btu/gal"))
    assert UNITS["Btu"].from_si(oil) == pytest.approx(113_570_000)
    gas = gas_energy(gas=si(98_000, "ft³"), heat_content=si(1037, "Btu/ft³"))
    assert UNITS["therm"].from_si(gas) == pytest.approx(1016.26)
    left = heating_fuel(fuel=gas, other_use=si(15e6, "Btu"))
    assert UNITS["Btu"].from_si(heat_from_fuel(fuel=left, efficiency=0.8)) == pytest.approx(69_300_800)


@given(k=st.floats(50, 1000), indoor=st.floats(288, 298), gains=st.floats(0, 8), outdoor=st.floats(240, 275))
def test_like_for_like_is_more_by_the_gains(k, indoor, gains, outdoor):
    like = loss_like_for_like(coefficient=k, indoor=indoor, outdoor=outdoor)
    after = design_loss_from_fuel(coefficient=k, base=indoor - gains, outdoor=outdoor)
    assert like - after == pytest.approx(k * gains, abs=1e-6)
