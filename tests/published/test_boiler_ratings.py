"""Claim: ratings, sizing limit, buffer and tank are as HPAC-RATE, EXCESSAIR, PME-94749 and IRC-M2003 say."""

from heatledger.ledger.sources import MEMORY, SEEN
from heatledger.physics.boilers import largest_output, net_rating
from heatledger.physics.firing import buffer_volume
from heatledger.physics.tanks import acceptance_factor, diaphragm_tank, expanded_volume, growth_by_line
from tests.published.checks import at, check, into, si


def test_net_rating():
    check(
        claim="Net rating of 100,000 Btu/h", source="HPAC-RATE", place="a deduction of 15 percent",
        standing=SEEN, unit="Btu/h", expected=85_000,
        got=into(net_rating(output=si(100_000, "Btu/h")), "Btu/h"), tolerance=2_000,
        why="2 %: the rating rule divides by 1.15, the article takes 15 % off",
    )  # fmt: skip


def test_largest_output():
    check(
        claim="Largest output for 34,000 Btu/h", source="EXCESSAIR", place="boilers and furnaces",
        standing=SEEN, unit="Btu/h", expected=47_600,
        got=into(largest_output(load=si(34_000, "Btu/h")), "Btu/h"), tolerance=1, why="exact",
    )  # fmt: skip


def test_buffer():
    got = buffer_volume(
        time=si(10, "min"), least_output=si(48_000, "Btu/h"), load=si(2_000, "Btu/h"), rise=si(20, "°F")
    )
    check(
        claim="Buffer for 10 minutes at 48,000 Btu/h with 2,000 taken, 20 °F", source="PME-94749",
        place="formula and figures of a towel bar, worked out", standing=SEEN, unit="gal",
        expected=46, got=into(got, "gal"),
        tolerance=0.46, why="1 %: the article rounds 8.33 × 60 to 500",
    )  # fmt: skip


def test_diaphragm_tank():
    expanded = expanded_volume(volume=si(100, "gal"), growth=growth_by_line(hot=at(195, "°F")))
    factor = acceptance_factor(cold=si(12, "psi"), hot=si(30, "psi"), air=si(14.7, "psi"))
    check(
        claim="Diaphragm tank for 100 gal at 195 °F, 12 to 30 psi", source="IRC-M2003", place="table M2003.2",
        standing=MEMORY, unit="gal", expected=8.0,
        got=into(diaphragm_tank(expanded=expanded, acceptance=factor), "gal"), tolerance=0.32,
        why="4 %, the table is rounded",
    )  # fmt: skip
