"""Claim: friction follows Colebrook's law and the laminar one, with one smooth curve between.

Witnesses: Colebrook's law solved by iteration, and cases worked out with an independent library.
"""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from heatledger.physics.friction import (
    flow_total,
    head_total,
    pipe_head,
    pressure_of_head,
    tube_volume,
    turbulent_slope,
)
from tests.physics.hydraulics import COPPER, PLASTIC, STEEL, factor_at, friction_of, si

# Tube, bore in, roughness, flow gpm, water kg/m³ and mm²/s, speed ft/s, Reynolds, factor, Pa/m, ft/100 ft.
POINTS = [
    ("M 1/2", 0.569, COPPER, 1.5, 983.26, 0.47401, 1.8926, 17589, 0.026929, 304.83, 3.1614),
    ("M 1/2", 0.569, COPPER, 2, 970.46, 0.35498, 2.5235, 31315, 0.023535, 467.45, 4.9117),
    ("M 3/4", 0.811, COPPER, 4, 999.09, 1.12198, 2.4843, 13902, 0.028480, 396.01, 4.0419),
    ("M 3/4", 0.811, COPPER, 4, 970.46, 0.35498, 2.4843, 43941, 0.021749, 293.75, 3.0866),
    ("M 3/4", 0.811, COPPER, 2, 983.26, 0.47401, 1.2422, 16454, 0.027310, 93.43, 0.9689),
    ("M 1", 1.055, COPPER, 8, 970.46, 0.35498, 2.9361, 67557, 0.019792, 287.03, 3.0160),
    ("M 1-1/4", 1.291, COPPER, 14, 977.19, 0.40680, 3.4314, 84307, 0.018869, 307.54, 3.2092),
    ("M 1-1/2", 1.527, COPPER, 22, 970.46, 0.35498, 3.8542, 128357, 0.017326, 299.14, 3.1432),
    ("M 2", 2.009, COPPER, 45, 970.46, 0.35498, 4.5545, 199557, 0.015881, 291.03, 3.0580),
    ("L 1/2", 0.545, COPPER, 1.5, 988.60, 0.56332, 2.0629, 15452, 0.027805, 392.55, 4.0491),
    ("L 3/4", 0.785, COPPER, 4, 970.46, 0.35498, 2.6516, 45397, 0.021604, 343.42, 3.6085),
    ("PEX 3/8", 0.360, PLASTIC, 0.6, 990.97, 0.61944, 1.8912, 8509, 0.033318, 599.90, 6.1730),
    ("PEX 1/2", 0.485, PLASTIC, 0.7, 993.11, 0.68569, 1.2156, 6657, 0.035203, 194.81, 2.0003),
    ("PEX 1/2", 0.485, PLASTIC, 1, 988.60, 0.56332, 1.7366, 11576, 0.030644, 344.51, 3.5535),
    ("PEX 1/2", 0.485, PLASTIC, 2, 983.26, 0.47401, 3.4733, 27513, 0.025374, 1134.89, 11.7696),
    ("PEX 5/8", 0.584, PLASTIC, 2, 988.60, 0.56332, 2.3955, 19226, 0.027121, 481.81, 4.9697),
    ("PEX 3/4", 0.681, PLASTIC, 3, 988.60, 0.56332, 2.6425, 24732, 0.025547, 473.60, 4.8851),
    ("PEX 1", 0.875, PLASTIC, 6, 988.60, 0.56332, 3.2013, 38497, 0.023110, 489.37, 5.0477),
    ("steel 1/2", 0.622, STEEL, 2, 970.46, 0.35498, 2.1117, 28647, 0.029935, 380.90, 4.0023),
    ("steel 3/4", 0.824, STEEL, 4, 970.46, 0.35498, 2.4066, 43248, 0.027300, 340.55, 3.5783),
    ("steel 1", 1.049, STEEL, 8, 970.46, 0.35498, 2.9698, 67944, 0.025087, 374.35, 3.9335),
    ("steel 1-1/4", 1.380, STEEL, 15, 970.46, 0.35498, 3.2175, 96838, 0.023212, 309.05, 3.2474),
    ("steel 2", 2.067, STEEL, 40, 970.46, 0.35498, 3.8244, 172407, 0.020726, 260.29, 2.7350),
    ("steel 3", 3.068, STEEL, 120, 970.46, 0.35498, 5.2079, 348466, 0.018514, 290.48, 3.0522),
    ("M 3/4, glycol", 0.811, COPPER, 4, 1012.30, 1.30735, 2.4843, 11931, 0.029608, 417.14, 4.2020),
    ("PEX 1/2, glycol", 0.485, PLASTIC, 0.4, 1042.87, 6.32886, 0.6947, 412, 0.155292, 294.67, 2.8813),
]  # fmt: skip
# The same in metric: bore mm, flow L/s, m/s, m/100 m.
METRIC = [
    ("Cu 15x1", 13, COPPER, 0.08, 983.26, 0.47401, 0.60272, 16530, 0.027363, 375.91, 3.8984),
    ("Cu 22x1", 20, COPPER, 0.25, 977.83, 0.41274, 0.79577, 38561, 0.022388, 346.57, 3.6141),
    ("PEX 16x2", 12, PLASTIC, 0.03, 994.10, 0.72340, 0.26526, 4400, 0.039417, 114.88, 1.1784),
    ("PEX 20x2", 16, PLASTIC, 0.08, 990.28, 0.60164, 0.39789, 10581, 0.031111, 152.42, 1.5695),
    ("steel DN25", 27.2, STEEL, 0.5, 977.83, 0.41274, 0.86048, 56707, 0.025428, 338.42, 3.5292),
]
# Reynolds number, roughness over bore, factor on the curve through the transition.
TRANSITION = [
    (2000, 1e-4, 0.032000), (2300, 1e-4, 0.029131), (2500, 1e-4, 0.029027), (3000, 1e-4, 0.032739),
    (3500, 1e-4, 0.038084), (4000, 1e-4, 0.040008), (3135, 5.6823e-4, 0.034502),
]  # fmt: skip


