"""Claim: Startup shows every step and reading of the job, says danger first, and holds readings."""

from __future__ import annotations

import re
from functools import cache
from html import unescape

import pytest
from fastapi.testclient import TestClient

from heatledger.job.edits import set_entry
from heatledger.job.load import read_job
from heatledger.job.model import Job
from heatledger.steps.checklist import checklist_of
from heatledger.studies.startup_lines import startup_lines
from heatledger.web.demo import demo_text
from heatledger.web.drawing import Parts, drawn
from heatledger.web.page import Page
from heatledger.web.startup_rows import Rows, line_id
from heatledger.web.states import readings_on_file
from tests.web.browsing import Tab, plain
from tests.web.page_of import made_page

EXAMPLES = ("ferrow-house", "lerch-cottage", "tamm-street")
BARE = "format: 1\nunits: US\nname: Bare house\nsite:\n  outdoor: 0 °F\n  indoor: 70 °F\n"
CLEAN = {
    "oxygen": "4.5 %", "carbon_monoxide": "40 ppm", "draft": "-0.03 in. w.c.",
    "room_carbon_monoxide": "0 ppm", "spillage": "none",
}  # fmt: skip
FIRE = {f"combustion/{key}": typed for key, typed in CLEAN.items()}
OFF = {"return": "105 °F", "flow": "2.5 gpm", "hot_pressure": "28 psi"}


def page_with(name: str, readings: dict[str, str] | None = None, units: str = "us", **more: object) -> Page:
    """Startup of a demo job, or of one without rooms and emitters, with readings."""
    return made_page(job_with(name, tuple((readings or {}).items())), units, sheet="startup", **more)


@cache
def job_with(name: str, readings: tuple[tuple[str, str], ...]) -> Job:
    text = BARE if name == "bare" else demo_text(name)
    for path, typed in readings:
        text = set_entry(text, f"readings/{path}", typed)
    return read_job(text, "test")


def shown(page: Page) -> Parts:
    """The parts of the page, without the ends of their keys."""
    return {key.partition(":")[2]: html for key, html in drawn(page).items()}


def words(parts: Parts, of: str = "") -> str:
    return plain(" ".join(html for key, html in parts.items() if key.startswith(of)))


@pytest.mark.parametrize("units", ["us", "metric", "canadian"])
@pytest.mark.parametrize("name", [*EXAMPLES, "bare"])
def test_every_step_and_reading_stands_once_in_every_preset(name: str, units: str) -> None:
    page = page_with(name, units=units)
    parts = shown(page)
    html, steps = parts_html(parts), list(enumerate(checklist_of(page.house), 1))
    rows = re.findall(r'<tr class="step[^>]*>\s*<td class="n">(\d+)</td>.*?<b>(.*?)</b>', html, re.DOTALL)
    assert [(int(no), unescape(title)) for no, title in rows] == [
        (number, step.title) for number, step in steps if step.applies
    ]
    for number, step in steps:
        assert step.applies or f"{number} {step.title}" in unescape(words(parts, "steps")), "of no use here"
    for line in startup_lines(page.house):
        assert html.count(f'data-entry="{line.path}"') == 1, line.path
        assert html.count(f'id="{line_id(line)}"') == 1
    assert "None" not in words(parts)


def parts_html(parts: Parts) -> str:
    return "".join(html for key, html in parts.items() if key.startswith("steps"))


def test_ids_stand_once_on_the_page() -> None:
    html = "".join(shown(page_with("ferrow-house", OFF)).values())
    ids = re.findall(r'\bid="([^"]+)"', html)
    assert len(ids) == len(set(ids)), [each for each in ids if ids.count(each) > 1]


@pytest.mark.parametrize("name", EXAMPLES)
def test_danger_is_said_above_everything_until_the_fire_is_read_and_clean(name: str) -> None:
    before = page_with(name)
    first = Rows(before).first
    assert first is not None
    above = shown(before)["above"]
    assert "Do not leave it running." in above
    assert f'href="#{first.id}"' in above
    assert f"Read line {first.number}" in above
    assert first.words == "Oxygen"
    after = shown(page_with(name, FIRE))["above"]
    assert "Do not leave it running" not in after
    assert "read and clean" in after


def test_poison_is_said_first_and_its_line_is_named() -> None:
    page = page_with("ferrow-house", FIRE | {"combustion/room_carbon_monoxide": "40 ppm"})
    above = words(shown(page), "above")
    assert "Readings report poison. First of all: a room without carbon monoxide" in above
    row = Rows(page).first
    assert row is not None
    assert row.line.path.endswith("room_carbon_monoxide")
    assert f"Read line {row.number}" in above


def test_without_a_boiler_the_link_leads_to_one() -> None:
    above = shown(page_with("bare"))["above"]
    assert "Do not leave it running." in above
    assert "/boiler-room?pick=plant/boiler" in above.replace("%2F", "/")


def test_running_waits_until_the_fire_is_read() -> None:
    assert "later" in shown(page_with("ferrow-house"))["steps-running"].split(">")[1]
    html = shown(page_with("ferrow-house", FIRE))["steps-running"]
    assert 'class="stage"' in html
    assert "after the fire is read" not in html


def test_a_reading_off_its_target_is_tinted_with_a_triangle_and_words() -> None:
    page = page_with("ferrow-house", OFF)
    html = shown(page)["steps-running"]
    for id in ("line-return", "line-flow", "line-hot-pressure"):
        row = html.partition(f'id="{id}"')[2].partition("</tr>")[0]
        before = html.partition(f'id="{id}"')[0].rpartition("<tr")[2]
        assert "is-outside" in before
        assert 'class="mark must"' in row
        assert "out of target" in row
        assert "outside the target" in row, "the gauge says so too"
    assert "3 out of target" in plain(html)
    fine = html.partition('id="line-supply"')
    assert "is-outside" not in fine[0].rpartition("<tr")[2]
    assert 'class="mark fine"' in fine[2].partition("</tr>")[0]


