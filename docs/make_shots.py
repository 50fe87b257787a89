"""Pictures of every sheet of the app, to be looked at; two of them are those of the README.

    make shots                  into heatledger-shots/
    make shots SHOTS=folder     elsewhere

Each sheet at 1440 x 900 and 1024 x 768, Startup also as a phone shows it; the job list and one open working
too. What a browser complained of is listed at the end, and makes the run fail.
"""

from __future__ import annotations

import shutil
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

from playwright.sync_api import sync_playwright

ROOT = Path(__file__).resolve().parents[1]
sys.path.insert(0, str(ROOT))

from tests.browser import harness  # noqa: E402
from tests.browser.harness import DESK, PHONE, TABLET, App, Pages  # noqa: E402

PICTURES = ROOT / "docs" / "pictures"
IN_README = {"heat-loss-1440x900.png": "app-heat-loss.png", "startup-1024x768.png": "app-startup.png"}
"""The two that are kept, and what they are called there."""

OPEN = {"house": "house/loss", "heat-loss": "house/loss", "boiler-room": "plant/tank_volume"}
"""Figures that are opened on a sheet, so that a picture shows a working."""


class Shot(NamedTuple):
    """One picture: where to go, how large the window is, how the file begins."""

    name: str
    address: str
    size: tuple[int, int]

    @property
    def file(self) -> str:
        """The name of the file."""
        return f"{self.name}-{self.size[0]}x{self.size[1]}.png"


def shots(job: str) -> Iterator[Shot]:
    """Every picture there is to take."""
    for size in (DESK, TABLET):
        yield Shot("jobs", "/", size)
        for sheet in harness.SHEETS:
            opened = f"?open={OPEN[sheet]}" if sheet in OPEN else ""
            yield Shot(sheet, f"{job}/{sheet}{opened}", size)
    yield Shot("jobs", "/", PHONE)
    yield Shot("startup", f"{job}/startup", PHONE)


def take(pages: Pages, folder: Path) -> Iterator[str]:
    """Take every picture; yield what is wrong with a page that can be seen without eyes."""
    job = harness.address_of(pages.new(), harness.JOB)
    for shot in shots(job):
        page = pages.new(shot.size)
        answer = page.goto(shot.address)
        if answer is None or not answer.ok:
            yield f"{shot.file}: the app answers {answer.status if answer else 'nothing'}"
        page.evaluate("document.fonts.ready")
        page.screenshot(path=folder / shot.file, caret="initial")
        page.screenshot(path=folder / f"whole-{shot.file}", full_page=True, caret="initial")
        yield from (f"{shot.file}: too wide: {each}" for each in harness.too_wide(page))
        page.close()


def run(app: App, folder: Path) -> list[str]:
    """Take the pictures of a running app; every fault that was seen."""
    with sync_playwright() as playwright:
        browser = harness.launch(playwright)
        pages = Pages(browser, app)
        faults = [*take(pages, folder), *pages.close()]
        browser.close()
    return faults


def main(folder: Path) -> int:
    """Fill a folder with pictures and renew the two of the README; 1 when a browser complained."""
    folder.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory() as book:
        app = harness.start_app(Path(book))
        try:
            faults = run(app, folder)
        finally:
            app.stop()
    for name, kept in IN_README.items():
        if (folder / name).exists():
            shutil.copy(folder / name, PICTURES / kept)
    print(f"{len(list(folder.glob('*.png')))} pictures in {folder}")
    print("\n".join(faults) or "No browser complained.")
    return bool(faults)


if __name__ == "__main__":
    sys.exit(main(Path(sys.argv[1] if len(sys.argv) > 1 else "heatledger-shots")))
