"""Ventilation by fans, and how it joins with what leaks in."""

from __future__ import annotations

from heatledger.ledger.dimensions import AirFlow, Area, Count, HeatRate, Ratio, Temperature, VolumeHeat
from heatledger.ledger.formulas import formula
from heatledger.ledger.functions import larger, smaller
from heatledger.ledger.sources import MEMORY, SEEN, cite
from heatledger.ledger.symbols import const
from heatledger.physics.air import AIR_HEAT_LOSS, EASY_AIR

NEED = cite("HOF-ch17", "eq 11", SEEN)
NEED_US = cite("ASHRAE-62.2", "whole-house flow, inch-pound form", MEMORY)
JOINED = cite("HOF-ch17", "eqs 12-14", SEEN)
PER_AREA = const(0.15, "L/(s·m²)", NEED, "flow for the floor")
PER_PERSON = const(3.5, "L/s", NEED, "flow for each person")
PER_AREA_US = const(0.03, "ft³/(min·ft²)", NEED_US, "flow for the floor")
PER_PERSON_US = const(7.5, "ft³/min", NEED_US, "flow for each person")


@formula(NEED, title="Ventilation a house needs")
def whole_house_ventilation(floor_area: Area, bedrooms: Count) -> AirFlow:
    """Outdoor air that fans should bring, metric form of the rule.

    Valid for: dwellings; one person more than there are bedrooms.
    Leaves out: kitchen and bath exhaust run by hand.

    >>> round(1000 * whole_house_ventilation(floor_area=195.3, bedrooms=3), 1)
    43.3
    """
    return PER_AREA * floor_area + PER_PERSON * (bedrooms + 1)


@formula(NEED_US, title="Ventilation a house needs")
def whole_house_ventilation_us(floor_area: Area, bedrooms: Count) -> AirFlow:
    """Outdoor air that fans should bring, inch-pound form of the rule.

    Valid for: dwellings; one person more than there are bedrooms.
    Leaves out: kitchen and bath exhaust run by hand.

    >>> round(whole_house_ventilation_us(floor_area=185.806, bedrooms=3) / 0.0004719474, 1)
    90.0
    """
    return PER_AREA_US * floor_area + PER_PERSON_US * (bedrooms + 1)


@formula(JOINED, title="Balanced flow")
def balanced_flow(supply: AirFlow, exhaust: AirFlow) -> AirFlow:
    """Flow that comes in by a fan and goes out by a fan.

    Valid for: the sums over all fans that run continuously.
    Leaves out: fans run by hand.

    >>> round(balanced_flow(supply=0.12, exhaust=0.06), 3)
    0.06
    """
    return smaller(supply, exhaust)


@formula(JOINED, title="Unbalanced flow")
def unbalanced_flow(supply: AirFlow, exhaust: AirFlow) -> AirFlow:
    """Flow of fans that comes in or goes out through the leaks of the house.

    Valid for: the sums over all fans that run continuously.
    Leaves out: fans run by hand.

    >>> round(unbalanced_flow(supply=0.12, exhaust=0.05), 3)
    0.07
    """
    return larger(supply, exhaust) - smaller(supply, exhaust)


@formula(JOINED, title="Infiltration with fans running")
def joined_flow(infiltration: AirFlow, unbalanced: AirFlow) -> AirFlow:
    """Air through the leaks of a house while fans pull or push.

    Valid for: fans that run continuously.
    Leaves out: balanced flow, which does not pass the leaks.

    >>> round(joined_flow(infiltration=0.08, unbalanced=0.09), 3)
    0.125
    """
    return larger(unbalanced, infiltration + unbalanced / 2)


@formula(AIR_HEAT_LOSS, title="Loss by air")
def flow_loss(flow: AirFlow, air_heat: VolumeHeat, indoor: Temperature, outdoor: Temperature) -> HeatRate:
    """Heat to warm a flow of outdoor air.

    Valid for: steady flow.
    Leaves out: heat to moisten the air.

    >>> round(flow_loss(flow=0.079, air_heat=1230.0, indoor=293.15, outdoor=270.15), 0)
    2235.0
    """
    return flow * air_heat * (indoor - outdoor)


@formula(cite("E2-CRACK", "0.018 of a cubic foot", SEEN), title="Loss by air, the short way")
def flow_loss_by_hand(flow: AirFlow, indoor: Temperature, outdoor: Temperature) -> HeatRate:
    """Heat to warm a flow of outdoor air, by the trade's 0.018 for a cubic foot of air.

    Valid for: heights up to about 1,000 ft above the sea.
    Leaves out: height above the sea and moisture.

    >>> round(flow_loss_by_hand(flow=0.005, indoor=293.15, outdoor=263.15), 1)
    181.1
    """
    return EASY_AIR * flow * (indoor - outdoor)


@formula(cite("HOF-ch17", "eq 15", SEEN), title="Loss by air with heat recovery")
def recovered_air_loss(
    leaking: AirFlow, recovered: AirFlow, other: AirFlow, effectiveness: Ratio, air_heat: VolumeHeat,
    indoor: Temperature, outdoor: Temperature,
) -> HeatRate:  # fmt: skip
    """Heat to warm all outdoor air of a house, part of which comes in through a heat exchanger.

    Valid for: sensible effectiveness at the flow and the outdoor temperature taken.
    Leaves out: frost control, which may stop the exchanger on the coldest day.

    >>> round(recovered_air_loss(leaking=0.04, recovered=0.04, other=0.0, effectiveness=0.7, air_heat=1230.0,
    ...                          indoor=293.15, outdoor=253.15), 1)
    2558.4
    """
    return air_heat * (leaking + (1 - effectiveness) * recovered + other) * (indoor - outdoor)
