"""Claim: layers add up as resistances do, and framing lies between its two limits. Laws."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from heatledger.ledger.units import UNITS
from heatledger.physics.constructions import (
    effective_emittance,
    isothermal_layer,
    layer_resistance,
    layers_total,
    mean_of_limits,
    parallel_path_u,
    thin_air_space,
)
from heatledger.physics.envelope import u_from_r

R = st.floats(0.05, 12.0)
SHARE = st.floats(0.0, 1.0)


def test_a_wood_wall_at_full_precision():
    """Computed: both limits of one wall, and their mean."""
    others = [0.03, 0.12, 0.11, 0.70, 0.08]
    cavity, stud = layers_total(layers=[*others, 2.30]), layers_total(layers=[*others, 0.77])
    upper_u = parallel_path_u(cavity_path=cavity, framing_path=stud, framing=0.25)
    assert upper_u == pytest.approx(0.3626724, abs=1e-7)
    layer = isothermal_layer(cavity=2.30, framing_layer=0.77, framing=0.25)
    assert layer == pytest.approx(1.5366594, abs=1e-7)
    lower = layers_total(layers=[*others, layer])
    assert u_from_r(r_value=lower) == pytest.approx(0.3880994, abs=1e-7)
    assert mean_of_limits(upper=1 / upper_u, lower=lower) == pytest.approx(2.6669842, abs=1e-7)


@pytest.mark.parametrize(
    ("framing", "parallel", "isothermal"), [(0.25, 0.08286608, 0.08742685), (0.23, 0.08132262, 0.08565774)]
)
def test_an_inch_pound_wall(framing, parallel, isothermal):
    """Computed: R-13 between 2x4 studs; never 13.57, the mean of the two R-values."""
    others = [0.17, 0.68, 0.81, 0.62, 0.45]
    stud = layer_resistance(thickness=3.5, conductivity=1 / 1.25)
    cavity_path, stud_path = layers_total(layers=[*others, 13.0]), layers_total(layers=[*others, stud])
    assert (cavity_path, stud_path) == (pytest.approx(15.73), pytest.approx(7.105))
    u = parallel_path_u(cavity_path=cavity_path, framing_path=stud_path, framing=framing)
    assert u == pytest.approx(parallel, abs=1e-8)
    layer = isothermal_layer(cavity=13.0, framing_layer=stud, framing=framing)
    assert u_from_r(r_value=layers_total(layers=[*others, layer])) == pytest.approx(isothermal, abs=1e-8)


def test_a_brick_clad_frame_wall():
    """Computed: mean of the limits of a wall after ISO 6946."""
    plaster, sheathing, brick = (
        layer_resistance(thickness=t, conductivity=k)
        for t, k in ((0.0125, 0.25), (0.009, 0.13), (0.1025, 0.77))
    )
    wool, stud = (layer_resistance(thickness=0.140, conductivity=k) for k in (0.038, 0.13))
    others = [0.13, plaster, sheathing, 0.18, brick, 0.04]
    upper_u = parallel_path_u(
        cavity_path=layers_total(layers=[*others, wool]),
        framing_path=layers_total(layers=[*others, stud]),
        framing=0.15,
    )
    layer = isothermal_layer(cavity=wool, framing_layer=stud, framing=0.15)
    lower = layers_total(layers=[*others, layer])
    assert 1 / upper_u == pytest.approx(3.476824, abs=1e-6)
    assert layer == pytest.approx(2.702703, abs=1e-6)
    assert lower == pytest.approx(3.305050, abs=1e-6)
    r = mean_of_limits(upper=1 / upper_u, lower=lower)
    assert r == pytest.approx(3.390937, abs=1e-6)
    assert u_from_r(r_value=r) == pytest.approx(0.2949037, abs=1e-7)


@given(cavity=R, stud=R, other=R, framing=SHARE)
def test_parallel_paths_never_resist_less_than_isothermal_planes(cavity, stud, other, framing):
    upper = 1 / parallel_path_u(cavity_path=other + cavity, framing_path=other + stud, framing=framing)
    lower = other + isothermal_layer(cavity=cavity, framing_layer=stud, framing=framing)
    assert upper >= lower * (1 - 1e-12)


@given(cavity=R, other=R, framing=SHARE)
def test_framing_like_its_cavity_changes_nothing(cavity, other, framing):
    assert isothermal_layer(cavity=cavity, framing_layer=cavity, framing=framing) == pytest.approx(cavity)
    u = parallel_path_u(cavity_path=other, framing_path=other, framing=framing)
    assert u == pytest.approx(1 / other)


@given(thickness=st.floats(0.01, 0.5), k=st.floats(0.02, 2.0), cut=st.floats(0.1, 0.9))
def test_cutting_a_layer_in_two_changes_nothing(thickness, k, cut):
    halves = [layer_resistance(thickness=thickness * each, conductivity=k) for each in (cut, 1 - cut)]
    assert layers_total(layers=halves) == pytest.approx(layer_resistance(thickness=thickness, conductivity=k))


@given(one=st.floats(0.03, 0.95), other=st.floats(0.03, 0.95))
def test_two_faces_together_radiate_less_than_either(one, other):
    both = effective_emittance(one_side=one, other_side=other)
    assert both <= min(one, other)
    assert both == pytest.approx(effective_emittance(one_side=other, other_side=one))


def test_the_coefficient_of_still_air_is_the_inch_pound_one():
    """Derived: 0.159 (1 + 0.0016 t), inch-pound and °F, is 0.0241 (1 + 0.00274 t), metric and °C."""
    for celsius in (-20.0, 0.0, 24.0):
        fahrenheit = 1.8 * celsius + 32
        inch_pound = UNITS["Btu·in/(h·ft²·°F)"].to_si(0.159 * (1 + 0.0016 * fahrenheit))
        r = thin_air_space(thickness=0.005, emittance=0.0, middle=celsius + 273.15)
        assert 0.005 / r == pytest.approx(inch_pound, rel=5e-4)
