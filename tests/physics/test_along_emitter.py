"""The exact law along an emitter: cases worked out by hand, an integration of its own, laws of balance."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from heatledger.physics import along_emitter as law
from heatledger.physics.emitters import needed_length
from tests.physics.baseboard import BTUH, FIVE_HUNDRED, FOOT, Element, f, factor, falls, in_f, through

EXPONENTS = st.floats(1.05, 1.6)
RATIOS = st.floats(0.05, 2.0)
CARRYING = st.floats(0.3, 60.0)


def test_one_element_by_the_exact_law():
    element = Element(24, 1.0, 68)
    assert element.outlet(180) == pytest.approx(159.8433, abs=1e-3)
    assert element.output(180) == pytest.approx(10078.33, abs=0.1)


def test_one_element_at_low_flow():
    element = Element(40, 0.25, 68)
    assert element.outlet(180) == pytest.approx(107.2573, abs=1e-3)
    assert element.output(180) == pytest.approx(9092.84, abs=0.1)


def lengths_of_loop(supply: float, loads: list[tuple[float, float]], gpm: float) -> list[float]:
    """Feet that each room of a loop needs, one behind the other."""
    capacity, found, inlet = FIVE_HUNDRED * gpm, [], f(supply)
    for load, room in loads:
        outlet = law.outlet_at_load(inlet=inlet, load=load * BTUH, capacity=capacity)
        into, left = ((each - f(room)) / Element.excess for each in (inlet, outlet))
        needed = law.needed_rated(
            inlet_ratio=into, outlet_ratio=left, capacity=capacity, excess=Element.excess, exponent=1.4
        )
        found.append(needed_length(needed=needed, rating=500 * BTUH / FOOT * factor(gpm)) / FOOT)
        inlet = outlet
    return found


def test_a_loop_is_sized_one_behind_the_other():
    found = lengths_of_loop(180, [(7000, 70), (4500, 70), (6000, 68), (3500, 70)], 1.5)
    assert found == pytest.approx([15.5936, 11.1368, 15.9910, 10.6370], abs=5e-4)


def test_a_loop_with_lengths_that_are_there():
    elements = [Element(feet, 1.5, room) for feet, room in ((17, 70), (12, 70), (17, 68), (11, 70))]
    waters = through(elements, 180)
    assert waters[1:] == pytest.approx([169.8801, 163.5056, 155.1720, 150.4670], abs=1e-3)
    assert [750 * each for each in falls(waters)] == pytest.approx(
        [7589.92, 4780.86, 6250.24, 3528.73], abs=0.1
    )


def test_a_split_loop():
    one, two = Element(28, 0.9, 70), Element(20, 0.6, 70)
    assert (one.outlet(180), two.outlet(180)) == pytest.approx((155.5350, 154.4357), abs=1e-3)
    assert (one.output(180), two.output(180)) == pytest.approx((11009.25, 7669.29), abs=0.1)
    assert (0.9 * one.outlet(180) + 0.6 * two.outlet(180)) / 1.5 == pytest.approx(155.0953, abs=1e-3)


def test_an_exact_mean_of_a_loop_element_gives_its_output():
    mean = law.exact_mean_excess(supply=f(180), return_=f(159.8433), air=f(68), exponent=1.4)
    assert 24 * 500 * (mean / Element.excess) ** 1.4 == pytest.approx(10078.33, abs=0.5)


@pytest.mark.parametrize(
    ("supply", "back", "output"), [(55, 46.00045, 627.869), (55, 45.09431, 460.725)], ids=["1200", "900"]
)
def test_two_radiators_side_by_side(supply, back, output):
    """Worked out with the logarithmic mean, from which the exact one keeps within 0.1 % here."""
    kilograms, rated = (60, 1200) if output > 500 else (40, 900)
    capacity = kilograms / 3600 * 4186
    excess = law.exact_mean_excess(supply=348.15, return_=338.15, air=293.15, exponent=1.3)
    carrying = law.carrying_ratio(capacity=capacity, excess=excess, rated=rated)
    left = law.outlet_ratio(inlet_ratio=35 / excess, carrying=carrying, exponent=1.3)
    assert 20 + left * excess == pytest.approx(back, abs=0.02)
    assert capacity * (supply - 20 - left * excess) == pytest.approx(output, rel=1e-3)


def stepped(inlet_ratio: float, carrying: float, exponent: float, steps: int = 400) -> float:
    """Excess at the outlet by Runge-Kutta's method along the element, which knows no closed form."""
    x, h = inlet_ratio, 1 / steps
    for _ in range(steps):
        slopes = []
        for part in (0.0, 0.5, 0.5, 1.0):
            at = x + part * h * (slopes[-1] if slopes else 0.0)
            slopes.append(-(max(at, 0.0) ** exponent) / carrying)
        x += h * (slopes[0] + 2 * slopes[1] + 2 * slopes[2] + slopes[3]) / 6
    return x


@given(RATIOS, CARRYING, EXPONENTS)
def test_the_law_agrees_with_steps_along_the_element(inlet_ratio, carrying, exponent):
    found = law.outlet_ratio(inlet_ratio=inlet_ratio, carrying=carrying, exponent=exponent)
    assert found == pytest.approx(stepped(inlet_ratio, carrying, exponent), rel=1e-7)


