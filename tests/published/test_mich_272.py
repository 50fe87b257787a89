"""Claim: a plain closed tank by the line of the boiler code is as large as MICH-272 tabulates."""

from heatledger.ledger.sources import SEEN
from heatledger.physics.tanks import expanded_volume, growth_by_line, plain_tank
from tests.published.checks import at, check, into, si

AIR = si(14.7, "psi")


def plain(gallons: float) -> float:
    """Gallons of the tank for a system of this many, forced hot water at 195 °F, 12 to 30 psi."""
    grown = expanded_volume(volume=si(gallons, "gal"), growth=growth_by_line(hot=at(195, "°F")))
    return into(plain_tank(expanded=grown, cold=si(12, "psi"), hot=si(30, "psi"), air=AIR), "gal")


def test_small_and_large():
    check(
        claim="Plain tank for 100 and 500 gal of forced hot water", source="MICH-272", place="table 272B",
        standing=SEEN, unit="gal", expected=[15, 75], got=[plain(100), plain(500)], tolerance=[0.15, 0.75],
        why="1 %, the rounding of the table",
    )  # fmt: skip


def test_the_whole_column():
    gallons = [100 * each for each in range(1, 21)]
    expected = [15.0 * each for each in range(1, 21)]
    check(
        claim="Plain tanks for 100 to 2,000 gal of forced hot water", source="MICH-272", place="table 272B",
        standing=SEEN, unit="gal", expected=expected, got=[plain(each) for each in gallons],
        tolerance=[0.005 * each for each in expected], why="0.5 %, the rounding of the table",
    )  # fmt: skip


def test_growth_and_air():
    check(
        claim="Share of the system that grows at 195 °F, from its tank of 15 gal", source="MICH-272",
        place="table 272B, worked back", standing=SEEN, expected=0.15 * (14.7 / 26.7 - 14.7 / 44.7),
        got=growth_by_line(hot=at(195, "°F")), tolerance=0.0003, why="1 % of the rounded table value",
    )  # fmt: skip
