"""Claim: air pressure falls with height as the stations of CRC-CD say."""

from heatledger.ledger.sources import SEEN
from heatledger.physics.air import site_pressure
from tests.published.checks import check, into

STATIONS = {255: 98.30, 569: 94.67, 1088: 88.92, 1690: 82.60, 2500: 74.68}


def test_pressure_by_elevation():
    check(
        claim="Air pressure of five stations from 255 to 2,500 m", source="CRC-CD",
        place="design conditions by place", standing=SEEN, unit="kPa", expected=list(STATIONS.values()),
        got=[into(site_pressure(elevation=float(each)), "kPa") for each in STATIONS], tolerance=0.006,
        why="half a unit of the last digit printed",
    )  # fmt: skip
