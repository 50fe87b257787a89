"""Formulas that are awkward to show, each for another reason; none of them is used by a design."""

from __future__ import annotations

from heatledger.ledger import dimensions as d
from heatledger.ledger.dimensions import (
    AirFlow, Area, Conductance, Conductivity, Count, Density, Energy, Head, HeatFlux, HeatRate, Length,
    Pressure, Ratio, Resistance, SpecificHeat, Temperature, TemperatureDifference, Time, Transmittance,
    Velocity, Viscosity, Volume, VolumeFlow,
)  # fmt: skip
from heatledger.ledger.formulas import Parts, formula
from heatledger.ledger.functions import (
    absolute, exp, larger, log, mean, pi, read_between, smaller, sqrt, total, where,
)  # fmt: skip
from heatledger.ledger.sources import INVENTED, cite
from heatledger.ledger.symbols import const

HERE = cite("", "invented for a test", INVENTED)
GRAVITY = const(9.80665, "m/s²", HERE, "gravity")
STEFAN = const(5.670374e-8, "W/(m²·K⁴)", HERE, "radiation constant")
ONE_GPM = const(1, "gpm", HERE, "one gpm")
ONE_KELVIN = const(1, "K", HERE, "one kelvin")
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
FIVE_HUNDRED = const(500, "Btu/(h·gpm·°F)".replace("gpm", "gal"), HERE)
DRY_AIR = const(287.042, "J/(kg·K)", HERE, "gas constant of dry air")
P_ZERO = const(0.6112, "kPa", HERE, "pressure at the ice point")
MAGNUS_A = const(17.62, "1", HERE)
MAGNUS_B = const(243.12, "K", HERE)
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
def emitter_output(rated: HeatRate, excess: TemperatureDifference, rated_excess: TemperatureDifference) -> HeatRate:
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
def between_rows(size: Length, size_0: Length, size_1: Length, output_0: HeatRate, output_1: HeatRate) -> HeatRate:
    """Read between two rows of a table."""
    return read_between(size, size_0, size_1, output_0, output_1)


