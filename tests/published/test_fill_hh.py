"""Claim: fill and charge of the tank go with the height of the house as FILL-HH says."""

from heatledger.ledger.sources import SEEN
from heatledger.physics.pressure import (
    fill_pressure,
    precharge_pressure,
    static_pressure,
    static_pressure_by_hand,
)
from heatledger.physics.water import water_density
from tests.published.checks import at, check, into, si

COLD = water_density(temperature=at(60, "°F"))
FILL = fill_pressure(static=static_pressure(height=si(16, "ft"), density=COLD), margin=si(5, "psi"))


def test_fill():
    check(
        claim="Fill pressure for 16 ft", source="FILL-HH", place="0.433 psi for each foot, and 5 psi",
        standing=SEEN, unit="psi", expected=11.9, got=into(FILL, "psi"), tolerance=0.1, why="as printed",
    )  # fmt: skip


def test_precharge():
    check(
        claim="Charge of the tank for 16 ft", source="FILL-HH", place="the tank is charged to the fill",
        standing=SEEN, unit="psi", expected=12, got=into(precharge_pressure(fill=FILL), "psi"),
        tolerance=0.15, why="rounded to a whole pound",
    )  # fmt: skip


def test_a_foot():
    got = [
        into(static_pressure(height=si(1, "ft"), density=COLD), "psi"),
        into(static_pressure_by_hand(height=si(1, "ft")), "psi"),
    ]
    check(
        claim="Pressure of a foot of water, by density and by the short way", source="FILL-HH",
        place="0.433 psi for each foot", standing=SEEN, unit="psi", expected=[0.433, 0.433], got=got,
        tolerance=0.0005, why="half a unit of the last digit printed",
    )  # fmt: skip
