"""What the house is built of: areas, U-values and losses of each kind of part, over all rooms."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field

from heatledger.ledger.dimensions import LENGTH
from heatledger.ledger.figures import Figure, Leaf
from heatledger.ledger.formulas import Formula
from heatledger.papers import heat_loss_data as data
from heatledger.papers.addresses import Addresses
from heatledger.papers.words import bare
from heatledger.papers.workings_data import SourceUse
from heatledger.papers.workings_from import source
from heatledger.physics.envelope import areas_total, heat_loss, temperature_difference
from heatledger.steps.design import Design
from heatledger.steps.surfaces import CAUSES


@dataclass
class Part:
    """One construction at one temperature difference: every piece of it in the house."""

    cause: str
    name: str
    u_value: Figure | None
    indoor: Figure
    beyond: Figure
    sizes: list[Figure] = field(default_factory=list)
    losses: list[Figure] = field(default_factory=list)
    size: Figure | None = None
    loss: Figure | None = None
    difference: Figure | None = None

    def add_up(self) -> None:
        """The sums over its pieces; lengths of a slab edge are not added up."""
        is_edge = self.sizes[0].dimension is LENGTH
        alone = len(self.losses) == 1
        self.size = self.sizes[0] if alone else None if is_edge else areas_total(areas=self.sizes)
        self.loss = self.losses[0] if alone else heat_loss(parts=self.losses)
        self.difference = temperature_difference(indoor=self.indoor, outdoor=self.beyond)

    def named(self) -> Iterator[tuple[Figure, tuple[str, str]]]:
        """The sums and the difference of its row with their titles; a lone piece has its own."""
        sums = [("area", self.size), ("loss", self.loss)] if len(self.losses) > 1 else []
        for said, figure in (*sums, ("ΔT", self.difference)):
            if figure is not None:
                yield figure, (self.name, said)


def parts_of_house(design: Design) -> list[Part]:
    """Every kind of part, in the order of the causes."""
    parts: dict[tuple[object, ...], Part] = {}

    def add(
        cause: str, name: str, u: Figure | None, size: Figure, loss: Figure, indoor: Figure, beyond: Figure
    ) -> None:
        # By text, since a missing value is not equal to itself.
        same_u = f"{float(u):.9f}" if u is not None and isinstance(u.origin, Formula) else id(u)
        key = (cause, name, same_u, f"{float(indoor):.6f}", f"{float(beyond):.6f}", size.dimension is LENGTH)
        part = parts.setdefault(key, Part(cause, name, u, indoor, beyond))
        part.sizes.append(size)
        part.losses.append(loss)

    for room in design.losses.rooms.values():
        for surface in room.surfaces.values():
            size = surface.net_area if surface.net_area is not None else surface.edge_length
            assert size is not None
            add(surface.cause, surface.construction, surface.u_value, size, surface.loss, room.indoor,
                surface.beyond_temperature)  # fmt: skip
            for each in surface.openings.values():
                add(each.cause, each.construction, each.u_value, each.total_area, each.loss, room.indoor,
                    surface.beyond_temperature)  # fmt: skip
    for part in parts.values():
        part.add_up()
    return sorted(parts.values(), key=lambda each: CAUSES.index(each.cause))


def part_lines(parts: list[Part], found: Addresses) -> tuple[data.PartLine, ...]:
    """One line of the table for each part."""
    return tuple(_line(each, found) for each in parts)


def _line(part: Part, found: Addresses) -> data.PartLine:
    units = found.units

    def cell(figure: Figure | None, none: str = "–", places: int | None = None) -> data.Cell:
        return (
            data.Cell(bare(figure, units, places), found.key(figure))
            if figure is not None
            else data.Cell(none)
        )

    is_edge = part.sizes[0].dimension is LENGTH
    size = cell(part.size, f"{len(part.sizes)} edges" if is_edge else "–", None if is_edge else 1)
    own_unit = is_edge and part.size is not None and not units.feet_and_inches
    return data.PartLine(
        part.cause,
        part.name,
        size,
        cell(part.u_value),
        cell(part.difference),
        cell(part.loss, places=0),
        _source(part.u_value),
        units.shown(LENGTH).unit.text if own_unit else "",
    )


def _source(u_value: Figure | None) -> SourceUse:
    if u_value is None:
        return SourceUse("edge by its F-factor", "read there")
    origin = u_value.origin
    if isinstance(origin, Leaf):
        return (
            source(origin.citation) if origin.citation is not None else SourceUse("given in the job", "yours")
        )
    if isinstance(origin, Formula):
        return source(origin.citation)
    return SourceUse("chosen", "judgement")
