"""Bars and the graduated rule: lengths in proportion, ticks at round values, words of the same content."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from heatledger.drawings.band_rule import band_rule, numeral, step_of
from heatledger.drawings.cause_bar import GAP, cause_bar, swing_bar
from heatledger.drawings.shapes import Disc, Drawing, Path, Words, stable


def width_of(drawing: Drawing, look: str) -> float:
    shape = next(each for each in drawing.shapes if each.look == look)
    assert isinstance(shape, Path)
    return max(x for x, _ in shape.points) - min(x for x, _ in shape.points)


def test_a_bar_is_cut_in_proportion() -> None:
    drawing = cause_bar("Study", {"walls": 300.0, "air": 100.0}, {"walls": "300", "air": "100"}, 400.0, 121.0)
    assert width_of(drawing, "ground-walls") + GAP == pytest.approx(90)
    assert width_of(drawing, "ground-air") + GAP == pytest.approx(30)
    assert drawing.words == "walls 300, air 100"


def test_a_gain_takes_no_room_and_is_named() -> None:
    amounts = {"walls": 300.0, "floor": -50.0}
    drawing = cause_bar("Study", amounts, {"walls": "300", "floor": "−50"}, 400.0)
    assert "ground-floor" not in {each.look for each in drawing.shapes}
    assert "floor −50" in drawing.words


def test_a_bar_of_nothing_is_empty() -> None:
    drawing = cause_bar("Study", {}, {}, 0.0)
    assert drawing.shapes == ()
    assert drawing.words == "no loss"


def test_swings_are_centered_and_in_proportion() -> None:
    most = swing_bar("Air", "± 2,000", "air", 2000, 2000, width=102)
    half = swing_bar("Walls", "± 1,000", "walls", 1000, 2000, width=102)
    assert width_of(most, "ground-air") == pytest.approx(2 * width_of(half, "ground-walls"))
    plain = swing_bar("Tape", "± 100", "", 100, 2000, width=102)
    shape = plain.shapes[0]
    assert isinstance(shape, Path)
    assert sum(x for x, _ in shape.points) / 4 == pytest.approx(51)


def test_ticks_stand_where_their_numbers_say() -> None:
    drawing = band_rule("Band", 33100, 39400, 36245, ((37100, "bills"),))
    at = {float(each.text.replace(",", "")): each.at[0] for each in drawing.shapes
          if isinstance(each, Words) and each.text != "bills"}  # fmt: skip
    values = sorted(at)
    assert len(values) >= 3
    scale = (at[values[-1]] - at[values[0]]) / (values[-1] - values[0])
    band = next(each for each in drawing.shapes if each.look == "band")
    assert isinstance(band, Path)
    assert band.points[0][0] == pytest.approx(at[values[0]] + (33100 - values[0]) * scale)
    assert band.points[1][0] == pytest.approx(at[values[0]] + (39400 - values[0]) * scale)
    ring = next(each for each in drawing.shapes if isinstance(each, Disc))
    assert ring.center[0] == pytest.approx(at[values[0]] + (37100 - values[0]) * scale)


@given(low=st.floats(-1e6, 1e6), spread=st.floats(1e-3, 1e6), share=st.floats(0, 1))
def test_any_band_is_drawn_on_its_rule(low: float, spread: float, share: float) -> None:
    drawing = band_rule("Band", low, low + spread, low + share * spread)
    labels = [each for each in drawing.shapes if isinstance(each, Words)]
    assert 1 <= len(labels) <= 9
    assert len({each.text for each in labels}) == len(labels)
    assert all(0 <= each.at[0] <= drawing.width for each in labels)


@pytest.mark.parametrize("ends", [(2.0, 1.0), (math.nan, 1.0), (0.0, math.inf)])
def test_a_band_without_two_ends_in_order_is_refused(ends: tuple[float, float]) -> None:
    with pytest.raises(ValueError, match="band"):
        band_rule("Band", *ends, 1.0)


@pytest.mark.parametrize(("span", "step"), [(9000, 2000), (3.0, 1.0), (14, 5), (0.6, 0.2), (100, 50)])
def test_steps_are_round(span: float, step: float) -> None:
    assert step_of(span) == pytest.approx(step)


def test_numbers_are_written_one_way() -> None:
    assert [stable(each) for each in (-0.001, 1.0, 2.345, 10.0, -1.5)] == ["0", "1", "2.35", "10", "-1.5"]
    assert numeral(-12345.6, 0) == "−12,346"
    assert numeral(-0.2, 0) == "0"