def test_likely_causes_stand_in_the_order_of_the_review_and_once() -> None:
    page = page_with("ferrow-house", OFF)
    parts = shown(page)
    causes, rest = words(parts, "causes"), words(parts, "questions")
    assert causes.index("The gauge climbs") < causes.index("The water drops by")
    assert causes.index("scalding water") < causes.index("The gauge climbs"), "what can hurt comes first"
    assert "Another reading agrees. The meter reads" in causes
    assert parts["causes"].count('class="cause"') == 2
    assert "never certain" in causes
    assert "%" not in causes.partition("Held to")[0], "how likely is never a percentage"
    assert "The meter reads" not in rest
    assert "A measurement of oxygen" in rest
    assert words(shown(page_with("ferrow-house")), "causes") == ""


def test_what_waits_for_findings_follows_the_answer() -> None:
    page = page_with("ferrow-house", OFF, ready=False)
    parts = shown(page)
    assert plain(parts["causes"]) == ""
    assert plain(parts["questions"]) == "Open questions follow."
    assert "Do not leave it running." in parts["above"], "danger does not wait"


def test_the_bar_has_each_reading_that_is_not_on_file_and_the_next_one_first() -> None:
    page = page_with("ferrow-house", {"test_pressure": "100 psi", "precharge": "13.2 psi"})
    bar = shown(page)["bar"]
    forms = re.findall(r"<form[^>]*data-bar=\"([^\"]+)\"[^>]*?( hidden)?>", bar)
    assert [path for path, _ in forms] == [row.line.path for row in Rows(page).unread]
    assert forms[0] == ("readings/cold_pressure", "")
    assert all(hidden for _, hidden in forms[1:])
    assert "data-entry" not in bar, "the entry of a row stands once"


def test_a_group_counts_what_is_read_and_says_when_it_is_done() -> None:
    readings = {"test_pressure": "100 psi", "precharge": "13.2 psi"}
    part = shown(page_with("ferrow-house", readings))["steps-before"]
    assert "2 of 3 read" in plain(part)
    assert 'data-done="no"' in part
    part = shown(page_with("ferrow-house", readings | {"cold_pressure": "13.2 psi"}))["steps-before"]
    assert "3 of 3 read" in plain(part)
    assert 'data-done="yes"' in part
    off = shown(page_with("ferrow-house", readings | {"cold_pressure": "3 psi"}))["steps-before"]
    assert 'data-done="no"' in off


def test_the_count_of_the_page_is_that_of_the_index() -> None:
    page = page_with("ferrow-house", FIRE)
    read, among = readings_on_file(page.house)
    assert f"{read} of {among} read" in words(shown(page), "head")
    assert among == 2 + len(startup_lines(page.house))
    assert read == 2 + 1 + len(CLEAN)


def test_a_relief_valve_that_nobody_gave_is_no_figure() -> None:
    text = re.sub(r"(?m)^ +relief:.*\n", "", demo_text("ferrow-house"))
    assert text != demo_text("ferrow-house")
    steps = words(shown(made_page(read_job(text, "test"), sheet="startup")), "steps")
    assert "Set for what its plate says" in steps
    assert "below the relief valve at what its plate says" in steps


def test_every_figure_of_the_steps_opens(client: TestClient) -> None:
    tab = Tab(client, "startup")
    left = tab.text.partition('id="left-parts"')[2].partition('id="right"')[0]
    paths = set(re.findall(r'name="open" value="([^"]+)"', left))
    assert {"startup/targets/oxygen-least", "startup/test_pressure", "startup/fire_drop"} <= paths
    for path in paths:
        answer = client.get("/jobs/ferrow-house/working", params={"open": path, "sheet": "startup"})
        assert answer.status_code == 200
        assert "No such figure" not in answer.text, path


def test_a_reading_typed_brings_the_parts_that_it_changes(client: TestClient) -> None:
    tab = Tab(client, "startup")
    answer = tab.set("readings/cold_pressure", "12.9")
    assert answer.status == 200
    assert "12.9 psi" in answer.parts["steps-before"]
    assert "is-inside" in answer.parts["steps-before"]
    assert "steps-safeties" not in answer.parts
    assert "readings/cold_pressure" not in answer.parts["bar"]
    wrong = tab.set("readings/flow", "plenty")
    assert "fault-readings-flow" in wrong.parts["steps-running"]
    ids = re.findall(r'id="(fault-[^"]+)"', Tab(client, "startup").text)
    assert ids == ["fault-readings-flow"]


def test_targets_follow_a_supply_that_was_read(client: TestClient) -> None:
    tab = Tab(client, "startup")
    answer = tab.set("readings/supply", "120 °F")
    lead = answer.parts["lead"]
    assert '<span class="was"><s>126</s></span>' in lead, "the old return is struck beside the new"


def test_the_next_revision_is_asked_for_cheaply(client: TestClient) -> None:
    first = client.get("/jobs/ferrow-house/rev").json()["rev"]
    Tab(client, "startup").set("readings/flow", "4 gpm")
    assert client.get("/jobs/ferrow-house/rev").json() == {"rev": first + 1}
    assert client.get("/jobs/nowhere/rev").status_code == 404


def test_user_text_is_never_markup() -> None:
    text = demo_text("ferrow-house").replace("by: J. Ondry", "by: <script>alert(1)</script>", 1)
    assert text != demo_text("ferrow-house")
    html = "".join(shown(made_page(read_job(text, "test"), sheet="startup")).values())
    assert "<script" not in html
