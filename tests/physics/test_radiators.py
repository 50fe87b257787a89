"""Radiators: cases worked out by hand, and the means against the exact one."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from heatledger.ledger.units import UNITS
from heatledger.physics.along_emitter import carrying_ratio, exact_mean_excess, outlet_ratio
from heatledger.physics.emitter_loads import (
    equal_part,
    given_share,
    heat_needed,
    lengths_total,
    load_at_share,
    loads_total,
    mean_water_by_drop,
    outputs_total,
    over,
    part_of_flow,
    part_of_load,
)
from heatledger.physics.radiators import (
    arithmetic_excess,
    iron_weight,
    log_mean_excess,
    needed_excess,
    needed_mean_water,
    output_at_excess,
    output_of_radiation,
    radiation_of_sections,
    return_by_arithmetic_mean,
    steam_output,
)
from tests.physics.baseboard import BTUH

ROOM = 293.15


def mean(kind, supply, back, room=20.0):
    return kind(supply=supply + 273.15, return_=back + 273.15, air=room + 273.15)


def test_a_rating_at_cooler_water():
    arithmetic = [mean(arithmetic_excess, *each) for each in ((75, 65), (55, 45))]
    assert output_at_excess(
        rated=1.0, excess=arithmetic[1], rated_excess=arithmetic[0], exponent=1.3
    ) == pytest.approx(0.514750, abs=1e-5)
    logs = [mean(log_mean_excess, *each) for each in ((75, 65), (55, 45))]
    assert logs == pytest.approx([49.83289, 29.72013], abs=1e-4)
    assert output_at_excess(rated=1.0, excess=logs[1], rated_excess=logs[0], exponent=1.3) == pytest.approx(
        0.510734, abs=1e-5
    )


@pytest.mark.parametrize(
    ("supply", "back", "arithmetic", "log", "by_13"),
    [
        (90, 70, 60.0, 59.440, 1.2675),
        (80, 60, 50.0, 49.326, 1.0),
        (70, 55, 42.5, 42.055, 0.8096),
        (65, 55, 40.0, 39.791, 0.7482),
        (60, 50, 35.0, 34.761, 0.6290),
        (45, 35, 20.0, 19.576, 0.3039),
        (35, 30, 12.5, 12.332, 0.1649),
    ],
)
def test_the_table_of_conversions(supply, back, arithmetic, log, by_13):
    assert mean(arithmetic_excess, supply, back) == pytest.approx(arithmetic)
    assert mean(log_mean_excess, supply, back) == pytest.approx(log, abs=6e-4)
    found = output_at_excess(rated=1.0, excess=arithmetic, rated_excess=50.0, exponent=1.3)
    assert found == pytest.approx(by_13, abs=6e-5)


def test_water_that_a_load_needs():
    excess = needed_excess(load=1100.0, rated=1800.0, rated_excess=50.0, exponent=1.3)
    assert excess == pytest.approx(34.2332, abs=1e-3)
    assert needed_mean_water(air=ROOM, excess=excess) - 273.15 == pytest.approx(54.2332, abs=1e-3)
    assert needed_excess(load=0.0, rated=1800.0, rated_excess=50.0, exponent=1.3) == 0


def test_a_panel_in_trade_units():
    found = output_at_excess(rated=6141.856, excess=112 / 1.8, rated_excess=50.0, exponent=1.3)
    assert found == pytest.approx(8161.458, abs=0.05)


def test_old_iron_on_water():
    square_feet = UNITS["ft²"].to_si(56.0)
    steam = steam_output(edr=square_feet)
    assert steam / BTUH == pytest.approx(13440, abs=0.1)
    assert output_of_radiation(
        edr=square_feet, rating=240 * UNITS["Btu/(h·ft²)"].to_si(1.0)
    ) == pytest.approx(steam)
    found = output_at_excess(rated=steam, excess=80 / 1.8, rated_excess=145 / 1.8, exponent=1.3)
    assert found / BTUH == pytest.approx(6203.52, abs=0.1)
    assert found == pytest.approx(1818.07, abs=0.1)
    assert radiation_of_sections(sections=7.0, section_edr=5.0) == 35
    assert iron_weight(edr=square_feet) == pytest.approx(56 * 7 * 0.45359237)


def test_the_arithmetic_mean_fails_at_half_the_load():
    excess = needed_excess(load=500.0, rated=1000.0, rated_excess=60.0, exponent=1.3)
    back = return_by_arithmetic_mean(supply=363.15, air=ROOM, excess=excess)
    assert back - 273.15 == pytest.approx(20.40763, abs=1e-3)
    rated_mean = exact_mean_excess(supply=363.15, return_=343.15, air=ROOM, exponent=1.3)
    capacity = 500.0 / (90 - 34.0875)
    carrying = carrying_ratio(capacity=capacity, excess=rated_mean, rated=1000.0)
    left = outlet_ratio(inlet_ratio=70 / rated_mean, carrying=carrying, exponent=1.3)
    assert 20 + left * rated_mean == pytest.approx(34.0875, abs=1.0), "the logarithmic mean is near"


@given(st.floats(0.5, 0.99), st.floats(1.05, 1.5))
def test_means_are_close_while_the_outlet_is_half_as_far_above_the_room(left, exponent):
    """What lets one law serve all kinds: output differs by less than 1 % between exact and logarithmic."""
    supply, back = ROOM + 60, ROOM + 60 * left
    exact = exact_mean_excess(supply=supply, return_=back, air=ROOM, exponent=exponent)
    log = log_mean_excess(supply=supply, return_=back, air=ROOM)
    arithmetic = arithmetic_excess(supply=supply, return_=back, air=ROOM)
    assert exact <= log * (1 + 1e-12) and log <= arithmetic * (1 + 1e-12)
    assert abs((exact / log) ** exponent - 1) < 0.015
    if exponent <= 1.3:
        assert abs((exact / log) ** exponent - 1) < 0.0085


def test_water_that_does_not_cool():
    assert log_mean_excess(supply=340.0, return_=340.0, air=300.0) == 40


def test_loads_and_their_parts():
    assert heat_needed(loss=-50.0) == 0
    assert heat_needed(loss=50.0) == 50
    assert part_of_load(load=900.0, output=1000.0, outputs=[1000.0, 500.0]) == 600
    assert equal_part(load=900.0, emitters=3.0) == 300
    assert (
        loads_total(loads=[1.0, 2.0])
        == outputs_total(outputs=[1.0, 2.0])
        == lengths_total(lengths=[1.0, 2.0])
        == 3
    )
    assert part_of_flow(flow=4.0, load=500.0, loads=[500.0, 1500.0]) == 1
    assert over(given=90.0, needed=100.0) == -10
    assert given_share(given=90.0, needed=100.0) == 0.9
    assert given_share(given=90.0, needed=0.0) == 1
    assert load_at_share(load=900.0, share=0.5) == 450
    assert mean_water_by_drop(supply=350.0, drop=10.0) == 345
