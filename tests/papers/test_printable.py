"""What no face can draw is set as a square and named; all else prints as typed."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from heatledger.papers.printable import FONTS, SQUARE, characters, made_printable, printable, unprintable


@pytest.mark.parametrize(
    "text", ["Δ × ÷ − · ² ³ ° ′ ″ ½ ¼ ¾ ⅛ √ π ≤ ≥ µ ρ ±", "Žďár", "Łódź", "Nguyễn", "Привет", "Ωmega"]
)
def test_signs_and_latin_greek_cyrillic_stand_as_typed(text: str) -> None:
    assert printable(text) == text
    assert not unprintable(text)


def test_the_rest_becomes_squares_and_is_told() -> None:
    assert printable("部屋 1\u0007\ufeff") == f"{SQUARE}{SQUARE} 1{SQUARE}{SQUARE}"
    assert unprintable({"a": ["部屋", {"b": ("\ue000",)}], "c": 3}) == {"部", "屋", "\ue000"}


def test_accents_are_composed_and_breaks_are_spaces() -> None:
    assert printable("e\u0301\tx\ny") == "é x y"


@given(st.text())
def test_what_is_printable_stays_so(text: str) -> None:
    once = printable(text)
    assert all(ord(each) in characters() for each in once)
    assert printable(once) == once


def test_data_keeps_its_shape_and_its_keys() -> None:
    assert made_printable({"部": ("a", 1.5, None, True)}) == {"部": ["a", 1.5, None, True]}


def test_the_faces_are_small_and_carry_their_licence() -> None:
    faces = list(FONTS.glob("*.ttf"))
    assert len(faces) == 5
    assert sum(each.stat().st_size for each in faces) < 600_000
    licence = (FONTS / "LICENSE.txt").read_text(encoding="utf-8")
    assert "SIL OPEN FONT LICENSE Version 1.1" in licence
    assert all("Source" not in each.name for each in faces)
