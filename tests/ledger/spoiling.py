"""Ways to spoil a printed working: a digit, a unit, a sign, a letter, a line."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from random import Random

from heatledger.ledger.units import UNITS
from tests.ledger import blind
from tests.ledger.expressions import NUMBER, UNIT, last_place, plain_number, unit_in_si

SUPER, PLAIN = "⁰¹²³⁴⁵⁶⁷⁸⁹", "0123456789"
MARK = re.compile(rf"(?<![\w.,·/²³⁴])({NUMBER})(?: ({UNIT}))?")
SWAPS = {"+": "−", "−": "+", "×": "÷", "÷": "×", "√": "ln", "ln": "√", "exp": "ln", "<": ">", "≥": "<",
         "≤": ">", ">": "<", "larger": "smaller", "smaller": "larger", "^": "×"}  # fmt: skip


@dataclass(frozen=True)
class Printed:
    """One printed number: where it stands, its unit, and whether it goes in or comes out."""

    start: int
    end: int
    unit_start: int
    unit: str
    role: str
    line: int


def spans(text: str) -> list[tuple[int, int, int]]:
    """Start, end and line of every stretch of the text that is arithmetic."""
    found: list[tuple[int, int, int]] = []
    at, inside, after_rule, by_hand = 0, False, 0, False
    for n, line in enumerate(text.splitlines(keepends=True)):
        bare = line.rstrip("\n")
        by_hand = bare.startswith("    By hand:") or (by_hand and bare.startswith(" " * 13))
        if not bare.strip():
            inside = inside or not found
            inside = inside and not after_rule
        elif re.fullmatch(r" {6}[-=]+", bare):
            after_rule += 1
        elif by_hand or inside or after_rule == 1:
            row = blind.ROW.match(bare)
            words = row.group(4) if row and not after_rule else ""
            if words and not words.startswith("= "):
                end = bare.index(words)
                shown = bare.rfind("shown as ")
                if shown >= 0:
                    found.append((at + shown, at + len(bare), n))
            else:
                end = len(bare)
            found.append((at, at + end, n))
            after_rule += after_rule == 1
        at += len(line)
    return found


def printed_numbers(text: str) -> list[Printed]:
    """Every printed number of the arithmetic, with the part it plays."""
    result = []
    lines = text.splitlines()
    rule = next(i for i, line in enumerate(lines) if re.fullmatch(r" {6}-+", line))
    for start, end, n in spans(text):
        for found in MARK.finditer(text, start, end):
            role = _role(lines[n], n, rule, text[start : found.start()], text[found.end() : end])
            result.append(
                Printed(found.start(1), found.end(1), found.start(2), found.group(2) or "", role, n)
            )
    return result


def _role(line: str, n: int, rule: int, before: str, after: str) -> str:
    """Whether a number goes in, is worked out on the way, or is what comes out."""
    last = before.rstrip().endswith("=") and "=" not in after
    if n == rule + 1 or (n > rule and last):
        return "answer"
    row = blind.ROW.match(line)
    if row and n < rule:
        return "inner" if not before.strip(" +−×÷") and after.strip().startswith("= ") else "input"
    return "inner" if last else "input"


def other_digits(text: str, number: Printed, moves: tuple[int, ...]) -> Iterator[tuple[str, float]]:
    """The text with one digit of a number changed, and by how many of its last place that moves it."""
    old = text[number.start : number.end]
    step = last_place(old)
    for i in range(number.start, number.end):
        for digits in (PLAIN, SUPER):
            if text[i] in digits:
                for move in moves:
                    new = digits[(digits.index(text[i]) + move) % 10]
                    spoiled = text[:i] + new + text[i + 1 :]
                    changed = spoiled[number.start : number.end]
                    whole = re.fullmatch(NUMBER, changed)
                    value = plain_number(changed) if whole else float("inf")
                    yield spoiled, abs(value - plain_number(old)) / step


def other_units(text: str, number: Printed, random: Random, unlike: int = 4) -> Iterator[tuple[str, str]]:
    """The text with the unit of one number changed: to each like it, to some unlike it, and to none."""
    mine = unit_in_si(number.unit)
    every = {unit: unit_in_si(unit) for unit in (each.replace("1", "", each == "1") for each in UNITS)}
    # Another name of the same unit, and the same step of temperature, are no corruption.
    like = [
        unit for unit, (size, dims) in every.items() if dims == mine[1] and abs(size / mine[0] - 1) > 1e-9
    ]
    others = [unit for unit, (_, dims) in every.items() if dims != mine[1]]
    for unit in [*like, *random.sample(others, unlike), *([""] if number.unit and any(mine[1]) else [])]:
        if number.unit and unit:
            yield text[: number.unit_start] + unit + text[number.unit_start + len(number.unit) :], unit
        elif number.unit:
            yield text[: number.unit_start - 1] + text[number.unit_start + len(number.unit) :], unit
        else:
            yield f"{text[: number.end]} {unit}{text[number.end :]}", unit


def other_signs(text: str) -> Iterator[tuple[str, str]]:
    """The text with one operator, function or comparison changed."""
    for start, end, _ in spans(text):
        for found in re.finditer(
            r"(?<=[ (])[+−×÷<>≥≤](?= )|\^|√|\bln(?=\()|\bexp(?=\()|\blarger\b|\bsmaller\b", text[start:end]
        ):
            at = start + found.start()
            new = SWAPS[found.group()]
            yield text[:at] + new + text[at + len(found.group()) :], f"{found.group()} to {new} at {at}"


def fewer_lines(text: str) -> Iterator[tuple[str, str]]:
    """The text with one line of the arithmetic left out, or written twice."""
    lines = text.splitlines()
    rule = next(i for i, line in enumerate(lines) if re.fullmatch(r" {6}-+", line))
    for n in sorted({n for _, _, n in spans(text) if n <= rule + 1} | {rule}):
        yield "\n".join(lines[:n] + lines[n + 1 :]), f"without {lines[n]!r}"
        if n < rule:
            yield "\n".join([*lines[: n + 1], *lines[n:]]), f"twice {lines[n]!r}"
