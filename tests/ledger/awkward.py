"""Formulas that are awkward to show, each for another reason; none of them is used by a design."""

from __future__ import annotations

from heatledger.ledger.dimensions import (
    AirFlow,
    Area,
    Conductivity,
    Density,
    Head,
    HeatRate,
    Length,
    Pressure,
    Ratio,
    Resistance,
    SpecificHeat,
    Temperature,
    TemperatureDifference,
    Time,
    Transmittance,
    Velocity,
    VolumeFlow,
)
from heatledger.ledger.formulas import Parts, formula
from heatledger.ledger.functions import (
    absolute,
    exp,
    larger,
    log,
    mean,
    read_between,
    smaller,
    sqrt,
    total,
    where,
)
from heatledger.ledger.sources import INVENTED, cite
from heatledger.ledger.symbols import const

HERE = cite("", "invented for a test", INVENTED)
GRAVITY = const(9.80665, "m/s²", HERE, "gravity")
STEFAN = const(5.670374e-8, "W/(m²·K⁴)", HERE, "radiation constant")
ONE_GPM = const(1, "gpm", HERE, "one gpm")
FEET_AT_ONE_GPM = const(0.04, "ft", HERE, "head at one gpm")
EXPANSION = const(17e-6, "1/K", HERE, "expansion")
EXPANSION_US = const(9.4e-6, "1/°F", HERE, "expansion")
LAMINAR = const(2300, "1", HERE, "end of laminar flow")
LAMINAR_FACTOR = const(64, "1", HERE)
SMOOTH = const(0.3164, "1", HERE)
QUARTER = const(0.25, "1", HERE)
EMITTER_POWER = const(1.4, "1", HERE, "exponent of the emitter")
BROKEN_POWER = const(1.75, "1", HERE, "exponent of flow")
CP = const(4.19, "kJ/(kg·K)", HERE, "specific heat of water")
WATER = const(62.4, "lb/ft³", HERE, "density of water")
DENSITY_0 = const(999.84, "kg/m³", HERE)
DENSITY_1 = const(0.0523, "kg/(m³·K)", HERE)
DENSITY_2 = const(-7.56e-3, "kg/(m³·K²)", HERE)
DENSITY_3 = const(4.3e-5, "kg/(m³·K³)", HERE)
DENSITY_4 = const(-1.4e-7, "kg/(m³·K⁴)", HERE)
SMALLEST = const(0.1, "K", HERE, "a tenth of a kelvin")
EDGE = const(0.54, "Btu/(h·ft·°F)", HERE, "edge factor")


@formula(HERE)
def static_and_pump(height: Length, density: Density, gauge: Pressure) -> Pressure:
    """A static height and a pressure in one sum."""
    return density * GRAVITY * height + gauge


@formula(HERE)
def middle(indoor: Temperature, outdoor: Temperature) -> Temperature:
    """Mean of two temperatures."""
    return mean(indoor, outdoor)


@formula(HERE)
def radiant_exchange(area: Area, emissivity: Ratio, hot: Temperature, cold: Temperature) -> HeatRate:
    """Fourth powers of absolute temperatures."""
    return STEFAN * emissivity * area * (absolute(hot) ** 4 - absolute(cold) ** 4)


@formula(HERE)
def radiant_coefficient(hot: Temperature, cold: Temperature) -> Transmittance:
    """The same as a coefficient: a product of two sums."""
    return STEFAN * (absolute(hot) ** 2 + absolute(cold) ** 2) * (absolute(hot) + absolute(cold))


@formula(HERE)
def emitter_output(
    rated: HeatRate, excess: TemperatureDifference, rated_excess: TemperatureDifference
) -> HeatRate:
    """A broken power of a quotient."""
    return rated * (excess / rated_excess) ** EMITTER_POWER


@formula(HERE)
def branch_head(flow: VolumeFlow) -> Head:
    """A broken power of a flow that the source counts in gpm."""
    return FEET_AT_ONE_GPM * (flow / ONE_GPM) ** BROKEN_POWER


@formula(HERE)
def log_mean(first: TemperatureDifference, last: TemperatureDifference) -> TemperatureDifference:
    """A difference over a logarithm."""
    return (first - last) / log(first / last)


@formula(HERE)
def cooled(start: Temperature, outdoor: Temperature, time: Time, slowness: Time) -> Temperature:
    """A temperature that falls along an exponential."""
    return outdoor + (start - outdoor) * exp(-time / slowness)


@formula(HERE)
def quotient_of_differences(indoor: Temperature, space: Temperature, outdoor: Temperature) -> Ratio:
    """Two differences of temperatures, one over the other."""
    return (indoor - space) / (indoor - outdoor)


@formula(HERE)
def larger_flow(by_people: AirFlow, by_area: Area, speed: Velocity) -> AirFlow:
    """The larger of a flow and a product."""
    return larger(by_people, by_area * speed)


