"""What the paper "Heat loss of the house" needs, as plain texts and a few floats for the drawings.

Whoever fills this has already chosen units, rounding and words; the paper computes nothing. Floats are for
proportions of drawings alone and may be in any one unit. An empty text where a figure belongs prints as a
blank rule: the figure is missing. A figure that is none (no door in the room) is the text ``"–"``. Keys are
``"sheet·line"`` (see ``workings_data``); only keys that a working or an entry carries become links.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from typing import Literal

from heatledger.drawings.hatches import CAUSES
from heatledger.drawings.house_section import Stack
from heatledger.drawings.shapes import Drawing
from heatledger.papers.workings_data import Known, SourceUse, WorkingGroup

Weight = Literal["must fix", "decide", "note"]


@dataclass(frozen=True)
class Cell:
    """A figure in a table with the key of its working."""

    text: str
    key: str = ""


@dataclass(frozen=True)
class Units:
    """The unit of each column, said once in the head."""

    loss: str
    area: str
    u_value: str
    difference: str
    per_area: str


@dataclass(frozen=True)
class Head:
    """Who, what, when. ``date`` is given by the user; ``draft`` is printed framed when it is not empty."""

    title: str
    job: str
    address: str
    date: str
    preparer: str
    version: str
    revision: str = ""
    draft: str = ""
    invented: str = ""


@dataclass(frozen=True)
class Band:
    """The likely range as a rule: ends, figure, other evidence by name, what parts thousands."""

    low: float
    high: float
    figure: float
    words: str
    others: tuple[tuple[float, str], ...] = ()
    group: str = ","


@dataclass(frozen=True)
class Answer:
    """The first thing said. ``load`` is in speaking precision; ``sentences`` follow under the figure."""

    opening: str
    load: str
    key: str
    sentences: tuple[str, ...]
    band: Band | None = None
    waits_for: str = ""


@dataclass(frozen=True)
class Condition:
    """One line of the design conditions: what, value, and where it is from or how well it is known."""

    name: str
    value: str
    note: str = ""
    key: str = ""
    known: Known = ""
    standing: str = ""


@dataclass(frozen=True)
class CauseLine:
    """One of the six causes, in the fixed order; ``amount`` draws its arrow and bar."""

    cause: str
    name: str
    loss: Cell
    share: Cell
    amount: float


@dataclass(frozen=True)
class Matter:
    """One row of what matters most, longest first; ``half`` is the swing as a float."""

    name: str
    value: str
    swing: str
    half: float
    cause: str = ""
    known: Known = ""
    key: str = ""


@dataclass(frozen=True)
class RoomLine:
    """A room: six cells and six amounts in the order of causes, its loss, its loss per floor area."""

    name: str
    level: str
    causes: tuple[Cell, ...]
    loss: Cell
    per_area: Cell
    amounts: tuple[float, ...]


@dataclass(frozen=True)
class LevelLine:
    """A level, named as its rooms name it, with what its rooms lose together."""

    name: str
    loss: Cell


@dataclass(frozen=True)
class HouseLine:
    """The last row of the room table; ``remark`` says "rounded parts" where it holds."""

    name: str
    remark: str
    causes: tuple[Cell, ...]
    loss: Cell
    per_area: Cell


@dataclass(frozen=True)
class FindingLine:
    """What a careful reader would say: weight, where, what, why, how to mend it, whether decided."""

    weight: Weight
    where: str
    text: str
    why: str = ""
    mends: tuple[str, ...] = ()
    key: str = ""
    decided: str = ""
    source: SourceUse | None = None


@dataclass(frozen=True)
class PartLine:
    """A kind of part of the house, all its areas together. ``area_unit`` only where it is not the head's."""

    cause: str
    name: str
    area: Cell
    u_value: Cell
    difference: Cell
    loss: Cell
    source: SourceUse
    area_unit: str = ""


@dataclass(frozen=True)
class Entry:
    """A value the user gave: as set, how well it is known, and the line of the job it stands on.

    ``details`` say what else belongs to it: how it was typed where that differs, what it stands in place
    of, its neighbors in the catalog. ``source`` is set where the value comes from one.
    """

    key: str
    name: str
    value: str
    line: str = ""
    known: Known = ""
    details: tuple[str, ...] = ()
    source: SourceUse | None = None


@dataclass(frozen=True)
class EntryGroup:
    """The entries of one room or one construction."""

    title: str
    entries: tuple[Entry, ...]


@dataclass(frozen=True)
class Reference:
    """A source: what it is, what it was used for, and the standing of each use."""

    title: str
    used_for: str
    uses: tuple[SourceUse, ...]


@dataclass(frozen=True)
class Weather:
    """The loss at other outdoor temperatures: the picture, its result and what is held."""

    title: str
    drawing: Drawing
    sentence: str
    note: str


@dataclass(frozen=True)
class HeatLossPaper:
    """The whole paper, in the order of its pages."""

    head: Head
    units: Units
    answer: Answer
    conditions: tuple[Condition, ...]
    house: Stack
    causes: tuple[CauseLine, ...]
    rooms: tuple[RoomLine, ...]
    house_line: HouseLine
    cautions: tuple[str, ...]
    levels: tuple[LevelLine, ...] = ()
    weather: Weather | None = None
    matters: tuple[Matter, ...] = ()
    matters_note: str = ""
    findings: tuple[FindingLine, ...] = ()
    findings_none: str = "Nothing is open."
    not_checked: tuple[str, ...] = ()
    parts: tuple[PartLine, ...] = ()
    parts_note: str = ""
    workings: tuple[WorkingGroup, ...] = ()
    tape: tuple[EntryGroup, ...] = ()
    tape_note: str = ""
    references: tuple[Reference, ...] = ()
    language: str = "en"

    def __post_init__(self) -> None:
        order = tuple(each.cause for each in self.causes)
        if order != CAUSES:
            raise ValueError(f"the causes stand in the order {', '.join(CAUSES)}, got {', '.join(order)}")
        rows = [(room.name, room.causes) for room in self.rooms]
        for name, cells in (*rows, (self.house_line.name, self.house_line.causes)):
            if len(cells) != len(CAUSES):
                raise ValueError(f"{name!r} needs one cell for each of the six causes")
        twice = [key for key, count in Counter(self.keys()).items() if count > 1]
        if twice:
            raise ValueError(f"one address is given to two figures: {', '.join(sorted(twice))}")

    def keys(self) -> tuple[str, ...]:
        """The keys that something on the paper answers to: workings first, then entries."""
        found: list[str] = []
        for group in self.workings:
            found += [each.key for each in group.workings]
            found += [each.key for each in group.lines]
        found += [each.key for entries in self.tape for each in entries.entries]
        return tuple(key for key in found if key)
