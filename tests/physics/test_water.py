"""Claim: water is as the international formulations have it. Witness: CoolProp, a referee, no source."""

import pytest
from CoolProp.CoolProp import PropsSI

from heatledger.physics.water import (
    capacity,
    drop_of_heat,
    flow_by_hand,
    flow_for_heat,
    heat_carried,
    water_density,
    water_heat,
    water_specific_heat,
    water_viscosity,
)
from tests.physics.hydraulics import si

PRESSURE = 250e3
KELVINS = [273.16, *(273.15 + 0.5 * half for half in range(1, 241))]

# Our table of water at 250 kPa: °C, kg/m³, kJ/(kg·K), mm²/s.
TABLE = [
    (0.01, 999.92, 4.2187, 1.7909), (10, 999.77, 4.1946, 1.3061), (20, 998.28, 4.1836, 1.0033),
    (30, 995.72, 4.1794, 0.8006), (40, 992.28, 4.1790, 0.6578), (50, 988.10, 4.1810, 0.5531),
    (60, 983.26, 4.1846, 0.4740), (70, 977.83, 4.1897, 0.4127), (80, 971.86, 4.1964, 0.3643),
    (90, 965.38, 4.2049, 0.3255), (100, 958.42, 4.2153, 0.2938), (110, 951.00, 4.2281, 0.2678),
    (120, 943.13, 4.2434, 0.2460),
]  # fmt: skip
# The same by °F: lb/ft³, and the trade's C in Btu/h per gpm and °F.
BY_FAHRENHEIT = [
    (40, 62.431, 503.01), (60, 62.371, 500.33), (100, 61.998, 496.34), (140, 61.383, 492.09),
    (180, 60.584, 487.25), (200, 60.125, 484.71), (220, 59.630, 482.15), (240, 59.100, 479.63),
]  # fmt: skip


def fahrenheit(value):
    return (value + 459.67) / 1.8


def mean_heat(kelvin):
    return water_heat(
        density=water_density(temperature=kelvin), specific_heat=water_specific_heat(temperature=kelvin)
    )


def test_the_whole_range():
    for kelvin in KELVINS:
        density = PropsSI("D", "T", kelvin, "P", PRESSURE, "Water")
        heat = PropsSI("C", "T", kelvin, "P", PRESSURE, "Water")
        viscosity = PropsSI("V", "T", kelvin, "P", PRESSURE, "Water") / density
        assert water_density(temperature=kelvin) == pytest.approx(density, rel=2e-4)
        assert water_specific_heat(temperature=kelvin) == pytest.approx(heat, rel=5e-4)
        assert water_viscosity(temperature=kelvin) == pytest.approx(viscosity, rel=1e-3)


@pytest.mark.parametrize("bar", [1.5, 3.0, 5.0])
def test_pressure_matters_little(bar):
    for celsius in (5, 40, 80, 110):
        density = PropsSI("D", "T", celsius + 273.15, "P", bar * 1e5, "Water")
        assert water_density(temperature=celsius + 273.15) == pytest.approx(density, rel=4e-4)


@pytest.mark.parametrize(("celsius", "density", "heat", "viscosity"), TABLE)
def test_the_table_in_metric_units(celsius, density, heat, viscosity):
    kelvin = celsius + 273.15
    assert water_density(temperature=kelvin) == pytest.approx(density, rel=2e-4)
    assert water_specific_heat(temperature=kelvin) == pytest.approx(1000 * heat, rel=5e-4)
    assert water_viscosity(temperature=kelvin) == pytest.approx(1e-6 * viscosity, rel=1e-3)


@pytest.mark.parametrize(("degrees", "density", "trade"), BY_FAHRENHEIT)
def test_the_table_in_inch_pound_units(degrees, density, trade):
    kelvin = fahrenheit(degrees)
    assert water_density(temperature=kelvin) == pytest.approx(si(density, "lb/ft³"), rel=2e-4)
    assert mean_heat(kelvin) == pytest.approx(si(trade, "Btu/(h·gpm·°F)"), rel=5e-4)


def test_flow_for_a_heat():
    heat, drop = si(40000, "Btu/h"), si(20, "°F")
    flow = flow_for_heat(heat=heat, water_heat=mean_heat(fahrenheit(170)), drop=drop)
    assert flow == pytest.approx(si(4.09418, "gpm"), rel=5e-4)
    assert flow_by_hand(heat=heat, drop=drop) == pytest.approx(si(4.0, "gpm"), rel=1e-9)
    metric = flow_for_heat(heat=10e3, water_heat=mean_heat(333.15), drop=10.0)
    assert metric == pytest.approx(0.243038e-3, rel=5e-4)


def test_a_series_loop():
    carried, flow = si(487, "Btu/(h·gpm·°F)"), si(4, "gpm")
    water, found = 180.0, []
    for load in (6000, 5000, 8000):
        water -= drop_of_heat(heat=si(load, "Btu/h"), flow=flow, water_heat=carried) * 1.8
        found.append(water)
    assert found == pytest.approx([176.91992, 174.35318, 170.24641], abs=1e-4)


def test_heat_flow_and_drop_are_one_balance():
    carried = mean_heat(340.0)
    heat = heat_carried(flow=2e-4, water_heat=carried, drop=11.0)
    assert drop_of_heat(heat=heat, flow=2e-4, water_heat=carried) == pytest.approx(11.0)
    assert flow_for_heat(heat=heat, water_heat=carried, drop=11.0) == pytest.approx(2e-4)
    assert capacity(flow=2e-4, water_heat=carried) * 11.0 == pytest.approx(heat)