@formula(HERE)
def between_temperatures(
    outdoor: Temperature, cold: Temperature, mild: Temperature, supply_cold: Temperature, supply_mild: Temperature
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
def film_and_layers(film: Transmittance, layers: Resistance, cavity: Transmittance, brick: Resistance) -> Transmittance:
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
def layer_loss(conductivity: Conductivity, thickness: Length, area: Area, rise: TemperatureDifference) -> HeatRate:
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
def water_heat(flow: VolumeFlow, density: Density, heat: SpecificHeat, rise: TemperatureDifference) -> HeatRate:
    """Heat that water carries, with a factor left over in inch-pound units."""
    return flow * density * heat * rise


@formula(HERE)
def share(part: HeatRate, whole: HeatRate) -> Ratio:
    """One part of a whole."""
    return part / whole


@formula(HERE)
def several(area: Area, count: Count, each_loss: HeatFlux) -> HeatRate:
    """A count in a product."""
    return count * area * each_loss


@formula(HERE)
def leakage(stack: AirFlow, wind: AirFlow) -> AirFlow:
    """A root of a sum of squares."""
    return sqrt(stack**2 + wind**2)


@formula(HERE)
def stack_pressure(density: Density, height: Length, indoor: Temperature, outdoor: Temperature) -> Pressure:
    """A quotient of a difference by an absolute temperature."""
    return density * GRAVITY * height * (indoor - outdoor) / absolute(outdoor)


@formula(HERE)
def mixed(hot: Temperature, cold: Temperature, hot_flow: VolumeFlow, cold_flow: VolumeFlow) -> Temperature:
    """A temperature plus a share of a difference."""
    return cold + (hot - cold) * hot_flow / (hot_flow + cold_flow)


@formula(HERE)
def air_density(pressure: Pressure, temperature: Temperature) -> Density:
    """The gas law, with a constant in SI."""
    return pressure / (DRY_AIR * absolute(temperature))


@formula(HERE)
def vapor_pressure(above_ice: TemperatureDifference) -> Pressure:
    """An exponential of a quotient."""
    return P_ZERO * exp(MAGNUS_A * above_ice / (MAGNUS_B + above_ice))


@formula(HERE)
def pressure_as_head(pressure: Pressure, density: Density) -> Head:
    """A pressure as a height of fluid."""
    return pressure / (density * GRAVITY)


@formula(HERE)
def heat_in_time(load: HeatRate, time: Time, efficiency: Ratio) -> Energy:
    """Energy, over an efficiency."""
    return load * time / efficiency


@formula(HERE)
def water_in_pipe(diameter: Length, length: Length) -> Volume:
    """Pi and a square."""
    return pi * diameter**2 / 4 * length


@formula(HERE)
def pipe_loss(conductivity: Conductivity, length: Length, outside: Length, inside: Length, rise: TemperatureDifference) -> HeatRate:
    """A logarithm under a product."""
    return 2 * pi * conductivity * length * rise / log(outside / inside)


@formula(HERE)
def parallel_paths(frame: Area, frame_u: Transmittance, clear: Area, clear_u: Transmittance) -> Transmittance:
    """A sum of products over a sum."""
    return (frame * frame_u + clear * clear_u) / (frame + clear)


@formula(HERE)
def balance(outdoor: Temperature, heat: HeatRate, conductance: Conductance) -> Temperature:
    """A temperature reached from another by a quotient."""
    return outdoor + heat / conductance


@formula(HERE)
def given_back(heat: HeatRate, share: Ratio) -> HeatRate:
    """A change of sign."""
    return -(heat * share)


@formula(HERE)
def inverse_square(heat: HeatRate, near: Length, far: Length) -> HeatRate:
    """A negative power."""
    return heat * (far / near) ** -2


@formula(HERE)
def reynolds_number(density: Density, speed: Velocity, diameter: Length, viscosity: Viscosity) -> Ratio:
    """Everything cancels, in units that do not."""
    return density * speed * diameter / viscosity


@formula(HERE)
def three_ranges(rise: TemperatureDifference, area: Area, low: Transmittance, high: Transmittance) -> HeatRate:
    """A branch in a branch, inside a product."""
    return area * rise * where(
        rise < 5 * ONE_KELVIN, low, where(rise < 12 * ONE_KELVIN, mean(low, high), high)
    )  # fmt: skip


@formula(HERE)
def largest_of_three(a: HeatRate, b: HeatRate, c: HeatRate) -> HeatRate:
    """A larger-of in a larger-of."""
    return larger(larger(a, b), c)


@formula(HERE)
def wet_and_dry(outdoor: Temperature, indoor: Temperature, floor: Temperature) -> TemperatureDifference:
    """A difference between a mean of temperatures and another."""
    return mean(indoor, floor) - outdoor


@formula(HERE)
def as_it_is(heat: HeatRate) -> HeatRate:
    """Nothing is done."""
    return heat


@formula(HERE)
def one_over(conductance: Transmittance) -> Resistance:
    """One over a number."""
    return 1 / conductance


@formula(HERE)
def mean_flux(first: HeatFlux, last: HeatFlux, area: Area) -> HeatRate:
    """A mean inside a product, divided by a whole number."""
    return mean(first, last) * area / 3


@formula(HERE)
def pump_power(flow: VolumeFlow, head: Head, density: Density, efficiency: Ratio) -> HeatRate:
    """Gallons, feet and gravity in one product."""
    return flow * head * density * GRAVITY / efficiency


@formula(HERE)
def two_exponentials(first: Ratio, last: Ratio) -> Ratio:
    """A difference of two exponentials over a difference."""
    return (exp(-first) - exp(-last)) / (last - first)


@formula(HERE)
def heat_of_fluid(flow: VolumeFlow, density: Density, heat: SpecificHeat, supply: Temperature, back: Temperature,
                  loss: HeatRate) -> HeatRate:  # fmt: skip
    """A product less another heat."""
    return flow * density * heat * (supply - back) - loss


@formula(HERE)
def absolute_ratio(volume: Volume, cold: Temperature, hot: Temperature, fill: Pressure, relief: Pressure) -> Volume:
    """A tank: quotients of absolute temperatures and of pressures."""
    return volume * (absolute(hot) / absolute(cold) - 1) / (1 - fill / relief)


Ranges = dict[str, tuple[d.Dimension, float, float]]
RANGES: dict[d.Dimension, tuple[float, float]] = {
    d.RATIO: (0.02, 3.0), d.COUNT: (1, 12), d.LENGTH: (0.02, 60.0), d.HEAD: (0.1, 12.0), d.AREA: (0.02, 400.0),
    d.VOLUME: (0.002, 900.0), d.TIME: (600.0, 3e6), d.VELOCITY: (0.02, 15.0), d.DENSITY: (0.9, 1000.0),
    d.PRESSURE: (2e3, 4e5), d.ENERGY: (1e5, 1e10), d.HEAT_RATE: (0.2, 4e4), d.HEAT_FLUX: (0.5, 200.0),
    d.TEMPERATURE: (238.0, 366.0), d.TEMPERATURE_DIFFERENCE: (0.3, 70.0), d.TRANSMITTANCE: (0.08, 6.0),
    d.RESISTANCE: (0.05, 12.0), d.CONDUCTIVITY: (0.02, 2.0), d.CONDUCTANCE: (0.5, 500.0),
    d.VOLUME_FLOW: (5e-6, 2e-3), d.AIR_FLOW: (1e-3, 0.5), d.SPECIFIC_HEAT: (1000.0, 4200.0),
    d.VISCOSITY: (2e-4, 6e-3),
}  # fmt: skip
"""SI ranges that inputs are drawn from, by dimension."""

NARROWER: dict[str, dict[str, tuple[float, float]]] = {
    "friction_factor": {"reynolds": (300.0, 60000.0)},
    "safe_log_mean": {"first": (10.0, 10.4), "last": (10.0, 10.4)},
    "growth": {"rise": (0.3, 70.0)},
    "water_density": {"temperature": (1.0, 90.0)},
    "vapor_pressure": {"above_ice": (1.0, 60.0)},
    "pipe_loss": {"inside": (0.01, 0.03), "outside": (0.035, 0.1)},
    "water_in_pipe": {"diameter": (0.01, 0.06)},
    "layer_loss": {"thickness": (0.006, 0.4)},
    "nearly_equal": {"supply": (330.0, 330.6), "back": (329.4, 330.0), "density": (950.0, 1000.0)},
    "pump_power": {"density": (950.0, 1000.0)},
    "radiant_exchange": {"emissivity": (0.03, 1.0)},
    "absolute_ratio": {"fill": (1e5, 2e5), "relief": (2.5e5, 4e5)},
    "two_exponentials": {"first": (0.05, 1.0), "last": (1.2, 4.0)},
}
"""Inputs of which the usual range makes no sense for one formula."""
