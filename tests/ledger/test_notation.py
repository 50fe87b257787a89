"""Reading the trade's notation: every spelling that is read, and every unit there and back."""

from __future__ import annotations

from math import isfinite

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from heatledger.ledger import dimensions as d
from heatledger.ledger.dimensions import DIMENSIONS
from heatledger.ledger.notation import NotationError, read, read_pair, read_percent
from heatledger.ledger.presets import CANADIAN, METRIC, PRESETS, US
from heatledger.ledger.show import number_text
from heatledger.ledger.unit_words import is_metric, is_neutral
from heatledger.ledger.units import UNITS
from tests.ledger.refusing import FOOT, INCH, PLACED, refused

LENGTHS = [
    ("12' 6\"", 12.5 * FOOT), ("12'6\"", 12.5 * FOOT), ("12 ft 6 in", 12.5 * FOOT), ("12ft 6in", 12.5 * FOOT),
    ("12 ft. 6 in.", 12.5 * FOOT), ("12 feet 6 inches", 12.5 * FOOT), ("12 ft 6", 12.5 * FOOT),
    ("12' 6", 12.5 * FOOT), ("12'-6\"", 12.5 * FOOT), ("12' - 6\"", 12.5 * FOOT),
    ("12' 6 1/2\"", 150.5 * INCH),
    ("12' 6-1/2\"", 150.5 * INCH), ("12' 6½\"", 150.5 * INCH), ("12′ 6½″", 150.5 * INCH),
    ("12′ 6″", 12.5 * FOOT),
    ("12’ 6”", 12.5 * FOOT), ("12' 6''", 12.5 * FOOT), ("12' 6.5\"", 150.5 * INCH), ("12' 0\"", 12 * FOOT),
    ("12' ½\"", 144.5 * INCH), ("12.5'", 12.5 * FOOT), ("12'", 12 * FOOT), ("12.5", 12.5 * FOOT),
    ("12", 12 * FOOT),
    ("150\"", 150 * INCH), ("150 in", 150 * INCH), ("1 1/2 in", 1.5 * INCH), ("1-1/2 in", 1.5 * INCH),
    ("3/4 in", 0.75 * INCH), ("½ in", 0.5 * INCH), ("1½\"", 1.5 * INCH), ("5/4 in", 1.25 * INCH),
    ("3810 mm", 3.81), ("381 cm", 3.81), ("3.81 m", 3.81), ("3.81 metres", 3.81), ("3.81m", 3.81),
    ("12 M", 12),
    ("-1' 6\"", -1.5 * FOOT), ("−1′ 6″", -1.5 * FOOT), ("+12 ft", 12 * FOOT), (".5 ft", 0.5 * FOOT),
    ("12. ft", 12 * FOOT), ("1,500 ft", 1500 * FOOT), ("1,500' 6\"", 1500.5 * FOOT), ("5 yd", 15 * FOOT),
    ("1e3 mm", 1), ("1.5E-2 m", 0.015), ("34\u202f000 mm", 34), ("34\u00a0000 mm", 34),
    ("  12\tft  ", 12 * FOOT),
]  # fmt: skip


@pytest.mark.parametrize(("text", "metres"), LENGTHS)
def test_lengths(text, metres):
    reading = read(text, d.LENGTH, US)
    assert reading.value == pytest.approx(metres, rel=1e-14)
    assert UNITS[reading.unit].to_si(reading.typed_value) == pytest.approx(metres, rel=1e-14)
    assert reading.text == text.strip()


@pytest.mark.parametrize(
    ("text", "unit", "typed", "places"),
    [
        ("12' 6\"", "ft", 12.5, None), ("12.50'", "ft", 12.5, 2), ("3810 mm", "mm", 3810, 0),
        ("1/2 in", "in", 0.5, None),
        ("3.800 m", "m", 3.8, 3), ("1e3 mm", "mm", 1000, None), ("12", "ft", 12, 0),
        ("1,500.25 ft", "ft", 1500.25, 2),
    ],
)  # fmt: skip
def test_what_was_typed_is_kept(text, unit, typed, places):
    reading = read(text, d.LENGTH, US)
    assert (reading.unit, reading.typed_value, reading.places) == (unit, typed, places)


