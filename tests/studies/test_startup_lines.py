"""Claim: the lines of a startup are off exactly where the review says so; the fire is never held laxly."""

from __future__ import annotations

from functools import cache
from importlib.resources import files

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from heatledger.job.edits import set_entry
from heatledger.job.load import read_job
from heatledger.papers.findings_by_sheet import findings_of
from heatledger.steps.design import Design, design
from heatledger.steps.review.kinds import KINDS, usual
from heatledger.studies.startup_limits import StartupLimits
from heatledger.studies.startup_lines import Line, off_target, stands_first, startup_figures, startup_lines

FERROW, TAMM, LERCH = "ferrow-house", "tamm-street", "lerch-cottage"
CLEAN = {
    "combustion/oxygen": "4.5 %", "combustion/carbon_monoxide": "40 ppm",
    "combustion/draft": "-0.03 in. w.c.", "combustion/room_carbon_monoxide": "0 ppm",
    "combustion/spillage": "none",
}  # fmt: skip


@cache
def text_of(name: str) -> str:
    return files("heatledger").joinpath("examples", f"{name}.yaml").read_text("utf-8")


def started(name: str, readings: dict[str, str], limits: dict[str, str] | None = None) -> Design:
    text = text_of(name)
    for path, typed in readings.items():
        text = set_entry(text, f"readings/{path}", typed)
    for path, typed in (limits or {}).items():
        text = set_entry(text, f"limits/{path}", typed)
    return design(read_job(text, "test"))


def lines_of(house: Design) -> dict[str, Line]:
    return {each.path.removeprefix("readings/"): each for each in startup_lines(house)}


def number(low: float, high: float, unit: str) -> st.SearchStrategy[str]:
    return st.floats(low, high).map(lambda each: f"{each:.3f} {unit}")


READINGS = st.fixed_dictionaries(
    {
        "test_pressure": number(60, 140, "psi"), "precharge": number(12, 15, "psi"),
        "cold_pressure": number(10, 17, "psi"), "supply": number(125, 150, "°F"),
        "return": number(95, 140, "°F"), "flow": number(2, 7, "gpm"), "hot_pressure": number(12, 32, "psi"),
        "combustion/oxygen": number(1, 12, "%"), "combustion/carbon_monoxide": number(0, 500, "ppm"),
        "combustion/room_carbon_monoxide": number(0, 80, "ppm"),
        "combustion/draft": number(-0.02, 0.02, "in. w.c."),
        "combustion/spillage": st.sampled_from(["none", "some"]),
    }
)  # fmt: skip


@settings(max_examples=12)
@given(READINGS)
def test_a_line_is_outside_where_the_review_finds_its_reading_off(readings: dict[str, str]) -> None:
    house = started(FERROW, readings)
    lines = lines_of(house)
    assert set(readings) <= set(lines)
    found = {each.where.removeprefix("readings/") for each in findings_of(house, 7)} & set(lines)
    assert {path for path, each in lines.items() if each.is_outside} == found


@pytest.mark.parametrize(
    ("draft", "outside"), [("-0.03", False), ("-0.01", True), ("0.01", True), ("-0.06", True)]
)
def test_a_chimney_has_a_weakest_and_a_strongest_draft(draft: str, outside: bool) -> None:
    house = started(TAMM, CLEAN | {"combustion/draft": f"{draft} in. w.c."})
    assert lines_of(house)["combustion/draft"].is_outside is outside
    assert house.startup.startup.may_run is not outside


def test_the_limits_are_those_of_the_review() -> None:
    house = started(FERROW, {})
    limits = StartupLimits(house.job)
    for kind, own in {
        "tank-charge-unread": limits.charge, "cold-gauge-off": limits.fill,
        "hot-gauge-high": limits.below_relief, "supply-off-the-curve": limits.supply,
        "flow-measured-off": limits.flow, "co-in-flue-high": limits.flue_co,
        "room-co-found": limits.room_co, "flue-gas-spills": limits.draft[0],
    }.items():  # fmt: skip
        assert float(own) == pytest.approx(usual(KINDS[kind].limits[0])), kind


