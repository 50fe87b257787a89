"""Expansion tanks: how much water grows, and the tank that takes it without lifting the relief valve.

Pressures are gauge pressures; ``air`` is the pressure of the air at the site, absolute.
"""

from __future__ import annotations

from heatledger.ledger.dimensions import Density, Expansion, Pressure, Ratio, Temperature, WaterVolume
from heatledger.ledger.formulas import formula
from heatledger.ledger.functions import absolute, larger, smaller, where
from heatledger.ledger.sources import DERIVED, JUDGMENT, MEMORY, SEEN, cite
from heatledger.ledger.symbols import const

TANK = cite("ASHRAE-TANK", "equation 14, diaphragm tank", SEEN)
PLAIN_TANK = cite("MICH-272", "form of the boiler code, an image beside the tables", MEMORY)
CODE_LINE = cite("MEPANET", "line of the boiler code, net of steel", SEEN)
GAS = cite("", "law of a gas at one temperature", DERIVED)
EN_TANK = cite("EN-12828", "annex D", MEMORY)
LINE_SLOPE = const(0.00041, "1/°F", CODE_LINE, "growth for each degree")
LINE_START = const(0.0466, "1", CODE_LINE, "growth at zero Fahrenheit")
ZERO_FAHRENHEIT = const(459.67, "°R", cite("", "zero of the Fahrenheit scale", DERIVED), "0 °F")
UNDER_RELIEF = const(5, "psi", cite("ASME-IV", "below the relief valve", MEMORY), "room below the setting")
SHARE_OF_RELIEF = const(0.9, "1", cite("", "90 % of the relief setting", JUDGMENT), "share of the setting")
LEAST_GAS = const(0.02, "1", cite("", "gas left in a full tank", JUDGMENT), "least share of gas")
BAR = const(1, "bar", EN_TANK, "air pressure of the form")
EN_VAPOR = const(0.3, "bar", EN_TANK, "margin at the top")
EN_LEAST = const(0.7, "bar", EN_TANK, "lowest precharge")
EN_SMALL_VALVE = const(5, "bar", EN_TANK, "setting with a fixed margin")
EN_BELOW = const(0.5, "bar", EN_TANK, "room below the setting")
EN_SHARE = const(0.9, "1", EN_TANK, "share of a higher setting")
EN_RESERVE = const(0.005, "1", EN_TANK, "reserve of water")
EN_LEAST_RESERVE = const(3, "L", EN_TANK, "lowest reserve")
EN_TANK_RESERVE = const(0.2, "1", EN_TANK, "reserve of a small tank")
EN_COLD_SHARE = const(0.8, "1", EN_TANK, "gas left in a small tank, cold")


@formula(TANK, title="Growth of the water")
def water_growth(cold_density: Density, hot_density: Density) -> Ratio:
    """Share by which water grows from filling to the hottest it gets.

    Valid for: densities at one pressure.
    Leaves out: growth of the pipes that hold it.

    >>> round(water_growth(cold_density=999.04, hot_density=970.4), 4)
    0.0295
    """
    return cold_density / hot_density - 1


@formula(TANK, title="Growth of the metal")
def metal_growth(growth: Expansion, cold: Temperature, hot: Temperature) -> Ratio:
    """Share by which pipes and boiler grow in volume: three times the growth of a length.

    ``growth`` is the growth of a length for each degree.

    Valid for: a system of one metal that warms as its water does.
    Leaves out: plastic tube, which grows more.

    >>> round(metal_growth(growth=1.17e-5, cold=288.706, hot=355.372), 5)
    0.00234
    """
    return 3 * growth * (hot - cold)


@formula(TANK, title="Growth to be taken up")
def net_growth(water: Ratio, metal: Ratio) -> Ratio:
    """Share of the system volume that the tank has to take up.

    Valid for: growth of water and metal over the same temperatures.
    Leaves out: nothing.

    >>> round(net_growth(water=0.029498, metal=0.00234), 6)
    0.027158
    """
    return water - metal


