"""Charts of whole designs: marks stand where figures say, tables hold those figures, no text on another."""

from __future__ import annotations

import math
import xml.etree.ElementTree as ET
from functools import cache
from importlib import resources
from itertools import pairwise

import pytest

from heatledger.drawings import charts
from heatledger.drawings.chart import Chart, shown
from heatledger.drawings.shapes import Disc, Drawing, Path, Point, Words
from heatledger.job.load import read_job
from heatledger.ledger.dimensions import HEAT_RATE, TEMPERATURE
from heatledger.ledger.presets import CANADIAN, METRIC, US, Preset
from heatledger.steps.design import Design, design
from heatledger.studies.by_weather import by_weather, losses_at
from heatledger.studies.calls import lightest_call, zones_alone
from tests.drawings.tidy import check_tidy

HOUSES = ("ferrow-house", "lerch-cottage", "tamm-street")
PRESETS = (US, METRIC, CANADIAN)
BARE = "format: 1\nname: Bare\nunits: US\n"


@cache
def text_of(name: str) -> str:
    return resources.files("heatledger").joinpath("examples", f"{name}.yaml").read_text("utf-8")


@cache
def house(name: str) -> Design:
    return design(read_job(text_of(name), f"{name}.yaml"))


def all_charts(made: Design, units: Preset) -> list[Chart]:
    found = [
        charts.heat_by_cause(made, units), charts.rooms_by_cause(made, units),
        charts.likely_range(made, units), charts.load_by_weather(made, units),
        charts.water_temperatures(made, units), charts.walls_to_scale(made, units),
        charts.reset_line(made, units), charts.what_matters(made, units, "house/loss"),
        charts.firing_range(made, units),
        *(charts.pump_and_circuits(made, units, each) for each in made.circuits.plant.circulators),
    ]  # fmt: skip
    return [each for each in found if each is not None]


def texts(drawing: Drawing) -> dict[str, Words]:
    return {each.text: each for each in drawing.shapes if isinstance(each, Words)}


def number(text: str) -> float:
    return float(text.replace("−", "-").replace(",", "").replace("\u202f", ""))


@pytest.mark.parametrize("units", PRESETS, ids=lambda each: each.name)
@pytest.mark.parametrize("name", HOUSES)
def test_every_chart_is_tidy_and_needs_no_styles(name: str, units: Preset) -> None:
    found = all_charts(house(name), units)
    assert len(found) >= 5
    ids: list[str] = []
    for each in found:
        check_tidy(each.drawing)
        root = ET.fromstring(each.svg())
        assert not [one for one in root.iter() if "style" in one.attrib or one.tag.endswith("style")]
        ids += [one.attrib["id"] for one in root.iter() if "id" in one.attrib]
        assert each.sentence.endswith(".")
        assert each.title
        assert each.rows
        assert all(len(row) == len(each.head) for row in each.rows), each.id
    assert len(ids) == len(set(ids)) == 3 * len(found)


@pytest.mark.parametrize("units", PRESETS, ids=lambda each: each.name)
@pytest.mark.parametrize("name", HOUSES)
def test_a_cell_with_a_path_holds_the_figure_there(name: str, units: Preset) -> None:
    made, checked = house(name), 0
    for chart in all_charts(made, units):
        if chart.id.startswith("matters"):
            continue
        for row in chart.rows:
            for cell in (each for each in row if each.path and each.text):
                figure = made[cell.path]
                if cell.text.endswith("%"):
                    assert float(cell.text[:-2]) == pytest.approx(100 * float(figure), abs=0.51)
                else:
                    value = shown(float(figure), units, figure.dimension)
                    assert number(cell.text) == pytest.approx(value, abs=0.51 * 10 ** -_places(cell.text))
                checked += 1
    assert checked > 20


def _places(text: str) -> int:
    return len(text.partition(".")[2])


@pytest.mark.parametrize("name", HOUSES)
def test_the_loss_by_weather_is_that_of_a_house_in_that_weather(name: str) -> None:
    made = house(name)
    outdoor = made.losses.site.outdoor
    for warmer in (5.0, 20.0):
        [found] = losses_at(made, [float(outdoor) + warmer])
        celsius = float(outdoor) + warmer - 273.15
        changed = design(read_job(_with_outdoor(text_of(name), celsius)))
        assert found == pytest.approx(float(changed.losses.house.loss), rel=1e-6)
    assert losses_at(made, [float(outdoor)])[0] == pytest.approx(float(made.losses.house.loss), rel=1e-9)


def _with_outdoor(text: str, celsius: float) -> str:
    lines = text.splitlines()
    inside = False
    for spot, line in enumerate(lines):
        inside = line.startswith("site:") or (inside and (not line or line.startswith((" ", "#"))))
        if inside and line.strip().startswith("outdoor:"):
            indent = line[: len(line) - len(line.lstrip())]
            lines[spot] = f"{indent}outdoor: {celsius:.9f} °C"
            return "\n".join(lines) + "\n"
    raise AssertionError("the job names no outdoor temperature")


