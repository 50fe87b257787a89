"""What a person waits for at the terminal, and what memory it takes: fresh processes."""

from __future__ import annotations

import subprocess
import sys
import tempfile
from collections.abc import Iterator
from time import perf_counter

from timing import Row

BARE = [sys.executable, "-c", "pass"]


def fresh(command: list[str], times: int) -> float:
    """The best time of a fresh process, in seconds."""
    found = []
    for _ in range(times):
        start = perf_counter()
        subprocess.run(command, check=True, capture_output=True)
        found.append(perf_counter() - start)
    return min(found)


def peak_megabytes(command: list[str]) -> float:
    """Peak memory of a command and what it starts, where the system tells."""
    code = (
        "import resource, subprocess, sys; subprocess.run(sys.argv[1:], check=True, capture_output=True); "
        "print(resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss)"
    )
    told = subprocess.run([sys.executable, "-c", code, *command], check=True, capture_output=True, text=True)
    return int(told.stdout) / 1024


def rows() -> Iterator[Row]:
    """Help and demo against a bare Python; the second budget is seconds for ``make demo``."""
    ours = [sys.executable, "-m", "heatledger"]
    bare = fresh(BARE, 9)
    yield Row("heatledger --help", fresh([*ours, "--help"], 9), "budget", 0.2, 1.0)
    yield Row("heatledger --help", fresh([*ours, "--help"], 5), "bare python -c pass", bare)
    with tempfile.TemporaryDirectory() as folder:
        demo = [*ours, "demo", "--to", folder]
        yield Row("heatledger demo, all papers", fresh(demo, 2), "budget", 12.0, 1.0)
        if sys.platform != "win32":
            yield Row("peak memory of the demo", peak_megabytes(demo), "budget", 300.0, 1.0, "MB")
