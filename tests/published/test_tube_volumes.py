"""Claim: tubes of the catalog hold the water that PME-TANK prints for each foot of them."""

from heatledger.catalog.tubes import tubes_of
from heatledger.ledger.sources import SEEN
from heatledger.physics.friction import tube_volume
from tests.published.checks import check, into, si

COPPER = {"1/2": 0.01319, "3/4": 0.02685, "1": 0.0454, "1-1/4": 0.06804, "2": 0.1647}
PEX = {
    "3/8": 0.005294, "1/2": 0.009609, "5/8": 0.01393, "3/4": 0.01894, "1": 0.03128, "1-1/4": 0.04668,
    "1-1/2": 0.06516, "2": 0.1116,
}  # fmt: skip
COMPOSITE = {"3/8": 0.00489, "5/8": 0.01658, "3/4": 0.02654, "1": 0.04351}


def volumes(family, sizes):
    rows = tubes_of(family)
    there = [each for each in sizes if each in rows]
    assert len(there) >= 4
    return there, [
        into(tube_volume(bore=float(rows[each].bore), length=si(1, "ft")), "gal") for each in there
    ]


def test_copper():
    there, got = volumes("copper-m", COPPER)
    check(
        claim="Water in a foot of copper tube of type M", source="PME-TANK", place="table 1", standing=SEEN,
        unit="gal", expected=[COPPER[each] for each in there], got=got,
        tolerance=[0.003 * COPPER[each] for each in there], why="0.3 %: the walls are from memory",
    )  # fmt: skip


def test_pex():
    there, got = volumes("pex", PEX)
    check(
        claim="Water in a foot of PEX tube", source="PME-TANK", place="table 1", standing=SEEN, unit="gal",
        expected=[PEX[each] for each in there], got=got, tolerance=[0.003 * PEX[each] for each in there],
        why="0.3 %: bores are printed with three figures",
    )  # fmt: skip


def test_composite_tube():
    there, got = volumes("pex-al-pex", COMPOSITE)
    check(
        claim="Water in a foot of PEX-AL-PEX tube, without 1/2 in., where the page and the standard differ",
        source="PME-TANK", place="table 1", standing=SEEN, unit="gal",
        expected=[COMPOSITE[each] for each in there], got=got,
        tolerance=[0.004 * COMPOSITE[each] for each in there], why="0.4 %: the walls are from memory",
    )  # fmt: skip
