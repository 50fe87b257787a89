"""Setting a displayed tree as hand arithmetic: inner steps, a column, an answer."""

from __future__ import annotations

import string
from dataclasses import dataclass, field

from heatledger.ledger.pencil import Penciled
from heatledger.ledger.presets import Preset
from heatledger.ledger.show import number_text
from heatledger.ledger.terms import Term, rounded, worked_out
from heatledger.ledger.workings import Row, Step, Token, Tokens, losing
from heatledger.ledger.writing import inner_number, unit_text, written

WIDTH = 76
"""Columns a working may use; two less than a terminal's 80 on either side."""
AROUND_NOTE = 13
"""Columns of a row that are neither number, unit nor expression."""
AROUND_STEP = 12
SHORTEST_NOTE = 24
NOTHING = 1e-13
SHORTEST_STEP = 8
SPACED = "+−×÷<>≤≥"
SIGNS = {"add": "+", "sub": "−", "mul": "×", "div": "÷"}
BASE = 5
"""Rank of what stands under a power: everything but a plain number goes in brackets."""
_RANK = {"add": 1, "sub": 1, "neg": 1, "chain": 2, "mul": 2, "div": 2, "pow": 3, "power": 3,
         "total": 1, "larger": 0, "smaller": 0, "where": 0}  # fmt: skip


def token(kind: str, text: str) -> Token:
    """A token; here so that the setting reads short."""
    return Token(kind, text)


def text_of(tokens: Tokens) -> str:
    """The plain text of tokens, spaced as they are printed."""
    return glued_text_of(tokens, " ")


def glued_text_of(tokens: Tokens, glue: str) -> str:
    """The same, with ``glue`` for each space at which a line is not to be broken."""
    out, spaces = "", f" {glue}"
    for each in tokens:
        if each.kind == "op" and each.text in SPACED:
            out = f"{out.rstrip(spaces)} {each.text}{glue}"
        elif each.kind == "unit":
            out += glue + each.text.replace(" ", glue)
        elif each.kind == "word":
            tight = each.text[0] in ",:"
            gap = "" if tight or not out or out[-1] in f"(√^{spaces}" else " "
            out = f"{out.rstrip(spaces) if tight else out}{gap}{each.text} "
        elif each.kind == "close" or each.text == "^":
            out = out.rstrip(spaces) + each.text
        else:
            out += each.text
    return out.strip(spaces)


