"""Fittings and valves: the length of tube that resists as much, and heads by flow coefficient.

A flow coefficient is rated with water of 60 °F: flow at a pressure. Head at a given flow does not depend
on how heavy the water is, so no density of the hot water stands in these formulas.
"""

from __future__ import annotations

from heatledger.ledger.dimensions import (
    Bore,
    Count,
    FlowCoefficient,
    Head,
    Length,
    Ratio,
    Velocity,
    VolumeFlow,
)  # fmt: skip
from heatledger.ledger.formulas import Parts, formula
from heatledger.ledger.functions import pi, sqrt, total
from heatledger.ledger.sources import DERIVED, cite
from heatledger.ledger.symbols import const
from heatledger.physics.constants import GRAVITY

RATING = cite("", "definition of the flow coefficient", DERIVED)
RATING_WATER = const(
    999.09, "kg/m³", cite("IAPWS-R6-95", "water of 60 °F", DERIVED), "density of the rating water"
)
AS_LENGTH = cite("", "count × equivalent length", DERIVED)


@formula(AS_LENGTH, title="Length that fittings stand for")
def fittings_length(count: Count, equivalent_length: Length) -> Length:
    """Length of tube that resists as much as some fittings of one kind.

    Valid for: equivalent lengths of the same tube, or one of the same bore.
    Leaves out: that the length grows a little with the flow.

    >>> fittings_length(count=4.0, equivalent_length=0.5)
    2.0
    """
    return count * equivalent_length


@formula(cite("", "a sum of parts", DERIVED), title="Length that all fittings stand for")
def fittings_total(lengths: Parts[Length]) -> Length:
    """Equivalent lengths of all fittings of a run.

    Valid for: fittings of one tube.
    Leaves out: nothing; no fittings give 0.

    >>> fittings_total(lengths=[2.0, 0.5])
    2.5
    """
    return total(lengths)


@formula(cite("", "a sum of parts", DERIVED), title="Length of tube")
def tube_length(lengths: Parts[Length]) -> Length:
    """Lengths of tube of one bore that the water passes one after the other.

    Valid for: one bore.
    Leaves out: nothing.

    >>> tube_length(lengths=[12.0, 4.5])
    16.5
    """
    return total(lengths)


@formula(RATING, title="Head of the valve")
def valve_head(flow: VolumeFlow, flow_coefficient: FlowCoefficient) -> Head:
    """Head lost in a valve or another part with a flow coefficient.

    Valid for: turbulent flow of water.
    Leaves out: the opening pressure of a spring.

    >>> round(valve_head(flow=0.00025, flow_coefficient=8.4e-7), 2)
    9.04
    """
    return (flow / flow_coefficient) ** 2 / (RATING_WATER * GRAVITY)


@formula(RATING, title="Flow coefficient for a head")
def coefficient_for_head(flow: VolumeFlow, head: Head) -> FlowCoefficient:
    """Setting of a balancing valve that takes a head at a flow.

    Valid for: turbulent flow of water.
    Leaves out: the steps of a valve's scale.

    >>> round(1e7 * coefficient_for_head(flow=0.00025, head=9.04), 2)
    8.4
    """
    return flow / sqrt(RATING_WATER * GRAVITY * head)


@formula(RATING, title="Setting of the balancing valve")
def coefficient_for_excess(flow: VolumeFlow, needed: Head, own: Head) -> FlowCoefficient:
    """Setting of a balancing valve that makes a run cost as much head as the longest one.

    Valid for: runs that need less head than the one that needs the most.
    Leaves out: the steps of a valve's scale, and the head of the valve when fully open.

    >>> round(1e7 * coefficient_for_excess(flow=0.00025, needed=12.04, own=3.0), 2)
    8.4
    """
    return flow / sqrt(RATING_WATER * GRAVITY * (needed - own))


@formula(RATING, title="Loss coefficient")
def loss_coefficient(flow_coefficient: FlowCoefficient, bore: Bore) -> Ratio:
    """Loss of a valve in velocity heads of the tube it stands in (K).

    Valid for: turbulent flow of water.
    Leaves out: reducers at the valve.

    >>> round(loss_coefficient(flow_coefficient=7.598e-6, bore=0.0205994), 2)
    3.85
    """
    return pi**2 * bore**4 / (8 * RATING_WATER * flow_coefficient**2)


@formula(cite("", "K × velocity head", DERIVED), title="Head of a loss coefficient")
def coefficient_head(loss_coefficient: Ratio, velocity: Velocity) -> Head:
    """Head lost in a fitting by its loss coefficient K.

    Serves as a cross-check: a valve costs the same head by its K as by its flow coefficient.

    Valid for: K on the velocity of the tube it is given for.
    Leaves out: that K falls with the Reynolds number.

    >>> round(coefficient_head(loss_coefficient=2.0, velocity=1.0), 3)
    0.102
    """
    return loss_coefficient * velocity**2 / (2 * GRAVITY)


@formula(cite("", "K = f × length over bore", DERIVED), title="Equivalent length")
def equivalent_length(loss_coefficient: Ratio, bore: Bore, friction_factor: Ratio) -> Length:
    """Length of tube that loses as much as a fitting with a loss coefficient K.

    Valid for: the friction factor of this tube at this flow.
    Leaves out: nothing.

    >>> round(equivalent_length(loss_coefficient=0.9, bore=0.0266446, friction_factor=0.03), 3)
    0.799
    """
    return loss_coefficient * bore / friction_factor
