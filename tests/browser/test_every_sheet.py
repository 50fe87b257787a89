"""Every sheet in every unit preset: readable by everybody, and never wider than its window."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from playwright.sync_api import Browser

from tests.browser.harness import DESK, JOB, PHONE, SHEETS, TABLET, App, Pages, address_of, too_wide

FIGURES = {"heat-loss": "house/loss", "boiler-room": "plant/tank_volume"}
"""Opened on their sheets, so that a working is looked at too."""


@pytest.fixture(scope="module")
def job(browser: Browser, app: App) -> str:
    """The address of the demo job, without a sheet."""
    pages = Pages(browser, app)
    found = address_of(pages.new(), JOB)
    assert pages.close() == []
    return found


def with_working(address: str, sheet: str) -> str:
    """A sheet, with a figure opened where one is named for it."""
    return f"{address}/{sheet}" + (f"?open={FIGURES[sheet]}" if sheet in FIGURES else "")


@pytest.mark.parametrize("units", ["us", "metric", "canadian"])
@pytest.mark.parametrize("sheet", SHEETS)
def test_everybody_can_read_it(
    pages: Pages, job: str, axe: Callable[..., list[str]], sheet: str, units: str
) -> None:
    page = pages.new()
    page.context.add_cookies([{"name": "units", "value": units, "url": pages.app.url}])
    answer = page.goto(with_working(job, sheet))
    assert answer is not None and answer.ok
    assert not (found := axe(page)), "\n  ".join(["", *found])


@pytest.mark.parametrize("size", [DESK, TABLET, PHONE, (720, 450)], ids=["desk", "tablet", "phone", "200 %"])
@pytest.mark.parametrize("sheet", SHEETS)
def test_it_is_never_wider_than_its_window(pages: Pages, job: str, sheet: str, size: tuple[int, int]) -> None:
    """At 200 % a window of 1440 x 900 has 720 x 450 of its own pixels."""
    page = pages.new(size)
    page.goto(with_working(job, sheet))
    assert not (found := too_wide(page)), "\n  ".join(["", *found])
