"""Circulators: the head of a pump at a flow, what a boiler takes of it, and the power in the water."""

from __future__ import annotations

from heatledger.ledger.dimensions import Density, Head, Power, Ratio, VolumeFlow
from heatledger.ledger.formulas import Parts, formula
from heatledger.ledger.functions import log, total, where
from heatledger.ledger.sources import DERIVED, JUDGMENT, cite
from heatledger.ledger.symbols import const
from heatledger.physics.constants import GRAVITY

CURVE = cite("", "a power curve through three points", DERIVED)
BOILER = cite("", "rise of a boiler's head with its flow where one point is known", JUDGMENT)
GENTLE = const(1.75, "1", BOILER, "exponent of a boiler's head below its rated flow")
POWER = cite("", "weight lifted in a time", DERIVED)


@formula(CURVE, title="Exponent of the pump curve")
def curve_exponent(
    shutoff: Head, middle_head: Head, high_head: Head, middle_flow: VolumeFlow, high_flow: VolumeFlow
) -> Ratio:
    """How steeply the head of a pump falls: the power of the flow in the curve through three points.

    Valid for: heads that fall from no flow to the high flow.
    Leaves out: a hump of the curve near no flow.

    >>> round(curve_exponent(shutoff=6.0, middle_head=4.8, high_head=1.8, middle_flow=0.5, high_flow=1.0), 6)
    1.807355
    """
    return log((shutoff - high_head) / (shutoff - middle_head)) / log(high_flow / middle_flow)


@formula(CURVE, title="Head of the circulator")
def pump_head(
    flow: VolumeFlow, shutoff: Head, middle_head: Head, middle_flow: VolumeFlow, exponent: Ratio
) -> Head:
    """Head that a circulator gives at a flow.

    Valid for: flows from 0 to somewhat above the high flow of the three points, at one speed.
    Leaves out: viscosity; water and thin glycol make no difference.

    >>> round(pump_head(flow=0.5, shutoff=6.0, middle_head=4.8, middle_flow=0.5, exponent=1.8), 6)
    4.8
    """
    return shutoff - (shutoff - middle_head) * (flow / middle_flow) ** exponent


@formula(BOILER, title="Head of the boiler")
def boiler_head(flow: VolumeFlow, rated_flow: VolumeFlow, rated_head: Head) -> Head:
    """Head lost in a boiler, from the one point its maker prints.

    It goes as the square of the flow above that point and less steeply below it, so it errs high.

    Valid for: flows near the rated one.
    Leaves out: the boiler's own exponent; printed tables give 1.7 to 1.8.

    >>> round(boiler_head(flow=1.0, rated_flow=2.0, rated_head=4.0), 3)
    1.189
    """
    return rated_head * where(
        flow > rated_flow, lambda: (flow / rated_flow) ** 2, lambda: (flow / rated_flow) ** GENTLE
    )


@formula(POWER, title="Power in the water")
def hydraulic_power(flow: VolumeFlow, head: Head, density: Density) -> Power:
    """Power that a circulator puts into the water.

    Valid for: the density of the water that flows.
    Leaves out: what the motor takes; of that 5 to 50 % arrives in the water.

    >>> round(hydraulic_power(flow=0.000631, head=4.877, density=999.09), 2)
    30.15
    """
    return density * GRAVITY * flow * head


@formula(cite("", "head of the pump less what is taken on the way", DERIVED), title="Head left")
def head_left(given: Head, taken: Parts[Head]) -> Head:
    """Head of a circulator that is left for its circuits after the mains and the boiler.

    Valid for: pieces that all of the water passes.
    Leaves out: height; what goes up in a closed system comes down.

    >>> head_left(given=5.0, taken=[1.0, 0.5])
    3.5
    """
    return given - total(taken)
