"""Claim: readings are typed at the desk and on a phone, one by one, and each is seen on the other."""

from __future__ import annotations

from playwright.sync_api import Page, expect

from tests.browser.doing import settled, type_in
from tests.browser.harness import PHONE, Pages, until

STARTUP = "/jobs/ferrow-house/startup"
READ = (
    ("oxygen", "4.5 %"), ("carbon_monoxide", "40 ppm"), ("spillage", "none"), ("draft", "0.02 in. w.c."),
    ("room_carbon_monoxide", "0 ppm"),
)  # fmt: skip
"""What lifts the warning, in the order in which it is asked for."""
BAR = "form[data-bar]:not([hidden])"


def keep(page: Page, typed: str) -> None:
    """Type what the bar asks for, and go to the next reading."""
    field = page.locator(f"{BAR} input[name=value]")
    field.fill(typed)
    page.locator(BAR).get_by_role("button", name="Keep, next").click()
    settled(page)


def asked_for(page: Page) -> str:
    """The reading that the bar asks for."""
    return page.locator(BAR).get_attribute("data-bar") or ""


def test_a_phone_takes_one_reading_after_the_other(pages: Pages, fresh_app: object) -> None:
    page = pages.new(PHONE)
    page.goto(STARTUP)
    expect(page.locator(BAR)).to_contain_text("Tested at")
    expect(page.locator("tr.next")).to_have_attribute("id", "line-test-pressure")
    keep(page, "100 psi")
    assert asked_for(page) == "readings/precharge"
    field = page.locator(f"{BAR} input[name=value]")
    expect(field).to_be_focused()
    expect(field).to_have_value("")
    keep(page, "13.2 psi")
    keep(page, "13.2 psi")
    done = page.locator('details[data-stage="before"]')
    expect(done).not_to_have_attribute("open", "")
    expect(done).to_contain_text("3 of 3 read")
    expect(page.locator('details[data-stage="fire"]')).to_have_attribute("open", "")
    page.locator(BAR).get_by_role("button", name="Not now").click()
    assert asked_for(page) == "readings/combustion/carbon_monoxide"
    page.get_by_role("link", name="Read line").click()
    until(page, "document.activeElement.dataset.entry === 'readings/combustion/oxygen'")
    keep_wrong(page)


def keep_wrong(page: Page) -> None:
    """What cannot be read stays in the bar, with what is wrong."""
    keep(page, "plenty")
    assert asked_for(page) == "readings/combustion/carbon_monoxide"
    expect(page.locator(f"{BAR} .fault")).to_be_visible()
    keep(page, "40 ppm")
    assert asked_for(page) != "readings/combustion/carbon_monoxide"


def test_a_reading_typed_elsewhere_appears_when_the_page_is_looked_at(
    pages: Pages, fresh_app: object
) -> None:
    desk, boiler_room = pages.new(), pages.new(PHONE)
    desk.goto(STARTUP)
    boiler_room.goto(STARTUP)
    type_in(boiler_room, "readings/flow", "2.5 gpm", "#left")
    settled(boiler_room)
    expect(desk.locator("#line-flow input")).to_have_value("")
    desk.evaluate("window.dispatchEvent(new Event('focus'))")
    expect(desk.locator("#line-flow input")).to_have_value("2.5 gpm")
    expect(desk.locator("#line-flow")).to_contain_text("out of target")
    expect(desk.locator("#causes")).to_contain_text("The meter reads 2.5 gpm")
    half = desk.locator("#line-return input")
    half.focus()
    half.press_sequentially("12")
    type_in(boiler_room, "readings/flow", "4.4 gpm", "#left")
    settled(boiler_room)
    desk.evaluate("window.dispatchEvent(new Event('focus'))")
    desk.wait_for_timeout(300)
    expect(half).to_have_value("12")
    half.fill("126 °F")
    half.press("Enter")
    settled(desk)
    expect(desk.locator("#line-flow input")).to_have_value("4.4 gpm")


def test_the_line_that_lifts_the_warning_is_one_step_away(page: Page, fresh_app: object) -> None:
    page.goto(STARTUP)
    above, later = page.locator("#above"), page.locator('details[data-stage="running"]')
    expect(above).to_contain_text("Do not leave it running.")
    expect(later).to_have_class("stage later")
    for path, typed in READ:
        page.get_by_role("link", name="Read line").click()
        entry = f"readings/combustion/{path}"
        assert page.evaluate("document.activeElement.dataset.entry") == entry
        if path == "spillage":
            page.locator(f'[data-entry="{entry}"]').select_option(typed)
        else:
            type_in(page, entry, typed, "#left")
        settled(page)
    expect(above).to_contain_text("read and clean")
    expect(later).to_have_class("stage")
