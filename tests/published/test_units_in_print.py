"""Claim: our units turn metric values into the inch-pound values printed beside them."""

from heatledger.ledger.sources import SEEN
from tests.published.checks import at, check, into, si

FLOWS = {30: 18, 60: 35, 40: 24, 20: 12}


def test_ventilation_rates():
    check(
        claim="Ventilation rates in m³/h and cfm", source="PHCA", place="rates for a person and for exhaust",
        standing=SEEN, unit="cfm", expected=list(FLOWS.values()),
        got=[into(si(each, "m³/h"), "cfm") for each in FLOWS], tolerance=0.5,
        why="half a unit of the last digit printed",
    )  # fmt: skip


def test_room_temperature():
    check(
        claim="Room temperature in °F and °C", source="IBC-1204", place="1204.1", standing=SEEN, unit="°C",
        expected=20, got=into(at(68, "°F"), "°C", absolute=True), tolerance=0.001, why="exact",
    )  # fmt: skip
