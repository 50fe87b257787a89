"""Two tabs on one job: neither loses what the other typed, and a clash is said at its entry."""

from __future__ import annotations

from playwright.sync_api import Page, expect

from tests.browser.doing import copy_of_demo, entry, figure, settled, type_in
from tests.browser.harness import Pages, start_app

INDOOR, OUTDOOR = "site/indoor", "site/outdoor"


def two_tabs(page: Page, pages: Pages) -> tuple[Page, Page]:
    """The same sheet of a job in two tabs, both drawn before either changes anything."""
    job = copy_of_demo(page)
    other = pages.tab(page)
    for each in (page, other):
        each.goto(f"{job}/house")
    return page, other


def test_different_entries_are_both_kept(page: Page, pages: Pages) -> None:
    one, other = two_tabs(page, pages)
    type_in(one, INDOOR, "68 °F", "#left")
    expect(one.locator("#right .foot")).to_contain_text("Revision 2")
    type_in(other, OUTDOOR, "3 °F", "#left")
    expect(other.locator("#right .foot")).to_contain_text("Revision 3")
    expect(entry(other, INDOOR, "#left")).to_have_value("68 °F")
    load = figure(other, "house/loss", "#strip").inner_text()
    one.reload()
    expect(entry(one, INDOOR, "#left")).to_have_value("68 °F")
    expect(entry(one, OUTDOOR, "#left")).to_have_value("3 °F")
    expect(figure(one, "house/loss", "#strip")).to_have_text(load)


def test_the_same_entry_is_not_overwritten_unseen(page: Page, pages: Pages) -> None:
    one, other = two_tabs(page, pages)
    type_in(one, INDOOR, "68 °F", "#left")
    expect(one.locator("#right .foot")).to_contain_text("Revision 2")
    type_in(other, INDOOR, "72 °F", "#left")
    fault = other.locator("#left .fault").first
    expect(fault).to_contain_text("meanwhile, in revision 2")
    expect(fault).to_contain_text("68")
    expect(entry(other, INDOOR, "#left")).to_have_value("72 °F")
    settled(other)
    type_in(other, INDOOR, "72.0 °F", "#left")
    expect(other.locator("#right .foot")).to_contain_text("Revision 3")
    expect(other.locator("#left .fault")).to_have_count(0)
    one.reload()
    expect(entry(one, INDOOR, "#left")).to_have_value("72.0 °F")


def test_a_tab_that_is_looked_at_again_shows_what_was_changed_elsewhere(page: Page, pages: Pages) -> None:
    one, other = two_tabs(page, pages)
    type_in(other, INDOOR, "66 °F", "#left")
    expect(other.locator("#right .foot")).to_contain_text("Revision 2")
    load = figure(other, "house/loss", "#strip").inner_text()
    one.evaluate("window.dispatchEvent(new Event('focus'))")
    expect(entry(one, INDOOR, "#left")).to_have_value("66 °F")
    expect(figure(one, "house/loss", "#strip")).to_have_text(load)
    expect(one.locator("#says")).to_contain_text("Changed elsewhere")


def test_undo_in_a_tab_that_is_behind_is_refused_with_a_sentence(page: Page, pages: Pages) -> None:
    pages.allow(page, "409")
    one, other = two_tabs(page, pages)
    type_in(one, INDOOR, "68 °F", "#left")
    expect(one.locator("#right .foot")).to_contain_text("Revision 2")
    type_in(other, OUTDOOR, "3 °F", "#left")
    expect(other.locator("#right .foot")).to_contain_text("Revision 3")
    settled(one)
    one.get_by_role("button", name="Undo").click()
    expect(one.locator("#notice")).to_be_visible()
    other.reload()
    expect(entry(other, OUTDOOR, "#left")).to_have_value("3 °F")
    expect(entry(other, INDOOR, "#left")).to_have_value("68 °F")


def test_when_the_app_is_gone_what_was_typed_stays(fresh_app: object, page: Page, pages: Pages) -> None:
    pages.allow(page, "ERR_CONNECTION_REFUSED|request failed")
    page.goto("/jobs/ferrow-house/house")
    port = int(pages.app.url.rpartition(":")[2])
    page.wait_for_load_state("networkidle")
    pages.app.kill()
    type_in(page, INDOOR, "68 °F", "#left")
    expect(page.locator("#notice")).to_contain_text("does not answer")
    expect(entry(page, INDOOR, "#left")).to_have_value("68 °F")
    again = start_app(pages.app.folder, port=port)
    try:
        entry(page, INDOOR, "#left").press("Enter")
        expect(page.locator("#notice")).to_be_hidden()
        expect(page.locator("#right .foot")).to_contain_text("Revision 2")
        expect(entry(page, INDOOR, "#left")).to_have_value("68 °F")
    finally:
        assert again.stop() == ""
