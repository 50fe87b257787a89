"""An edit posts one change, strikes the old figures, can be undone; a wrong entry blocks nothing."""

from __future__ import annotations

from playwright.sync_api import Page, expect

from tests.browser.doing import (
    copy_of_demo,
    entry,
    figure,
    focused,
    number,
    revision,
    says,
    settled,
    type_in,
    working,
)
from tests.browser.harness import Pages

WALL = "rooms/kitchen/surfaces/north-wall/length"
WINDOW = "rooms/living/surfaces/south-wall/openings/w1/size"
SUPPLY = "plant/supply"


def test_an_edit_strikes_the_old_figures_and_can_be_undone(page: Page) -> None:
    job = copy_of_demo(page)
    page.goto(f"{job}/house?pick=rooms/living")
    total = figure(page, "rooms/living/loss")
    before, house = total.inner_text(), figure(page, "house/loss", "#strip").inner_text()
    type_in(page, WINDOW, "6' 0\" x 5' 6\"", "#left")
    says(page, "window W1: size")
    expect(entry(page, WINDOW, "#left")).to_have_value("6′ 0″ × 5′ 6″")
    expect(page.locator("#plot-living .loss s")).to_have_text(before)
    after = figure(page, "rooms/living/loss").inner_text()
    assert number(after) > number(before)
    expect(page.locator("#strip .was").first).to_contain_text(house)
    assert number(figure(page, "house/loss", "#strip").inner_text()) > number(house)
    expect(page.locator("#right .foot")).to_contain_text("Revision 2")

    page.get_by_role("button", name="Undo").click()
    says(page, "Undone")
    expect(figure(page, "rooms/living/loss")).to_have_text(before)
    expect(entry(page, WINDOW, "#left")).to_have_value("6′ 0″ × 4′ 6″")
    page.get_by_role("button", name="Redo").click()
    says(page, "Done again")
    expect(figure(page, "rooms/living/loss")).to_have_text(after)
    page.keyboard.press("Control+z")
    expect(figure(page, "rooms/living/loss")).to_have_text(before)
    page.keyboard.press("Control+Shift+z")
    expect(figure(page, "rooms/living/loss")).to_have_text(after)


def test_an_edit_touches_nothing_else_on_the_page(page: Page) -> None:
    """Focus stays, and so does the working that is open; its answer follows."""
    job = copy_of_demo(page)
    page.goto(f"{job}/house?pick=rooms/living&open=rooms/living/loss")
    answer = working(page, "rooms/living/loss").locator(".answer strong").first
    before = answer.inner_text()
    entry(page, WINDOW, "#left").fill("6' 0\" x 6' 6\"")
    page.keyboard.press("Tab")
    following = focused(page, "getAttribute('value')") or focused(page, "dataset.entry")
    expect(answer).not_to_have_text(before)
    assert answer.inner_text() == figure(page, "rooms/living/loss").inner_text()
    settled(page)
    assert (focused(page, "getAttribute('value')") or focused(page, "dataset.entry")) == following


def test_undo_is_off_where_there_is_nothing_to_undo(page: Page) -> None:
    job = copy_of_demo(page)
    page.goto(f"{job}/house")
    expect(page.get_by_role("button", name="Undo")).to_be_disabled()
    expect(page.get_by_role("button", name="Redo")).to_be_disabled()
    type_in(page, "site/indoor", "68 F", "#left")
    expect(page.get_by_role("button", name="Undo")).to_be_enabled()


def test_a_wrong_entry_says_what_is_wrong_and_blocks_nothing(page: Page) -> None:
    job = copy_of_demo(page)
    page.goto(f"{job}/house?pick=rooms/living")
    before = figure(page, "rooms/living/loss").inner_text()
    type_in(page, WINDOW, "6 feet and a bit", "#left")
    field = entry(page, WINDOW, "#left")
    expect(field).to_have_attribute("aria-invalid", "true")
    expect(field).to_have_value("6 feet and a bit")
    fault = page.locator(f"#{field.get_attribute('aria-describedby')}").first
    expect(fault).to_be_visible()
    expect(fault).to_contain_text("6′ 0″ × 4′ 6″, is still used")
    expect(page.locator("#index")).to_contain_text("1 to mend")
    expect(figure(page, "rooms/living/loss")).to_have_text(before)
    assert revision(page) == 1

    type_in(page, "site/indoor", "68 F", "#left")
    expect(page.locator("#right .foot")).to_contain_text("Revision 2")
    expect(entry(page, WINDOW, "#left")).to_have_value("6 feet and a bit")
    page.goto(f"{job}/emitters")
    page.goto(f"{job}/house?pick=rooms/living")
    expect(entry(page, WINDOW, "#left")).to_have_value("6 feet and a bit")

    type_in(page, WINDOW, "6 ft x 5 ft", "#left")
    expect(entry(page, WINDOW, "#left")).to_have_value("6 ft × 5 ft")
    expect(page.locator(".fault")).to_have_count(0)
    expect(page.locator("#index")).not_to_contain_text("to mend")
    assert figure(page, "rooms/living/loss").inner_text() != before


