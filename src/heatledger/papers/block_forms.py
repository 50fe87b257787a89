"""Blocks that are filled in by hand: blanks, checklists, a grid to sketch on."""

from __future__ import annotations

from dataclasses import dataclass

from heatledger.papers.block_texts import Text


@dataclass(frozen=True)
class Blank:
    """Something to fill in: a rule with its unit, or boxes to tick. ``width`` in points, 0 for the rest."""

    label: Text
    unit: str = ""
    width: float = 0.0
    options: tuple[str, ...] = ()


@dataclass(frozen=True)
class Blanks:
    """Blanks under one another, in so many columns."""

    blanks: tuple[Blank, ...]
    columns: int = 1


@dataclass(frozen=True)
class Check:
    """A step of a checklist: box, what to do, when it passes, what to write down, what can hurt.

    A step that does not apply to this job keeps its number and says why in ``passes``.
    """

    number: str
    title: str
    do: Text
    passes: Text = ""
    readings: tuple[Blank, ...] = ()
    caution: Text = ""
    applies: bool = True


@dataclass(frozen=True)
class Checklist:
    """Steps in the order in which they are done."""

    steps: tuple[Check, ...]


@dataclass(frozen=True)
class Grid:
    """A grid to sketch on: squares of ``step`` points over the width, a heavy line every ``heavy``."""

    step: float
    heavy: int
    rows: int
    note: Text = ""
