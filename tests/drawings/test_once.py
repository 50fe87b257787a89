"""What is kept of a drawing is what would be drawn anew, and no other reader's."""

from __future__ import annotations

from dataclasses import replace

import pytest

from heatledger.drawings.charts import heat_by_cause, load_by_weather, rooms_by_cause, water_temperatures
from heatledger.drawings.hatches import CAUSES, hatched
from heatledger.drawings.heat_charts import bars_of_rooms
from heatledger.drawings.once import once_a_design
from heatledger.drawings.shapes import Path, box, stable
from heatledger.drawings.to_svg import to_svg
from heatledger.ledger.presets import PRESETS, Preset
from heatledger.steps.design import Design, design
from tests.steps.heated import designed

DRAWN = (heat_by_cause, rooms_by_cause, load_by_weather, water_temperatures, bars_of_rooms)


@pytest.fixture(scope="module")
def house() -> Design:
    return designed("ferrow-house")


@pytest.mark.parametrize("make", DRAWN, ids=lambda each: each.__name__)
@pytest.mark.parametrize("units", PRESETS.values(), ids=lambda each: each.name)
def test_what_is_kept_is_what_is_drawn_anew(make: object, units: Preset, house: Design) -> None:
    first = make(house, units)  # type: ignore[operator]
    assert make(house, units) is first  # type: ignore[operator]
    assert first == make.__wrapped__(house, units)  # type: ignore[attr-defined]


def test_each_reader_and_each_width_gets_its_own(house: Design) -> None:
    us, metric = PRESETS["us"], PRESETS["metric"]
    assert rooms_by_cause(house, us) != rooms_by_cause(house, metric)
    assert rooms_by_cause(house, us, 300.0) != rooms_by_cause(house, us)
    assert rooms_by_cause(house, us, width=300.0) == rooms_by_cause(house, us, 300.0)


def test_another_design_and_another_preset_of_the_same_name_are_drawn_for_themselves(house: Design) -> None:
    made: list[tuple[Design, Preset]] = []

    @once_a_design
    def count(house: Design, units: Preset) -> int:
        made.append((house, units))
        return len(made)

    us = PRESETS["us"]
    again = design(house.job)
    assert [count(house, us), count(house, us), count(again, us)] == [1, 1, 2]
    assert count(house, replace(us)) == 3


@pytest.mark.parametrize("cause", CAUSES)
@pytest.mark.parametrize("width", [0.3, 7.0, 40.25, 111.7])
def test_a_hatch_of_a_box_is_that_of_any_outline(cause: str, width: float) -> None:
    upright = box(3.5, 0.5, width, 9.0, "edge").points
    turned = upright[1:] + upright[:1]  # begins at another corner, so it is not taken for a box
    marks = [{_rounded(each) for each in hatched(points, cause)[1:-1]} for points in (upright, turned)]
    assert marks[0] == marks[1]


def _rounded(shape: object) -> tuple[tuple[str, str], ...]:
    points = shape.points if isinstance(shape, Path) else (shape.center,)  # type: ignore[attr-defined]
    return tuple(sorted((stable(x), stable(y)) for x, y in points))


def test_drawings_that_differ_in_one_stroke_only_are_written_apart(house: Design) -> None:
    drawing = bars_of_rooms(house, PRESETS["us"])["kitchen"]
    moved = replace(drawing, shapes=(*drawing.shapes[:-1], box(0, 0, 1, 1, "edge")))
    assert hash(moved) == hash(drawing)
    assert to_svg(moved, "a") != to_svg(drawing, "a")
    assert to_svg(drawing, "a") == to_svg.__wrapped__(drawing, "a")
