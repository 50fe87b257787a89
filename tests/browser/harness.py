"""The app as a process of its own, a browser to look at it with, and what must never happen in one."""

from __future__ import annotations

import os
import re
import socket
import subprocess
import sys
import time
import urllib.error
import urllib.request
from dataclasses import dataclass, field
from pathlib import Path
from urllib.parse import urlsplit

from playwright.sync_api import Browser, BrowserContext, Page, Playwright

from tests.needed import tool

ROOT = Path(__file__).resolve().parents[2]
AXE = Path(__file__).with_name("vendor") / "axe.min.js"
WCAG = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]
TREE = (sys.executable, "-m", "heatledger")
TRIES = 600
PAUSE = 0.05
"""Seconds between two looks whether the app answers."""

JOB = "Ferrow house"
SHEETS = ("house", "heat-loss", "emitters", "piping", "boiler-room", "controls", "startup", "papers")

DESK = (1440, 900)
TABLET = (1024, 768)
PHONE = (390, 844)

QUIET = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-default-apps",
    "--disable-extensions",
    "--disable-sync",
    "--metrics-recording-only",
    "--no-first-run",
    "--no-default-browser-check",
    # No name is ever looked up, so nothing outside can answer even if something asked.
    "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1, EXCLUDE localhost",
]


@dataclass
class App:
    """A running ``heatledger app`` with a book of its own."""

    url: str
    folder: Path
    process: subprocess.Popen[bytes]

    @property
    def book(self) -> Path:
        """The SQLite file of the book."""
        return self.folder / "book.sqlite"

    @property
    def log(self) -> str:
        """What the app has said so far."""
        return (self.folder / "app.log").read_text(encoding="utf-8", errors="replace")

    def stop(self) -> str:
        """End it the polite way; the end of what it said where it told of a fault, else nothing."""
        if self.process.poll() is None:
            self.process.terminate()
        self.process.wait(timeout=20)
        _, fault, rest = self.log.partition("Traceback")
        return fault + rest[-4000:]

    def kill(self) -> None:
        """End it as a power cut would."""
        self.process.kill()
        self.process.wait(timeout=20)


def free_port() -> int:
    """A port that nobody listens on now."""
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return int(probe.getsockname()[1])


def start_app(folder: Path, *options: str, port: int = 0, program: tuple[str, ...] = TREE) -> App:
    """Start the app with its book in ``folder`` and wait until it answers.

    ``options`` are further words of the command; ``program`` is the command itself, that of this tree when
    left out. A folder used before is gone on with. Raises AssertionError with what the app said when it does
    not come up.
    """
    port = port or free_port()
    book = f"sqlite:///{(folder / 'book.sqlite').as_posix()}"
    command = [*program, "app", "--port", str(port), "--book", book, *options]
    source = str(ROOT / "src") if program == TREE else ""
    environment = {**os.environ, "PYTHONPATH": source, "PYTHONUTF8": "1", "BROWSER": "none"}
    environment |= {"XDG_DATA_HOME": str(folder), "LOCALAPPDATA": str(folder), "HEATLEDGER_PASSPHRASE": ""}
    with (folder / "app.log").open("ab") as log:
        process = subprocess.Popen(
            command,
            env=environment,
            cwd=folder,
            stdout=log,
            stderr=subprocess.STDOUT,
            stdin=subprocess.DEVNULL,
        )
    app = App(f"http://127.0.0.1:{port}", folder, process)
    for _ in range(TRIES):
        if process.poll() is not None:
            raise AssertionError(f"the app ended at once with {process.returncode}:\n{app.log}")
        if answers(app.url):
            return app
        time.sleep(PAUSE)
    app.kill()
    raise AssertionError(f"the app never answered:\n{app.log}")


def answers(url: str) -> bool:
    """True when something speaks HTTP there, whatever it says."""
    try:
        urllib.request.urlopen(url, timeout=20).close()
    except urllib.error.HTTPError as answer:
        answer.close()
    except OSError:
        return False
    return True


def launch(playwright: Playwright) -> Browser:
    """The machine's own Chromium, without a window. Skips the test where there is none."""
    return playwright.chromium.launch(executable_path=tool("chromium"), args=QUIET)


