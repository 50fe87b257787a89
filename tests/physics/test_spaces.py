"""Claim: the temperature of an unheated space balances its heat. Computed cases and laws."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from heatledger.ledger.units import UNITS
from heatledger.physics.air import air_conductance
from heatledger.physics.envelope import conductance, loss_to_space
from heatledger.physics.spaces import flow_between, heat_in, heat_out, heat_toward, space_temperature

CONDUCTANCE = st.floats(0.1, 500.0)
TEMPERATURE = st.floats(230.0, 310.0)


def balance(outdoor, neighbors, to_outdoors):
    heats = [heat_toward(conductance=h, beyond=t, outdoor=outdoor) for h, t in neighbors]
    return space_temperature(
        outdoor=outdoor, heats=heats, conductances=[*(h for h, _ in neighbors), *to_outdoors]
    )


def test_an_attic():
    """Computed: 100 m² of ceiling, 130 m² of roof, 40 L/s of outdoor air at 1.23 W/(L/s·K)."""
    ceiling, roof = conductance(area=100.0, u_value=0.15), conductance(area=130.0, u_value=2.5)
    air = air_conductance(volume=1.0, changes=0.040, air_heat=1230.0)
    attic = balance(253.15, [(ceiling, 293.15)], [roof, air])
    assert attic - 273.15 == pytest.approx(-18.45838, abs=1e-5)
    loss = loss_to_space(area=100.0, u_value=0.15, indoor=293.15, beyond=attic)
    assert loss == pytest.approx(576.876, abs=1e-3)


def test_a_crawlspace():
    """Computed in inch-pound units: floor, two kinds of wall, ground at 28 °F, half an air change."""
    per_degree, fahrenheit = UNITS["Btu/(h·°F)"], UNITS["°F"]
    floor, above, below, air = (per_degree.to_si(each) for each in (56.0, 61.2, 40.8, 30.24))
    zero, room, ground = (fahrenheit.to_si(each, absolute=True) for each in (0, 70, 28))
    space = balance(zero, [(floor, room), (below, ground)], [above, air])
    assert fahrenheit.from_si(space, absolute=True) == pytest.approx(26.89333, abs=1e-5)
    loss = flow_between(conductance=floor, warmer=room, colder=space)
    assert UNITS["Btu/h"].from_si(loss) == pytest.approx(2413.974, abs=1e-3)


@given(
    outdoor=TEMPERATURE,
    neighbors=st.lists(st.tuples(CONDUCTANCE, TEMPERATURE), min_size=1, max_size=6),
    to_outdoors=st.lists(CONDUCTANCE, max_size=4),
)
def test_the_balance_closes_and_lies_between_its_neighbors(outdoor, neighbors, to_outdoors):
    space = balance(outdoor, neighbors, to_outdoors)
    arriving = heat_in(parts=[flow_between(conductance=h, warmer=t, colder=space) for h, t in neighbors])
    leaving = heat_out(parts=[flow_between(conductance=h, warmer=space, colder=outdoor) for h in to_outdoors])
    scale = sum(h for h, _ in neighbors) + sum(to_outdoors)
    assert abs(float(arriving) - float(leaving)) <= 1e-7 * scale
    around = [t for _, t in neighbors] + [outdoor] * bool(to_outdoors)
    assert min(around) - 1e-6 <= space <= max(around) + 1e-6
