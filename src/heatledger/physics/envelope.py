"""Areas, U-values and the heat that passes through the envelope of a house."""

from __future__ import annotations

from heatledger.ledger.dimensions import (
    Area,
    Conductance,
    Count,
    HeatFlux,
    HeatRate,
    Length,
    Ratio,
    Resistance,
    Temperature,
    TemperatureDifference,
    Transmittance,
)  # fmt: skip
from heatledger.ledger.formulas import Parts, formula
from heatledger.ledger.functions import total
from heatledger.ledger.sources import DERIVED, SEEN, cite

AREAS = cite("HOF-ch17", "areas for loads", SEEN)
CONDUCTION = cite("HOF-ch17", "eqs 33-34", SEEN)
GEOMETRY = cite("", "geometry", DERIVED)
ADDITION = cite("", "a sum of parts", DERIVED)
DIVISION = cite("", "by its meaning", DERIVED)


@formula(GEOMETRY, title="Area")
def rectangle_area(width: Length, height: Length) -> Area:
    """Area of a rectangle, such as a wall or an opening.

    Valid for: right-angled corners.
    Leaves out: slopes; a sloped side is given by its own length, not by its plan.

    >>> round(rectangle_area(width=4.0, height=2.5), 2)
    10.0
    """
    return width * height


@formula(ADDITION, title="Total area")
def areas_total(areas: Parts[Area]) -> Area:
    """Areas added up.

    Valid for: areas that do not overlap.
    Leaves out: nothing; no areas give 0.

    >>> round(areas_total(areas=[1.5, 2.5]), 2)
    4.0
    """
    return total(areas)


@formula(AREAS, title="Area of the openings")
def opening_area(area: Area, count: Count) -> Area:
    """Area of several equal windows or doors, each by its rough opening.

    Valid for: openings of one size.
    Leaves out: the depth of the reveal.

    >>> round(opening_area(area=1.2, count=3), 2)
    3.6
    """
    return area * count


@formula(AREAS, title="Net area")
def net_area(gross: Area, openings: Area) -> Area:
    """Area of a wall, roof or floor without its openings.

    Valid for: gross area from outside dimensions, openings by their rough openings.
    Leaves out: nothing; openings larger than the wall give a negative area, which the job refuses.

    >>> round(net_area(gross=20.0, openings=3.6), 2)
    16.4
    """
    return gross - openings


@formula(cite("HOF-ch17", "section 1, U of an assembly", SEEN), title="U-value from R-value")
def u_from_r(r_value: Resistance) -> Transmittance:
    """U-value of a whole assembly whose R-value is known.

    Valid for: an R-value of the whole assembly, both surface films in it.
    Leaves out: framing that the R-value does not hold already.

    >>> round(u_from_r(r_value=2.0), 3)
    0.5
    """
    return 1 / r_value


@formula(CONDUCTION, title="Conductance")
def conductance(area: Area, u_value: Transmittance) -> Conductance:
    """Heat that a surface passes for each degree between its two sides.

    Valid for: steady state; surface films already in the U-value.
    Leaves out: thermal bridges at its edges.

    >>> round(conductance(area=12.5, u_value=0.30), 2)
    3.75
    """
    return area * u_value


@formula(CONDUCTION, title="Transmission loss")
def transmission_loss(
    area: Area, u_value: Transmittance, indoor: Temperature, outdoor: Temperature
) -> HeatRate:
    """Heat lost through one surface to outdoors; positive when the room loses heat.

    Valid for: steady state; surface films already in the U-value.
    Leaves out: thermal bridges at its edges, sun, stored heat.

    >>> round(transmission_loss(area=12.5, u_value=0.30, indoor=294.15, outdoor=255.15), 2)
    146.25
    """
    return area * u_value * (indoor - outdoor)


@formula(CONDUCTION, title="Transmission loss")
def loss_to_space(area: Area, u_value: Transmittance, indoor: Temperature, beyond: Temperature) -> HeatRate:
    """Heat lost through one surface to what is beyond it; negative when heat comes in.

    Valid for: steady state; a room, a space, a neighbor or ground of one known temperature beyond.
    Leaves out: thermal bridges at its edges, sun, stored heat.

    >>> round(loss_to_space(area=10.0, u_value=1.8, indoor=293.15, beyond=297.15), 2)
    -72.0
    """
    return area * u_value * (indoor - beyond)


@formula(ADDITION, title="Heat loss")
def heat_loss(parts: Parts[HeatRate]) -> HeatRate:
    """Heat losses added up; gains from warmer rooms stand in it with a minus sign.

    Valid for: parts at one and the same design weather.
    Leaves out: nothing; no parts give 0. No margin is added.

    >>> round(heat_loss(parts=[500.0, 120.0, -20.0]), 2)
    600.0
    """
    return total(parts)


@formula(DIVISION, title="Loss per floor area")
def loss_per_area(loss: HeatRate, floor_area: Area) -> HeatFlux:
    """Heat loss for each unit of heated floor area.

    Valid for: the loss and the floor area of the same room, level or house.
    Leaves out: ceiling height; high rooms show more.

    >>> round(loss_per_area(loss=900.0, floor_area=20.0), 2)
    45.0
    """
    return loss / floor_area


@formula(DIVISION, title="Share")
def share(part: HeatRate, whole: HeatRate) -> Ratio:
    """What part of a whole loss one cause makes up.

    Valid for: a whole that is not zero.
    Leaves out: nothing; shares may be negative where a part is a gain.

    >>> round(share(part=300.0, whole=900.0), 4)
    0.3333
    """
    return part / whole


@formula(CONDUCTION, title="Temperature difference")
def temperature_difference(indoor: Temperature, outdoor: Temperature) -> TemperatureDifference:
    """How much warmer it is indoors than outdoors at design weather.

    Valid for: one indoor temperature.
    Leaves out: rooms kept warmer or cooler.

    >>> round(temperature_difference(indoor=294.15, outdoor=255.15), 2)
    39.0
    """
    return indoor - outdoor


@formula(DIVISION, title="Loss per degree")
def house_coefficient(loss: HeatRate, indoor: Temperature, outdoor: Temperature) -> Conductance:
    """Heat a house or room loses for each degree that it is colder outdoors.

    Valid for: a loss worked out between these two temperatures.
    Leaves out: ground and neighbors, whose temperatures do not follow the weather.

    >>> round(house_coefficient(loss=7800.0, indoor=293.15, outdoor=254.15), 2)
    200.0
    """
    return loss / (indoor - outdoor)
