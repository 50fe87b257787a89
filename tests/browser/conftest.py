"""The app, a browser and its pages for the tests of this folder.

One browser a file: while it is open, its event loop would be in the way of tests that start their own.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect, sync_playwright

from tests.browser.harness import App, Pages, launch, look_with_axe, start_app
from tests.needed import tool

# A machine that is busy with other tests may take its time; what never comes still fails.
expect.set_options(timeout=15_000)
REPORT = pytest.StashKey[pytest.TestReport]()


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Every test of this folder needs Chromium."""
    for each in items:
        if Path(__file__).parent in each.path.parents:
            each.add_marker(pytest.mark.needs("chromium"))


@pytest.hookimpl(wrapper=True)
def pytest_runtest_makereport(item: pytest.Item) -> Iterator[None]:
    """Keep how the test went, for the pictures of one that failed."""
    report = yield
    if report.when == "call":
        item.stash[REPORT] = report
    return report


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    """Chromium without a window."""
    tool("chromium")
    with sync_playwright() as playwright:
        opened = launch(playwright)
        yield opened
        opened.close()


@pytest.fixture(scope="module")
def app(tmp_path_factory: pytest.TempPathFactory) -> Iterator[App]:
    """The app with the demo jobs, shared by the tests of a file."""
    started = start_app(tmp_path_factory.mktemp("app"))
    yield started
    if fault := started.stop():
        pytest.fail(fault, pytrace=False)


@pytest.fixture
def run_app(tmp_path: Path) -> Iterator[Callable[..., App]]:
    """``run_app("--share", folder=..., port=...)`` starts an app of the test's own, ended after the test."""
    started: list[App] = []

    def run(*options: str, folder: Path = tmp_path, port: int = 0) -> App:
        started.append(start_app(folder, *options, port=port))
        return started[-1]

    yield run
    if faults := [fault for each in started if (fault := each.stop())]:
        pytest.fail("\n".join(faults), pytrace=False)


@pytest.fixture
def fresh_app(run_app: Callable[..., App]) -> App:
    """The app with a book in which nothing was changed yet."""
    return run_app()


@pytest.fixture
def pages(request: pytest.FixtureRequest, browser: Browser, tmp_path: Path) -> Iterator[Pages]:
    """Opens pages of the app; at the end nothing may have gone wrong in any of them."""
    wanted = "fresh_app" if "fresh_app" in request.fixturenames else "app"
    opened = Pages(browser, request.getfixturevalue(wanted))
    yield opened
    report = request.node.stash.get(REPORT, None)
    if report is not None and report.failed:
        for number, each in enumerate(opened.open_now(), 1):
            each.screenshot(path=tmp_path / f"failed-{number}.png", caret="initial")
            print(f"{each.url} is to be seen in {tmp_path / f'failed-{number}.png'}")  # noqa: T201
    if faults := opened.close():
        pytest.fail("\n  ".join(["in the browser:", *faults]), pytrace=False)


@pytest.fixture
def page(pages: Pages) -> Page:
    """One watched page, 1440 x 900; of the test's own app when it asks for ``fresh_app`` too."""
    return pages.new()


@pytest.fixture
def axe() -> Callable[..., list[str]]:
    """``axe(page)`` lists what is against WCAG 2.2 AA on a page; ``axe(page, "#left")`` in a part of it."""
    return look_with_axe
