"""Ratings of baseboard and their factors: cases worked out by hand."""

from __future__ import annotations

import pytest

from heatledger.physics.air import site_pressure
from heatledger.physics.emitters import (
    altitude_factor_of_fin_tube,
    altitude_factor_of_iron,
    comparable_output,
    flow_factor,
    least_flow_of_element,
    needed_at_rating,
    net_output,
    net_rating,
    output_here,
    output_of_length,
    rated_excess,
    rating_here,
)
from heatledger.physics.radiators import output_at_excess
from heatledger.physics.water import water_viscosity
from tests.physics.baseboard import BTUH, FOOT, GPM, PER_FOOT, f

NET = 580 / 1.15


def at_mean(net: float, mean: float, room: float) -> float:
    """Btu/h for each foot of the 180/65 °F entry at another mean water."""
    return output_at_excess(rated=net, excess=mean - room, rated_excess=115.0, exponent=1.4)


def test_net_rating_and_its_point():
    net = net_rating(rating=580 * PER_FOOT, heating_effect=1.15) / PER_FOOT
    assert net == pytest.approx(504.3478, abs=1e-3)
    assert at_mean(net, 215, 65) == pytest.approx(731.6122, abs=1e-3)
    assert 1.15 * at_mean(net, 215, 65) == pytest.approx(841.3540, abs=1e-3)
    assert rated_excess(mean_water=f(215), air=f(65)) == pytest.approx(150 / 1.8)
    assert net_output(output=1150.0, heating_effect=1.15) == pytest.approx(1000)


def test_length_with_and_without_the_heating_effect():
    assert at_mean(580, 170, 65) == pytest.approx(510.6414, abs=1e-3)
    assert 6200 / at_mean(580, 170, 65) == pytest.approx(12.1416, abs=5e-4)
    assert 6200 / at_mean(NET, 170, 65) == pytest.approx(13.9628, abs=5e-4)


def test_low_water_and_more_flow():
    assert at_mean(1, 130, 68) == pytest.approx(0.4210866, abs=1e-6)
    flow = flow_factor(flow=2.5 * GPM, least=0.2 * GPM, rated_flow=GPM, exponent=0.04)
    assert flow == pytest.approx(1.0373316, abs=1e-7)
    found = rating_here(rating=at_mean(NET, 130, 68) * PER_FOOT, flow_factor=flow, altitude_factor=1.0)
    assert found / PER_FOOT == pytest.approx(220.3024, abs=1e-3)
    assert found == pytest.approx(211.825, abs=1e-3)


@pytest.mark.parametrize(
    ("factor_of", "expected"), [(altitude_factor_of_fin_tube, 0.839529), (altitude_factor_of_iron, 0.907397)]
)
def test_altitude(factor_of, expected):
    mile = 5280 * FOOT
    assert site_pressure(elevation=mile) / 101325 == pytest.approx(0.8233700, abs=1e-5)
    assert factor_of(elevation=mile, pressure=site_pressure(elevation=mile)) == pytest.approx(
        expected, abs=1e-5
    )
    at_limit = 2000 * FOOT
    assert factor_of(elevation=at_limit, pressure=site_pressure(elevation=at_limit)) == 1
    above = factor_of(elevation=at_limit + 0.1, pressure=site_pressure(elevation=at_limit + 0.1))
    assert above < 1, "the full factor from sea level"


def test_the_flow_factor_is_held_where_flow_turns_smooth():
    least = least_flow_of_element(viscosity=water_viscosity(temperature=f(180)))
    assert least / GPM == pytest.approx(0.21, abs=0.005)
    held = flow_factor(flow=0.01 * GPM, least=least, rated_flow=GPM, exponent=0.04)
    assert held == pytest.approx(0.9395, abs=5e-4)
    assert held == flow_factor(flow=0.0, least=least, rated_flow=GPM, exponent=0.04)
    assert held == pytest.approx(
        flow_factor(flow=least * (1 + 1e-9), least=least, rated_flow=GPM, exponent=0.04)
    )


def test_factors_go_on_and_come_off():
    assert output_of_length(rating=500 * PER_FOOT, length=14 * FOOT) / BTUH == pytest.approx(7000)
    here = output_here(rated=7000 * BTUH, flow_factor=0.97, altitude_factor=0.84)
    assert here / BTUH == pytest.approx(7000 * 0.97 * 0.84)
    assert needed_at_rating(needed=here, flow_factor=0.97, altitude_factor=0.84) / BTUH == pytest.approx(7000)


def test_unlike_ratings_side_by_side():
    """A radiator rated at 60 K looks 27 % larger than the same one rated at 50 K."""
    assert comparable_output(rated=1267.5, excess=60.0, exponent=1.3) == pytest.approx(1000, abs=0.1)
    assert comparable_output(rated=1000.0, excess=50.0, exponent=1.3) == pytest.approx(1000)
