"""A whole small job without a mouse: from the list of jobs to a printed paper."""

from __future__ import annotations

from playwright.sync_api import Page, expect

from tests.browser.doing import figure, focused, number, settled, working

MOST_STEPS = 160


def go_to(page: Page, words: str, tag: str = "") -> None:
    """Press Tab until what has focus is called so; every stop on the way must be to be seen."""
    for _ in range(MOST_STEPS):
        page.keyboard.press("Tab")
        found = page.evaluate(
            """() => {
              const here = document.activeElement;
              const labels = here.labels ? [...here.labels].map((each) => each.textContent) : [];
              const name = here.getAttribute("aria-label") || labels.join(" ") || here.textContent || "";
              const box = here.getBoundingClientRect();
              return [here.tagName, name.trim(), box.width * box.height > 0 || here === document.body];
            }"""
        )
        assert found[2], f"focus is on something that cannot be seen: {found}"
        if found[1].startswith(words) and (not tag or found[0] == tag):
            return
    raise AssertionError(f"Tab never came to {words}")


def type_at(page: Page, words: str, typed: str) -> None:
    """Go to a field by its name and type."""
    go_to(page, words)
    page.keyboard.type(typed)


def test_a_whole_small_job_by_keyboard(page: Page) -> None:
    page.goto("/")
    go_to(page, "New job", "A")
    page.keyboard.press("Enter")
    expect(page.get_by_role("heading", name="New job")).to_be_visible()
    go_to(page, "A first room", "A")
    page.keyboard.press("Enter")
    expect(page.get_by_label("Name of the room")).to_be_visible()
    type_at(page, "Name of the job", "Gate lodge")
    type_at(page, "Name of the room", "Parlor")
    type_at(page, "Side along north", "14' 6\"")
    type_at(page, "Side along east", "12 ft")
    type_at(page, "Outdoor design", "5 °F")
    type_at(page, "Indoor temp", "70 °F")
    type_at(page, "Elevation", "300 ft")
    go_to(page, "north")
    page.keyboard.press("Space")
    go_to(page, "attic above")
    page.keyboard.press("Space")
    page.keyboard.press("Enter")
    expect(page.locator("#lead h1")).to_have_text("Parlor")

    bare = number(figure(page, "rooms/parlor/loss", "#lead").inner_text())
    go_to(page, "Add a surface")
    page.keyboard.press("Enter")
    type_at(page, "Name", "East wall")
    go_to(page, "Construction")
    page.keyboard.type("Outside w")
    type_at(page, "Length", "12 ft")
    page.keyboard.press("Enter")
    expect(page.locator("#house-table")).to_contain_text("East wall")
    settled(page)
    total = figure(page, "rooms/parlor/loss", "#house-table tfoot")
    assert number(total.inner_text()) > bare

    go_to(page, "North wall, tape")
    page.keyboard.press("Control+a")
    page.keyboard.type("15 ft")
    before = number(total.inner_text())
    page.keyboard.press("Enter")
    settled(page)
    assert number(total.inner_text()) > before
    page.keyboard.press("Tab")
    page.keyboard.press("Control+z")
    expect(page.locator("#says")).to_contain_text("Undone")
    settled(page)
    assert number(total.inner_text()) == before
    working_and_paper(page)


def working_and_paper(page: Page) -> None:
    """Sheet 2: a working, a figure in it, and back; then sheet 8 and its paper."""
    page.keyboard.press("Alt+2")
    expect(page.locator("#left h1")).to_have_text("Heat loss")
    total = figure(page, "rooms/parlor/loss")
    total.focus()
    page.keyboard.press("Enter")
    expect(working(page, "rooms/parlor/loss")).to_be_visible()
    page.keyboard.press("F6")
    assert focused(page, "closest('#working') !== null")
    page.keyboard.press("Enter")
    expect(working(page, "rooms/parlor/loss")).to_have_count(0)
    page.keyboard.press("Backspace")
    expect(working(page, "rooms/parlor/loss")).to_be_visible()

    page.keyboard.press("Alt+8")
    expect(page.locator("#left h1")).to_have_text("Papers")
    go_to(page, "Print this paper", "A")
    href = focused(page, "getAttribute('href')")
    made = page.request.get(page.url.partition("/jobs")[0] + href)
    assert made.ok and made.body().startswith(b"%PDF-")


def test_the_first_stop_leads_past_the_strip(page: Page) -> None:
    page.goto("/jobs/ferrow-house/house")
    page.keyboard.press("Tab")
    assert focused(page, "textContent") == "To the page"
    expect(page.locator(".skip")).to_be_in_viewport()
    page.keyboard.press("Enter")
    page.keyboard.press("Tab")
    assert focused(page, "closest('#left') !== null")


def test_every_stop_shows_where_one_is(page: Page) -> None:
    """Each stop of a sheet has an outline while it has focus."""
    page.goto("/jobs/ferrow-house/emitters")
    for _ in range(40):
        page.keyboard.press("Tab")
        seen = page.evaluate(
            """() => {
              const here = document.activeElement, style = getComputedStyle(here);
              const drawn = style.outlineStyle !== "none" && parseFloat(style.outlineWidth) >= 2;
              return [here.outerHTML.slice(0, 90), drawn];
            }"""
        )
        assert seen[1], seen[0]
