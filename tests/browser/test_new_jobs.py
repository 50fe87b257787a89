"""From an invitation to printed papers: a job begun from three numbers, and one from its first room."""

from __future__ import annotations

from collections.abc import Callable

from playwright.sync_api import Page, expect

from tests.browser.doing import figure, number, settled, working
from tests.browser.harness import App, Pages

PDF = b"%PDF-"


def begin(page: Page, way: str, **typed: str) -> None:
    """Fill in the form of one way to begin, and begin."""
    page.goto(f"/new-job?way={way}")
    for name, value in typed.items():
        page.get_by_label(name.replace("_", " "), exact=True).fill(value)


def printed(page: Page) -> bytes:
    """The paper that is picked, as the button opens it."""
    button = page.get_by_role("link", name="Print this paper")
    answer = page.request.get(page.url.partition("/jobs")[0] + (button.get_attribute("href") or ""))
    assert answer.ok and answer.headers["content-type"] == "application/pdf"
    return answer.body()


def test_three_numbers_give_a_crude_estimate_that_is_never_a_heat_loss(page: Page) -> None:
    begin(page, "numbers", Name_of_the_job="Mill house")
    page.get_by_label("Floor area of the whole house").fill("1500 ft2")
    page.get_by_label("Outdoor design temperature").fill("5 F")
    page.get_by_label("Indoor temperature").fill("70 F")
    page.get_by_role("button", name="Begin").click()
    expect(page.locator(".spread")).to_contain_text("crude", ignore_case=True)
    crude = figure(page, "crude/figure", ".spread")
    assert 20_000 < number(crude.inner_text()) < 100_000
    expect(page.locator("#strip .blank").first).to_be_visible()
    expect(page.locator("#strip")).not_to_contain_text(crude.inner_text())
    crude.click()
    expect(page.locator("#working .answer")).to_be_visible()
    expect(page.locator("#working")).to_contain_text("judgment")
    page.get_by_role("link", name="Papers").first.click()
    expect(page.locator("#left")).not_to_contain_text("Heat loss")
    expect(page.locator("#left")).to_contain_text("Survey sheet")


def test_what_is_wrong_is_said_at_its_field_and_nothing_typed_is_lost(page: Page, pages: Pages) -> None:
    pages.allow(page, "422")
    begin(page, "numbers", Name_of_the_job="Mill house")
    page.get_by_label("Floor area of the whole house").fill("roomy")
    page.get_by_label("Outdoor design temperature").fill("5 F")
    page.get_by_role("button", name="Begin").click()
    expect(page.get_by_role("alert")).to_contain_text("to mend")
    field = page.get_by_label("Floor area of the whole house")
    expect(field).to_have_value("roomy")
    expect(field).to_have_attribute("aria-invalid", "true")
    expect(page.locator(f"#{field.get_attribute('aria-describedby')}")).to_be_visible()
    expect(page.get_by_label("Name of the job")).to_have_value("Mill house")
    expect(page.get_by_label("Outdoor design temperature")).to_have_value("5 F")


def test_three_numbers_grow_into_a_house_and_its_papers(page: Page) -> None:
    begin(page, "numbers", Name_of_the_job="Lock house")
    page.get_by_label("Floor area of the whole house").fill("1,200 ft2")
    page.get_by_label("Outdoor design temperature").fill("0")
    page.get_by_label("Indoor temperature").fill("70")
    page.get_by_role("button", name="Begin").click()
    page.get_by_role("link", name="House").first.click()
    first_room(page)
    for words, path, typed in (
        ("elevation", "site/elevation", "300 ft"),
        ("air changes", "air/changes", "0.5 ACH"),
    ):
        page.locator("#house-mend").get_by_role("link", name=words).click()
        field = page.locator(f'[data-entry="{path}"]:focus')
        field.fill(typed)
        field.press("Enter")
        expect(page.locator("#house-mend")).not_to_contain_text(words)
        settled(page)
    page.get_by_role("link", name="Living room").first.click()
    expect(figure(page, "rooms/living-room/loss", "#lead")).to_be_visible()
    loss = number(figure(page, "house/loss", "#strip").inner_text())
    assert 2_000 < loss < 20_000
    to_the_papers(page)


