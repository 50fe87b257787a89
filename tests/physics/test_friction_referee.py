"""Claim: friction, heads and flow coefficients agree with an independent library over wide ranges.

Witness: fluids, a referee and no source; its Colebrook factor is solved in closed form.
"""

from __future__ import annotations

import pytest
from fluids import fittings as theirs
from fluids.friction import Colebrook
from hypothesis import given, settings
from hypothesis import strategies as st

from heatledger.physics.fittings import loss_coefficient, valve_head
from heatledger.physics.friction import friction, pipe_head, reynolds, velocity
from heatledger.physics.water import water_viscosity
from tests.physics.hydraulics import factor_at

g = 9.80665
RATED = 999.09
"""Density of the water of 60 °F that valves are rated with, kg/m³."""


@settings(max_examples=400)
@given(exponent=st.floats(3.61, 8.0), rough=st.floats(0.0, 0.05))
def test_the_turbulent_factor(exponent: float, rough: float) -> None:
    number = 10.0**exponent
    assert factor_at(number, rough) == pytest.approx(Colebrook(number, rough), rel=2e-5)


@given(number=st.floats(1.0, 1999.0), rough=st.floats(0.0, 0.05))
def test_the_laminar_factor(number: float, rough: float) -> None:
    assert factor_at(number, rough) == pytest.approx(64 / number, rel=1e-12)


@given(
    flow=st.floats(2e-5, 3e-3), bore=st.floats(0.008, 0.08), warm=st.floats(278.0, 390.0),
    length=st.floats(1.0, 200.0), roughness=st.sampled_from([1.5e-6, 7e-6, 4.572e-5]),
)  # fmt: skip
def test_the_head_of_a_tube(flow: float, bore: float, warm: float, length: float, roughness: float) -> None:
    speed, viscosity = velocity(flow=flow, bore=bore), water_viscosity(temperature=warm)
    number = reynolds(velocity=speed, bore=bore, viscosity=viscosity)
    if 2000 <= number <= 4100:  # between the two laws each library goes its own way
        return
    factor = 64 / number if number < 2000 else Colebrook(number, roughness / bore)
    expected = factor * length / bore * speed**2 / (2 * g)
    slope = friction(friction_factor=factor_at(number, roughness / bore), velocity=speed, bore=bore)
    assert pipe_head(friction=slope, length=length, fittings_length=0.0) == pytest.approx(expected, rel=3e-5)


@given(coefficient=st.floats(0.3, 40.0), bore=st.floats(0.01, 0.06))
def test_a_flow_coefficient_as_a_loss_coefficient(coefficient: float, bore: float) -> None:
    si = coefficient / 3600 / 1e5**0.5
    # Theirs is rounded in its fourth figure.
    assert loss_coefficient(flow_coefficient=si, bore=bore) == pytest.approx(
        theirs.Kv_to_K(coefficient, bore), rel=2e-3
    )


@given(coefficient=st.floats(0.3, 40.0), flow=st.floats(1e-5, 2e-3), bore=st.floats(0.01, 0.06))
def test_the_head_of_a_valve(coefficient: float, flow: float, bore: float) -> None:
    speed = velocity(flow=flow, bore=bore)
    expected = theirs.Kv_to_K(coefficient, bore) * speed**2 / (2 * g)
    si = coefficient / 3600 / 1e5**0.5
    assert valve_head(flow=flow, flow_coefficient=si) == pytest.approx(expected, rel=2e-3)
