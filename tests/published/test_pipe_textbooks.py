"""Claim: friction is as LINDEBURG, KUDELA, CENGEL-8 and MOODY-1944 have it."""

from heatledger.ledger.sources import MEMORY, SECOND_HAND
from heatledger.physics.friction import pressure_of_head
from heatledger.physics.pumps import hydraulic_power
from tests.physics.hydraulics import factor_at, friction_of, si
from tests.published.checks import check, into


def test_friction_factor_of_rough_pipe():
    check(
        claim="Friction factor at a Reynolds number of 400,000 and a roughness of 0.004",
        source="LINDEBURG", place="example 17.2", standing=SECOND_HAND, expected=0.0287,
        got=factor_at(4e5, 0.004), tolerance=0.00005, why="half a unit of the last digit printed",
    )  # fmt: skip


def test_head_of_an_oil_line():
    speed, number, factor, rubs = friction_of(0.2, 0.2, 0.26e-3, 1e-5)
    assert 127000 < number < 128000 and 6.3 < speed < 6.4 and 0.022 < factor < 0.023
    check(
        claim="Head lost by 0.2 m³/s of a viscous liquid in 500 m of cast iron of 200 mm", source="KUDELA",
        place="example of friction loss", standing=SECOND_HAND, unit="m", expected=117, got=rubs * 500,
        tolerance=0.6, why="half a unit of the last digit printed, and 0.1 % for its gravity",
    )  # fmt: skip


def steel_line():
    density = si(62.36, "lb/ft³")
    viscosity = si(7.536e-4 * 3600, "lb/(ft·h)") / density
    flow = si(0.2, "ft³/h") * 3600
    _, number, _, rubs = friction_of(flow, si(2, "in"), si(0.000007, "ft"), viscosity)
    return number, rubs * si(200, "ft"), density, flow


def test_reynolds_number_of_a_steel_line():
    check(
        claim="Reynolds number of water of 60 °F, 0.2 ft³ a second in a pipe of 2 in.", source="CENGEL-8",
        place="example 8-3", standing=MEMORY, expected=126400, got=steel_line()[0], tolerance=150,
        why="printed with four figures",
    )  # fmt: skip


def test_head_pressure_and_power_of_a_steel_line():
    _, head, density, flow = steel_line()
    check(
        claim="Head lost in 200 ft of stainless pipe of 2 in. at 0.2 ft³ a second", source="CENGEL-8",
        place="example 8-3", standing=MEMORY, unit="ft", expected=27.3, got=into(head, "ft"), tolerance=0.14,
        why="0.5 %: the factor is read from a chart, and gravity taken as 32.2 ft/s²",
    )  # fmt: skip
    check(
        claim="Pressure lost in 200 ft of stainless pipe of 2 in. at 0.2 ft³ a second", source="CENGEL-8",
        place="example 8-3", standing=MEMORY, unit="psi", expected=11.8,
        got=into(pressure_of_head(density=density, head=head), "psi"), tolerance=0.06,
        why="0.5 %: the factor is read from a chart",
    )  # fmt: skip
    check(
        claim="Power to overcome the friction of 200 ft of stainless pipe of 2 in.", source="CENGEL-8",
        place="example 8-3", standing=MEMORY, unit="W", expected=461,
        got=hydraulic_power(flow=flow, head=head, density=density), tolerance=2.3,
        why="0.5 %: the factor is read from a chart",
    )  # fmt: skip


def test_points_of_the_chart():
    points = [(1e5, 0.0, 0.018), (1e6, 0.0, 0.0116), (1e8, 1e-3, 0.0196), (1e8, 1e-2, 0.0379)]
    check(
        claim="Friction factors of smooth pipe, and of two roughnesses in fully rough flow",
        source="MOODY-1944", place="chart", standing=MEMORY, expected=[each for _, _, each in points],
        got=[factor_at(number, rough) for number, rough, _ in points],
        tolerance=[0.0005, 0.00005, 0.00005, 0.00005], why="half a unit of the last digit read",
    )  # fmt: skip
