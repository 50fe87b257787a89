"""What the house is built of: areas, U-values and losses of each kind of part, over all rooms."""

from __future__ import annotations

from dataclasses import dataclass, field

from heatledger.ledger.dimensions import AREA, HEAT_RATE, LENGTH
from heatledger.ledger.figures import Figure, Leaf
from heatledger.ledger.formulas import Formula
from heatledger.ledger.presets import Preset
from heatledger.ledger.show import show
from heatledger.papers import heat_loss_data as data
from heatledger.papers.addresses import Addresses
from heatledger.papers.workings_data import SourceUse
from heatledger.papers.workings_from import source
from heatledger.steps.design import Design
from heatledger.steps.surfaces import CAUSES


@dataclass
class _Part:
    cause: str
    name: str
    u_value: Figure | None
    indoor: Figure
    beyond: Figure
    areas: list[Figure] = field(default_factory=list)
    losses: list[Figure] = field(default_factory=list)
    edge: bool = False


def part_lines(design: Design, units: Preset, found: Addresses) -> tuple[data.PartLine, ...]:
    """One line for each construction at each temperature difference, in the order of the causes."""
    parts = sorted(_parts(design).values(), key=lambda each: CAUSES.index(each.cause))
    return tuple(_line(each, units, found) for each in parts)


def _parts(design: Design) -> dict[tuple[object, ...], _Part]:
    parts: dict[tuple[object, ...], _Part] = {}

    def add(cause: str, name: str, u: Figure | None, size: Figure, loss: Figure, indoor: Figure, beyond: Figure) -> None:
        key = (cause, name, id(u), round(float(indoor), 6), round(float(beyond), 6))
        if u is not None and isinstance(u.origin, Formula):
            key = (cause, name, round(float(u), 9), round(float(indoor), 6), round(float(beyond), 6))
        part = parts.setdefault(key, _Part(cause, name, u, indoor, beyond, edge=size.dimension is LENGTH))
        part.areas.append(size)
        part.losses.append(loss)

    for room in design.losses.rooms.values():
        for surface in room.surfaces.values():
            size = surface.net_area if surface.net_area is not None else surface.edge_length
            assert size is not None
            add(surface.cause, surface.construction, surface.u_value, size, surface.loss, room.indoor,
                surface.beyond_temperature)  # fmt: skip
            for each in surface.openings.values():
                add(each.cause, each.construction, each.u_value, each.area, each.loss, room.indoor,
                    surface.beyond_temperature)  # fmt: skip
    return parts


def _line(part: _Part, units: Preset, found: Addresses) -> data.PartLine:
    dimension = LENGTH if part.edge else AREA
    shown = units.shown(dimension)
    size = show(sum(float(each) for each in part.areas), units, dimension, places=1)
    loss = show(sum(float(each) for each in part.losses), units, HEAT_RATE, places=0)
    kelvin = float(part.indoor) - float(part.beyond)
    from heatledger.ledger.dimensions import TEMPERATURE_DIFFERENCE

    difference = show(kelvin, units, TEMPERATURE_DIFFERENCE)
    u_text = ""
    if part.u_value is not None:
        u_text = show(part.u_value, units).removesuffix(units.shown(part.u_value.dimension).unit.text).strip()
    return data.PartLine(
        part.cause, part.name, data.Cell(_bare(size, shown.unit.text)), data.Cell(u_text, found.key(part.u_value)),
        _bare(difference, units.shown(TEMPERATURE_DIFFERENCE).unit.text),
        data.Cell(_bare(loss, units.shown(HEAT_RATE).unit.text)), _source(part.u_value),
        shown.unit.text if part.edge else "",
    )  # fmt: skip


def _bare(text: str, unit: str) -> str:
    return text.removesuffix(unit).strip()


def _source(u_value: Figure | None) -> SourceUse:
    if u_value is None:
        return SourceUse("edge by its F-factor", "read there")
    origin = u_value.origin
    if isinstance(origin, Leaf):
        if origin.citation is not None:
            return source(origin.citation)
        return SourceUse(f"given: {origin.typed}", "yours")
    if isinstance(origin, Formula):
        return source(origin.citation)
    return SourceUse("chosen", "judgement")
