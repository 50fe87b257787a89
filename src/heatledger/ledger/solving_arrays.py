"""Newton's method on many states at once: the fast twin of the search in ``solving.py``."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Any

import numpy

from heatledger.ledger.equations import LEAST_PIVOT, NEAR_ENOUGH
from heatledger.ledger.replay import Program

MOST_STEPS = 50
CLOSE_ENOUGH = 1e-13
GOOD_ENOUGH = 1e-9
STEP = 1e-6


def search_arrays(
    program: Program,
    names: Sequence[str],
    inputs: Sequence[Any],
    start: Mapping[str, float],
    floor: Sequence[float],
) -> dict[str, Any]:
    """The unknowns, one array each, for inputs of which some are arrays of equal length.

    ``floor`` is the least size each unknown is taken for. States for which no answer is found, or which
    the equations do not fix, come back as NaN.
    """
    size = max(len(each) for each in inputs if hasattr(each, "__array__"))
    x = numpy.array([numpy.full(size, start[name]) for name in names])
    least = numpy.array(floor)[:, None]

    def both(at: Any) -> tuple[Any, Any]:
        results = program.run([*at, *inputs])
        sides = (results[0::2], results[1::2])
        left, right = (numpy.array([numpy.broadcast_to(each, size) for each in side]) for side in sides)
        return left, right

    with numpy.errstate(all="ignore"):
        for step in range(MOST_STEPS + 1):
            left, right = both(x)
            scale = numpy.maximum(abs(x), least)
            matrix = _matrix(both, x, STEP * (abs(x) + least))
            brought = 0.01 * numpy.sum(abs(matrix * x.T[:, None, :]), axis=2).T
            sizes = numpy.maximum(numpy.maximum(abs(left), abs(right)), numpy.maximum(brought, 1e-300))
            off = numpy.max(abs(left - right) / sizes, axis=0)
            move = _solved(matrix, (right - left).T).T
            last = numpy.max(abs(move) / scale, axis=0)
            # A state without a value is not waited for.
            if step == MOST_STEPS or not numpy.any((off > CLOSE_ENOUGH) | (last > NEAR_ENOUGH)):
                break
            x = x + move
        fixed = _is_fixed(matrix * scale.T[:, None, :] / sizes.T[:, :, None])
        x[:, ~((off <= GOOD_ENOUGH) & (last <= NEAR_ENOUGH) & fixed)] = numpy.nan
    return dict(zip(names, x, strict=True))


def _matrix(both: Callable[[Any], tuple[Any, Any]], x: Any, steps: Any) -> Any:
    """Slopes of each gap by each unknown, state by state."""
    n, size = x.shape
    matrix = numpy.empty((size, n, n))
    for j in range(n):
        step = steps[j]
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


def _is_fixed(scaled: Any) -> Any:
    """True for each state whose matrix, scaled to its sides and unknowns, is not singular."""
    usable = numpy.isfinite(scaled).all(axis=(1, 2))
    safe = numpy.where(usable[:, None, None], scaled, 0.0)
    return numpy.linalg.svd(safe, compute_uv=False)[:, -1] > LEAST_PIVOT
