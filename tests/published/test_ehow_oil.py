"""Claim: degree days give the heat of the house in EHOW-OIL, 675 Btu/(h·°F)."""

from heatledger.ledger.sources import SEEN
from heatledger.physics.energy import fuel_energy, heat_from_fuel, season_fuel, season_heat
from tests.published.checks import check, into, si

COEFFICIENT = si(675, "Btu/(h·°F)")


def test_one_degree_day():
    heat = season_heat(coefficient=COEFFICIENT, degree_days=si(1, "°F"))
    check(
        claim="Heat of one degree day", source="EHOW-OIL", place="oil example", standing=SEEN, unit="Btu",
        expected=16_200, got=into(heat, "Btu"), tolerance=1, why="exact",
    )  # fmt: skip


def test_season():
    heat = season_heat(coefficient=COEFFICIENT, degree_days=si(5000, "°F"))
    check(
        claim="Heat of 5,000 degree days", source="EHOW-OIL", place="oil example", standing=SEEN,
        unit="million Btu", expected=81.0, got=into(heat, "Btu") / 1e6, tolerance=0.1,
        why="one unit of the last digit printed",
    )  # fmt: skip


OIL = si(138_690, "Btu/gal")


def test_useful_heat_of_a_gallon():
    useful = heat_from_fuel(fuel=fuel_energy(volume=si(1, "gal"), heat_content=OIL), efficiency=0.78)
    check(
        claim="Useful heat of a gallon of oil at 78 %", source="EHOW-OIL", place="oil example", standing=SEEN,
        unit="Btu", expected=108_178, got=into(useful, "Btu"), tolerance=1, why="exact",
    )  # fmt: skip


def test_oil_of_the_season():
    fuel = season_fuel(heat=season_heat(coefficient=COEFFICIENT, degree_days=si(5000, "°F")), efficiency=0.78)
    check(
        claim="Oil for 5,000 degree days at 78 %", source="EHOW-OIL", place="oil example", standing=SEEN,
        unit="gal", expected=748.8, got=fuel / OIL / si(1, "gal"), tolerance=0.7, why="0.1 %",
    )  # fmt: skip
