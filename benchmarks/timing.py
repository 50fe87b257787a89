"""Time two things side by side, so that their ratio holds on a busy machine too."""

from __future__ import annotations

import gc
from collections.abc import Callable
from dataclasses import dataclass
from time import perf_counter


@dataclass(frozen=True)
class Row:
    """One line of the table: seconds of ours, seconds of what it is held against, and the budget.

    ``budget`` bounds the ratio of the two; None where the ratio is only shown. ``unit`` is that of both
    when they are not seconds.
    """

    what: str
    ours: float
    against: str
    theirs: float
    budget: float | None = None
    unit: str = "s"

    @property
    def ratio(self) -> float:
        """How many times as long ours takes."""
        return self.ours / self.theirs


def once(work: Callable[[], object], repeats: int) -> float:
    """Seconds for one call, from ``repeats`` calls in a row."""
    start = perf_counter()
    for _ in range(repeats):
        work()
    return (perf_counter() - start) / repeats


def best(work: Callable[[], object], rounds: int = 15) -> float:
    """The best single call of several, after one to warm up."""
    work()
    return min(once(work, 1) for _ in range(rounds))


def side_by_side(
    ours: Callable[[], object], theirs: Callable[[], object], repeats: int = 1, rounds: int = 7
) -> tuple[float, float]:
    """The best of several rounds for each, taken in turn, with the garbage collector at rest."""
    ours()
    theirs()
    was_on = gc.isenabled()
    gc.disable()
    try:
        pairs = [(once(ours, repeats), once(theirs, repeats)) for _ in range(rounds)]
    finally:
        if was_on:
            gc.enable()
    return min(each[0] for each in pairs), min(each[1] for each in pairs)


def shown_amount(amount: float, unit: str) -> str:
    """A time, or an amount in another unit."""
    return shown_time(amount) if unit == "s" else f"{amount:.0f} {unit}"


def shown_time(seconds: float) -> str:
    """``12.3 ms``."""
    for unit, size in (("s", 1.0), ("ms", 1e-3), ("µs", 1e-6)):
        if seconds >= size:
            return f"{seconds / size:.3g} {unit}"
    return f"{seconds / 1e-9:.3g} ns"
