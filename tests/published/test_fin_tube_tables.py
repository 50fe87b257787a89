"""Claim: fin tube follows one law by water, air and flow; witnesses in print."""

from heatledger.ledger.sources import MEMORY, SECOND_HAND, SEEN
from heatledger.physics.emitters import flow_factor
from heatledger.physics.radiators import arithmetic_excess, log_mean_excess, output_at_excess
from tests.published.checks import check

BY_AIR = {45: 1.22, 55: 1.11, 65: 1.00, 70: 0.95, 75: 0.90, 80: 0.84, 85: 0.80, 90: 0.75}
BY_SPEED = {0.25: 0.905, 0.5: 0.931}


def test_entering_air():
    check(
        claim="Fin tube at 215 °F in air of 45 to 90 °F, against air of 65 °F", source="FT-AIR",
        place="correction by entering air", standing=SEEN, expected=list(BY_AIR.values()),
        got=[
            output_at_excess(rated=1.0, excess=215 - each, rated_excess=150, exponent=1.4) for each in BY_AIR
        ],
        tolerance=0.03, why="the maker's table is up to 3 % steeper than the law",
    )  # fmt: skip


def test_speed_of_water():
    check(
        claim="Fin tube at 0.25 and 0.5 ft/s, against 3 ft/s", source="IBR", place="table of velocities",
        standing=MEMORY, expected=list(BY_SPEED.values()),
        got=[flow_factor(flow=each, least=0.0, rated_flow=3.0, exponent=0.04) for each in BY_SPEED],
        tolerance=0.0006, why="half a unit of the last digit printed, and a hair",
    )  # fmt: skip


def test_the_two_columns():
    check(
        claim="Fin tube at 4 gpm against 1 gpm", source="IBR", place="columns of printed ratings",
        standing=MEMORY, expected=1.057, got=flow_factor(flow=4.0, least=0.0, rated_flow=1.0, exponent=0.04),
        tolerance=0.005, why="printed ratings are rounded to 10 Btu/h",
    )  # fmt: skip


def test_a_textbook_s_form():
    waters = (100, 120, 140, 160, 180, 200, 215)
    textbook = [0.00096865 * (each - 65) ** 1.4172 for each in waters]
    check(
        claim="Fin tube at 100 to 215 °F, in parts of its rating at 200 °F and 1 gpm", source="SIEG",
        place="formula of fin-tube output", standing=MEMORY, expected=textbook,
        got=[
            output_at_excess(rated=1.0, excess=each - 65, rated_excess=135, exponent=1.4) for each in waters
        ],
        tolerance=[0.02 * each for each in textbook],
        why="its exponent is 1.4172, and at its own rating point it gives 1.012",
    )  # fmt: skip


def test_how_high_the_arithmetic_mean_reads():
    supply, back, air = 100.0, 50.0, 0.0
    ratio = arithmetic_excess(supply=supply, return_=back, air=air) / log_mean_excess(
        supply=supply, return_=back, air=air
    )
    check(
        claim="The arithmetic mean is 4 % high where the outlet is half as far above the room as the inlet",
        source="CRREL", place="limits of its means, as a later text quotes them", standing=SECOND_HAND,
        unit="%", expected=4, got=100 * (ratio - 1), tolerance=0.05, why="printed as a whole number",
    )  # fmt: skip
