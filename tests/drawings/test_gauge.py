"""A gauge: a reading stands on its own side of the bracket, a dot inside and a triangle outside."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from heatledger.drawings.gauge import EDGE, gauge
from heatledger.drawings.shapes import Disc, Drawing, Path
from heatledger.drawings.to_svg import to_svg
from heatledger.studies.startup_limits import is_inside


def brackets(drawing: Drawing) -> list[float]:
    """Where the upright strokes of the brackets stand."""
    found = [each for each in drawing.shapes if isinstance(each, Path) and each.look == "mark-thin"]
    return sorted(each.points[1][0] for each in found)


def mark(drawing: Drawing) -> tuple[float, bool]:
    """Where the reading stands, and whether it is drawn as one inside."""
    dots = [each for each in drawing.shapes if isinstance(each, Disc)]
    if dots:
        return dots[0].center[0], True
    peak = next(each for each in drawing.shapes if isinstance(each, Path) and each.look == "outside")
    return peak.points[0][0], False


def test_a_target_alone_is_a_bracket_on_a_line() -> None:
    drawing = gauge("Fill", 11.2, 13.2, words="not read yet")
    assert len(brackets(drawing)) == 2
    assert not [each for each in drawing.shapes if isinstance(each, Disc) or each.look == "outside"]
    assert drawing.words == "not read yet"


def test_a_reading_stands_in_proportion_between_the_brackets() -> None:
    drawing = gauge("Fill", 10.0, 20.0, 12.5)
    (left, right), (x, inside) = brackets(drawing), mark(drawing)
    assert inside
    assert x == pytest.approx(left + 0.25 * (right - left))


@pytest.mark.parametrize(
    ("low", "high", "reading", "inside"),
    [(None, 9.0, 0.0, True), (None, 9.0, 9.0, True), (None, 9.0, 9.1, False), (100.0, None, 100.0, True),
     (100.0, None, 250.0, True), (100.0, None, 99.0, False), (-0.04, -0.02, -0.03, True),
     (-0.04, -0.02, 0.0, False), (5.0, 5.0, 5.0, True)],
)  # fmt: skip
def test_ends_count_as_inside(low: float | None, high: float | None, reading: float, inside: bool) -> None:
    assert mark(gauge("Reading", low, high, reading))[1] is inside


ENDS = st.floats(-1e5, 1e5)


@given(st.tuples(ENDS, ENDS).map(sorted), st.floats(-1e7, 1e7), st.sampled_from(["both", "low", "high"]))
def test_a_reading_never_stands_on_the_wrong_side(ends: list[float], reading: float, given: str) -> None:
    low = None if given == "high" else ends[0]
    high = None if given == "low" else ends[1]
    drawing = gauge("Reading", low, high, reading)
    x, inside = mark(drawing)
    stand = brackets(drawing)
    left = stand[0] if low is not None else -math.inf
    right = stand[-1] if high is not None else math.inf
    assert inside is is_inside(reading, low, high)
    if inside:
        assert left - 1e-3 <= x <= right + 1e-3
    else:
        assert x < left or x > right
    assert EDGE - 0.01 <= x <= drawing.width - EDGE + 0.01
    if not inside and low is not None and reading < low:
        assert x < left
    elif not inside:
        assert x > right


@pytest.mark.parametrize(
    ("low", "high", "reading"),
    [(None, None, 1.0), (2.0, 1.0, 1.0), (math.nan, 1.0, 1.0), (0.0, math.inf, 1.0), (0.0, 1.0, math.nan)],
)
def test_a_target_that_is_none_is_refused(low: float | None, high: float | None, reading: float) -> None:
    with pytest.raises(ValueError, match="target needs a finite end"):
        gauge("Reading", low, high, reading)


def test_it_is_written_with_its_words_and_without_styles() -> None:
    text = to_svg(gauge("Fill", 10.0, 12.0, 15.0, "15 psi, outside the target"), "gauge-fill")
    assert '<desc id="gauge-fill-words">15 psi, outside the target</desc>' in text
    assert "style" not in text
