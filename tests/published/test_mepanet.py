"""Claim: water grows, net of steel, as MEPANET tabulates."""

from heatledger.ledger.sources import SEEN
from heatledger.physics.tanks import (
    acceptance_factor,
    diaphragm_tank,
    expanded_volume,
    growth_by_line,
    metal_growth,
    net_growth,
    water_growth,
)
from heatledger.physics.water import water_density
from tests.published.checks import at, check, into, si

ROWS = {140: 0.0149, 160: 0.0208, 180: 0.0279, 200: 0.0350}
COLD = at(40, "°F")


def net(hot: float) -> float:
    """Growth from 40 °F less that of steel."""
    water = water_growth(
        cold_density=water_density(temperature=COLD), hot_density=water_density(temperature=at(hot, "°F"))
    )
    return float(
        net_growth(water=water, metal=metal_growth(growth=6.5e-6 * 1.8, cold=COLD, hot=at(hot, "°F")))
    )


def test_growth():
    check(
        claim="Growth of water net of steel at 140, 160, 180 and 200 °F", source="MEPANET",
        place="table of growth", standing=SEEN, expected=list(ROWS.values()),
        got=[net(each) for each in ROWS], tolerance=0.0004,
        why="three units of the last digit: the metal of its table is not told",
    )  # fmt: skip


def test_the_line():
    check(
        claim="Line of the boiler code at 180 and 200 °F against the table", source="MEPANET",
        place="0.00041 T − 0.0466", standing=SEEN, expected=[0.0272, 0.0354],
        got=[growth_by_line(hot=at(each, "°F")) for each in (180, 200)], tolerance=0.00005,
        why="half a unit of the last digit",
    )  # fmt: skip


def test_tank():
    expanded = expanded_volume(volume=si(40, "gal"), growth=growth_by_line(hot=at(180, "°F")))
    factor = acceptance_factor(cold=si(15, "psi"), hot=si(27, "psi"), air=si(14.7, "psi"))
    check(
        claim="Diaphragm tank for 40 gal at 180 °F, 15 to 27 psi", source="MEPANET",
        place="E V / (1 − Pf/Po)", standing=SEEN, unit="gal", expected=3.78,
        got=into(diaphragm_tank(expanded=expanded, acceptance=factor), "gal"), tolerance=0.01,
        why="its own arithmetic, to the last digit",
    )  # fmt: skip