@dataclass
class Watch:
    """Everything that should not happen in a browser while a test uses the app."""

    home: str
    seen: list[str] = field(default_factory=list)
    allowed: list[re.Pattern[str]] = field(default_factory=list)

    def over(self, context: BrowserContext) -> None:
        """Listen to every page of a context."""
        context.on("console", lambda said: self._console(said.type, said.text, said.location))
        context.on("weberror", lambda fault: self.seen.append(f"script fault: {fault.error}"))
        context.on("request", lambda request: self._address(request.url))
        context.on("requestfailed", lambda request: self._failed(request.url, request.failure or ""))
        context.on("page", self._sockets)

    def _console(self, kind: str, words: str, place: dict[str, object]) -> None:
        if kind in ("error", "warning"):
            self.seen.append(
                f"console {kind}: {words} ({place.get('url', '')}:{place.get('lineNumber', '')})"
            )

    def _address(self, url: str) -> None:
        parts = urlsplit(url)
        inside = f"{parts.scheme}://{parts.netloc}" == self.home
        if not inside and parts.scheme not in ("data", "blob", "about"):
            self.seen.append(f"request outside: {url}")

    def _failed(self, url: str, why: str) -> None:
        # A request that a newer one replaced, or that became a download, is not one that failed.
        if "ERR_ABORTED" not in why:
            self.seen.append(f"request failed: {url} ({why})")

    def _sockets(self, page: Page) -> None:
        page.on("websocket", lambda socket: self.seen.append(f"socket: {socket.url}"))

    def faults(self) -> list[str]:
        """What happened and was not expected."""
        return [each for each in self.seen if not any(one.search(each) for one in self.allowed)]


class Pages:
    """Opens watched pages; each one is a device of its own unless it is a further tab of another."""

    def __init__(self, browser: Browser, app: App) -> None:
        self.browser, self.app = browser, app
        self.watches: dict[BrowserContext, Watch] = {}

    def new(self, size: tuple[int, int] = DESK, app: App | None = None, **options: object) -> Page:
        """A page on a device of its own, on which nothing is open yet; ``page.goto("/")`` opens the app."""
        home = (app or self.app).url
        given = {"reduced_motion": "reduce", "locale": "en-US", "base_url": home, "accept_downloads": True}
        context = self.browser.new_context(viewport={"width": size[0], "height": size[1]}, **given | options)
        context.set_default_timeout(10_000)
        self.watches[context] = Watch(home)
        self.watches[context].over(context)
        return context.new_page()

    def tab(self, page: Page) -> Page:
        """A second tab of the same device."""
        return page.context.new_page()

    def allow(self, page: Page, pattern: str) -> None:
        """Expect what matches: a refused edit, for one, is told by the browser as an error of its console."""
        self.watches[page.context].allowed.append(re.compile(pattern))

    def open_now(self) -> list[Page]:
        """Every page that is open."""
        return [page for context in self.watches for page in context.pages]

    def close(self) -> list[str]:
        """Close all; what happened and was not expected."""
        for context in self.watches:
            context.close()
        return [fault for watch in self.watches.values() for fault in watch.faults()]


def address_of(page: Page, job: str) -> str:
    """The address of a job, without a sheet, from the links beside the list where it is picked."""
    page.goto("/")
    page.get_by_role("link", name=job).first.click()
    href = page.locator('a[href^="/jobs/"]').first.get_attribute("href") or ""
    return "/".join(href.split("?")[0].split("/")[:3])


def look_with_axe(page: Page, within: str = "") -> list[str]:
    """What axe finds against WCAG 2.2 AA on a page, or in a part of it: one line a place.

    The file's text is handed to the browser's own tools, since the page's policy lets no script in.
    """
    if not page.evaluate("typeof window.axe === 'object'"):
        page.evaluate(AXE.read_text(encoding="utf-8"))
    options = {"runOnly": {"type": "tag", "values": WCAG}, "resultTypes": ["violations"], "preload": False}
    found = page.evaluate(
        "([within, options]) => axe.run(within || document, options).then(said => said.violations)",
        [within, options],
    )
    return [
        f"{rule['id']}: {rule['help']}: {' '.join(map(str, node['target']))}: {_summary(node)}"
        for rule in found
        for node in rule["nodes"]
    ]


def _summary(node: dict[str, str]) -> str:
    return " ".join(node.get("failureSummary", "").split())


def until(page: Page, expression: str) -> None:
    """Wait until an expression is true on a page.

    ``page.wait_for_function`` makes code from text inside the page, which the policy refuses.
    """
    for _ in range(TRIES // 3):
        if page.evaluate(expression):
            return
        page.wait_for_timeout(1000 * PAUSE)
    raise AssertionError(f"this never became true: {expression}")


def too_wide(page: Page) -> list[str]:
    """Where a page scrolls sideways: the innermost elements beyond the right edge, five at most."""
    return page.evaluate(
        """() => {
          const width = document.documentElement.clientWidth;
          if (document.documentElement.scrollWidth <= width) return [];
          const wide = (each) => each.getBoundingClientRect().right > width + 1;
          return [...document.querySelectorAll("body *")]
            .filter((each) => wide(each) && ![...each.children].some(wide))
            .map((each) => `${each.tagName} ${each.getAttribute("class")}: ${each.textContent.trim()}`)
            .concat(document.title).slice(0, 5);
        }"""
    )
