"""Any paper as a list of blocks: plain data, all texts as printed, nothing computed.

Whoever fills a block has already chosen units, rounding and words. A *text* is a string, or a tuple of
strings and ``Run``s where a piece is bold, is a figure with its key, or is to be filled in. A cell or a
value that is ``""`` is a figure that is missing and prints as a blank rule, never as 0; ``" "`` prints
nothing, ``"–"`` says that there is none. A key is the address of a figure (``"3·14"``): a link where its
working stands on the same paper, else the sheet and line of the paper "Workings".
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from heatledger.drawings.shapes import Drawing
from heatledger.papers.block_forms import Blank as Blank
from heatledger.papers.block_forms import Blanks as Blanks
from heatledger.papers.block_forms import Check as Check
from heatledger.papers.block_forms import Checklist as Checklist
from heatledger.papers.block_forms import Grid as Grid
from heatledger.papers.block_texts import Mark as Mark
from heatledger.papers.block_texts import Run as Run
from heatledger.papers.block_texts import Text as Text
from heatledger.papers.heat_loss_data import EntryGroup, FindingLine, Head, Reference
from heatledger.papers.workings_data import Known, WorkingGroup

Align = Literal["left", "center", "right"]


@dataclass(frozen=True)
class Heading:
    """A heading; level 1 in the text size of sections, level 2 with a rule under it."""

    text: str
    level: Literal[1, 2] = 1


@dataclass(frozen=True)
class Paragraph:
    """Running text: ``lead`` in serif for the first thing said, ``small`` for notes."""

    text: Text
    kind: Literal["", "lead", "small"] = ""


@dataclass(frozen=True)
class Frame:
    """A frame that is never broken: a caution, or what must be said above everything."""

    title: str
    texts: tuple[Text, ...] = ()


@dataclass(frozen=True)
class Column:
    """A column of a table. ``width`` is ``auto``, a share such as ``1fr``, or points such as ``60pt``."""

    head: str
    align: Align = "left"
    width: str = "auto"
    unit: str = ""


@dataclass(frozen=True)
class Cell:
    """A cell: text or figure with its key, mark and line type. ``total`` puts the double rule under it."""

    text: Text = ""
    key: str = ""
    known: Known = ""
    standing: str = ""
    mark: Mark = ""
    strong: bool = False
    total: bool = False
    span: int = 1
    drawing: Drawing | None = None


NOTHING = Cell(" ")
"""A cell that stays empty."""
NONE = Cell("–")
"""A cell that says there is none."""


@dataclass(frozen=True)
class Row:
    """A row, never broken over pages. ``group`` heads those after it; ``total`` stands under a rule."""

    cells: tuple[Cell, ...]
    kind: Literal["", "group", "total"] = ""


@dataclass(frozen=True)
class Table:
    """A table whose head repeats on every page.

    ``whole`` keeps it on one page. ``row_height``, the least in points, and ``ruled`` make a form to fill in.
    """

    columns: tuple[Column, ...]
    rows: tuple[Row, ...]
    note: Text = ""
    whole: bool = False
    ruled: bool = False
    row_height: float = 0.0

    def __post_init__(self) -> None:
        for row in self.rows:
            count = sum(each.span for each in row.cells)
            if count != len(self.columns):
                said = ", ".join(each.head or "–" for each in self.columns)
                raise ValueError(f"a row of {count} cells stands in a table of {len(self.columns)}: {said}")


@dataclass(frozen=True)
class Fact:
    """A line of a list of facts: name, value with its key, and what is to be said beside it."""

    name: Text
    value: Text
    key: str = ""
    note: Text = ""
    known: Known = ""
    standing: str = ""
    mark: Mark = ""


@dataclass(frozen=True)
class Facts:
    """A list of facts; ``head`` names its columns where that is needed."""

    facts: tuple[Fact, ...]
    head: tuple[str, str, str] | None = None


@dataclass(frozen=True)
class Picture:
    """A drawing with its words; ``width`` in points where it is not the drawing's own."""

    drawing: Drawing
    caption: Text = ""
    width: float = 0.0


@dataclass(frozen=True)
class Findings:
    """Findings in their order; ``none`` is said when there are none."""

    findings: tuple[FindingLine, ...]
    none: str = "Nothing is open."


@dataclass(frozen=True)
class Question:
    """A question that its reader asks, and the answer."""

    ask: str
    answer: Text


@dataclass(frozen=True)
class Questions:
    """Questions with their answers."""

    questions: tuple[Question, ...]


@dataclass(frozen=True)
class References:
    """The sources that the paper rests on, each use with its standing."""

    references: tuple[Reference, ...]


@dataclass(frozen=True)
class Workings:
    """Figures worked out, under their headings; their keys are answered here."""

    groups: tuple[WorkingGroup, ...]


@dataclass(frozen=True)
class Tape:
    """What was put in, by what it belongs to; its keys are answered here. ``note`` stands above it."""

    groups: tuple[EntryGroup, ...]
    note: str = ""


@dataclass(frozen=True)
class Columns:
    """Blocks side by side; ``widths`` are shares of the page, alike when left out."""

    columns: tuple[tuple[Block, ...], ...]
    widths: tuple[float, ...] = ()


@dataclass(frozen=True)
class Flow:
    """Blocks that run on from one column of the page to the next."""

    blocks: tuple[Block, ...]
    count: int = 2


@dataclass(frozen=True)
class PageBreak:
    """What follows begins on a new page."""


Block = (
    Heading | Paragraph | Frame | Table | Facts | Blanks | Checklist | Picture | Grid | Findings | Questions
    | References | Workings | Tape | Columns | Flow | PageBreak
)  # fmt: skip


@dataclass(frozen=True)
class Paper:
    """A whole paper; ``landscape`` lays its sheets on their side, ``grow`` makes its letters larger."""

    head: Head
    blocks: tuple[Block, ...]
    landscape: bool = False
    grow: float = 1.0
    language: str = "en"

    def __post_init__(self) -> None:
        twice = [key for key, count in Counter(self.keys()).items() if count > 1]
        if twice:
            raise ValueError(f"one address is given to two figures: {', '.join(sorted(twice))}")

    def keys(self) -> tuple[str, ...]:
        """The keys that something on this very paper answers to."""
        return tuple(key for each in every_block(self.blocks) for key in _answered(each) if key)


def every_block(blocks: tuple[Block, ...]) -> Iterator[Block]:
    """Every block in its order, those inside columns too."""
    for each in blocks:
        yield each
        if isinstance(each, Flow):
            yield from every_block(each.blocks)
        elif isinstance(each, Columns):
            for column in each.columns:
                yield from every_block(column)


def _answered(block: Block) -> list[str]:
    if isinstance(block, Workings):
        found = [each.key for group in block.groups for each in group.workings]
        return found + [each.key for group in block.groups for each in group.lines]
    if isinstance(block, Tape):
        return [each.key for group in block.groups for each in group.entries]
    return []
