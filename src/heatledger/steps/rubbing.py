"""How water rubs along a tube at a flow: as figures that show their working, and as plain numbers."""

from __future__ import annotations

from dataclasses import dataclass

from heatledger.ledger.figures import Figure, flat
from heatledger.ledger.formulas import formula_of
from heatledger.physics.friction import (
    first_root,
    friction,
    friction_factor,
    relative_roughness,
    reynolds,
    settled_root,
    turbulent_slope,
    velocity,
)

_VELOCITY, _REYNOLDS, _FIRST, _ROOT, _FACTOR, _FRICTION = (
    formula_of(each).body
    for each in (
        velocity, reynolds, first_root, settled_root, friction_factor,
        friction,
    )
)  # fmt: skip

_SLOPE = formula_of(turbulent_slope).body
FULLY_TURBULENT, NEAR = 4000.0, 1e-5


@dataclass(frozen=True)
class Rubbing:
    """Speed, Reynolds number, friction factor and friction of a flow in a tube."""

    velocity: Figure
    reynolds: Figure
    factor: Figure
    friction: Figure


class Water:
    """The water that flows: its viscosity. Friction in one tube at one flow is worked out once."""

    def __init__(self, viscosity: Figure) -> None:
        self.viscosity = viscosity
        self._known: dict[tuple[int, int, int], tuple[Rubbing, tuple[Figure, ...]]] = {}
        self._rough: dict[tuple[int, int], tuple[Figure, tuple[Figure, ...]]] = {}

    def remember(self, flow: Figure, bore: Figure, rough: Figure, rubs: Rubbing) -> None:
        """Take over what an earlier run worked out for a piece.

        A piece that is laid anew then shares its figures with one that is taken over, as it would if both
        were laid now.
        """
        roughness, _ = flat(rough.inputs)
        self._rough[id(roughness), id(bore)] = rough, (roughness, bore)
        if any(each is self.viscosity for each in flat(rubs.reynolds.inputs)):
            self._known[id(flow), id(bore), id(rough)] = rubs, (flow, bore, rough)

    def rough(self, roughness: Figure, bore: Figure) -> Figure:
        """Roughness over bore of a tube."""
        key = (id(roughness), id(bore))
        if key not in self._rough:  # what the key stands for is kept, so that no other takes its id
            self._rough[key] = relative_roughness(roughness=roughness, bore=bore), (roughness, bore)
        return self._rough[key][0]

    def rubbing(self, flow: Figure, bore: Figure, rough: Figure) -> Rubbing:
        """Speed and friction of a flow in a tube."""
        key = (id(flow), id(bore), id(rough))
        if key not in self._known:
            self._known[key] = self._worked_out(flow, bore, rough), (flow, bore, rough)
        return self._known[key][0]

    def _worked_out(self, flow: Figure, bore: Figure, rough: Figure) -> Rubbing:
        speed = velocity(flow=flow, bore=bore)
        number = reynolds(velocity=speed, bore=bore, viscosity=self.viscosity)
        first = first_root(reynolds=number, relative_roughness=rough)
        root = settled_root(first=first, reynolds=number, relative_roughness=rough)
        factor = friction_factor(reynolds=number, root=root, relative_roughness=rough)
        return Rubbing(speed, number, factor, friction(friction_factor=factor, velocity=speed, bore=bore))


def plain_rubbing(flow: float, bore: float, rough: float, viscosity: float) -> tuple[float, float]:
    """Speed and friction of a flow in a tube as plain numbers, to search and to choose by."""
    speed = _VELOCITY(flow, bore)
    number = _REYNOLDS(speed, bore, viscosity)
    root = _ROOT(_FIRST(number, rough), number, rough)
    return speed, _FRICTION(_FACTOR(number, root, rough), speed, bore)


def plain_power(flow: float, bore: float, rough: float, viscosity: float) -> float:
    """How the friction of a tube rises there: percent of it for each percent of flow."""
    number = _REYNOLDS(_VELOCITY(flow, bore), bore, viscosity)
    if number >= FULLY_TURBULENT:
        return 2 + float(
            _SLOPE(_ROOT(_FIRST(number, rough), number, rough), rough * number / FULLY_TURBULENT)
        )
    here = plain_rubbing(flow, bore, rough, viscosity)[1]
    return float((plain_rubbing(flow * (1 + NEAR), bore, rough, viscosity)[1] / here - 1) / NEAR)