R_IP = UNITS["h·ft²·°F/Btu"].factor
U_IP = UNITS["Btu/(h·ft²·°F)"].factor
BTU_H = UNITS["Btu/h"].factor
GPM = UNITS["gpm"].factor
OTHERS = [
    (d.RESISTANCE, R_IP, "R-19 R19 R=19 r-19 R:19", 19),
    (d.RESISTANCE, R_IP, "R 19|19|19 h·ft²·°F/Btu|R-19 h·ft²·°F/Btu|19 hr-ft2-F/Btu|19 ft2·h·°F/Btu|"
     "R−19|R-value 19", 19),
    (d.RESISTANCE, 1, "R 3.3 m2K/W|RSI 3.3|RSI-3.3|RSI3.3|3.3 m²·K/W|3.3 m2 K/W|3.3 m²K/W|"
     "RSI 3.3 m2K/W", 3.3),
    (d.TRANSMITTANCE, U_IP, "U-0.30|U0.30|U=0.3|u 0.3|U-factor 0.30|0.30|0.30 Btu/(h·ft²·°F)|"
     "0.30 Btu/(h ft2 F)", 0.3),
    (d.TRANSMITTANCE, U_IP, "0.30 Btu/h/ft²/°F|0.30 Btu/hr-ft2-F|0.30 BTU/hr·ft^2·°F|0.30 Btu/h·ft²·°F", 0.3),
    (d.TRANSMITTANCE, U_IP, "0.30 Btu/(hr*sq ft*deg F)|0.3 Btuh/ft2F|"
     "0.3 Btu per hour per square foot per °F", 0.3),
    (d.TRANSMITTANCE, 1, "U 0.3 W/m2K|0.3 W/m²K|0.3 W/(m²·K)|0.3 W/(m2 K)|0.3 W/m2-K|0.3 W/m².K|"
     "0.3 W/m2·°C|USI 0.3", 0.3),
    (d.TRANSMITTANCE, 1, "0.3 W·m⁻²·K⁻¹|0.3 W m-2 K-1|0.3 W/m2/K|0.3 W/K/m2", 0.3),
    (d.VOLUME_FLOW, GPM, "2.1 gpm|2.1 GPM|2.1gpm|2.1 US gpm|2.1 gal/min|2.1 gallons per minute|2.1", 2.1),
    (d.VOLUME_FLOW, 4.54609e-3 / 60, "2.1 imp gpm|2.1 igpm|2.1 imp gal/min|"
     "2.1 imperial gallons per minute", 2.1),
    (d.VOLUME_FLOW, 1e-3 / 3600, "300 L/h|300 l/h|300 L/hr|300 lph|300 litres per hour|300 liters/hour", 300),
    (d.VOLUME_FLOW, 1 / 3600, "1.2 m³/h|1.2 m3/h|1.2 m^3/hr|1.2 cubic metres per hour", 1.2),
    (d.VOLUME, 231 * INCH**3, "10 gal|10 gallons|10 US gal|10 US gallons|10 gal.", 10),
    (d.VOLUME, 4.54609e-3, "10 imp gal|10 imperial gallons|10 imp. gal.|10 UK gallons|"
     "10 imperial gallon", 10),
    (d.VOLUME, FOOT**3, "10 ft³|10 ft3|10 cu ft|10 cu. ft.|10 cubic feet|10", 10),
    (d.HEAT_RATE, BTU_H, "34,000 Btu/h|34000|34 kBtu/h|34 MBH|34 mbh|34,000 BTUH|34000 Btu/hr|"
     "34000 btu per hour", 34000),
    (d.HEAT_RATE, BTU_H, "50 MBH|50 kBtuh|50,000 BTU/HR|50,000.0 Btu/h", 50000),
    (d.HEAT_RATE, 1000, "10 kW|10 KW|10 kw|10000 W|10 kilowatts|1e4 W", 10),
    (d.PRESSURE, UNITS["psi"].factor, "12 psi|12 PSI|12 psig|12", 12),
    (d.PRESSURE, 1e5, "1.5 bar|1500 mbar|150 kPa|150000 Pa|1.5 Bar", 1.5),
    (d.PRESSURE, 100, "40 mbar|4 kPa", 40),
    (d.PRESSURE, INCH * 9806.65, "3.5 in. w.c.|3.5 in wc|3.5\" w.c.|3.5″ wc|3.5 in. w.g.|"
     "3.5 in. of water|3.5 inH2O|"
     "3.5 inches water column", 3.5),
    (d.HEAD, FOOT, "9 ft|9 ft of head|9 ft head|9'|9 feet of head|9|9' 0\"", 9),
    (d.HEAD, 1, "2.7 m|2.7 m of head", 2.7),
    (d.AIR_CHANGES, 1 / 3600, "0.5 ACH|0.5 ach|1/2 ACH|½ ACH|0.5 per hour|0.5/h|0.5 1/h|0.5|"
     "0.5 air changes per hour|"
     "0.5 changes an hour|0.5 ac/h", 0.5),
    (d.LEAKAGE_AT_50_PA, FOOT**3 / 60, "200 cfm50|200 CFM50|200 cfm @ 50 Pa|200 cfm at 50 Pa|"
     "200 cfm at 50|200", 200),
    (d.LEAKAGE_AT_50_PA, 1 / 3600, "340 m³/h at 50 Pa|340 m3/h @ 50 Pa|340 m3/h at 50 pa", 340),
    (d.AIR_FLOW, FOOT**3 / 60, "20 cfm|20 CFM|20 ft³/min|20 cubic feet per minute", 20),
    (d.CONDUCTIVITY, UNITS["Btu/(h·ft·°F)"].factor, "0.8 Btu/(h·ft·°F)|0.8 Btu/h-ft-F|0.8 Btu/(h ft F)", 0.8),
    (d.CONDUCTIVITY, 1, "1.4 W/(m·K)|1.4 W/mK|1.4 W/m·K|1.4 W/m°C|1.4 W/m-K", 1.4),
    (d.CONDUCTIVITY, UNITS["Btu·in/(h·ft²·°F)"].factor, "10 Btu·in/(h·ft²·°F)|10 Btu-in/hr-ft2-F|"
     "10 Btu in/h ft2 F", 10),
    (d.EDGE_LOSS, UNITS["Btu/(h·ft·°F)"].factor, "F-0.73|F 0.73|F-factor 0.73|0.73|0.73 Btu/(h·ft·°F)", 0.73),
    (d.AREA, FOOT**2, "112 ft²|112 ft2|112 sq ft|112 sq. ft.|112 sq.ft.|112 sqft|112 SF|"
     "112 square feet|112", 112),
    (d.AREA, 1, "10.4 m²|10.4 m2|10.4 sq m|10.4 square metres|10.4 m^2", 10.4),
    (d.SPECIFIC_HEAT, 1, "4187 J/(kg·K)|4187 J/kgK|4187 J/kg-K", 4187),
    (d.VOLUME_HEAT, 3600, "0.34 Wh/(m³·K)|0.34 Wh/m3K", 0.34),
    (d.ENERGY, 3.6e6, "12 kWh|12 kW·h|12 kilowatt hours", 12),
    (d.ENERGY, 1e5 * 1055.05585262, "5 therms|5 therm", 5),
    (d.RADIATION, 1, "5.67e-8 W/(m²·K⁴)|5.67E-8 W/m2K4", 5.67e-8),
    (d.RATIO, 1, "0.25|25 %|25%|25 percent|1/4", 0.25),
    (d.COUNT, 1, "3|3.0", 3),
    (d.TIME, 3600, "6 h|6 hr|6 hours|360 min", 6),
]  # fmt: skip


