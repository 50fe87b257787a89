"""Pressure of still water: what fills a house to its top, and what is left there cold and hot.

Pressures are gauge pressures, read against the air of the site, unless a name says otherwise.
"""

from __future__ import annotations

from heatledger.ledger.dimensions import Density, Head, Length, Pressure
from heatledger.ledger.formulas import formula
from heatledger.ledger.sources import DERIVED, SEEN, cite
from heatledger.ledger.symbols import const
from heatledger.physics.constants import GRAVITY

HYDROSTATICS = cite("", "weight of a column of water", DERIVED)
FILL = cite("FILL-HH", "0.433 psi for each foot, and 5 psi", SEEN)
EASY_WATER = const(0.433, "psi/ft", FILL, "pressure of a foot of water")


@formula(
    cite("", "the trade's 0.433 psi for each foot", DERIVED), title="Pressure of the height, the short way"
)
def static_pressure_by_hand(height: Length) -> Pressure:
    """Pressure of a height of water by the trade's figure for a foot of it.

    Valid for: water near 60 °F.
    Leaves out: that warmer water is lighter.

    >>> round(static_pressure_by_hand(height=16 * 0.3048) / 6894.757, 3)
    6.928
    """
    return EASY_WATER * height


@formula(
    HYDROSTATICS,
    title="Pressure of the height",
    by_hand=(static_pressure_by_hand, "that water is lighter when warmer"),
)
def static_pressure(height: Length, density: Density) -> Pressure:
    """Pressure that a height of still water makes at its foot.

    Valid for: water of one temperature.
    Leaves out: nothing that a gauge would show.

    >>> round(static_pressure(height=6.096, density=999.0), 0)
    59722.0
    """
    return density * GRAVITY * height


@formula(FILL, title="Fill pressure")
def fill_pressure(static: Pressure, margin: Pressure) -> Pressure:
    """Pressure to fill to at the gauge, so that the highest pipe stands at the margin.

    Valid for: cold water, circulators off, at the height of the gauge and the tank.
    Leaves out: what a circulator adds or takes while it runs.

    >>> round(fill_pressure(static=47800.0, margin=34474.0), 0)
    82274.0
    """
    return static + margin


@formula(FILL, title="Precharge of the tank")
def precharge_pressure(fill: Pressure) -> Pressure:
    """Pressure to pump the air side of the tank to, with its water side open: the cold fill pressure.

    Valid for: a diaphragm tank at the height of the gauge.
    Leaves out: nothing; a tank charged otherwise loses room.

    >>> round(precharge_pressure(fill=82700.0), 0)
    82700.0
    """
    return fill


@formula(HYDROSTATICS, title="Pressure at the top")
def top_pressure(at_gauge: Pressure, static: Pressure) -> Pressure:
    """Pressure at the highest pipe when the gauge shows ``at_gauge``, cold or hot, each with its own water.

    Valid for: still water.
    Leaves out: what a circulator adds or takes while it runs.

    >>> round(top_pressure(at_gauge=82740.0, static=58600.0), 0)
    24140.0
    """
    return at_gauge - static


@formula(HYDROSTATICS, title="Margin over boiling")
def vapor_margin(pressure: Pressure, air: Pressure, vapor: Pressure) -> Pressure:
    """How far water stands above the pressure at which it boils; negative where it boils.

    ``air`` is the pressure of the air at the site, ``vapor`` that of the water's vapor, both absolute.

    Valid for: still water, or the pressure at a running circulator's suction.
    Leaves out: air dissolved in the water, which comes out earlier.

    >>> round(vapor_margin(pressure=34474.0, air=101325.0, vapor=51800.0), 0)
    83999.0
    """
    return pressure + air - vapor


@formula(HYDROSTATICS, title="Head of a pressure")
def head_of_pressure(pressure: Pressure, density: Density) -> Head:
    """Height of water that a pressure holds up.

    Serves to turn a gauge reading into head, and as the inverse that checks the pressures here.

    Valid for: water of one temperature.
    Leaves out: nothing.

    >>> round(head_of_pressure(pressure=59722.0, density=999.0), 3)
    6.096
    """
    return pressure / (density * GRAVITY)
