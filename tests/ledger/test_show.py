"""Writing quantities, and reading back what was written."""

from __future__ import annotations

from math import inf, nan

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from heatledger.ledger import dimensions as d
from heatledger.ledger.dimensions import DIMENSIONS
from heatledger.ledger.figures import Leaf, LeafKind, LedgerError, leaf, missing
from heatledger.ledger.notation import read, read_percent
from heatledger.ledger.presets import CANADIAN, METRIC, PRESETS, US
from heatledger.ledger.show import (
    NARROW_SPACE,
    NOT_KNOWN,
    feet_and_inches,
    grouping,
    number_text,
    show,
    show_percent,
    show_range,
    show_speaking,
)
from heatledger.ledger.units import INCH_M, UNITS

BTU_H = UNITS["Btu/h"].factor


def typed(text, dimension, units=US):
    """A figure that stands for an entry of the job."""
    reading = read(text, dimension, units)
    origin = Leaf(
        LeafKind.JOB, "rooms/kitchen", "an entry", text, reading.unit, reading.typed_value, reading.places
    )
    return leaf(reading.value, dimension, origin)


@pytest.mark.parametrize(
    ("value", "places", "text"),
    [
        (5124.4, 0, "5,124"), (0.5, 0, "1"), (2.5, 0, "3"), (-2.5, 0, "−3"), (2.675, 2, "2.68"),
        (0.125, 2, "0.13"),
        (-0.04, 1, "0.0"), (-0.0, 2, "0.00"), (0.0, 0, "0"), (-2.0, 1, "−2.0"), (999.5, 0, "1,000"),
        (1234567.891, 2, "1,234,567.89"), (36246.0, -2, "36,200"), (36250.0, -2, "36,300"), (1e22, 0,
         "10,000,000,000,000,000,000,000"), (1e-6, 6, "0.000001"), (-999999.5, 0, "−1,000,000"),
    ],
)  # fmt: skip
def test_number_text(value, places, text):
    assert number_text(value, places) == text


def test_number_text_with_another_group_mark_and_without_a_number():
    assert number_text(10500, 0, NARROW_SPACE) == f"10{NARROW_SPACE}500"
    for bad in (nan, inf, -inf):
        with pytest.raises(ValueError, match="no number"):
            number_text(bad, 1)


@given(st.floats(-1e12, 1e12), st.integers(0, 6))
def test_number_text_is_within_half_of_the_last_place_and_never_minus_zero(value, places):
    text = number_text(value, places)
    back = float(text.replace(",", "").replace("−", "-"))
    assert abs(back - value) <= 0.5000001 * 10**-places + abs(value) * 1e-15
    assert not (text.startswith("−") and back == 0)
    assert all(len(group) == 3 for group in text.partition(".")[0].split(",")[1:])


@pytest.mark.parametrize(
    ("inches", "text"),
    [
        (150, "12′ 6″"), (150.5, "12′ 6½″"), (144, "12′ 0″"), (6, "6″"), (0.5, "½″"), (0, "0″"),
        (-18, "−1′ 6″"),
        (-0.25, "−¼″"), (11.99, "1′ 0″"), (143.94, "12′ 0″"), (143.9, "11′ 11⅞″"), (18000, "1,500′ 0″"),
        (0.04, "0.04″"), (-0.04, "−0.04″"), (1e-9, "0″"), (-1e-12, "0″"), (3.0625, "3⅛″"),
    ],
)  # fmt: skip
def test_feet_and_inches(inches, text):
    assert feet_and_inches(inches * INCH_M) == text


@given(st.floats(-1e4, 1e4))
def test_feet_and_inches_are_read_back_within_a_sixteenth(metres):
    text = show(metres, US, d.LENGTH)
    back = read(text, d.LENGTH, US).value
    assert back == pytest.approx(metres, abs=INCH_M / 16 * 1.000001)
    if abs(metres) >= INCH_M / 8:
        assert show(back, US, d.LENGTH) == text


@given(st.integers(0, 2000), st.integers(0, 95))
def test_every_eighth_of_an_inch_comes_back_to_the_last_bit_that_matters(feet, eighths):
    metres = (feet * 96 + eighths) / 8 * INCH_M
    assert read(feet_and_inches(metres), d.LENGTH, US).value == pytest.approx(metres, rel=1e-15)


