"""Areas, U-values and losses of the surfaces of a room or an unheated space."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from heatledger.job.model import Beyond, Construction, Opening, Room, Surface, Unheated
from heatledger.ledger.dimensions import Area, Conductance, HeatRate, Length, Temperature, Transmittance
from heatledger.ledger.figures import Figure
from heatledger.ledger.results import result
from heatledger.physics.envelope import (
    areas_total,
    conductance,
    loss_to_space,
    net_area,
    opening_area,
    rectangle_area,
    transmission_loss,
    u_from_r,
)
from heatledger.physics.ground import (
    below_grade_floor_u,
    below_grade_wall_height,
    below_grade_wall_u,
    edge_conductance,
    slab_edge_loss,
)
from heatledger.steps.site import SiteConditions

CAUSES = ("walls", "windows", "doors", "ceiling", "floor", "air")
"""Where heat goes, in the fixed order of every table and drawing."""

CAUSE_OF = {
    "wall": "walls",
    "below-grade wall": "walls",
    "window": "windows",
    "door": "doors",
    "ceiling": "ceiling",
    "floor": "floor",
    "below-grade floor": "floor",
    "slab edge": "floor",
}

TemperatureOf = Callable[[Beyond], Figure]


@result
class OpeningLoss:
    """A window or door: area of all of its count, and what it loses.

    ``total_area`` is not called area, which is what the job calls that of one of them.
    """

    name: str
    cause: str
    construction: str
    total_area: Area
    u_value: Transmittance
    loss: HeatRate


@result
class SurfaceLoss:
    """A surface without its openings, and what it loses. A slab edge has a length in place of an area."""

    name: str
    cause: str
    construction: str
    beyond: Beyond
    gross_area: Area | None
    net_area: Area | None
    edge_length: Length | None
    u_value: Transmittance | None
    conductance: Conductance
    beyond_temperature: Temperature
    loss: HeatRate
    openings: dict[str, OpeningLoss]


def floor_area_of(room: Room | Unheated) -> Figure | None:
    """Floor area as given, or from the two sides."""
    if room.floor_area is not None:
        return room.floor_area
    length, width = getattr(room, "length", None), getattr(room, "width", None)
    return rectangle_area(width=length, height=width) if length is not None and width is not None else None


def gross_area(surface: Surface, room: Room | Unheated) -> Figure | None:
    """Gross area of a surface by the rule of its kind; None for a slab edge."""
    if surface.area is not None:
        return surface.area
    kind = surface.construction.kind
    if kind == "slab edge":
        return None
    if kind == "below-grade wall" and surface.length is not None and surface.bottom is not None:
        assert surface.top is not None
        height = below_grade_wall_height(top=surface.top, bottom=surface.bottom)
        return rectangle_area(width=surface.length, height=height)
    if kind == "below-grade floor" and surface.length is None:
        return floor_area_of(room)
    other = surface.height if surface.height is not None else surface.width
    if surface.length is not None and other is not None:
        return rectangle_area(width=surface.length, height=other)
    return floor_area_of(room)


def u_value_of(construction: Construction) -> Figure:
    """U-value of an assembly as given, or from its R-value."""
    if construction.u_value is not None:
        return construction.u_value
    assert construction.r_value is not None
    return u_from_r(r_value=construction.r_value)


def surface_u(surface: Surface, site: SiteConditions) -> Figure:
    """U-value of a surface; below grade from depth, soil and the R-value of the assembly."""
    construction = surface.construction
    if construction.kind == "below-grade wall" and construction.r_value is not None:
        assert surface.top is not None and surface.bottom is not None
        return below_grade_wall_u(
            soil=site.soil_conductivity, r_value=construction.r_value, top=surface.top, bottom=surface.bottom
        )
    if construction.kind == "below-grade floor" and construction.r_value is not None:
        assert surface.width is not None and surface.depth is not None
        return below_grade_floor_u(
            soil=site.soil_conductivity,
            r_value=construction.r_value,
            width=surface.width,
            depth=surface.depth,
        )
    return u_value_of(construction)


def total_area(areas: Sequence[Figure]) -> Figure:
    """Areas added up; one that stands alone is its own sum."""
    return areas[0] if len(areas) == 1 else areas_total(areas=areas)


def area_of_opening(opening: Opening) -> Figure:
    """Area of all openings of one entry."""
    one = opening.area
    if one is None:
        assert opening.width is not None and opening.height is not None
        one = rectangle_area(width=opening.width, height=opening.height)
    return one if float(opening.count) == 1 else opening_area(area=one, count=opening.count)


def surface_loss(
    surface: Surface, room: Room | Unheated, indoor: Figure, site: SiteConditions, beyond: TemperatureOf
) -> SurfaceLoss:
    """What one surface and its openings lose from a space at ``indoor``."""
    there = beyond(surface.beyond)
    openings = {id: opening_loss(each, surface, indoor, there) for id, each in surface.openings.items()}
    construction = surface.construction
    gross = gross_area(surface, room)
    if gross is None:
        assert construction.f_factor is not None and surface.length is not None
        edge = surface.length
        return SurfaceLoss(
            surface.name, "floor", construction.name, surface.beyond, None, None, edge, None,
            edge_conductance(f_factor=construction.f_factor, edge=edge), there,
            slab_edge_loss(f_factor=construction.f_factor, edge=edge, indoor=indoor, outdoor=there), openings,
        )  # fmt: skip
    net = gross
    if openings:
        net = net_area(gross=gross, openings=total_area([each.total_area for each in openings.values()]))
    u_value = surface_u(surface, site)
    return SurfaceLoss(
        surface.name, CAUSE_OF[construction.kind], construction.name, surface.beyond, gross, net, None,
        u_value,
        conductance(area=net, u_value=u_value), there, _loss(surface.beyond, net, u_value, indoor, there),
        openings,
    )  # fmt: skip


def opening_loss(opening: Opening, surface: Surface, indoor: Figure, there: Figure) -> OpeningLoss:
    """What a window or door loses."""
    area, u_value = area_of_opening(opening), u_value_of(opening.construction)
    return OpeningLoss(
        opening.name, CAUSE_OF[opening.construction.kind], opening.construction.name, area, u_value,
        _loss(surface.beyond, area, u_value, indoor, there),
    )  # fmt: skip


def _loss(beyond: Beyond, area: Figure, u_value: Figure, indoor: Figure, there: Figure) -> Figure:
    if beyond.kind == "outdoors":
        return transmission_loss(area=area, u_value=u_value, indoor=indoor, outdoor=there)
    return loss_to_space(area=area, u_value=u_value, indoor=indoor, beyond=there)
