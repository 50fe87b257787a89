"""Radiators: how their ratings are read, old iron by the square foot, and the short forms of tables."""

from __future__ import annotations

from heatledger.ledger.dimensions import (
    Area,
    Count,
    HeatFlux,
    HeatRate,
    Mass,
    Ratio,
    Temperature,
    TemperatureDifference,
)
from heatledger.ledger.formulas import formula
from heatledger.ledger.functions import log, mean, where
from heatledger.ledger.sources import MEMORY, PRACTICE, SEEN, cite
from heatledger.ledger.symbols import const

POWER_LAW = cite("EN-442", "output by excess temperature", MEMORY)
LOG_MEAN = cite("RADWEB", "logarithmic mean excess", SEEN)
IRON = cite("EDR-TAB", "240 Btu/h for each square foot at 215 °F", SEEN)
STEAM_RATE = const(240, "Btu/(h·ft²)", IRON, "output of a square foot of radiation")
IRON_BY_AREA = const(7, "lb/ft²", cite("", "old cast iron", PRACTICE), "iron of a square foot of radiation")
BY_RISE = cite("CRREL", "eq 3-18", SEEN)


@formula(POWER_LAW, title="Mean excess, arithmetic")
def arithmetic_excess(supply: Temperature, return_: Temperature, air: Temperature) -> TemperatureDifference:
    """Excess of the mean of supply and return over the air: the one that ratings speak of.

    Valid for: reading ratings, and outlets at least half as far above the air as the supply.
    Leaves out: that water cools faster while it is hot; below that it reads high.

    >>> round(arithmetic_excess(supply=348.15, return_=338.15, air=293.15), 6)
    50.0
    """
    return mean(supply, return_) - air


@formula(LOG_MEAN, title="Mean excess, logarithmic")
def log_mean_excess(supply: Temperature, return_: Temperature, air: Temperature) -> TemperatureDifference:
    """Logarithmic mean of the excesses at supply and return.

    Valid for: both ends warmer than the air; exact where output goes with the excess itself.
    Leaves out: the exponent of the emitter.

    >>> round(log_mean_excess(supply=353.15, return_=333.15, air=293.15), 3)
    49.326
    """
    return where(
        return_ < supply,
        lambda: (supply - return_) / log((supply - air) / (return_ - air)),
        lambda: supply - air,
    )


@formula(POWER_LAW, title="Output at an excess", valid={"exponent": (1.0, 2.0)})
def output_at_excess(
    rated: HeatRate, excess: TemperatureDifference, rated_excess: TemperatureDifference, exponent: Ratio
) -> HeatRate:
    """Output at a mean excess, from the output at the excess of the rating.

    Valid for: radiators, convectors and baseboard; both excesses must be the same kind of mean.
    Leaves out: flow; under about 30 % of the rated flow outputs stray by up to 22 %.

    >>> round(output_at_excess(rated=1000.0, excess=30.0, rated_excess=50.0, exponent=1.3), 1)
    514.8
    """
    return rated * (excess / rated_excess) ** exponent


@formula(POWER_LAW, title="Mean excess needed", valid={"exponent": (1.0, 2.0)})
def needed_excess(
    load: HeatRate, rated: HeatRate, rated_excess: TemperatureDifference, exponent: Ratio
) -> TemperatureDifference:
    """Mean excess at which an emitter gives a load.

    Valid for: loads of zero and more.
    Leaves out: flow.

    >>> round(needed_excess(load=1100.0, rated=1800.0, rated_excess=50.0, exponent=1.3), 4)
    34.2332
    """
    return rated_excess * (load / rated) ** (1 / exponent)


@formula(POWER_LAW, title="Mean water needed")
def needed_mean_water(air: Temperature, excess: TemperatureDifference) -> Temperature:
    """Mean water temperature at which an emitter gives a load.

    Valid for: the mean excess that is needed.
    Leaves out: flow.

    >>> round(needed_mean_water(air=293.15, excess=34.2332) - 273.15, 4)
    54.2332
    """
    return air + excess


@formula(BY_RISE, title="Return by the arithmetic mean")
def return_by_arithmetic_mean(
    supply: Temperature, air: Temperature, excess: TemperatureDifference
) -> Temperature:
    """Return that goes with a supply and a mean excess, taking the arithmetic mean.

    Serves as the trade form that the exact law along an emitter is held against.

    Valid for: returns at least half as far above the air as the supply; below that it is far too low.
    Leaves out: that water cools faster while it is hot.

    >>> round(return_by_arithmetic_mean(supply=363.15, air=293.15, excess=35.2038) - 273.15, 4)
    20.4076
    """
    return supply - 2 * (supply - air - excess)


@formula(IRON, title="Equivalent direct radiation")
def radiation_of_sections(sections: Count, section_edr: Area) -> Area:
    """Equivalent direct radiation of a radiator of equal sections.

    Valid for: sections of one kind.
    Leaves out: paint and covers.

    >>> round(radiation_of_sections(sections=7.0, section_edr=0.464515), 4)
    3.2516
    """
    return sections * section_edr


@formula(IRON, title="Rated output of old iron")
def output_of_radiation(edr: Area, rating: HeatFlux) -> HeatRate:
    """Output of cast iron at the point its square feet are counted at: 215 °F, in a room of 70 °F.

    Valid for: cast-iron radiators and convectors counted in square feet of equivalent direct radiation.
    Leaves out: paint and covers, which take 10 to 30 %.

    >>> round(output_of_radiation(edr=1.0, rating=757.1), 1)
    757.1
    """
    return edr * rating


@formula(IRON, title="Output with steam")
def steam_output(edr: Area) -> HeatRate:
    """Output of cast iron with steam, 240 Btu/h for each square foot of radiation.

    Valid for: steam at about 1 psi above the air, in a room of 70 °F.
    Leaves out: pick-up of the pipes.

    >>> round(steam_output(edr=1.0), 1)
    757.1
    """
    return STEAM_RATE * edr


@formula(cite("", "weight of iron by its radiation", PRACTICE), title="Weight of the iron")
def iron_weight(edr: Area) -> Mass:
    """Weight of a cast-iron radiator without water, by its equivalent direct radiation.

    Valid for: old column and tube radiators, roughly.
    Leaves out: the water in it.

    >>> round(iron_weight(edr=1.0), 1)
    34.2
    """
    return IRON_BY_AREA * edr
