"""Claim: the heat of a season follows HOF-ch19; witness: its worked house in Denver."""

from heatledger.ledger.sources import SEEN
from heatledger.physics.air import air_conductance
from heatledger.physics.energy import balance_temperature, season_fuel, season_heat
from tests.published.checks import at, check, into, si

PLACE = "Example 1, house in Denver"


def by_air():
    return air_conductance(volume=400.0, changes=si(0.7, "ACH"), air_heat=1210.0)


def test_air():
    check(
        claim="Conductance by 0.7 air changes of 400 m³", source="HOF-ch19", place=PLACE, standing=SEEN,
        unit="W/K", expected=94.11, got=by_air(), tolerance=0.005,
        why="half a unit of the last digit printed",
    )  # fmt: skip


def test_whole_house():
    check(
        claim="Loss per degree of the house", source="HOF-ch19", place=PLACE, standing=SEEN, unit="W/K",
        expected=294.11, got=200.0 + by_air(), tolerance=0.005, why="half a unit of the last digit printed",
    )  # fmt: skip


def test_fuel():
    heat = season_heat(coefficient=200.0 + by_air(), degree_days=3300.0)
    check(
        claim="Fuel of a season of 3,300 degree days", source="HOF-ch19", place=PLACE, standing=SEEN,
        unit="kWh", expected=33_200, got=into(season_fuel(heat=heat, efficiency=0.78 * 0.90), "kWh"),
        tolerance=50, why="printed to three figures",
    )  # fmt: skip


def test_balance_temperature():
    base = balance_temperature(indoor=at(21, "°C"), gains=3 * 200.0, coefficient=200.0)
    check(
        claim="Gains worth 3 K at 21 °C give a base of 18 °C", source="HOF-ch19", place="on the 18 °C base",
        standing=SEEN, unit="°C", expected=18, got=into(base - at(0, "°C"), "K"), tolerance=0.5,
        why="the source says about 3 K",
    )  # fmt: skip
