"""Startup in the boiler room: readings typed on a tablet and on a phone, targets that follow."""

from __future__ import annotations

import re
from collections.abc import Callable

from playwright.sync_api import Page, expect

from tests.browser.doing import copy_of_demo, entry, focused, number, revision, settled, type_in
from tests.browser.harness import PHONE, TABLET, App, Pages, too_wide


def test_readings_are_typed_on_a_tablet_and_targets_follow(pages: Pages) -> None:
    page = pages.new(TABLET, has_touch=True)
    job = copy_of_demo(page)
    page.goto(f"{job}/startup")
    assert too_wide(page) == []
    expect(page.locator("#left")).to_contain_text("Do not leave it running")
    before = page.locator("#left .head .side").inner_text()
    assert re.search(r"\d+ of \d+ read", before)
    fields = page.locator('#left details.stage input[data-entry^="readings/"]:visible')
    blank = [each.get_attribute("data-entry") for each in fields.all() if not each.input_value()]
    outdoors = page.locator("#left .aim").all_inner_texts()
    type_in(page, "readings/outdoor", "40 F", "#left")
    settled(page)
    type_in(page, "readings/room", "68 F", "#left")
    settled(page)
    assert page.locator("#left .aim").all_inner_texts() != outdoors, "no target follows"
    assert blank, "no reading is left to be typed"
    assert revision(page) >= 2


def test_a_reading_out_of_its_target_is_said(pages: Pages) -> None:
    page = pages.new(TABLET)
    job = copy_of_demo(page)
    page.goto(f"{job}/startup")
    row = page.locator("#left tr.reading, #left tr.step").filter(has_text="Oxygen")
    row = row.filter(has=page.locator("input[data-entry]")).first
    path = row.locator("input[data-entry]").first.get_attribute("data-entry") or ""
    expect(row).not_to_have_class(re.compile("is-outside"))
    type_in(page, path, "12 %", "#left")
    settled(page)
    expect(row).to_have_class(re.compile("is-outside"))
    expect(row).to_contain_text("out of target")
    expect(row.locator("xpath=ancestor::details")).to_contain_text("1 out of target")
    expect(page.locator("#left")).to_contain_text("Do not leave it running")
    expect(page.locator("#right")).to_contain_text("oxygen", ignore_case=True)


def test_the_reading_bar_of_a_phone(pages: Pages) -> None:
    page = pages.new(PHONE, has_touch=True)
    job = copy_of_demo(page)
    page.goto(f"{job}/startup")
    assert too_wide(page) == []
    bar = page.locator("form[data-bar]:visible")
    expect(bar).to_have_count(1)
    box = bar.bounding_box()
    assert box is not None and box["y"] + box["height"] <= PHONE[1] + 1, "the bar is not in view"
    assert box["y"] > PHONE[1] / 2, "the bar is not at the bottom"
    first = bar.get_attribute("data-bar")
    bar.get_by_role("button", name="Not now").click()
    expect(page.locator(f'form[data-bar="{first}"]')).to_be_hidden()
    second = str(page.locator("form[data-bar]:visible").get_attribute("data-bar"))
    bar = page.locator(f'form[data-bar="{second}"]')
    bar.locator("[name=value]").fill("hissing")
    bar.get_by_role("button", name="Keep, next").click()
    expect(bar).to_contain_text("hissing")
    expect(bar.locator(".fault, .bad").first).to_be_visible()
    settled(page)
    bar.locator("[name=value]").fill(f"13 {bar.locator('[name=value]').get_attribute('placeholder')}")
    bar.get_by_role("button", name="Keep, next").click()
    expect(bar).to_have_count(0)
    settled(page)
    assert revision(page) == 2
    assert focused(page, "closest('form[data-bar]')?.dataset.bar") not in ("", second)
    page.reload()
    assert entry(page, second, "#left").input_value() != ""


def test_a_paired_phone_reaches_startup_only(pages: Pages, run_app: Callable[..., App]) -> None:
    shared = run_app("--share")
    page = pages.new(app=shared)
    page.goto("/pair?job=ferrow-house")
    expect(page.get_by_role("heading").first).to_be_visible()
    page.get_by_role("button", name=re.compile("code", re.IGNORECASE)).first.click()
    assert re.search(r"\b[A-Z0-9]{3,4}[ -]?[A-Z0-9]{3,4}\b", page.locator("main").inner_text())
    page.wait_for_load_state("networkidle")
    page.close()


def test_the_checklist_adds_up(page: Page) -> None:
    """What the head says is read: what the groups say together, and outdoors and rooms above them."""
    job = copy_of_demo(page)
    page.goto(f"{job}/startup")
    read, due = (number(each) for each in page.locator("#left .head .side").inner_text().split(" of "))
    counts = page.locator("#left details.stage .count").all_inner_texts()
    parts = [each for each in (re.search(r"(\d+) of (\d+) read", one) for one in counts) if each]
    assert len(parts) >= 3
    assert sum(int(each[2]) for each in parts) == due - 2
    assert sum(int(each[1]) for each in parts) == read - 2
