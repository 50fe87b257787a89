"""The blind evaluator must refuse a working that was spoiled: digit by digit, unit by unit, line by line.

What is not refused is held to reasons: the last place of a rounded number may be off by one, a digit
may move the answer by less than the rule allows, and what was compared but not taken carries nothing.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Callable
from functools import cache
from random import Random
from typing import Any

import pytest

from heatledger.ledger.as_text import working
from heatledger.ledger.presets import CANADIAN, METRIC, US, Preset
from tests.ledger import blind
from tests.ledger.drawing import arguments_for, awkward_formulas
from tests.ledger.expressions import NUMBER, Wrong, last_place, plain_number
from tests.ledger.spoiling import (
    Printed,
    fewer_lines,
    other_digits,
    other_signs,
    other_units,
    printed_numbers,
)

PRESETS = [US, METRIC, CANADIAN]
FORMULAS = awkward_formulas()
COMPARED = ("the larger of", "the smaller of", "as ", "less than")
MOVES = (1, 9, 4)


@cache
def sheet(function: Callable[..., Any], preset: Preset) -> str:
    """One printed working, with few enough parts to spoil each."""
    arguments = arguments_for(function.formula, Random(f"spoil {function.__name__} {preset.name}"), preset)  # type: ignore[attr-defined]
    short = [each[:4] if isinstance(each, list) else each for each in arguments]
    return working(function(*short), preset)


def verdict(text: str, spoiled: str) -> str:
    """Caught; the same answer; an answer within the rule; or slipped through."""
    try:
        again = blind.redo(spoiled)
    except Wrong:
        return "caught"
    before, step = blind.redo(text), blind.printed_answer(text).step
    if again == before:
        return "same"
    return "within the rule" if abs(again - before) <= 2 * step * (1 + 1e-6) else "slipped"


def compares(text: str, number: Printed) -> bool:
    """Whether a number stands where something is compared, or below a limit."""
    return any(each in text.splitlines()[number.line] for each in COMPARED) or "the larger of" in text


def within_a_place(text: str, spoiled: str, number: Printed, moved: float) -> bool:
    """Whether an answer was moved by no more than the rule lets it be off, to either side."""
    before, after = (each[number.start : number.end] for each in (text, spoiled))
    said = re.search(rf"to the nearest ({NUMBER})", text.splitlines()[number.line])
    places = [last_place(before), last_place(after), plain_number(said.group(1)) if said else 0.0]
    return moved * last_place(before) <= 2 * max(places) * (1 + 1e-6)


each_sheet = pytest.mark.parametrize("preset", PRESETS, ids=lambda each: each.name)
each_formula = pytest.mark.parametrize("function", FORMULAS, ids=lambda each: each.__name__)


@each_sheet
@each_formula
def test_no_digit_slips_through(function: Callable[..., Any], preset: Preset) -> None:
    text = sheet(function, preset)
    seen: Counter[str] = Counter()
    for number in printed_numbers(text):
        for spoiled, moved in other_digits(text, number, MOVES):
            what = verdict(text, spoiled)
            seen[what] += 1
            assert what != "slipped", spoiled
            if number.role == "inner":
                assert what == "caught" or moved <= 1 + 1e-6, spoiled
            elif number.role == "answer" and "less than" not in text:
                assert what == "caught" or within_a_place(text, spoiled, number, moved), spoiled
            elif number.role == "input" and what == "same":
                below = number.line > text.count("\n", 0, text.index("      ---"))
                assert compares(text, number) or below or blind.redo(text) == 0.0, spoiled
    assert seen["caught"] > 0


@each_sheet
@each_formula
def test_no_unit_slips_through(function: Callable[..., Any], preset: Preset) -> None:
    text = sheet(function, preset)
    random = Random(f"units {function.__name__} {preset.name}")
    for number in printed_numbers(text):
        for spoiled, _ in other_units(text, number, random):
            assert verdict(text, spoiled) == "caught", spoiled


@each_sheet
@each_formula
def test_no_sign_or_line_slips_through(function: Callable[..., Any], preset: Preset) -> None:
    text = sheet(function, preset)
    for spoiled, _ in [*other_signs(text), *fewer_lines(text)]:
        what = verdict(text, spoiled)
        nothing = blind.redo(text) == 0.0 or "the larger of" in text
        assert what in ("caught", "within the rule") or (what == "same" and nothing), spoiled


def test_most_digits_of_what_goes_in_are_held() -> None:
    seen: Counter[str] = Counter()
    outcomes: Counter[str] = Counter()
    for function in FORMULAS[::4]:
        text = sheet(function, METRIC)
        for number in printed_numbers(text):
            for spoiled, moved in other_digits(text, number, MOVES):
                if number.role == "input":
                    seen[verdict(text, spoiled)] += 1
                elif moved > 2.5:
                    outcomes[verdict(text, spoiled)] += 1
    assert seen["caught"] / seen.total() > 0.8
    assert outcomes["caught"] == outcomes.total()


WHOLE = """\
Transmission loss
    Heat lost through one surface.
    area × U-value × (indoor − outdoor)

        112 ft²
      × 0.079 Btu/(h·ft²·°F)
      ×  70 °F               = 70 °F − 0 °F
      -------
          619 Btu/h
"""


def test_a_page_set_by_hand_is_read() -> None:
    assert blind.redo(WHOLE) == pytest.approx(619.36)


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("619 Btu/h", "691 Btu/h"),
        ("619 Btu/h", "619 W"),
        ("= 70 °F − 0 °F", "= 70 °F + 10 °F"),
        ("ft²\n", "m²\n"),
        ("  × 0.079", "  ÷ 0.079"),
        ("      -------\n", ""),
        ("      × 0.079 Btu/(h·ft²·°F)\n", ""),
        ("619 Btu/h", "619 Btu/h  to the nearest 10"),
        ("619 Btu/h", "620 Btu/h  about"),
        ("0.079", "0.97"),
        ("70 °F               =", "71 °F               ="),
    ],
)
def test_a_page_that_is_wrong_is_refused(old: str, new: str) -> None:
    assert old in WHOLE
    with pytest.raises(Wrong):
        blind.redo(WHOLE.replace(old, new))