@formula(CODE_LINE, title="Growth by the line of the boiler code", valid={"hot": (344.2611, 410.9279)})
def growth_by_line(hot: Temperature) -> Ratio:
    """Growth of the water, net of steel, by the straight line of the boiler code.

    Valid for: 160 to 280 °F; below 180 °F it asks for too little, so the larger of two methods governs.
    Leaves out: the temperature of filling and the fluid.

    >>> round(growth_by_line(hot=363.706), 5)
    0.03335
    """
    return LINE_SLOPE * (absolute(hot) - ZERO_FAHRENHEIT) - LINE_START


@formula(TANK, title="Water that expands")
def expanded_volume(volume: WaterVolume, growth: Ratio) -> WaterVolume:
    """Water that leaves the pipes for the tank between filling and the hottest.

    Valid for: all water of the system at one temperature, which is on the safe side.
    Leaves out: nothing.

    >>> round(expanded_volume(volume=0.1893, growth=0.027158), 5)
    0.00514
    """
    return volume * growth


@formula(TANK, title="Acceptance factor")
def acceptance_factor(cold: Pressure, hot: Pressure, air: Pressure) -> Ratio:
    """Share of a diaphragm tank that can fill with water between the cold and the highest pressure.

    Valid for: a tank charged to the cold pressure.
    Leaves out: warming of its gas.

    >>> round(acceptance_factor(cold=82737.0, hot=186158.0, air=101325.0), 4)
    0.3597
    """
    return 1 - (cold + air) / (hot + air)


@formula(TANK, title="Volume of the tank")
def diaphragm_tank(expanded: WaterVolume, acceptance: Ratio) -> WaterVolume:
    """Smallest diaphragm tank that takes the water that expands.

    Valid for: a tank charged to the cold fill pressure.
    Leaves out: a reserve of water; the next larger stock size brings one.

    >>> round(diaphragm_tank(expanded=1.35789, acceptance=0.359747), 4)
    3.7746
    """
    return expanded / acceptance


@formula(CODE_LINE, title="Volume of the tank by the line of the boiler code")
def tank_by_line(volume: WaterVolume, growth: Ratio, acceptance: Ratio) -> WaterVolume:
    """Smallest diaphragm tank by the straight line of the boiler code.

    Valid for: 160 to 280 °F; ``acceptance`` is the share of a plain tank that takes water.
    Leaves out: the temperature of filling and the fluid.

    >>> round(tank_by_line(volume=40.0, growth=0.0272, acceptance=0.28777), 2)
    3.78
    """
    return volume * growth / acceptance


@formula(PLAIN_TANK, title="Part of a plain tank that takes water")
def plain_share(cold: Pressure, hot: Pressure, air: Pressure) -> Ratio:
    """Share of a closed steel tank that can fill with water between the cold and the highest pressure.

    Valid for: a tank that starts full of air at the pressure of the site.
    Leaves out: air that the water takes away in time.

    >>> round(plain_share(cold=82737.0, hot=206843.0, air=101353.0), 4)
    0.2217
    """
    return air / (cold + air) - air / (hot + air)


@formula(PLAIN_TANK, title="Volume of a plain tank")
def plain_tank(expanded: WaterVolume, cold: Pressure, hot: Pressure, air: Pressure) -> WaterVolume:
    """Smallest closed steel tank without a diaphragm.

    Valid for: a tank that starts full of air at the pressure of the site.
    Leaves out: air that the water takes away in time.

    >>> round(plain_tank(expanded=3.335, cold=82737.0, hot=206843.0, air=101353.0), 2)
    15.04
    """
    return expanded / (air / (cold + air) - air / (hot + air))


@formula(cite("ASME-IV", "room below the relief valve", MEMORY), title="Highest pressure at the tank")
def highest_at_tank(relief: Pressure) -> Pressure:
    """Highest pressure to plan for at the tank: the lower of the setting less a tenth, and less 5 psi.

    Valid for: tank and relief valve at one height, the tank at the suction of the circulator.
    Leaves out: head of a circulator that pumps toward the tank.

    >>> round(highest_at_tank(relief=206843.0), 0)
    172369.0
    """
    return smaller(SHARE_OF_RELIEF * relief, relief - UNDER_RELIEF)


