"""Friction of water in a tube: speed, Reynolds number, friction factor, head.

Colebrook's law holds the friction factor on both sides. It is worked out by an explicit form of Haaland's
and one step of Newton's rule on the law itself, which comes within 0.001 % of it from a Reynolds number of
4,000 up. Between 2,000 and 4,000 nature is not single valued; one smooth curve leads from the laminar law
to Colebrook's, with the slope of each where it meets it. Every factor here is Darcy's, four times
Fanning's.
"""

from __future__ import annotations

from heatledger.ledger.dimensions import (
    Bore,
    Density,
    Friction,
    Head,
    KinematicViscosity,
    Length,
    Pressure,
    Ratio,
    ReynoldsNumber,
    Velocity,
    VolumeFlow,
    WaterVolume,
)  # fmt: skip
from heatledger.ledger.formulas import Parts, formula
from heatledger.ledger.functions import larger, log, pi, total, where
from heatledger.ledger.sources import DERIVED, MEMORY, SEEN, cite
from heatledger.ledger.symbols import const
from heatledger.physics.constants import GRAVITY

CONTINUITY = cite("", "flow over the inside area", DERIVED)
COLEBROOK = cite("COLEBROOK-1939", "friction factor of rough pipe", MEMORY)
HAALAND = cite("CENGEL-8", "Haaland's explicit form", SEEN)
LAMINAR = cite("MOODY-1944", "64 over the Reynolds number", MEMORY)
TRANSITION = cite("", "cubic that meets both laws with their slopes", DERIVED)
DARCY = cite("MOODY-1944", "head lost in a pipe, after Darcy and Weisbach", MEMORY)

LAMINAR_FACTOR = const(64, "1", LAMINAR, "factor of laminar flow")
LAMINAR_TO = const(2000, "1", TRANSITION, "end of laminar flow")
TURBULENT_FROM = const(4000, "1", TRANSITION, "start of turbulent flow")
STANDING = const(0.001, "1", LAMINAR, "below this the water stands")
ROUGH = const(3.7, "1", COLEBROOK, "rough end of Colebrook's law")
SMOOTH = const(2.51, "1", COLEBROOK, "smooth end of Colebrook's law")
HALF_TENS = const(0.7817300674, "1", HAALAND, "1.8 over the natural logarithm of ten")
STEEP = const(1.11, "1", HAALAND, "exponent of the roughness")
GENTLE = const(6.9, "1", HAALAND, "smooth end of the first form")
TENS = const(0.8685889638, "1", COLEBROOK, "two over the natural logarithm of ten")


@formula(CONTINUITY, title="Velocity")
def velocity(flow: VolumeFlow, bore: Bore) -> Velocity:
    """Mean speed of the water in a tube.

    Valid for: a round tube that is full.
    Leaves out: that water is faster in the middle than at the wall.

    >>> round(velocity(flow=0.00025, bore=0.0206), 3)
    0.75
    """
    return 4 * flow / (pi * bore**2)


@formula(cite("", "definition", DERIVED), title="Reynolds number")
def reynolds(velocity: Velocity, bore: Bore, viscosity: KinematicViscosity) -> ReynoldsNumber:
    """How turbulent a flow is: speed times bore over kinematic viscosity.

    Valid for: any flow in a round tube.
    Leaves out: nothing.

    >>> round(reynolds(velocity=0.75, bore=0.0206, viscosity=4.74e-7), -1)
    32590.0
    """
    return velocity * bore / viscosity


@formula(cite("", "definition", DERIVED), title="Roughness over bore")
def relative_roughness(roughness: Bore, bore: Bore) -> Ratio:
    """Height of the roughness of a wall over the inside diameter.

    Valid for: new tube, by the roughness of its material.
    Leaves out: scale and corrosion.

    >>> round(relative_roughness(roughness=1.5e-6, bore=0.0206), 7)
    7.28e-05
    """
    return roughness / bore


@formula(HAALAND, title="First root")
def first_root(reynolds: ReynoldsNumber, relative_roughness: Ratio) -> Ratio:
    """A first value of one over the root of the turbulent friction factor, good to about 1.5 %.

    Valid for: turbulent flow; slower flow is taken at its start, a Reynolds number of 4,000.
    Leaves out: it is only where the next step starts.

    >>> round(first_root(reynolds=30000.0, relative_roughness=7e-5), 4)
    6.5297
    """
    return -HALF_TENS * log((relative_roughness / ROUGH) ** STEEP + GENTLE / larger(reynolds, TURBULENT_FROM))


@formula(COLEBROOK, title="Root of Colebrook's law")
def settled_root(first: Ratio, reynolds: ReynoldsNumber, relative_roughness: Ratio) -> Ratio:
    """One over the root of the turbulent friction factor: Colebrook's law, by one step of Newton's rule.

    Valid for: a first root good to a few percent; slower flow is taken at a Reynolds number of 4,000.
    Leaves out: less than 0.001 % of the friction factor.

    >>> round(settled_root(first=6.5297, reynolds=30000.0, relative_roughness=7e-5), 4)
    6.4994
    """
    return first - (
        first + TENS * log(relative_roughness / ROUGH + SMOOTH * first / larger(reynolds, TURBULENT_FROM))
    ) / (
        1
        + TENS * SMOOTH
        / (relative_roughness / ROUGH * larger(reynolds, TURBULENT_FROM) + SMOOTH * first)
    )  # fmt: skip


