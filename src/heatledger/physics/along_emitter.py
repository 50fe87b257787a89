"""The exact law along an emitter: what it gives, what it needs, and how its water cools.

One law serves sizing, reset and operation of every kind: an emitter gives heat all along its length by a
power of the excess of its water over the room, and the water cools as it goes. Excesses are counted in parts
of the excess of the rating, so that only plain numbers are raised to broken powers.
"""

from __future__ import annotations

from heatledger.ledger.dimensions import Conductance, HeatRate, Ratio, Temperature, TemperatureDifference
from heatledger.ledger.formulas import formula
from heatledger.ledger.functions import exp, log, mean, where
from heatledger.ledger.sources import DERIVED, cite
from heatledger.physics.emitter_loads import NO_HEAT

EXACT = cite("", "balance of heat along the emitter", DERIVED)
BALANCE = cite("", "balance of heat of the water", DERIVED)


@formula(EXACT, title="Mean excess, exact", valid={"exponent": (1.0, 2.0)})
def exact_mean_excess(
    supply: Temperature, return_: Temperature, air: Temperature, exponent: Ratio
) -> TemperatureDifference:
    """The one excess at which the whole emitter would give what it gives while its water cools.

    Valid for: water that flows along a uniform emitter, both ends warmer than the air.
    Leaves out: mixing inside the emitter. With an exponent of 1 it is the logarithmic mean.

    >>> round(exact_mean_excess(supply=348.15, return_=338.15, air=293.15, exponent=1.3), 3)
    49.808
    """
    return where(
        return_ < supply,
        lambda: (supply - air) * where(
            exponent > 1,
            lambda: (
                (exponent - 1)
                * ((supply - return_) / (supply - air))
                / (((return_ - air) / (supply - air)) ** (1 - exponent) - 1)
            )
            ** (1 / exponent),
            lambda: (supply - return_) / (supply - air) / log((supply - air) / (return_ - air)),
        ),
        lambda: supply - air,
    )  # fmt: skip


@formula(EXACT, title="Excess over that of the rating")
def excess_ratio(excess: TemperatureDifference, water: Temperature, air: Temperature) -> Ratio:
    """Excess of water over the room, in parts of the excess of the rating.

    Valid for: any water and room.
    Leaves out: nothing.

    >>> round(excess_ratio(water=353.15, air=293.15, excess=50.0), 9)
    1.2
    """
    return (water - air) / excess


@formula(EXACT, title="What the water can carry over the rated output")
def carrying_ratio(capacity: Conductance, excess: TemperatureDifference, rated: HeatRate) -> Ratio:
    """Heat the flow would give up over the whole rated excess, in parts of the rated output.

    Valid for: any flow; a large ratio means water that hardly cools.
    Leaves out: nothing.

    >>> carrying_ratio(capacity=100.0, excess=50.0, rated=2500.0)
    2.0
    """
    return capacity * excess / rated


@formula(EXACT, title="Excess at the outlet over that of the rating", valid={"exponent": (1.0, 2.0)})
def outlet_ratio(inlet_ratio: Ratio, carrying: Ratio, exponent: Ratio) -> Ratio:
    """Excess of the water that leaves a uniform emitter, in parts of the excess of the rating.

    Valid for: a power law of one exponent all along the emitter. Water colder than the room passes as it is.
    Leaves out: mixing inside it, and heat that runs along its metal.

    >>> round(outlet_ratio(inlet_ratio=1.1, carrying=5.0, exponent=1.3), 4)
    0.9009
    """
    return where(
        inlet_ratio > 0,
        lambda: inlet_ratio * where(
            exponent > 1,
            lambda: (carrying / (carrying + (exponent - 1) * inlet_ratio ** (exponent - 1)))
            ** (1 / (exponent - 1)),
            lambda: where(carrying > 0, lambda: exp(-1 / carrying), 0 * carrying),
        ),
        inlet_ratio,
    )  # fmt: skip


@formula(EXACT, title="Excess at the inlet over that of the rating", valid={"exponent": (1.0, 2.0)})
def inlet_ratio_for(outlet_ratio: Ratio, carrying: Ratio, exponent: Ratio) -> Ratio:
    """Excess of the water that must enter so that the rest of the loop gets what it needs.

    Valid for: outlets that some inlet can reach; hotter than that no water leaves, and there is no answer.
    Leaves out: mixing inside the emitter, and heat that runs along its metal.

    >>> round(inlet_ratio_for(outlet_ratio=0.900854, carrying=5.0, exponent=1.3), 4)
    1.1
    """
    return where(
        outlet_ratio > 0,
        lambda: outlet_ratio * where(
            exponent > 1,
            lambda: (carrying / (carrying - (exponent - 1) * outlet_ratio ** (exponent - 1)))
            ** (1 / (exponent - 1)),
            lambda: exp(1 / carrying),
        ),
        outlet_ratio,
    )  # fmt: skip


@formula(BALANCE, title="Fall that goes with the load")
def drop_ratio_of_load(load: HeatRate, capacity: Conductance, excess: TemperatureDifference) -> Ratio:
    """How far a flow cools when it gives the load, in parts of the excess of the rating.

    Valid for: steady flow.
    Leaves out: nothing.

    >>> drop_ratio_of_load(load=1000.0, capacity=100.0, excess=50.0)
    0.2
    """
    return load / (capacity * excess)


