"""Claim: a condensing boiler fed with cool water does as well as COLLVER says."""

from heatledger.ledger.sources import SEEN
from tests.published.checks import check
from tests.published.test_eth_boiler import read


def test_a_cool_return():
    check(
        claim="Efficiency at 120/100 °F", source="COLLVER", place="93 % and more", standing=SEEN, unit="%",
        expected=93, got=read(100), tolerance=0.5, why="half a unit of the last digit printed",
    )  # fmt: skip