@formula(LAMINAR, title="Laminar friction factor")
def laminar_factor(reynolds: ReynoldsNumber) -> Ratio:
    """Friction factor of slow flow, in which the roughness plays no part.

    Valid for: Reynolds numbers up to 2,000.
    Leaves out: the inlet of the tube.

    >>> laminar_factor(reynolds=1000.0)
    0.064
    """
    return LAMINAR_FACTOR / larger(reynolds, STANDING)


@formula(TRANSITION, title="Way through the transition")
def through_transition(reynolds: ReynoldsNumber) -> Ratio:
    """How far a flow is from laminar, 0, to turbulent, 1.

    Valid for: Reynolds numbers from 2,000 to 4,000.
    Leaves out: nothing.

    >>> through_transition(reynolds=2500.0)
    0.25
    """
    return (reynolds - LAMINAR_TO) / (TURBULENT_FROM - LAMINAR_TO)


@formula(COLEBROOK, title="Slope of the turbulent friction factor")
def turbulent_slope(root: Ratio, relative_roughness: Ratio) -> Ratio:
    """How the turbulent friction factor falls at its start: percent of it for each percent of flow.

    Valid for: ``root`` taken at a Reynolds number of 4,000.
    Leaves out: nothing; it follows from Colebrook's law.

    >>> round(turbulent_slope(root=5.0, relative_roughness=1e-4), 4)
    -0.2939
    """
    return -2 / (1 + (relative_roughness * TURBULENT_FROM / (ROUGH * SMOOTH) + root) / TENS)


@formula(TRANSITION, title="Friction factor of the transition")
def transition_factor(through: Ratio, root: Ratio, slope: Ratio) -> Ratio:
    """A curve from the end of laminar flow to the start of turbulent flow that meets both smoothly.

    Valid for: Reynolds numbers from 2,000 to 4,000.
    Leaves out: that nature is not single valued here; other lawful curves are up to half away.

    >>> round(transition_factor(through=0.5, root=4.9996, slope=-0.2939), 5)
    0.03274
    """
    return (
        LAMINAR_FACTOR / LAMINAR_TO * (1 - through) ** 2 * (1 + through)
        + through**2 * (3 - 2 * through - slope * (1 - through) / 2) / root**2
    )


@formula(COLEBROOK, title="Friction factor")
def friction_factor(reynolds: ReynoldsNumber, root: Ratio, relative_roughness: Ratio) -> Ratio:
    """Darcy friction factor: laminar, turbulent, or on the curve between.

    Valid for: round tube; ``root`` is that of the turbulent law at 4,000 or the Reynolds number above it.
    Leaves out: the inlet of the tube. Colebrook's law is good to about 10 % against tests.

    >>> round(friction_factor(reynolds=30000.0, root=6.5, relative_roughness=7e-5), 5)
    0.02367
    """
    return where(
        reynolds <= LAMINAR_TO,
        lambda: laminar_factor(reynolds),
        lambda: where(
            reynolds >= TURBULENT_FROM,
            lambda: 1 / root**2,
            lambda: transition_factor(
                through_transition(reynolds), root, turbulent_slope(root, relative_roughness)
            ),
        ),
    )


@formula(DARCY, title="Friction")
def friction(friction_factor: Ratio, velocity: Velocity, bore: Bore) -> Friction:
    """Head lost in each length of a tube, in head of the water that flows.

    Valid for: steady flow in a full round tube.
    Leaves out: fittings and valves.

    >>> round(friction(friction_factor=0.0236, velocity=0.75, bore=0.0206), 4)
    0.0329
    """
    return friction_factor * velocity**2 / (2 * GRAVITY * bore)


@formula(DARCY, title="Head of the tube and its fittings")
def pipe_head(friction: Friction, length: Length, fittings_length: Length) -> Head:
    """Head lost in a tube and its fittings.

    Valid for: fittings as the length of the same tube that resists as much.
    Leaves out: what a fitting loses more at slow flow.

    >>> round(pipe_head(friction=0.033, length=20.0, fittings_length=4.0), 3)
    0.792
    """
    return friction * (length + fittings_length)


@formula(cite("", "pressure of a column", DERIVED), title="Pressure of a head")
def pressure_of_head(density: Density, head: Head) -> Pressure:
    """Pressure that stands for a head of water of this density.

    Valid for: the density of the water that flows, hot as it is.
    Leaves out: nothing.

    >>> round(pressure_of_head(density=983.26, head=1.0), 1)
    9642.5
    """
    return density * GRAVITY * head


@formula(cite("", "geometry", DERIVED), title="Water in the tube")
def tube_volume(bore: Bore, length: Length) -> WaterVolume:
    """Water that a tube holds.

    Valid for: the tube alone; fittings hold little more than the tube they stand in.
    Leaves out: valves and what else stands in the run.

    >>> round(1000 * tube_volume(bore=0.0206, length=10.0), 2)
    3.33
    """
    return pi * bore**2 * length / 4


@formula(cite("", "heads in series add", DERIVED), title="Head")
def head_total(heads: Parts[Head]) -> Head:
    """Heads of pieces that the same water passes one after the other.

    Valid for: pieces in series.
    Leaves out: nothing; no pieces give 0.

    >>> head_total(heads=[1.5, 0.5])
    2.0
    """
    return total(heads)


@formula(cite("", "what enters a tee leaves it", DERIVED), title="Flow")
def flow_total(flows: Parts[VolumeFlow]) -> VolumeFlow:
    """Flows that join.

    Valid for: water of one temperature; volume is not quite kept when hot and cold water mix.
    Leaves out: nothing; no flows give 0.

    >>> flow_total(flows=[0.25, 0.5])
    0.75
    """
    return total(flows)