@formula(GAS, title="Gas left in the tank")
def gas_left(
    tank: WaterVolume, precharge: Pressure, fill: Pressure, air: Pressure, expanded: WaterVolume
) -> WaterVolume:
    """Room the gas of a tank still has when the system is hot; a full tank counts a fiftieth of it.

    Valid for: a diaphragm tank (over-charged it is empty when cold), or a plain one charged with mere air.
    Leaves out: warming of the gas.

    >>> round(gas_left(tank=0.02, precharge=82737.0, fill=82737.0, air=101325.0, expanded=0.005), 4)
    0.015
    """
    return larger(
        where(fill > precharge, tank * (precharge + air) / (fill + air), tank) - expanded, LEAST_GAS * tank
    )


@formula(GAS, title="Pressure hot")
def hot_pressure(tank: WaterVolume, precharge: Pressure, air: Pressure, gas: WaterVolume) -> Pressure:
    """Pressure at the tank when the system is hot.

    ``gas`` is the room its gas has left then.

    Valid for: a diaphragm tank, and a plain one whose charge is the air of the site.
    Leaves out: warming of the gas, and a relief valve that opens before.

    >>> round(hot_pressure(tank=0.02, precharge=82737.0, air=101325.0, gas=0.015), 0)
    144091.0
    """
    return (precharge + air) * tank / gas - air


@formula(EN_TANK, title="Precharge by EN 12828")
def en_precharge(static: Pressure) -> Pressure:
    """Precharge of a tank by the European standard.

    Valid for: water below 100 °C.
    Leaves out: head of a circulator that pumps toward the tank.

    >>> round(en_precharge(static=60000.0), 0)
    90000.0
    """
    return larger(static + EN_VAPOR, EN_LEAST)


@formula(EN_TANK, title="Highest pressure by EN 12828")
def en_highest(relief: Pressure) -> Pressure:
    """Highest pressure in use by the European standard.

    Valid for: tank and safety valve at one height.
    Leaves out: nothing.

    >>> round(en_highest(relief=300000.0), 0)
    250000.0
    """
    return where(relief > EN_SMALL_VALVE, EN_SHARE * relief, relief - EN_BELOW)


@formula(EN_TANK, title="Reserve of water by EN 12828")
def en_reserve(volume: WaterVolume) -> WaterVolume:
    """Water that a tank above 15 L keeps against small leaks.

    Valid for: tanks above 15 L.
    Leaves out: nothing.

    >>> round(en_reserve(volume=0.2), 4)
    0.003
    """
    return larger(EN_RESERVE * volume, EN_LEAST_RESERVE)


@formula(EN_TANK, title="Volume of the tank by EN 12828")
def en_tank(
    expanded: WaterVolume, reserve: WaterVolume, precharge: Pressure, highest: Pressure
) -> WaterVolume:
    """Tank volume by the European standard.

    Valid for: results above 15 L.
    Leaves out: metal that grows with the water.

    >>> round(1000 * en_tank(expanded=0.00444, reserve=0.003, precharge=90000.0, highest=250000.0), 1)
    16.3
    """
    return (expanded + reserve) * (highest + BAR) / (highest - precharge)


@formula(EN_TANK, title="Volume of a small tank by EN 12828")
def en_small_tank(expanded: WaterVolume, precharge: Pressure, highest: Pressure) -> WaterVolume:
    """Tank volume by the European standard where the result is 15 L or less: a fifth of it is reserve.

    Valid for: a pressure factor below 5.
    Leaves out: metal that grows with the water.

    >>> round(1000 * en_small_tank(expanded=0.001181, precharge=80000.0, highest=250000.0), 2)
    4.13
    """
    return (
        expanded * ((highest + BAR) / (highest - precharge))
        / (1 - EN_TANK_RESERVE * ((highest + BAR) / (highest - precharge)))
    )  # fmt: skip


@formula(EN_TANK, title="Cold fill pressure by EN 12828")
def en_cold_fill(precharge: Pressure) -> Pressure:
    """Pressure to fill a small tank to when cold, so that a fifth of it is water.

    Valid for: the tank as sized, its reserve a fifth.
    Leaves out: nothing.

    >>> round(en_cold_fill(precharge=80000.0), 0)
    125000.0
    """
    return (precharge + BAR) / EN_COLD_SHARE - BAR
