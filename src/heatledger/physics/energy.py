"""Heat over a season, by degree days, and a house as its fuel bills show it.

Degree days are a sum of daily differences, so they are a temperature difference here; the 24 hours of
each day stand in the formula.
"""

from __future__ import annotations

from heatledger.ledger.dimensions import (
    Conductance,
    Energy,
    HeatRate,
    Ratio,
    Temperature,
    TemperatureDifference,
)  # fmt: skip
from heatledger.ledger.formulas import formula
from heatledger.ledger.sources import SEEN, cite
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
