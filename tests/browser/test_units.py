"""The three presets: one click turns every sheet, and nothing of the other system is left on it."""

from __future__ import annotations

import re

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.browser.doing import asked, copy_of_demo, entry, figure, number, type_in, working
from tests.browser.harness import JOB, SHEETS, App, Pages, address_of

INCH_POUND = re.compile(r"\d[\d,.]* ?(Btu|ft²|ft³|gpm|psi|°F)\b")
METRIC_ONLY = re.compile(r"\d[\d,.]* ?(W|kW|m²|m³|L/min|kPa|°C|bar)(?![\w/·])")


@pytest.fixture(scope="module")
def job(browser: Browser, app: App) -> str:
    """The address of the demo job, without a sheet."""
    pages = Pages(browser, app)
    found = address_of(pages.new(), JOB)
    assert pages.close() == []
    return found


def figures_of(page: Page) -> str:
    """The words of the sheet without what the user typed and what catalogs and sources are called."""
    return page.evaluate(
        """() => [...document.querySelectorAll("#strip, main button.fig, main .unit, main thead")]
          .map((each) => each.innerText + " " + (each.getAttribute("aria-label") || "")).join(" | ")"""
    )


def switch(page: Page, units: str) -> None:
    """Turn this device to other units by the switch of the sheet."""
    page.locator("#index .units").click()
    page.get_by_role("button", name=units, exact=True).click()


@pytest.mark.parametrize("sheet", SHEETS)
def test_every_sheet_turns_to_metric_and_back(page: Page, job: str, sheet: str) -> None:
    page.goto(f"{job}/{sheet}")
    before = figures_of(page)
    assert not METRIC_ONLY.findall(before)
    switch(page, "Metric")
    expect(page.locator("#index .units")).to_have_text("m, °C")
    assert f"{job}/{sheet}" in page.url
    metric = figures_of(page)
    assert not INCH_POUND.findall(metric), INCH_POUND.findall(metric)
    assert METRIC_ONLY.search(metric)
    switch(page, "US")
    expect(page.locator("#index .units")).to_have_text("ft, °F")
    assert figures_of(page) == before


def test_the_same_figure_in_three_presets(page: Page, job: str) -> None:
    page.goto(f"{job}/heat-loss?open=house/loss")
    load = figure(page, "house/loss", "#strip")
    us = number(load.inner_text())
    switch(page, "Metric")
    expect(working(page, "house/loss")).to_contain_text("W")
    assert asked(page, "open") == "house/loss"
    metric = number(load.inner_text())
    watts = metric * (1000 if "kW" in page.locator("#strip").inner_text() else 1)
    assert watts == pytest.approx(us * 0.29307, rel=0.01)
    switch(page, "Canadian")
    text = page.locator("#strip").inner_text()
    assert "°C" in text
    assert "Btu/h" in text


def test_what_was_typed_stays_in_the_users_words(page: Page) -> None:
    job = copy_of_demo(page)
    page.goto(f"{job}/house")
    switch(page, "Metric")
    expect(entry(page, "site/indoor", "#left")).to_have_value("70 °F")
    type_in(page, "site/indoor", "20", "#left")
    expect(entry(page, "site/indoor", "#left")).to_have_value("20 °C")
    switch(page, "US")
    expect(entry(page, "site/indoor", "#left")).to_have_value("20 °C")
    figure(page, "house/loss", "#strip").click()
    page.goto(f"{job}/house?open=site/indoor")
    expect(page.locator("#working .answer")).to_contain_text("68")
