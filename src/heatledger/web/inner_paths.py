"""Paths of figures inside a working, so that each of them opens too and can be shared by its link.

A figure that stands in the tree of a design has the path of its place. An inner result has none; its path
is that of the figure whose working shows it, then ``~`` and what it is called there:
``rooms/kitchen/loss~parts.2``. Following such steps always leads to a figure again.
"""

from __future__ import annotations

from collections.abc import Iterator

from heatledger.ledger.choosing import Choice
from heatledger.ledger.figures import Figure, Names, original_of, waits_for
from heatledger.ledger.formulas import Formula
from heatledger.ledger.solving import Solved
from heatledger.steps.design import Design, NoSuchFigure
from heatledger.studies.crude import crude_figures
from heatledger.studies.startup_lines import startup_figures

INNER = "~"
SIDES = ("one-side", "other-side")


def figure_at(house: Design, path: str) -> Figure:
    """The figure at a path of the tree or an inner one. ``NoSuchFigure`` offers the nearest paths."""
    first, *steps = path.strip().strip("/").split(INNER)
    figure = house.figures.get(first)
    if figure is None:
        figure = crude_figures(house.job).get(first)
    if figure is None:
        figure = startup_figures(house).get(first)
    if figure is None:
        raise NoSuchFigure(first, house.nearest(first))
    for step in steps:
        figure = next((each for name, each in inside(figure) if name == step), None)
        if figure is None:
            raise NoSuchFigure(path, [first])
    return original_of(figure)


def inside(figure: Figure) -> Iterator[tuple[str, Figure]]:
    """What the working of a figure shows, each by what it is called there."""
    origin = figure.origin
    if isinstance(origin, Formula):
        for parameter, given in zip(origin.parameters, figure.inputs, strict=True):
            if parameter.many:
                yield from ((f"{parameter.name}.{i}", each) for i, each in enumerate(given, 1))
            else:
                yield parameter.name, given
        return
    if isinstance(origin, Choice):
        yield from zip(("taken", "by"), figure.inputs, strict=False)
        yield from (
            (f"beside.{i}", each)
            for i, (_, each) in enumerate(origin.losers, 1)
            if isinstance(each, Figure)
        )  # fmt: skip
    elif isinstance(origin, Solved):
        yield from _of_search(figure, origin)


def _of_search(figure: Figure, origin: Solved) -> Iterator[tuple[str, Figure]]:
    """The inputs of a search, what was found with the figure, and the two sides of its balance."""
    solution = origin.solution
    yield from ((f"from.{i}", each) for i, each in enumerate(solution.inputs, 1))
    yield from (
        (f"with.{i}", each)
        for i, (name, each) in enumerate(solution.figures.items(), 1)
        if name != origin.unknown
    )
    if not figure.is_missing:
        yield from zip(SIDES, solution.sides()[origin.unknown], strict=True)


class InnerNames(Names):
    """The names of a design, with a path for every figure that the working of one of them shows."""

    def __init__(self, house: Design, figure: Figure, path: str) -> None:
        self.house, self.own = house, house.names
        self.paths = {id(figure): path}
        for each in waits_for(figure):
            self._add(each, "")
        for step, each in inside(figure):
            inner = f"{path}{INNER}{step}"
            self._add(each, inner)
            if step in SIDES:  # both sides stand in the working whole
                for below, one in inside(each):
                    self._add(one, f"{inner}{INNER}{below}")

    def _add(self, figure: Figure, inner: str) -> None:
        """The path of the tree where it leads to this very figure, else the inner one."""
        figure = original_of(figure)
        place = self.own.path(figure)
        self.paths.setdefault(id(figure), place if self.house.figures.get(place) is figure else inner)

    def path(self, figure: Figure) -> str:
        """Where a figure of the working opens; empty for one that the working does not show."""
        return self.paths.get(id(original_of(figure)), "")

    def title(self, figure: Figure) -> str:
        """What the design calls it."""
        return self.own.title(figure)

    def place(self, figure: Figure) -> str:
        """Where an entry was written."""
        return self.own.place(figure)

    def thing(self, key: str) -> str:
        """What a thing of a choice or a search is called."""
        return self.own.thing(key)
