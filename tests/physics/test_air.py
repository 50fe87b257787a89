"""Claim: the heat of outdoor air follows pressure, temperature and flow. Computed cases and laws."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from heatledger.ledger.units import UNITS
from heatledger.physics.air import (
    air_conductance,
    air_flow,
    air_loss,
    air_loss_by_hand,
    air_volume_heat,
    dry_air_density,
    room_volume,
    site_pressure,
    volumes_total,
)
from heatledger.physics.infiltration import (
    basic_leakage_flow,
    changes_of,
    driving_force,
    enhanced_leakage_flow,
    infiltration_by_n50,
    infiltration_flow,
    room_air_flow,
)
from heatledger.physics.ventilation import (
    balanced_flow,
    flow_loss,
    flow_loss_by_hand,
    joined_flow,
    recovered_air_loss,
    unbalanced_flow,
    whole_house_ventilation,
    whole_house_ventilation_us,
)


def si(value, unit):
    return UNITS[unit].to_si(value)


def fahrenheit(value):
    return UNITS["°F"].to_si(value, absolute=True)


@pytest.mark.parametrize(
    ("feet", "ratio"),
    [(0, 1.0), (1000, 0.9644), (3000, 0.8962), (5280, 0.8234), (7000, 0.7716), (10000, 0.6877)],
)
def test_air_thins_with_height(feet, ratio):
    """Computed: pressure of the standard atmosphere over that at sea level."""
    assert site_pressure(elevation=si(feet, "ft")) / site_pressure(elevation=0.0) == pytest.approx(
        ratio, abs=5e-5
    )


def test_standard_density():
    """Computed: 0.07489 lb/ft³ at 70 °F and one atmosphere."""
    density = dry_air_density(pressure=101325.0, temperature=fahrenheit(70))
    assert UNITS["lb/ft³"].from_si(density) == pytest.approx(0.07489, abs=2e-5)


def test_a_room_by_hand_and_at_height():
    """Computed: 15 by 12 by 8 ft, 0.6 changes, 65 °F; by the 0.018, and at the pressure of 5,280 ft."""
    volume = room_volume(floor_area=si(180, "ft²"), ceiling_height=si(8, "ft"))
    room = {"volume": volume, "changes": si(0.6, "ACH"), "indoor": fahrenheit(70), "outdoor": fahrenheit(5)}
    assert UNITS["Btu/h"].from_si(air_loss_by_hand(**room)) == pytest.approx(1010.88, abs=0.01)
    thin = site_pressure(elevation=si(5280, "ft")) / site_pressure(elevation=0.0)
    heat = si(0.018, "Btu/(ft³·°F)") * thin
    assert UNITS["Btu/h"].from_si(air_loss(**room, air_heat=heat)) == pytest.approx(832.324, abs=0.05)
    assert flow_loss_by_hand(
        flow=air_flow(volume=volume, changes=si(0.6, "ACH")), indoor=fahrenheit(70), outdoor=fahrenheit(5)
    ) == pytest.approx(air_loss_by_hand(**room))


@given(volume=st.floats(1, 2000), changes=st.floats(0, 1e-3), out=st.floats(230, 290))
def test_all_ways_to_the_loss_by_air_agree(volume, changes, out):
    heat = air_volume_heat(
        density=dry_air_density(pressure=site_pressure(elevation=300.0), temperature=294.15)
    )
    loss = air_loss(volume=volume, changes=changes, air_heat=heat, indoor=294.15, outdoor=out)
    by_flow = flow_loss(
        flow=air_flow(volume=volume, changes=changes), air_heat=heat, indoor=294.15, outdoor=out
    )
    per_degree = air_conductance(volume=volume, changes=changes, air_heat=heat)
    assert loss == pytest.approx(by_flow) == pytest.approx(per_degree * (294.15 - out))


@given(volumes=st.lists(st.floats(1, 500), min_size=1, max_size=12))
def test_rooms_with_one_air_change_sum_to_the_house(volumes):
    rooms = [air_conductance(volume=each, changes=1e-4, air_heat=1200.0) for each in volumes]
    whole = air_conductance(volume=volumes_total(volumes=volumes), changes=1e-4, air_heat=1200.0)
    assert sum(rooms) == pytest.approx(whole)


def test_basic_leakage_model():
    """Computed: one story, 600 cm², 35 K, 5 m/s."""
    flow = basic_leakage_flow(
        leakage_area=si(600, "cm²"), stories=1.0, wind=0.000104, difference=35.0, wind_speed=5.0
    )
    assert flow == pytest.approx(0.05256425, abs=1e-8)
    assert UNITS["ACH"].from_si(changes_of(flow=flow, volume=300.0)) == pytest.approx(0.6307710, abs=1e-7)


def test_enhanced_leakage_model():
    """Computed: stack and wind together; each alone when the other is left out."""
    house = {
        "flow_at_1_pa": 0.05, "exponent": 0.67, "stack": 0.089, "wind": 0.156, "shelter": 0.64,
        "difference": 39.0, "wind_speed": 6.7,
    }  # fmt: skip
    assert enhanced_leakage_flow(**house) == pytest.approx(0.07546014, abs=1e-8)
    assert enhanced_leakage_flow(**house | {"wind": 0.0}) == pytest.approx(0.05180519, abs=1e-8)
    assert enhanced_leakage_flow(**house | {"stack": 0.0}) == pytest.approx(0.05486761, abs=1e-8)


def test_driving_force_with_a_flue():
    """Computed: 600 cm² of which 90 are the flue, 5 m, 40 K."""
    force = driving_force(height=5.0, indoor=293.15, outdoor=253.15, flue=90 / 600)
    assert force * si(1, "cm²") / si(1, "L/s") == pytest.approx(0.1279, abs=5e-5)
    flow = infiltration_flow(leakage=si(600, "cm²"), force=force)
    assert UNITS["L/s"].from_si(flow) == pytest.approx(76.74, abs=0.005)
    assert UNITS["ACH"].from_si(changes_of(flow=flow, volume=450.0)) == pytest.approx(0.61392, abs=1e-5)


def test_a_room_by_its_test_at_50_pa():
    """Computed: leaks, the least it needs, and the larger of both."""
    leak = infiltration_by_n50(volume=75.0, at_50=si(6, "ACH"), shielding=0.03, height_factor=1.0)
    least = air_flow(volume=75.0, changes=si(0.5, "ACH"))
    flow = room_air_flow(infiltration=leak, minimum=least)
    assert [UNITS["m³/h"].from_si(each) for each in (leak, least, flow)] == [
        pytest.approx(27.0), pytest.approx(37.5), pytest.approx(37.5),
    ]  # fmt: skip
    loss = flow_loss(flow=flow, air_heat=si(0.34, "Wh/(m³·K)"), indoor=293.15, outdoor=261.15)
    assert loss == pytest.approx(408.0)
    small = infiltration_by_n50(volume=50.0, at_50=si(4, "ACH"), shielding=0.03, height_factor=1.0)
    assert UNITS["m³/h"].from_si(small) == pytest.approx(12.0, abs=1e-4)


@pytest.mark.parametrize(
    ("supply", "exhaust", "balanced", "unbalanced", "leaking", "with_recovery", "without"),
    [
        (90, 90, 90, 0, 80, 8089.2, 12852.0),
        (0, 90, 0, 90, 125, 9450.0, 9450.0),
        (120, 60, 60, 60, 110, 9676.8, 12852.0),
    ],
)
def test_fans_and_leaks_together(supply, exhaust, balanced, unbalanced, leaking, with_recovery, without):
    """Computed: 80 cfm of leaks, 70 °F, 1.08 Btu/h for each cfm, 70 % recovered."""
    fans = {"supply": si(supply, "cfm"), "exhaust": si(exhaust, "cfm")}
    even, uneven = balanced_flow(**fans), unbalanced_flow(**fans)
    through = joined_flow(infiltration=si(80, "cfm"), unbalanced=uneven)
    assert [UNITS["cfm"].from_si(each) for each in (even, uneven, through)] == [
        pytest.approx(each, abs=1e-9) for each in (balanced, unbalanced, leaking)
    ]
    for recovered, loss in ((0.7, with_recovery), (0.0, without)):
        got = recovered_air_loss(
            leaking=through, recovered=even, other=0.0, effectiveness=recovered,
            air_heat=si(0.018, "Btu/(ft³·°F)"), indoor=fahrenheit(70), outdoor=fahrenheit(0),
        )  # fmt: skip
        assert UNITS["Btu/h"].from_si(got) == pytest.approx(loss, abs=0.01)


@given(area=st.floats(30, 600), bedrooms=st.integers(1, 8))
def test_the_two_forms_of_the_ventilation_rule_nearly_agree(area, bedrooms):
    """Derived: the metric coefficients are rounded down, by 1.6 % at most."""
    metric = whole_house_ventilation(floor_area=area, bedrooms=bedrooms)
    inch_pound = whole_house_ventilation_us(floor_area=area, bedrooms=bedrooms)
    assert 0 <= 1 - metric / inch_pound <= 0.017
