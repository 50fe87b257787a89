"""Claim: friction in steel pipe is as RISHEL tabulates it."""

from heatledger.ledger.sources import SEEN
from tests.physics.hydraulics import STEEL, friction_of, si
from tests.published.checks import check

COLD = 1.12198e-6
"""Water of 60 °F, m²/s."""

# Bore in, gpm, ft of head in 100 ft.
TABLE = [
    (2.469, 50, 1.94), (2.469, 100, 7.11), (3.068, 50, 0.66), (3.068, 150, 5.14), (4.026, 100, 0.62),
    (4.026, 170, 1.67),
]  # fmt: skip
MAINS = [(3.068, 130, 3.92), (6.065, 800, 4.03)]


def per_hundred(bore, gpm):
    return 100 * friction_of(si(gpm, "gpm"), si(bore, "in"), STEEL, COLD)[3]


def test_friction_table():
    check(
        claim="Friction of water of 60 °F in schedule 40 steel of 2-1/2 to 4 in.", source="RISHEL",
        place="table 3.5", standing=SEEN, unit="ft/100 ft", expected=[each for _, _, each in TABLE],
        got=[per_hundred(bore, gpm) for bore, gpm, _ in TABLE],
        tolerance=[0.01 * each for _, _, each in TABLE],
        why="1 %: printed with three figures, and its viscosity is not stated",
    )  # fmt: skip


def test_mains_table():
    check(
        claim="Friction of the largest flows advised for steel mains of 3 and 6 in.", source="RISHEL",
        place="table 3.1; its row of 4 in. does not fit and is left out", standing=SEEN, unit="ft/100 ft",
        expected=[each for _, _, each in MAINS], got=[per_hundred(bore, gpm) for bore, gpm, _ in MAINS],
        tolerance=0.012, why="half a unit of the last digit printed, and its viscosity is not stated",
    )  # fmt: skip
