"""An evaluator that knows only the printed text of a working, and redoes it.

It knows no formula, no figure and no unit table of ours: it reads numbers, signs and units as
printed, works them out, and holds the printed answer to them.
"""

from __future__ import annotations

import math
import re
from dataclasses import dataclass

from tests.ledger.expressions import (
    NUMBER, SUPERSCRIPTS, UNIT, Amount, Expression, Letters, Wrong, added, alike, amount, multiplied,
    plain_number, unit_in_si,
)  # fmt: skip


def last_place(text: str) -> float:
    """One unit of the last place printed."""
    plain, _, power = text.partition("×10")
    return 10.0 ** (int(power.translate(SUPERSCRIPTS) or 0) - len(plain.partition(".")[2]))


def agrees(printed: str, unit: str, worked: Amount, what: str, places: float | None = None) -> None:
    """Hold a printed number and unit to what was worked out: one unit of the last place."""
    step = places or last_place(printed)
    off = abs(plain_number(printed) - worked.number)
    if off > step * (1 + 1e-6):
        raise Wrong(f"{what}: printed {printed}, a pencil gets {worked.number:.10g}")
    size, dims = unit_in_si(unit)
    if dims != tuple(round(each, 9) for each in worked.dims):
        raise Wrong(f"{what}: {unit!r} is not the unit the arithmetic gives")
    if worked.number and not math.isclose(worked.si, worked.number * size, rel_tol=2e-5):
        raise Wrong(f"{what}: the units give {worked.si / size:.8g} {unit}, the numbers {worked.number:.8g}")


STEP = re.compile(rf"^ {{4}}([a-z]\d*) = (.+) = ({NUMBER})(?: ({UNIT}))?$")
ROW = re.compile(rf"^ {{6}}([+−×÷ ]) +({NUMBER})(?: ({UNIT}))?(?: +(.*))?$")
ANSWER = re.compile(rf"^ {{6}} *(less than )?({NUMBER})(?: ({UNIT}))?(?: {{2,}}(.*))?$")
HAND = re.compile(rf"^ {{4}}By hand: (.+) = (less than )?({NUMBER})(?: ({UNIT}))?(?: +\((.*)\))?$")
BROKEN = re.compile(r"^ {4}(?:[a-z]\d* = |By hand: )")
NEAREST = re.compile(rf"^to the nearest ({NUMBER})$")
ADD_TO = re.compile(rf"^rounded parts add to ({NUMBER})$")


def redo(text: str) -> float:
    """Redo a printed working; the answer a pencil gets. Raises ``Wrong`` when anything does not hold."""
    lines = text.splitlines()
    if "    One side:" in lines:
        return _redo_sides(lines)
    return _redo(joined(lines))[0].number


def _redo(lines: list[str]) -> tuple[Amount, float]:
    """The answer, worked out, and what one unit of its last printed place is."""
    rule = next((i for i, line in enumerate(lines) if re.fullmatch(r" {6}-+", line)), None)
    if rule is None:
        raise Wrong("there is no rule over an answer")
    blanks = [i for i, line in enumerate(lines[:rule]) if not line.strip()]
    if not blanks:
        raise Wrong("there is no column over the rule")
    letters = Letters()
    for line in lines[blanks[0] + 1 : blanks[-1]]:
        _step(line, letters)
    answer = ANSWER.match(lines[rule + 1]) if rule + 1 < len(lines) else None
    if not answer:
        raise Wrong("no answer under the rule")
    is_total = rule + 2 < len(lines) and bool(re.fullmatch(r" {6}=+", lines[rule + 2]))
    worked = _column(lines[blanks[-1] + 1 : rule], letters)
    if set(letters) != letters.used:
        raise Wrong(f"steps that nothing uses: {sorted(set(letters) - letters.used)}")
    _hold(answer, worked, is_total)
    for line in lines[rule + 1 :]:
        if line.startswith("    By hand:"):
            _by_hand(line)
    return worked, _said_place(answer.group(2), "" if is_total else answer.group(4) or "") or last_place(answer.group(2))


@dataclass(frozen=True)
class Answer:
    """The printed answer of a working, and what one unit of its last place is."""

    text: str
    unit: str
    step: float


def printed_answer(text: str) -> Answer:
    """The answer as it stands under the rule."""
    lines = text.splitlines()
    rule = next(i for i, line in enumerate(lines) if re.fullmatch(r" {6}-+", line))
    found = ANSWER.match(lines[rule + 1])
    assert found
    step = _said_place(found.group(2), found.group(4) or "") if "nearest" in (found.group(4) or "") else None
    if found.group(1):
        step = plain_number(found.group(2))
    return Answer(found.group(2), found.group(3) or "", step or last_place(found.group(2)))


