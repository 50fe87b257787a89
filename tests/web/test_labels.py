"""Claim: what stands beside a figure on a sheet is true of it, in all units and for the barest jobs."""

from __future__ import annotations

import re
from collections import Counter
from html import unescape
from urllib.parse import parse_qs, urlsplit

import pytest

from heatledger.drawings.matters_chart import what_matters
from heatledger.job.begin import boiler_replacement, filled, three_numbers
from heatledger.job.edits import set_entry
from heatledger.job.load import read_job
from heatledger.job.model import Job
from heatledger.ledger.presets import PRESETS, US, Preset
from heatledger.web.demo import demo_text
from heatledger.web.drawing import drawn
from tests.web.page_of import demo, designed, full, made_page, wrong_entry

DEMO = demo_text("ferrow-house")


def sheet(job: Job, name: str, units: str = "us", **more: object) -> dict[str, str]:
    """The fragments of a sheet by their places, as markup."""
    return drawn(made_page(job, units, sheet=name, **more))


def words(html: str) -> str:
    """What a reader reads of some markup."""
    bare = re.sub(r"(?s)<svg.*?</svg>|<[^>]*>", " ", html)
    return re.sub(r"\s+", " ", unescape(bare)).strip()


def words_after(html: str, path: str) -> str:
    """What stands right behind the figure of a path."""
    return words(html[html.index(f'value="{path}') - 30 :][:500])


def whole(parts: dict[str, str]) -> str:
    """A sheet as one piece of markup."""
    return "\n".join(parts.values())


def test_a_crude_estimate_has_no_stroke_before_it_and_opens() -> None:
    typed = {"heated_floor_area": "1600 ft²", "site/outdoor": "0 °F", "site/indoor": "70 °F"}
    job = read_job(filled(three_numbers(US), typed))
    for name, place in (("house", "left:first-room"), ("heat-loss", "right:crude")):
        html = sheet(job, name)[place]
        assert "33,600" in html and "–" not in words(html), name
        for path in ("figure", "low", "high"):
            assert f'name="open" value="crude/{path}"' in html


@pytest.mark.parametrize("units", ["us", "metric", "canadian"])
def test_the_table_of_a_chart_says_of_a_share_what_its_sentence_says(units: str) -> None:
    html = sheet(demo(), "heat-loss", units)["right:chart-where-the-heat-goes"]
    shares = re.findall(r'value="house/causes/[a-z]+/share"[^>]*>([^<]*)<', html)
    assert len(shares) == 6 and all(re.fullmatch(r"\d+ %", each) for each in shares)
    assert shares[0] in words(html).partition("lead")[0]


@pytest.mark.parametrize(("units", "unit"), [("us", "Cv"), ("metric", "Kv"), ("canadian", "Cv")])
def test_the_setting_of_a_balancing_valve_stands_under_its_own_unit(units: str, unit: str) -> None:
    # The cottage has no zone valve to take the unit from.
    html = sheet(read_job(demo_text("lerch-cottage")), "piping", units)["left:circuit-manifold"]
    assert f"Balancing, {unit}</th>" in html


def test_a_room_that_gets_all_it_needs_is_not_short() -> None:
    parts = sheet(read_job(demo_text("tamm-street")), "emitters")
    assert "just right" in parts["left:rooms"]
    assert "Just right" in parts["right:lead"] and "Short" not in parts["right:lead"]


def test_how_much_a_room_is_short_has_no_sign_of_its_own() -> None:
    said = words(sheet(demo(), "emitters")["right:lead"])
    assert re.search(r"Short 958\b", said), said


