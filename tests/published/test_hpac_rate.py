"""Claim: the deduction of a net rating takes off what HPAC-RATE says; the rating rule itself divides."""

from heatledger.ledger.sources import SEEN
from heatledger.physics.boilers import net_rating, net_rating_by_hand
from tests.published.checks import check, into, si


def test_the_deduction():
    check(
        claim="Net rating of 100,000 Btu/h, 15 percent taken off", source="HPAC-RATE",
        place="a deduction of 15 percent", standing=SEEN, unit="Btu/h", expected=85_000,
        got=into(net_rating_by_hand(output=si(100_000, "Btu/h")), "Btu/h"), tolerance=0.5,
        why="half a unit of the last digit",
    )  # fmt: skip


def test_the_rule_leaves_two_percent_more():
    output = si(100_000, "Btu/h")
    assert abs(net_rating(output=output) * 1.15 / output - 1) < 1e-12
    assert 1.02 < net_rating(output=output) / net_rating_by_hand(output=output) < 1.025
