"""Claim: a straight reset line follows WIKI-HWR; witness: the span of a common boiler given there."""

from heatledger.ledger.sources import SEEN
from heatledger.physics.reset import supply_by_line
from tests.published.checks import at, check, into

PLACE = "60 °C at 18 °C outdoors to 82 °C at -18 °C"
WHY = "a straight line; the source prints whole degrees"


def supply_at(outdoor):
    line = supply_by_line(
        outdoor=at(outdoor, "°C"), cold_outdoor=at(-18, "°C"), cold_supply=at(82, "°C"),
        mild_outdoor=at(18, "°C"), mild_supply=at(60, "°C"),
    )  # fmt: skip
    return into(line, "°C", absolute=True)


def test_the_ends_of_the_line():
    check(
        claim="Supply at the two ends of a reset line, and held beyond them", source="WIKI-HWR", place=PLACE,
        standing=SEEN, unit="°C", expected=[82, 60, 82, 60],
        got=[supply_at(each) for each in (-18, 18, -30, 25)], tolerance=0.5, why=WHY,
    )  # fmt: skip


def test_the_middle_of_the_line():
    check(
        claim="Supply at 0 °C outdoors on a reset line", source="WIKI-HWR", place=PLACE, standing=SEEN,
        unit="°C", expected=71.0, got=supply_at(0), tolerance=0.1, why=WHY,
    )  # fmt: skip
