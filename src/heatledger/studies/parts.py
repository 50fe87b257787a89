"""What the house is built of: areas, U-values and losses of each kind of part, over all rooms."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field

from heatledger.ledger.dimensions import EDGE_LOSS, LENGTH
from heatledger.ledger.figures import Figure, flat
from heatledger.ledger.formulas import Formula
from heatledger.physics.envelope import areas_total, heat_loss, temperature_difference
from heatledger.steps.design import Design
from heatledger.steps.losses import RoomLoss
from heatledger.steps.surfaces import CAUSES, OpeningLoss, SurfaceLoss


@dataclass
class Part:
    """One construction at one temperature difference: every piece of it in the house.

    ``factor`` is its U-value, or the F-factor of a slab edge, whose ``sizes`` are lengths.
    """

    cause: str
    name: str
    factor: Figure
    indoor: Figure
    beyond: Figure
    sizes: list[Figure] = field(default_factory=list)
    losses: list[Figure] = field(default_factory=list)
    size: Figure | None = None
    loss: Figure | None = None
    difference: Figure | None = None

    @property
    def is_edge(self) -> bool:
        """Whether it is the edge of a slab."""
        return self.sizes[0].dimension is LENGTH

    def add_up(self) -> None:
        """The sums over its pieces; lengths of a slab edge are not added up."""
        alone = len(self.losses) == 1
        self.size = self.sizes[0] if alone else None if self.is_edge else areas_total(areas=self.sizes)
        self.loss = self.losses[0] if alone else heat_loss(parts=self.losses)
        self.difference = temperature_difference(indoor=self.indoor, outdoor=self.beyond)

    def named(self) -> Iterator[tuple[Figure, tuple[str, str]]]:
        """The sums and the difference of its row with their titles; a lone piece has its own."""
        sums = [("area", self.size), ("loss", self.loss)] if len(self.losses) > 1 else []
        for said, figure in (*sums, ("ΔT", self.difference)):
            if figure is not None:
                yield figure, (self.name, said)


def parts_of_house(design: Design) -> list[Part]:
    """Every kind of part, in the order of the causes; one construction stands together."""
    parts: dict[tuple[object, ...], Part] = {}
    for room in design.losses.rooms.values():
        for surface in room.surfaces.values():
            pieces: list[SurfaceLoss | OpeningLoss] = [surface, *surface.openings.values()]
            for piece in pieces:
                _add(parts, piece, room, surface.beyond_temperature)
    for part in parts.values():
        part.add_up()
    names = list(dict.fromkeys(each.name for each in parts.values()))
    return sorted(parts.values(), key=lambda each: (CAUSES.index(each.cause), names.index(each.name)))


def _add(
    parts: dict[tuple[object, ...], Part], piece: SurfaceLoss | OpeningLoss, room: RoomLoss, beyond: Figure
) -> None:
    """Put one surface or opening with its like."""
    size, factor = _size_and_factor(piece)
    # By text, since a missing value is not equal to itself.
    same = f"{float(factor):.9f}" if isinstance(factor.origin, Formula) else id(factor)
    differs = (f"{float(each):.6f}" for each in (room.indoor, beyond))
    key = (piece.cause, piece.construction, same, *differs, size.dimension is LENGTH)
    part = parts.setdefault(key, Part(piece.cause, piece.construction, factor, room.indoor, beyond))
    part.sizes.append(size)
    part.losses.append(piece.loss)


def _size_and_factor(piece: SurfaceLoss | OpeningLoss) -> tuple[Figure, Figure]:
    """Area and U-value; for a slab edge its length, and the F-factor that its loss is worked out with."""
    if isinstance(piece, OpeningLoss):
        return piece.total_area, piece.u_value
    if piece.edge_length is not None:
        inputs = flat(piece.conductance.inputs)
        return piece.edge_length, next(each for each in inputs if each.dimension is EDGE_LOSS)
    assert piece.net_area is not None and piece.u_value is not None
    return piece.net_area, piece.u_value
