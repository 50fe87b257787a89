"""Claim: a burner at height takes the input that ICM-2015 gives by the fuel-gas code."""

from heatledger.ledger.sources import SEEN
from heatledger.physics.boilers import altitude_factor, at_height
from tests.published.checks import check, into, si


def test_a_burner_at_5000_ft():
    factor = altitude_factor(elevation=si(5000, "ft"))
    check(
        claim="Share of the rated input at 5,000 ft", source="ICM-2015", place="rule of E.1.1(d)",
        standing=SEEN, unit="%", expected=80, got=100 * factor, tolerance=0.01, why="exact",
    )  # fmt: skip
    got = into(at_height(rated=si(80_000, "Btu/h"), altitude=factor), "Btu/h")
    check(
        claim="Input of 80,000 Btu/h at 5,000 ft", source="ICM-2015", place="rule of E.1.1(d)",
        standing=SEEN, unit="Btu/h", expected=64_000, got=got, tolerance=1, why="exact",
    )  # fmt: skip


def test_no_derate_below():
    check(
        claim="Share of the rated input at 2,000 ft", source="ICM-2015", place="rule of E.1.1(d)",
        standing=SEEN, unit="%", expected=100, got=100 * altitude_factor(elevation=si(2000, "ft")),
        tolerance=0.01, why="exact",
    )  # fmt: skip
