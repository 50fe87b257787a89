"""Charts of reset and circulator, and the rule of water temperatures: marks stand where values say."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from heatledger.drawings.lettering import text_boxes
from heatledger.drawings.pump_chart import PumpView, pump_chart
from heatledger.drawings.reset_chart import ResetView, WaterAt, reset_chart
from heatledger.drawings.shapes import Disc, Drawing, Path, Point, Words
from heatledger.drawings.to_svg import LOOKS, to_svg
from heatledger.drawings.water_rule import RoomOnRule, water_rule
from tests.drawings.tidy import check_tidy

WEATHER = ((-2, 160, 140), (10, 149, 132), (20, 139, 125), (30, 128, 117), (40, 117, 109), (60, 91, 88))
POINTS = tuple(WaterAt(*each) for each in WEATHER)
CURVE = ((0.0, 6.6), (2.5, 5.98), (5.0, 4.6))


def scale(drawing: Drawing, anchor: str) -> tuple[float, float]:
    """Slope and start of an axis, from its printed numbers: level ones are centered, upright ones end."""
    marks = [(float(each.text.replace("−", "-").replace(",", "")), each.at) for each in drawing.shapes
             if isinstance(each, Words) and each.anchor == anchor and _is_number(each.text)]  # fmt: skip
    (low, first), (high, last) = min(marks), max(marks)
    index, shift = (0, 0.0) if anchor == "middle" else (1, -3.0)
    slope = (last[index] - first[index]) / (high - low)
    return slope, first[index] + shift - slope * low


def _is_number(text: str) -> bool:
    return text.replace("−", "").replace(",", "").replace(".", "").isdigit()


def where(drawing: Drawing, point: Point) -> Point:
    (a, b), (c, d) = scale(drawing, "middle"), scale(drawing, "end")
    return a * point[0] + b, c * point[1] + d


def discs(drawing: Drawing, look: str) -> list[Point]:
    return [each.center for each in drawing.shapes if isinstance(each, Disc) and each.look == look]


def line_of(drawing: Drawing, look: str) -> Path:
    return next(each for each in drawing.shapes if isinstance(each, Path) and each.look == look)


def test_rings_of_the_reset_stand_at_its_points() -> None:
    drawing = reset_chart(ResetView("Water by the weather", "°F", POINTS))
    rings = discs(drawing, "ring-supply")
    assert len(rings) == len(POINTS)
    for each in POINTS:
        x, y = where(drawing, (each.outdoor, each.supply))
        assert any(math.hypot(x - a, y - b) < 0.6 for a, b in rings)
    mild_first = [x for x, _ in line_of(drawing, "supply").points]
    assert mild_first == sorted(mild_first)


def test_reset_lines_are_named_at_their_cold_end() -> None:
    straight = ((-2.0, 160.0), (60.0, 90.0))
    drawing = reset_chart(ResetView("Reset", "°F", POINTS, straight, 130.0, "condensing limit", 55.0))
    names = {each.text: each for each in drawing.shapes if isinstance(each, Words)}
    end = max(x for x, _ in line_of(drawing, "supply").points)
    for name in ("supply 160", "return 140", "straight line", "condensing limit 130"):
        assert names[name].at[0] > end
    assert "off above 55" in names
    assert names["supply 160"].at[1] < names["return 140"].at[1] < names["condensing limit 130"].at[1]
    check_tidy(drawing)
    for said in ("outdoors −2: supply 160, return 140", "160 at −2 to 90 at 60", "a return of 130"):
        assert said in drawing.words


def test_supply_return_and_limits_are_told_apart_by_their_strokes() -> None:
    dashes = {
        look: LOOKS[look].partition("dasharray:")[2] for look in ("supply", "return", "dashed-thin", "dotted")
    }
    assert len(set(dashes.values())) == 4
    assert dashes["supply"] == ""


@settings(max_examples=60, deadline=None)
@given(
    cold=st.floats(-40, 20), supply=st.floats(40, 200), drop=st.floats(2, 40),
    limit=st.one_of(st.none(), st.floats(30, 180)), straight=st.booleans(), width=st.sampled_from((300.0,
    330.0)),
)  # fmt: skip
def test_any_reset_chart_is_tidy(
    cold: float, supply: float, drop: float, limit: float | None, straight: bool, width: float
) -> None:
    points = tuple(
        WaterAt(
            cold + step * 10, supply - step * supply * 0.1, supply - step * supply * 0.1 - drop / (step + 1)
        )
        for step in range(5)
    )
    ends = ((cold, supply), (cold + 40, supply * 0.6)) if straight else ()
    check_tidy(reset_chart(ResetView("Reset", "°F", points, ends, limit, "lowest return allowed"), width))


@pytest.mark.parametrize("points", [(), POINTS[:1], (POINTS[0], WaterAt(10, math.nan, 100))])
def test_a_reset_without_points_is_refused(points: tuple[WaterAt, ...]) -> None:
    with pytest.raises(ValueError, match="reset chart"):
        reset_chart(ResetView("Reset", "°F", points))


def pump(needed: Point | None = (3.7, 4.4), runs: Point | None = (4.05, 5.2)) -> Drawing:
    texts = ("needed 3.7 gpm at 4.4 ft" if needed else "", "runs at 4.05 gpm" if runs else "")
    return pump_chart(PumpView("P1", "P1, setting 2", "gpm", "ft", CURVE, needed, runs, *texts))


def test_the_pump_curve_goes_through_its_three_points() -> None:
    drawing = pump()
    drawn = line_of(drawing, "curve").points
    for point in CURVE:
        x, y = where(drawing, point)
        nearest = min(drawn, key=lambda each: abs(each[0] - x))
        assert abs(nearest[1] - y) < 1.0


def test_ring_and_cross_stand_at_what_runs_and_what_is_needed() -> None:
    drawing = pump()
    x, y = where(drawing, (4.05, 5.2))
    assert any(math.hypot(x - a, y - b) < 0.6 for a, b in discs(drawing, "ring"))
    x, y = where(drawing, (3.7, 4.4))
    strokes = [each.points for each in drawing.shapes if isinstance(each, Path) and each.look == "curve"][1:]
    assert len(strokes) == 2
    for (ax, ay), (bx, by) in strokes:
        assert (ax + bx) / 2 == pytest.approx(x, abs=0.6)
        assert (ay + by) / 2 == pytest.approx(y, abs=0.6)
    assert "needed 3.70 gpm at 4.4 ft; it runs at 4.05 gpm at 5.2 ft" in drawing.words


@pytest.mark.parametrize("needed", [(3.7, 4.4), (3.7, 5.1), (2.0, 3.0)])
def test_the_curve_of_the_pipes_goes_through_where_it_runs(needed: Point) -> None:
    drawing = pump(needed)
    x, y = where(drawing, (4.05, 5.2))
    drawn = line_of(drawing, "curve-thin").points
    assert min(math.hypot(x - a, y - b) for a, b in drawn) < 3.0
    heights = [b for _, b in drawn]
    assert heights == sorted(heights, reverse=True)


@settings(max_examples=60, deadline=None)
@given(flow=st.floats(0.3, 60), head=st.floats(0.5, 40), over=st.floats(0.4, 1.6), tall=st.floats(0.4, 1.6))
def test_any_pump_chart_is_tidy(flow: float, head: float, over: float, tall: float) -> None:
    curve = ((0.0, head * 1.5), (flow, head), (flow * 2, head * 0.3))
    view = PumpView("Circulator", "Circulator", "gpm", "ft", curve, (flow * over, head * tall), (flow, head),
                    "needed 12.3 gpm at 4.56 ft", "runs at 12.3 gpm")  # fmt: skip
    drawing = pump_chart(view)
    for text, box in text_boxes(drawing):
        assert -0.5 <= box[0] < box[2] <= drawing.width + 0.5, text
        assert -0.5 <= box[1] < box[3] <= drawing.height + 0.5, text


def test_a_pump_without_a_curve_shows_what_is_needed_alone() -> None:
    drawing = pump_chart(PumpView("P1", "P1", "gpm", "ft", (), (3.7, 4.4), None, "needed 3.7 gpm"))
    assert line_of(drawing, "curve-thin").points
    assert discs(drawing, "ring") == []


def test_a_pump_chart_of_nothing_is_refused() -> None:
    with pytest.raises(ValueError, match="pump chart"):
        pump_chart(PumpView("P1", "P1", "gpm", "ft", ()))
    with pytest.raises(ValueError, match="pump chart"):
        pump_chart(PumpView("P1", "P1", "gpm", "ft", (), (math.nan, 1.0)))


ROOMS = (
    ("Kitchen", 183.8),
    ("Dining room", 158.0),
    ("Hall and stairs", 156.6),
    ("Study", 146.8),
    ("Bath", 146.1),
)


def test_every_room_hangs_at_its_temperature_and_the_warmest_is_bold() -> None:
    rooms = tuple(RoomOnRule(name, value, f"{value:.0f}") for name, value in ROOMS)
    drawing = water_rule("Lowest supply", rooms, 160.0, "design supply 160 °F", "°F")
    a, b = scale(drawing, "middle")
    leaders = [each.points[0][0] for each in drawing.shapes if isinstance(each, Path) and each.look == "cold"]
    assert sorted(leaders) == pytest.approx(sorted(a * value + b for _, value in ROOMS), abs=0.1)
    bold = [each.text for each in drawing.shapes if isinstance(each, Words) and each.look == "bold"]
    assert bold == ["Kitchen 184", "design supply 160 °F"]
    assert "Kitchen 184" in drawing.words
    check_tidy(drawing)


@settings(max_examples=60, deadline=None)
@given(
    temperatures=st.lists(st.floats(30, 200), min_size=1, max_size=20),
    setting=st.one_of(st.none(), st.floats(30, 200)),
)
def test_names_on_the_rule_never_touch(temperatures: list[float], setting: float | None) -> None:
    rooms = tuple(RoomOnRule(f"Bedroom {n}", each, f"{each:.0f}") for n, each in enumerate(temperatures))
    words = "" if setting is None else f"design supply {setting:.0f} °F"
    drawing = water_rule("Lowest supply", rooms, setting, words, "°F")
    check_tidy(drawing)
    numbers = [each.text for each in drawing.shapes if isinstance(each, Words) and _is_number(each.text)]
    assert len(numbers) == len(set(numbers)) >= 2
    assert to_svg(drawing) == to_svg(drawing)


def test_a_rule_without_rooms_is_refused() -> None:
    with pytest.raises(ValueError, match="rooms"):
        water_rule("Lowest supply", (), 160.0, "", "°F")


def test_texts_of_a_pump_that_moves_little_stand_clear_of_both_axes() -> None:
    curve = ((0.0, 4.0), (1000.0, 3.0), (2000.0, 1.0))
    said = "needed 169 L/h at 0.358 m", "runs at 425 L/h"
    view = PumpView("Circulator", "Pump", "L/h", "m", curve, (169.0, 0.358), (425.0, 3.743), *said)
    drawing = pump_chart(view)
    check_tidy(drawing)
    boxes = dict(text_boxes(drawing))
    assert boxes["runs at 425 L/h"][0] > 30.0
    assert boxes["needed 169 L/h at 0.358 m"][3] < 190.0 - 30.0


def test_the_end_of_heat_is_told_below_the_topmost_line() -> None:
    drawing = reset_chart(ResetView("Reset", "°F", POINTS, ((66, 85), (-2, 160)), shutdown=62.0))
    [said] = [box for text, box in text_boxes(drawing) if text == "off above 62"]
    top = min(y for each in drawing.shapes if isinstance(each, Path) for _, y in each.points)
    assert said[1] > top + 2
