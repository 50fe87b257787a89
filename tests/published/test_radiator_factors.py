"""Claim: panels follow the power law with an exponent of 1.3; witnesses: printed factors of three pages."""

from heatledger.ledger.sources import SEEN
from heatledger.physics.radiators import arithmetic_excess, output_at_excess
from tests.published.checks import at, check

FACTORS = {20: 0.30, 25: 0.41, 30: 0.52, 35: 0.63, 40: 0.75, 45: 0.87, 50: 1.00}


def of_fifty(excess):
    return output_at_excess(rated=1.0, excess=excess, rated_excess=50.0, exponent=1.3)


def test_factors_from_50_k():
    check(
        claim="Output of a panel at 20 to 50 K, against 50 K", source="HP-RAD", place="table of factors",
        standing=SEEN, expected=list(FACTORS.values()), got=[of_fifty(each) for each in FACTORS],
        tolerance=0.006, why="the source prints hundredths",
    )  # fmt: skip


def test_a_retailer_s_factor():
    check(
        claim="Output of a panel at 20 K against 50 K", source="ENC-DT", place="worked example",
        standing=SEEN, expected=0.3039, got=of_fifty(20), tolerance=0.00005,
        why="half a unit of the last digit printed",
    )  # fmt: skip


def test_what_75_65_20_stands_for():
    check(
        claim="Excess of a rating at 75/65/20 °C", source="ENC-DT", place="explanation", standing=SEEN,
        unit="K", expected=50, got=arithmetic_excess(supply=at(75, "°C"), return_=at(65, "°C"),
        air=at(20, "°C")),
        tolerance=1e-6, why="exact",
    )  # fmt: skip


def test_ratings_on_unlike_bases():
    check(
        claim="A panel rated at 60 K looks 27 % larger than the same one rated at 50 K", source="BSE-IE",
        place="on ratings at 60 and 50 K", standing=SEEN, unit="%", expected=27, got=100 * (of_fifty(60) - 1),
        tolerance=0.5, why="printed as a whole number",
    )  # fmt: skip
