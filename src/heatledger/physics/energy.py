"""Heat over a season, by degree days, and a house as its fuel bills show it.

Degree days are a sum of daily differences, so they are a temperature difference here; the 24 hours of
each day stand in the formula.
"""

from __future__ import annotations

from heatledger.ledger.dimensions import (
    Conductance,
    Energy,
    HeatContent,
    HeatRate,
    Ratio,
    Temperature,
    TemperatureDifference,
    Volume,
    WaterVolume,
)  # fmt: skip
from heatledger.ledger.formulas import formula
from heatledger.ledger.sources import DERIVED, SEEN, cite
from heatledger.ledger.symbols import const

DEGREE_DAYS = cite("HOF-ch19", "Example 1", SEEN)
DAY = const(24, "h", DEGREE_DAYS, "hours of a day")
BILLS = cite("HH-BILL", "heat loss from fuel used", SEEN)


@formula(DEGREE_DAYS, title="Heat of a season")
def season_heat(coefficient: Conductance, degree_days: TemperatureDifference) -> Energy:
    """Heat a house needs over a season.

    Valid for: degree days to the balance temperature of this house.
    Leaves out: the efficiency of the heat source.

    >>> round(season_heat(coefficient=294.11, degree_days=3300.0) / 3.6e6, 0)
    23294.0
    """
    return DAY * degree_days * coefficient


@formula(DEGREE_DAYS, title="Fuel of a season")
def season_fuel(heat: Energy, efficiency: Ratio) -> Energy:
    """Energy in the fuel that gives the heat of a season.

    Valid for: efficiency over the season, with cycling and standby in it.
    Leaves out: hot water and cooking.

    >>> round(season_fuel(heat=70.2, efficiency=0.702), 1)
    100.0
    """
    return heat / efficiency


@formula(cite("HOF-ch19", "Example 2", SEEN), title="Balance temperature")
def balance_temperature(indoor: Temperature, gains: HeatRate, coefficient: Conductance) -> Temperature:
    """Outdoor temperature below which a house needs heat.

    Valid for: the mean of sun, people and appliances over the season.
    Leaves out: the swing of the gains within a day.

    >>> round(balance_temperature(indoor=294.15, gains=600.0, coefficient=200.0), 2)
    291.15
    """
    return indoor - gains / coefficient


@formula(BILLS, title="Loss per degree from fuel bills")
def coefficient_from_fuel(fuel: Energy, efficiency: Ratio, degree_days: TemperatureDifference) -> Conductance:
    """Loss per degree of a house as its fuel shows it.

    Valid for: fuel for heating alone over the same dates as the degree days.
    Leaves out: the gains, so it goes with the base of the degree days, not with indoor temperature.

    >>> round(coefficient_from_fuel(fuel=1.0e11, efficiency=0.85, degree_days=3300.0), 1)
    298.1
    """
    return fuel * efficiency / (DAY * degree_days)


@formula(BILLS, title="Design loss from fuel bills")
def design_loss_from_fuel(coefficient: Conductance, base: Temperature, outdoor: Temperature) -> HeatRate:
    """Loss at design weather of a house whose loss per degree comes from its bills.

    Valid for: the base temperature of the degree days the coefficient was found with.
    Leaves out: nothing; taking indoor temperature in place of the base counts the gains twice.

    >>> round(design_loss_from_fuel(coefficient=285.7, base=291.483, outdoor=255.372), 0)
    10317.0
    """
    return coefficient * (base - outdoor)


@formula(cite("", "volume × heat content", DERIVED), title="Heat in the fuel")
def fuel_energy(volume: WaterVolume, heat_content: HeatContent) -> Energy:
    """Energy in a volume of oil or propane.

    Valid for: gross heat content, that of burning with the water vapor condensed.
    Leaves out: nothing.

    >>> round(fuel_energy(volume=800 * 0.003785411784, heat_content=3.8652e10) / 1e9, 2)
    117.05
    """
    return volume * heat_content


@formula(cite("", "volume × heat content", DERIVED), title="Heat in the gas")
def gas_energy(gas: Volume, heat_content: HeatContent) -> Energy:
    """Energy in a volume of gas as its meter counts it.

    Valid for: gross heat content at the meter's pressure.
    Leaves out: pressure and temperature at the meter.

    >>> round(gas_energy(gas=98000 * 0.028316846592, heat_content=3.8638e7) / 1e9, 1)
    107.2
    """
    return gas * heat_content


@formula(BILLS, title="Fuel for heating alone")
def heating_fuel(fuel: Energy, other_use: Energy) -> Energy:
    """Fuel of a winter less what hot water and cooking took.

    Valid for: both over the same dates.
    Leaves out: nothing.

    >>> round(heating_fuel(fuel=100.0, other_use=15.0), 1)
    85.0
    """
    return fuel - other_use


@formula(BILLS, title="Heat from the fuel")
def heat_from_fuel(fuel: Energy, efficiency: Ratio) -> Energy:
    """Heat that a house got from its fuel.

    Valid for: efficiency over the season, with cycling and standby in it.
    Leaves out: nothing.

    >>> round(heat_from_fuel(fuel=85.0, efficiency=0.8), 1)
    68.0
    """
    return fuel * efficiency


@formula(BILLS, title="Loss by the bills, like for like")
def loss_like_for_like(coefficient: Conductance, indoor: Temperature, outdoor: Temperature) -> HeatRate:
    """Loss by the bills with no credit for sun and people, as a heat loss is worked out.

    Valid for: a coefficient found with degree days to the base that suits the house.
    Leaves out: the gains, which carry part of it.

    >>> round(loss_like_for_like(coefficient=200.0, indoor=294.15, outdoor=254.15), 1)
    8000.0
    """
    return coefficient * (indoor - outdoor)


@formula(BILLS, title="Bills over sheets")
def bills_over_loss(by_bills: HeatRate, loss: HeatRate) -> Ratio:
    """Loss by the bills as a share of the loss as worked out.

    Valid for: both with no credit for sun and people.
    Leaves out: nothing.

    >>> round(bills_over_loss(by_bills=11350.0, loss=10000.0), 3)
    1.135
    """
    return by_bills / loss
