"""Claim: valves, circulators and boilers take and give the heads of cases worked out independently."""

import math

import pytest

from heatledger.physics.fittings import (
    coefficient_for_excess,
    coefficient_for_head,
    coefficient_head,
    equivalent_length,
    fittings_length,
    fittings_total,
    loss_coefficient,
    tube_length,
    valve_head,
)
from heatledger.physics.friction import pressure_of_head
from heatledger.physics.pumps import boiler_head, curve_exponent, head_left, hydraulic_power, pump_head
from tests.physics.hydraulics import si

FEET = {"shutoff": si(20, "ft"), "middle_head": si(16, "ft"), "middle_flow": si(10, "gpm")}
EXPONENT = curve_exponent(
    shutoff=si(20, "ft"), middle_head=si(16, "ft"), high_head=si(6, "ft"), middle_flow=si(10, "gpm"),
    high_flow=si(20, "gpm"),
)  # fmt: skip


def crossing(needs):
    """The flow at which a pump gives what a system needs."""
    low, high = 0.0, si(40, "gpm")
    for _ in range(200):
        middle = (low + high) / 2
        if pump_head(flow=middle, exponent=EXPONENT, **FEET) > needs(middle):
            low = middle
        else:
            high = middle
    return low


def test_the_curve_goes_through_its_points():
    assert pytest.approx(1.80735492, rel=1e-8) == EXPONENT
    for flow, head in ((0, 20), (10, 16), (20, 6), (15, 11.67624)):
        got = pump_head(flow=si(flow, "gpm"), exponent=EXPONENT, **FEET)
        assert got == pytest.approx(si(head, "ft"), rel=1e-6)
    metric = curve_exponent(shutoff=6, middle_head=4.8, high_head=1.8, middle_flow=0.5e-3, high_flow=1e-3)
    assert metric == pytest.approx(1.80735492, rel=1e-8)
    # The factor of the plain form, head = 6 - B × flow to the exponent, in meters and cubic meters a second.
    assert 1.2 / 0.5e-3**metric == pytest.approx(1109977.196, rel=1e-6)


def test_operating_point():
    flow = crossing(lambda each: si(8, "ft") * (each / si(10, "gpm")) ** 1.75)
    assert flow == pytest.approx(si(13.34729, "gpm"), rel=1e-4)
    assert pump_head(flow=flow, exponent=EXPONENT, **FEET) == pytest.approx(si(13.25953, "ft"), rel=1e-4)


@pytest.mark.parametrize(
    ("gpm", "feet", "density", "watts"),
    [(10, 16, 999.09, 30.1454), (10, 16, 970.46, 29.2816), (5, 8, 983.26, 7.41697)],
)
def test_power_in_the_water(gpm, feet, density, watts):
    got = hydraulic_power(flow=si(gpm, "gpm"), head=si(feet, "ft"), density=density)
    assert got == pytest.approx(watts, rel=2e-4)


def test_boiler_head_errs_high_on_either_side():
    rated = {"rated_flow": si(10, "gpm"), "rated_head": si(12, "ft")}
    assert boiler_head(flow=si(5, "gpm"), **rated) == pytest.approx(si(3.57, "ft"), rel=5e-3)
    assert boiler_head(flow=si(20, "gpm"), **rated) == pytest.approx(si(48, "ft"))
    assert boiler_head(flow=si(10, "gpm"), **rated) == pytest.approx(si(12, "ft"))
    assert head_left(given=si(12, "ft"), taken=[si(2, "ft"), si(1, "ft")]) == pytest.approx(si(9, "ft"))


@pytest.mark.parametrize(("cv", "bore", "k"), [(10, 0.811, 3.8514), (3.5, 0.569, 7.6182)])
def test_flow_coefficient_and_loss_coefficient(cv, bore, k):
    assert loss_coefficient(flow_coefficient=si(cv, "Cv"), bore=si(bore, "in")) == pytest.approx(k, rel=5e-4)


def test_head_of_a_valve_is_that_of_its_loss_coefficient():
    cv, bore, flow = si(3.5, "Cv"), si(0.569, "in"), si(2, "gpm")
    speed = 4 * flow / (math.pi * bore**2)
    k = loss_coefficient(flow_coefficient=cv, bore=bore)
    assert coefficient_head(loss_coefficient=k, velocity=speed) == pytest.approx(
        valve_head(flow=flow, flow_coefficient=cv)
    )
    # 2.3088 ft for 1 gpm through a Cv of 1, however hot the water.
    assert valve_head(flow=si(1, "gpm"), flow_coefficient=si(1, "Cv")) == pytest.approx(
        si(2.3088, "ft"), rel=1e-4
    )


def test_balancing_valve():
    head, flow = si(4.2, "ft"), si(1.5, "gpm")
    setting = coefficient_for_head(flow=flow, head=head)
    assert setting == pytest.approx(si(1.112170, "Cv"), rel=5e-4)
    assert setting == pytest.approx(si(0.962003, "Kv"), rel=5e-4)
    assert pressure_of_head(density=983.26, head=head) == pytest.approx(si(1.790337, "psi"), rel=5e-4)
    assert valve_head(flow=flow, flow_coefficient=setting) == pytest.approx(head)
    longest = si(6.7, "ft")
    assert coefficient_for_excess(flow=flow, needed=longest, own=longest - head) == pytest.approx(setting)


def test_lengths_of_fittings():
    elbows = fittings_length(count=12, equivalent_length=si(2, "ft"))
    tees = fittings_length(count=2, equivalent_length=si(3, "ft"))
    assert fittings_total(lengths=[elbows, tees]) == pytest.approx(si(30, "ft"))
    assert tube_length(lengths=[si(10, "ft"), si(6, "ft")]) == pytest.approx(si(16, "ft"))
    one = equivalent_length(loss_coefficient=0.9, bore=si(1.049, "in"), friction_factor=0.030)
    assert one == pytest.approx(si(2.6225, "ft"), rel=1e-4)
