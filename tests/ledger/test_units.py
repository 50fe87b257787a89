"""The unit table against a units library, unit by unit."""

from __future__ import annotations

import re
from itertools import product

import pint
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from heatledger.ledger import dimensions as d
from heatledger.ledger.dimensions import DIMENSIONS
from heatledger.ledger.presets import CANADIAN, METRIC, PRESETS, US
from heatledger.ledger.unit_words import allowed, is_metric, is_neutral, meanings, nearest, unit_named
from heatledger.ledger.units import ATOMS, UNITS, combined, text_of

REFEREE = pint.UnitRegistry()

# What the referee calls each unit. Its plain Btu is another one; the International Table Btu is Btu_it.
CALLED = {
    "1": "dimensionless", "%": "0.01", "K": "kelvin", "°C": "delta_degC", "°F": "delta_degF", "°R": "degR",
    "ft": "foot", "in": "inch", "yd": "yard", "m": "meter", "cm": "centimeter", "mm": "millimeter",
    "ft²": "foot**2", "in²": "inch**2", "m²": "meter**2", "cm²": "centimeter**2", "mm²": "millimeter**2",
    "ft³": "foot**3", "m³": "meter**3", "L": "liter", "gal": "gallon", "imp gal": "imperial_gallon",
    "s": "second", "min": "minute", "h": "hour", "day": "day",
    "ft/s": "foot/second", "ft/min": "foot/minute", "m/s": "meter/second",
    "ft/s²": "foot/second**2", "m/s²": "meter/second**2",
    "lb": "pound", "kg": "kilogram", "g": "gram", "lb/ft³": "pound/foot**3", "kg/m³": "kilogram/meter**3",
    "psi": "psi", "Pa": "pascal", "kPa": "kilopascal", "bar": "bar", "mbar": "millibar",
    "in. w.c.": "inch*1000*kilogram/meter**3*standard_gravity",
    "Btu": "Btu_it", "kBtu": "1000*Btu_it", "therm": "100000*Btu_it", "J": "joule", "kJ": "kilojoule",
    "MJ": "megajoule", "kWh": "kilowatt*hour",
    "Btu/h": "Btu_it/hour", "kBtu/h": "1000*Btu_it/hour", "MBH": "1000*Btu_it/hour",
    "W": "watt", "kW": "kilowatt",
    "Btu/(h·ft²)": "Btu_it/hour/foot**2", "W/m²": "watt/meter**2",
    "Btu/(h·ft)": "Btu_it/hour/foot", "W/m": "watt/meter",
    "Btu/(h·ft²·°F)": "Btu_it/hour/foot**2/delta_degF", "W/(m²·K)": "watt/meter**2/kelvin",
    "h·ft²·°F/Btu": "hour*foot**2*delta_degF/Btu_it", "m²·K/W": "meter**2*kelvin/watt",
    "Btu/(h·ft·°F)": "Btu_it/hour/foot/delta_degF", "W/(m·K)": "watt/meter/kelvin",
    "Btu·in/(h·ft²·°F)": "Btu_it*inch/hour/foot**2/delta_degF",
    "Btu/(h·°F)": "Btu_it/hour/delta_degF", "W/K": "watt/kelvin",
    "L/s": "liter/second", "L/min": "liter/minute", "L/h": "liter/hour", "m³/h": "meter**3/hour",
    "m³/s": "meter**3/second", "ft³/h": "foot**3/hour", "cfm": "foot**3/minute", "gpm": "gallon/minute",
    "imp gpm": "imperial_gallon/minute", "cfm50": "foot**3/minute", "m³/h at 50 Pa": "meter**3/hour",
    "lb/h": "pound/hour", "kg/s": "kilogram/second", "kg/h": "kilogram/hour",
    "Btu/(lb·°F)": "Btu_it/pound/delta_degF", "kJ/(kg·K)": "kilojoule/kilogram/kelvin",
    "J/(kg·K)": "joule/kilogram/kelvin",
    "Btu/(ft³·°F)": "Btu_it/foot**3/delta_degF", "J/(m³·K)": "joule/meter**3/kelvin",
    "kJ/(m³·K)": "kilojoule/meter**3/kelvin", "Wh/(m³·K)": "watt*hour/meter**3/kelvin",
    "ft²/s": "foot**2/second", "mm²/s": "millimeter**2/second", "m²/s": "meter**2/second",
    "Btu/gal": "Btu_it/gallon", "Btu/ft³": "Btu_it/foot**3", "MJ/L": "megajoule/liter",
    "MJ/m³": "megajoule/meter**3", "kWh/L": "kilowatt*hour/liter", "kWh/m³": "kilowatt*hour/meter**3",
    "°F⁻¹": "1/delta_degF", "K⁻¹": "1/kelvin", "ppm": "0.000001", "ft/100 ft": "0.01", "m/100 m": "0.01",
    "Cv": "gallon/minute/psi**0.5", "Kv": "meter**3/hour/bar**0.5",
    "Btu/(h·gpm·°F)": "Btu_it/hour/(gallon/minute)/delta_degF", "Wh/(L·K)": "watt*hour/liter/kelvin",
    "Pa·s": "pascal*second", "lb/(ft·h)": "pound/foot/hour", "ACH": "1/hour",
    "K/m": "kelvin/meter", "°F/ft": "delta_degF/foot",
    "W/(m²·K⁴)": "watt/meter**2/kelvin**4", "Btu/(h·ft²·°R⁴)": "Btu_it/hour/foot**2/degR**4",
}  # fmt: skip
SCALES = {"K": "kelvin", "°C": "degC", "°F": "degF", "°R": "degR"}