def colebrook(number, rough):
    """Colebrook's law by plain iteration, to the last digit."""
    root = 8.0
    for _ in range(200):
        after = -2 * math.log10(rough / 3.7 + 2.51 * root / number)
        if abs(after - root) < 1e-15:
            break
        root = after
    return 1 / root**2


@pytest.mark.parametrize("row", POINTS, ids=lambda row: f"{row[0]} at {row[3]}")
def test_friction_in_inch_pound_units(row):
    _, bore, rough, flow, density, viscosity, speed, number, factor, pascals, feet = row
    got = friction_of(si(flow, "gpm"), si(bore, "in"), rough, viscosity * 1e-6)
    assert got[0] == pytest.approx(si(speed, "ft/s"), rel=1e-4)
    assert got[1] == pytest.approx(number, rel=1e-3 if number < 1000 else 1e-4)
    assert got[2] == pytest.approx(factor, rel=2e-4)
    assert 100 * got[3] == pytest.approx(feet, rel=2e-4)
    assert pressure_of_head(density=density, head=got[3]) == pytest.approx(pascals, rel=2e-4)


@pytest.mark.parametrize("row", METRIC, ids=lambda row: row[0])
def test_friction_in_metric_units(row):
    _, bore, rough, flow, density, viscosity, speed, number, factor, pascals, meters = row
    got = friction_of(flow / 1000, bore / 1000, rough, viscosity * 1e-6)
    assert got[:2] == (pytest.approx(speed, rel=1e-4), pytest.approx(number, rel=1e-4))
    assert got[2] == pytest.approx(factor, rel=2e-4)
    assert 100 * got[3] == pytest.approx(meters, rel=2e-4)
    assert pressure_of_head(density=density, head=got[3]) == pytest.approx(pascals, rel=2e-4)


@pytest.mark.parametrize(("number", "rough", "factor"), TRANSITION)
def test_the_curve_through_the_transition(number, rough, factor):
    assert factor_at(number, rough) == pytest.approx(factor, rel=1e-4)


@given(st.floats(math.log(4000), math.log(1e8)), st.one_of(st.just(0.0), st.floats(1e-7, 0.05)))
def test_the_steps_arrive_at_colebrooks_law(number, rough):
    number = math.exp(number)
    assert factor_at(number, rough) == pytest.approx(colebrook(number, rough), rel=1e-5)


@given(st.one_of(st.just(0.0), st.floats(1e-7, 0.05)))
def test_no_jump_and_no_bend_where_the_laws_meet(rough):
    for end in (2000.0, 4000.0):
        below, above = factor_at(end - 1e-3, rough), factor_at(end + 1e-3, rough)
        assert below == pytest.approx(above, rel=1e-5)
        before = (factor_at(end - 1, rough) - factor_at(end - 2, rough)) * end / factor_at(end, rough)
        after = (factor_at(end + 2, rough) - factor_at(end + 1, rough)) * end / factor_at(end, rough)
        assert before == pytest.approx(after, abs=0.03)


@given(st.floats(2100, 1e6), st.floats(0, 0.02))
def test_head_rises_with_flow(number, rough):
    more = number * 1.01
    assert factor_at(more, rough) * more**2 > factor_at(number, rough) * number**2


def test_slope_of_the_turbulent_law():
    for rough in (0.0, 1e-4, 1e-3, 0.02):
        step = 1.0
        here = colebrook(4000, rough)
        by_steps = (colebrook(4000 + step, rough) - colebrook(4000 - step, rough)) / (2 * step) * 4000 / here
        assert turbulent_slope(root=here**-0.5, relative_roughness=rough) == pytest.approx(by_steps, rel=1e-5)


def test_standing_water_costs_no_head():
    speed, number, factor, rubs = friction_of(0.0, 0.02, COPPER, 5e-7)
    assert (speed, number, rubs) == (0.0, 0.0, 0.0)
    assert math.isfinite(factor)


def test_a_loop_of_copper():
    speed, number, factor, rubs = friction_of(si(4, "gpm"), si(0.811, "in"), COPPER, 0.40680e-6)
    assert (speed, number) == (pytest.approx(si(2.48432, "ft/s"), rel=1e-5), pytest.approx(38344, rel=1e-4))
    # 12 elbows, 2 tees, 2 gates and a zone valve, as K of 21.16, stand for a length of tube.
    fittings = 21.16 * si(0.811, "in") / factor
    head = pipe_head(friction=rubs, length=si(140, "ft"), fittings_length=fittings)
    assert head == pytest.approx(si(6.48184, "ft"), rel=5e-4)
    assert pressure_of_head(density=977.19, head=head) == pytest.approx(si(2.74597, "psi"), rel=5e-4)


def test_laminar_head_is_that_of_hagen_and_poiseuille():
    flow, bore, viscosity = 5e-6, 0.0123, 6e-6
    rubs = friction_of(flow, bore, PLASTIC, viscosity)[3]
    assert rubs == pytest.approx(128 * viscosity * flow / (math.pi * 9.80665 * bore**4))


def test_sums():
    assert head_total(heads=[1.0, 2.5]) == 3.5
    assert flow_total(flows=[1e-4, 2e-4]) == pytest.approx(3e-4)
    assert tube_volume(bore=si(0.811, "in"), length=si(100, "ft")) == pytest.approx(
        si(2.683, "gal"), rel=1e-3
    )
