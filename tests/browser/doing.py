"""What a user does in the app, in the words of the tests."""

from __future__ import annotations

from urllib.parse import parse_qs, urlsplit

from playwright.sync_api import Locator, Page, expect

from tests.browser.harness import JOB


def copy_of_demo(page: Page, name: str = JOB) -> str:
    """Copy a demo job as a user does; the address of the copy, without a sheet."""
    page.goto("/new-job?way=demo")
    page.get_by_role("button", name=f"Copy {name}").click()
    expect(page.locator("#index")).to_be_visible()
    return urlsplit(page.url).path.rpartition("/")[0]


def entry(page: Page, path: str, within: str = "") -> Locator:
    """The field of an entry; the first one where a page has it twice."""
    return page.locator(f'{within} [data-entry="{path}"]').first


def type_in(page: Page, path: str, typed: str, within: str = "") -> None:
    """Type an entry and leave it with Enter."""
    field = entry(page, path, within)
    field.fill(typed)
    field.press("Enter")


def figure(page: Page, path: str, within: str = "#left") -> Locator:
    """A figure as a button."""
    return page.locator(f'{within} button.fig[value="{path}"]').first


def working(page: Page, path: str) -> Locator:
    """The working of one figure, when it is the one that is open."""
    return page.locator(f'#working [data-path="{path}"]')


def asked(page: Page, key: str) -> str:
    """What the address of the page says of one thing."""
    return parse_qs(urlsplit(page.url).query).get(key, [""])[0]


def says(page: Page, words: str) -> None:
    """What was done has been said to who listens."""
    expect(page.locator("#says")).to_contain_text(words)


def settled(page: Page) -> None:
    """The answer has come, and what follows after it."""
    expect(page.locator("body.typing")).to_have_count(0)
    expect(page.locator('#token[data-wait="no"]')).to_have_count(1)


def revision(page: Page) -> int:
    """The revision that the page shows."""
    return int(page.locator("#token").get_attribute("data-rev") or 0)


def number(text: str | None) -> float:
    """The first number in a text, thousands and minus signs as the app writes them."""
    kept = "".join(each for each in (text or "").replace("−", "-") if each in "-.0123456789")
    return float(kept)


def focused(page: Page, of: str = "getAttribute('value')") -> str:
    """Something of the element that has focus."""
    return page.evaluate(f"document.activeElement.{of}") or ""
