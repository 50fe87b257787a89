"""Claim: friction and valves are as CRANE-TP410 works them, as notebooks that quote its answers have it."""

from heatledger.ledger.sources import SECOND_HAND
from heatledger.physics.fittings import coefficient_for_head, equivalent_length, loss_coefficient
from tests.physics.hydraulics import friction_of, si
from tests.published.checks import check, into


def smooth_tube():
    # 2 in schedule 40 is taken for the tube of 50 mm; water of 30 °C.
    return friction_of(si(200, "L/min"), si(2.067, "in"), 1.52e-6, 0.8006e-6)


def test_reynolds_number_of_a_smooth_tube():
    check(
        claim="Reynolds number of 200 L/min in a plastic tube of 50 mm", source="CRANE-TP410",
        place="problem 7.1", standing=SECOND_HAND, expected=100600, got=smooth_tube()[1], tolerance=1500,
        why="1.5 %: the bore is not stated, and 2 in. schedule 40 is taken for it",
    )  # fmt: skip


def test_friction_factor_of_a_smooth_tube():
    check(
        claim="Friction factor of 200 L/min in a plastic tube of 50 mm", source="CRANE-TP410",
        place="problem 7.1", standing=SECOND_HAND, expected=0.0179, got=smooth_tube()[2], tolerance=0.00027,
        why="1.5 %: it is read from a chart",
    )  # fmt: skip


def test_loss_coefficient_of_a_valve():
    k = loss_coefficient(flow_coefficient=si(500, "Kv"), bore=0.154)
    check(
        claim="Loss coefficient of a valve of Kv 500 in a bore of 154 mm", source="CRANE-TP410",
        place="problem 7.2", standing=SECOND_HAND, expected=3.6, got=k, tolerance=0.01,
        why="printed with two figures",
    )  # fmt: skip
    lengths = equivalent_length(loss_coefficient=k, bore=0.154, friction_factor=0.015)
    check(
        claim="Length of pipe that resists as much as a valve of Kv 500", source="CRANE-TP410",
        place="problem 7.2", standing=SECOND_HAND, unit="m", expected=37.0, got=lengths, tolerance=0.08,
        why="printed with three figures, from a K of two",
    )  # fmt: skip


def test_flow_coefficient_of_a_control_valve():
    # Flow over the root of a pressure, with the weight of the water over that of the rating water.
    pressure = si(80.6 - 70.8, "psi") * si(62.364, "lb/ft³") / si(60.998, "lb/ft³")
    head = pressure / (si(62.364, "lb/ft³") * 9.80665)
    cv = into(coefficient_for_head(flow=si(250, "gpm"), head=head), "Cv")
    check(
        claim="Flow coefficient of a control valve that takes 9.8 psi at 250 gpm", source="CRANE-TP410",
        place="problem 7.27", standing=SECOND_HAND, unit="Cv", expected=79.94, got=cv, tolerance=1.2,
        why="1.5 %: its answer counts the reducers at the valve, ours does not",
    )  # fmt: skip
