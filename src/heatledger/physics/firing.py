"""The boiler as it runs: flow through it, how often it starts, and its efficiency by return and season."""

from __future__ import annotations

from heatledger.ledger.dimensions import (
    Count,
    Energy,
    HeatRate,
    Mass,
    Ratio,
    Temperature,
    TemperatureDifference,
    Time,
    VolumeFlow,
    WaterHeat,
    WaterVolume,
)
from heatledger.ledger.formulas import formula
from heatledger.ledger.functions import read_between, where
from heatledger.ledger.sources import DERIVED, MEMORY, PRACTICE, SECOND_HAND, SEEN, cite
from heatledger.ledger.symbols import const

BALANCE = cite("", "heat in is heat out", DERIVED)
STORES = cite("", "heat to warm water and metal", DERIVED)
WATER_STORES = const(8.33, "Btu/(gal·°F)", STORES, "heat of a gallon of water")
IRON_STORES = const(
    0.12, "Btu/(lb·°F)", cite("", "specific heat of iron", PRACTICE), "heat of a pound of iron"
)
HOUR = const(1, "h", cite("", "definition", DERIVED), "one hour")
IDLE = cite("BNL-HYDRONIC", "straight line of input by output", MEMORY)
CURVE = cite("ETH-BOILER", "efficiency by return temperature", SECOND_HAND)


@formula(BALANCE, title="Lowest flow")
def least_flow(fire: HeatRate, water_heat: WaterHeat, largest_rise: TemperatureDifference) -> VolumeFlow:
    """Flow below which a boiler lifts its water by more than it is made for.

    Valid for: the firing rate given.
    Leaves out: its maker's own lowest flow, which comes first.

    >>> round(60000 * least_flow(fire=29307.1, water_heat=4.1e6, largest_rise=22.222), 2)
    19.3
    """
    return fire / (water_heat * largest_rise)


@formula(BALANCE, title="Rise through the boiler")
def boiler_rise(fire: HeatRate, flow: VolumeFlow, water_heat: WaterHeat) -> TemperatureDifference:
    """How far a boiler lifts the water that passes it.

    Valid for: steady firing.
    Leaves out: nothing.

    >>> round(boiler_rise(fire=23445.7, flow=0.00018927, water_heat=4.1e6), 1)
    30.2
    """
    return fire / (flow * water_heat)


@formula(cite("UPC-TDN", "turndown", SEEN), title="Turndown")
def turndown(output: HeatRate, least_output: HeatRate) -> Ratio:
    """How many times its lowest output a boiler gives at full fire.

    Valid for: burners that modulate or have stages.
    Leaves out: nothing.

    >>> round(turndown(output=30000.0, least_output=6000.0), 1)
    5.0
    """
    return output / least_output


@formula(STORES, title="Heat stored between off and on")
def stored_heat(water: WaterVolume, iron: Mass, differential: TemperatureDifference) -> Energy:
    """Heat that water and iron take up while the burner lifts them by its differential.

    Valid for: the water that moves while the least is asked.
    Leaves out: copper, floors and walls.

    >>> round(stored_heat(water=0.045425, iron=136.08, differential=11.111) / 1055.056, 0)
    2719.0
    """
    return (WATER_STORES * water + IRON_STORES * iron) * differential


@formula(BALANCE, title="Burner on")
def burner_on(stored: Energy, least_output: HeatRate, load: HeatRate) -> Time:
    """How long the burner runs at its lowest output before it is too hot.

    Valid for: a load above zero and below the lowest output.
    Leaves out: lag of the sensor.

    >>> round(burner_on(stored=2868400.0, least_output=7033.7, load=2637.6) / 60, 1)
    10.9
    """
    return stored / (least_output - load)


@formula(BALANCE, title="Burner off")
def burner_off(stored: Energy, load: HeatRate) -> Time:
    """How long the water carries the load after the burner stops.

    Valid for: a load above zero.
    Leaves out: lag of the sensor.

    >>> round(burner_off(stored=2868400.0, load=2637.6) / 60, 1)
    18.1
    """
    return stored / load


@formula(BALANCE, title="Starts in an hour")
def starts_in_an_hour(on: Time, off: Time) -> Count:
    """How often the burner starts in an hour.

    Valid for: a steady load.
    Leaves out: delays that a control puts in.

    >>> round(starts_in_an_hour(on=652.0, off=1087.0), 2)
    2.07
    """
    return HOUR / (on + off)


@formula(BALANCE, title="Most starts in an hour")
def most_starts(stored: Energy, least_output: HeatRate) -> Count:
    """Starts in an hour at the load that makes most of them, half of the lowest output.

    Serves as a bound: the starts in an hour at any load stay under it.

    Valid for: any load below the lowest output.
    Leaves out: delays that a control puts in.

    >>> round(most_starts(stored=2868400.0, least_output=7033.7), 2)
    2.21
    """
    return HOUR * least_output / (4 * stored)


@formula(CURVE, title="Efficiency at this return")
def condensing_efficiency(
    return_water: Temperature,
    lower_return: Temperature,
    higher_return: Temperature,
    lower_efficiency: Ratio,
    higher_efficiency: Ratio,
    colder: Ratio,
    warmer: Ratio,
) -> Ratio:
    """Efficiency of a condensing boiler, on the straight line between two rows of the table.

    ``colder`` and ``warmer`` are what the rows on either side say, for water that is not between these two.

    Valid for: natural gas at full fire; returns inside the table, past which its last row is kept.
    Leaves out: part load, where a modulating burner does a little better.

    >>> round(condensing_efficiency(305.372, 299.817, 310.928, 0.955, 0.932, 0.955, 0.932), 4)
    0.9435
    """
    return where(
        return_water < lower_return,
        colder,
        lambda: where(
            return_water > higher_return,
            warmer,
            lambda: read_between(
                return_water, lower_return, higher_return, lower_efficiency, higher_efficiency
            ),
        ),
    )


@formula(IDLE, title="Efficiency over a season")
def season_efficiency(steady: Ratio, idle: Ratio, part_load: Ratio) -> Ratio:
    """Efficiency of a boiler that idles between calls.

    ``idle`` is the fuel it burns idling over that at full fire; ``part_load`` the mean load over its output.

    Serves to hold the efficiency of a season against published bands; no step asks for it.

    Valid for: boilers without condensing; sealed cold-start 0.003, old ones kept hot 0.04.
    Leaves out: losses of pipes.

    >>> round(season_efficiency(steady=0.86, idle=0.02, part_load=0.15), 3)
    0.772
    """
    return steady * part_load / (idle + (1 - idle) * part_load)


@formula(cite("PME-94749", "volume of a buffer tank", SEEN), title="Volume of a buffer tank")
def buffer_volume(
    time: Time, least_output: HeatRate, load: HeatRate, rise: TemperatureDifference
) -> WaterVolume:
    """Water that keeps a burner on for a time while the load is smaller than its lowest output.

    Valid for: the rise of the tank between off and on; a load below the lowest output.
    Leaves out: water of the system that moves all the time, which may be taken off.

    >>> round(buffer_volume(time=600.0, least_output=14067.0, load=586.0, rise=11.111), 2)
    0.17
    """
    return time * (least_output - load) / (WATER_STORES * rise)
