"""A working as a tree of tokens: what the terminal, the screen and the paper are all drawn from."""

from __future__ import annotations

from dataclasses import dataclass, field

from heatledger.ledger.figures import Figure
from heatledger.ledger.sources import Citation


@dataclass(frozen=True)
class Token:
    """One piece of a line.

    ``kind``: number, unit, op, sign (a minus before a number), word, open, close, root or letter.
    ``lost`` is true for what was not taken, as the smaller of two where the larger counts.
    """

    kind: str
    text: str
    lost: bool = False


Tokens = tuple[Token, ...]


def losing(tokens: Tokens, lost: bool) -> Tokens:
    """The tokens, marked when what they stand for was not taken."""
    return tuple(Token(each.kind, each.text, True) for each in tokens) if lost else tokens


@dataclass(frozen=True)
class Step:
    """An inner step on its own line: letter = expression = number unit."""

    letter: str
    expression: Tokens
    number: str
    unit: str


@dataclass(frozen=True)
class Row:
    """One line of the column: operator, number, unit, and what it is.

    ``expression`` is how the number comes about, when it is an inner result. ``carried`` is the number
    as shown elsewhere, when it stands here with more places.
    """

    op: str
    number: str
    unit: str
    words: str = ""
    expression: Tokens = ()
    carried: str = ""
    figure: Figure | None = None


@dataclass(frozen=True)
class InputLine:
    """One input below the column: its value, what it is, and where it comes from."""

    shown: str
    words: str
    origin: str
    known: str
    figure: Figure


@dataclass(frozen=True)
class Beside:
    """What stands beside a figure: one found with it, one that lost to it, or one that it waits for."""

    words: str
    shown: str
    figure: Figure | None = None


@dataclass(frozen=True)
class ByHandLine:
    """The trade's short form with this figure's numbers, and what it neglects."""

    expression: Tokens
    number: str
    unit: str
    neglects: str
    less_than: bool = False
    remark: str = ""


@dataclass(frozen=True)
class Working:
    """How one figure comes about, ready to be set in any medium.

    ``kind``: formula, total, entry, choice, count or found. ``line`` is the expression when it does not
    stand in a column. ``less_than`` is true when the answer is below one unit of its last place.
    ``beside`` are the figures that ``found_together``, ``waiting`` and the losers of a choice name.
    ``between`` are the two rows that a value is read between, each where it stands and what it holds.
    ``left_over`` is what stays of both sides of a balance when the answer is put back.
    """

    kind: str
    figure: Figure
    title: str
    plain: str
    formula: Tokens = ()
    steps: tuple[Step, ...] = ()
    rows: tuple[Row, ...] = ()
    line: Tokens = ()
    answer: str = ""
    unit: str = ""
    less_than: bool = False
    is_total: bool = False
    remark: str = ""
    sources: tuple[tuple[str, Citation], ...] = ()
    by_hand: ByHandLine | None = None
    inputs: tuple[InputLine, ...] = ()
    notes: tuple[str, ...] = ()
    found_together: tuple[str, ...] = ()
    sides: tuple[Working, ...] = ()
    waiting: tuple[str, ...] = field(default=())
    beside: tuple[Beside, ...] = ()
    between: tuple[tuple[InputLine, InputLine], ...] = ()
    left_over: str = ""


def tokens_of(working: Working) -> list[str]:
    """Every number, unit and operator of the arithmetic, in order: what all renderings must share."""
    found: list[str] = []

    def add(tokens: Tokens) -> None:
        found.extend(each.text for each in tokens if each.kind in ("number", "unit", "op", "sign", "root"))

    for step in working.steps:
        add(step.expression)
        found += [step.number, step.unit]
    for row in working.rows:
        found += [row.op, row.number, row.unit]
        add(row.expression)
    add(working.line)
    found += [working.answer, working.unit]
    for side in working.sides:
        found += tokens_of(side)
    if working.by_hand:
        add(working.by_hand.expression)
        found += [working.by_hand.number, working.by_hand.unit]
    return [each for each in found if each]
