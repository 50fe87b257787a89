"""Claim: water of 40 and 220 °F takes the room that ASHRAE-TANK gives it."""

from heatledger.ledger.sources import SEEN
from heatledger.physics.tanks import water_growth
from heatledger.physics.water import water_density
from tests.published.checks import at, check, into

COLD, HOT = (water_density(temperature=at(each, "°F")) for each in (40, 220))


def test_volumes():
    check(
        claim="Specific volume of water at 40 and 220 °F", source="ASHRAE-TANK", place="example",
        standing=SEEN, unit="ft³/lb", expected=[0.01602, 0.01677],
        got=[1 / into(each, "lb/ft³") for each in (COLD, HOT)], tolerance=0.000005,
        why="half a unit of the last digit printed",
    )  # fmt: skip


def test_growth():
    check(
        claim="Growth of water from 40 to 220 °F", source="ASHRAE-TANK", place="example, equation 14",
        standing=SEEN, unit="%", expected=4.68, got=100 * water_growth(cold_density=COLD, hot_density=HOT),
        tolerance=0.05, why="the two volumes it comes from are rounded to five places",
    )  # fmt: skip
