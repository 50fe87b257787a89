"""Small systems of equations: how far off they are, and the step that brings them together."""

from __future__ import annotations

from collections.abc import Sequence
from math import isnan, nan

NEAR_ENOUGH = 1e-9
"""How far one more step may still move an unknown, over its size."""
LEAST_PIVOT = 1e-9
"""Below this a pivot is what the small steps of the matrix leave of nothing."""


def last_step(move: Sequence[float], x: Sequence[float], floor: Sequence[float]) -> list[float]:
    """How far a step moves each unknown, over its size, or over ``floor`` where that is larger."""
    return [abs(m) / max(abs(v), least) for m, v, least in zip(move, x, floor, strict=True)]


def is_fixed(
    matrix: Sequence[Sequence[float]], sizes: Sequence[float], x: Sequence[float], floor: Sequence[float]
) -> bool:
    """True when the equations hold for this answer only, and not for all along a line."""
    scale = [max(abs(v), least) for v, least in zip(x, floor, strict=True)]
    scaled = [
        [m * c / s for m, c in zip(row, scale, strict=True)] for row, s in zip(matrix, sizes, strict=True)
    ]
    return solved_matrix(scaled, [0.0] * len(x), LEAST_PIVOT) is not None


def sizes_of(
    left: Sequence[float], right: Sequence[float], matrix: Sequence[Sequence[float]], x: Sequence[float]
) -> list[float]:
    """What a gap is held against: the sides, or a hundredth of what the unknowns bring to them.

    Both sides may well be nothing, as between two rooms of one temperature.
    """
    brought = [0.01 * sum(abs(slope * value) for slope, value in zip(row, x, strict=True)) for row in matrix]
    return [max(abs(a), abs(b), c, 1e-300) for a, b, c in zip(left, right, brought, strict=True)]


def off_by(left: Sequence[float], right: Sequence[float], sizes: Sequence[float]) -> float:
    """The largest gap between two sides, over their size; NaN when a side has no value."""
    offs = [abs(a - b) / s for a, b, s in zip(left, right, sizes, strict=True)]
    return nan if any(map(isnan, offs)) else max(offs)


def solved_matrix(matrix: list[list[float]], right: list[float], least: float = 0.0) -> list[float] | None:
    """Gaussian elimination with the largest pivot; None when the equations do not fix the unknowns.

    ``least`` is the size a pivot must be above to count.
    """
    n = len(right)
    rows = [[*row, value] for row, value in zip(matrix, right, strict=True)]
    for column in range(n):
        pivot = max(range(column, n), key=lambda i: abs(rows[i][column]))
        if not abs(rows[pivot][column]) > least:
            return None
        rows[column], rows[pivot] = rows[pivot], rows[column]
        for i in range(column + 1, n):
            factor = rows[i][column] / rows[column][column]
            for j in range(column, n + 1):
                rows[i][j] -= factor * rows[column][j]
    x = [0.0] * n
    for i in reversed(range(n)):
        x[i] = (rows[i][n] - sum(rows[i][j] * x[j] for j in range(i + 1, n))) / rows[i][i]
    return x
