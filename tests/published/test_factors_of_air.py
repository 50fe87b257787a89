"""Claim: volumes and the trade's factors of air are as EBOOK-W and EMH-97 print them."""

from heatledger.ledger.sources import SEEN
from heatledger.physics.air import air_conductance, room_volume
from heatledger.physics.envelope import rectangle_area
from heatledger.physics.ventilation import flow_loss
from tests.published.checks import at, check, into, si

HEAT = si(0.019, "Btu/(ft³·°F)")


def volume():
    floor = rectangle_area(width=si(24, "ft"), height=si(24, "ft"))
    return room_volume(floor_area=floor, ceiling_height=si(17, "ft"))


def test_volume():
    check(
        claim="Volume of a house of 24 by 24 by 17 ft", source="EBOOK-W", place="house example",
        standing=SEEN, unit="ft³", expected=9792, got=into(volume(), "ft³"), tolerance=0.5, why="exact",
    )  # fmt: skip


def test_one_air_change():
    per_degree = air_conductance(volume=volume(), changes=si(1, "ACH"), air_heat=HEAT)
    check(
        claim="Heat of one air change an hour for a degree", source="EBOOK-W", place="house example",
        standing=SEEN, unit="Btu/(h·°F)", expected=186, got=into(per_degree, "Btu/(h·°F)"), tolerance=0.5,
        why="half a unit of the last digit printed",
    )  # fmt: skip


def test_per_cubic_foot_and_per_cfm():
    loss = flow_loss(flow=si(1, "cfm"), air_heat=HEAT, indoor=at(1, "°F"), outdoor=at(0, "°F"))
    check(
        claim="0.019 for a cubic foot is 1.14 for a cubic foot a minute", source="EMH-97",
        place="infiltration", standing=SEEN, unit="Btu/h", expected=1.14, got=into(loss, "Btu/h"),
        tolerance=0.005, why="half a unit of the last digit printed",
    )  # fmt: skip
