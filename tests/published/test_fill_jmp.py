"""Claim: the height of a house asks for the fill pressure that FILL-JMP works out."""

from heatledger.ledger.sources import SEEN
from heatledger.physics.pressure import fill_pressure, static_pressure
from heatledger.physics.water import water_density
from tests.published.checks import at, check, into, si

STATIC = static_pressure(height=si(30, "ft"), density=water_density(temperature=at(60, "°F")))


def test_static():
    check(
        claim="Pressure of 30 ft of water", source="FILL-JMP", place="example", standing=SEEN, unit="psi",
        expected=13.0, got=into(STATIC, "psi"), tolerance=0.1, why="a tenth, as printed",
    )  # fmt: skip


def test_fill():
    got = into(fill_pressure(static=STATIC, margin=si(4, "psi")), "psi")
    check(
        claim="Fill pressure for 30 ft with 4 psi at the top", source="FILL-JMP", place="example",
        standing=SEEN, unit="psi", expected=17, got=got, tolerance=0.1, why="a tenth, as printed",
    )  # fmt: skip
