"""Rooms, surfaces and openings: added, copied, renamed, put in another order, taken out."""

from __future__ import annotations

import pytest
from playwright.sync_api import Locator, Page, expect

from tests.browser.doing import copy_of_demo, figure, number, revision, says, settled, type_in
from tests.browser.harness import Pages

KITCHEN = "rooms/kitchen/surfaces"
LIVING = "rooms/living/surfaces"


def names(page: Page, path: str) -> list[str]:
    """The things of a ledger, in their order."""
    return page.locator(f"#map-{path.replace('/', '-')} tbody th").all_inner_texts()


def act(page: Page, path: str, word: str) -> None:
    """Do something to a thing by the menu at the end of its row."""
    row = page.locator(f"#row-{path.replace('/', '-')}")
    row.locator("summary").click()
    row.get_by_role("button", name=word).click()


def adder(page: Page, path: str) -> Locator:
    """The opened form for one more thing."""
    place = page.locator(f"#map-{path.replace('/', '-')} > .adder")
    place.locator("summary").click()
    return place


@pytest.fixture
def job(page: Page) -> str:
    """A copy of the demo job."""
    page.on("dialog", lambda asked: asked.accept())
    return copy_of_demo(page)


def test_a_room_is_added_and_counts(page: Page, job: str) -> None:
    page.goto(f"{job}/house?pick=rooms")
    place = adder(page, "rooms")
    place.get_by_label("Name").fill("Sewing room")
    place.get_by_label("Size").fill("9' x 10' 6\"")
    place.get_by_role("button", name="Add").click()
    says(page, "Sewing room added")
    settled(page)
    assert names(page, "rooms")[-1] == "Sewing room"
    page.goto(f"{job}/house")
    expect(page.locator("#house-rooms")).to_contain_text("Sewing room")
    expect(page.locator("#house-head")).to_contain_text("10 heated rooms")
    assert figure(page, "rooms/sewing-room/floor_area").inner_text().startswith("94.5")


def test_a_room_is_renamed_where_it_stands(page: Page, job: str) -> None:
    page.goto(f"{job}/house?pick=rooms/study")
    type_in(page, "rooms/study/name", "Work room", "#right")
    says(page, "Work room")
    expect(page.locator("#plot-study")).to_contain_text("Work room")
    expect(page.locator("#lead h1")).to_have_text("Work room")
    page.goto(f"{job}/heat-loss")
    expect(page.locator("#left")).to_contain_text("Work room")
    expect(page.locator("#left")).not_to_contain_text("Study")


def test_a_room_is_copied_and_the_copy_taken_out(page: Page, job: str) -> None:
    page.goto(f"{job}/house?pick=rooms")
    before = names(page, "rooms")
    loss = number(figure(page, "house/loss", "#strip").inner_text())
    act(page, "rooms/study", "Copy")
    says(page, "added")
    settled(page)
    assert names(page, "rooms") == [*before[:4], "Study, copy", *before[4:]]
    assert number(figure(page, "house/loss", "#strip").inner_text()) > loss + 3000
    copy = page.locator("#map-rooms tbody tr", has_text="Study, copy")
    act(page, str(copy.get_attribute("id")).removeprefix("row-"), "Remove")
    expect(page.locator("#map-rooms tbody th", has_text="Study, copy")).to_have_count(0)
    assert names(page, "rooms") == before
    assert number(figure(page, "house/loss", "#strip").inner_text()) == loss


def test_rooms_change_their_order(page: Page, job: str) -> None:
    page.goto(f"{job}/house?pick=rooms")
    before = names(page, "rooms")
    act(page, "rooms/dining", "Up")
    expect(page.locator("#map-rooms tbody th").first).to_have_text("Dining room")
    assert names(page, "rooms") == [before[1], before[0], *before[2:]]
    page.goto(f"{job}/heat-loss")
    expect(page.locator("#left tbody th[scope=row]").first).to_contain_text("Dining room")


