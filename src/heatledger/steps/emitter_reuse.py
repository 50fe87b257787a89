"""What of an earlier run still holds: parts whose inputs are the very same figures are taken over."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, TypeVar

Part = TypeVar("Part")


class Kept:
    """Parts of a run by name, each with what went into it, to be taken over by the next run.

    Figures are compared by identity, and things of the job entry by entry.
    """

    def __init__(self, earlier: Kept | None = None) -> None:
        self._earlier = {} if earlier is None else earlier._parts
        self._parts: dict[str, tuple[tuple[Any, ...], Any]] = {}

    def part(self, name: str, inputs: tuple[Any, ...], make: Callable[[], Part]) -> Part:
        """The part of this name: the earlier one where all that goes into it is the same, else a new one."""
        before = self._earlier.get(name)
        made = before[1] if before is not None and before[0] == inputs else make()
        self._parts[name] = (inputs, made)
        return made
