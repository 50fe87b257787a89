"""Answers that come late: none is put over what was asked for after it."""

from __future__ import annotations

import re

from playwright.sync_api import Page, Route, expect

from tests.browser.doing import copy_of_demo, entry, figure, revision, settled, working

KITCHEN, STUDY = "rooms/kitchen/loss", "rooms/study/loss"
LET_GO = """slider => {
  slider.value = "170";
  slider.dispatchEvent(new Event("input", { bubbles: true }));
}"""


def test_the_last_working_asked_for_is_the_one_that_is_shown(page: Page) -> None:
    held: list[Route] = []
    page.goto(f"{copy_of_demo(page)}/heat-loss")
    page.route(re.compile(r"/working\?.*kitchen"), lambda route: held.append(route))
    with page.expect_request(re.compile(r"/working\?.*kitchen")) as asked:
        figure(page, KITCHEN).click()
    figure(page, STUDY).click()
    expect(working(page, STUDY)).to_be_visible()
    with page.expect_event("requestfinished", lambda done: done == asked.value):
        held[0].continue_()
    settled(page)
    expect(working(page, STUDY)).to_be_visible()
    expect(working(page, KITCHEN)).to_have_count(0)
    assert figure(page, STUDY).get_attribute("aria-expanded") == "true"


def test_a_trial_that_comes_late_is_not_drawn_over_the_edit_it_led_to(page: Page) -> None:
    held: list[Route] = []
    page.goto(f"{copy_of_demo(page)}/emitters")
    settled(page)
    before = revision(page)
    page.route(re.compile(r"/trial\?"), lambda route: held.append(route))
    slider = page.locator("input[data-trial]")
    with page.expect_request(re.compile(r"/trial\?")):
        slider.evaluate(LET_GO)
    slider.dispatch_event("change")
    # Time enough for an edit that does not wait for its turn.
    page.wait_for_timeout(400)
    with page.expect_response(re.compile(r"/edit$")):
        held[0].continue_()
    settled(page)
    assert revision(page) == before + 1
    expect(entry(page, "plant/supply")).to_have_value("170 °F")
    expect(figure(page, "house/supply", "#strip")).to_have_text("170")
