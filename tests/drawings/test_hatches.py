"""Six causes, six hatches, told apart without color and cut to their outline."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from heatledger.drawings.hatches import CAUSES, STROKES, hatched, strokes, swatch
from heatledger.drawings.shapes import Disc, Path, arrow, box


def inside(point: tuple[float, float], outline: tuple[tuple[float, float], ...]) -> bool:
    """Winding by angles: another way than the counting of crossings that cuts the strokes."""
    turned = 0.0
    for (ax, ay), (bx, by) in zip(outline, outline[1:] + outline[:1], strict=True):
        start, end = math.atan2(ay - point[1], ax - point[0]), math.atan2(by - point[1], bx - point[0])
        turned += (end - start + math.pi) % (2 * math.pi) - math.pi
    return abs(turned) > math.pi


def inside_or_on(point: tuple[float, float], outline: tuple[tuple[float, float], ...]) -> bool:
    """Inside, or so close to the edge that no one could see it outside."""
    x, y = point
    return any(inside((x + dx, y + dy), outline) for dx in (-1e-6, 0, 1e-6) for dy in (-1e-6, 0, 1e-6))


@given(
    cause=st.sampled_from(sorted(STROKES)),
    length=st.floats(20, 60),
    thickness=st.floats(2, 30),
    degrees=st.integers(0, 3),
)
def test_every_stroke_lies_in_the_arrow(cause: str, length: float, thickness: float, degrees: int) -> None:
    toward = ((1, 0), (0, 1), (-1, 0), (0, -1))[degrees]
    outline = arrow((50, 50), toward, length, thickness, "edge").points
    for stroke in strokes(outline, STROKES[cause], "hatch"):
        (ax, ay), (bx, by) = stroke.points
        for share in (0.02, 0.5, 0.98):
            assert inside_or_on((ax + (bx - ax) * share, ay + (by - ay) * share), outline)


@pytest.mark.parametrize("cause", CAUSES)
def test_a_hatch_is_a_ground_its_strokes_and_an_edge(cause: str) -> None:
    shapes = hatched(box(0, 0, 30, 20, "edge").points, cause)
    assert shapes[0].look == f"ground-{cause}"
    assert shapes[-1].look == "edge"
    assert (len(shapes) == 2) == (cause == "doors")


def test_hatches_differ_in_direction_or_kind() -> None:
    kinds = set()
    for cause in CAUSES:
        between = hatched(box(0, 0, 30, 20, "edge").points, cause)[1:-1]
        if not between:
            kinds.add("solid")
        elif isinstance(between[0], Disc):
            kinds.add("dots")
        else:
            (ax, ay), (bx, by) = between[len(between) // 2].points
            kinds.add(str(round(math.degrees(math.atan2(ay - by, bx - ax))) % 180))
    assert kinds == {"45", "90", "solid", "0", "dots", "135"}


def test_dots_keep_off_the_edge() -> None:
    dots = [each for each in hatched(box(0, 0, 20, 10, "edge").points, "floor") if isinstance(each, Disc)]
    assert len(dots) > 10
    for dot in dots:
        x, y = dot.center
        assert dot.radius < x < 20 - dot.radius
        assert dot.radius < y < 10 - dot.radius


def test_an_unknown_cause_is_refused_by_name() -> None:
    with pytest.raises(ValueError, match="attic"):
        hatched(box(0, 0, 1, 1, "edge").points, "attic")


def test_a_swatch_fits_its_drawing() -> None:
    for shape in swatch("walls", 11, 7.5):
        assert isinstance(shape, Path)
        assert all(0 <= x <= 11 and 0 <= y <= 7.5 for x, y in shape.points)