def first_room(page: Page) -> None:
    """The guided first room: two sides, outside walls, windows, what is above and below."""
    page.get_by_label("Name", exact=True).fill("Living room")
    page.get_by_label("One side").fill("14' 6\"")
    page.get_by_label("The other side").fill("13' 6\"")
    for label, typed in (("Floor to ceiling", "8 ft"), ("Floor to floor", "9 ft")):
        if page.get_by_label(label).count():
            page.get_by_label(label).fill(typed)
    page.get_by_role("button", name="Make the room").click()
    expect(page.get_by_role("heading", name="Living room: outside walls")).to_be_visible()
    page.get_by_label("North").check()
    page.get_by_label("West").check()
    expect(page.locator("#north-length")).to_have_value("14′ 6″")
    page.get_by_label("Built of").select_option(index=1)
    page.get_by_role("button", name="Keep these walls").click()
    expect(page.get_by_role("heading", name="Living room: windows and doors")).to_be_visible()
    page.locator("#north-wall-count").fill("2")
    page.locator("#north-wall-window").fill("2' 8\" x 4' 6\"")
    page.locator("#west-wall-count").fill("0")
    page.get_by_label("Windows are").select_option(index=1)
    page.get_by_role("button", name="Keep these").click()
    expect(page.get_by_role("heading", name="Living room: above and below")).to_be_visible()
    page.locator("#ceiling-beyond").select_option("outdoors")
    page.get_by_label("Ceiling is").select_option(index=1)
    page.get_by_role("button", name="Keep these").click()
    expect(page.locator("#house-table")).to_contain_text("West wall")


def to_the_papers(page: Page) -> None:
    """Sheet Papers: a picture of the owner's report, its PDF, and the heat loss."""
    settled(page)
    page.locator("#index a", has_text="Papers").click()
    picture = page.locator("#pages img").first
    expect(picture).to_be_visible()
    assert printed(page).startswith(PDF)
    page.get_by_role("link", name="Heat loss").last.click()
    expect(page.locator("#pages img").first).to_be_visible()
    made = printed(page)
    assert made.startswith(PDF) and len(made) > 20_000


def test_from_a_first_room_to_printed_papers(page: Page) -> None:
    begin(page, "room", Name_of_the_job="Weir house", Name_of_the_room="Kitchen")
    page.get_by_label("Side along north and south").fill("12 ft")
    page.get_by_label("Side along east and west").fill("11 ft")
    page.get_by_label("Outdoor design temperature").fill("5 F")
    page.get_by_label("Indoor temperature").fill("70 F")
    page.get_by_label("Elevation of the place").fill("300 ft")
    page.get_by_label("north", exact=True).check()
    page.get_by_label("attic above").check()
    page.get_by_role("button", name="Begin").click()
    expect(page.locator("#lead h1")).to_have_text("Kitchen")
    expect(page.locator("#house-table")).to_contain_text("North wall")
    total = figure(page, "rooms/kitchen/loss", "#lead")
    assert number(total.inner_text()) > 500
    total.click()
    expect(working(page, "rooms/kitchen/loss")).to_be_visible()
    to_the_papers(page)


def test_a_boiler_is_to_be_replaced(page: Page) -> None:
    """What was learned in twenty minutes at the house is enough to begin, and what is missing is named."""
    page.goto("/new-job?way=replacement")
    page.get_by_label("Name of the job").fill("Old mill")
    page.get_by_label("Outdoor design temperature").fill("0 F")
    page.get_by_role("button", name="Begin").click()
    expect(page.locator("#house-mend, #left .first").first).to_be_visible()
    expect(page.locator("#strip")).to_be_visible()
    expect(page.locator("#left")).to_contain_text("needs")


def at_rest(page: Page) -> None:
    """Everything has come, and nothing is asked for after the app of this test is gone."""
    page.wait_for_load_state("networkidle")
    page.close()


def test_an_empty_book_invites(pages: Pages, run_app: Callable[..., App]) -> None:
    page = pages.new(app=run_app())
    page.goto("/")
    for _ in range(3):
        page.get_by_role("button", name="Put away").click()
        expect(page.get_by_role("status").first).to_contain_text("is put away")
    expect(page.locator("#left")).to_contain_text("Nothing is in the book yet")
    page.get_by_role("link", name="Three numbers").click()
    expect(page.get_by_role("heading", name="New job")).to_be_visible()
    page.goto("/?away=yes")
    page.get_by_role("button", name="Take out").click()
    expect(page.locator("#left tbody tr:not(.whatif)")).to_have_count(1)
    at_rest(page)


def test_who_works_here_is_asked_once(page: Page) -> None:
    page.goto("/")
    page.get_by_label("name", exact=False).first.fill("Rae")
    page.get_by_role("button", name="Keep").first.click()
    expect(page.locator("#left .foot")).to_contain_text("Rae on this device")
    page.goto("/new-job?way=demo")
    page.get_by_role("button", name="Copy Ferrow house").click()
    expect(page.locator("#right .foot")).to_contain_text("Rae")