@pytest.mark.parametrize(
    ("value", "dimension", "units", "text"),
    [
        (5124.3 * BTU_H, d.HEAT_RATE, US, "5,124 Btu/h"),
        (254.2611111, d.TEMPERATURE, US, "−2 °F"),
        (254.2611111, d.TEMPERATURE, CANADIAN, "−18.9 °C"),
        (10, d.TEMPERATURE_DIFFERENCE, US, "18 °F"),
        (10, d.TEMPERATURE_DIFFERENCE, METRIC, "10 K"),
        (10, d.TEMPERATURE_DIFFERENCE, CANADIAN, "10 °C"),
        (3.81, d.LENGTH, US, "12′ 6″"),
        (3.81, d.LENGTH, CANADIAN, "12′ 6″"),
        (3.81, d.LENGTH, METRIC, "3.81 m"),
        (2.7432, d.HEAD, US, "9 ft"),
        (10500, d.HEAT_RATE, METRIC, f"10{NARROW_SPACE}500 W"),
        (0.25, d.RATIO, US, "0.25"),
        (1200, d.COUNT, US, "1,200"),
        (0.5 / 3600, d.AIR_CHANGES, METRIC, "0.5 ACH"),
        (5.67e-8, d.RADIATION, METRIC, "5.67e-8 W/(m²·K⁴)"),
        (0.0, d.RADIATION, METRIC, "0 W/(m²·K⁴)"),
        (0.3 * BTU_H, d.HEAT_RATE, US, "0.3 Btu/h"),
        (-0.3 * BTU_H, d.HEAT_RATE, US, "−0.3 Btu/h"),
        (1e-12, d.HEAT_RATE, US, "0 Btu/h"),
        (-1e-12, d.HEAT_RATE, US, "0 Btu/h"),
        (nan, d.HEAT_RATE, US, NOT_KNOWN),
        (nan, d.LENGTH, US, NOT_KNOWN),
    ],
)
def test_show(value, dimension, units, text):
    assert show(value, units, dimension) == text


def test_places_fix_the_decimals_and_keep_the_zeros():
    assert show(294.26111111, US, d.TEMPERATURE, places=1) == "70.0 °F"
    assert show(3.81, US, d.LENGTH, places=2) == "12.50 ft"
    assert show(5000, METRIC, d.HEAT_RATE, places=1) == f"5{NARROW_SPACE}000.0 W"


def test_what_was_typed_in_the_unit_shown_stands_as_typed():
    assert show(typed("U-0.30", d.TRANSMITTANCE), US) == "0.30 Btu/(h·ft²·°F)"
    assert show(typed("70.0 °F", d.TEMPERATURE), US) == "70.0 °F"
    assert show(typed("0.123456 Btu/(h ft2 F)", d.TRANSMITTANCE), US) == "0.123456 Btu/(h·ft²·°F)"
    assert show(typed("1,500.0 Btu/h", d.HEAT_RATE), US) == "1,500.0 Btu/h"
    assert show(typed("−0 °F", d.TEMPERATURE), US) == "0 °F"


def test_what_was_typed_in_another_unit_is_found_in_this_one():
    assert show(typed("70.0 °F", d.TEMPERATURE), METRIC) == "21.1 °C"
    assert show(typed("34.00 kBtu/h", d.HEAT_RATE), US) == "34,000 Btu/h"
    assert show(typed("3810 mm", d.LENGTH), US) == "12′ 6″"
    assert show(typed("12' 6\"", d.LENGTH), METRIC) == "3.81 m"


def test_typed_lengths_keep_what_no_eighth_of_an_inch_can_show():
    assert show(typed("12.5'", d.LENGTH), US) == "12′ 6″"
    assert show(typed("12.53 ft", d.LENGTH), US) == "12.53′"
    assert show(typed("0.475 in", d.LENGTH), US) == "0.475″"
    assert show(typed('36"', d.LENGTH), US) == "3′ 0″"
    assert show(typed("12' 6 1/3\"", d.LENGTH), US) == "12′ 6⅜″"
    for text in ("12.53′", "0.475″"):
        assert show(typed(text, d.LENGTH), US) == text


def test_a_figure_brings_its_kind_and_a_number_needs_one():
    figure = typed("70 °F", d.TEMPERATURE)
    assert show(figure, US, d.TEMPERATURE) == "70 °F"
    with pytest.raises(LedgerError, match="not shown as area"):
        show(figure, US, d.AREA)
    with pytest.raises(LedgerError, match="kind is given"):
        show(21.0, US)
    with pytest.raises(ValueError, match="no number"):
        show(inf, US, d.AREA)


def test_a_missing_figure_is_never_a_number():
    figure = missing(d.AREA, "rooms/kitchen/floor-area", "floor area")
    assert show(figure, US) == show(figure, US, places=1) == show_speaking(figure, METRIC) == NOT_KNOWN
    assert show_range(figure, 3.0, US, d.AREA) == NOT_KNOWN
    assert show_percent(nan) == NOT_KNOWN


NUMBERS = st.floats(1e-4, 1e7) | st.floats(-1e7, -1e-4) | st.just(0.0)


