"""From leaving a field to the frame that shows the new figure, in a real Chromium without a window."""

from __future__ import annotations

import os
import shutil
import socket
import tempfile
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from statistics import median
from time import monotonic, sleep
from typing import Any

import uvicorn
from playwright.sync_api import sync_playwright
from timing import Row
from twenty_rooms import job_text

from heatledger.web.app import create_app
from heatledger.web.settings import Settings

PIXELS = 0.120
ROUNDS = 15
EDITS = (
    ("heat-loss", "", "constructions/wall/u_value", "rooms/room-3/loss", ("U-0.09", "U-0.08")),
    ("house", "pick=rooms/room-3", "rooms/room-3/surfaces/long/length", "house/loss", ("14 ft", "13 ft")),
    ("emitters", "", "plant/supply", "house/supply", ("170 °F", "165 °F")),
)
"""Sheet and what its address asks for, the entry typed into, a figure that it moves, two values for it."""
CHANGE = """async ([path, value, figure]) => {
  const shown = () => document.querySelector(`button.fig[value="${figure}"]`)?.textContent;
  let field = document.querySelector(`[data-entry="${path}"]`);
  if (field === null) {  // an entry of another sheet: the same change from a field of this one
    field = document.createElement("input");
    field.dataset.entry = path;
    field.dataset.kept = "";
    document.querySelector("#left").append(field);
  }
  field.focus();
  field.value = value;
  const before = shown();
  const began = performance.now();
  field.dispatchEvent(new Event("change", { bubbles: true }));
  field.blur();
  const painted = await new Promise((done) => {
    const look = () => {
      if (shown() !== before) requestAnimationFrame(() => setTimeout(() => done(performance.now()), 0));
      else if (performance.now() - began > 5000) done(0);
      else requestAnimationFrame(look);
    };
    requestAnimationFrame(look);
  });
  return painted === 0 ? -1 : painted - began;
}"""


def chromium() -> str | None:
    """Where the browser is, when the system has one of its own."""
    own = os.environ.get("CHROMIUM", "")
    return own or next(
        filter(None, map(shutil.which, ("chromium", "chromium-browser", "google-chrome"))), None
    )


@contextmanager
def served() -> Iterator[str]:
    """The address of a job of twenty rooms, served on this computer from a book in a temporary folder."""
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    with tempfile.TemporaryDirectory() as folder:
        url = f"sqlite:///{(Path(folder) / 'book.sqlite').as_posix()}"
        app = create_app(Settings(book_url=url, port=port))
        job = app.state.book.add_job(job_text(), "Twenty rooms", "", "Begun", "Bench").job_id
        server = uvicorn.Server(uvicorn.Config(app, port=port, log_level="error", ws="none"))
        running = threading.Thread(target=server.run)
        running.start()
        try:
            waited = monotonic() + 30
            while not server.started and monotonic() < waited:
                sleep(0.02)
            yield f"http://127.0.0.1:{port}/jobs/{job}"
        finally:
            server.should_exit = True
            running.join()


def times_on(page: Any, path: str, figure: str, values: tuple[str, str]) -> list[float]:
    """Seconds from blur to paint of a row of changes; what follows each has come before the next."""
    times = []
    for number in range(ROUNDS + 2):
        taken = page.evaluate(CHANGE, [path, values[number % 2], figure])
        if taken >= 0:
            times.append(taken / 1000)
        page.wait_for_selector("#token[data-wait='no']", state="attached")
        page.wait_for_timeout(150)
    if len(times) < ROUNDS:
        raise RuntimeError(f"{figure} did not change on the page after {path} was typed")
    return times[2:]


def rows() -> Iterator[Row]:
    """The median of each kind of change."""
    with served() as address, sync_playwright() as play:
        browser = play.chromium.launch(executable_path=chromium(), args=["--no-sandbox", "--disable-gpu"])
        page = browser.new_page(viewport={"width": 1440, "height": 900})
        for sheet, query, path, figure, values in EDITS:
            page.goto(f"{address}/{sheet}?{query}")
            page.wait_for_timeout(500)
            times = times_on(page, path, figure, values)
            yield Row(f"{sheet}: {path} to pixels", median(times), "budget", PIXELS, 1.0)
        browser.close()
