"""What another version of the program makes of a revision: the figures that moved, and where that begins."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from math import inf, isclose, isnan

from heatledger import __version__
from heatledger.book.records import Kept
from heatledger.ledger.dimensions import DIMENSIONS
from heatledger.ledger.figures import Figure, Leaf, LeafKind, flat, placed
from heatledger.ledger.presets import Preset
from heatledger.ledger.show import show
from heatledger.steps.design import Design

SAME = 1e-7
"""Figures that differ by no more than this share are the same: other machines differ by less."""
_NOTHING = "none"
_SAID_AT_MOST = 3


@dataclass(frozen=True)
class MovedLine:
    """One figure that is no longer what the revision showed.

    ``share`` is how far it moved as a share of what it was, infinite where one of the two is missing.
    ``begins`` are the paths of the figures at which the movement begins, ``why`` says so in words.
    """

    path: str
    title: str
    before: str
    after: str
    share: float
    begins: tuple[str, ...]
    why: str


@dataclass(frozen=True)
class Moved:
    """What moved between the version that made a revision and the one that reads it, the most moved first.

    ``gone`` are paths that were shown and are no longer worked out; ``new`` those that were not yet.
    """

    version_then: str
    version_now: str
    lines: tuple[MovedLine, ...]
    gone: tuple[str, ...]
    new: tuple[str, ...]


def moved(kept: Kept, house: Design, units: Preset) -> Moved:
    """The figures of ``house`` that are not what was kept with its revision, in the reader's ``units``.

    A figure whose movement cannot be seen in the digits shown is left out.
    """
    now = house.figures
    changed = {path: each for path, each in now.items() if path in kept.figures and _moved(kept, path, each)}
    beginnings = _Beginnings(house, kept, changed)
    lines = []
    for path, figure in changed.items():
        si, name = kept.figures[path]
        dimension = DIMENSIONS.get(name)
        before = show(si, units, dimension) if dimension else _NOTHING
        after = show(figure, units)
        if before != after:
            begins = beginnings.of(figure)
            title = house.names.title(placed(figure, house.names))
            why = _why(begins, figure, house)
            share = _share(si, float(figure))
            paths = tuple(filter(None, (house.names.path(each) for each in begins)))
            lines.append(MovedLine(path, title, before, after, share, paths, why))
    lines.sort(key=lambda each: -each.share)
    gone = tuple(path for path in kept.figures if path not in now)
    new = tuple(path for path in house.results if path not in kept.figures)
    return Moved(kept.version, __version__, tuple(lines), gone, new)


def _moved(kept: Kept, path: str, figure: Figure) -> bool:
    si, name = kept.figures[path]
    value = float(figure)
    if name != figure.dimension.name or isnan(si) != isnan(value):
        return True
    return not isnan(si) and not isclose(si, value, rel_tol=SAME, abs_tol=1e-12)


def _share(before: float, after: float) -> float:
    if isnan(before) or isnan(after):
        return inf
    return abs(after - before) / abs(before) if before else inf


class _Beginnings:
    """For each figure that moved, those at which its movement begins: none of their own inputs moved.

    An inner result stands at no path, so nothing was kept of it; what goes into it is looked at instead.
    """

    def __init__(self, house: Design, kept: Kept, changed: dict[str, Figure]) -> None:
        self._has_kept = {id(each) for path, each in house.figures.items() if path in kept.figures}
        self._moved = {id(each) for each in changed.values()}
        self._found: dict[int, tuple[Figure, ...]] = {}

    def of(self, figure: Figure) -> tuple[Figure, ...]:
        """The beginnings behind a figure that moved, each once; itself when it is one."""
        waiting = [figure]
        while waiting:
            here = waiting[-1]
            if id(here) in self._found:
                waiting.pop()
                continue
            behind = self._moved_inputs(here)
            not_yet = [each for each in behind if id(each) not in self._found]
            if not_yet:
                waiting += not_yet
                continue
            deeper = [one for each in behind for one in self._found[id(each)]]
            self._found[id(here)] = tuple(_each_once(deeper)) or (here,)
        return self._found[id(figure)]

    def _moved_inputs(self, figure: Figure) -> list[Figure]:
        """The nearest figures below that have a place and moved, looked for through those that have none."""
        found, seen, waiting = [], set(), list(flat(figure.inputs))
        while waiting:
            each = waiting.pop()
            if id(each) in seen:
                continue
            seen.add(id(each))
            if id(each) in self._moved:
                found.append(each)
            elif id(each) not in self._has_kept:
                waiting += flat(each.inputs)
        return found


def _each_once(figures: Iterable[Figure]) -> list[Figure]:
    return list({id(each): each for each in figures}.values())


def _why(begins: tuple[Figure, ...], figure: Figure, house: Design) -> str:
    if begins == (figure,):
        return _beginning(figure)
    said = [house.names.title(placed(each, house.names)) for each in begins[:_SAID_AT_MOST]]
    rest = len(begins) - len(said)
    more = f" and {rest} more" if rest else ""
    return f"Follows from {'; '.join(said)}{more}."


def _beginning(figure: Figure) -> str:
    """In words, how a figure can move though nothing that goes into it did."""
    origin = figure.origin
    if not isinstance(origin, Leaf):
        title = getattr(origin, "title", "") or getattr(origin, "name", "")
        return f"The movement begins here: {title or 'this figure'} is worked out in another way."
    if origin.kind is LeafKind.JOB and origin.typed:
        return f"The movement begins here: {origin.typed!r} is read in another way."
    return "The movement begins here: the value in the table or source is another one."
