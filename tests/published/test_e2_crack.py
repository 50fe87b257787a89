"""Claim: the crack method gives the window of E2-CRACK, 3 by 5 ft, double-hung, 20 mph."""

from heatledger.ledger.sources import SEEN
from heatledger.physics.air import air_volume_heat
from heatledger.physics.infiltration import crack_flow, double_hung_crack
from heatledger.physics.ventilation import flow_loss_by_hand
from tests.published.checks import at, check, into, si

PLACE = "window example"


def crack():
    return double_hung_crack(width=si(3, "ft"), height=si(5, "ft"))


def test_length_of_crack():
    check(
        claim="Crack of a double-hung window of 3 by 5 ft", source="E2-CRACK", place=PLACE, standing=SEEN,
        unit="ft", expected=19, got=into(crack(), "ft"), tolerance=0.001, why="exact",
    )  # fmt: skip


def test_loss():
    flow = crack_flow(flow_per_foot=si(59, "ft³/h"), crack=crack())
    loss = flow_loss_by_hand(flow=flow, indoor=at(70, "°F"), outdoor=at(20, "°F"))
    check(
        claim="Loss by the crack of the window at 20 mph", source="E2-CRACK", place=PLACE, standing=SEEN,
        unit="Btu/h", expected=1009, got=into(loss, "Btu/h"), tolerance=0.2,
        why="the exact product is 1008.9",
    )  # fmt: skip


def test_heat_of_a_cubic_foot():
    heat = air_volume_heat(density=si(0.075, "lb/ft³"))
    check(
        claim="Heat of a cubic foot of standard air", source="E2-CRACK", place="derivation of 0.018",
        standing=SEEN, unit="Btu/(ft³·°F)", expected=0.018, got=into(heat, "Btu/(ft³·°F)"),
        tolerance=1e-5, why="exact product of 0.24 and 0.075",
    )  # fmt: skip