@pytest.mark.parametrize(("dimension", "factor", "text", "number"), [
    (dimension, factor, text, number)
    for dimension, factor, texts, number in OTHERS
    for text in (texts.split("|") if "|" in texts else texts.split(" "))
])  # fmt: skip
def test_the_notation_of_the_trade(dimension, factor, text, number):
    assert read(text, dimension, US).value == pytest.approx(number * factor, rel=1e-12)


FAHRENHEIT, CELSIUS = UNITS["°F"], UNITS["°C"]


@pytest.mark.parametrize("text", [
    "70 °F", "70°F", "70F", "70 F", "70f", "70 deg F", "70 deg. F", "70 degF", "70 degrees F",
    "70 degrees Fahrenheit",
    "70 ºF",
    "70 ° F", "70 ℉", "70 F°", "70", "70°", "70 degrees", "70.0 °F",
])  # fmt: skip
def test_fahrenheit(text):
    reading = read(text, d.TEMPERATURE, US)
    assert reading.value == pytest.approx(294.2611111111111, rel=1e-14)
    assert reading.unit == "°F"


@pytest.mark.parametrize("text", ["−2 °F", "-2 °F", "–2 °F", "- 2 °F", "-2F", "−2", "‑2 °F"])
def test_below_zero_with_any_kind_of_minus(text):
    assert read(text, d.TEMPERATURE, US).value == pytest.approx(254.2611111111111, rel=1e-14)


