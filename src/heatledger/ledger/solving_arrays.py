"""Newton's method on many states at once: the fast twin of the search in ``solving.py``."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Any

import numpy

from heatledger.ledger.replay import Program

MOST_STEPS = 50
CLOSE_ENOUGH = 1e-13
GOOD_ENOUGH = 1e-9


def search_arrays(
    program: Program,
    names: Sequence[str],
    inputs: Sequence[Any],
    start: Mapping[str, float],
    step_of: Callable[[int, Any], Any],
) -> dict[str, Any]:
    """The unknowns, one array each, for inputs of which some are arrays of equal length.

    ``step_of`` gives the step for the slope by one unknown. States for which no answer is found come
    back as NaN.
    """
    size = max(len(each) for each in inputs if hasattr(each, "__array__"))
    x = numpy.array([numpy.full(size, start[name]) for name in names])

    def both(at: Any) -> tuple[Any, Any]:
        results = program.run([*at, *inputs])
        sides = (results[0::2], results[1::2])
        left, right = (numpy.array([numpy.broadcast_to(each, size) for each in side]) for side in sides)
        return left, right

    with numpy.errstate(all="ignore"):
        off = numpy.full(size, numpy.inf)
        for _ in range(MOST_STEPS):
            left, right = both(x)
            matrix = _matrix(both, x, step_of)
            brought = 0.01 * numpy.sum(abs(matrix * x.T[:, None, :]), axis=2).T
            sizes = numpy.maximum(numpy.maximum(abs(left), abs(right)), numpy.maximum(brought, 1e-300))
            off = numpy.max(abs(left - right) / sizes, axis=0)
            if not numpy.any(off > CLOSE_ENOUGH):  # a state without a value is not waited for
                break
            x = x + _solved(matrix, (right - left).T).T
        x[:, ~(off <= GOOD_ENOUGH)] = numpy.nan
    return dict(zip(names, x, strict=True))


def _matrix(both: Callable[[Any], tuple[Any, Any]], x: Any, step_of: Callable[[int, Any], Any]) -> Any:
    """Slopes of each gap by each unknown, state by state."""
    n, size = x.shape
    matrix = numpy.empty((size, n, n))
    for j in range(n):
        step = step_of(j, abs(x[j]))
        gaps = []
        for sign in (1, -1):
            near = x.copy()
            near[j] += sign * step
            left, right = both(near)
            gaps.append(left - right)
        matrix[:, :, j] = ((gaps[0] - gaps[1]) / (2 * step)).T
    return matrix


def _solved(matrix: Any, right: Any) -> Any:
    """The moves; NaN for a state whose equations do not fix the unknowns."""
    fixed = abs(numpy.linalg.det(matrix)) > 0
    safe = numpy.where(fixed[:, None, None], matrix, numpy.eye(matrix.shape[1]))
    move = numpy.linalg.solve(safe, right[:, :, None])[:, :, 0]
    move[~fixed] = numpy.nan
    return move
