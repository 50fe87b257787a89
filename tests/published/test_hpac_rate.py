"""Claim: a net rating leaves what HPAC-RATE takes off."""

from heatledger.ledger.sources import SEEN
from heatledger.physics.boilers import net_rating
from tests.published.checks import check, into, si


def test_net_rating():
    check(
        claim="Net rating of 100,000 Btu/h", source="HPAC-RATE", place="a deduction of 15 percent",
        standing=SEEN, unit="Btu/h", expected=85_000,
        got=into(net_rating(output=si(100_000, "Btu/h")), "Btu/h"), tolerance=2_000,
        why="2 %: the rating rule divides by 1.15, the article takes 15 % off",
    )  # fmt: skip
