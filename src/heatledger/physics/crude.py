"""A first guess of a heat loss, before any room is measured: floor area, weather, and a wide range.

It is said to be crude wherever it is shown, and nothing is built on it.
"""

from __future__ import annotations

from heatledger.ledger.dimensions import Area, HeatRate, Temperature, Transmittance
from heatledger.ledger.formulas import formula
from heatledger.ledger.sources import JUDGMENT, cite

WHOLE_HOUSE = cite("", "whole-house loss by floor area, our own judgment", JUDGMENT)


@formula(WHOLE_HOUSE, title="Crude estimate of the heat loss")
def crude_heat_loss(
    floor_area: Area, loss_per_floor_area: Transmittance, indoor: Temperature, outdoor: Temperature
) -> HeatRate:
    """A guess from floor area and weather alone, until rooms are entered.

    Valid for: a first look at a whole house, as wide as its range.
    Leaves out: how the house is built, its shape, its air leaks, its basement; it sizes nothing.

    >>> round(crude_heat_loss(floor_area=100.0, loss_per_floor_area=1.5, indoor=293.15, outdoor=263.15), 6)
    4500.0
    """
    return floor_area * loss_per_floor_area * (indoor - outdoor)
