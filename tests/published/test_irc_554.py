"""Claim: the pressure of a piping test follows IRC-554; witness: its floor and its factor."""

from heatledger.ledger.sources import SEEN
from heatledger.physics.startup import pressure_of_test
from tests.published.checks import check, into, si


def due(highest):
    return into(pressure_of_test(highest=si(highest, "psi")), "psi")


def test_the_floor():
    check(
        claim="Test pressure of a system that comes to 30 psi", source="IRC-554",
        place="not less than 100 psi", standing=SEEN, unit="psi", expected=100, got=due(30),
        tolerance=0.01, why="a rule in whole numbers",
    )  # fmt: skip


def test_the_factor():
    check(
        claim="Test pressure of a system that comes to 80 psi", source="IRC-554",
        place="1.5 times the highest", standing=SEEN, unit="psi", expected=120, got=due(80),
        tolerance=0.01, why="a rule in whole numbers",
    )  # fmt: skip
