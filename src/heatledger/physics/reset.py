"""Outdoor reset: the water that emitters need in milder weather than that of the design day.

Flow is the same in all weather. The load falls along a straight line from the design day to the outdoor
temperature at which heat starts, and the output of an emitter goes with a power of its excess temperature.
"""

from __future__ import annotations

from heatledger.ledger.dimensions import HeatRate, Ratio, Temperature, TemperatureDifference
from heatledger.ledger.formulas import formula
from heatledger.ledger.functions import exp, larger, smaller, where
from heatledger.ledger.sources import DERIVED, SEEN, cite
from heatledger.ledger.symbols import const

FROM_EMITTERS = cite("", "the power law of emitters at constant flow", DERIVED)
NO_LOAD = const(0, "1", FROM_EMITTERS, "no load at all")
WHOLE = const(1, "1", FROM_EMITTERS, "the whole of the line")
NOTHING = const(1e-9, "1", FROM_EMITTERS, "share of a load that counts as none")


@formula(cite("", "a load that falls evenly with the weather", DERIVED), title="Share of the design load")
def share_of_load(balance: Temperature, outdoor: Temperature, design_outdoor: Temperature) -> Ratio:
    """Heat a house needs at an outdoor temperature, over that of the design day.

    Valid for: steady weather; ``balance`` is the outdoor temperature at which heat starts.
    Leaves out: sun and wind of the day. It is never below 0, and above 1 in weather colder than design.

    >>> round(share_of_load(balance=285.15, outdoor=273.15, design_outdoor=263.15), 6)
    0.545455
    """
    return larger((balance - outdoor) / (balance - design_outdoor), NO_LOAD)


@formula(cite("", "the design day as it was chosen", DERIVED), title="Heat it is to give")
def heat_to_give(load: HeatRate, output: HeatRate) -> HeatRate:
    """Heat an emitter is to give on the design day: its load, or what it gives where that is less.

    Valid for: the supply of the design day.
    Leaves out: what an emitter that is too small leaves to others.

    >>> heat_to_give(load=1200.0, output=1000.0)
    1000.0
    """
    return smaller(load, output)


@formula(cite("", "half of the drop on either side of the mean", DERIVED), title="Excess of the mean water")
def excess_of_mean(
    supply: Temperature, drop: TemperatureDifference, room: Temperature
) -> TemperatureDifference:
    """How far the mean of supply and return lies over the room.

    Valid for: any supply and drop.
    Leaves out: nothing.

    >>> excess_of_mean(supply=328.15, drop=10.0, room=293.15)
    30.0
    """
    return supply - drop / 2 - room


@formula(FROM_EMITTERS, title="Supply needed, by the mean of supply and return")
def supply_by_mean(
    room: Temperature,
    excess: TemperatureDifference,
    drop: TemperatureDifference,
    share: Ratio,
    exponent: Ratio,
) -> Temperature:
    """Supply at which an emitter gives a share of its design output, its excess taken from the plain mean.

    ``excess`` is that of the mean water over the room on the design day, ``drop`` the design drop.

    Valid for: constant flow, and a drop that is small beside the excess.
    Leaves out: the bend of the temperature along the emitter.

    >>> round(supply_by_mean(room=293.15, excess=30.0, drop=10.0, share=0.625, exponent=1.3) - 273.15, 4)
    44.0231
    """
    return room + excess * share ** (1 / exponent) + share * drop / 2


@formula(FROM_EMITTERS, title="Supply needed", by_hand=(supply_by_mean, "the bend of the water temperature"))
def supply_by_log_mean(
    room: Temperature,
    excess: TemperatureDifference,
    drop: TemperatureDifference,
    share: Ratio,
    exponent: Ratio,
) -> Temperature:
    """Supply at which an emitter gives a share of its design output, its excess taken from the log mean.

    ``excess`` is the log mean excess on the design day, ``drop`` the design drop.

    Serves as the form of the standards that the exact law along an emitter is held against.

    Valid for: constant flow.
    Leaves out: the change of the flow factor and of the water with temperature.

    >>> round(supply_by_log_mean(293.15, 29.72013, 10.0, 0.625, 1.3) - 273.15, 4)
    43.9851
    """
    return where(
        share > NOTHING,
        lambda: room + share * drop / (1 - exp(-(share * drop / (excess * share ** (1 / exponent))))),
        room,
    )


@formula(FROM_EMITTERS, title="Return that follows")
def return_of_share(supply: Temperature, drop: TemperatureDifference, share: Ratio) -> Temperature:
    """Return when the water gives up a share of the heat of the design day.

    ``supply`` is what the control asks for, ``drop`` that of the design day at the flow that runs.

    Valid for: constant flow.
    Leaves out: the small change of the heat of water with temperature.

    >>> round(return_of_share(supply=317.1731, drop=10.0, share=0.625) - 273.15, 4)
    37.7731
    """
    return supply - share * drop


@formula(cite("WIKI-HWR", "straight line between two points", SEEN), title="Supply by a straight line")
def supply_by_line(
    outdoor: Temperature,
    cold_outdoor: Temperature,
    cold_supply: Temperature,
    mild_outdoor: Temperature,
    mild_supply: Temperature,
) -> Temperature:
    """Supply that a control asks for which runs on a straight line between two points.

    Valid for: a control that holds its end points in weather beyond them.
    Leaves out: the bend of the emitters' own curve.

    >>> round(supply_by_line(273.15, 255.15, 355.15, 291.15, 333.15) - 273.15, 6)
    71.0
    """
    return mild_supply + (cold_supply - mild_supply) * larger(
        smaller((mild_outdoor - outdoor) / (mild_outdoor - cold_outdoor), WHOLE), NO_LOAD
    )


@formula(
    cite("", "the lowest supply a boiler or its control allows", DERIVED), title="Supply, not below the least"
)
def supply_at_least(supply: Temperature, least: Temperature) -> Temperature:
    """The supply a control asks for, which is never below the least it allows.

    Valid for: any pair of temperatures.
    Leaves out: nothing.

    >>> supply_at_least(supply=303.15, least=313.15)
    313.15
    """
    return larger(supply, least)


@formula(cite("", "a difference", DERIVED), title="Line over the curve")
def line_over_curve(line: Temperature, needed: Temperature) -> TemperatureDifference:
    """How far a control's straight line lies over what the emitters need; negative where it falls short.

    Valid for: any pair of temperatures.
    Leaves out: nothing.

    >>> round(line_over_curve(line=315.05, needed=317.15), 2)
    -2.1
    """
    return line - needed