@formula(EXACT, title="Mean excess needed over that of the rating", valid={"exponent": (1.0, 2.0)})
def mean_ratio_needed(load: HeatRate, rated: HeatRate, exponent: Ratio) -> Ratio:
    """Exact mean excess at which an emitter gives a load, in parts of the excess of the rating.

    Valid for: loads of zero and more.
    Leaves out: nothing.

    >>> round(mean_ratio_needed(load=1000.0, rated=1000.0, exponent=1.3), 4)
    1.0
    """
    return (load / rated) ** (1 / exponent)


@formula(EXACT, title="Inlet that gives the load, by the mean", valid={"exponent": (1.0, 2.0)})
def inlet_ratio_by_mean(mean_ratio: Ratio, drop_ratio: Ratio, exponent: Ratio) -> Ratio:
    """Excess at the inlet that gives a load: the mean one, half of the fall, and what its bend adds.

    Valid for: outlets more than half as far above the room as the inlet, within 0.1 %.
    Leaves out: higher terms of the bend; the corrections that follow take care of them.

    >>> round(inlet_ratio_by_mean(mean_ratio=1.0, drop_ratio=0.2, exponent=1.3), 4)
    1.1038
    """
    return mean_ratio + drop_ratio / 2 + (exponent + 1) * (drop_ratio / 2) ** 2 / (6 * mean_ratio)


@formula(EXACT, title="Inlet that gives the load, corrected", valid={"exponent": (1.0, 2.0)})
def closer_inlet_ratio(inlet_ratio: Ratio, outlet_ratio: Ratio, drop_ratio: Ratio, exponent: Ratio) -> Ratio:
    """A closer inlet: what the fall lacks, over how much more the water falls the hotter it comes in.

    Valid for: inlets near the answer. Twice over, the answer is exact to ten figures.
    Leaves out: nothing.

    >>> round(closer_inlet_ratio(inlet_ratio=1.1, outlet_ratio=0.900854, drop_ratio=0.2, exponent=1.3), 4)
    1.1037
    """
    return inlet_ratio + (drop_ratio - (inlet_ratio - outlet_ratio)) / (
        1 - (outlet_ratio / inlet_ratio) ** exponent
    )


@formula(EXACT, title="Water of this excess")
def water_of_excess(excess: TemperatureDifference, ratio: Ratio, air: Temperature) -> Temperature:
    """Temperature of water at either end of an emitter, from its excess over the room.

    Valid for: any water and room.
    Leaves out: what the pipes on the way to it lose.

    >>> round(water_of_excess(excess=50.0, ratio=1.2, air=293.15), 2)
    353.15
    """
    return air + ratio * excess


@formula(BALANCE, title="Heat given")
def heat_given(capacity: Conductance, inlet: Temperature, outlet: Temperature) -> HeatRate:
    """Heat that water leaves in an emitter.

    Valid for: steady flow.
    Leaves out: what the pipes between emitters give.

    >>> heat_given(capacity=100.0, inlet=350.0, outlet=340.0)
    1000.0
    """
    return capacity * (inlet - outlet)


@formula(BALANCE, title="Outlet at the load")
def outlet_at_load(inlet: Temperature, load: HeatRate, capacity: Conductance) -> Temperature:
    """Temperature of the water that leaves an emitter which gives just its load.

    Valid for: steady flow. Without a load, and so without flow, the water is as it came.
    Leaves out: what the pipes between emitters give.

    >>> outlet_at_load(inlet=350.0, load=1000.0, capacity=100.0)
    340.0
    """
    return where(load > NO_HEAT, lambda: inlet - load / capacity, inlet)


@formula(BALANCE, title="Inlet at the load")
def inlet_at_load(outlet: Temperature, load: HeatRate, capacity: Conductance) -> Temperature:
    """Temperature of the water that must enter an emitter which gives just its load.

    Valid for: steady flow. Without a load, and so without flow, the water is as it leaves.
    Leaves out: what the pipes between emitters give.

    >>> inlet_at_load(outlet=340.0, load=1000.0, capacity=100.0)
    350.0
    """
    return where(load > NO_HEAT, lambda: outlet + load / capacity, outlet)


@formula(EXACT, title="Rated output needed", valid={"exponent": (1.0, 2.0)})
def needed_rated(
    inlet_ratio: Ratio,
    outlet_ratio: Ratio,
    capacity: Conductance,
    excess: TemperatureDifference,
    exponent: Ratio,
) -> HeatRate:
    """Rated output of an emitter that cools a flow from one excess to another.

    Valid for: outlets warmer than the room, which can be reached.
    Leaves out: flow factor and altitude, which are taken off after.

    >>> round(needed_rated(inlet_ratio=1.1, outlet_ratio=0.9, capacity=100.0, excess=50.0, exponent=1.3), 1)
    1005.0
    """
    return capacity * excess * where(
        exponent > 1,
        lambda: (outlet_ratio ** (1 - exponent) - inlet_ratio ** (1 - exponent)) / (exponent - 1),
        lambda: log(inlet_ratio / outlet_ratio),
    )  # fmt: skip


@formula(cite("", "mean of inlet and outlet", DERIVED), title="Mean water")
def mean_water(inlet: Temperature, outlet: Temperature) -> Temperature:
    """Half of the sum of inlet and outlet: the mean water that tables speak of.

    Valid for: display, and for reading ratings; the exact law does not use it.
    Leaves out: that water cools faster while it is hot.

    >>> mean_water(inlet=350.0, outlet=340.0)
    345.0
    """
    return mean(inlet, outlet)
