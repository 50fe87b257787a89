"""What is refused, why, and what is offered instead: kinds, commas, traps, and any text at all."""

from __future__ import annotations

from math import isfinite

import pytest
from hypothesis import given
from hypothesis import strategies as st

from heatledger.ledger import dimensions as d
from heatledger.ledger.dimensions import DIMENSIONS
from heatledger.ledger.notation import NotationError, read, read_pair
from heatledger.ledger.presets import CANADIAN, METRIC, PRESETS, US
from heatledger.ledger.unit_words import allowed, is_metric
from heatledger.ledger.units import UNITS
from tests.ledger.refusing import PLACED, refused

R_IP = UNITS["h·ft²·°F/Btu"].factor


def test_an_r_where_a_u_is_expected():
    error = refused("R-19", d.TRANSMITTANCE)
    assert error.code == "wrong-unit"
    assert "R-19 is an R-value" in error.message
    assert "whole assembly" in error.message
    assert error.offers == ("0.05263 Btu/(h·ft²·°F)",)
    assert refused("19 h·ft²·°F/Btu", d.TRANSMITTANCE).offers == error.offers
    assert refused("RSI 3.3", d.TRANSMITTANCE, METRIC).offers == ("0.303 W/(m²·K)",)
    assert refused("R-0", d.TRANSMITTANCE).offers == ()
    assert refused("R-19", d.TRANSMITTANCE, METRIC).code == "wrong-unit"


def test_a_u_where_an_r_is_expected():
    error = refused("U-0.30", d.RESISTANCE)
    assert (error.code, error.offers) == ("wrong-unit", ("3.333 h·ft²·°F/Btu",))
    assert "U-0.30 is a U-value" in error.message
    assert refused("0.3 W/m2K", d.RESISTANCE, METRIC).offers == ("3.333 m²·K/W",)


def test_a_label_must_agree_with_its_unit():
    assert refused("R 3.3 W/m2K", d.RESISTANCE).offers == ("3.3 m²·K/W",)
    assert refused("RSI 3.3 h·ft²·°F/Btu", d.RESISTANCE).offers == ("3.3 m²·K/W", "3.3 h·ft²·°F/Btu")
    assert refused("U-0.3 m2K/W", d.TRANSMITTANCE).code == "wrong-unit"
    assert refused("F-0.73", d.TRANSMITTANCE).code == "wrong-unit"
    assert refused("R-19", d.AREA).code == "wrong-unit"
    assert refused("R--19", d.RESISTANCE).code == "not-a-number"


def test_a_bare_r_in_a_metric_job_could_be_either():
    error = refused("R-19", d.RESISTANCE, METRIC)
    assert (error.code, error.offers) == ("two-readings", ("RSI 19", "19 h·ft²·°F/Btu"))
    assert read("R-19", d.RESISTANCE, CANADIAN).value == pytest.approx(19 * R_IP)
    assert read("RSI 3.3", d.RESISTANCE, CANADIAN).value == 3.3
    assert read("3.3", d.RESISTANCE, METRIC).value == 3.3


@pytest.mark.parametrize(("text", "dimension", "units", "offers"), [
    ("1,500 m", d.LENGTH, US, ("1.500 m", "1500 m")),
    ("3,81 m", d.LENGTH, US, ("3.81 m", "381 m")),
    ("3,81 ft", d.LENGTH, US, ("3.81 ft", "381 ft")),
    ("-3,81 m", d.LENGTH, METRIC, ("-3.81 m", "-381 m")),
    ("1,500", d.AREA, METRIC, ("1.500", "1500")),
    ("1,500 h", d.TIME, METRIC, ("1.500 h", "1500 h")),
    ("34,000 W", d.HEAT_RATE, US, ("34.000 W", "34000 W")),
    ("1,500,000 W", d.HEAT_RATE, US, ("1500000 W",)),
    ("1,500.5 m", d.LENGTH, US, ("1500.5 m",)),
    ("1.500,5 m", d.LENGTH, METRIC, ("1500.5 m",)),
    ("1,5000 ft", d.LENGTH, US, ("1.5000 ft", "15000 ft")),
    ("12, ft", d.LENGTH, US, ("12 ft",)),
    ("12,,500 ft", d.LENGTH, US, ("12500 ft",)),
    (",500 ft", d.LENGTH, US, (".500 ft", "500 ft")),
    ("1,500,00 ft", d.LENGTH, US, ("150000 ft",)),
    ("0,3 Btu/(h·ft²·°F)", d.TRANSMITTANCE, US, ("0.3 Btu/(h·ft²·°F)", "03 Btu/(h·ft²·°F)")),
])  # fmt: skip
def test_commas_that_can_be_misread(text, dimension, units, offers):
    error = refused(text, dimension, units)
    assert (error.code, error.offers) == ("comma", offers)
    assert "misread" in error.message