def test_rooms_with_emitters_are_counted_and_not_the_others() -> None:
    text = re.sub(r"(?ms)^(circuits|what-ifs):.*?(?=^\S|\Z)", "", DEMO)
    text = re.sub(r"(?m)^  (?!hall-base|study-base)[a-z0-9-]+-base:.*\n", "", text)
    parts = sheet(read_job(text), "emitters")
    assert "2 emitters in 2 rooms" in words(parts["left:water"])
    assert "carries every room with an emitter" in words(parts["left:lowest"])
    one = sheet(read_job(demo_text("tamm-street")), "emitters")
    assert "10 emitters in 1 room" in words(one["left:water"]) and "1 rooms" not in whole(one)


@pytest.mark.parametrize("name", ["ferrow-house", "lerch-cottage", "tamm-street"])
def test_the_head_of_emitters_and_its_chart_count_the_same_rooms(name: str) -> None:
    parts = sheet(read_job(demo_text(name)), "emitters")
    carried, among = re.findall(r"<b>(\d+) of (\d+)</b> carried", parts["left:water"])[0]
    said = words(parts["left:chart-water-by-room"])
    assert (f"{carried} of {among} rooms are carried" in said) or (
        carried == among and "every room is" in said
    )


@pytest.mark.parametrize("units", ["us", "metric"])
def test_the_slider_of_the_water_runs_as_far_as_the_rule_below_it(units: str) -> None:
    for text in (DEMO, set_entry(DEMO, "plant/supply", "230 °F")):
        parts = sheet(read_job(text), "emitters", units)
        low, high = map(int, re.findall(r'min="(-?\d+)" max="(\d+)"', parts["left:water"])[0])
        at = int(re.findall(r'step="1" value="(\d+)"', parts["left:water"])[0])
        drawn_at = [int(each) for each in re.findall(r">(\d+)</text>", parts["left:chart-water-by-room"])]
        assert low <= min(drawn_at) and max(drawn_at) <= high and low <= at <= high
    bare = boiler_replacement(US) + "emitters:\n  one: {name: One, room: house, kind: panel radiator}\n"
    assert "data-trial" not in sheet(read_job(bare), "emitters", units)["left:water"]


def test_what_is_waited_for_leads_to_its_entry() -> None:
    job = read_job(boiler_replacement(US))
    links = re.findall(r'<a href="([^"]*)"', sheet(job, "heat-loss")["right:waits"])
    assert links
    for link in map(unescape, links):
        address = urlsplit(link)
        path, pick = address.fragment.removeprefix("entry="), parse_qs(address.query).get("pick", [""])[0]
        shown = whole(sheet(job, address.path.rpartition("/")[2], picked=pick))
        assert path and f'data-entry="{path}"' in shown and "Not in the job" not in shown, link


@pytest.mark.parametrize("view", ["built", "around", "job"])
def test_a_part_that_stands_on_the_left_is_not_put_on_the_right_again(view: str) -> None:
    picks = {"built": ("constructions", "levels"), "around": ("site", "air", "unheated", "neighbors"),
             "job": ("expectations", "limits", "ranges", "codes")}[view]  # fmt: skip
    for pick in picks:
        html = whole(sheet(full(), "house", view=view, picked=pick))
        twice = [id for id, count in Counter(re.findall(r' id="([^"]*)"', html)).items() if count > 1]
        assert not twice, (pick, twice)


def test_a_fault_that_is_shown_on_both_pages_has_an_id_on_each() -> None:
    wrong = wrong_entry("constructions/wood-door/u_value", "U-x")
    html = whole(sheet(full(), "house", view="built", picked="constructions/wood-door", wrong=wrong))
    found = re.findall(r' id="([^"]*fault-[^"]*)"', html)
    assert len(found) == 2 == len(set(found))


def test_controls_say_that_nothing_is_said_of_the_reset() -> None:
    parts = sheet(read_job(demo_text("tamm-street")), "controls")
    assert "not said yet" in parts["left:head"] and "all winter" not in parts["left:head"]
    assert "What the reset asks for" not in parts["left:reset"]
    fixed = sheet(read_job(set_entry(DEMO, "controls/outdoor_reset", "no")), "controls")
    assert "one supply all winter" in fixed["left:head"]


