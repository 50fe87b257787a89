"""A working as paper takes it: one tree, already in the reader's units, that a block is set from.

Every number is a text as printed; nothing here is computed. ``papers/working_block.typ`` draws it, and the
same tokens stand in the terminal and on the screen. A *key* is the address of a figure, sheet and line,
written ``"2·14"``; an empty key means that nothing is led to.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

TokenKind = Literal["word", "number", "op", "unit", "power", "sign", "root", "open", "close", "key", "aside"]
Known = Literal["", "measured", "from plans", "told", "assumed"]


@dataclass(frozen=True)
class Token:
    """One piece of a line.

    ``word`` is set in serif italic, ``number`` and ``unit`` upright, ``power`` raised, ``aside`` quiet. An
    ``op`` gets a space on both sides; ``sign``, ``root`` and ``open`` hold on to what follows. ``key`` is
    the small address of the number before it.
    """

    kind: TokenKind
    text: str


@dataclass(frozen=True)
class Step:
    """An inner step on a line of its own above the column: label, what is done, what it comes to."""

    label: str
    tokens: tuple[Token, ...]
    value: str
    unit: str = ""


@dataclass(frozen=True)
class ColumnRow:
    """One line of the column: the operator stands before its operand.

    ``expression`` is how the operand comes about. ``key`` leads to its own working or entry. ``known``
    underlines an entry by its line type. ``muted`` is for what lost (the smaller of two, a size not taken).
    """

    op: str
    number: str
    unit: str
    words: str
    key: str = ""
    known: Known = ""
    muted: bool = False
    expression: tuple[Token, ...] = ()


@dataclass(frozen=True)
class Answer:
    """What the column comes to; a missing answer has no number."""

    number: str
    unit: str
    words: str = ""


@dataclass(frozen=True)
class SourceUse:
    """Where the formula or one of its numbers comes from, with the word of its standing."""

    text: str
    standing: str


@dataclass(frozen=True)
class LedTo:
    """What a working names outside its column: words, and the addresses they lead to."""

    words: str
    keys: tuple[str, ...]
    more: str = ""


@dataclass(frozen=True)
class Side:
    """One side of a balance, worked out with the answer put back, with its inner steps."""

    label: str
    column: tuple[ColumnRow, ...]
    answer: Answer
    steps: tuple[Step, ...] = ()
    line: tuple[Token, ...] = ()


@dataclass(frozen=True)
class ByHand:
    """The trade's short form with this figure's numbers, what it comes to, and what it leaves out."""

    tokens: tuple[Token, ...]
    value: str
    unit: str
    words: str


@dataclass(frozen=True)
class Working:
    """One figure worked out, in the order in which it is read.

    ``title`` names the thing and ``what`` the figure of it; under the heading of a room a figure of the room
    itself has only a title. ``is_total`` puts the double rule under the answer: others build on it.
    ``line`` is the arithmetic where it does not stand in a column. ``notes`` are sentences (why a size was
    chosen, how a search ended). ``waits_for`` names what is missing when the answer has no number.
    """

    key: str
    title: str
    column: tuple[ColumnRow, ...]
    answer: Answer
    what: str = ""
    plain_line: str = ""
    formula: tuple[Token, ...] = ()
    steps: tuple[Step, ...] = ()
    line: tuple[Token, ...] = ()
    sides: tuple[Side, ...] = ()
    notes: tuple[str, ...] = ()
    is_total: bool = False
    remark: str = ""
    sources: tuple[SourceUse, ...] = ()
    by_hand: ByHand | None = None
    comes_from: tuple[LedTo, ...] = ()
    goes_into: LedTo | None = None
    waits_for: str = ""


@dataclass(frozen=True)
class Line:
    """Small arithmetic in one running line: name, inner steps, tokens, what it comes to.

    ``sides`` are those of the balance that one of several figures found together satisfies.
    """

    key: str
    name: str
    tokens: tuple[Token, ...]
    answer: str
    unit: str = ""
    what: str = ""
    remark: str = ""
    standings: tuple[str, ...] = ()
    waits_for: str = ""
    steps: tuple[Step, ...] = ()
    sides: tuple[Side, ...] = ()


@dataclass(frozen=True)
class WorkingGroup:
    """The workings of one room, one level or the house, under one heading; without a title it goes on."""

    title: str
    workings: tuple[Working, ...]
    lines: tuple[Line, ...] = ()
    line: str = ""
