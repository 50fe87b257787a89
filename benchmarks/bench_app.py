"""What a person waits for in the app: pages, edits and workings of the house of twenty rooms, and its start.

Times are those of the server, through ASGI with a real book on disk. Each is set against its budget, so a
ratio of one is just within.
"""

from __future__ import annotations

import socket
import subprocess
import sys
import tempfile
import urllib.request
from collections.abc import Iterator
from pathlib import Path
from statistics import median
from time import perf_counter, sleep

from app_client import Client, Tab, app_with_house
from timing import Row

SHEETS = ("house", "heat-loss", "emitters", "piping", "boiler-room", "controls", "startup", "papers")
EDITS = {
    "a U-value of every wall": ("constructions/wall/u_value", ("U-0.091", "U-0.082", "U-0.073")),
    "one length of one room": ("rooms/room-3/surfaces/long/length", ("14 ft", "13 ft", "12' 6\"")),
    "the supply water": ("plant/supply", ("170 °F", "165 °F", "168 °F")),
    "a reading": ("readings/supply", ("150 °F", "151 °F", "152 °F")),
    "a name": ("rooms/room-3/name", ("Den", "Study", "Nook")),
}
EDIT, FIRST, WORKING, READY, LARGEST = 0.050, 0.300, 0.030, 2.0, 150 * 1024
ROUNDS, STARTS = 9, 4


def rows() -> Iterator[Row]:
    """Start, first pages, edits on each sheet, workings, and the largest page."""
    yield Row("heatledger app until it answers", min(start() for _ in range(STARTS)), "budget", READY, 1.0)
    with app_with_house() as (client, job):
        sizes: dict[str, float] = {}
        for sheet in SHEETS:
            yield from of_sheet(client, job, sheet, sizes)
        yield from of_workings(client, job)
        for sheet, size in sizes.items():
            yield Row(f"size of {sheet}", size / 1024, "budget", LARGEST / 1024, 1.0, "KB")


def of_sheet(client: Client, job: str, sheet: str, sizes: dict[str, float]) -> Iterator[Row]:
    """The first page of a sheet, the same again, and each kind of edit on it."""
    query = "pick=rooms/room-3" if sheet == "house" else ""
    tab = Tab(client, job, sheet, query)
    client.rest()
    again = median(client.get(f"/jobs/{job}/{sheet}").seconds for _ in range(ROUNDS))
    sizes[sheet] = tab.opened.size
    yield Row(f"{sheet}, first page", tab.opened.seconds, "budget", FIRST, 1.0)
    yield Row(f"{sheet}, page again", again, "budget", FIRST, 1.0)
    follows = []
    for name, (path, values) in EDITS.items():
        times = []
        for number in range(ROUNDS):
            times.append(tab.edit(path, values[number % len(values)]).seconds)
            if tab.waits:
                follows.append(tab.after().seconds)
            client.rest()
        yield Row(f"{sheet}, {name}", median(times), "budget", EDIT, 1.0)
    if follows:
        yield Row(f"{sheet}, what follows an edit", median(follows), "one edit", EDIT)


def of_workings(client: Client, job: str) -> Iterator[Row]:
    """Every thirteenth figure of the house opened, and the first one after an edit."""
    tab = Tab(client, job, "heat-loss")
    fresh = []
    for number in range(ROUNDS):
        tab.edit("constructions/wall/u_value", ("U-0.09", "U-0.08")[number % 2])
        client.rest()
        fresh.append(tab.working("house/loss").seconds)
    paths = list(client.app.state.desks.open(job).state.house.figures)[::13]
    times = sorted(tab.working(each).seconds for each in paths)
    yield Row(f"a working, median of {len(times)}", median(times), "budget", WORKING, 1.0)
    yield Row("a working, one in twenty is slower", times[len(times) * 19 // 20], "budget", WORKING, 1.0)
    yield Row("the first working after an edit", median(fresh), "budget", WORKING, 1.0)


def start() -> float:
    """Seconds from the command to the first answer of the app over a new book, byte code compiled."""
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    with tempfile.TemporaryDirectory() as folder:
        book = f"sqlite:///{(Path(folder) / 'book.sqlite').as_posix()}"
        command = [sys.executable, "-m", "heatledger", "app", "--port", str(port), "--book", book]
        began = perf_counter()
        running = subprocess.Popen(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        try:
            while not answers(f"http://127.0.0.1:{port}/"):
                if running.poll() is not None:
                    raise RuntimeError(f"the app ended with {running.returncode}")
                sleep(0.01)
            return perf_counter() - began
        finally:
            running.terminate()
            running.wait()


def answers(address: str) -> bool:
    """Whether the list of jobs comes back from an address."""
    try:
        with urllib.request.urlopen(address, timeout=10) as answer:
            return bool(answer.status == 200 and answer.read())
    except OSError:  # it does not listen yet
        return False
