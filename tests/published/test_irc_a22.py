"""Claim: fittings of screwed pipe resist as much as the lengths that IRC-A22 prints."""

import pytest

from heatledger.catalog.parts import fitting_lengths, tube
from heatledger.ledger.sources import SEEN
from heatledger.ledger.units import UNITS
from heatledger.physics.fittings import equivalent_length
from tests.published.checks import check

SIZES = ("1/2", "3/4", "1", "1-1/4", "1-1/2", "2")
PRINTED = {
    "90-ell": (0.90, [1.55, 2.06, 2.62, 3.45, 4.02, 5.17]),
    "tee-branch": (1.80, [3.10, 4.12, 5.24, 6.90, 8.04, 10.3]),
}
WORDS = {"90-ell": "elbows", "tee-branch": "tees into the branch"}


@pytest.mark.parametrize("kind", PRINTED)
def test_length_by_loss_factor_and_bore(kind):
    factor, printed = PRINTED[kind]
    got = [
        UNITS["ft"].from_si(
            equivalent_length(
                loss_coefficient=factor, bore=float(tube(f"steel-40-{size}").bore), friction_factor=0.030
            )
        )
        for size in SIZES
    ]
    check(
        claim=f"Length that resists as much as screwed {WORDS[kind]}, from the loss factor and the bore",
        source="IRC-A22", place="table A.2.2", standing=SEEN, unit="ft", expected=printed, got=got,
        tolerance=[max(0.006, 0.005 * each) for each in printed],
        why="half a unit of the last digit printed, and 0.5 % for its rounded factors",
    )  # fmt: skip
    rows = [fitting_lengths(tube(f"steel-40-{size}"))[kind] for size in SIZES]
    assert [UNITS["ft"].from_si(float(each)) for each in rows] == pytest.approx(printed, rel=1e-9)
