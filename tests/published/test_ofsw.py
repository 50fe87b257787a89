"""Claim: what an analyzer of flue gas says follows OFSW; witness: oil boilers before and after service."""

from heatledger.ledger.sources import SEEN
from heatledger.physics.startup import carbon_dioxide, excess_air
from tests.published.checks import check

BAD, GOOD = "before service: 9.2 % oxygen, 8.7 % carbon dioxide", "after service: 5 % oxygen"
LARGEST = 0.155
"""Carbon dioxide of oil burned without air to spare."""


def test_excess_air():
    check(
        claim="Excess air of an oil boiler that was set badly", source="OFSW", place=BAD, standing=SEEN,
        unit="%", expected=78.9, got=100 * excess_air(oxygen=0.092), tolerance=1,
        why="an instrument that counts oxygen in tenths of a percent",
    )  # fmt: skip


def test_carbon_dioxide():
    check(
        claim="Carbon dioxide of oil by oxygen, before and after service", source="OFSW",
        place=f"{BAD}; {GOOD}", standing=SEEN, unit="%", expected=[8.7, 11.8],
        got=[100 * carbon_dioxide(largest=LARGEST, oxygen=each) for each in (0.092, 0.05)], tolerance=0.1,
        why="printed to tenths of a percent",
    )  # fmt: skip
