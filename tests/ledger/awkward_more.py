"""More awkward formulas: roots, branches, leftover units, quotients of sums."""

from __future__ import annotations

from heatledger.ledger.dimensions import (
    AirFlow,
    Area,
    Conductance,
    Conductivity,
    Count,
    Density,
    Energy,
    Head,
    HeatFlux,
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
    Viscosity,
    Volume,
    VolumeFlow,
)
from heatledger.ledger.formulas import Parts, formula
from heatledger.ledger.functions import absolute, exp, larger, log, mean, pi, smaller, sqrt, total, where
from heatledger.ledger.sources import INVENTED, cite
from heatledger.ledger.symbols import const

HERE = cite("", "invented for a test", INVENTED)
GRAVITY = const(9.80665, "m/s²", HERE, "gravity")
ONE_WATT_A_KELVIN = const(1, "W/K", HERE, "one watt per kelvin")
ONE_KELVIN = const(1, "K", HERE, "one kelvin")
DRY_AIR = const(287.042, "J/(kg·K)", HERE, "gas constant of dry air")
P_ZERO = const(0.6112, "kPa", HERE, "pressure at the ice point")
MAGNUS_A = const(17.62, "1", HERE)
MAGNUS_B = const(243.12, "K", HERE)


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
def pipe_loss(
    conductivity: Conductivity, length: Length, outside: Length, inside: Length, rise: TemperatureDifference
) -> HeatRate:
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
def three_ranges(
    rise: TemperatureDifference, area: Area, low: Transmittance, high: Transmittance
) -> HeatRate:
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
def heat_of_fluid(
    flow: VolumeFlow,
    density: Density,
    heat: SpecificHeat,
    supply: Temperature,
    back: Temperature,
    loss: HeatRate,
) -> HeatRate:
    """A product less another heat."""
    return flow * density * heat * (supply - back) - loss


@formula(HERE)
def absolute_ratio(
    volume: Volume, cold: Temperature, hot: Temperature, fill: Pressure, relief: Pressure
) -> Volume:
    """A tank: quotients of absolute temperatures and of pressures."""
    return volume * (absolute(hot) / absolute(cold) - 1) / (1 - fill / relief)


@formula(HERE)
def space_balance(outdoor: Temperature, heats: Parts[HeatRate], losses: Parts[Conductance]) -> Temperature:
    """A sum of many parts over another."""
    return outdoor + total(heats) / (total(losses) + larger(ONE_WATT_A_KELVIN, 2 * ONE_WATT_A_KELVIN))


@formula(HERE)
def larger_in_the_middle(area: Area, by_people: HeatFlux, by_lights: HeatFlux, share: Ratio) -> HeatRate:
    """A larger-of and a branch between factors."""
    return area * larger(by_people, by_lights) * where(share < 1, share, share / 2) / smaller(share, 2)


@formula(HERE)
def mean_less_mean(
    indoor: Temperature, floor: Temperature, outdoor: Temperature, ground: Temperature
) -> Ratio:
    """Means of temperatures beside other signs."""
    return (mean(indoor, floor) - mean(outdoor, ground)) / (indoor - floor) - -(outdoor - ground) / ONE_KELVIN


@formula(HERE)
def nested_negatives(first: HeatRate, last: HeatRate) -> HeatRate:
    """Signs before brackets, powers and quotients."""
    return -(first - last) - (-first) * (-last) / -(first + last) + -(last**2) / first
