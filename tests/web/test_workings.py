"""Claim: every figure opens, every figure inside a working opens, and nothing of it breaks a strict page."""

from __future__ import annotations

import re
from functools import cache
from html import unescape

import pytest
from benchmarks.twenty_rooms import job_text

from heatledger.job.load import read_job
from heatledger.ledger.figures import original_of, waits_for
from heatledger.ledger.presets import CANADIAN, METRIC, US
from heatledger.steps.design import Design, NoSuchFigure, design
from heatledger.web.inner_paths import SIDES, figure_at, inside
from heatledger.web.workings import working_html
from tests.ledger.test_renderings import Reader
from tests.steps.heated import EXAMPLES, job_of

PRESETS = (US, METRIC, CANADIAN)
OPENS = re.compile(r'name="open" value="([^"]*)"')
EVERY = 29
CRUDE = """format: 1
units: US
heated_floor_area: 1600 ft2
site: {outdoor: -2 °F, indoor: 70 °F, elevation: 300 ft}
"""


@cache
def house_of(name: str) -> Design:
    return design(job_of(name) if name in EXAMPLES else read_job(job_text()))


def opens(html: str) -> set[str]:
    return {unescape(each) for each in OPENS.findall(html)}


def sound(html: str) -> None:
    reader = Reader(re.sub(r"<svg.*?</svg>", "", html, flags=re.DOTALL))
    assert reader.open == []
    for name in ("style", "onclick"):
        assert name not in reader.names
    assert "<style" not in html and " style=" not in html and "<script" not in html
    assert "no figure at" not in html


@pytest.mark.parametrize("preset", PRESETS, ids=lambda each: each.name)
@pytest.mark.parametrize("name", EXAMPLES)
def test_figures_open_in_every_preset(name, preset):
    house = house_of(name)
    for path in [*list(house)[::EVERY], "house/loss", "plant/efficiency"]:
        if path in house:
            sound(working_html(house, path, preset))


@pytest.mark.slow
@pytest.mark.parametrize(("name", "preset"), list(zip(EXAMPLES, PRESETS, strict=True)))
def test_every_figure_opens(name, preset):
    """All of them, each house for one reader; a sample of all is opened for every reader above."""
    house = house_of(name)
    for path in house:
        sound(working_html(house, path, preset))


@pytest.mark.slow
@pytest.mark.parametrize("name", ["lerch-cottage"])
def test_every_path_that_is_met_opens(name):
    house = house_of(name)
    met, todo = set(house), list(house)
    while todo:
        html = working_html(house, todo.pop(), US)
        assert "no figure at" not in html
        new = opens(html) - met
        met |= new
        todo += new
    assert len(met) > len(house.figures)


@pytest.mark.parametrize("name", EXAMPLES)
def test_a_button_opens_the_very_figure_it_shows(name):
    house = house_of(name)
    paths = ["house/loss", "house/lowest_supply", "plant/tank_volume"]
    paths += [each for each in house if each.endswith("/actual_flow")][:3]
    for path in filter(house.__contains__, paths):
        shown = opens(working_html(house, path, US))
        figure = house.figures[path]
        within = [each for step, each in inside(figure) if step not in SIDES]  # both sides stand open
        below = {id(original_of(each)) for each in waits_for(figure) or within}
        assert below and below <= {id(figure_at(house, each)) for each in shown}


def test_an_inner_result_opens_under_the_figure_that_shows_it():
    house = house_of("ferrow-house")
    path = "circuits/ground/runs/living-base/actual_flow"
    inner = [each for each in opens(working_html(house, path, US)) if "~" in each]
    assert inner
    for each in inner:
        figure = figure_at(house, each)
        assert f'data-path="{each}"' in working_html(house, each, US)
        assert house.names.title(figure) in unescape(working_html(house, each, US))
    with pytest.raises(NoSuchFigure):
        figure_at(house, f"{path}~no-such-step")


def test_a_thing_opens_its_loss_and_an_entry_what_was_typed():
    house = house_of("ferrow-house")
    assert 'data-path="rooms/kitchen/loss"' in working_html(house, "rooms/kitchen", US)
    assert 'typed: "-2 °F"' in unescape(working_html(house, "site/outdoor", US))
    fuel = working_html(house, "plant/boiler/fuel", US)
    assert house.job.raw["plant"]["boiler"]["fuel"] in fuel and "An entry of the job" in fuel
    rows = [each for each in house if each.startswith("catalog/")]
    assert rows and "catalog" in working_html(house, rows[0], US)


def test_a_path_that_leads_nowhere_says_so_and_offers_the_nearest():
    html = working_html(house_of("ferrow-house"), "rooms/kitchn/loss", US)
    assert "There is no figure at “rooms/kitchn/loss”" in html
    assert "rooms/kitchen/loss" in opens(html)
    nasty = working_html(house_of("ferrow-house"), '<script>"x', US)
    assert "<script>" not in nasty and "&lt;script&gt;" in nasty


def test_callout_trail_band_and_uses():
    house = house_of("ferrow-house")
    html = working_html(house, "rooms/kitchen/loss", US, (2, 3), ("house/loss", "no/such"))
    assert 'aria-label="Sheet 2, line 3"' in html
    assert "Back to" in html and "house/loss" in opens(html)
    assert "Likely 3,250 to 3,810 Btu/h. If our inputs are off" in html
    assert "What matters most" in html and "and 12 smaller" in html
    assert "If our inputs" not in working_html(house, "rooms/kitchen/loss", US, explain=False)
    assert {"house/loss", "levels/ground/loss"} <= opens(html)
    assert "fuel bills" in working_html(house, "house/loss", US)


def test_the_kinds_of_arithmetic_are_told_apart():
    house = house_of("ferrow-house")
    power = working_html(house, "site/pressure", US)
    assert "<sup>" in power and "to the power" in power
    either = working_html(house, "emitters/living-base/load", US)
    assert re.search(r'the larger of .*and <span class="lost">', either)
    between = working_html(house, "plant/efficiency", US)
    assert "Read between two rows" in between
    assert ">0.863</button>" in between and ">0.859</button>" in between
    balance = working_html(house, "circuits/ground/runs/living-base/actual_flow", US)
    assert (
        "One side" in balance
        and "Other side" in balance
        and "One side less the other leaves 0 ft." in balance
    )
    chosen = working_html(house, "house/lowest_supply", US)
    assert '<li class="lost">beside it Living room: <button' in chosen


def test_the_crude_estimate_opens_and_says_what_it_is():
    house = design(read_job(CRUDE))
    html = working_html(house, "crude/figure", US)
    sound(html)
    assert "A crude estimate" in html and "not for a permit" in html
    assert "judgment" in html
    assert {"heated_floor_area", "site/indoor", "site/outdoor"} <= opens(html)
    for each in opens(html):
        sound(working_html(house, each, US))
    assert "no figure at" in working_html(house_of("ferrow-house"), "crude/figure", US)
