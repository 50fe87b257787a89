"""The boiler by its plate: what it comes to on this site, against the load, and what guards it."""

from __future__ import annotations

from heatledger.ledger.dimensions import (
    HeatRate,
    Length,
    MassFlow,
    Pressure,
    Ratio,
    Temperature,
    TemperatureDifference,
)
from heatledger.ledger.formulas import Parts, formula
from heatledger.ledger.functions import larger, total, where
from heatledger.ledger.sources import DERIVED, MEMORY, PRACTICE, SEEN, cite
from heatledger.ledger.symbols import const

BALANCE = cite("", "heat in is heat out", DERIVED)
RATINGS = cite("HPAC-RATE", "input, output and net rating", SEEN)
THIN_AIR = cite("ICM-2015", "rule of the fuel-gas code, E.1.1(d)", SEEN)
ABOVE_2000 = cite("", "4 % for each 1,000 ft above 2,000 ft", PRACTICE)
DERATED_FROM = const(2000, "ft", THIN_AIR, "height from which burners are derated")
DERATE = const(0.04, "1", THIN_AIR, "part lost with each step of height")
DERATE_STEP = const(1000, "ft", THIN_AIR, "step of height")
NET_RULE = cite("AHRI-RATE", "gross output over 1.15", MEMORY)
NET_ALLOWANCE = const(1.15, "1", NET_RULE, "allowance of the net rating")
DEDUCTION = const(0.15, "1", cite("HPAC-RATE", "a deduction of 15 percent", SEEN), "part taken off")
LARGEST = const(1.40, "1", cite("EXCESSAIR", "sizing rule for boilers", SEEN), "largest output over the load")
STEAM = const(1000, "Btu/lb", cite("NY-4-5.3", "capacity of safety valves", SEEN), "heat of a pound of steam")
LOW_PRESSURE = const(30, "psi", cite("NY-4-5.3", "rise of pressure", SEEN), "limit of the larger rise")
LOW_RISE = const(1.2, "1", cite("NY-4-5.3", "rise of pressure", SEEN), "pressure with the valve blowing")
HIGH_RISE = const(1.1, "1", cite("NY-4-5.3", "rise of pressure", SEEN), "pressure with the valve blowing")


@formula(BALANCE, title="Load on the boiler")
def plant_load(parts: Parts[HeatRate]) -> HeatRate:
    """Heat the boiler has to give on the design day: the loss of the house, and of pipes outside its rooms.

    Valid for: loads that come together.
    Leaves out: hot water, and any allowance.

    >>> round(plant_load(parts=[10000.0, 350.0]), 1)
    10350.0
    """
    return total(parts)


@formula(THIN_AIR, title="Derate for height")
def altitude_factor(elevation: Length) -> Ratio:
    """Share of its rated input a burner may take: above 2,000 ft, 4 % less for each 1,000 ft of height.

    Valid for: burners without instructions of their maker, which come first.
    Leaves out: electric boilers, which thin air does not touch.

    >>> round(altitude_factor(elevation=5000 * 0.3048), 4)
    0.8
    """
    return 1 - DERATE * where(elevation > DERATED_FROM, elevation, 0 * elevation) / DERATE_STEP


@formula(ABOVE_2000, title="Derate for height, the milder reading")
def altitude_factor_above(elevation: Length) -> Ratio:
    """Share of its rated input by the milder reading: 4 % for each 1,000 ft above 2,000 ft.

    Valid for: places that read the rule so; shown beside the stricter reading.
    Leaves out: electric boilers.

    >>> round(altitude_factor_above(elevation=5000 * 0.3048), 4)
    0.88
    """
    return 1 - DERATE * larger(elevation - DERATED_FROM, 0 * elevation) / DERATE_STEP


@formula(THIN_AIR, title="At this height")
def at_height(rated: HeatRate, altitude: Ratio) -> HeatRate:
    """What a rated input or output comes to in the air of the site.

    Valid for: burners without instructions of their maker, which come first; the same efficiency in thin air.
    Leaves out: nothing.

    >>> round(at_height(rated=23445.7, altitude=0.8), 1)
    18756.6
    """
    return rated * altitude


@formula(RATINGS, title="Output")
def output_of(input: HeatRate, efficiency: Ratio) -> HeatRate:
    """Heat the water gets: the input by the efficiency.

    Valid for: thermal efficiency at full fire.
    Leaves out: standby and cycling, which a season has more of.

    >>> round(output_of(input=14653.6, efficiency=0.86), 1)
    12602.1
    """
    return input * efficiency


@formula(RATINGS, title="Output over load")
def output_ratio(output: HeatRate, load: HeatRate) -> Ratio:
    """How many times the load a boiler gives.

    Valid for: gross output at the height of the site.
    Leaves out: nothing; no allowance is in it.

    >>> round(output_ratio(output=83000.0, load=34000.0), 2)
    2.44
    """
    return output / load


