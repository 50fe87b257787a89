"""Every number opens: its working, the workings below it down to the tape, and the ways back."""

from __future__ import annotations

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.browser.doing import asked, figure, focused, working
from tests.browser.harness import JOB, App, Pages, address_of

LOSS = "house/loss"
DOWN = (
    "rooms/living/loss",
    "rooms/living/causes/walls/loss",
    "rooms/living/surfaces/south-wall/loss",
    "rooms/living/surfaces/south-wall/net_area",
    "rooms/living/surfaces/south-wall/gross_area",
    "rooms/living/surfaces/south-wall/length",
)
"""From the loss of the house to the tape measure, one working at a time."""


@pytest.fixture(scope="module")
def job(browser: Browser, app: App) -> str:
    """The address of the demo job, without a sheet."""
    pages = Pages(browser, app)
    found = address_of(pages.new(), JOB)
    assert pages.close() == []
    return found


def walk_down(page: Page, job: str) -> None:
    """Open the design load from the strip, then each figure in the working of the one before."""
    page.goto(f"{job}/heat-loss")
    figure(page, LOSS, "#strip").click()
    expect(working(page, LOSS)).to_be_visible()
    for path in DOWN:
        figure(page, path, "#working").click()
        expect(working(page, path)).to_be_visible()


def test_from_the_bottom_line_to_the_tape(page: Page, job: str) -> None:
    walk_down(page, job)
    leaf = page.locator("#working")
    expect(leaf).to_contain_text('typed: "14\' 6""')
    expect(leaf).to_contain_text("measured")
    expect(leaf).to_contain_text("job file:58")
    assert asked(page, "open") == DOWN[-1]


def test_the_figure_and_its_parts_are_marked_on_the_left(page: Page, job: str) -> None:
    page.goto(f"{job}/heat-loss")
    expect(page.locator("#left tr.goes-in")).to_have_count(0)
    figure(page, LOSS, "#strip").click()
    expect(working(page, LOSS)).to_be_visible()
    total = figure(page, LOSS)
    assert total.get_attribute("aria-expanded") == "true"
    assert total.inner_text() == working(page, LOSS).locator("strong").first.inner_text()
    expect(page.locator("#left tr.goes-in")).to_have_count(9)
    page.reload()
    expect(page.locator("#left tr.goes-in")).to_have_count(9)


def test_backspace_goes_back_along_the_trail(page: Page, job: str) -> None:
    walk_down(page, job)
    expect(page.locator("#working")).to_contain_text("Back to")
    for path in [*reversed(DOWN[:-1]), LOSS]:
        page.keyboard.press("Backspace")
        expect(working(page, path)).to_be_visible()
        assert focused(page, "closest('#working') !== null"), "focus has left the working"
    page.keyboard.press("Backspace")
    expect(working(page, LOSS)).to_be_visible()


def test_the_trail_is_not_walked_in_circles(page: Page, job: str) -> None:
    """A step back by its name in the trail is a step back, not one more step."""
    walk_down(page, job)
    page.locator(f'#working [data-path] button.fig[value="{DOWN[0]}"]').last.click()
    expect(working(page, DOWN[0])).to_be_visible()
    page.keyboard.press("Backspace")
    expect(working(page, LOSS)).to_be_visible()


def test_back_and_forward_of_the_browser_follow(page: Page, job: str) -> None:
    walk_down(page, job)
    page.go_back()
    expect(working(page, DOWN[-2])).to_be_visible()
    page.go_back()
    expect(working(page, DOWN[-3])).to_be_visible()
    page.go_forward()
    expect(working(page, DOWN[-2])).to_be_visible()
    assert asked(page, "open") == DOWN[-2]
    figure(page, DOWN[0], "#working").focus()
    page.keyboard.press("Backspace")
    expect(working(page, DOWN[-3])).to_be_visible()


def test_a_link_to_a_working_can_be_shared(page: Page, pages: Pages, job: str) -> None:
    walk_down(page, job)
    other = pages.new()
    other.goto(page.url)
    expect(working(other, DOWN[-1])).to_be_visible()
    assert other.locator("#working h2").inner_text() == page.locator("#working h2").inner_text()


def test_goes_into_leads_up(page: Page, job: str) -> None:
    page.goto(f"{job}/heat-loss?open={DOWN[0]}")
    up = page.locator("#working .into", has_text="Goes into")
    up.locator(f'button.fig[value="{LOSS}"]').click()
    expect(working(page, LOSS)).to_be_visible()


def test_f6_goes_to_the_working_and_back(page: Page, job: str) -> None:
    page.goto(f"{job}/heat-loss")
    room = figure(page, DOWN[0])
    room.focus()
    page.keyboard.press("Enter")
    expect(working(page, DOWN[0])).to_be_visible()
    expect(page.locator("#says")).to_contain_text("Working shown on the right page")
    assert focused(page) == DOWN[0], "focus stays on the figure"
    page.keyboard.press("F6")
    assert focused(page, "closest('#working') !== null")
    page.keyboard.press("F6")
    assert focused(page) == DOWN[0]


def test_f6_comes_back_to_a_figure_opened_with_the_mouse(page: Page, job: str) -> None:
    page.goto(f"{job}/heat-loss?open={DOWN[0]}")
    page.locator("#working button.fig").first.focus()
    page.keyboard.press("F6")
    assert focused(page) == DOWN[0]
    assert focused(page, "closest('#left') !== null")


def test_every_figure_of_the_strip_opens(page: Page, job: str) -> None:
    page.goto(f"{job}/house")
    paths = [each.get_attribute("value") or "" for each in page.locator("#strip button.fig:visible").all()]
    assert len(paths) >= 6
    for path in paths:
        button = figure(page, path, "#strip")
        shown = button.inner_text()
        button.click()
        expect(button).to_have_attribute("aria-expanded", "true")
        expect(page.locator("#working .answer strong").first).to_be_visible()
        assert asked(page, "open") == path and shown


def test_find_with_one_key(page: Page, job: str) -> None:
    page.goto(f"{job}/heat-loss")
    expect(page.locator("[data-find]")).to_be_visible()
    page.keyboard.press("/")
    page.keyboard.type("kitchen")
    found = page.locator("#found [data-hit]")
    expect(found.first).to_contain_text("itchen")
    page.keyboard.press("ArrowDown")
    page.keyboard.press("Enter")
    expect(page.locator("#right")).to_contain_text("Kitchen")
    assert page.url.startswith(f"{page.url.partition('/jobs')[0]}{job}/")


def test_find_goes_to_a_line_by_its_address(page: Page, job: str) -> None:
    page.goto(f"{job}/heat-loss")
    page.keyboard.press("/")
    page.keyboard.type("2.1")
    expect(page.locator("#found [data-hit]").first).to_contain_text("Heat loss, House", ignore_case=True)
    page.keyboard.press("Enter")
    expect(working(page, LOSS)).to_be_visible()
