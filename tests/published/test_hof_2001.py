"""Claim: the basic leakage model gives the example of HOF-2001, a two-story house in Lincoln, Nebraska."""

from heatledger.ledger.sources import SECOND_HAND
from heatledger.physics.infiltration import basic_leakage_flow
from tests.published.checks import check, si


def test_two_stories():
    flow = basic_leakage_flow(
        leakage_area=si(500, "cm²"), stories=2.0, wind=0.000231, difference=39.0, wind_speed=6.7
    )
    check(
        claim="Infiltration of a two-story house by its leakage area", source="HOF-2001",
        place="ch. 26, example for Lincoln NE", standing=SECOND_HAND, unit="m³/s", expected=0.0736, got=flow,
        tolerance=0.0005, why="the source rounds its coefficients",
    )  # fmt: skip