@formula(cite("HPAC-RATE", "a deduction of 15 percent", SEEN), title="Net rating, the short way")
def net_rating_by_hand(output: HeatRate) -> HeatRate:
    """Output less the 15 % that the trade takes off for piping and pickup.

    Valid for: supply pipes outside the heated rooms whose loss is not worked out.
    Leaves out: that the rating rule divides by 1.15, which leaves 2 % more.

    >>> round(net_rating_by_hand(output=100.0), 1)
    85.0
    """
    return (1 - DEDUCTION) * output


@formula(
    NET_RULE,
    title="Net rating",
    by_hand=(net_rating_by_hand, "that the rating rule divides by 1.15, not takes 15 % off"),
)
def net_rating(output: HeatRate) -> HeatRate:
    """Output less the allowance for piping and pickup that a net rating holds.

    Valid for: supply pipes outside the heated rooms whose loss is not worked out.
    Leaves out: nothing; with that loss worked out the gross output is compared.

    >>> round(net_rating(output=115.0), 1)
    100.0
    """
    return output / NET_ALLOWANCE


@formula(cite("EXCESSAIR", "sizing rule for boilers", SEEN), title="Largest output")
def largest_output(load: HeatRate) -> HeatRate:
    """Largest output that model sizing rules allow for a load.

    Valid for: boilers that heat the house alone.
    Leaves out: hot water, and a local rule that asks for less.

    >>> round(largest_output(load=10000.0), 1)
    14000.0
    """
    return LARGEST * load


@formula(BALANCE, title="Load over loss")
def load_over_loss(load: HeatRate, loss: HeatRate) -> Ratio:
    """How much more than the house the boiler carries, by pipes outside its rooms.

    Valid for: the design day.
    Leaves out: nothing.

    >>> round(load_over_loss(load=10350.0, loss=10000.0), 3)
    1.035
    """
    return load / loss


@formula(BALANCE, title="Made up for height")
def height_made_up(altitude: Ratio) -> Ratio:
    """How much more a plate has to promise to give its output in the air of the site.

    Valid for: burners.
    Leaves out: nothing.

    >>> round(height_made_up(altitude=0.8), 3)
    1.25
    """
    return 1 / altitude


@formula(BALANCE, title="Return")
def return_at_design(supply: Temperature, drop: TemperatureDifference) -> Temperature:
    """Water that comes back on the design day.

    Valid for: the flow that gives this drop.
    Leaves out: bypasses and mixing at the boiler.

    >>> round(return_at_design(supply=344.261, drop=11.111), 3)
    333.15
    """
    return supply - drop


@formula(cite("NY-4-5.3", "capacity of safety valves", SEEN), title="Relief capacity needed")
def relief_needed(output: HeatRate) -> HeatRate:
    """Heat a relief valve has to pass: all that the boiler can make.

    Valid for: gross output at full fire; the input where the output is not known.
    Leaves out: nothing.

    >>> round(relief_needed(output=43960.7), 1)
    43960.7
    """
    return output


@formula(cite("NY-4-5.3", "capacity of safety valves", SEEN), title="Relief capacity needed, as steam")
def relief_as_steam(output: HeatRate) -> MassFlow:
    """Steam a relief valve has to pass, for valves that are rated so.

    Valid for: low-pressure boilers.
    Leaves out: nothing.

    >>> round(relief_as_steam(output=43960.7) * 3600 / 0.45359237, 0)
    150.0
    """
    return output / STEAM


@formula(cite("NY-4-5.3", "rise of pressure", SEEN), title="Highest pressure with the valve blowing")
def blowing_pressure(allowed: Pressure) -> Pressure:
    """Pressure a boiler may reach while its relief valve blows at full fire.

    Valid for: hot-water boilers; ``allowed`` is the highest working pressure.
    Leaves out: nothing.

    >>> round(blowing_pressure(allowed=206842.7) / 6894.757, 1)
    36.0
    """
    return where(allowed > LOW_PRESSURE, HIGH_RISE * allowed, LOW_RISE * allowed)


@formula(cite("", "factors multiplied", DERIVED), title="From the loss to the load, factors multiplied")
def loss_factors(loss: Ratio, heating_effect: Ratio, pick_up: Ratio, mains: Ratio) -> Ratio:
    """All factors between the loss of the house and the load on the boiler.

    Valid for: factors that each stand on the one before.
    Leaves out: height and the size chosen, which come after.

    >>> round(loss_factors(loss=1.0, heating_effect=1.0, pick_up=1.0, mains=1.03), 3)
    1.03
    """
    return loss * heating_effect * pick_up * mains


@formula(cite("", "factors multiplied", DERIVED), title="From the loss to the plate, factors multiplied")
def plate_factors(load_factor: Ratio, altitude: Ratio, selection: Ratio) -> Ratio:
    """All factors between the loss of the house and the output on the plate of the boiler.

    Valid for: factors that each stand on the one before.
    Leaves out: nothing.

    >>> round(plate_factors(load_factor=1.03, altitude=1.25, selection=1.2), 3)
    1.545
    """
    return load_factor * altitude * selection
