"""A baseboard and a loop in the units of the trade, for cases worked out by hand."""

from __future__ import annotations

from itertools import pairwise

from heatledger.ledger.units import UNITS
from heatledger.physics.along_emitter import carrying_ratio, excess_ratio, outlet_ratio, water_of_excess
from heatledger.physics.emitters import flow_factor

GPM = UNITS["gpm"].to_si(1.0)
BTUH = UNITS["Btu/h"].to_si(1.0)
PER_FOOT = UNITS["Btu/(h·ft)"].to_si(1.0)
FOOT = UNITS["ft"].to_si(1.0)
FIVE_HUNDRED = 500 * BTUH * 1.8  # for each gpm and kelvin


def f(value: float) -> float:
    """A temperature in °F, in kelvin."""
    return UNITS["°F"].to_si(value, True)


def in_f(value: float) -> float:
    """A temperature in kelvin, in °F."""
    return UNITS["°F"].from_si(value, True)


def factor(gpm: float, least: float = 0.0) -> float:
    return flow_factor(flow=gpm, least=least, rated_flow=1.0, exponent=0.04)


class Element:
    """Net 500 Btu/h for each foot at 180 °F mean water, 65 °F air and 1 gpm, with an exponent of 1.4."""

    excess = 115 / 1.8
    exponent = 1.4

    def __init__(self, feet: float, gpm: float, room: float) -> None:
        self.rated = 500 * feet * BTUH * factor(gpm)
        self.capacity = FIVE_HUNDRED * gpm
        self.room = f(room)

    def outlet(self, inlet: float) -> float:
        """Outlet in °F for an inlet in °F."""
        into = excess_ratio(water=f(inlet), air=self.room, excess=self.excess)
        carrying = carrying_ratio(capacity=self.capacity, excess=self.excess, rated=self.rated)
        left = outlet_ratio(inlet_ratio=into, carrying=carrying, exponent=self.exponent)
        return in_f(water_of_excess(air=self.room, ratio=left, excess=self.excess))

    def output(self, inlet: float) -> float:
        """Heat given, Btu/h."""
        return self.capacity * (inlet - self.outlet(inlet)) / 1.8 / BTUH


def through(elements: list[Element], supply: float) -> list[float]:
    """Water before and behind each element of a loop, °F."""
    waters = [supply]
    for each in elements:
        waters.append(each.outlet(waters[-1]))
    return waters


def falls(waters: list[float]) -> list[float]:
    return [a - b for a, b in pairwise(waters)]
