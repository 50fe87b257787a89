"""How a search for what is found together ended, in words."""

from __future__ import annotations

from dataclasses import dataclass
from math import isfinite


@dataclass(frozen=True)
class Outcome:
    """How a search ended.

    ``worst`` is the largest difference between two sides, over their size; ``loose`` how far one more
    step would move an unknown, over its size, where the sides agree and the unknown is still not fixed.
    """

    solved: bool
    steps: int
    worst: float
    worst_at: str
    loose: float = 0.0

    @property
    def words(self) -> str:
        """The outcome as a sentence."""
        if self.solved:
            return (
                f"Solved in {_counted(self.steps)}; both sides of each equation agree in every figure shown."
            )
        if not self.worst_at:
            return "Not searched for: an input is missing."
        if self.loose:
            return (
                f"No answer found in {_counted(self.steps)}: the equations hold and do not fix "
                f"{self.worst_at}, which could as well be another. Look there for an input that cannot be."
            )
        if not isfinite(self.worst):
            return (
                f"No answer found in {_counted(self.steps)}: the equation of {self.worst_at} has no value "
                "there. Look there for an input that cannot be."
            )
        return (
            f"No answer found in {_counted(self.steps)}; the equation of {self.worst_at} is off by "
            f"{self.worst:.1e} of its size. Look there for an input that cannot be."
        )


def _counted(steps: int) -> str:
    return "1 step" if steps == 1 else f"{steps} steps"
