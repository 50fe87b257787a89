"""Claim: relief valves pass what NY-4-5.3 asks, and pressure stays where it allows."""

from heatledger.ledger.sources import SEEN
from heatledger.physics.boilers import blowing_pressure, relief_as_steam, relief_needed
from tests.published.checks import check, into, si

PLACE = "capacity and rise of pressure"


def test_capacity():
    output = si(150_000, "Btu/h")
    check(
        claim="Steam for a boiler of 150,000 Btu/h", source="NY-4-5.3", place=PLACE, standing=SEEN,
        unit="lb/h", expected=150, got=into(relief_as_steam(output=output), "lb/h"), tolerance=0.01,
        why="exact",
    )  # fmt: skip
    check(
        claim="Rating of a relief valve for 150,000 Btu/h", source="NY-4-5.3", place=PLACE, standing=SEEN,
        unit="Btu/h", expected=150_000, got=into(relief_needed(output=output), "Btu/h"), tolerance=1,
        why="exact",
    )  # fmt: skip


def test_rise():
    got = [into(blowing_pressure(allowed=si(each, "psi")), "psi") for each in (15, 30, 50)]
    check(
        claim="Highest pressure with the valve blowing, allowed 15, 30 and 50 psi", source="NY-4-5.3",
        place=PLACE, standing=SEEN, unit="psi", expected=[18, 36, 55], got=got, tolerance=0.01, why="exact",
    )  # fmt: skip
