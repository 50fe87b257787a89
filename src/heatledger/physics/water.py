"""Water in the system: density, specific heat, viscosity, and the heat a flow of it carries.

Three short fits of our own stand for the international formulations of water, at 2.5 bar absolute, from
0 to 120 °C. They are held to them by a test. Pressure moves the density by 0.02 % from 1 to 5 bar.
"""

from __future__ import annotations

from heatledger.ledger.dimensions import (
    Conductance,
    Density,
    HeatRate,
    KinematicViscosity,
    Ratio,
    SpecificHeat,
    Temperature,
    TemperatureDifference,
    VolumeFlow,
    WaterHeat,
)  # fmt: skip
from heatledger.ledger.formulas import formula
from heatledger.ledger.functions import absolute, exp
from heatledger.ledger.sources import DERIVED, PRACTICE, cite
from heatledger.ledger.symbols import const

WATER = cite("IAPWS-R6-95", "own fit at 2.5 bar, 0 to 120 °C", DERIVED)
WATER_FLOWS = cite("IAPWS-R12-08", "own fit at 2.5 bar, 0 to 120 °C", DERIVED)
BALANCE = cite("", "heat carried by a flow", DERIVED)
THE_TRADES_500 = cite("", "8.33 lb/gal × 60 min/h × 1 Btu/(lb·°F), rounded", PRACTICE)

FREEZING = const(273.15, "K", WATER, "freezing point of water")
HUNDRED_DEGREES = const(100, "K", WATER, "unit of the fit")
ONE_DENSITY = const(1, "kg/m³", WATER, "unit of the fit")
ONE_HEAT = const(1, "J/(kg·K)", WATER, "unit of the fit")
ONE_VISCOSITY = const(1, "mm²/s", WATER_FLOWS, "unit of the fit")
D0, D1, D2, D3, D4 = (
    const(each, "1", WATER, "coefficient of the density of water")
    for each in (1000.01, 3.97, -70.13, 33.84, -9.25)
)
C0, C1, C2, C3, C4, C5 = (
    const(each, "1", WATER, "coefficient of the specific heat of water")
    for each in (4217.8, -303.6, 860.7, -1142.9, 787.6, -204.3)
)
V0, V1, V2, V3, V4, V5, V6 = (
    const(each, "1", WATER_FLOWS, "coefficient of the viscosity of water")
    for each in (0.5828, -3.4729, 3.5055, -3.6993, 3.0165, -1.4623, 0.305)
)
FIVE_HUNDRED = const(500, "Btu/(h·gpm·°F)", THE_TRADES_500, "the trade's 500")


@formula(WATER, title="Hundreds of degrees above freezing")
def above_freezing(temperature: Temperature) -> Ratio:
    """How far water is above freezing, in hundreds of degrees Celsius; the fits are written in it.

    Valid for: any temperature.
    Leaves out: nothing.

    >>> round(above_freezing(temperature=333.15), 9)
    0.6
    """
    return (absolute(temperature) - FREEZING) / HUNDRED_DEGREES


@formula(WATER, title="Density of water", valid={"temperature": (273.15, 393.15)})
def water_density(temperature: Temperature) -> Density:
    """Mass of a volume of water.

    Valid for: 0 to 120 °C at 1 to 5 bar; within 0.02 % of the formulation it is fitted to.
    Leaves out: pressure, and what is dissolved in the water.

    >>> round(water_density(temperature=333.15), 1)
    983.3
    """
    return ONE_DENSITY * (
        D0 + D1 * above_freezing(temperature) + D2 * above_freezing(temperature) ** 2
        + D3 * above_freezing(temperature) ** 3 + D4 * above_freezing(temperature) ** 4
    )  # fmt: skip


@formula(WATER, title="Specific heat of water", valid={"temperature": (273.15, 393.15)})
def water_specific_heat(temperature: Temperature) -> SpecificHeat:
    """Heat that warms a mass of water by one degree.

    Valid for: 0 to 120 °C at 1 to 5 bar; within 0.05 % of the formulation it is fitted to.
    Leaves out: pressure, and what is dissolved in the water.

    >>> round(water_specific_heat(temperature=333.15), 0)
    4185.0
    """
    return ONE_HEAT * (
        C0 + C1 * above_freezing(temperature) + C2 * above_freezing(temperature) ** 2
        + C3 * above_freezing(temperature) ** 3 + C4 * above_freezing(temperature) ** 4
        + C5 * above_freezing(temperature) ** 5
    )  # fmt: skip


