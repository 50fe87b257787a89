"""Outdoor air that leaks in: by leakage area, by cracks, by the test at 50 Pa."""

from __future__ import annotations

from heatledger.ledger.dimensions import (
    AirChanges,
    AirFlow,
    Area,
    Count,
    Length,
    Ratio,
    Temperature,
    TemperatureDifference,
    Velocity,
    Volume,
)  # fmt: skip
from heatledger.ledger.formulas import formula
from heatledger.ledger.functions import larger, sqrt
from heatledger.ledger.sources import MEMORY, SECOND_HAND, SEEN, cite
from heatledger.ledger.symbols import const

BASIC = cite("HOF-2001", "ch. 26, basic model", SECOND_HAND)
ENHANCED = cite("HOF-2001", "ch. 26, enhanced model", SECOND_HAND)
LEAKAGE = cite("HOF-ch17", "eqs 8-10", SEEN)
CRACK = cite("E2-CRACK", "window example", SEEN)
EN_LEAKAGE = cite("EN-12831-2003", "infiltration by n50", SECOND_HAND)

STACK = const(0.000145, "L²/(s²·cm⁴·K)", BASIC, "stack coefficient of one story")
WIND_UNIT = const(1, "L²/(cm⁴·m²)", BASIC, "unit of the wind coefficient")
ONE_KELVIN = const(1, "K", ENHANCED, "unit of the difference")
ONE_METRE_A_SECOND = const(1, "m/s", ENHANCED, "unit of the wind")
STEADY = const(51, "L/(s·cm²)", LEAKAGE, "share of the wind at 6.7 m/s")
RISING = const(0.35, "L/(s·cm²·m·K)", LEAKAGE, "share of the stack")
FLUE = const(0.23, "L/(s·cm²·m·K)", LEAKAGE, "share of the flue")
THOUSAND = const(1000, "1", LEAKAGE, "divisor of the driving force")
ONE_FOOT = const(1, "ft", CRACK, "length the leakage is stated for")


@formula(BASIC, title="Infiltration by leakage area, basic model")
def basic_leakage_flow(
    leakage_area: Area, stories: Count, wind: Ratio, difference: TemperatureDifference, wind_speed: Velocity
) -> AirFlow:
    """Air that leaks into a small house, driven by stack and wind together.

    ``wind`` is the wind coefficient of shelter and stories in (L/s)²/(cm⁴·(m/s)²).

    Valid for: houses of one to three stories; leakage area at 4 Pa.
    Leaves out: flues and fans.

    >>> round(basic_leakage_flow(leakage_area=0.05, stories=2, wind=0.000231, difference=39.0,
    ...                          wind_speed=6.7), 4)
    0.0736
    """
    return leakage_area * sqrt(STACK * stories * difference + wind * WIND_UNIT * wind_speed**2)


@formula(ENHANCED, title="Infiltration, enhanced model")
def enhanced_leakage_flow(
    flow_at_1_pa: AirFlow, exponent: Ratio, stack: Ratio, wind: Ratio, shelter: Ratio,
    difference: TemperatureDifference, wind_speed: Velocity,
) -> AirFlow:  # fmt: skip
    """Air that leaks into a house whose leakage curve is known from a test.

    ``stack`` in (Pa/K) to the exponent, ``wind`` in (Pa·s²/m²) to the exponent.

    Valid for: houses of one to three stories, coefficients by flue and foundation.
    Leaves out: fans.

    >>> round(enhanced_leakage_flow(flow_at_1_pa=0.05, exponent=0.67, stack=0.089, wind=0.156, shelter=0.64,
    ...                             difference=39.0, wind_speed=6.7), 5)
    0.07546
    """
    return flow_at_1_pa * sqrt(
        (stack * (difference / ONE_KELVIN) ** exponent) ** 2
        + (wind * (shelter * wind_speed / ONE_METRE_A_SECOND) ** (2 * exponent)) ** 2
    )


