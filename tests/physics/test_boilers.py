"""Claim: plates, factors, cycles and flows agree with one another and with cases worked out apart."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from heatledger.ledger.units import UNITS
from heatledger.physics.boilers import (
    altitude_factor,
    altitude_factor_above,
    at_height,
    height_made_up,
    load_over_loss,
    loss_factors,
    output_of,
    output_ratio,
    plant_load,
    plate_factors,
    return_at_design,
)
from heatledger.physics.firing import (
    boiler_rise,
    buffer_volume,
    burner_off,
    burner_on,
    least_flow,
    most_starts,
    season_efficiency,
    starts_in_an_hour,
    stored_heat,
    turndown,
)

EASY_WATER = 500.0


def si(value, unit, absolute=False):
    return UNITS[unit].to_si(value, absolute)


def test_two_readings_of_the_height_rule():
    """Computed: 80,000 Btu/h at 5,000 ft: 64,000 by the code, 70,400 by the milder reading."""
    rated, height = si(80_000, "Btu/h"), si(5000, "ft")
    for factor, expected in ((altitude_factor, 64_000), (altitude_factor_above, 70_400)):
        got = at_height(rated=rated, altitude=factor(elevation=height))
        assert UNITS["Btu/h"].from_si(got) == pytest.approx(expected)
    assert altitude_factor(elevation=si(-100, "ft")) == 1
    assert altitude_factor(elevation=si(2001, "ft")) == pytest.approx(1 - 0.04 * 2.001)


@pytest.mark.parametrize(("rise", "gpm"), [(40, 5.0), (35, 5.71), (20, 10.0)])
def test_lowest_flow(rise, gpm):
    """Computed: 100,000 Btu/h with the trade's 500."""
    flow = least_flow(
        fire=si(100_000, "Btu/h"), water_heat=si(EASY_WATER, "Btu/(h·gpm·°F)"), largest_rise=si(rise, "°F")
    )
    assert UNITS["gpm"].from_si(flow) == pytest.approx(gpm, rel=5e-3)


def test_rise_of_a_small_flow():
    """Computed: 80,000 Btu/h at 3 gpm is 53 °F."""
    rise = boiler_rise(
        fire=si(80_000, "Btu/h"), flow=si(3, "gpm"), water_heat=si(EASY_WATER, "Btu/(h·gpm·°F)")
    )
    assert UNITS["°F"].from_si(rise) == pytest.approx(53.3, abs=0.1)


@pytest.mark.parametrize(
    ("gallons", "iron", "on", "off", "starts"), [(12, 300, 10.9, 18.1, 2.07), (3, 60, 2.6, 4.3, 8.74)]
)
def test_cycles(gallons, iron, on, off, starts):
    """Computed: 24,000 Btu/h for 9,000 Btu/h, 20 °F."""
    stored = stored_heat(water=si(gallons, "gal"), iron=si(iron, "lb"), differential=si(20, "°F"))
    least, load = si(24_000, "Btu/h"), si(9_000, "Btu/h")
    running = burner_on(stored=stored, least_output=least, load=load)
    resting = burner_off(stored=stored, load=load)
    assert UNITS["min"].from_si(running) == pytest.approx(on, abs=0.05)
    assert UNITS["min"].from_si(resting) == pytest.approx(off, abs=0.05)
    assert starts_in_an_hour(on=running, off=resting) == pytest.approx(starts, rel=1e-2)
    assert most_starts(stored=stored, least_output=least) >= starts_in_an_hour(on=running, off=resting)


def test_most_starts():
    stored = stored_heat(water=si(12, "gal"), iron=si(300, "lb"), differential=si(20, "°F"))
    assert most_starts(stored=stored, least_output=si(24_000, "Btu/h")) == pytest.approx(2.21, rel=1e-2)


@given(least=st.floats(1000, 20000), share=st.floats(0.01, 0.99), minutes=st.floats(1, 60))
def test_a_buffer_keeps_the_burner_on_as_long_as_asked(least, share, minutes):
    load, rise = share * least, 11.0
    volume = buffer_volume(time=60 * minutes, least_output=least, load=load, rise=rise)
    stored = stored_heat(water=volume, iron=0.0, differential=rise)
    assert burner_on(stored=stored, least_output=least, load=load) == pytest.approx(60 * minutes)


def test_idle_boilers():
    """Computed: steady 86 %, idle 2 %, part load 0.15: 77.2 %."""
    assert season_efficiency(steady=0.86, idle=0.02, part_load=0.15) == pytest.approx(0.772, abs=2e-3)
    table = {1.0: (0.850, 0.822, 0.787), 2.0: (0.836, 0.772, 0.701), 3.0: (0.823, 0.729, 0.632)}
    for oversize, row in table.items():
        for idle, expected in zip((0.005, 0.02, 0.04), row, strict=True):
            got = season_efficiency(steady=0.86, idle=idle, part_load=0.30 / oversize)
            assert got == pytest.approx(expected, abs=1.5e-3)


def test_turndown():
    assert turndown(output=30_000.0, least_output=6_000.0) == 5


@given(
    loss=st.floats(2000, 60000), mains=st.floats(0, 3000), height=st.floats(0, 3000), chosen=st.floats(0.5, 4)
)
def test_the_factors_multiply_to_the_plate(loss, mains, height, chosen):
    load = plant_load(parts=[loss, mains])
    factor = altitude_factor(elevation=height)
    rated = chosen * load / factor
    to_load = loss_factors(
        loss=1.0, heating_effect=1.0, pick_up=1.0, mains=load_over_loss(load=load, loss=loss)
    )
    product = plate_factors(
        load_factor=to_load,
        altitude=height_made_up(altitude=factor),
        selection=output_ratio(output=at_height(rated=rated, altitude=factor), load=load),
    )
    assert product == pytest.approx(rated / loss)


@given(supply=st.floats(300, 370), drop=st.floats(1, 30), flow=st.floats(1e-5, 1e-2))
def test_the_boiler_lifts_what_comes_back_to_the_supply(supply, drop, flow):
    back = return_at_design(supply=supply, drop=drop)
    fire = flow * 4.1e6 * drop
    assert back + boiler_rise(fire=fire, flow=flow, water_heat=4.1e6) == pytest.approx(supply)
    assert least_flow(fire=fire, water_heat=4.1e6, largest_rise=drop) == pytest.approx(flow)
    assert output_of(input=fire / 0.9, efficiency=0.9) == pytest.approx(fire)
