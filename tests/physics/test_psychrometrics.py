"""Claim: moist air is as an independent library has it. Witness: psychrolib, a referee, no published source.

The library keeps one unit system for the whole process, so every test sets it.
"""

import psychrolib
import pytest

from heatledger.ledger.units import UNITS
from heatledger.physics.air import dry_air_density, site_pressure
from heatledger.physics.psychrometrics import (
    humidity_ratio,
    moist_air_density,
    saturation_over_ice,
    saturation_over_water,
    saturation_pressure,
)

TEMPERATURES = [-60.0, -30.0, -10.0, -0.5, 0.005, 0.5, 10.0, 20.0, 35.0, 90.0, 180.0]


@pytest.mark.parametrize("celsius", TEMPERATURES)
def test_saturation_pressure(celsius):
    psychrolib.SetUnitSystem(psychrolib.SI)
    got = saturation_pressure(temperature=celsius + 273.15)
    # The library's fit is the same, in kelvin too; what is left is rounding of its coefficients.
    assert got == pytest.approx(psychrolib.GetSatVapPres(celsius), rel=1e-6)


@pytest.mark.parametrize("fahrenheit", [-40.0, 20.0, 70.0, 150.0])
def test_saturation_pressure_in_inch_pound_units(fahrenheit):
    psychrolib.SetUnitSystem(psychrolib.IP)
    got = saturation_pressure(temperature=UNITS["°F"].to_si(fahrenheit, absolute=True))
    # Two fits on two scales, printed with about eight figures each.
    assert UNITS["psi"].from_si(got) == pytest.approx(psychrolib.GetSatVapPres(fahrenheit), rel=2e-4)


def test_ice_and_water_meet_at_the_triple_point():
    ice, water = saturation_over_ice(temperature=273.16), saturation_over_water(temperature=273.16)
    assert ice == pytest.approx(water, rel=1e-4)
    assert saturation_over_ice(temperature=263.15) < saturation_over_water(temperature=263.15)


@pytest.mark.parametrize("celsius", [-20.0, 5.0, 20.0, 30.0])
@pytest.mark.parametrize("humidity", [0.1, 0.3, 0.8])
@pytest.mark.parametrize("pressure", [101325.0, 80000.0])
def test_humidity_ratio_and_density(celsius, humidity, pressure):
    psychrolib.SetUnitSystem(psychrolib.SI)
    saturation = saturation_pressure(temperature=celsius + 273.15)
    ratio = humidity_ratio(relative_humidity=humidity, saturation=saturation, pressure=pressure)
    theirs = psychrolib.GetHumRatioFromRelHum(celsius, humidity, pressure)
    # The library never goes below 1e-7, which is far from these.
    assert ratio == pytest.approx(theirs, rel=1e-5)
    density = moist_air_density(temperature=celsius + 273.15, humidity=ratio, pressure=pressure)
    assert density == pytest.approx(psychrolib.GetMoistAirDensity(celsius, theirs, pressure), rel=1e-5)


@pytest.mark.parametrize("metres", [0.0, 500.0, 1690.0, 3000.0])
def test_dry_air_at_height(metres):
    psychrolib.SetUnitSystem(psychrolib.SI)
    pressure = site_pressure(elevation=metres)
    # The exponent stands with one digit less here (5.2559 for 5.25588 or so).
    assert pressure == pytest.approx(psychrolib.GetStandardAtmPressure(metres), rel=2e-5)
    density = dry_air_density(pressure=pressure, temperature=294.15)
    assert density == pytest.approx(psychrolib.GetDryAirDensity(21.0, pressure), rel=1e-5)


def test_dry_air_is_moist_air_without_moisture():
    dry = dry_air_density(pressure=95000.0, temperature=280.0)
    assert moist_air_density(temperature=280.0, humidity=0.0, pressure=95000.0) == pytest.approx(dry)