@pytest.mark.parametrize(
    ("text", "kelvin"), [("21 °C", 294.15), ("21C", 294.15), ("294 K", 294), ("21 Celsius", 294.15)]
)
def test_other_scales(text, kelvin):
    assert read(text, d.TEMPERATURE, US).value == pytest.approx(kelvin)


@pytest.mark.parametrize(("text", "kelvin"), [
    ("18 °F", 10), ("18 F", 10), ("10 K", 10), ("10 °C", 10), ("18", 10), ("18 °R", 10), ("-18 °F", -10),
    ("18°", 10),
])  # fmt: skip
def test_a_difference_has_no_zero_of_a_scale(text, kelvin):
    assert read(text, d.TEMPERATURE_DIFFERENCE, US).value == pytest.approx(kelvin, rel=1e-14)


def test_the_caller_decides_what_a_degree_is():
    assert read("70 °F", d.TEMPERATURE, US).value == pytest.approx(294.26, abs=0.01)
    assert read("70 °F", d.TEMPERATURE_DIFFERENCE, US).value == pytest.approx(38.89, abs=0.01)
    assert read("530 °R", d.ABSOLUTE_TEMPERATURE, US).value == pytest.approx(294.44, abs=0.01)
    assert refused("70 °F", d.ABSOLUTE_TEMPERATURE).code == "wrong-unit"


@pytest.mark.parametrize(("units", "dimension", "unit"), [
    (US, d.LENGTH, "ft"), (METRIC, d.LENGTH, "m"), (CANADIAN, d.LENGTH, "ft"), (US, d.TEMPERATURE, "°F"),
    (METRIC, d.TEMPERATURE, "°C"), (CANADIAN, d.TEMPERATURE, "°C"),
    (CANADIAN, d.TEMPERATURE_DIFFERENCE, "°C"),
    (CANADIAN, d.HEAT_RATE, "Btu/h"), (CANADIAN, d.VOLUME_FLOW, "gpm"), (METRIC, d.HEAT_RATE, "W"),
    (METRIC, d.VOLUME_FLOW, "L/h"),
    (METRIC, d.TRANSMITTANCE, "W/(m²·K)"), (METRIC, d.LEAKAGE_AT_50_PA, "m³/h at 50 Pa"),
])  # fmt: skip
def test_a_bare_number_takes_the_unit_of_the_reader(units, dimension, unit):
    reading = read("20", dimension, units)
    assert reading.unit == unit
    assert reading.value == pytest.approx(UNITS[unit].to_si(20, dimension.absolute))


@pytest.mark.parametrize("dimension", DIMENSIONS.values(), ids=str)
@pytest.mark.parametrize("units", PRESETS.values(), ids=PRESETS)
def test_every_kind_takes_a_bare_number(dimension, units):
    shown = units.shown(dimension).unit
    assert read("300", dimension, units).value == shown.to_si(300, dimension.absolute)


def test_a_bare_number_is_refused_where_a_unit_is_needed():
    error = refused("12", d.AREA, bare=False)
    assert error.code == "no-unit"
    assert error.offers == ("12 ft²", "12 m²")
    assert read("3", d.COUNT, US, bare=False).value == 3
    assert read("0.5", d.RATIO, US, bare=False).value == 0.5
    assert read("R-19", d.RESISTANCE, US, bare=False).value == pytest.approx(19 * R_IP)
    assert refused("70°", d.TEMPERATURE, bare=False).offers == ("70 °F", "70 °C")