@pytest.mark.parametrize(("text", "dimension", "number"), [
    ("34,000 Btu/h", d.HEAT_RATE, 34000), ("1,234,567 Btu/h", d.HEAT_RATE, 1234567),
    ("1,500.25 ft²", d.AREA, 1500.25),
    ("1,500", d.AREA, 1500), ("1,500 h", d.TIME, 1500),
])  # fmt: skip
def test_commas_between_groups_of_three(text, dimension, number):
    assert read(text, dimension, US).typed_value == number


@given(st.integers(1000, 10**9), st.sampled_from([each for each in PLACED if is_metric(each[1])]))
def test_no_metric_unit_is_read_with_a_comma(number, placed):
    dimension, unit = placed
    assert refused(f"{number:,} {unit.text}", dimension).code == "comma"


@pytest.mark.parametrize(("text", "dimension", "code", "offers"), [
    ("", d.LENGTH, "empty", ()), ("   ", d.LENGTH, "empty", ()), ("\u00a0", d.LENGTH, "empty", ()),
    ("nan", d.AREA, "not-finite", ()), ("NaN", d.AREA, "not-finite", ()), (".nan", d.AREA, "not-finite", ()),
    ("inf", d.AREA, "not-finite", ()), ("-inf", d.AREA, "not-finite", ()),
    ("Infinity", d.AREA, "not-finite", ()),
    ("1e400", d.AREA, "not-finite", ()), ("1e308 yd", d.LENGTH, "in range", ()),
    ("1e305 kBtu/h", d.HEAT_RATE, "in range", ()),
    ("1e308 kW", d.HEAT_RATE, "not-finite", ()),
    ("1_000", d.AREA, "not-a-number", ("1000",)), ("0x10", d.AREA, "not-a-number", ()),
    ("1.2.3 m", d.LENGTH, "not-a-number", ()),
    ("twelve feet", d.LENGTH, "not-a-number", ()), ("ft", d.LENGTH, "not-a-number", ()),
    ("-", d.LENGTH, "not-a-number", ()),
    (".", d.LENGTH, "not-a-number", ()), ("١٢ ft", d.LENGTH, "not-a-number", ()),
    ("--12 ft", d.LENGTH, "not-a-number", ()),
    ("1/0 in", d.LENGTH, "not-a-number", ()), ("2 5/4 in", d.LENGTH, "not-a-number", ()),
    ("12-6", d.LENGTH, "not-a-number", ("12' 6\"",)), ("10-12 °F", d.TEMPERATURE, "not-a-number", ()),
    ("34 000 ft", d.LENGTH, "not-a-number", ("34000 ft",)),
    ("1 234 567 Btu/h", d.HEAT_RATE, "not-a-number", ("1234567 Btu/h",)),
    ("1 2 ft", d.LENGTH, "not-a-number", ()), ("1/2/3 in", d.LENGTH, "unknown-unit", ("in",)),
    ("9" * 81, d.LENGTH, "too-long", ()), ("1e", d.LENGTH, "unknown-unit", ()),
    ("12.5' 6\"", d.LENGTH, "two-readings", ("12.5'",)),
    ("12' 14\"", d.LENGTH, "two-readings", ("13' 2\"", "158\"")),
    ("12 ft 6 m", d.LENGTH, "unknown-unit", ()), ("12' 6' ", d.LENGTH, "unknown-unit", ()),
    ("5 furlongs", d.LENGTH, "unknown-unit", ()), ("12 feets", d.LENGTH, "unknown-unit", ("12 ft",)),
    ("68 farad", d.TEMPERATURE, "unknown-unit", ()), ("2.1 gmp", d.VOLUME_FLOW, "unknown-unit", ("2.1 gpm",)),
    ("12 ft", d.AREA, "wrong-unit", ("12 ft²",)), ("12 sq ft", d.LENGTH, "wrong-unit", ("12 ft",)),
    ("34,000 Btu", d.HEAT_RATE, "wrong-unit", ("34,000 Btu/h", "34,000 kBtu/h")),
    ("9 ft of head", d.LENGTH, "unknown-unit", ()),
    ("9 ft", d.PRESSURE, "wrong-unit", ()), ("12 psi", d.HEAD, "wrong-unit", ()),
    ("10 L", d.VOLUME_FLOW, "wrong-unit", "any"),
    ("0.3 Btu/(h ft2", d.TRANSMITTANCE, "unknown-unit", ("0.3 Btu/(h·ft²·°F)",)),
    ("3 mW", d.HEAT_RATE, "unknown-unit", ()), ("3 MW", d.HEAT_RATE, "unknown-unit", ()),
    ("3 mJ", d.ENERGY, "unknown-unit", "any"),
    ("12 psia", d.PRESSURE, "wrong-unit", ()), ("5 tons", d.HEAT_RATE, "unknown-unit", ("60 kBtu/h",)),
    ("34 MBtu/h", d.HEAT_RATE, "two-readings", ("34 kBtu/h", "34000 kBtu/h")),
    ("34 MBtu", d.ENERGY, "two-readings", ("34 kBtu", "34000 kBtu")),
    ("34 MBtu/h", d.ENERGY, "two-readings", ()),
    ("-500 °F", d.TEMPERATURE, "below-absolute-zero", ()), ("-1 K", d.TEMPERATURE, "below-absolute-zero", ()),
    ("2.5", d.COUNT, "not-whole", ()), ("3 %", d.COUNT, "wrong-unit", ()),
])  # fmt: skip
def test_traps(text, dimension, code, offers):
    if code == "in range":
        assert isfinite(read(text, dimension, US).value)
        return
    error = refused(text, dimension)
    assert error.code == code
    if offers != "any" and text != "1/2/3 in":
        assert error.offers == offers