def test_the_referee_knows_every_unit_of_the_table_and_no_other():
    assert set(CALLED) == set(UNITS)


@pytest.mark.parametrize("text", UNITS)
def test_each_factor_agrees_with_the_referee(text):
    theirs = REFEREE.Quantity(1.0) * REFEREE.parse_expression(CALLED[text])
    theirs = theirs.to_base_units()
    assert UNITS[text].factor == pytest.approx(theirs.magnitude, rel=1e-12, abs=0)
    powers = [theirs.dimensionality.get(f"[{name}]", 0) for name in ("length", "mass", "time", "temperature")]
    assert [float(each) for each in UNITS[text].exponents] == powers


@pytest.mark.parametrize("text", SCALES)
@given(value=st.floats(0, 2000))
def test_each_temperature_scale_agrees_with_the_referee(text, value):
    theirs = REFEREE.Quantity(value, SCALES[text]).to("kelvin").magnitude
    assert UNITS[text].to_si(value, absolute=True) == pytest.approx(theirs, rel=1e-12)
    assert UNITS[text].from_si(theirs, absolute=True) == pytest.approx(value, rel=1e-12, abs=1e-9)


@pytest.mark.parametrize("text", UNITS)
@settings(max_examples=20)
@given(value=st.floats(-1e9, 1e9))
def test_to_si_and_back(text, value):
    unit = UNITS[text]
    assert unit.from_si(unit.to_si(value)) == pytest.approx(value, rel=1e-14, abs=1e-300)


def test_fixed_points_that_everybody_knows():
    assert UNITS["°F"].to_si(32, absolute=True) == pytest.approx(273.15, rel=1e-14)
    assert UNITS["°F"].to_si(-40, absolute=True) == pytest.approx(UNITS["°C"].to_si(-40, absolute=True))
    assert UNITS["°F"].to_si(18) == pytest.approx(10, rel=1e-14)
    assert UNITS["imp gal"].factor / UNITS["gal"].factor == pytest.approx(1.20095, rel=1e-5)


