"""Claim: a condensing boiler does what ETH-BOILER prints for the water that comes back."""

from itertools import pairwise

from heatledger.catalog.parts import efficiency_rows
from heatledger.ledger.sources import SECOND_HAND
from heatledger.physics.firing import condensing_efficiency
from tests.published.checks import at, check

ROWS = list(efficiency_rows().values())
PRINTED = {70: 96.2, 80: 95.5, 90: 94.7, 100: 93.2, 110: 91.2, 120: 88.9, 130: 87.3, 140: 86.3, 160: 85.9}


def read(fahrenheit: float) -> float:
    """Percent at a return, read from the rows from the coldest on."""
    back, efficiency = at(fahrenheit, "°F"), float(ROWS[0]["efficiency"])
    for low, high in pairwise(ROWS):
        efficiency = condensing_efficiency(
            back, float(low["return"]), float(high["return"]), float(low["efficiency"]),
            float(high["efficiency"]), efficiency, float(high["efficiency"]),
        )  # fmt: skip
    return 100 * efficiency


def test_the_rows():
    check(
        claim="Efficiency at the returns of the table", source="ETH-BOILER", place="curve at full fire",
        standing=SECOND_HAND, unit="%", expected=list(PRINTED.values()),
        got=[read(each) for each in PRINTED], tolerance=0.05, why="half a unit of the last digit",
    )  # fmt: skip
