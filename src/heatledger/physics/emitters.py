"""Ratings of emitters: taken back to what was tested, and on to the flow and the air of a job."""

from __future__ import annotations

from heatledger.ledger.dimensions import (
    HeatPerLength,
    HeatRate,
    KinematicViscosity,
    Length,
    Pressure,
    Ratio,
    Temperature,
    TemperatureDifference,
    VolumeFlow,
)  # fmt: skip
from heatledger.ledger.formulas import formula
from heatledger.ledger.functions import larger, pi, where
from heatledger.ledger.sources import DERIVED, JUDGMENT, MEMORY, SECOND_HAND, cite
from heatledger.ledger.symbols import const
from heatledger.physics.constants import SEA_LEVEL

RATINGS = cite("IBR", "baseboard, rated at 215 °F mean water, 65 °F air and 1 or 4 gpm", MEMORY)
HEATING_EFFECT = cite("PM-HEF", "quoting the handbook of systems and equipment, 2016, page 36.3", SECOND_HAND)
FACTORS = cite("", "rated output times its factors", DERIVED)
HELD = cite("", "flow factor held where flow turns smooth", JUDGMENT)
THIN_AIR = cite("HSE-ch36", "altitude, exponents by kind", MEMORY)
TURNS_SMOOTH = const(2300, "1", HELD, "Reynolds number at which flow turns smooth")
USUAL_BORE = const(0.811, "in", HELD, "bore of a 3/4 in. element")
HIGH_GROUND = const(2000, "ft", THIN_AIR, "elevation from which thin air is counted")
FIN_TUBE_THINS = const(0.9, "1", THIN_AIR, "exponent of pressure, copper fin tube")
IRON_THINS = const(0.5, "1", THIN_AIR, "exponent of pressure, cast iron and steel")
AS_AT_SEA_LEVEL = const(1, "1", THIN_AIR, "factor below that elevation")
LIKE_EXCESS = const(50, "K", cite("EN-442", "rated excess", MEMORY), "excess to compare outputs at")


@formula(HEATING_EFFECT, title="Output per length, net of the heating effect")
def net_rating(rating: HeatPerLength, heating_effect: Ratio) -> HeatPerLength:
    """Output per length as tested: the printed one without the credit for standing low.

    Valid for: ratings that say that a heating-effect factor is in them; 1 where there is none.
    Leaves out: nothing.

    >>> round(net_rating(rating=580.0, heating_effect=1.15), 4)
    504.3478
    """
    return rating / heating_effect


@formula(HEATING_EFFECT, title="Rated output, net of the heating effect")
def net_output(output: HeatRate, heating_effect: Ratio) -> HeatRate:
    """Output of a whole emitter as tested: the printed one without the credit for standing low.

    Valid for: ratings that say that a heating-effect factor is in them; 1 where there is none.
    Leaves out: nothing.

    >>> round(net_output(output=1150.0, heating_effect=1.15), 6)
    1000.0
    """
    return output / heating_effect


@formula(RATINGS, title="Rated output")
def output_of_length(rating: HeatPerLength, length: Length) -> HeatRate:
    """Rated output of a length of element.

    Valid for: the finned length; ends, valves and elbows give next to nothing.
    Leaves out: bare tube inside the cabinet.

    >>> round(output_of_length(rating=500.0, length=4.0), 6)
    2000.0
    """
    return rating * length


@formula(RATINGS, title="Excess of the rating")
def rated_excess(mean_water: Temperature, air: Temperature) -> TemperatureDifference:
    """Excess of the water over the air that a rating at a mean water temperature stands for.

    Valid for: ratings that name the mean water and the entering air.
    Leaves out: the drop during the test, which the rating does not name.

    >>> round(1.8 * rated_excess(mean_water=374.816667, air=291.483333), 3)
    150.0
    """
    return mean_water - air


@formula(RATINGS, title="Flow factor")
def flow_factor(flow: VolumeFlow, least: VolumeFlow, rated_flow: VolumeFlow, exponent: Ratio) -> Ratio:
    """Output at a flow over that at the flow of the rating.

    Valid for: fin tube and baseboard with an exponent of 0.04, from the least flow upwards.
    Leaves out: what happens below the least flow, where it is held; there the output is 4 to 80 % less.

    >>> round(flow_factor(flow=2.5, least=0.2, rated_flow=1.0, exponent=0.04), 7)
    1.0373316
    """
    return (larger(flow, least) / rated_flow) ** exponent


