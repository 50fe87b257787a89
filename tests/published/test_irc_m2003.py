"""Claim: a diaphragm tank by the line of the boiler code is as large as IRC-M2003 tabulates."""

from heatledger.ledger.sources import MEMORY
from heatledger.physics.tanks import acceptance_factor, growth_by_line, tank_by_line
from tests.published.checks import at, check, into, si


def test_diaphragm_tank():
    factor = acceptance_factor(cold=si(12, "psi"), hot=si(30, "psi"), air=si(14.7, "psi"))
    tank = tank_by_line(volume=si(100, "gal"), growth=growth_by_line(hot=at(195, "°F")), acceptance=factor)
    check(
        claim="Diaphragm tank for 100 gal at 195 °F, 12 to 30 psi", source="IRC-M2003", place="table M2003.2",
        standing=MEMORY, unit="gal", expected=8.0,
        got=into(tank, "gal"), tolerance=0.32,
        why="4 %, the table is rounded",
    )  # fmt: skip
