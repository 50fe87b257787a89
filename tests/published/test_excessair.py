"""Claim: the largest output for a load is that of EXCESSAIR."""

from heatledger.ledger.sources import SEEN
from heatledger.physics.boilers import largest_output
from tests.published.checks import check, into, si


def test_largest_output():
    check(
        claim="Largest output for 34,000 Btu/h", source="EXCESSAIR", place="boilers and furnaces",
        standing=SEEN, unit="Btu/h", expected=47_600,
        got=into(largest_output(load=si(34_000, "Btu/h")), "Btu/h"), tolerance=1, why="exact",
    )  # fmt: skip
