"""Claim: still water weighs what its height and density say. Computed cases and laws."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from heatledger.ledger.units import UNITS
from heatledger.physics.friction import pressure_of_head
from heatledger.physics.pressure import (
    fill_pressure,
    head_of_pressure,
    static_pressure,
    static_pressure_by_hand,
    top_pressure,
    vapor_margin,
)
from heatledger.physics.psychrometrics import saturation_pressure
from heatledger.physics.water import water_density


def si(value, unit, absolute=False):
    return UNITS[unit].to_si(value, absolute)


@pytest.mark.parametrize(("feet", "psi"), [(20, 8.66263), (28, 12.12768)])
def test_height(feet, psi):
    """Computed: water of 60 °F."""
    got = static_pressure(height=si(feet, "ft"), density=water_density(temperature=si(60, "°F", True)))
    assert UNITS["psi"].from_si(got) == pytest.approx(psi, rel=3e-4)
    assert UNITS["psi"].from_si(static_pressure_by_hand(height=si(feet, "ft"))) == pytest.approx(
        psi, rel=1e-3
    )


@pytest.mark.parametrize(
    ("psi", "fahrenheit", "feet"),
    [(5, 180, 28.9418), (12, 200, 36.3045), (0, 200, 7.5644), (5, 220, 6.0252), (12, 230, 14.3120)],
)
def test_head_above_boiling(psi, fahrenheit, feet):
    """Computed: still water at a circulator's suction, at sea level."""
    hot = si(fahrenheit, "°F", True)
    margin = vapor_margin(pressure=si(psi, "psi"), air=101325.0, vapor=saturation_pressure(temperature=hot))
    head = head_of_pressure(pressure=margin, density=water_density(temperature=hot))
    assert UNITS["ft"].from_si(head) == pytest.approx(feet, rel=2e-3)


def test_a_tall_house_on_twelve_pounds_is_dry_at_the_top():
    """Computed: 36 ft over the gauge: 12 psi leaves −3.6 psi at the top, 20 psi leaves 4.4 psi."""
    static = static_pressure(height=si(36, "ft"), density=water_density(temperature=si(60, "°F", True)))
    for fill, top in ((12, -3.6), (20, 4.4)):
        got = top_pressure(at_gauge=si(fill, "psi"), static=static)
        assert UNITS["psi"].from_si(got) == pytest.approx(top, abs=0.05)


@given(height=st.floats(0, 60), margin=st.floats(0, 1e5), density=st.floats(940, 1000))
def test_filling_leaves_the_margin_at_the_top(height, margin, density):
    static = static_pressure(height=height, density=density)
    filled = fill_pressure(static=static, margin=margin)
    top = top_pressure(at_gauge=filled, static=static)
    assert top_pressure(at_gauge=filled, static=0.9 * static) >= top
    assert top == pytest.approx(margin, abs=1e-6)


@given(head=st.floats(0, 60), density=st.floats(940, 1000))
def test_head_and_pressure_are_one_thing(head, density):
    pressure = pressure_of_head(head=head, density=density)
    assert head_of_pressure(pressure=pressure, density=density) == pytest.approx(head)
    assert pressure == pytest.approx(static_pressure(height=head, density=density))