@formula(LEAKAGE, title="Leakage area of the house")
def leakage_area(exposed: Area, unit_leakage: Ratio) -> Area:
    """Area of all leaks of a house, from its exposed surface and how tight it was built.

    Valid for: surfaces to outdoors, attic, garage and vented crawlspace; slabs do not leak.
    Leaves out: the flue, given apart.

    >>> round(1e4 * leakage_area(exposed=356.5, unit_leakage=1.4e-4), 1)
    499.1
    """
    return exposed * unit_leakage


@formula(LEAKAGE, title="Infiltration driving force", valid={"flue": (0.0, 0.5)})
def driving_force(height: Length, indoor: Temperature, outdoor: Temperature, flue: Ratio) -> Velocity:
    """Air that each unit of leakage area lets in at the winter design wind.

    ``height`` is the mean stack height, about 2.5 m a story; ``flue`` the flue's leakage area over the whole.

    Valid for: wind of 6.7 m/s (15 mph), suburban shelter, flue less than half of the leakage area.
    Leaves out: fans.

    >>> round(0.1 * driving_force(height=2.5, indoor=293.15, outdoor=253.15, flue=0.0), 3)
    0.086
    """
    return (STEADY + height * (indoor - outdoor) * (RISING + FLUE * flue)) / THOUSAND


@formula(LEAKAGE, title="Infiltration")
def infiltration_flow(leakage: Area, force: Velocity) -> AirFlow:
    """Air that leaks into the house.

    Valid for: leakage area and driving force of one house.
    Leaves out: fans.

    >>> round(1000 * infiltration_flow(leakage=0.0499, force=0.73), 1)
    36.4
    """
    return leakage * force


@formula(cite("HOF-ch17", "eqs 6-7", SEEN), title="Air changes")
def changes_of(flow: AirFlow, volume: Volume) -> AirChanges:
    """How often a flow of air fills a volume.

    Valid for: outdoor air.
    Leaves out: nothing.

    >>> round(3600 * changes_of(flow=0.036, volume=468.7), 2)
    0.28
    """
    return flow / volume


@formula(CRACK, title="Crack of a double-hung window")
def double_hung_crack(width: Length, height: Length) -> Length:
    """Length of crack around the two sashes of a double-hung window.

    Valid for: double-hung windows.
    Leaves out: the joint of the frame with the wall.

    >>> round(double_hung_crack(width=3.0, height=5.0), 2)
    19.0
    """
    return 2 * height + 3 * width


@formula(CRACK, title="Infiltration by cracks")
def crack_flow(flow_per_foot: AirFlow, crack: Length) -> AirFlow:
    """Air that leaks in through cracks.

    ``flow_per_foot`` is the flow through one foot of crack at the wind taken.

    Valid for: the exposed walls of one room.
    Leaves out: leaks anywhere else.

    >>> round(crack_flow(flow_per_foot=0.0005, crack=3.048), 4)
    0.005
    """
    return flow_per_foot * crack / ONE_FOOT


@formula(EN_LEAKAGE, title="Infiltration by the test at 50 Pa")
def infiltration_by_n50(volume: Volume, at_50: AirChanges, shielding: Ratio, height_factor: Ratio) -> AirFlow:
    """Air that leaks into one room at design weather, from the air changes of the house at 50 Pa.

    Valid for: one room; shielding by its exposed openings.
    Leaves out: fans.

    >>> round(3600 * infiltration_by_n50(volume=50.0, at_50=4 / 3600, shielding=0.03, height_factor=1.0), 1)
    12.0
    """
    return 2 * volume * at_50 * shielding * height_factor


@formula(cite("EN-12831-2003", "larger of the two flows", MEMORY), title="Air flow of a room")
def room_air_flow(infiltration: AirFlow, minimum: AirFlow) -> AirFlow:
    """Air a room is reckoned with: what leaks in, but not less than its occupants need.

    Valid for: rooms without fans.
    Leaves out: mechanical ventilation.

    >>> round(3600 * room_air_flow(infiltration=27 / 3600, minimum=37.5 / 3600), 1)
    37.5
    """
    return larger(infiltration, minimum)
