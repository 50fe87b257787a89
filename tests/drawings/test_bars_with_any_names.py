"""Rules and bars of rooms with any names and values: to scale, and no text on another."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from heatledger.drawings.double_rule import DoubleRule, double_rule
from heatledger.drawings.lettering import text_boxes
from heatledger.drawings.range_rule import Upright, range_rule
from heatledger.drawings.room_bars import RoomBar, room_bars
from heatledger.drawings.shapes import Path
from heatledger.drawings.wall_bars import WallBar, wall_bars
from heatledger.drawings.water_rule import RoomOnRule, water_rule
from tests.drawings.tidy import check_tidy

NAMES = st.text(st.characters(categories=("L", "N"), include_characters=" -&"), min_size=1, max_size=40)


@settings(max_examples=40)
@given(rooms=st.lists(st.tuples(NAMES, st.floats(20, 230)), min_size=1, max_size=20), metric=st.booleans())
def test_no_name_on_the_water_rule_touches_another(rooms: list[tuple[str, float]], metric: bool) -> None:
    made = tuple(RoomOnRule(name, value, f"{math.ceil(value)}") for name, value in rooms)
    until = (150.0, "return under 130 °F: the boiler condenses")
    check_tidy(water_rule("Water", made, 160.0, "design supply 160 °F", "°C" if metric else "°F", 516, until))


@settings(max_examples=40)
@given(rooms=st.lists(st.tuples(NAMES, st.floats(-500, 90000)), min_size=1, max_size=12))
def test_no_text_on_bars_of_rooms_touches_another(rooms: list[tuple[str, float]]) -> None:
    bars = tuple(RoomBar(name, {"walls": value, "air": 10.0}, f"{value:,.0f}") for name, value in rooms)
    check_tidy(room_bars("Rooms", "words", bars, "Btu/h", {"walls": "Walls", "air": "Air"}))


@settings(max_examples=40)
@given(
    rooms=st.lists(st.tuples(NAMES, *[st.one_of(st.none(), st.floats(0.5, 60))] * 3), min_size=1, max_size=12)
)
def test_walls_are_to_scale_and_a_shortage_is_seen(
    rooms: list[tuple[str, float | None, float | None, float | None]],
) -> None:
    bars = tuple(WallBar(name, wall, length, needed, "12′ 6″") for name, wall, length, needed in rooms)
    if not any(each.reach for each in bars):
        with pytest.raises(ValueError, match="length"):
            wall_bars("Walls", "words", bars, "ft")
        return
    drawing = wall_bars("Walls", "words", bars, "ft")
    check_tidy(drawing)
    short = [b for b in bars if b.length and b.needed and b.needed > b.length * (1 + 1e-9)]
    seen = [each for each in drawing.shapes if isinstance(each, Path) and each.look == "shortage"]
    assert len(seen) == len(short) + 1  # and the one that says what the sign means


@settings(max_examples=60)
@given(calls=st.lists(st.floats(0, 1), min_size=1, max_size=3), low=st.floats(0, 1), full=st.floats(500, 2e5))
def test_no_call_on_the_rule_of_heat_touches_another(calls: list[float], low: float, full: float) -> None:
    kinds = ("design day", "lightest call", "today")
    made = tuple(
        Upright(share * full, f"{kinds[spot]} {share * full:,.0f}", spot == 0)
        for spot, share in enumerate(calls)
    )
    drawing = range_rule("Range", "words", (low * full, full), f"steady, {full:,.0f}", made, "Btu/h")
    check_tidy(drawing)
    boxes = text_boxes(drawing)
    uprights = [each.points for each in drawing.shapes if isinstance(each, Path)
                and each.look in ("mark", "mark-thin") and len(each.points) == 2]  # fmt: skip
    for (x, top), (_, bottom) in uprights:
        for text, box in boxes:
            assert not (box[0] < x < box[2] and top < box[3] and box[1] < bottom), text


def test_scales_that_turn_back_are_refused() -> None:
    rule = DoubleRule("t", "w", "°F", "W", ((0.0, 5.0), (1.0, 7.0), (2.0, 6.0)), 1.0, (0.0, 5.0), ("0", "5"))
    with pytest.raises(ValueError, match="one way"):
        double_rule(rule)
    with pytest.raises(ValueError, match="in order"):
        range_rule("t", "w", (5.0, 1.0), "", (), "W")