def test_every_unit_is_the_unit_of_some_kind_except_what_only_workings_use():
    typed = {unit.text for dimension in DIMENSIONS.values() for unit in allowed(dimension)}
    assert set(UNITS) - typed == set()


@pytest.mark.parametrize("name", PRESETS)
@pytest.mark.parametrize("dimension", DIMENSIONS.values(), ids=str)
def test_each_preset_shows_every_kind_in_a_unit_that_is_read_back(name, dimension):
    shown = PRESETS[name].shown(dimension)
    assert shown.unit in allowed(dimension)
    assert shown.unit.exponents == dimension.exponents
    assert 0 <= shown.places <= 6


def test_presets_differ_where_they_should():
    assert METRIC.shown(d.LENGTH).unit.text == "m"
    assert US.shown(d.TEMPERATURE).unit.text == "°F"
    assert CANADIAN.shown(d.TEMPERATURE).unit.text == "°C"
    assert CANADIAN.shown(d.LENGTH).unit.text == "ft"
    assert (US.paper, METRIC.paper, CANADIAN.paper) == ("letter", "a4", "letter")


def test_atoms_are_units_of_their_own_size():
    for text, (size, powers) in ATOMS.items():
        assert UNITS[text].factor == size
        assert UNITS[text].exponents == powers


def test_every_unit_text_names_itself_for_each_kind_that_takes_it():
    for dimension in DIMENSIONS.values():
        for unit in allowed(dimension):
            if unit.text != "1":
                assert unit_named(unit.text, dimension) is unit


def test_every_compound_is_read_in_other_spellings_too():
    changed = 0
    for unit in UNITS.values():
        if "/" not in unit.text or "at 50" in unit.text:
            continue
        flat = re.sub(r"[()]", "", unit.text)
        for dot, square, hour in product(("·", "*", " "), ("²", "2", "^2"), ("h", "hr")):
            words = re.sub(r"\bh\b", hour, flat.replace("·", dot).replace("²", square))
            assert unit.text in meanings(words), words
            changed += words != unit.text
    assert changed > 300


def test_what_is_no_unit_of_the_table_has_no_meaning():
    for words in ("furlong", "cm/h", "ft4", "m-", "/", "1", "", "(", "Btu/", "ft/ft", "h)", "mW", "MW", "mJ",
                  "2", "ft 6", "Btu/(h·ft²", "°", "x", "W/m2K2", "k"):  # fmt: skip
        assert meanings(words) == (), words


def test_large_and_small_letters_that_mean_different_things_are_kept_apart():
    assert meanings("MJ") == ("MJ",)
    assert meanings("mj") == ()
    assert meanings("k") == ()
    assert meanings("W/mK") == ("W/(m·K)",)
    assert meanings("W/MK") == ()


def test_metric_inch_pound_and_shared_units():
    metric = {unit.text for unit in UNITS.values() if is_metric(unit)}
    shared = {unit.text for unit in UNITS.values() if is_neutral(unit)}
    assert {"m", "W", "W/(m²·K)", "L/h", "bar", "°C", "kWh"} <= metric
    assert shared == {"1", "%", "s", "min", "h", "day", "ACH", "ppm", "ft/100 ft", "m/100 m", "Cv", "Kv"}
    assert not metric & shared
    assert {"ft", "Btu/h", "gpm", "psi", "°F", "in. w.c."} <= set(UNITS) - metric - shared


def test_nearest_units_come_from_the_kind_asked_for():
    assert nearest("gpn", d.VOLUME_FLOW)[0] == "gpm"
    assert nearest("Btu/hh", d.HEAT_RATE)[0] == "Btu/h"
    assert nearest("qqq", d.LENGTH) == ()


def test_text_of_writes_what_the_table_writes():
    assert text_of(UNITS["Btu/(h·ft²·°F)"].powers) == "Btu/(h·ft²·°F)"
    assert combined([(UNITS["Btu/h"], 1), (UNITS["h"], 1)]).text == "Btu"
