"""Other ways to look: zoomed, less motion, more contrast, without scripts, on paper."""

from __future__ import annotations

import re

import pytest
from playwright.sync_api import Browser, expect

from tests.browser.doing import figure, working
from tests.browser.harness import JOB, SHEETS, App, Pages, address_of, too_wide

HALF = (720, 450)


@pytest.fixture(scope="module")
def job(browser: Browser, app: App) -> str:
    """The address of the demo job, without a sheet."""
    pages = Pages(browser, app)
    found = address_of(pages.new(), JOB)
    assert pages.close() == []
    return found


@pytest.mark.parametrize("sheet", ["house", "emitters", "startup"])
def test_at_200_percent_nothing_is_lost(pages: Pages, job: str, sheet: str) -> None:
    """Every figure and entry of the large window is in the small one, and can be reached."""
    count = """() => [...document.querySelectorAll("#left .fig, #right .fig, #left .in, #right .in")]
      .filter((each) => each.getClientRects().length)
      .map((each) => each.value || each.textContent).sort().join("|")"""
    large, small = pages.new(), pages.new(HALF, device_scale_factor=2)
    large.goto(f"{job}/{sheet}")
    small.goto(f"{job}/{sheet}")
    assert small.evaluate(count) == large.evaluate(count)
    assert too_wide(small) == []
    last = small.locator("#right .foot")
    last.scroll_into_view_if_needed()
    expect(last).to_be_in_viewport()
    cut = small.evaluate(
        """() => [...document.querySelectorAll("#left .fig, #right .fig")]
          .filter((each) => each.getClientRects().length && each.getBoundingClientRect().right > innerWidth)
          .filter((each) => !each.closest("table, .scroll, [class*=scroll]")).map((each) => each.value)"""
    )
    assert cut == []


def test_nothing_moves_for_who_wants_no_motion(pages: Pages, job: str) -> None:
    moving = """() => [...document.querySelectorAll("*")].filter((each) => {
      const style = getComputedStyle(each);
      const moves = style.transitionDuration.split(",").some((one) => parseFloat(one) > 0);
      return moves || style.animationName !== "none";
    }).length"""
    still = pages.new(reduced_motion="reduce")
    still.goto(f"{job}/heat-loss?open=house/loss")
    assert still.evaluate(moving) == 0
    usual = pages.new(reduced_motion="no-preference")
    usual.goto(f"{job}/heat-loss?open=house/loss")
    assert usual.evaluate(moving) > 0


def test_more_contrast_makes_hairlines_dark(pages: Pages, job: str) -> None:
    rule = "getComputedStyle(document.documentElement).getPropertyValue('--rule').trim().toUpperCase()"
    usual, more = pages.new(), pages.new(contrast="more")
    for each in (usual, more):
        each.goto(f"{job}/heat-loss")
    assert usual.evaluate(rule) != more.evaluate(rule)
    assert more.evaluate(rule) == "#534D45"


@pytest.mark.parametrize("sheet", SHEETS)
def test_every_sheet_reads_without_scripts(pages: Pages, job: str, sheet: str) -> None:
    page = pages.new(java_script_enabled=False)
    page.goto(f"{job}/{sheet}")
    expect(page.locator("#left h1")).to_be_visible()
    expect(figure(page, "house/loss", "#strip")).to_have_text("36,200")
    expect(page.locator("#index li")).to_have_count(8)
    assert "follow" not in page.locator("#asks").inner_text()


def test_figures_open_and_papers_print_without_scripts(pages: Pages, job: str) -> None:
    page = pages.new(java_script_enabled=False)
    page.goto(f"{job}/heat-loss")
    figure(page, "rooms/kitchen/loss").click()
    expect(working(page, "rooms/kitchen/loss")).to_be_visible()
    page.locator("#working .body button.fig").first.click()
    expect(working(page, "rooms/kitchen/loss")).to_have_count(0)
    expect(page.locator("#working .answer")).to_be_visible()
    page.locator("#index a", has_text="Papers").click()
    href = page.get_by_role("link", name="Print this paper").get_attribute("href") or ""
    made = page.request.get(page.url.partition("/jobs")[0] + href)
    assert made.ok and made.body().startswith(b"%PDF-")
    page.goto(f"{job}/find?q=kitchen")
    expect(page.locator("#found")).to_contain_text("Kitchen")


def test_units_turn_without_scripts(pages: Pages, job: str) -> None:
    page = pages.new(java_script_enabled=False)
    page.goto(f"{job}/house")
    page.locator("#index .units").click()
    page.get_by_role("button", name="Metric", exact=True).click()
    expect(page.locator("#index .units")).to_have_text("m, °C")
    expect(page.locator("#strip")).to_contain_text("W")
    expect(page.locator("#strip")).not_to_contain_text("Btu")


@pytest.mark.parametrize("sheet", ["house", "heat-loss", "startup"])
def test_a_sheet_on_paper(pages: Pages, job: str, sheet: str) -> None:
    """Buttons gone, the bottom line at the head, left page, then the right one on a sheet of its own."""
    page = pages.new()
    page.goto(f"{job}/{sheet}?open=house/loss")
    page.emulate_media(media="print")
    for gone in (".sheets", ".btn", ".skip", ".choice", ".noprint"):
        assert page.locator(f"{gone}:visible").count() == 0, gone
    expect(figure(page, "house/loss", "#strip")).to_be_visible()
    expect(page.locator("#left .foot")).to_be_visible()
    boxes = [page.locator(each).bounding_box() for each in ("#strip", "#left", "#right")]
    tops = [each["y"] for each in boxes if each]
    assert tops == sorted(tops) and len(set(tops)) == 3
    assert page.locator("#right").evaluate("(each) => getComputedStyle(each).breakBefore") == "page"
    made = page.pdf(format="Letter")
    assert len(re.findall(rb"/Type\s*/Page\b", made)) >= 2


def test_the_draft_mark_is_on_the_paper_of_an_unfinished_job(pages: Pages, job: str) -> None:
    page = pages.new()
    page.goto(f"{job}/papers")
    expect(page.locator("#left .papers li").first).to_contain_text("draft")