def test_a_wrong_entry_can_be_let_go_of(page: Page) -> None:
    job = copy_of_demo(page)
    page.goto(f"{job}/house?pick=rooms/living")
    type_in(page, "site/outdoor", "cold", "#left")
    expect(page.locator("#left .fault").first).to_contain_text("is still used")
    page.locator("#left .fault button").first.click()
    expect(entry(page, "site/outdoor", "#left")).to_have_value("−2 °F")
    expect(page.locator(".fault")).to_have_count(0)


def test_a_missing_entry_says_what_waits_for_it(page: Page) -> None:
    job = copy_of_demo(page)
    page.goto(f"{job}/house")
    type_in(page, "site/outdoor", "", "#left")
    expect(page.locator("#house-mend")).to_contain_text("outdoor")
    expect(page.locator("#strip .blank").first).to_be_visible()
    expect(figure(page, "house/loss", "#strip")).not_to_contain_text("0")
    page.locator("#house-mend a").first.click()
    expect(page.locator('[data-entry="site/outdoor"]:focus')).to_be_visible()


def test_escape_puts_the_entry_back(page: Page) -> None:
    job = copy_of_demo(page)
    page.goto(f"{job}/house?pick=rooms/living")
    field = entry(page, WINDOW, "#left")
    field.fill("9 ft x 9 ft")
    field.press("Escape")
    expect(field).to_have_value("6′ 0″ × 4′ 6″")
    field.press("Tab")
    settled(page)
    assert revision(page) == 1


def test_how_well_an_entry_is_known(page: Page) -> None:
    job = copy_of_demo(page)
    page.goto(f"{job}/house?pick=rooms/kitchen")
    field = entry(page, WALL, "#left")
    field.click()
    menu = page.get_by_role("group", name="how well it is known")
    expect(menu).to_be_visible()
    menu.get_by_role("combobox").select_option("assumed")
    expect(entry(page, WALL, "#left")).to_have_attribute("data-known", "assumed")
    assert "guess" in (entry(page, WALL, "#left").get_attribute("class") or "")
    entry(page, WALL, "#left").focus()
    page.keyboard.press("Alt+ArrowDown")
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    menu.get_by_label("Because").fill("seen from the road")
    menu.get_by_label("Because").press("Enter")
    says(page, "seen from the road")
    page.goto(f"{job}/house?open={WALL}")
    expect(page.locator("#working")).to_contain_text("how well it is known: assumed")


def test_the_supply_is_tried_while_the_slider_moves_and_kept_when_it_is_let_go(
    page: Page, pages: Pages
) -> None:
    job = copy_of_demo(page)
    page.goto(f"{job}/emitters?pick=rooms/kitchen")
    slider = page.get_by_role("slider")
    gives = page.locator("#right .facts, #right .lead").first
    shown = figure(page, "house/supply", "#strip")
    expect(shown).to_have_text("160")
    box = slider.bounding_box()
    assert box is not None
    page.mouse.move(box["x"] + box["width"] * 0.68, box["y"] + box["height"] / 2)
    page.mouse.down()
    page.mouse.move(box["x"] + box["width"] * 0.88, box["y"] + box["height"] / 2, steps=4)
    expect(shown).not_to_have_text("160")
    tried = number(slider.input_value())
    expect(shown).to_have_text(f"{tried:.0f}")
    assert tried > 175 and gives.count()
    other = pages.tab(page)
    other.goto(f"{job}/emitters")
    expect(figure(other, "house/supply", "#strip")).to_have_text("160")
    page.mouse.up()
    expect(page.locator("#right .foot")).to_contain_text("Revision 2")
    expect(shown).to_have_text(f"{tried:.0f}")
    other.reload()
    expect(figure(other, "house/supply", "#strip")).to_have_text(f"{tried:.0f}")


def test_the_slider_goes_by_keys(page: Page) -> None:
    job = copy_of_demo(page)
    page.goto(f"{job}/emitters")
    slider = page.get_by_role("slider")
    slider.focus()
    page.keyboard.press("ArrowRight")
    expect(figure(page, "house/supply", "#strip")).not_to_have_text("160")
    expect(page.locator("#right .foot")).to_contain_text("Revision 2")
    assert "°F" in (page.get_by_role("slider").get_attribute("aria-valuetext") or "")
