"""Heat that warm pipes lose on their way, and water that pipes and emitters hold."""

from __future__ import annotations

from heatledger.ledger.dimensions import (
    Area,
    Bore,
    Count,
    EdgeLoss,
    HeatRate,
    Length,
    Temperature,
    WaterVolume,
)
from heatledger.ledger.formulas import Parts, formula
from heatledger.ledger.functions import log, pi, total
from heatledger.ledger.sources import DERIVED, JUDGMENT, MEMORY, SEEN, cite
from heatledger.ledger.symbols import const

PIPE = cite("EN-15316-3", "pipes, insulated and bare", MEMORY)
FOAM = const(0.04, "W/(m·K)", cite("", "pipe insulation, warm", JUDGMENT), "conductivity of the insulation")
IRON = cite("", "0.14 gal a square foot; fill one to know", JUDGMENT)
IRON_WATER = const(0.14, "gal/ft²", IRON, "water in old iron, for each square foot of radiation")
STILL_AIR = const(
    10, "W/(m²·K)", cite("", "still air and radiation", JUDGMENT), "heat passed on by the surface"
)


@formula(PIPE, title="Loss of a length of pipe")
def pipe_coefficient(outside: Bore, insulation: Bore) -> EdgeLoss:
    """Heat a length of pipe loses for each degree; ``insulation`` is its thickness, none for a bare pipe.

    Valid for: metal tube in still indoor air, water at the temperature of its wall.
    Leaves out: hangers, valves and fittings; wall of a plastic tube; bright new copper, which loses less.

    >>> round(pipe_coefficient(outside=0.0222, insulation=0.02), 3), round(pipe_coefficient(0.0222, 0.0), 3)
    (0.217, 0.697)
    """
    return pi / (
        log((outside + 2 * insulation) / outside) / (2 * FOAM) + 1 / (STILL_AIR * (outside + 2 * insulation))
    )


@formula(cite("HOF-ch18", "8.4, pipes outside the rooms they serve", SEEN), title="Heat lost by pipes")
def pipe_loss(coefficient: EdgeLoss, length: Length, water: Temperature, around: Temperature) -> HeatRate:
    """Heat that pipes lose to the space around them.

    Valid for: mean water temperature, and a space whose temperature is known.
    Leaves out: that the heat warms the space and part of it comes back, so it is on the safe side.

    >>> round(pipe_loss(coefficient=0.217, length=12.0, water=338.7, around=283.2), 1)
    144.5
    """
    return coefficient * length * (water - around)


@formula(cite("", "a sum of parts", DERIVED), title="Heat lost by pipes outside the rooms")
def pipes_total(losses: Parts[HeatRate]) -> HeatRate:
    """Heat lost by all pipes outside the heated rooms.

    Valid for: pipes that warm no room.
    Leaves out: nothing; no pipes give 0.

    >>> round(pipes_total(losses=[144.5, 30.0]), 1)
    174.5
    """
    return total(losses)


@formula(cite("", "bore and length", DERIVED), title="Water in a length")
def water_in_length(water_per: Area, length: Length) -> WaterVolume:
    """Water in a length of baseboard.

    Valid for: the water in each foot or meter that its table gives.
    Leaves out: nothing.

    >>> round(water_in_length(water_per=0.00035, length=4.0), 5)
    0.0014
    """
    return water_per * length


@formula(IRON, title="Water in a radiator")
def water_in_iron(edr: Area) -> WaterVolume:
    """Water in a cast-iron radiator that is known by its equivalent direct radiation alone.

    Valid for: old radiators of columns.
    Leaves out: radiators of slender tubes, which hold less, so it is on the safe side for the tank.

    >>> round(1000 * water_in_iron(edr=36 * 0.09290304), 1)
    19.1
    """
    return edr * IRON_WATER


@formula(cite("", "count of sections", DERIVED), title="Water in its sections")
def water_in_sections(section: WaterVolume, sections: Count) -> WaterVolume:
    """Water in a radiator of equal sections.

    Valid for: sections of one size.
    Leaves out: nothing.

    >>> round(water_in_sections(section=0.00265, sections=9.0), 5)
    0.02385
    """
    return section * sections


@formula(cite("", "a sum of parts", DERIVED), title="Water together")
def water_total(volumes: Parts[WaterVolume]) -> WaterVolume:
    """Volumes of water added up.

    Valid for: parts that do not overlap.
    Leaves out: nothing; no volumes give 0.

    >>> round(water_total(volumes=[0.03, 0.0125]), 4)
    0.0425
    """
    return total(volumes)


@formula(cite("", "a sum of parts", DERIVED), title="Water that is known")
def water_so_far(volumes: Parts[WaterVolume]) -> WaterVolume:
    """Water of the parts that are known, while others are still to be found out.

    Valid for: parts that do not overlap; the whole is more.
    Leaves out: what is not known yet.

    >>> round(water_so_far(volumes=[0.03, 0.0125]), 4)
    0.0425
    """
    return total(volumes)
