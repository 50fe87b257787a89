"""The friction of one tube, from flow to head, on plain numbers; and units of a source."""

from heatledger.ledger.units import UNITS
from heatledger.physics.friction import (
    first_root,
    friction,
    friction_factor,
    relative_roughness,
    reynolds,
    settled_root,
    velocity,
)


def si(value, unit):
    """``value`` in SI."""
    return UNITS[unit].to_si(value)


def factor_at(number, rough):
    """Friction factor at a Reynolds number and a roughness over bore."""
    first = first_root(reynolds=number, relative_roughness=rough)
    root = settled_root(first=first, reynolds=number, relative_roughness=rough)
    return friction_factor(reynolds=number, root=root, relative_roughness=rough)


def friction_of(flow, bore, roughness, viscosity):
    """Speed, Reynolds number, friction factor and head per length of a flow in a tube, all in SI."""
    speed = velocity(flow=flow, bore=bore)
    number = reynolds(velocity=speed, bore=bore, viscosity=viscosity)
    factor = factor_at(number, relative_roughness(roughness=roughness, bore=bore))
    return speed, number, factor, friction(friction_factor=factor, velocity=speed, bore=bore)


COPPER, PLASTIC, STEEL = 1.5e-6, 7e-6, 4.572e-5
"""Roughness of drawn copper, plastic and new steel, in meters."""