def test_what_was_taken_out_comes_back_with_undo(page: Page, job: str) -> None:
    page.goto(f"{job}/house?pick={LIVING}")
    before = names(page, LIVING)
    loss = figure(page, "rooms/living/loss").inner_text()
    act(page, f"{LIVING}/west-wall", "Remove")
    expect(page.locator("#right tbody th", has_text="West wall")).to_have_count(0)
    assert number(figure(page, "rooms/living/loss").inner_text()) < number(loss)
    page.get_by_role("button", name="Undo").click()
    expect(page.locator("#right tbody th", has_text="West wall")).to_be_visible()
    assert names(page, LIVING) == before
    assert figure(page, "rooms/living/loss").inner_text() == loss


def test_what_others_stand_on_is_not_taken_out_and_that_is_said(page: Page, job: str) -> None:
    page.goto(f"{job}/house?pick=rooms")
    act(page, "rooms/bathroom", "Remove")
    expect(page.locator("#notice")).to_be_visible()
    settled(page)
    expect(page.locator("#notice")).to_contain_text("bathroom", ignore_case=True)
    expect(page.locator("#map-rooms tbody th")).to_have_count(9)
    assert revision(page) == 1


def test_a_thing_stays_when_the_question_is_answered_no(page: Page) -> None:
    job = copy_of_demo(page)
    questions: list[str] = []
    page.on("dialog", lambda asked: (questions.append(asked.message), asked.dismiss()))
    page.goto(f"{job}/house?pick=rooms")
    act(page, "rooms/bathroom", "Remove")
    expect(page.locator("#map-rooms tbody th")).to_have_count(9)
    assert questions == ["Take Bathroom out of the job? Undo brings it back."]


def test_a_surface_and_an_opening_are_added(page: Page, job: str) -> None:
    page.goto(f"{job}/house?pick=rooms/kitchen")
    loss = number(figure(page, "rooms/kitchen/loss", "#lead").inner_text())
    place = adder(page, KITCHEN)
    place.get_by_label("Name").fill("Bay")
    place.get_by_label("Construction").select_option(label="2x4 wall with R-11 batt")
    place.get_by_label("Length").fill("6 ft")
    place.get_by_role("button", name="Add").click()
    says(page, "bay added")
    expect(page.locator("#house-table")).to_contain_text("Bay")
    walled = number(figure(page, "rooms/kitchen/loss", "#lead").inner_text())
    assert walled > loss
    page.goto(f"{job}/house?pick={KITCHEN}/bay")
    place = adder(page, f"{KITCHEN}/bay/openings")
    place.get_by_label("Name").fill("Bay window")
    place.get_by_label("Construction").select_option(label="Double clear wood window")
    place.get_by_label("Size").fill("3 x 4 ft")
    place.get_by_role("button", name="Add").click()
    says(page, "bay window added")
    expect(page.locator("#house-table")).to_contain_text("Bay window")
    assert number(figure(page, "rooms/kitchen/loss", "#house-table tfoot").inner_text()) > walled


def test_what_a_form_asks_for_is_told_and_nothing_typed_is_lost(page: Page, job: str, pages: Pages) -> None:
    pages.allow(page, "422")
    page.goto(f"{job}/house?pick=rooms")
    place = adder(page, "rooms")
    place.get_by_label("Name").fill("Sewing room")
    place.get_by_label("Size").fill("nine by ten")
    place.get_by_role("button", name="Add").click()
    expect(page.locator("#notice")).to_be_visible()
    expect(page.locator("#notice")).to_contain_text("nine by ten")
    expect(place.get_by_label("Size")).to_have_value("nine by ten")
    assert len(names(page, "rooms")) == 9
    place.get_by_label("Size").fill("9 x 10 ft")
    place.get_by_role("button", name="Add").click()
    says(page, "Sewing room added")
    expect(page.locator("#notice")).to_be_hidden()
    expect(place.get_by_label("Name")).to_have_value("")
