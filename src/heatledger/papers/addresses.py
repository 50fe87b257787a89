"""Sheet and line of every figure on the paper: what is found on sheet 2, what was given on sheet 1.

Each result stands once, under the heading that asks for it: the house, a room, an unheated space. What is
needed on the way stands under the heading of the thing it belongs to, else under the one that needs it, else
under the one for what is shared. Two results of one formula with the same inputs are one working and have
one address.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any

from heatledger.ledger.choosing import Choice
from heatledger.ledger.compose import working_of
from heatledger.ledger.dimensions import HEAT_RATE, TEMPERATURE
from heatledger.ledger.figures import Figure, Leaf, LeafKind, Placed, flat
from heatledger.ledger.formulas import Formula
from heatledger.ledger.presets import Preset
from heatledger.ledger.solving import Solved
from heatledger.ledger.workings import Working
from heatledger.papers.naming import placed_parts
from heatledger.steps.design import Design

GIVEN, FOUND = 1, 2
MOST_ROWS_OF_A_LINE = 3


@dataclass
class Group:
    """Figures under one heading: those it asks for, in reading order, and the titles it gives them.

    ``owner`` is the thing whose name its titles need not repeat. ``only_lines`` sets every working of
    the group as one running line; ``shared`` takes what several headings need and none owns.
    """

    title: str
    asked: list[Figure] = field(default_factory=list)
    owner: str = ""
    line: str = ""
    only_lines: bool = False
    shared: bool = False
    titles: dict[int, tuple[str, str]] = field(default_factory=dict)
    blocks: list[Figure] = field(default_factory=list)
    lines: list[Figure] = field(default_factory=list)


class Addresses:
    """The addresses of one paper, and the working of each figure, composed once."""

    def __init__(self, design: Design, units: Preset, groups: list[Group]) -> None:
        self.design, self.units, self.groups = design, units, groups
        self.given: list[Group] = []
        self.keys: dict[int, str] = {}
        self.uses: dict[int, list[int]] = {}
        self._kinds: dict[object, int] = {}
        self._kind_of: dict[int, int] = {}
        self._figures: list[Figure] = []
        self._workings: dict[int, Working] = {}
        self._place()
        self._number()

    def key(self, figure: Figure | None) -> str:
        """The address of a figure, such as ``2·14``; empty when it has none."""
        if figure is None:
            return ""
        figure = figure.original if isinstance(figure, Placed) else figure
        return self.keys.get(self.kind(figure), "")

    def kind(self, figure: Figure) -> int:
        """A number for the working of a figure: the same for one formula with the same inputs."""
        known = self._kind_of.get(id(figure))
        if known is not None:
            return known
        signature: object = id(figure)
        if isinstance(figure.origin, Formula):
            below = (
                tuple(map(self.kind, each)) if isinstance(each, tuple) else self.kind(each)
                for each in figure.inputs
            )
            signature = (id(figure.origin), *below)
        number = self._kinds.setdefault(signature, len(self._kinds))
        self._kind_of[id(figure)] = number
        self._figures.append(figure)  # kept, so that its id is not given to another
        return number

    def working(self, figure: Figure) -> Working:
        """The working of a figure, composed once."""
        kind = self.kind(figure)
        if kind not in self._workings:
            self._workings[kind] = working_of(figure, self.units, self.design.names)
        return self._workings[kind]

    def goes_into(self, figure: Figure) -> list[str]:
        """The addresses of what is built on a figure."""
        return [self.keys[each] for each in self.uses.get(self.kind(figure), []) if each in self.keys]

    def _place(self) -> None:
        """Decide what stands under which heading: first what is asked for, then what that needs."""
        asked: set[int] = set()
        for group in self.groups:
            own = []
            for figure in group.asked:
                if self.kind(figure) not in asked and not isinstance(figure.origin, Leaf):
                    own.append(figure)
                asked.add(self.kind(figure))
            group.asked, group.lines = own, []
        needed: dict[int, list[Group]] = {}
        first: dict[int, Figure] = {}
        given: dict[int, Figure] = {}
        for group in self.groups:
            for figure in self._needs(group, asked, given):
                first.setdefault(self.kind(figure), figure)
                needed.setdefault(self.kind(figure), []).append(group)
        for kind, groups in needed.items():
            self._home(first[kind], groups).lines.append(first[kind])
        self._give(list(given.values()))
        for group in self.groups:
            self._divide(group)
        self.groups = [each for each in self.groups if each.blocks or each.lines]

    def _home(self, figure: Figure, needed_by: list[Group]) -> Group:
        """The heading that an inner result stands under."""
        things = placed_parts(figure, self.design)[1]
        owner = next((each for each in self.groups if things and each.owner == things[0]), None)
        if owner is not None:
            return owner
        alone = needed_by[0] if len(needed_by) == 1 and not needed_by[0].only_lines else None
        return alone or next((each for each in self.groups if each.shared), needed_by[0])

    def _needs(self, group: Group, asked: set[int], given: dict[int, Figure]) -> Iterator[Figure]:
        """The inner results that a group needs and no group asks for, each once, nearest first."""
        seen: set[int] = set()
        queue = list(group.asked)
        while queue:
            figure = queue.pop(0)
            for each in needs(figure):
                kind, by = self.kind(each), self.kind(figure)
                if by not in self.uses.setdefault(kind, []):
                    self.uses[kind].append(by)
                if isinstance(each.origin, Leaf):
                    given.setdefault(kind, each)
                elif kind not in asked and kind not in seen:
                    seen.add(kind)
                    queue.append(each)
                    yield each

    def _divide(self, group: Group) -> None:
        """Workings that fill a column stand as blocks, small arithmetic as running lines after them."""
        asked = {self.kind(each) for each in group.asked}
        figures = [*group.asked, *group.lines]
        group.lines = []
        for figure in figures:
            main = self.kind(figure) in asked and figure.dimension in (HEAT_RATE, TEMPERATURE)
            small = is_small(self.working(figure)) and (figure.is_missing or not main)
            small = small or group.only_lines
            (group.lines if small else group.blocks).append(figure)

    def _number(self) -> None:
        count = 0
        for group in self.groups:
            for figure in [*group.blocks, *group.lines]:
                count += 1
                self.keys[self.kind(figure)] = f"{FOUND}·{count}"
        entries = [figure for group in self.given for figure in group.lines]
        self.keys |= {self.kind(figure): f"{GIVEN}·{line}" for line, figure in enumerate(entries, 1)}

    def _give(self, figures: list[Figure]) -> None:
        """Entries by what they belong to: the house first, then rooms and spaces in the job's order."""
        job = self.design.job
        order = ["Site", "House", "Air of the house", "Constructions", "Catalog and sources"]
        order += [
            str(each.name)
            for among in (job.levels, job.rooms, job.unheated, job.neighbors)
            for each in among.values()
        ]
        for figure in figures:
            title = self._owner(figure)
            group = next((each for each in self.given if each.title == title), None)
            if group is None:
                group = Group(title, owner=title)
                self.given.append(group)
            group.lines.append(figure)
        self.given.sort(key=lambda each: order.index(each.title) if each.title in order else len(order))

    def _owner(self, figure: Figure) -> str:
        """The heading that an entry stands under: its room, its construction, the site, a source."""
        origin: Leaf = figure.origin
        steps, job = origin.path.split("/"), self.design.job
        among: dict[str, Mapping[str, Any]] = {
            "rooms": job.rooms,
            "unheated": job.unheated,
            "levels": job.levels,
            "neighbors": job.neighbors,
        }
        if steps[0] in among and len(steps) > 1 and steps[1] in among[steps[0]]:
            return str(among[steps[0]][steps[1]].name)
        if origin.kind is not LeafKind.JOB and steps[0] != "constructions":
            return "Catalog and sources"
        return {"constructions": "Constructions", "site": "Site", "air": "Air of the house"}.get(
            steps[0], "House"
        )


def needs(figure: Figure) -> list[Figure]:
    """What a working names: its inputs, the parts of both sides of a balance, the losers of a choice."""
    found = list(flat(figure.inputs))
    if isinstance(figure.origin, Solved) and not figure.is_missing:
        solution = figure.origin.solution
        found += [each for side in solution.sides()[figure.origin.unknown] for each in flat(side.inputs)]
        found += [each for each in solution.figures.values() if each is not figure]
    if isinstance(figure.origin, Choice):
        found += [each for _, each in figure.origin.losers if isinstance(each, Figure)]
    return found


def is_small(made: Working) -> bool:
    """Whether a working reads as well in one running line as in a column."""
    if made.kind == "waiting":
        return True
    plain = made.kind in ("formula", "total") and not made.steps and made.by_hand is None
    return plain and len(made.rows) <= MOST_ROWS_OF_A_LINE
