"""Progress for work that takes longer than a second, on standard error only."""

from __future__ import annotations

import sys
import threading
from collections.abc import Iterator
from contextlib import contextmanager


@contextmanager
def step(words: str, after: float = 1.0) -> Iterator[None]:
    """Say what is going on once it has taken ``after`` seconds, and when it is done."""
    done = threading.Event()
    said = threading.Event()

    def watch() -> None:
        if not done.wait(after):
            said.set()
            sys.stderr.write(f"{words} ...\n")
            sys.stderr.flush()

    watcher = threading.Thread(target=watch, daemon=True)
    watcher.start()
    try:
        yield
    finally:
        done.set()
        watcher.join()
        if said.is_set():
            sys.stderr.write(f"{words}: done\n")