def test_calls_name_no_valve_and_no_burner_where_there_is_none() -> None:
    text = re.sub(r"(?m)^ +zone_valve:.*\n", "", DEMO)
    text = set_entry(set_entry(text, "plant/boiler/kind", "electric"), "plant/boiler/fuel", "electricity")
    html = sheet(read_job(text), "controls")["left:calls"]
    assert '<th scope="col">Valves</th>' not in html and "Burner" not in html and "fires" not in html
    assert "Elements" in html
    usual = sheet(demo(), "controls")["left:calls"]
    assert "Valves" in usual and "Burner" in usual


def test_an_electric_boiler_holds_its_output_without_a_burner() -> None:
    text = set_entry(set_entry(DEMO, "plant/boiler/kind", "electric"), "plant/boiler/fuel", "electricity")
    electric, usual = (sheet(each, "boiler-room") for each in (read_job(text), demo()))
    place = "right:chart-firing-range"
    assert "urner" not in words(electric[place]) and "What the boiler holds" in electric[place]
    assert "What the burner holds" in usual[place]


@pytest.mark.parametrize("units", PRESETS.values(), ids=list(PRESETS))
def test_the_sentence_of_what_matters_says_the_swing_of_its_first_row(units: Preset) -> None:
    house = designed(demo())
    swings = []
    for path, figure in house.results.items():
        if not path.endswith(("lowest_supply", "temperature")) or figure.is_missing:
            continue
        chart = what_matters(house, units, path)
        if chart is not None:
            swings.append(chart.rows[0][2].text)
            assert f"{swings[-1]} " in chart.sentence, (path, chart.sentence)
    assert any(each.startswith("± 1.") for each in swings)


def test_rooms_stand_below_the_floor_they_are_on() -> None:
    text = DEMO.replace(
        "  kitchen:\n    name: Kitchen\n    level: ground", "  kitchen:\n    name: Kitchen\n    level: upper"
    )
    job = read_job(text)
    assert job.rooms["kitchen"].level.id == "upper"
    html = sheet(job, "heat-loss")["left:rooms"]
    upper = html.index(">Upper floor<")
    for id, room in job.rooms.items():
        at = html.index(f'pick=rooms%2F{id}"')
        assert (at > upper) is (room.level.id == "upper"), room.name


def test_the_value_of_a_construction_is_called_what_it_is_and_keeps_its_unit() -> None:
    text = re.sub(r"f_factor: 0.73 Btu/\(h·ft·°F\)", "catalog: slab-bare", DEMO)
    text = re.sub(
        r"(kind: below-grade wall), r_value: R-1.47", r"\1, catalog: concrete-below-grade-bare", text
    )
    job = read_job(text)
    spaces = {"garage-slab": "garage", "basement-wall": "basement"}
    for id, words, unit in (("garage-slab", "F-factor", "W/(m·K)"), ("basement-wall", "R-value", "m²·K/W")):
        name = job.constructions[id].name
        day = sheet(job, "house", "metric", picked=f"unheated/{spaces[id]}")["left:house-day"]
        lead = sheet(job, "house", "metric", picked=f"constructions/{id}")["right:lead"]
        for html in (day, lead):
            assert f"{name}, {words}" in html and f"{name}, U-value" not in html
            assert unit in words_after(html, f"constructions/{id}/"), id


def test_no_size_of_a_load_is_said_where_there_is_none() -> None:
    said = words(sheet(read_job(boiler_replacement(US)), "boiler-room")["left:from-load"])
    assert "× its load" not in said


def test_a_sentence_of_the_job_file_is_said_without_its_ticks() -> None:
    wrong = wrong_entry("readings/test_pressure", "lots", "`lots` is no pressure.")
    bar = sheet(demo(), "startup", wrong=wrong)["left:bar"]
    mend = sheet(demo(), "house", wrong=wrong)["left:house-mend"]
    assert "lots" in bar and "`" not in bar and "“lots”" in mend
