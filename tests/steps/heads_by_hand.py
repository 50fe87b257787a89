"""Heads of pumps, boilers, valves and tubes of the invented houses, worked out apart from the steps."""

import math

from tests.physics.hydraulics import COPPER, friction_of, si

CV = si(1, "gpm") / math.sqrt(si(1, "psi"))


def pump_at(flow):
    """The head of the circulator of these houses."""
    c = math.log(14 / 4) / math.log(2)
    return si(20, "ft") - si(4, "ft") * (flow / si(10, "gpm")) ** c


def boiler_at(flow):
    part = flow / si(8, "gpm")
    return si(4, "ft") * part ** (2 if part > 1 else 1.75)


def valve_at(flow, cv):
    return (flow / (cv * CV)) ** 2 / (999.09 * 9.80665)


def tube_at(heat, flow, bore, length, roughness=COPPER):
    """Head of a tube with the water of a house."""
    return friction_of(flow, bore, roughness, float(heat.house.viscosity))[3] * length
