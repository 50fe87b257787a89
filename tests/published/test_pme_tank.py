"""Claim: tubes of the catalog hold the water that PME-TANK prints for them."""

import pytest

from heatledger.catalog.parts import tube
from heatledger.ledger.sources import SEEN
from heatledger.ledger.units import UNITS
from heatledger.physics.friction import tube_volume
from tests.published.checks import check

COPPER = {"1/2": 0.01319, "3/4": 0.02685, "1": 0.0454, "1-1/4": 0.06804, "2": 0.1647}
PEX = {
    "3/8": 0.005294, "1/2": 0.009609, "5/8": 0.01393, "3/4": 0.01894, "1": 0.03128, "1-1/4": 0.04668,
    "1-1/2": 0.06516,
}  # fmt: skip
PEX_AL_PEX = {"3/8": 0.00489, "5/8": 0.01658, "3/4": 0.02654, "1": 0.04351}


@pytest.mark.parametrize(
    ("family", "printed", "what"),
    [
        ("copper-m", COPPER, "copper tube, type M"),
        ("pex", PEX, "PEX tube, SDR-9"),
        ("pex-al-pex", PEX_AL_PEX, "PEX-AL-PEX tube, but for 1/2 in"),
    ],
)
def test_water_in_a_foot_of_tube(family, printed, what):
    got = [
        UNITS["gal"].from_si(tube_volume(bore=float(tube(f"{family}-{size}").bore), length=0.3048))
        for size in printed
    ]
    check(
        claim=f"Water in a foot of {what}", source="PME-TANK", place="table 1", standing=SEEN, unit="gal",
        expected=list(printed.values()), got=got, tolerance=[0.003 * each for each in printed.values()],
        why="walls differ in the last digit; 0.3 %",
    )  # fmt: skip
