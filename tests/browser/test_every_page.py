"""Every page beside the sheets, in every unit preset: readable by everybody, never wider than its window."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from playwright.sync_api import Page, expect

from tests.browser.doing import settled
from tests.browser.harness import DESK, PHONE, TABLET, App, Pages, too_wide

JOB = "/jobs/ferrow-house"
PAGES = (
    "/",
    "/new-job?way=numbers",
    "/new-job?way=room",
    "/new-job?way=replacement",
    "/new-job?way=demo",
    "/open-file",
    "/book",
    "/who",
    "/units",
    "/help",
    f"{JOB}/what-if",
    f"{JOB}/history",
    f"{JOB}/papers?view=questions",
    f"{JOB}/find?q=kitchen",
    f"{JOB}/house?view=built",
    f"{JOB}/house?view=around",
    f"{JOB}/house?view=job",
    f"{JOB}/house?pick=rooms/kitchen/surfaces/north-wall&open=rooms/kitchen/loss",
)
DOOR = ("/pair", "/passphrase")
FAULTS = (("/nowhere", 404), ("/jobs/no-such-job/house", 404), (f"{JOB}/no-such-sheet", 404), ("/pair", 409))


def looked_at(axe: Callable[..., list[str]], page: Page, address: str) -> list[str]:
    """What is wrong with a page: for everybody on a desk, and its width on every window."""
    found = axe(page)
    for size in (DESK, TABLET, (720, 450), PHONE):
        page.set_viewport_size({"width": size[0], "height": size[1]})
        found += [f"wider than {size[0]}: {each}" for each in too_wide(page)]
    return [f"{address}: {each}" for each in found]


@pytest.mark.parametrize("units", ["us", "metric", "canadian"])
@pytest.mark.parametrize("address", PAGES)
def test_everybody_can_read_it(pages: Pages, axe: Callable[..., list[str]], address: str, units: str) -> None:
    page = pages.new()
    page.context.add_cookies([{"name": "units", "value": units, "url": pages.app.url}])
    answer = page.goto(address)
    assert answer is not None and answer.ok
    assert not (found := looked_at(axe, page, address)), "\n  ".join(["", *found])


def test_everybody_can_read_the_pages_of_the_door(
    pages: Pages, axe: Callable[..., list[str]], run_app: Callable[..., App]
) -> None:
    shared = run_app("--share")
    page = pages.new(app=shared)
    for address in DOOR:
        answer = page.goto(address)
        assert answer is not None and answer.ok, address
        assert not (found := looked_at(axe, page, address)), "\n  ".join(["", *found])
        page.set_viewport_size({"width": DESK[0], "height": DESK[1]})
    page.wait_for_load_state("networkidle")
    page.close()


@pytest.mark.parametrize(("address", "status"), FAULTS)
def test_everybody_can_read_what_went_wrong(
    pages: Pages, axe: Callable[..., list[str]], address: str, status: int
) -> None:
    page = pages.new()
    pages.allow(page, str(status))
    answer = page.goto(address)
    assert answer is not None and answer.status == status
    assert page.get_by_role("link", name="obs").count()
    assert not (found := looked_at(axe, page, address)), "\n  ".join(["", *found])


def test_everybody_can_read_a_wrong_entry_and_what_is_struck(
    pages: Pages, axe: Callable[..., list[str]]
) -> None:
    page = pages.new()
    page.goto(f"{JOB}/house?pick=rooms/living")
    for path, typed in (("site/outdoor", "4 °F"), ("site/indoor", "warm")):
        field = page.locator(f'#left [data-entry="{path}"]')
        field.fill(typed)
        field.press("Enter")
        settled(page)
    expect(page.locator("#left .fault").first).to_be_visible()
    assert page.locator(".was").count()
    assert not (found := axe(page)), "\n  ".join(["", *found])
