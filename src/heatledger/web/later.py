"""One hand that does what can wait, in a quiet moment."""

from __future__ import annotations

from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from contextlib import suppress
from threading import Event, Lock
from time import monotonic

QUIET = 0.6
"""Seconds without a question after which work that was put off is done; an answer comes first."""
MOST_WAITING = 6
"""Pieces of work that may wait; with more of them the oldest is done at once, so that memory stays level."""


class Later:
    """Does one piece of work after the other in a thread of its own, each in a quiet moment."""

    def __init__(self, quiet: float = QUIET, most_waiting: int = MOST_WAITING) -> None:
        self._quiet, self._most = quiet, most_waiting
        self._hand = ThreadPoolExecutor(1, thread_name_prefix="later")
        self._hurry, self._lock = Event(), Lock()
        self._asked, self._waiting = monotonic(), 0

    def asked(self) -> None:
        """Somebody has asked for something just now."""
        self._asked = monotonic()

    def put(self, work: Callable[[], None]) -> None:
        """Do this when what is asked for now has been answered and nothing more comes for a moment."""
        with self._lock:
            self._waiting += 1
        with suppress(RuntimeError):  # closed: what can wait can also be done another time
            self._hand.submit(self._do, work)

    def rest(self) -> None:
        """Wait until everything that was put off is done, without waiting for a quiet moment."""
        self._hurry.set()
        self._hand.submit(lambda: None).result()
        self._hurry.clear()

    def close(self) -> None:
        """Finish what was put off, and take no more."""
        self._hurry.set()
        self._hand.shutdown(wait=True)

    def _do(self, work: Callable[[], None]) -> None:
        while self._waiting <= self._most:
            left = self._asked + self._quiet - monotonic()
            if left <= 0 or self._hurry.wait(left):
                break
        with self._lock:
            self._waiting -= 1
        work()