@pytest.mark.parametrize("units", PRESETS.values(), ids=PRESETS)
@pytest.mark.parametrize("dimension", [each for each in DIMENSIONS.values() if each is not d.COUNT], ids=str)
@settings(max_examples=40)
@given(number=NUMBERS)
def test_what_is_shown_is_read_back(units, dimension, number):
    shown = units.shown(dimension)
    value = shown.unit.to_si(number, dimension.absolute)
    assume(not dimension.absolute or value > 0)
    text = show(value, units, dimension)
    back = read(text, dimension, units)
    if dimension is d.LENGTH and units.feet_and_inches:
        near = INCH_M / 16
    elif dimension is d.RADIATION:
        near = abs(value) * 5e-4
    else:
        near = 0.5 * 10.0 ** -shown.start(number) * shown.unit.factor
    assert back.value == pytest.approx(value, rel=1e-12, abs=near * 1.000001)
    if abs(number) >= 10.0 ** -max(shown.start(number), 0):
        assert show(back.value, units, dimension) == text


@pytest.mark.parametrize("units", PRESETS.values(), ids=PRESETS)
@given(number=st.floats(0.01, 1e7))
def test_what_is_spoken_is_read_back_within_half_of_the_third_figure(units, number):
    for dimension in (d.HEAT_RATE, d.AREA, d.VOLUME_FLOW, d.TRANSMITTANCE):
        value = units.shown(dimension).unit.to_si(number)
        text = show_speaking(value, units, dimension)
        assert read(text, dimension, units).value == pytest.approx(value, rel=0.00501)
        digits = "".join(each for each in text.split(" ")[0] if each in "0123456789").strip("0")
        assert len(digits) <= 3


@pytest.mark.parametrize(
    ("value", "dimension", "units", "text"),
    [
        (36246 * BTU_H, d.HEAT_RATE, US, "36,200 Btu/h"),
        (999.6 * BTU_H, d.HEAT_RATE, US, "1,000 Btu/h"),
        (0, d.HEAT_RATE, US, "0 Btu/h"),
        (-36246 * BTU_H, d.HEAT_RATE, US, "−36,200 Btu/h"),
        (294.0, d.TEMPERATURE, US, "70 °F"),
        (3.81, d.LENGTH, US, "12′ 6″"),
        (3.8123, d.LENGTH, METRIC, "3.81 m"),
        (10623, d.HEAT_RATE, METRIC, f"10{NARROW_SPACE}600 W"),
        (5.670374e-8, d.RADIATION, METRIC, "5.67e-8 W/(m²·K⁴)"),
    ],
)
def test_show_speaking(value, dimension, units, text):
    assert show_speaking(value, units, dimension) == text


def test_a_temperature_that_must_be_enough_is_rounded_up():
    fahrenheit = UNITS["°F"]
    assert show_speaking(fahrenheit.to_si(183.1, absolute=True), US, d.TEMPERATURE, up=True) == "184 °F"
    assert show_speaking(fahrenheit.to_si(184, absolute=True), US, d.TEMPERATURE, up=True) == "184 °F"
    assert show_speaking(fahrenheit.to_si(183.1, absolute=True), US, d.TEMPERATURE) == "183 °F"


def test_show_range():
    low, high = 33123 * BTU_H, 39449 * BTU_H
    assert show_range(low, high, US, d.HEAT_RATE) == "33,100 to 39,400 Btu/h"
    assert show_range(low, high, US, d.HEAT_RATE, unit=False) == "33,100 to 39,400"
    assert show_range(low, low, US, d.HEAT_RATE) == "33,100 Btu/h"
    assert show_range(3.81, 4.0, US, d.LENGTH) == "12′ 6″ to 13′ 1½″"
    assert show_range(254.2611, 255.4, US, d.TEMPERATURE) == "−2 to 0 °F"
    with pytest.raises(LedgerError):
        show_range(1.0, 2.0, US)


def test_show_percent():
    assert show_percent(0.15) == "15 %"
    assert show_percent(0.145) == "15 %"
    assert show_percent(-0.001) == "0 %"
    assert show_percent(-0.3) == "−30 %"
    assert show_percent(0.1234, 1) == "12.3 %"


@given(st.integers(-2000, 2000))
def test_percent_is_read_back(tenths):
    share = tenths / 1000
    assert read_percent(show_percent(share, 1)) == pytest.approx(share, abs=1e-12)


def test_commas_are_written_only_where_they_are_read():
    assert grouping(UNITS["Btu/h"], US) == grouping(UNITS["h"], US) == grouping(UNITS["1"], CANADIAN) == ","
    assert grouping(UNITS["W"], US) == grouping(UNITS["h"], METRIC) == NARROW_SPACE
    assert show(12_000, METRIC, d.COUNT) == f"12{NARROW_SPACE}000"
    assert read(show(12_000, METRIC, d.COUNT), d.COUNT, METRIC).value == 12_000
