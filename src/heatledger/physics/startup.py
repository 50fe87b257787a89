"""What is measured when a boiler is started: the fire, the gas, pressures, and the water that carries air."""

from __future__ import annotations

from heatledger.ledger.dimensions import (
    Bore,
    Concentration,
    HeatContent,
    HeatRate,
    Pressure,
    Ratio,
    Temperature,
    TemperatureDifference,
    Time,
    Velocity,
    Volume,
    VolumeFlow,
    WaterHeat,
)
from heatledger.ledger.formulas import formula
from heatledger.ledger.functions import larger, pi, smaller
from heatledger.ledger.sources import DERIVED, MEMORY, SEEN, cite
from heatledger.ledger.symbols import const

DRY_FLUE_GAS = cite("OFSW", "readings before and after service", SEEN)
AIR_OXYGEN = const(20.9, "%", DRY_FLUE_GAS, "oxygen in dry air")
PIPE_TEST = cite("IRC-554", "test of hydronic piping", SEEN)
LEAST_TEST = const(100, "psi", PIPE_TEST, "least test pressure")
OVER_WORKING = const(1.5, "1", PIPE_TEST, "test over working pressure")


@formula(DRY_FLUE_GAS, title="Excess air")
def excess_air(oxygen: Ratio) -> Ratio:
    """Air beyond what the fuel needs, from the oxygen left in dry flue gas, as instruments work it out.

    Valid for: dry flue gas, oxygen below that of air.
    Leaves out: the make-up of the fuel, which takes 5 to 10 % off the result.

    >>> round(excess_air(oxygen=0.05), 3)
    0.314
    """
    return oxygen / (AIR_OXYGEN - oxygen)


@formula(cite("ICM-2015", "carbon monoxide, air free", SEEN), title="Carbon monoxide, air free")
def air_free_carbon_monoxide(measured: Concentration, oxygen: Ratio) -> Concentration:
    """Carbon monoxide there would be in flue gas without the air that thins it.

    Valid for: dry flue gas, oxygen below that of air.
    Leaves out: nothing.

    >>> round(1e6 * air_free_carbon_monoxide(measured=40e-6, oxygen=0.06), 1)
    56.1
    """
    return measured * (AIR_OXYGEN / (AIR_OXYGEN - oxygen))


@formula(DRY_FLUE_GAS, title="Carbon dioxide by oxygen")
def carbon_dioxide(largest: Ratio, oxygen: Ratio) -> Ratio:
    """Carbon dioxide in dry flue gas that goes with a reading of oxygen.

    ``largest`` is what the fuel gives when it burns without air to spare.

    Valid for: dry flue gas of a clean fire.
    Leaves out: carbon monoxide, and air that is short.

    >>> round(carbon_dioxide(largest=0.155, oxygen=0.05), 4)
    0.1179
    """
    return largest * ((AIR_OXYGEN - oxygen) / AIR_OXYGEN)


@formula(cite("NFPA-54", "input by clocking the meter", MEMORY), title="Input by the meter")
def clocked_input(gas: Volume, time: Time, heat_content: HeatContent) -> HeatRate:
    """Heat of the gas that passes a meter in a time.

    Serves the check of the input by the meter, worked out by hand at startup.

    Valid for: no other appliance burning, and the heat content of gas as the meter measures it.
    Leaves out: pressure and temperature at the meter.

    >>> round(clocked_input(gas=1.0, time=3600.0, heat_content=3.6e7), 0)
    10000.0
    """
    return gas * heat_content / time


@formula(PIPE_TEST, title="Test pressure")
def pressure_of_test(highest: Pressure) -> Pressure:
    """Pressure that piping is tested at with water before it is covered or filled for good.

    ``highest`` is the highest pressure the system can come to.

    Valid for: water, with the boiler, the tank and gauges that are not rated for it shut off.
    Leaves out: what an owner or a maker asks for beyond it.

    >>> round(pressure_of_test(highest=206843.0), 0)
    689476.0
    """
    return larger(OVER_WORKING * highest, LEAST_TEST)


