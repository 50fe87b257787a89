"""Claim: output of fin tube goes with the excess to the power 1.40; witness: the factors WBMAN prints."""

from heatledger.ledger.sources import SEEN
from heatledger.physics.radiators import output_at_excess
from tests.published.checks import check

PRINTED = {
    100: 0.13, 110: 0.19, 120: 0.25, 130: 0.31, 140: 0.38, 150: 0.45, 160: 0.53, 170: 0.61, 180: 0.69,
    190: 0.78, 200: 0.86, 210: 0.95, 215: 1.00,
}  # fmt: skip


def test_factors_by_mean_water():
    check(
        claim="Fin tube at 100 to 215 °F mean water in air of 65 °F, against its output at 215 °F",
        source="WBMAN", place="page 9", standing=SEEN, expected=list(PRINTED.values()),
        got=[
            output_at_excess(rated=1.0, excess=each - 65, rated_excess=150, exponent=1.4) for each in PRINTED
        ],
        tolerance=0.006, why="the source rounds to hundredths, and cuts some off",
    )  # fmt: skip