@dataclass
class Setting:
    """Sets one penciled tree; keeps the steps that were taken out of it."""

    penciled: Penciled
    root: Term
    units: Preset
    steps: list[Step] = field(default_factory=list)
    letters: dict[int, str] = field(default_factory=dict)
    _numbers: dict[int, str] = field(default_factory=dict)
    _inner: dict[int, tuple[str, str]] = field(default_factory=dict)
    _bodies: dict[int, Tokens] = field(default_factory=dict)
    """Operations as tokens, until a part of the tree becomes a step."""

    def number(self, term: Term) -> str:
        """A printed number of the tree."""
        key = id(term)
        if key not in self._numbers:
            # A found temperature keeps its zero (45.0 °F says how well it is found); others drop theirs.
            keeps = term.typed or (term.figure is not None and term.figure.dimension.absolute)
            printed, places = self.penciled.printed[key], self.penciled.places[key]
            self._numbers[key] = written(printed, places, term.unit, self.units, keeps)
        return self._numbers[key]

    def inner(self, term: Term) -> tuple[str, str]:
        """An inner result worked out from the printed numbers: its number and unit."""
        if id(term) not in self._inner:
            self._inner[id(term)] = self._worked_out(term)
        return self._inner[id(term)]

    def _worked_out(self, term: Term) -> tuple[str, str]:
        amount = worked_out(term, self.penciled.printed)
        if term.op in ("add", "sub"):  # what computers leave of a difference of equal numbers is nothing
            largest = max(abs(worked_out(each, self.penciled.printed)) for each in term.args)
            amount = 0.0 if abs(amount) < NOTHING * largest else amount
        return inner_number(amount, term.unit, self.units), unit_text(term.unit)

    def expression(self, term: Term, rank: int = 0, whole: bool = False) -> Tokens:
        """Tokens of a term; in brackets when its rank is lower than the one around it."""
        if id(term) in self.letters and not whole:
            return (token("letter", self.letters[id(term)]),)
        if term.op == "value":
            return self.leaf(term, rank)
        own = _RANK.get(term.op, 4) if term.op != "total" or len(term.args) > 1 else 4
        body = self.body(term)
        if own < rank or (own == rank and term.op in ("sub", "neg")):
            return (token("open", "("), *body, token("close", ")"))
        return body

    def leaf(self, term: Term, rank: int) -> Tokens:
        """A printed number with its unit."""
        number = self.number(term)
        unit = unit_text(term.unit)
        body: Tokens = (token("number", number), *((token("unit", unit),) if unit else ()))
        if (number.startswith("−") and rank) or (unit and rank == BASE):
            return (token("open", "("), *body, token("close", ")"))
        return body

    def body(self, term: Term) -> Tokens:
        """Tokens of an operation."""
        if id(term) not in self._bodies:
            self._bodies[id(term)] = self._body(term)
        return self._bodies[id(term)]

    def _body(self, term: Term) -> Tokens:
        args, op = term.args, term.op
        if op in ("add", "sub"):
            return (*self.expression(args[0]), sign(op),
                    *self.expression(args[1], 1 if op == "add" else 2))  # fmt: skip
        if op in ("mul", "div"):
            return (*self.expression(args[0], 2), sign(op), *self.expression(args[1], 3))
        if op == "chain":
            made: list[Token] = []
            for i, (each, how) in enumerate(zip(args, term.detail, strict=True)):
                if i or how == "div":
                    made += [] if i else [token("number", "1")]
                    made.append(sign(how))
                made += self.expression(each, 3 if each.op == "chain" or how == "div" else 2)
            return tuple(made)
        if op == "neg":
            return (
                token("sign", "−"),
                *self.expression(args[0], BASE if args[0].op in ("pow", "power") else 2),
            )
        if op == "pow":
            power = number_text(float(term.detail), 0)
            return (*self.expression(args[0], BASE), token("op", "^"), token("number", power))
        if op == "power":
            return (*self.expression(args[0], BASE), token("op", "^"), *self.expression(args[1], BASE))
        if op in ("log", "exp", "sqrt"):
            name = {"log": "ln", "exp": "exp", "sqrt": "√"}[op]
            return (token("root", name), token("open", "("), *self.expression(args[0]), token("close", ")"))
        if op in ("larger", "smaller"):
            one, other = (worked_out(each, self.penciled.printed) for each in args)
            first_lost = one < other if op == "larger" else one > other
            return (token("word", f"the {op} of"), *losing(self.expression(args[0], 1), first_lost),
                    token("word", "and"), *losing(self.expression(args[1], 1), not first_lost))  # fmt: skip
        if op == "where":
            return (token("word", "as"), *self.expression(args[0], 1), _compared(term.detail),
                    *self.expression(args[1], 1), token("word", ":"), *self.expression(args[2]))  # fmt: skip
        made = []
        for i, each in enumerate(args):
            made += [sign("add")] if i else []
            made += self.expression(each, 1)
        unit = unit_text(term.unit)
        return tuple(made) or (token("number", "0"), *((token("unit", unit),) if unit else ()))

    def short(self, term: Term, longest: int) -> Tokens:
        """The expression of a term, with its longest inner parts taken out as steps until it fits."""
        while len(text_of(self.expression(term, whole=True))) > longest:
            part = self.next_part(term)
            if part is None:
                break
            self.take_out(part)
        return self.expression(term, whole=True)

    def next_part(self, term: Term) -> Term | None:
        """The longest inner operation that fits on a line of its own, else the shortest there is."""
        parts = []
        for each in _operations(term, frozenset(self.letters)):
            if each is term or id(each) in self.letters:
                continue
            length = len(text_of(self.expression(each, whole=True)))
            if length > SHORTEST_STEP:
                parts.append((length, each))
        fitting = [
            (n, each) for n, each in parts if n <= WIDTH - AROUND_STEP - len(" ".join(self.inner(each)))
        ]
        if fitting:
            return max(fitting, key=lambda pair: pair[0])[1]
        return min(parts, key=lambda pair: pair[0])[1] if parts else None

    def take_out(self, term: Term) -> None:
        """Make an inner operation a step with a letter; what reads the same gets the same letter."""
        number, unit = self.inner(term)
        expression = self.expression(term, whole=True)
        text = text_of(expression)
        letter = _letter(len(self.steps))
        same = [
            each for each in _operations(self.root)
            if id(each) not in self.letters and text_of(self.expression(each, whole=True)) == text
        ]  # fmt: skip
        self.letters.update((id(each), letter) for each in [term, *same])
        self._bodies.clear()
        self.steps.append(Step(letter, expression, number, unit))

    def rows(self, tree: Term) -> tuple[tuple[Row, ...], Tokens]:
        """The column of a tree, or one line when it is neither a product nor a sum."""
        if tree.op == "chain":
            pairs = list(zip(tree.detail, tree.args, strict=True))
        elif tree.op in ("add", "sub"):
            pairs = _sum_chain(tree)
        elif tree.op == "neg" and tree.args[0].op == "chain" and tree.args[0].detail[0] == "mul":
            inner = tree.args[0]
            pairs = list(zip(inner.detail, inner.args, strict=True))
            pairs[0] = ("sub", pairs[0][1])
        elif tree.op == "neg" and tree.args[0].op == "value":
            pairs = [("sub", tree.args[0])]
        elif tree.op == "total":
            pairs = [("add", each) for each in tree.args]
        elif tree.op == "value":
            pairs = [("", tree)]
        else:
            return (), self.short(tree, WIDTH - 6)
        if pairs and pairs[0][0] == "div":
            pairs.insert(0, ("mul", Term("one", (), tree.unit)))
        if not pairs:
            return (Row("", "0", unit_text(tree.unit), "no parts"),), ()
        first = "sub" if pairs[0][0] == "sub" else ""
        room = self.room_beside(tree, [each for _, each in pairs])
        return tuple(self.row(op if i else first, each, room) for i, (op, each) in enumerate(pairs)), ()

    def room_beside(self, tree: Term, terms: list[Term]) -> int:
        """Columns left for an expression beside the numbers and units of a column."""
        both = [self.number_and_unit(each) for each in terms if each.op != "one"]
        answer = written(self.penciled.answer, self.penciled.answer_places, tree.unit, self.units)
        numbers = max(len(each) for each in [answer, *(number for number, _ in both)])
        units = max(len(each) for each in [unit_text(tree.unit), *(unit for _, unit in both)])
        return max(WIDTH - AROUND_NOTE - numbers - units, SHORTEST_NOTE)

    def number_and_unit(self, term: Term) -> tuple[str, str]:
        """What a term is in the column."""
        return (self.number(term), unit_text(term.unit)) if term.op == "value" else self.inner(term)

    def row(self, op: str, term: Term, room: int) -> Row:
        """One line of the column; ``room`` is what its expression may take."""
        shown = SIGNS.get(op, "")
        if term.op == "one":
            return Row("", "1", "")
        if term.op == "value":
            carried = self.carried(term)
            return Row(shown, self.number(term), unit_text(term.unit), term.words, (), carried, term.figure)
        number, unit = self.inner(term)
        expression = self.short(term, room)
        if len(text_of(expression)) > room and id(term) not in self.letters:
            self.take_out(term)
        if id(term) in self.letters:
            expression = (token("letter", self.letters[id(term)]),)
        return Row(shown, number, unit, term.words, expression)

    def carried(self, term: Term) -> str:
        """The number as it is shown elsewhere, when a found figure needs more places here."""
        if term.figure is None or not term.figure.inputs or term.places is None:
            return ""
        at_first = rounded(term.exact, term.places)
        elsewhere = written(at_first, term.places, term.unit, self.units, term.figure.dimension.absolute)
        return elsewhere if elsewhere != self.number(term) else ""


def sign(op: str) -> Token:
    """The operator as it is printed."""
    return token("op", SIGNS[op])


def _compared(sign: str) -> Token:
    if sign.startswith("just"):
        return token("word", "is just below" if sign.endswith("<") else "is just above")
    return token("op", {"<=": "≤", ">=": "≥"}.get(sign, sign))


def _sum_chain(tree: Term) -> list[tuple[str, Term]]:
    """A sum opened along its left side, so that a + b - c stands in one column."""
    left, right = tree.args
    head = _sum_chain(left) if left.op in ("add", "sub") and left.unit == tree.unit else [("add", left)]
    return [*head, (tree.op, right)]


def _operations(term: Term, closed: frozenset[int] = frozenset()) -> list[Term]:
    """The operations of a term; what stands below those in ``closed`` is left out."""
    found = [] if term.op == "value" else [term]
    if id(term) not in closed:
        for each in term.args:
            found += _operations(each, closed)
    return found


def _letter(n: int) -> str:
    first = string.ascii_lowercase.replace("e", "").replace("h", "").replace("m", "").replace("s", "")
    return first[n % len(first)] + (str(n // len(first) + 1) if n >= len(first) else "")