@formula(HERE)
def lower_of_two(supply: Temperature, limit: Temperature) -> Temperature:
    """The smaller of two temperatures."""
    return smaller(supply, limit)


@formula(HERE)
def friction_factor(reynolds: Ratio) -> Ratio:
    """Two ranges with a formula each."""
    return where(reynolds < LAMINAR, lambda: LAMINAR_FACTOR / reynolds, lambda: SMOOTH / reynolds**QUARTER)


@formula(HERE)
def safe_log_mean(first: TemperatureDifference, last: TemperatureDifference) -> TemperatureDifference:
    """A branch of which the other side fails when both differences are equal."""
    return where(
        larger(first - last, last - first) < SMALLEST,
        lambda: mean(first, last),
        lambda: (first - last) / log(first / last),
    )


@formula(HERE)
def between_rows(
    size: Length, size_0: Length, size_1: Length, output_0: HeatRate, output_1: HeatRate
) -> HeatRate:
    """Read between two rows of a table."""
    return read_between(size, size_0, size_1, output_0, output_1)


@formula(HERE)
def between_temperatures(
    outdoor: Temperature,
    cold: Temperature,
    mild: Temperature,
    supply_cold: Temperature,
    supply_mild: Temperature,
) -> Temperature:
    """A curve between two points whose both ends are temperatures."""
    return read_between(outdoor, cold, mild, supply_cold, supply_mild)


@formula(HERE)
def all_parts(parts: Parts[HeatRate]) -> HeatRate:
    """A sum of any number of parts."""
    return total(parts)


@formula(HERE)
def total_with_margin(parts: Parts[HeatRate], margin: Ratio) -> HeatRate:
    """A sum of parts inside a product."""
    return total(parts) * (1 + margin)


@formula(HERE)
def growth(length: Length, rise: TemperatureDifference) -> Length:
    """A factor of a millionth, in the metric of its source."""
    return length * EXPANSION * rise


@formula(HERE)
def growth_inch_pound(length: Length, cold: Temperature, hot: Temperature) -> Length:
    """A factor of a millionth, from an inch-pound source."""
    return EXPANSION_US * length * (hot - cold)


@formula(HERE)
def heat_left_over(given: HeatRate, lost: HeatRate) -> HeatRate:
    """A difference that may be near zero, or negative."""
    return given - lost


@formula(HERE)
def nearly_equal(flow: VolumeFlow, supply: Temperature, back: Temperature, density: Density) -> HeatRate:
    """A small difference of temperatures times large numbers."""
    return flow * density * CP * (supply - back)


@formula(HERE)
def outflow_speed(pressure: Pressure, density: Density) -> Velocity:
    """A root of a quotient with units."""
    return sqrt(2 * pressure / density)


@formula(HERE)
def film_and_layers(
    film: Transmittance, layers: Resistance, cavity: Transmittance, brick: Resistance
) -> Transmittance:
    """Fractions inside fractions."""
    return 1 / (1 / film + layers + 1 / (cavity + 1 / brick))


@formula(HERE)
def wind_power(density: Density, area: Area, speed: Velocity) -> HeatRate:
    """A cube with a unit."""
    return density * area * speed**3 / 2


@formula(HERE)
def fan_law(power: HeatRate, speed: Velocity, old_speed: Velocity) -> HeatRate:
    """A cube of a quotient."""
    return power * (speed / old_speed) ** 3


@formula(HERE)
def water_density(temperature: TemperatureDifference) -> Density:
    """A long polynomial; the temperature counts from the ice point."""
    return (
        DENSITY_0 + DENSITY_1 * temperature + DENSITY_2 * temperature**2
        + DENSITY_3 * temperature**3 + DENSITY_4 * temperature**4
    )  # fmt: skip


@formula(HERE)
def layer_loss(
    conductivity: Conductivity, thickness: Length, area: Area, rise: TemperatureDifference
) -> HeatRate:
    """Feet and inches in one product."""
    return conductivity / thickness * area * rise


@formula(HERE)
def slab_edge(perimeter: Length, indoor: Temperature, outdoor: Temperature) -> HeatRate:
    """A constant of an inch-pound table."""
    return EDGE * perimeter * (indoor - outdoor)


@formula(HERE)
def water_heat_by_hand(flow: VolumeFlow, rise: TemperatureDifference) -> HeatRate:
    """Heat that water carries, by round numbers."""
    return flow * WATER * rise * CP


@formula(HERE, by_hand=(water_heat_by_hand, "the fall of density with temperature"))
def water_heat(
    flow: VolumeFlow, density: Density, heat: SpecificHeat, rise: TemperatureDifference
) -> HeatRate:
    """Heat that water carries, with a factor left over in inch-pound units."""
    return flow * density * heat * rise
