"""What the emitters of a room and of a circuit are asked for, and what they give together."""

from __future__ import annotations

from heatledger.ledger.dimensions import (
    Count,
    HeatRate,
    Length,
    Ratio,
    Temperature,
    TemperatureDifference,
    VolumeFlow,
)
from heatledger.ledger.formulas import Parts, formula
from heatledger.ledger.functions import larger, total, where
from heatledger.ledger.sources import DERIVED, PRACTICE, cite
from heatledger.ledger.symbols import const

BALANCE = cite("", "balance of heat", DERIVED)
NO_HEAT = const(0, "W", BALANCE, "no heat")
ALL = const(1, "1", BALANCE, "all that is needed")


@formula(BALANCE, title="Heat needed")
def heat_needed(loss: HeatRate) -> HeatRate:
    """What the emitters of a room are asked for: its loss, and nothing where it gains heat.

    Valid for: the design day.
    Leaves out: warming up after a setback.

    >>> heat_needed(loss=1500.0)
    1500.0
    """
    return larger(loss, NO_HEAT)


@formula(BALANCE, title="Part of the load of the room")
def part_of_load(load: HeatRate, output: HeatRate, outputs: Parts[HeatRate]) -> HeatRate:
    """What one of several emitters of a room is asked for: in proportion to what they can give.

    Valid for: outputs at one and the same excess.
    Leaves out: water that cools from one to the next.

    >>> round(part_of_load(load=900.0, output=1000.0, outputs=[1000.0, 500.0]), 3)
    600.0
    """
    return load * output / total(outputs)


@formula(BALANCE, title="Equal part of the load of the room")
def equal_part(load: HeatRate, emitters: Count) -> HeatRate:
    """What one of several emitters of a room is asked for while not all their sizes are known.

    Valid for: emitters that are still to be sized.
    Leaves out: sizes that are known already.

    >>> equal_part(load=900.0, emitters=3.0)
    300.0
    """
    return load / emitters


@formula(BALANCE, title="Load of the circuit")
def loads_total(loads: Parts[HeatRate]) -> HeatRate:
    """What all emitters of a circuit are asked for.

    Valid for: emitters that are counted once.
    Leaves out: what its pipes lose.

    >>> loads_total(loads=[1500.0, 800.0])
    2300.0
    """
    return total(loads)


@formula(BALANCE, title="Flow of one run")
def part_of_flow(flow: VolumeFlow, load: HeatRate, loads: Parts[HeatRate]) -> VolumeFlow:
    """What one run of a manifold gets of a flow that was chosen for all of them: in proportion to its load.

    Valid for: runs that are balanced.
    Leaves out: what the pipes would do by themselves.

    >>> round(part_of_flow(flow=4.0, load=500.0, loads=[500.0, 1500.0]), 6)
    1.0
    """
    return flow * load / total(loads)


@formula(cite("", "half of the drop on either side of the mean", PRACTICE), title="Mean water by the drop")
def mean_water_by_drop(supply: Temperature, drop: TemperatureDifference) -> Temperature:
    """Mean temperature of the water on its way from supply to return, for its density and heat.

    Valid for: water properties, which hardly change over the drop.
    Leaves out: circuits with a drop of their own.

    >>> mean_water_by_drop(supply=350.0, drop=10.0)
    345.0
    """
    return supply - drop / 2


@formula(BALANCE, title="Heat given")
def outputs_total(outputs: Parts[HeatRate]) -> HeatRate:
    """What several emitters or circuits give together.

    Valid for: emitters that are counted once; none give 0.
    Leaves out: what the pipes in the room give.

    >>> outputs_total(outputs=[1500.0, 800.0])
    2300.0
    """
    return total(outputs)


@formula(BALANCE, title="Length needed")
def lengths_total(lengths: Parts[Length]) -> Length:
    """Finned lengths added up.

    Valid for: baseboards of one room.
    Leaves out: ends of cabinets.

    >>> lengths_total(lengths=[2.0, 1.5])
    3.5
    """
    return total(lengths)


@formula(BALANCE, title="Over what is needed")
def over(given: HeatRate, needed: HeatRate) -> HeatRate:
    """Heat given less heat needed: negative where a room is left short.

    Valid for: both at the same supply and outdoor temperature.
    Leaves out: what a valve or thermostat holds back.

    >>> over(given=1600.0, needed=1500.0)
    100.0
    """
    return given - needed


@formula(BALANCE, title="Given over needed")
def given_share(given: HeatRate, needed: HeatRate) -> Ratio:
    """Heat given in parts of the heat needed; 1 where nothing is needed.

    Valid for: both at the same supply and outdoor temperature.
    Leaves out: what a valve or thermostat holds back.

    >>> given_share(given=1200.0, needed=1500.0)
    0.8
    """
    return where(needed > NO_HEAT, lambda: given / needed, ALL)


@formula(BALANCE, title="Load at a part of the season")
def load_at_share(load: HeatRate, share: Ratio) -> HeatRate:
    """Load on a milder day, as a part of the load on the design day.

    Valid for: loads that go with the outdoor temperature.
    Leaves out: sun and wind.

    >>> load_at_share(load=1500.0, share=0.5)
    750.0
    """
    return load * share
