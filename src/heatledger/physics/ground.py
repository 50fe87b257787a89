"""Heat that a house loses to the ground: buried walls and floors, and the edges of slabs.

Below grade the loss runs to the ground temperature of the coldest time of the year; the edge of a
slab is reckoned against outdoor air. The two systems are not mixed for one part of a house.
"""

from __future__ import annotations

from heatledger.ledger.dimensions import (
    Area,
    Conductance,
    Conductivity,
    EdgeLoss,
    HeatRate,
    Length,
    Resistance,
    Temperature,
    TemperatureDifference,
    Transmittance,
)  # fmt: skip
from heatledger.ledger.formulas import formula
from heatledger.ledger.functions import log, pi, where
from heatledger.ledger.sources import DERIVED, MEMORY, SEEN, cite
from heatledger.ledger.symbols import const

BELOW_GRADE = cite("HOF-ch18", "eqs 37-39", SEEN)
SLAB_EDGE = cite("HOF-ch18", "eqs 40-41", SEEN)
ISO_SLAB = cite("ISO-13370", "slab on ground", MEMORY)
INSULATED_SLAB = const(0.457, "1", ISO_SLAB, "factor of a well insulated slab")


@formula(BELOW_GRADE, title="Ground design temperature")
def ground_design_temperature(mean_ground: Temperature, amplitude: TemperatureDifference) -> Temperature:
    """Temperature at the surface of the ground at the coldest time of the year.

    Valid for: mean ground temperature taken as the annual mean of the air or of well water.
    Leaves out: snow cover, and the lag between the coldest air and the coldest ground.

    >>> round(ground_design_temperature(mean_ground=283.15, amplitude=10.0), 2)
    273.15
    """
    return mean_ground - amplitude


@formula(BELOW_GRADE, title="U-value of a wall below grade", valid={"bottom": (0.0, 3.0)})
def below_grade_wall_u(soil: Conductivity, r_value: Resistance, top: Length, bottom: Length) -> Transmittance:
    """Mean U-value of a strip of basement wall between two depths, to the ground surface.

    The heat is taken to flow along arcs of a circle from the wall to the surface of the ground.

    Valid for: R-value of the wall, its insulation and its indoor film; insulated evenly over the strip;
    depths to 3 m (the table of the source ends at 2.4 m, a little more is judgment).
    Leaves out: corners, ground water, the part of the wall above grade.

    >>> round(below_grade_wall_u(soil=1.4, r_value=0.259, top=0.0, bottom=1.8), 4)
    1.0767
    """
    return (
        2 * soil / (pi * (bottom - top))
        * log((bottom + 2 * soil * r_value / pi) / (top + 2 * soil * r_value / pi))
    )  # fmt: skip


@formula(BELOW_GRADE, title="U-value of a floor below grade", valid={"depth": (0.0, 3.0)})
def below_grade_floor_u(
    soil: Conductivity, r_value: Resistance, width: Length, depth: Length
) -> Transmittance:
    """Mean U-value of a basement floor, to the ground surface.

    Valid for: the shortest width of the basement; R-value of the floor, its insulation and its indoor film;
    depths to 3 m (the table of the source ends at 2.1 m, a little more is judgment).
    Leaves out: ground water, insulation of the edge only.

    >>> round(below_grade_floor_u(soil=1.4, r_value=0.259, width=8.0, depth=1.8), 4)
    0.1779
    """
    return (
        2 * soil / (pi * width)
        * log((width / 2 + depth / 2 + soil * r_value / pi) / (depth / 2 + soil * r_value / pi))
    )  # fmt: skip


@formula(SLAB_EDGE, title="Slab edge loss")
def slab_edge_loss(f_factor: EdgeLoss, edge: Length, indoor: Temperature, outdoor: Temperature) -> HeatRate:
    """Heat lost through a slab on grade, by the length of its exposed edge.

    Valid for: unheated slabs at or near grade; edges beside an unheated garage count as exposed.
    Leaves out: heated slabs, which need an F-factor of their own; the middle of the slab is in the F-factor.

    >>> round(slab_edge_loss(f_factor=1.2, edge=10.0, indoor=293.15, outdoor=263.15), 2)
    360.0
    """
    return f_factor * edge * (indoor - outdoor)


@formula(SLAB_EDGE, title="Conductance of a slab edge")
def edge_conductance(f_factor: EdgeLoss, edge: Length) -> Conductance:
    """Heat that a slab edge passes for each degree between indoors and outdoors.

    Valid for: unheated slabs at or near grade.
    Leaves out: heated slabs.

    >>> round(edge_conductance(f_factor=1.2, edge=10.0), 2)
    12.0
    """
    return f_factor * edge


@formula(ISO_SLAB, title="Characteristic width of a floor")
def characteristic_width(area: Area, perimeter: Length) -> Length:
    """Area of a floor over half its exposed perimeter, which stands for its shape.

    Valid for: floors of any shape; the perimeter that borders outdoors.
    Leaves out: edges beside heated buildings.

    >>> round(characteristic_width(area=80.0, perimeter=36.0), 4)
    4.4444
    """
    return area / (perimeter / 2)


@formula(ISO_SLAB, title="Equivalent thickness of a slab")
def equivalent_thickness(
    wall: Length, soil: Conductivity, film_inside: Resistance, floor: Resistance, film_outside: Resistance
) -> Length:
    """Thickness of soil that would resist heat as the floor and its films do, and the wall beside it.

    Valid for: floors insulated evenly.
    Leaves out: insulation of the edge only.

    >>> round(equivalent_thickness(wall=0.3, soil=2.0, film_inside=0.17, floor=1.0, film_outside=0.04), 2)
    2.72
    """
    return wall + soil * (film_inside + floor + film_outside)


@formula(ISO_SLAB, title="U-value of a slab on ground")
def slab_u(soil: Conductivity, width: Length, thickness: Length) -> Transmittance:
    """Mean U-value of a slab on ground, to the annual mean of the outdoor air.

    Valid for: characteristic width and equivalent thickness of this slab; steady state over a year.
    Leaves out: the swing of the seasons, the edge of the slab where it has a bridge.

    >>> round(slab_u(soil=2.0, width=4.444444, thickness=0.72), 4)
    0.8214
    """
    return where(
        thickness < width,
        2 * soil / (pi * width + thickness) * log(pi * width / thickness + 1),
        soil / (INSULATED_SLAB * width + thickness),
    )


@formula(cite("", "geometry", DERIVED), title="Height of the wall below grade")
def below_grade_wall_height(top: Length, bottom: Length) -> Length:
    """Height of a strip of basement wall between two depths.

    Valid for: depths counted from the ground surface, the bottom below the top.
    Leaves out: ground that slopes along the wall.

    >>> round(below_grade_wall_height(top=0.3, bottom=2.1), 2)
    1.8
    """
    return bottom - top