@formula(HELD, title="Flow below which the flow factor is held")
def least_flow_of_element(viscosity: KinematicViscosity) -> VolumeFlow:
    """Flow at which water in a 3/4 in. element begins to flow smoothly, without eddies.

    Valid for: copper elements of 3/4 in. nominal size.
    Leaves out: other sizes; the flow goes with the bore.

    >>> round(least_flow_of_element(viscosity=0.347e-6) / 6.30902e-5, 2)
    0.2
    """
    return TURNS_SMOOTH * pi * USUAL_BORE * viscosity / 4


@formula(THIN_AIR, title="Altitude factor of fin tube", valid={"pressure": (50e3, 110e3)})
def altitude_factor_of_fin_tube(elevation: Length, pressure: Pressure) -> Ratio:
    """Output of copper fin tube in the air of the site over that at sea level.

    Valid for: copper baseboard and fin tube; counted from 2,000 ft up, with the full factor from sea level.
    Leaves out: the cabinet, whose stack would carry a little more or less of it.

    >>> round(altitude_factor_of_fin_tube(elevation=1609.344, pressure=83427.97), 4)
    0.8395
    """
    return where(elevation > HIGH_GROUND, lambda: (pressure / SEA_LEVEL) ** FIN_TUBE_THINS, AS_AT_SEA_LEVEL)


@formula(THIN_AIR, title="Altitude factor of iron and steel", valid={"pressure": (50e3, 110e3)})
def altitude_factor_of_iron(elevation: Length, pressure: Pressure) -> Ratio:
    """Output of cast-iron or steel emitters in the air of the site over that at sea level.

    Valid for: cast-iron baseboard; radiators and steel panels by analogy, on the safe side.
    Leaves out: the share that each radiates, which thin air leaves alone.

    >>> round(altitude_factor_of_iron(elevation=1609.344, pressure=83427.97), 4)
    0.9074
    """
    return where(elevation > HIGH_GROUND, lambda: (pressure / SEA_LEVEL) ** IRON_THINS, AS_AT_SEA_LEVEL)


@formula(FACTORS, title="Rated output at the flow and the altitude")
def output_here(rated: HeatRate, flow_factor: Ratio, altitude_factor: Ratio) -> HeatRate:
    """Rated output as it would be with the flow of this job, in the air of this site.

    Valid for: the excess of the rating.
    Leaves out: nothing.

    >>> round(output_here(rated=1000.0, flow_factor=0.98, altitude_factor=0.84), 3)
    823.2
    """
    return rated * flow_factor * altitude_factor


@formula(FACTORS, title="Output per length at the flow and the altitude")
def rating_here(rating: HeatPerLength, flow_factor: Ratio, altitude_factor: Ratio) -> HeatPerLength:
    """Rated output per length as it would be with the flow of this job, in the air of this site.

    Valid for: the excess of the rating.
    Leaves out: nothing.

    >>> round(rating_here(rating=500.0, flow_factor=0.98, altitude_factor=0.84), 3)
    411.6
    """
    return rating * flow_factor * altitude_factor


@formula(FACTORS, title="Output at 50 K, to compare")
def comparable_output(rated: HeatRate, excess: TemperatureDifference, exponent: Ratio) -> HeatRate:
    """Output at an excess of 50 K, at which emitters rated on unlike bases can be put side by side.

    Valid for: ratings without the heating effect.
    Leaves out: flow and altitude.

    >>> round(comparable_output(rated=1267.46, excess=60.0, exponent=1.3), 1)
    1000.0
    """
    return rated * (LIKE_EXCESS / excess) ** exponent


@formula(FACTORS, title="Rated output needed, at the flow and altitude of the rating")
def needed_at_rating(needed: HeatRate, flow_factor: Ratio, altitude_factor: Ratio) -> HeatRate:
    """Rated output to look for in a table, net of the heating effect.

    Valid for: tables at sea level and at the flow of the rating.
    Leaves out: nothing.

    >>> round(needed_at_rating(needed=823.2, flow_factor=0.98, altitude_factor=0.84), 3)
    1000.0
    """
    return needed / (flow_factor * altitude_factor)


@formula(FACTORS, title="Length needed")
def needed_length(needed: HeatRate, rating: HeatPerLength) -> Length:
    """Finned length that has a rated output.

    Valid for: needed output and rating on the same basis, both net of the heating effect.
    Leaves out: ends of the cabinet.

    >>> needed_length(needed=2000.0, rating=500.0)
    4.0
    """
    return needed / rating
