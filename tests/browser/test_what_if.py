"""What if: tried from an open question, kept, set beside the job, and made the job as one revision."""

from __future__ import annotations

import re

from playwright.sync_api import Page, expect

from tests.browser.doing import copy_of_demo, figure, number, revision, settled

MEND = "Give it 10′ 10″ of element or more"


def test_a_mend_is_tried_kept_and_made_the_job(page: Page) -> None:
    job = copy_of_demo(page)
    page.goto(f"{job}/emitters?pick=rooms/kitchen")
    expect(page.locator("#right")).to_contain_text("Kitchen needs")
    expect(page.locator("#index li", has_text="Emitters")).to_contain_text("must fix")
    way = page.locator("#right .ways li", has_text=MEND)
    way.get_by_role("link", name="Try it").click()

    expect(page.locator("#laid")).to_contain_text("11")
    expect(page.locator("#settles")).to_contain_text("Settled")
    expect(page.locator("#settles")).to_contain_text("Kitchen needs")
    assert revision(page) == 1
    page.get_by_role("button", name="Keep").click()
    expect(page.locator("#side-by-side")).to_contain_text("Give it")
    assert revision(page) == 2

    page.get_by_role("button", name=re.compile("Make .* the job")).click()
    expect(page.locator("#right .foot")).to_contain_text("Revision 3: “Give it")
    assert revision(page) == 3
    page.goto(f"{job}/emitters?pick=rooms/kitchen")
    expect(page.locator("#right h1")).to_have_text("Kitchen")
    expect(page.locator("#right")).not_to_contain_text("gets 2,573")
    expect(page.locator("#left tr.picked")).to_contain_text("over by")
    page.goto(f"{job}/history")
    expect(page.locator("#left tbody tr").first).to_contain_text("made the job")


def test_what_ifs_are_set_beside_the_job_and_each_other(page: Page) -> None:
    job = copy_of_demo(page)
    page.goto(f"{job}/what-if")
    row = page.locator("#side-by-side tbody tr", has_text="Design load").first
    cells = row.locator("td")
    base = number(cells.nth(0).inner_text())
    assert number(figure(page, "house/loss", "#strip").inner_text()) == round(base, -2)
    expect(page.locator("#side-by-side thead")).to_contain_text("Low-e")
    assert number(cells.nth(1).inner_text()) < base
    page.get_by_role("checkbox", name="Low-e in the old windows").check()
    page.get_by_role("checkbox", name="Air sealing").check()
    page.get_by_role("button", name="Lay", exact=True).click()
    together = page.locator("#side-by-side tbody tr", has_text="Design load").first.locator("td").last
    expect(page.locator("#laid")).to_contain_text("laid together")
    assert number(together.inner_text()) < number(cells.nth(1).inner_text())


def test_a_figure_of_a_what_if_opens_in_its_own_design(page: Page) -> None:
    job = copy_of_demo(page)
    page.goto(f"{job}/what-if")
    row = page.locator("#side-by-side tbody tr", has_text="Design load").first
    cell = row.locator("td").nth(1).locator("button.fig")
    shown = cell.inner_text()
    cell.click()
    expect(page.locator("#working .answer strong").first).to_have_text(shown)
    page.reload()
    expect(page.locator("#working .answer strong").first).to_have_text(shown)


def test_a_what_if_is_written_by_hand_and_its_fault_said(page: Page) -> None:
    job = copy_of_demo(page)
    page.goto(f"{job}/what-if")
    page.locator("details.new summary").click()
    page.get_by_label("Name of a new one").fill("Tight house")
    page.get_by_label("What it sets").fill("air/changes")
    page.get_by_label("To", exact=True).fill("0.2 ACH")
    page.get_by_role("button", name="Lay it beside the job").click()
    expect(page.locator("#side-by-side thead")).to_contain_text("Tight house")
    settled(page)
    assert revision(page) == 2