def test_the_jobs_own_limit_counts_but_none_lets_more_poison_pass() -> None:
    own = {"cold-gauge-off": "3 psi", "room-co-found": "30 ppm", "co-in-flue-high": "60 ppm"}
    limits = StartupLimits(started(FERROW, {}, own).job)
    usual_ones = StartupLimits(started(FERROW, {}).job)
    assert float(limits.fill) == pytest.approx(3 * float(usual_ones.fill))
    assert float(limits.room_co) == float(usual_ones.room_co)
    assert float(limits.flue_co) == pytest.approx(0.6 * float(usual_ones.flue_co))


def test_what_stands_first_is_read_first_and_then_what_is_off() -> None:
    def first(**changed: str) -> str:
        house = started(FERROW, CLEAN | changed)
        line = stands_first(house, startup_lines(house))
        return "" if line is None else line.path.removeprefix("readings/combustion/")

    assert first() == ""
    empty = started(FERROW, {})
    line = stands_first(empty, startup_lines(empty))
    assert line is not None
    assert line.path == "readings/combustion/oxygen"
    assert first(**{"combustion/draft": ""}) == "draft"
    assert first(**{"combustion/draft": "", "combustion/spillage": "some"}) == "spillage"


@pytest.mark.parametrize(
    ("back", "flow", "agrees"), [("105 °F", "2.5 gpm", True), ("105 °F", "6.5 gpm", False)]
)
def test_a_far_drop_and_little_flow_are_one_fault(back: str, flow: str, agrees: bool) -> None:
    house = started(FERROW, {"return": back, "flow": flow})
    found = off_target(findings_of(house, 7), startup_lines(house))
    by_id = {each.finding.id: each for each in found}
    assert "drop-measured-off" in by_id
    assert bool(by_id["drop-measured-off"].agrees) is agrees
    assert ("flow-measured-off" in by_id) is not agrees
    assert len(by_id["drop-measured-off"].lines) == 1 + agrees


@pytest.mark.parametrize(
    ("name", "lacks"), [(FERROW, set()), (LERCH, set()), (TAMM, {"test_pressure", "precharge"})]
)
def test_only_what_this_job_has_a_use_for_is_asked(name: str, lacks: set[str]) -> None:
    asked = set(lines_of(started(name, {})))
    assert lacks.isdisjoint(asked)
    assert {"cold_pressure", "combustion/oxygen", "supply", "hot_pressure"} <= asked
    assert ("test_pressure" in asked) is ("test_pressure" not in lacks)


def test_what_is_on_file_is_shown_even_where_it_was_not_asked_for() -> None:
    electric = text_of(FERROW).replace("fuel: natural gas", "fuel: electricity")
    assert electric != text_of(FERROW)
    house = design(read_job(electric, "test"))
    assert "combustion/oxygen" not in lines_of(house)
    with_room = set_entry(electric, "readings/combustion/room_carbon_monoxide", "40 ppm")
    found = lines_of(design(read_job(with_room, "test")))
    assert found["combustion/room_carbon_monoxide"].is_outside


def test_targets_follow_what_was_measured() -> None:
    cool, warm = (lines_of(started(FERROW, {"supply": each}))["return"] for each in ("120 °F", "150 °F"))
    assert cool.target.figures[0] != warm.target.figures[0]
    assert float(cool.target.figures[0]) < float(warm.target.figures[0])


def test_every_figure_of_a_target_is_found_by_its_path() -> None:
    house = started(FERROW, {})
    found = startup_figures(house)
    assert "startup/targets/oxygen-least" in found
    assert "startup/targets/fill" in found
    for line in startup_lines(house):
        for figure in line.target.figures:
            path = house.names.path(figure)
            assert found[path] is figure or float(found[path]) == float(figure)
