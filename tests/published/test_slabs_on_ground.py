"""Claim: the slab on ground after ISO-13370 gives the tables of ADL-2002 and EN-12831-2003.

Both tables are from memory; that one formula meets nineteen of their entries speaks for both.
"""

from heatledger.ledger.sources import MEMORY
from heatledger.physics.ground import characteristic_width, equivalent_thickness, slab_u
from tests.published.checks import check

CLAY, GRAVEL = 1.5, 2.0
ADL = {
    0.05: 0.13,
    0.10: 0.22,
    0.20: 0.37,
    0.30: 0.49,
    0.40: 0.60,
    0.50: 0.70,
    0.60: 0.78,
    0.80: 0.93,
    1.00: 1.05,
}
EN = {2: 1.30, 4: 0.88, 6: 0.68, 8: 0.55, 10: 0.47, 12: 0.41, 14: 0.37, 16: 0.33, 18: 0.31, 20: 0.28}


def bare_slab(soil, width):
    thickness = equivalent_thickness(wall=0.3, soil=soil, film_inside=0.17, floor=0.0, film_outside=0.04)
    return slab_u(soil=soil, width=width, thickness=thickness)


def test_by_perimeter_and_area():
    got = [bare_slab(CLAY, characteristic_width(area=1.0, perimeter=each)) for each in ADL]
    check(
        claim="U-values of bare slabs by perimeter over area", source="ADL-2002",
        place="solid floors on clay", standing=MEMORY, unit="W/(m²·K)", expected=list(ADL.values()), got=got,
        tolerance=0.006, why="half a unit of the last digit printed",
    )  # fmt: skip


def test_a_floor_on_clay():
    check(
        claim="U-value of a bare slab at a ratio of 0.55", source="ADL-2002", place="solid floors on clay",
        standing=MEMORY, unit="W/(m²·K)", expected=0.74,
        got=bare_slab(CLAY, characteristic_width(area=1.0, perimeter=0.55)), tolerance=0.006,
        why="half a unit of the last digit printed",
    )  # fmt: skip


def test_by_characteristic_width():
    check(
        claim="Equivalent U-values of bare floor slabs by characteristic width", source="EN-12831-2003",
        place="Table 4", standing=MEMORY, unit="W/(m²·K)", expected=list(EN.values()),
        got=[bare_slab(GRAVEL, float(each)) for each in EN], tolerance=0.006,
        why="half a unit of the last digit printed",
    )  # fmt: skip
