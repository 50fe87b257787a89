"""Sheet and line of every figure of a design: what was given on sheet 1, what is found on the others.

One book of addresses serves every paper. Its stages follow one another as the work does, so that a later
step moves no number of an earlier one. Each result stands once, in the first stage that needs it, under the
heading that asks for it: the house, a room, a circuit. What is needed on the way stands under the heading of
the thing it belongs to, else under the one that needs it, else under the one for what is shared. Two results
of one formula with the same inputs are one working and have one address.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field

from heatledger.drawings.naming import placed_parts
from heatledger.ledger.choosing import Choice
from heatledger.ledger.compose import working_of
from heatledger.ledger.dimensions import HEAT_RATE, TEMPERATURE
from heatledger.ledger.figures import Figure, Leaf, Placed, flat
from heatledger.ledger.formulas import Formula
from heatledger.ledger.outline import Outline, outline_of
from heatledger.ledger.presets import Preset
from heatledger.ledger.solving import Solved
from heatledger.ledger.workings import Working
from heatledger.papers.entries import given_under, in_order
from heatledger.steps.design import Design

GIVEN = 1
MOST_ROWS_OF_A_LINE = 3
LEAST_OF_A_NETWORK = 3
MOST_ROWS_OF_ANOTHER_LINE, MOST_STEPS_OF_A_LINE = 7, 3


@dataclass
class Group:
    """Figures under one heading: those it asks for, in reading order, and the titles it gives them.

    ``owner`` is the thing whose name its titles need not repeat. ``only_lines`` sets every working of
    the group as one running line, ``compact`` every small one; ``shared`` takes what several headings need
    and none owns.
    """

    title: str
    asked: list[Figure] = field(default_factory=list)
    owner: str = ""
    line: str = ""
    only_lines: bool = False
    compact: bool = False
    shared: bool = False
    titles: dict[int, tuple[str, str]] = field(default_factory=dict)
    blocks: list[Figure] = field(default_factory=list)
    lines: list[Figure] = field(default_factory=list)


@dataclass
class Stage:
    """A step of the work: the sheet it stands on, its headings, and the entries that it is first to need."""

    id: str
    sheet: int
    title: str
    groups: list[Group]
    given: list[Group] = field(default_factory=list)


class Addresses:
    """The addresses of one design for one reader, and the working of each figure, composed once."""

    def __init__(self, design: Design, units: Preset, stages: list[Stage]) -> None:
        self.design, self.units, self.stages = design, units, stages
        self.keys: dict[int, str] = {}
        self.uses: dict[int, list[int]] = {}
        self.titles: dict[int, tuple[str, str]] = {}
        """What figures are called wherever they stand: the thing, and what of it."""
        self._kinds: dict[object, int] = {}
        self._kind_of: dict[int, int] = {}
        self._figures: list[Figure] = []
        self._workings: dict[int, Working] = {}
        homed: set[int] = set()
        given: set[int] = set()
        for stage in stages:
            self._place(stage, homed, given)
        self._number()

    @property
    def groups(self) -> list[Group]:
        """Every heading with what is found under it."""
        return [each for stage in self.stages for each in stage.groups]

    @property
    def given(self) -> list[Group]:
        """Every heading with what was given under it."""
        return [each for stage in self.stages for each in stage.given]

    def of(self, *ids: str) -> list[Stage]:
        """The stages of these names."""
        return [each for each in self.stages if each.id in ids]

    def keys_of(self, *ids: str) -> frozenset[str]:
        """The addresses that stand in these stages."""
        groups = [each for stage in self.of(*ids) for each in (*stage.groups, *stage.given)]
        return frozenset(self.key(each) for group in groups for each in (*group.blocks, *group.lines))

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

    def let_go(self) -> None:
        """Forget the composed workings; those that are asked for again are composed again."""
        self._workings.clear()

    def goes_into(self, figure: Figure) -> list[str]:
        """The addresses of what is built on a figure, those of its own sheet first."""
        found = [self.keys[each] for each in self.uses.get(self.kind(figure), []) if each in self.keys]
        return sorted(found, key=lambda key: int(key.partition("·")[0]))

    def _place(self, stage: Stage, homed: set[int], given: set[int]) -> None:
        """Decide what stands under which heading: first what is asked for, then what that needs.

        ``homed`` and ``given`` are the figures and entries that have a place in this stage or before it.
        """
        for group in stage.groups:
            own = []
            for figure in group.asked:
                if self.kind(figure) not in homed and not isinstance(figure.origin, Leaf):
                    own.append(figure)
                homed.add(self.kind(figure))
            group.asked, group.lines = own, []
        needed: dict[int, list[Group]] = {}
        first: dict[int, Figure] = {}
        entries: dict[int, Figure] = {}
        for group in stage.groups:
            for figure in self._needs(group, homed, entries):
                first.setdefault(self.kind(figure), figure)
                needed.setdefault(self.kind(figure), []).append(group)
        for kind, groups in needed.items():
            self._home(first[kind], groups, stage).lines.append(first[kind])
        homed.update(needed)
        self._give([each for kind, each in entries.items() if kind not in given], stage)
        given.update(entries)
        shown: set[int] = set()
        for group in stage.groups:
            self._divide(group, shown)
        stage.groups = [each for each in stage.groups if each.blocks or each.lines]

    def _home(self, figure: Figure, needed_by: list[Group], stage: Stage) -> Group:
        """The heading that an inner result stands under."""
        things = placed_parts(figure, self.design)[1]
        owner = next((each for each in stage.groups if things and each.owner == things[0]), None)
        if owner is not None:
            return owner
        alone = needed_by[0] if len(needed_by) == 1 and not needed_by[0].only_lines else None
        return alone or next((each for each in stage.groups if each.shared), needed_by[0])

    def _needs(self, group: Group, homed: set[int], entries: dict[int, Figure]) -> Iterator[Figure]:
        """The inner results that a group needs and that have no place yet, each once, nearest first."""
        seen: set[int] = set()
        queue = list(group.asked)
        while queue:
            figure = queue.pop(0)
            by = self.kind(figure)
            for each in needs(figure):
                kind = self.kind(each)
                users = self.uses.setdefault(kind, [])
                if by not in users:
                    users.append(by)
                if isinstance(each.origin, Leaf):
                    entries.setdefault(kind, each)
                elif kind not in homed and kind not in seen:
                    seen.add(kind)
                    queue.append(each)
                    yield each

    def _divide(self, group: Group, shown: set[int]) -> None:
        """Workings that fill a column stand as blocks, small arithmetic as running lines after them.

        In a compact group a formula is set as a block once in its stage (``shown``), then as lines. Of
        many figures found together the first is a block that names them all, the others are lines.
        """
        asked = {self.kind(each) for each in group.asked}
        figures = [*group.asked, *group.lines]
        group.lines = []
        for figure in figures:
            if group.only_lines or self._is_line(figure, group, self.kind(figure) in asked, shown):
                group.lines.append(figure)
            else:
                group.blocks.append(figure)
                shown.update((id(figure.origin), network_of(figure)))

    def _is_line(self, figure: Figure, group: Group, asked: bool, shown: set[int]) -> bool:
        """Whether a working stands as one running line. Most are told by their place: none is composed."""
        main = not group.compact and asked and figure.dimension in (HEAT_RATE, TEMPERATURE)
        made = None if main and not figure.is_missing else outline_of(figure, self.units)
        if made is not None and is_small(made):
            return True
        if made is not None and group.compact and id(figure.origin) in shown and fits_a_line(made):
            return True
        network = network_of(figure)
        if not network or network not in shown:
            return False
        return all(map(fits_a_line, outline_of(figure, self.units).sides))

    def _number(self) -> None:
        """Lines run on through the stages of one sheet, and through all entries."""
        counts: dict[int, int] = {}
        for stage in self.stages:
            placed = [(stage.sheet, each) for group in stage.groups for each in (*group.blocks, *group.lines)]
            placed += [(GIVEN, each) for group in stage.given for each in group.lines]
            for sheet, figure in placed:
                counts[sheet] = counts.get(sheet, 0) + 1
                self.keys[self.kind(figure)] = f"{sheet}·{counts[sheet]}"

    def _give(self, figures: list[Figure], stage: Stage) -> None:
        """Entries by what they belong to."""
        under: dict[str, Group] = {}
        for figure in figures:
            title = given_under(figure, self.design.job)
            under.setdefault(title, Group(title, owner=title)).lines.append(figure)
        stage.given = [under[each] for each in in_order(list(under), self.design.job)]


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


def network_of(figure: Figure) -> int:
    """A number for the many figures that were found together with this one; 0 where there are few."""
    origin = figure.origin
    if not isinstance(origin, Solved) or len(origin.solution.figures) < LEAST_OF_A_NETWORK:
        return 0
    return id(origin.solution)


def is_small(made: Outline) -> bool:
    """Whether a working reads as well in one running line as in a column."""
    if made.kind == "waiting":
        return True
    plain = made.kind in ("formula", "total") and not made.steps and not made.by_hand
    return plain and made.rows <= MOST_ROWS_OF_A_LINE


def fits_a_line(made: Outline) -> bool:
    """Whether a working can stand in one running line where its formula has been shown as a block."""
    plain = made.kind in ("formula", "total") and not made.sides
    return plain and made.rows <= MOST_ROWS_OF_ANOTHER_LINE and made.steps <= MOST_STEPS_OF_A_LINE