def test_a_fan_test_is_not_the_weather():
    for text in ("5 ACH50", "5 ach @ 50 Pa", "5 ACH at 50", "5 1/h at 50 Pa"):
        error = refused(text, d.AIR_CHANGES)
        assert (error.code, error.offers) == ("wrong-unit", ())
        assert "fan test" in error.message
    assert refused("20 cfm50", d.AIR_FLOW).offers == ()
    assert refused("200 cfm", d.LEAKAGE_AT_50_PA).offers == ()
    assert refused("2 cfm", d.VOLUME_FLOW).code == "wrong-unit"


def test_the_same_measure_of_another_kind_is_not_offered():
    # Twelve times too large would be the price of offering the nearest spelling here.
    assert refused("10 Btu·in/(h·ft²·°F)", d.EDGE_LOSS).offers == ()


def test_messages_say_what_is_expected():
    assert refused("5 furlongs", d.LENGTH).message == (
        "furlongs is not a unit that is known here; expected: a length (ft, in, yd, m, cm, mm)"
    )
    assert "R-value (h·ft²·°F/Btu, m²·K/W)" in refused("3 m", d.RESISTANCE).message
    assert "expected here: air changes (ACH)" in refused("5 ACH50", d.AIR_CHANGES).message


NUMBERS = st.from_regex(r"[-+]?[0-9]{1,4}[.,]?[0-9]{0,3}", fullmatch=True)


@given(
    text=st.text(max_size=30)
    | st.text("0123456789.,-+/ '\"eE½′″−°FCRUKmfthinBW()·²_x%", max_size=14)
    | st.tuples(NUMBERS, st.sampled_from(list(UNITS))).map(" ".join),
    dimension=st.sampled_from(list(DIMENSIONS.values())),
    units=st.sampled_from(list(PRESETS.values())),
    bare=st.booleans(),
)  # fmt: skip
def test_any_text_is_read_or_refused_with_a_reason(text, dimension, units, bare):
    try:
        reading = read(text, dimension, units, bare)
    except NotationError:
        assert refused(text, dimension, units, bare).message
        return
    assert isfinite(reading.value)
    assert UNITS[reading.unit] in allowed(dimension)
    assert reading.value == pytest.approx(
        UNITS[reading.unit].to_si(reading.typed_value, dimension.absolute), rel=1e-12, abs=1e-300
    )


def test_feet_and_inches_without_their_marks_are_offered_with_them():
    for text in ("15-6", "15 - 6", "15-6 in", '15-6"'):
        assert refused(text, d.LENGTH).offers == ("15' 6\"",)
    assert refused("15-13", d.LENGTH).offers == ()


def test_a_spoken_sign_is_offered_as_a_sign():
    assert refused("minus 5", d.TEMPERATURE).offers == ("-5",)
    assert refused("Minus 5 °F", d.TEMPERATURE).offers == ("-5 °F",)
    assert refused("plus 5", d.TEMPERATURE).offers == ("5",)


def test_feet_and_inches_run_together_but_no_area_as_a_length():
    for text in ("15ft6in", "15ft 6in", "15 ft6in", "15feet6inches", '15ft6"'):
        assert read(text, d.LENGTH, US).value == pytest.approx(15.5 * 0.3048)
    assert refused("15ft2", d.LENGTH).code == "wrong-unit"


def test_a_bare_pair_too_large_for_feet_or_meters_may_be_read_two_ways():
    def offers(text, units, longest):
        with pytest.raises(NotationError) as caught:
            read_pair(text, units, longest)
        return caught.value.code, caught.value.offers

    assert offers("36x60", US, 20) == ("two-readings", ('36" x 60"', "36' x 60'"))
    assert offers("900 x 2100", METRIC, 20)[1] == (
        "900 mm x 2100 mm", "900 cm x 2100 cm", "900 m x 2100 m",
    )  # fmt: skip
    for text in ("36 x 60 in", "36' x 60", "20 x 3"):
        assert len(read_pair(text, US, 20)) == 2
    assert offers("3-0x6-8", US, 20) == ("not-a-number", ("3' 0\" x 6' 8\"",))
    assert offers("2868", US, 20) == ("not-a-pair", ("2' 8\" x 6' 8\"",))
