"""Unheated spaces: their temperature from a balance of the heat that comes in and goes out."""

from __future__ import annotations

from heatledger.ledger.dimensions import Conductance, HeatRate, Temperature
from heatledger.ledger.formulas import Parts, formula
from heatledger.ledger.functions import total
from heatledger.ledger.sources import DERIVED, SEEN, cite

BALANCE = cite("HOF-ch17", "eq 5, rearranged", SEEN)


@formula(BALANCE, title="Heat sent in at outdoor temperature")
def heat_toward(conductance: Conductance, beyond: Temperature, outdoor: Temperature) -> HeatRate:
    """Heat that one neighbor would send into a space that stood at outdoor temperature.

    Valid for: a room, another space or ground beyond the surface; outdoors itself sends nothing.
    Leaves out: what then flows back as the space warms; the balance takes care of it.

    >>> round(heat_toward(conductance=15.0, beyond=293.15, outdoor=253.15), 2)
    600.0
    """
    return conductance * (beyond - outdoor)


@formula(BALANCE, title="Temperature of an unheated space")
def space_temperature(
    outdoor: Temperature, heats: Parts[HeatRate], conductances: Parts[Conductance]
) -> Temperature:
    """Temperature at which as much heat leaves an unheated space as comes in.

    Valid for: steady state; all surfaces and the outdoor air of the space among the conductances.
    Leaves out: sun, stored heat, and heat of pipes or appliances unless given among the heats.

    >>> round(space_temperature(outdoor=253.15, heats=[600.0], conductances=[15.0, 325.0, 49.2]), 4)
    254.6916
    """
    return outdoor + total(heats) / total(conductances)


@formula(cite("HOF-ch17", "eqs 33-34", SEEN), title="Heat flow")
def flow_between(conductance: Conductance, warmer: Temperature, colder: Temperature) -> HeatRate:
    """Heat that passes from one space to another.

    Valid for: steady state; negative when the second is the warmer one.
    Leaves out: air that moves between the two.

    >>> round(flow_between(conductance=15.0, warmer=293.15, colder=283.15), 2)
    150.0
    """
    return conductance * (warmer - colder)


@formula(cite("", "a sum of parts", DERIVED), title="Heat that comes into the space")
def heat_in(parts: Parts[HeatRate]) -> HeatRate:
    """Heat that comes into an unheated space from rooms, other spaces, ground, pipes and neighbors.

    Valid for: steady state; a part is negative where the space is the warmer side.
    Leaves out: sun, stored heat.

    >>> round(heat_in(parts=[300.0, -20.0]), 2)
    280.0
    """
    return total(parts)


@formula(cite("", "a sum of parts", DERIVED), title="Heat that leaves the space")
def heat_out(parts: Parts[HeatRate]) -> HeatRate:
    """Heat that leaves an unheated space to outdoors, through its surfaces and with its air.

    Valid for: steady state.
    Leaves out: sun, stored heat.

    >>> round(heat_out(parts=[200.0, 80.0]), 2)
    280.0
    """
    return total(parts)
