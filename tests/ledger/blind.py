"""An evaluator that knows only the printed text of a working, and redoes it.

It knows no formula, no figure and no unit table of ours: it reads numbers, signs and units as
printed, works them out, and holds the printed answer to them.
"""

from __future__ import annotations

import math
import re
from dataclasses import dataclass, replace

from tests.ledger.expressions import (
    NUMBER,
    UNIT,
    Amount,
    Expression,
    Letters,
    Wrong,
    added,
    alike,
    amount,
    is_factor,
    last_place,
    multiplied,
    plain_number,
    unit_in_si,
)  # fmt: skip


def agrees(printed: str, unit: str, worked: Amount, what: str, places: float | None = None) -> None:
    """Hold a printed number and unit to what was worked out: one unit of the last place."""
    step = places or last_place(printed)
    off = abs(plain_number(printed) - worked.number)
    if off > step * (1 + 1e-6):
        raise Wrong(f"{what}: printed {printed}, a pencil gets {worked.number:.10g}")
    size, dims = unit_in_si(unit)
    if dims != tuple(round(each, 9) for each in worked.dims):
        raise Wrong(f"{what}: {unit!r} is not the unit the arithmetic gives")
    if not math.isclose(worked.size, size, rel_tol=1e-9):
        raise Wrong(f"{what}: printed in {unit}, worked out in {worked.size / size:.8g} of it")


INNER_FIGURES = 5


def agrees_inner(printed: str, unit: str, worked: Amount, what: str) -> None:
    """Hold an inner result: it is rounded to five figures or to a whole number, zeros at the end dropped."""
    number = plain_number(printed)
    figure = math.floor(math.log10(abs(number)) + 1e-12) - INNER_FIGURES + 1 if number else -9
    agrees(printed, unit, worked, what, 0.501 * 10.0 ** (figure if "×10" in printed else min(figure, 0)))


STEP = re.compile(rf"^ {{4}}([a-z]\d*) = (.+) = ({NUMBER})(?: ({UNIT}))?$")
ROW = re.compile(rf"^ {{6}}([+−×÷ ]) +({NUMBER})(?: ({UNIT}))?(?: +(.*))?$")
ANSWER = re.compile(rf"^ {{6}} *(less than )?({NUMBER})(?: ({UNIT}))?(?: {{2,}}(.*))?$")
HAND = re.compile(rf"^ {{4}}By hand: (.+) = (less than )?({NUMBER})(?: ({UNIT}))?(?: +\((.*)\))?$")
BROKEN = re.compile(r"^ {4}(?:[a-z]\d* = |By hand: )")
NEAREST = re.compile(rf"^to the nearest ({NUMBER})$")
SHOWN_AS = re.compile(rf"shown as ({NUMBER})$")
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
    parts = (
        [row.group(2) for row in map(ROW.match, lines[blanks[-1] + 1 : rule]) if row] if is_total else None
    )
    _hold(answer, worked, parts)
    for line in lines[rule + 1 :]:
        if line.startswith("    By hand:"):
            _by_hand(line)
    return worked, _said_place(answer.group(2), "" if is_total else answer.group(4) or "") or last_place(
        answer.group(2)
    )


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
    agrees_inner(step.group(3), step.group(4) or "", worked, f"step {step.group(1)}")
    if step.group(1) in letters:
        raise Wrong(f"two steps are called {step.group(1)}")
    letters[step.group(1)] = replace(worked, unit=step.group(4) or "")


def joined(lines: list[str]) -> list[str]:
    """The lines of a text with those that were broken put together again: steps, rows, the line by hand."""
    whole: list[str] = []
    for line in lines:
        deeper = bool(line.strip()) and len(line) - len(line.lstrip()) > 6
        row = ROW.match(whole[-1]) if whole else None
        beside = row and row.group(4) and len(line) - len(line.lstrip()) == row.start(4)
        if deeper and (beside or (whole and BROKEN.match(whole[-1]))):
            whole[-1] += " " + line.strip()
        else:
            whole.append(line)
    return whole


def _column(block: list[str], letters: Letters) -> Amount:
    """The value of the column, or of the one line, above the rule."""
    rows = [ROW.match(line) for line in block]
    if rows and all(rows) and len({row.group(1) in "+−" for row in rows[1:] if row}) > 1:
        raise Wrong("a column that both adds and multiplies")
    if not rows or not all(rows):
        return Expression(" ".join(line.strip() for line in block), letters).value()
    result: Amount | None = None
    for row in rows:
        assert row is not None
        op, printed, unit, note = row.group(1).strip(), row.group(2), row.group(3) or "", row.group(4) or ""
        one = (
            amount(printed, unit) if not note.startswith("= ") else _worked_row(printed, unit, note, letters)
        )
        shown = SHOWN_AS.search(note)
        if note.startswith("to "):
            is_factor(printed, one)
        if "shown as" in note and not shown:
            raise Wrong(f"it is not clear what {printed} is shown as: {note!r}")
        if shown and abs(one.number - plain_number(shown.group(1))) > 0.51 * last_place(shown.group(1)):
            raise Wrong(f"{printed} is not what is shown as {shown.group(1)}")
        if result is None:
            if op in ("×", "÷", "+"):
                raise Wrong(f"the first line has an operator: {row.group(0)!r}")
            result = replace(one, number=-one.number) if op == "−" else one
        elif op in ("+", "−"):
            result = added(result, one, 1.0 if op == "+" else -1.0)
        elif op in ("×", "÷"):
            result = multiplied(result, one, op)
        else:
            raise Wrong(f"a line without an operator: {row.group(0)!r}")
    assert result is not None
    return result


def _worked_row(printed: str, unit: str, note: str, letters: Letters) -> Amount:
    worked = Expression(note[2:], letters).value()
    agrees_inner(printed, unit, worked, f"line {printed}")
    return replace(worked, unit=unit)


def _hold(answer: re.Match[str], worked: Amount, parts: list[str] | None) -> None:
    """Hold the answer to the column; a total may say what its rounded parts add to."""
    less, printed, unit, remark = (
        answer.group(1),
        answer.group(2),
        answer.group(3) or "",
        answer.group(4) or "",
    )
    if less:
        _less_than(printed, unit, worked)
        return
    said = ADD_TO.match(remark)
    if said and parts is not None:
        agrees(said.group(1), unit, worked, "rounded parts", 0.51 * last_place(said.group(1)))
        if plain_number(said.group(1)) == plain_number(printed):
            raise Wrong("the rounded parts are said to miss the total, and do not")
        most = sum(last_place(each) for each in [*parts, printed]) / 2
        agrees(printed, unit, worked, "the total", most * (1 + 1e-6))
        return
    if parts is not None:
        if remark:
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
    if printed.strip("0.,\u202f").split("×")[0] != "1":
        raise Wrong(f"less than {printed}: a limit is one unit of some place")
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
        agrees(
            hand.group(3),
            hand.group(4) or "",
            worked,
            "by hand",
            _said_place(hand.group(3), hand.group(5) or ""),
        )


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