@pytest.mark.parametrize("units", PRESETS, ids=lambda each: each.name)
def test_both_scales_of_the_load_agree(units: Preset) -> None:
    made = house("ferrow-house")
    chart = charts.load_by_weather(made, units)
    assert chart is not None
    points = by_weather(made, units.shown(TEMPERATURE).unit)
    marks = texts(chart.drawing)
    outs = {
        number(t): w.at[0] for t, w in marks.items() if w.look == "small" and w.at[1] < 20 and _numeric(t)
    }
    loads = {
        number(t): w.at[0] for t, w in marks.items() if w.look == "small" and w.at[1] > 30 and _numeric(t)
    }
    assert len(outs) >= 4
    assert len(loads) >= 4
    (a, xa), (b, xb) = min(outs.items()), max(outs.items())
    for load, x in loads.items():
        out = a + (x - xa) / (xb - xa) * (b - a)
        kelvin = units.shown(TEMPERATURE).unit.to_si(out, True)
        [loss] = losses_at(made, [kelvin])
        assert shown(loss, units, HEAT_RATE) == pytest.approx(load, rel=0.01)
    assert all(cold.loss > mild.loss for cold, mild in pairwise(points))


def _numeric(text: str) -> bool:
    return text.replace("−", "").replace(",", "").replace("\u202f", "").replace(".", "").isdigit()


@pytest.mark.parametrize("units", PRESETS, ids=lambda each: each.name)
def test_the_operating_point_lies_on_both_curves(units: Preset) -> None:
    made = house("ferrow-house")
    chart = charts.pump_and_circuits(made, units, "p1")
    assert chart is not None
    lines = {each.look: each.points for each in chart.drawing.shapes if isinstance(each, Path)
             and len(each.points) > 20}  # fmt: skip
    rings = [each.center for each in chart.drawing.shapes if isinstance(each, Disc) and each.radius == 3.2]
    assert len(rings) == 1
    assert _distance(rings[0], lines["curve"]) < 1.0
    assert _distance(rings[0], lines["curve-thin"]) < 1.0
    alone = [each.center for each in chart.drawing.shapes if isinstance(each, Disc) and each.radius == 2.8]
    assert len(alone) == len(zones_alone(made)) == 2
    for each in alone:
        assert _distance(each, lines["curve"]) < 1.0
        assert min(_distance(each, lines["curve-dotted"]), _distance(each, lines["curve-dashed"])) < 1.0


def _distance(point: Point, through: tuple[Point, ...]) -> float:
    (px, py), least = point, math.inf
    for (ax, ay), (bx, by) in pairwise(through):
        long = (bx - ax) ** 2 + (by - ay) ** 2 or 1.0
        share = min(max(((px - ax) * (bx - ax) + (py - ay) * (by - ay)) / long, 0.0), 1.0)
        least = min(least, math.hypot(px - ax - share * (bx - ax), py - ay - share * (by - ay)))
    return least


def test_a_zone_alone_gets_no_more_than_all_together() -> None:
    made = house("ferrow-house")
    whole = made.circuits.plant.circulators["p1"].actual_flow
    assert whole is not None
    for each in zones_alone(made):
        assert 0 < float(each.flows["p1"]) < float(whole)
    light = lightest_call(made)
    assert light is not None
    assert light.load == pytest.approx(
        min(float(c.load) for c in made.circuits.circuits.values())
        * min(float(p.share) for p in made.controls.controls.reset.values())
    )


def test_a_reading_stands_as_a_plus_on_its_upright() -> None:
    made = house("ferrow-house")
    chart = charts.reset_line(made, US)
    assert chart is not None
    pluses = [each.points for each in chart.drawing.shapes if isinstance(each, Path) and each.look == "mark"]
    assert len(pluses) == 2  # two strokes for the one temperature that was read
    upright = [
        each.points for each in chart.drawing.shapes if isinstance(each, Path) and each.look == "dotted"
    ]
    center = (pluses[0][0][0] + pluses[0][1][0]) / 2
    assert any(a[0] == pytest.approx(center) == b[0] for a, b in upright)
    assert any("today 18, read 140" in text for text in texts(chart.drawing))
    assert [row[-1].text for row in chart.rows[-2:]] == ["due today", "read"]


def test_bare_jobs_have_nothing_to_draw() -> None:
    made = design(read_job(BARE))
    assert charts.heat_by_cause(made, US) is None
    assert charts.rooms_by_cause(made, US) is None
    assert charts.likely_range(made, US) is None
    assert charts.load_by_weather(made, US) is None
    assert charts.water_temperatures(made, US) is None
    assert charts.walls_to_scale(made, US) is None
    assert charts.reset_line(made, US) is None
    assert charts.firing_range(made, US) is None
    assert charts.pump_and_circuits(made, US, "p1") is None
    assert charts.what_matters(made, US, "house/loss") is None
    assert charts.bars_of_rooms(made, US) == {}
    assert charts.wall_bars_of_rooms(made, US) == {}


def test_bars_for_the_rows_of_a_table_share_one_scale() -> None:
    made = house("ferrow-house")
    bars = charts.bars_of_rooms(made, US, 100.0)
    assert list(bars) == list(made.losses.rooms)
    reach = {id: max(x for each in bar.shapes if isinstance(each, Path) for x, _ in each.points)
             for id, bar in bars.items()}  # fmt: skip
    largest = max(made.losses.rooms, key=lambda each: float(made.losses.rooms[each].loss))
    share = float(made.losses.rooms["kitchen"].loss) / float(made.losses.rooms[largest].loss)
    assert reach["kitchen"] / reach[largest] == pytest.approx(share, abs=0.02)