@given(st.lists(st.tuples(st.floats(2, 40), st.floats(58, 74)), min_size=1, max_size=12), st.floats(0.5, 6))
def test_a_loop_agrees_with_steps_along_it(parts, gpm):
    """The whole loop in small steps of length, each cooled by what its water gives at its own excess."""
    waters = through([Element(feet, gpm, room) for feet, room in parts], 190)
    water = 190.0
    for (feet, room), behind in zip(parts, waters[1:], strict=True):
        excess = stepped((water - room) / 115, 500 * gpm * 115 / (500 * feet * factor(gpm)), 1.4)
        water = room + 115 * excess
        assert water == pytest.approx(behind, abs=1e-5)


@given(RATIOS, CARRYING, EXPONENTS)
def test_back_along_the_element_is_where_it_came_from(inlet_ratio, carrying, exponent):
    left = law.outlet_ratio(inlet_ratio=inlet_ratio, carrying=carrying, exponent=exponent)
    back = law.inlet_ratio_for(outlet_ratio=left, carrying=carrying, exponent=exponent)
    assert back == pytest.approx(inlet_ratio, rel=1e-6)


@given(RATIOS, CARRYING, EXPONENTS)
def test_what_is_needed_is_what_is_there(inlet_ratio, carrying, exponent):
    left = law.outlet_ratio(inlet_ratio=inlet_ratio, carrying=carrying, exponent=exponent)
    rated = law.needed_rated(
        inlet_ratio=inlet_ratio, outlet_ratio=left, capacity=100.0, excess=50.0, exponent=exponent
    )
    assert 100.0 * 50.0 / rated == pytest.approx(carrying, rel=1e-6)


@given(RATIOS, CARRYING, EXPONENTS)
def test_an_emitter_gives_what_its_water_loses(inlet_ratio, carrying, exponent):
    """By the exact mean excess on one side, by the fall of the water on the other."""
    rated, excess = 1000.0, 50.0
    capacity = carrying * rated / excess
    left = law.outlet_ratio(inlet_ratio=inlet_ratio, carrying=carrying, exponent=exponent)
    supply, back = 290.0 + inlet_ratio * excess, 290.0 + left * excess
    mean = law.exact_mean_excess(supply=supply, return_=back, air=290.0, exponent=exponent)
    given_off = rated * (mean / excess) ** exponent
    assert given_off == pytest.approx(law.heat_given(capacity=capacity, inlet=supply, outlet=back), rel=1e-6)


@given(RATIOS, CARRYING, EXPONENTS)
def test_the_inlet_that_gives_a_load_is_found_in_two_corrections(inlet_ratio, carrying, exponent):
    left = law.outlet_ratio(inlet_ratio=inlet_ratio, carrying=carrying, exponent=exponent)
    drop = inlet_ratio - left
    mean = law.mean_ratio_needed(load=drop * carrying * 1000.0, rated=1000.0, exponent=exponent)
    found = law.inlet_ratio_by_mean(mean_ratio=mean, drop_ratio=drop, exponent=exponent)
    for _ in range(2):
        behind = law.outlet_ratio(inlet_ratio=found, carrying=carrying, exponent=exponent)
        found = law.closer_inlet_ratio(
            inlet_ratio=found, outlet_ratio=behind, drop_ratio=drop, exponent=exponent
        )
    assert found == pytest.approx(inlet_ratio, rel=1e-8)


@given(RATIOS, CARRYING)
def test_an_exponent_of_one_is_the_limit_of_those_above_it(inlet_ratio, carrying):
    one, near = (
        law.outlet_ratio(inlet_ratio=inlet_ratio, carrying=carrying, exponent=n) for n in (1.0, 1 + 1e-7)
    )
    assert one == pytest.approx(near, rel=1e-5)
    supply, back = 300.0 + 50 * inlet_ratio, 300.0 + 50 * one
    means = [
        law.exact_mean_excess(supply=supply, return_=back, air=300.0, exponent=n) for n in (1.0, 1 + 1e-7)
    ]
    assert means[0] == pytest.approx(means[1], rel=1e-5)
    assert law.needed_rated(
        inlet_ratio=inlet_ratio, outlet_ratio=one, capacity=100.0, excess=50.0, exponent=1.0
    ) == pytest.approx(5000 / carrying, rel=1e-6)
    assert law.inlet_ratio_for(outlet_ratio=one, carrying=carrying, exponent=1.0) == pytest.approx(
        inlet_ratio
    )


def test_cold_water_and_no_flow():
    assert law.outlet_ratio(inlet_ratio=-0.2, carrying=5.0, exponent=1.4) == -0.2, (
        "an emitter never cools a room"
    )
    assert law.outlet_ratio(inlet_ratio=0.9, carrying=0.0, exponent=1.4) == 0.0, (
        "water at rest ends at the room's"
    )
    assert law.exact_mean_excess(supply=350.0, return_=350.0, air=300.0, exponent=1.3) == 50.0


def test_more_water_gives_more_heat_up_to_a_limit():
    outputs = [Element(20, gpm, 70).output(180) / factor(gpm) for gpm in (0.25, 0.5, 1, 2, 4, 50)]
    assert all(a < b for a, b in pairwise(outputs))
    assert outputs[-1] < 20 * 500 * (110 / 115) ** 1.4


def test_the_mean_water_of_a_display():
    assert in_f(law.mean_water(inlet=f(180), outlet=f(160))) == pytest.approx(170)
    assert law.inlet_at_load(outlet=340.0, load=500.0, capacity=100.0) == 345.0
    assert law.drop_ratio_of_load(load=1000.0, capacity=100.0, excess=50.0) == pytest.approx(0.2)