@formula(WATER_FLOWS, title="Viscosity of water", valid={"temperature": (273.15, 393.15)})
def water_viscosity(temperature: Temperature) -> KinematicViscosity:
    """Kinematic viscosity of water: how it resists to flow, over its density.

    Valid for: 0 to 120 °C at 1 to 5 bar; within 0.1 % of the formulation it is fitted to.
    Leaves out: pressure, glycol, and what else is dissolved in the water.

    >>> round(1e6 * water_viscosity(temperature=333.15), 3)
    0.474
    """
    return ONE_VISCOSITY * exp(
        V0 + V1 * above_freezing(temperature) + V2 * above_freezing(temperature) ** 2
        + V3 * above_freezing(temperature) ** 3 + V4 * above_freezing(temperature) ** 4
        + V5 * above_freezing(temperature) ** 5 + V6 * above_freezing(temperature) ** 6
    )  # fmt: skip


@formula(BALANCE, title="Heat carried by a flow of water")
def water_heat(density: Density, specific_heat: SpecificHeat) -> WaterHeat:
    """Heat that a flow of water carries for each degree it cools.

    Valid for: density where the flow is counted, specific heat at the mean temperature.
    Leaves out: nothing. The trade's 500 is this figure for cold water, rounded.

    >>> round(water_heat(density=983.26, specific_heat=4184.6), -3)
    4115000.0
    """
    return density * specific_heat


@formula(THE_TRADES_500, title="Flow for a heat, the short way")
def flow_by_hand(heat: HeatRate, drop: TemperatureDifference) -> VolumeFlow:
    """Flow that carries a heat, by the trade's 500.

    Valid for: cold water; hot water carries up to 3.6 % less at 220 °F.
    Leaves out: that hot water is lighter.

    >>> round(flow_by_hand(heat=11722.84, drop=100 / 9) / 6.30902e-5, 3)
    4.0
    """
    return heat / (FIVE_HUNDRED * drop)


@formula(
    BALANCE,
    title="Flow for a heat",
    by_hand=(flow_by_hand, "that hot water is lighter: 180 °F water carries 2.6 % less than the 500 says"),
)
def flow_for_heat(heat: HeatRate, water_heat: WaterHeat, drop: TemperatureDifference) -> VolumeFlow:
    """Flow of water that carries a heat with a temperature drop.

    Valid for: steady flow.
    Leaves out: what the piping loses on the way.

    >>> round(1000 * flow_for_heat(heat=10000.0, water_heat=4114600.0, drop=10.0), 4)
    0.243
    """
    return heat / (water_heat * drop)


@formula(BALANCE, title="Heat carried")
def heat_carried(flow: VolumeFlow, water_heat: WaterHeat, drop: TemperatureDifference) -> HeatRate:
    """Heat that a flow of water leaves behind when it cools.

    Valid for: steady flow.
    Leaves out: what the piping loses on the way.

    >>> round(heat_carried(flow=0.000243, water_heat=4114600.0, drop=10.0), 0)
    9998.0
    """
    return flow * water_heat * drop


@formula(BALANCE, title="Temperature drop")
def drop_of_heat(heat: HeatRate, flow: VolumeFlow, water_heat: WaterHeat) -> TemperatureDifference:
    """How much a flow of water cools while it gives a heat.

    Valid for: steady flow.
    Leaves out: what the piping loses on the way.

    >>> round(drop_of_heat(heat=10000.0, flow=0.000243, water_heat=4114600.0), 2)
    10.0
    """
    return heat / (flow * water_heat)


@formula(BALANCE, title="Heat carried for each degree")
def capacity(flow: VolumeFlow, water_heat: WaterHeat) -> Conductance:
    """Heat that one flow of water carries for each degree it cools.

    Valid for: steady flow.
    Leaves out: nothing.

    >>> round(capacity(flow=0.0001, water_heat=4114600.0), 2)
    411.46
    """
    return flow * water_heat
