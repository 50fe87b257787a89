"""A working as paper takes it: one tree, already in the reader's units, that a block is set from.

Every number is a text as printed; nothing here is computed. ``papers/working_block.typ`` draws it, and the
same tokens stand in the terminal and on the screen. A *key* is the address of a figure, sheet and line,
written ``"2·14"``; an empty key means that nothing is led to.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

TokenKind = Literal["word", "number", "op", "unit", "power"]
Known = Literal["", "measured", "from plans", "told", "assumed"]


@dataclass(frozen=True)
class Token:
    """One piece of a formula in words.

    ``word`` is set in serif italic, ``number`` and ``unit`` upright, ``power`` raised. An ``op`` gets a
    space on both sides, except the parentheses, which hold on to what they enclose.
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

    ``key`` leads to the operand's own working or entry. ``known`` underlines an entry by its line type.
    ``muted`` is for what lost (the smaller of two, a size not taken).
    """

    op: str
    number: str
    unit: str
    words: str
    key: str = ""
    known: Known = ""
    muted: bool = False


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
class GoesInto:
    """A figure built on this one."""

    key: str
    name: str


@dataclass(frozen=True)
class Working:
    """One figure worked out, in the order in which it is read.

    ``is_total`` puts the double rule under the answer: others build on it. ``remark`` is for "rounded
    parts add to 36,246" or "carried as 619.36". ``band`` is a sentence ("likely 5,870 to 10,900").
    ``waits_for`` names what is missing when the answer has no number.
    """

    key: str
    title: str
    column: tuple[ColumnRow, ...]
    answer: Answer
    plain_line: str = ""
    formula: tuple[Token, ...] = ()
    unit_line: str = ""
    steps: tuple[Step, ...] = ()
    is_total: bool = False
    remark: str = ""
    sources: tuple[SourceUse, ...] = ()
    by_hand: str = ""
    band: str = ""
    goes_into: tuple[GoesInto, ...] = ()
    waits_for: str = ""


@dataclass(frozen=True)
class WorkingGroup:
    """The workings of one room, one level or the house, under one heading."""

    title: str
    workings: tuple[Working, ...]
    line: str = ""
