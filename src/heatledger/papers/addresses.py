"""Sheet and line of every figure on the paper: what is found on sheet 2, what was given on sheet 1."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field

from heatledger.ledger.figures import Figure, Leaf, LeafKind, Placed, flat
from heatledger.steps.design import Design
from heatledger.steps.losses import RoomLoss

GIVEN, FOUND = 1, 2


@dataclass
class Group:
    """Figures under one heading, in the order they stand."""

    title: str
    figures: list[Figure] = field(default_factory=list)
    line: str = ""


@dataclass
class Addresses:
    """Numbers the figures of a design line by line, each with everything it is built on."""

    design: Design
    groups: list[Group] = field(default_factory=list)
    given: list[Group] = field(default_factory=list)
    keys: dict[int, str] = field(default_factory=dict)
    _lines: dict[int, int] = field(default_factory=lambda: {GIVEN: 0, FOUND: 0})

    def key(self, figure: Figure | None) -> str:
        """The address of a figure, such as ``2·14``; empty when it has none."""
        if isinstance(figure, Placed):
            figure = figure.original
        return self.keys.get(id(figure), "")

    def add(self, title: str, figures: Iterable[Figure], line: str = "") -> None:
        """A group of workings: these figures first, then the inner results they need."""
        group = Group(title, line=line)
        queue = list(figures)
        while queue:
            figure = queue.pop(0)
            if id(figure) in self.keys:
                continue
            if isinstance(figure.origin, Leaf):
                self._give(figure)
                continue
            self._number(figure, FOUND)
            group.figures.append(figure)
            queue.extend(each for each in flat(figure.inputs))
        if group.figures:
            self.groups.append(group)

    def _number(self, figure: Figure, sheet: int) -> None:
        self._lines[sheet] += 1
        self.keys[id(figure)] = f"{sheet}·{self._lines[sheet]}"

    def _give(self, figure: Figure) -> None:
        title = self._owner(figure)
        group = next((each for each in self.given if each.title == title), None)
        if group is None:
            group = Group(title)
            self.given.append(group)
        self._number(figure, GIVEN)
        group.figures.append(figure)

    def _owner(self, figure: Figure) -> str:
        """The heading that an entry stands under: its room, its construction, the site, the catalog."""
        origin: Leaf = figure.origin
        if origin.kind is not LeafKind.JOB:
            return "Catalog"
        steps, job = origin.path.split("/"), self.design.job
        among = {"rooms": job.rooms, "unheated": job.unheated, "levels": job.levels, "neighbors": job.neighbors}
        if steps[0] in among and len(steps) > 1 and steps[1] in among[steps[0]]:
            return str(among[steps[0]][steps[1]].name)
        return {"constructions": "Constructions", "site": "Site", "air": "Air of the house"}.get(steps[0], "House")


def addresses(design: Design) -> Addresses:
    """Every working that the paper needs, under the house, the storeys, the spaces and each room."""
    losses, made = design.losses, Addresses(design)
    house = losses.house
    made.add("The house", [house.loss, *(each.loss for each in house.causes.values())])
    made.add("Storeys", [each.loss for each in losses.levels.values()])
    for room in losses.rooms.values():
        made.add(room.name, room_figures(room))
    for space in losses.unheated.values():
        made.add(f"{space.name}, unheated", [space.temperature])
    site = losses.site
    made.add("Design day and air", [site.design_difference, site.ground, site.air_heat])
    per_area = [each.per_area for each in losses.rooms.values()]
    made.add("Floor areas", [house.floor_area, house.per_area, *per_area])
    return made


def room_figures(room: RoomLoss) -> list[Figure]:
    """The figures of a room in the order they are read: total, causes, each surface, air."""
    figures = [room.loss]
    figures += [each.loss for each in room.causes.values()]
    for surface in room.surfaces.values():
        figures.append(surface.loss)
        figures += [each.loss for each in surface.openings.values()]
    figures.append(room.air.loss)
    return figures