@formula(cite("", "bore and velocity", DERIVED), title="Flow that carries air")
def purge_flow(bore: Bore, velocity: Velocity) -> VolumeFlow:
    """Flow in a tube at the velocity that carries air down and out, or grit with it.

    Valid for: a round tube that runs full.
    Leaves out: tees and bends where air can sit.

    >>> round(1000 * purge_flow(bore=0.0206, velocity=1.2192), 3)
    0.406
    """
    return pi / 4 * bore**2 * velocity


@formula(cite("", "a difference", DERIVED), title="Rise when hot")
def pressure_rise(hot: Pressure, cold: Pressure) -> Pressure:
    """How far the gauge climbs from cold to hot.

    Valid for: two readings of one gauge.
    Leaves out: nothing.

    >>> pressure_rise(hot=120000.0, cold=83000.0)
    37000.0
    """
    return hot - cold


@formula(cite("", "a difference", DERIVED), title="Read less due, pressure")
def pressure_off(read: Pressure, due: Pressure) -> Pressure:
    """How far a pressure that was read lies over the one that is due.

    Valid for: readings in the state the target was worked out for.
    Leaves out: the error of the gauge.

    >>> pressure_off(read=82700.0, due=84100.0)
    -1400.0
    """
    return read - due


@formula(cite("", "a difference", DERIVED), title="Read less due, temperature")
def temperature_off(read: Temperature, due: Temperature) -> TemperatureDifference:
    """How far a temperature that was read lies over the one that is due.

    Valid for: steady weather and water.
    Leaves out: the error of the thermometer.

    >>> temperature_off(read=333.15, due=333.65)
    -0.5
    """
    return read - due


@formula(cite("", "a difference", DERIVED), title="Drop")
def drop_between(supply: Temperature, return_water: Temperature) -> TemperatureDifference:
    """How much the water cools from supply to return.

    Valid for: steady water.
    Leaves out: nothing.

    >>> drop_between(supply=333.15, return_water=323.15)
    10.0
    """
    return supply - return_water


@formula(cite("", "the lower of what is made and what is taken", DERIVED), title="Drop when settled")
def settled_drop(fire: TemperatureDifference, taken: TemperatureDifference) -> TemperatureDifference:
    """Drop across the boiler once the water has settled: the emitters' own, but no more than the fire makes.

    ``fire`` is the drop at full fire, ``taken`` that of the heat the emitters take at this supply.

    Valid for: steady water and weather; a burner that comes and goes shows it on the mean.
    Leaves out: what the pipes lose on the way.

    >>> settled_drop(fire=9.7, taken=4.4)
    4.4
    """
    return smaller(fire, taken)


@formula(cite("", "a difference", DERIVED), title="Return by the drop")
def return_by_drop(supply: Temperature, drop: TemperatureDifference) -> Temperature:
    """Temperature of the water that comes back when it has cooled by a drop.

    Valid for: steady flow.
    Leaves out: nothing.

    >>> return_by_drop(supply=333.15, drop=10.0)
    323.15
    """
    return supply - drop


@formula(cite("", "a difference", DERIVED), title="Read less due, drop")
def drop_off(read: TemperatureDifference, due: TemperatureDifference) -> TemperatureDifference:
    """How far a drop that was read lies over the one that is due.

    Valid for: steady weather and water.
    Leaves out: the error of two thermometers.

    >>> drop_off(read=11.5, due=10.0)
    1.5
    """
    return read - due


@formula(cite("", "balance of heat of the water", DERIVED), title="Return in this state")
def return_after(supply: Temperature, heat: HeatRate, flow: VolumeFlow, water_heat: WaterHeat) -> Temperature:
    """Temperature of the water that comes back when a flow has given up its heat.

    Valid for: steady flow, all of it through the emitters.
    Leaves out: what the pipes lose on the way.

    >>> round(return_after(supply=333.15, heat=4100.0, flow=1e-4, water_heat=4.1e6), 3)
    323.15
    """
    return supply - heat / (flow * water_heat)
