"""The first page: it opens, looks nowhere else, and can be read by everybody."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from playwright.sync_api import Page, expect

from tests.browser.harness import DESK, PHONE, TABLET, Pages, too_wide


def test_it_opens_with_the_demo_jobs(page: Page) -> None:
    answer = page.goto("/")
    assert answer is not None and answer.ok
    expect(page.get_by_role("heading", level=1).first).to_be_visible()
    expect(page.get_by_role("link", name="Ferrow house").first).to_be_visible()


def test_it_is_sent_with_a_policy_that_lets_nothing_else_in(page: Page) -> None:
    answer = page.goto("/")
    assert answer is not None
    policy = answer.headers["content-security-policy"]
    assert "default-src 'none'" in policy
    assert "unsafe" not in policy and "*" not in policy
    assert answer.headers["x-content-type-options"] == "nosniff"


def test_the_policy_is_kept_by_the_browser(page: Page, pages: Pages) -> None:
    """A picture from elsewhere is refused, and the watch that every test keeps sees that it was asked for."""
    page.goto("/")
    with page.expect_event("requestfailed"):
        page.evaluate("document.body.append(Object.assign(new Image(), {src: 'http://elsewhere.example/a'}))")
    seen = "\n".join(pages.watches[page.context].faults())
    assert "violates the following Content Security Policy" in seen
    assert "request outside: http://elsewhere.example/a" in seen
    pages.allow(page, "elsewhere.example")


@pytest.mark.parametrize("size", [DESK, TABLET, PHONE], ids=["desk", "tablet", "phone"])
def test_everybody_can_read_it(pages: Pages, axe: Callable[..., list[str]], size: tuple[int, int]) -> None:
    page = pages.new(size)
    page.goto("/")
    assert not (found := axe(page)), "\n  ".join(["", *found])
    assert not (found := too_wide(page)), "\n  ".join(["", *found])


def test_its_letters_are_the_apps_own(page: Page) -> None:
    page.goto("/")
    page.evaluate("document.fonts.ready")
    loaded = page.evaluate(
        "[...document.fonts].filter(each => each.status === 'loaded').map(each => each.family)"
    )
    assert {each.strip('"') for each in loaded} == {"Ledger Sans", "Ledger Serif"}