def _step(line: str, letters: Letters) -> None:
    if not line.strip():
        return
    step = STEP.match(line)
    if not step:
        raise Wrong(f"a step that cannot be read: {line!r}")
    worked = Expression(step.group(2), letters).value()
    agrees(step.group(3), step.group(4) or "", worked, f"step {step.group(1)}")
    if step.group(1) in letters:
        raise Wrong(f"two steps are called {step.group(1)}")
    letters[step.group(1)] = Amount(worked.number, step.group(4) or "", worked.si, worked.dims)


def joined(lines: list[str]) -> list[str]:
    """The lines of a text with those that were broken put together again: steps, rows, the line by hand."""
    whole: list[str] = []
    for line in lines:
        deeper = bool(line.strip()) and len(line) - len(line.lstrip()) > 6
        opened = whole and (BROKEN.match(whole[-1]) or ROW.match(whole[-1]))
        if deeper and opened:
            whole[-1] += " " + line.strip()
        else:
            whole.append(line)
    return whole


def _column(block: list[str], letters: Letters) -> Amount:
    """The value of the column, or of the one line, above the rule."""
    rows = [ROW.match(line) for line in block]
    if not rows or not all(rows):
        return Expression(" ".join(line.strip() for line in block), letters).value()
    result: Amount | None = None
    for row in rows:
        assert row is not None
        op, printed, unit, note = row.group(1).strip(), row.group(2), row.group(3) or "", row.group(4) or ""
        one = amount(plain_number(printed), unit)
        if note.startswith("= "):
            worked = Expression(note[2:], letters).value()
            agrees(printed, unit, worked, f"line {printed}")
            one = Amount(worked.number, unit, worked.si, worked.dims)
        if result is None:
            if op in ("×", "÷", "+"):
                raise Wrong(f"the first line has an operator: {row.group(0)!r}")
            result = Amount(-one.number, one.unit, -one.si, one.dims) if op == "−" else one
        elif op in ("+", "−"):
            result = added(result, one, 1.0 if op == "+" else -1.0)
        elif op in ("×", "÷"):
            result = multiplied(result, one, op)
        else:
            raise Wrong(f"a line without an operator: {row.group(0)!r}")
    assert result is not None
    return result


def _hold(answer: re.Match[str], worked: Amount, is_total: bool) -> None:
    """Hold the answer to the column; a total may say what its rounded parts add to."""
    less, printed, unit, remark = answer.group(1), answer.group(2), answer.group(3) or "", answer.group(4) or ""
    if less:
        _less_than(printed, unit, worked)
        return
    said = ADD_TO.match(remark)
    if said and is_total:
        agrees(said.group(1), unit, worked, "rounded parts", 0.51 * last_place(said.group(1)))
        if said.group(1) == printed:
            raise Wrong("the rounded parts are said to miss the total, and do not")
        return
    if is_total:
        if remark not in ("", "rounded parts"):
            raise Wrong(f"a total with a remark that says nothing: {remark!r}")
        agrees(printed, unit, worked, "the total", 0.51 * last_place(printed))
        return
    agrees(printed, unit, worked, "the answer", _said_place(printed, remark))


def _said_place(printed: str, remark: str) -> float | None:
    said = NEAREST.match(remark)
    if not said:
        if remark:
            raise Wrong(f"a remark that says nothing: {remark!r}")
        return None
    step = plain_number(said.group(1))
    if step < 10 or math.log10(step) % 1 or plain_number(printed) % step:
        raise Wrong(f"{printed} is not rounded {remark}")
    return step


def _less_than(printed: str, unit: str, worked: Amount) -> None:
    if abs(worked.number) >= plain_number(printed) * (1 + 1e-9):
        raise Wrong(f"{worked.number} is not less than {printed}")
    agrees(printed, unit, worked, "less than", 2 * plain_number(printed))


def _by_hand(line: str) -> None:
    hand = HAND.match(line)
    if not hand:
        raise Wrong(f"a line by hand that cannot be read: {line!r}")
    worked = Expression(hand.group(1), Letters()).value()
    if hand.group(2):
        _less_than(hand.group(3), hand.group(4) or "", worked)
    else:
        agrees(hand.group(3), hand.group(4) or "", worked, "by hand", _said_place(hand.group(3), hand.group(5) or ""))


def _redo_sides(lines: list[str]) -> float:
    """Both sides of an equation are redone, and held to each other."""
    if lines.count("    One side:") != 1 or lines.count("    Other side:") != 1:
        raise Wrong("an equation has two sides")
    start, middle = lines.index("    One side:"), lines.index("    Other side:")
    first, last = (
        "\n".join(line.removeprefix("    ") for line in part)
        for part in (lines[start + 1 : middle], lines[middle + 1 :])
    )
    left, right = (_redo(joined(each.splitlines())) for each in (first, last))
    alike(left[0], right[0])
    if abs(left[0].number - right[0].number) > left[1] + right[1]:
        raise Wrong(f"the sides of the equation differ: {left[0].number} and {right[0].number}")
    return left[0].number
