"""Claim: degree days give the heat of the house in EHOW-OIL, 675 Btu/(h·°F)."""

from heatledger.ledger.sources import SEEN
from heatledger.physics.energy import season_heat
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
