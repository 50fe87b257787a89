"""Printed expressions, worked out by someone who knows only what is printed.

Units are worked out beside the numbers by a general units library.
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable
from dataclasses import dataclass, replace

from tests.ledger.printed_units import PLAIN, SUPERSCRIPTS, Dims, Wrong, unit_in_si


@dataclass(frozen=True)
class Amount:
    """A number, and the unit it is counted in: its text, its SI size and its dimensions."""

    number: float
    unit: str
    size: float
    dims: Dims

    @property
    def is_plain(self) -> bool:
        """Whether it has no unit at all."""
        return not any(self.dims) and math.isclose(self.size, 1.0, rel_tol=1e-9)


NUMBER = r"−?(?:\d{1,3}(?:[,\u202f]\d{3})+|\d+)(?:\.\d+)?(?:×10[⁻⁰¹²³⁴⁵⁶⁷⁸⁹]+)?"
UNIT = (
    r"(?:in\. w\.c\.|imp gal(?:/min)?|imp gpm|m³/h at 50 Pa|cfm50|(?:ft|m)/100 (?:ft|m)|"
    r"(?!(?:is|and|as)\b)[A-Za-z°%µ][A-Za-z0-9°µ.·²³⁴⁵⁶⁷⁸⁹⁰¹⁻^]*"
    r"(?:/(?:\([A-Za-z0-9°µ·²³⁴⁵⁶⁷⁸⁹⁰¹⁻^. ]+\)|[A-Za-z°µ.²³⁴]+))?)"
)
TOKEN = re.compile(
    r"\s*(?:(?P<word>the larger of|the smaller of|is just below|is just above|and\b|as\b|:)"
    r"|(?P<root>√|ln(?=\()|exp(?=\())"
    rf"|(?P<number>{NUMBER})(?: (?P<unit>{UNIT}))?|(?P<op>[+−×÷^<>≤≥()])|(?P<letter>[a-z]\d*\b))"
)


def amount(text: str, unit: str) -> Amount:
    """A printed number with its printed unit."""
    return Amount(plain_number(text), unit, *unit_in_si(unit))


def is_factor(text: str, one: Amount) -> None:
    """Refuse a factor between two units that is not the true one, to its last place."""
    size = one.number * one.size
    if any(one.dims) or abs(size - 1.0) > 0.51 * last_place(text) / abs(one.number or 1.0):
        raise Wrong(f"{text} {one.unit} is no factor between two units: one is {size:.8g} of the other")


def plain_number(text: str) -> float:
    """The value of a printed number."""
    if not re.fullmatch(NUMBER, text):
        raise Wrong(f"{text!r} is not a number")
    plain, _, power = text.replace(",", "").replace("\u202f", "").replace("−", "-").partition("×10")
    return float(f"{plain}e{power.translate(SUPERSCRIPTS) or 0}")


def last_place(text: str) -> float:
    """One unit of the last place printed."""
    plain, _, power = text.partition("×10")
    return 10.0 ** (int(power.translate(SUPERSCRIPTS) or 0) - len(plain.partition(".")[2]))


class Letters(dict[str, Amount]):
    """Inner steps by letter, and which of them were taken up by a later line."""

    def __init__(self) -> None:
        super().__init__()
        self.used: set[str] = set()

    def __getitem__(self, letter: str) -> Amount:
        self.used.add(letter)
        return super().__getitem__(letter)


class Expression:
    """Works out one printed expression; ``letters`` are the inner steps found so far."""

    def __init__(self, text: str, letters: Letters) -> None:
        self.letters = letters
        self.tokens: list[tuple[str, str, str]] = []
        at = 0
        text = text.strip()
        while at < len(text):
            found = TOKEN.match(text, at)
            if not found:
                raise Wrong(f"cannot read {text[at:]!r} in {text!r}")
            kind = str(found.lastgroup if found.lastgroup != "unit" else "number")
            self.tokens.append((kind, found.group(kind), found.group("unit") or ""))
            at = found.end()
        self.at = 0

    def value(self) -> Amount:
        """The value of the whole expression."""
        result = self.sum()
        if self.at != len(self.tokens):
            raise Wrong(f"something is left over: {self.tokens[self.at :]}")
        return result

    def next(self) -> str:
        return self.tokens[self.at][1] if self.at < len(self.tokens) else ""

    def take(self, expected: str | None = None) -> tuple[str, str, str]:
        if self.at >= len(self.tokens):
            raise Wrong("the expression ends too soon")
        token = self.tokens[self.at]
        if expected is not None and token[1] != expected:
            raise Wrong(f"{expected!r} expected, {token[1]!r} found")
        self.at += 1
        return token

    def sum(self) -> Amount:
        if self.next() == "−":
            self.take()
            first = self.product()
            result = replace(first, number=-first.number)
        else:
            result = self.product()
        while self.next() in ("+", "−"):
            op = self.take()[1]
            result = added(result, self.product(), -1.0 if op == "−" else 1.0)
        return result

    def product(self) -> Amount:
        result = self.power()
        while self.next() in ("×", "÷"):
            op = self.take()[1]
            result = multiplied(result, self.power(), op)
        return result

    def power(self) -> Amount:
        base = self.one()
        if self.next() == "^":
            if self.tokens[self.at - 1][1].startswith("−"):
                raise Wrong("it is not clear whether the minus stands under the power")
            self.take()
            exponent = self.one()
            base = raised(base, exponent)
        return base

    def one(self) -> Amount:
        kind, text, unit = self.take()
        if kind == "number":
            return amount(text, unit)
        if kind == "letter":
            if text not in self.letters:
                raise Wrong(f"no step {text!r}")
            return self.letters[text]
        if text == "(":
            inner = self.sum()
            self.take(")")
            return inner
        if kind == "root":
            return self.function(text)
        if text in ("the larger of", "the smaller of"):
            first = self.sum()
            self.take("and")
            second = self.sum()
            alike(first, second)
            return (max if "larger" in text else min)(first, second, key=lambda each: each.number)
        if text == "as":
            return self.branch()
        raise Wrong(f"{text!r} stands where a number is expected")

    def function(self, name: str) -> Amount:
        self.take("(")
        inner = self.sum()
        self.take(")")
        if name == "√":
            half = tuple(each / 2 for each in inner.dims)
            return Amount(worked(math.sqrt, inner.number), "*", math.sqrt(inner.size), half)  # type: ignore[arg-type]
        if not inner.is_plain:
            raise Wrong(f"{name} of something that is not a plain number")
        return Amount(worked(math.log if name == "ln" else math.exp, inner.number), "", 1.0, PLAIN)

    def branch(self) -> Amount:
        left = self.sum()
        sign = self.take()[1]
        right = self.sum()
        alike(left, right)
        if sign in ("is just below", "is just above"):
            if not math.isclose(left.number, right.number, rel_tol=2e-5):
                raise Wrong(f"{left.number} {sign} {right.number} does not hold")
            self.take(":")
            return self.sum()
        holds = {
            "<": left.number < right.number, ">": left.number > right.number,
            "≤": left.number <= right.number, "≥": left.number >= right.number,
        }[sign]  # fmt: skip
        if not holds:
            raise Wrong(f"{left.number} {sign} {right.number} does not hold")
        self.take(":")
        return self.sum()


_ONE_SCALE = {"°F": "°F", "°R": "°F", "°C": "K", "K": "K"}


def alike(a: Amount, b: Amount) -> None:
    """Terms of a sum must have one unit."""
    if a.dims != b.dims:
        raise Wrong(f"unlike units are added: {a.unit} and {b.unit}")
    if "*" not in (a.unit, b.unit):
        one, other = (_ONE_SCALE.get(each.unit, each.unit) for each in (a, b))
        if one != other:
            raise Wrong(f"two units in one sum: {a.unit} and {b.unit}")
    if not math.isclose(a.size, b.size, rel_tol=1e-9):
        raise Wrong(f"two units in one sum: one is {a.size / b.size:.8g} of the other")


def added(a: Amount, b: Amount, sign: float) -> Amount:
    """A sum or difference."""
    alike(a, b)
    return Amount(a.number + sign * b.number, a.unit if a.unit == b.unit else "*", a.size, a.dims)


def multiplied(a: Amount, b: Amount, op: str) -> Amount:
    """A product or quotient."""
    power = 1 if op == "×" else -1
    dims = tuple(x + power * y for x, y in zip(a.dims, b.dims, strict=True))
    if op == "÷" and b.number == 0:
        raise Wrong("divided by nothing")
    number = a.number * b.number if op == "×" else a.number / b.number
    return Amount(number, "*", a.size * b.size**power, dims)  # type: ignore[arg-type]


def raised(base: Amount, exponent: Amount) -> Amount:
    """A power; a broken one only of a plain number."""
    n = exponent.number
    if not exponent.is_plain:
        raise Wrong("an exponent with a unit")
    if n != int(n) and not base.is_plain:
        raise Wrong("a broken power of something with a unit")
    dims = tuple(each * n for each in base.dims)
    return Amount(worked(lambda each: each**n, base.number), "*", base.size**n, dims)  # type: ignore[arg-type]


def worked(function: Callable[[float], float], number: float) -> float:
    """The value of a function, where it has one."""
    try:
        result = function(number)
    except (ValueError, ZeroDivisionError, OverflowError) as fault:
        raise Wrong(f"the arithmetic has no answer: {fault}") from None
    if isinstance(result, complex):
        raise Wrong("the arithmetic has no answer")
    return result