@pytest.mark.parametrize(("dimension", "unit"), PLACED, ids=lambda each: getattr(each, "text", str(each)))
@settings(max_examples=25)
@given(tenths=st.integers(0, 10**9), places=st.integers(0, 6), units=st.sampled_from(list(PRESETS.values())))
def test_every_unit_is_written_and_read_back_to_the_last_bit(dimension, unit, tenths, places, units):
    value = tenths / 10**places if dimension is not d.COUNT else float(tenths)
    spaced = is_metric(unit) or (units is METRIC and is_neutral(unit))
    number = number_text(value, places, "\u202f" if spaced else ",")
    written = number if unit.text == "1" else f"{number} {unit.text}"
    reading = read(written, dimension, units)
    assert reading.value == unit.to_si(value, dimension.absolute)
    assert (reading.typed_value, reading.places) == (value, places)
    assert reading.unit == unit.text or UNITS[reading.unit].text == unit.text


@given(
    st.integers(0, 3000), st.integers(0, 11), st.integers(0, 63), st.sampled_from(["'", " ft", "′", " feet"])
)
def test_feet_and_inches_in_sixty_fourths(feet, inches, part, mark):
    written = f'{feet}{mark} {inches} {part}/64"' if part else f'{feet}{mark} {inches}"'
    metres = (feet * 12 + inches + part / 64) * INCH
    assert read(written, d.LENGTH, US).value == pytest.approx(metres, rel=1e-15)


@pytest.mark.parametrize(("text", "units", "metres"), [
    ("12' × 9'", US, (12 * FOOT, 9 * FOOT)), ("12' x 9'", US, (12 * FOOT, 9 * FOOT)),
    ("12'x9'", US, (12 * FOOT, 9 * FOOT)),
    ("12' 6\" X 9' 0\"", US, (12.5 * FOOT, 9 * FOOT)), ("12 by 9", US, (12 * FOOT, 9 * FOOT)),
    ("12 x 9", METRIC, (12, 9)),
    ("3.8 m x 2.4 m", US, (3.8, 2.4)), ("3.8 x 2.4 m", US, (3.8, 2.4)), ("3.8 m x 2.4", US, (3.8, 2.4)),
    ("36 x 80 in", US, (36 * INCH, 80 * INCH)), ("3'0\" x 6'8\"", US, (3 * FOOT, 80 * INCH)),
    ("2' 8\" × 4", US, (32 * INCH, 4 * FOOT)), ("1/2 x 3/4 in", US, (0.5 * INCH, 0.75 * INCH)),
    ("3 m x 9'", US, (3, 9 * FOOT)),
])  # fmt: skip
def test_pairs(text, units, metres):
    first, second = read_pair(text, units)
    assert (first.value, second.value) == pytest.approx(metres, rel=1e-14)


@pytest.mark.parametrize(("text", "code"), [
    ("12'", "not-a-pair"), ("12' x 9' x 8'", "not-a-pair"), ("x 9'", "not-a-pair"),
    ("12' x", "not-a-pair"), ("", "empty"),
    ("12' x nine", "not-a-number"), ("3,8 x 2,4 m", "comma"), ("12' x 9 gpm", "wrong-unit"),
    ("1" * 90, "too-long"),
])  # fmt: skip
def test_what_is_no_pair(text, code):
    with pytest.raises(NotationError) as caught:
        read_pair(text, US)
    assert caught.value.code == code


@pytest.mark.parametrize(("text", "share"), [
    ("10 %", 0.1), ("10%", 0.1), ("± 10 %", 0.1), ("+/- 10 percent", 0.1), ("+-10%", 0.1),
    ("12.5 %", 0.125), ("0.5 %", 0.005),
    ("-5 %", -0.05), ("35 %", 0.35),
])  # fmt: skip
def test_percent(text, share):
    assert read_percent(text) == share


@pytest.mark.parametrize(("text", "code", "offers"), [
    ("10", "no-unit", ("10 %",)), ("0.1", "no-unit", ("0.1 %", "10 %")), ("10 ft", "wrong-unit", ("10 %",)),
    ("ten", "not-a-number", ()), ("", "empty", ()), ("12,5 %", "comma", ("12.5 %", "125 %")),
    ("12,5 ft", "comma", ()),
])  # fmt: skip
def test_what_is_no_percent(text, code, offers):
    with pytest.raises(NotationError) as caught:
        read_percent(text)
    assert (caught.value.code, caught.value.offers) == (code, offers)
    assert all(isfinite(read_percent(offer)) for offer in offers)
