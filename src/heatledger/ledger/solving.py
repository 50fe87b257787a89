"""What is found together: unknowns that satisfy equations made of figures.

The equations are built once with trial figures at the unknowns. Newton's method then replays them,
with small steps to either side for its matrix, until every equation holds; the figures of the answer
are made from the values found. Each unknown can show its own equation with both sides worked out.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from math import inf, isnan, nan
from typing import Any

from heatledger.ledger.dimensions import Dimension
from heatledger.ledger.equations import NEAR_ENOUGH, is_fixed, last_step, off_by, sizes_of, solved_matrix
from heatledger.ledger.figures import Figure, Leaf, LeafKind, LedgerError, ancestors, flat, make
from heatledger.ledger.outcomes import Outcome
from heatledger.ledger.replay import Program, carry_back, gap_slopes, runner, values_of

MOST_STEPS = 50
CLOSE_ENOUGH = 1e-12
GOOD_ENOUGH = 1e-9
SMALLEST_PART = 1e-6

Sides = Mapping[str, tuple[Figure, Figure]]
Equations = Callable[[Mapping[str, Figure]], Sides]


@dataclass(frozen=True)
class Unknown:
    """One thing to be found: its dimension, and the SI value the search starts at."""

    dimension: Dimension
    start: float


@dataclass(eq=False)
class Solution:
    """Unknowns found together, what they were found from, and how the search ended."""

    words: str
    unknowns: Mapping[str, Unknown]
    equations: Equations
    outcome: Outcome
    inputs: tuple[Figure, ...]
    values: dict[str, float]
    figures: dict[str, Figure] = field(default_factory=dict)
    _trial: _Trial | None = None
    _sides: Sides | None = None

    def sides(self) -> Sides:
        """Both sides of every equation, worked out once at the answer."""
        if self._sides is None:
            self._sides = self.equations(self.figures)
        return self._sides

    def slopes(self, name: str, arguments: Sequence[float]) -> list[float]:
        """Slope of one unknown by each input, at ``arguments``, by the implicit function rule."""
        assert self._trial is not None
        values = self._trial.solve_again(arguments, self.values)
        return self._trial.slopes_of_unknown(name, values, arguments)

    def replayed(self, name: str, arguments: Sequence[Any]) -> Any:
        """One unknown for other values (floats or arrays) of the inputs."""
        assert self._trial is not None
        return self._trial.solve_again(arguments, self.values)[name]


@dataclass(frozen=True, eq=False)
class Solved:
    """Origin of a figure that was found together with others."""

    solution: Solution
    unknown: str

    @property
    def name(self) -> str:
        """Words for the working."""
        return f"{self.unknown}, {self.solution.words}"

    def slopes(self, arguments: Sequence[float]) -> list[float]:
        """Slope with respect to each input of the solution, at ``arguments``."""
        return self.solution.slopes(self.unknown, arguments)

    def replayed(self, arguments: list[Any]) -> Any:
        """Value for other inputs."""
        return self.solution.replayed(self.unknown, arguments)


def solve(words: str, unknowns: Mapping[str, Unknown], equations: Equations) -> Solution:
    """Find the unknowns for which both sides of every equation are equal.

    ``equations`` takes figures by unknown and returns, by unknown, the two sides as figures. When an
    input is missing, or no answer is found, the figures have no value and the outcome says why.
    """
    trial = _Trial(unknowns, equations)
    missing = [each for each in trial.inputs if each.is_missing]
    start = {name: each.start for name, each in unknowns.items()}
    if missing:
        outcome, values = Outcome(False, 0, nan, ""), dict.fromkeys(unknowns, nan)
    else:
        outcome, values = trial.search(start)
        if not outcome.solved:
            values = dict.fromkeys(unknowns, nan)
    solution = Solution(words, unknowns, equations, outcome, tuple(trial.inputs), values, _trial=trial)
    for name, unknown in unknowns.items():
        solution.figures[name] = make(
            values[name], unknown.dimension, Solved(solution, name), solution.inputs
        )
    return solution


class _Trial:
    """The equations with a leaf at each unknown, ready to be replayed."""

    def __init__(self, unknowns: Mapping[str, Unknown], equations: Equations) -> None:
        self.names = list(unknowns)
        self.rows_here: tuple[Any, list[list[float]]] = (None, [])
        self.equations = equations
        self.leaves = {
            name: make(each.start, each.dimension, Leaf(LeafKind.SOURCE, name, name), ())
            for name, each in unknowns.items()
        }
        self.sides = equations(self.leaves)
        if set(self.sides) != set(unknowns):
            raise LedgerError("there must be one equation for each unknown")
        self.targets = [side for name in self.names for side in self.sides[name]]
        self.order = ancestors(*self.targets)
        self.depends = {id(each) for each in self.leaves.values()}
        free: dict[int, Figure] = {}
        for figure in self.order:
            inputs = list(flat(figure.inputs))
            if any(id(each) in self.depends for each in inputs):
                self.depends.add(id(figure))
                free.update((id(each), each) for each in inputs)
        free.update((id(each), each) for each in self.targets)
        self.inputs = [each for key, each in free.items() if key not in self.depends]
        held = {id(each) for each in self.order}
        for name, each in self.leaves.items():
            if id(each) not in held:
                raise LedgerError(f"no equation holds the unknown {name}")

    @cached_property
    def program(self) -> Program:
        """The equations as they are replayed, which a search that starts at the answer never does."""
        return Program(self.targets, [*self.leaves.values(), *self.inputs])

    def search(
        self, start: Mapping[str, float], inputs: Sequence[Any] | None = None
    ) -> tuple[Outcome, dict[str, float]]:
        """Newton's method with halving, at most ``MOST_STEPS`` steps."""
        given = [float(each) for each in self.inputs] if inputs is None else list(inputs)
        x = [start[name] for name in self.names]
        as_built = inputs is None and x == [float(each) for each in self.leaves.values()]
        if as_built:  # the equations stand worked out at the start already
            values = [float(each) for each in self.targets]
            left, right = values[0::2], values[1::2]
        else:
            left, right = self._both(x, given)
        steps = 0
        while True:
            matrix = (
                self._matrix_as_built() if as_built and not steps and len(x) > 1 else self._matrix(x, given)
            )
            sizes = sizes_of(left, right, matrix, x)
            move = solved_matrix(matrix, [b - a for a, b in zip(left, right, strict=True)])
            close = all(abs(a - b) <= CLOSE_ENOUGH * s for a, b, s in zip(left, right, sizes, strict=True))
            at_rest = move is not None and max(last_step(move, x, self.floor())) <= NEAR_ENOUGH
            if (close and at_rest) or move is None or steps == MOST_STEPS:
                break
            steps += 1
            x, left, right = self._moved(x, move, given, off_by(left, right, sizes), sizes)
        each_off = [off_by([a], [b], [s]) for a, b, s in zip(left, right, sizes, strict=True)]
        worst = max(range(len(x)), key=lambda i: inf if isnan(each_off[i]) else each_off[i])
        outcome = Outcome(each_off[worst] <= GOOD_ENOUGH, steps, each_off[worst], self.names[worst])
        if outcome.solved and not (at_rest and is_fixed(matrix, sizes, x, self.floor())):
            moves = [inf] * len(x) if move is None else last_step(move, x, self.floor())
            loosest = max(range(len(x)), key=lambda i: inf if isnan(moves[i]) else moves[i])
            outcome = Outcome(False, steps, each_off[worst], self.names[loosest], moves[loosest] or inf)
        return outcome, dict(zip(self.names, x, strict=True))

    def floor(self) -> list[float]:
        """The least size each unknown is taken for, so that one near zero can be at rest too."""
        return [1e-3 * abs(float(each)) + 1e-9 for each in self.leaves.values()]

    def _moved(
        self, x: list[float], move: list[float], given: Sequence[Any], before: float, sizes: list[float]
    ) -> tuple[list[float], list[float], list[float]]:
        """One step, halved until both sides come closer to each other."""
        scale = 1.0
        while True:
            trial = [a + scale * b for a, b in zip(x, move, strict=True)]
            left, right = self._both(trial, given)
            if off_by(left, right, sizes) <= before or scale < SMALLEST_PART:
                return trial, left, right
            scale /= 2

    def _both(self, x: Sequence[float], given: Sequence[Any]) -> tuple[list[float], list[float]]:
        """Left and right sides; without a value where the arithmetic has no answer."""
        try:
            results = self.program.run([*x, *given])
        except (ZeroDivisionError, ValueError, OverflowError):
            results = [nan] * (2 * len(x))
        results = [nan if each.__class__ is complex else each for each in results]
        return results[0::2], results[1::2]

    def _matrix_as_built(self) -> list[list[float]]:
        """Slopes of each gap by each unknown at the start, carried back along what depends on them."""
        moving = [each for each in self.order if id(each) in self.depends]
        place = {id(each): i for i, each in enumerate(moving)}
        unknowns = list(self.leaves.values())
        carried: dict[int, dict[int, float]] = {}
        for each in self.targets:
            if id(each) not in carried:
                carried[id(each)] = carry_back(each, moving[: place.get(id(each), -1) + 1])
        pairs = zip(self.targets[0::2], self.targets[1::2], strict=True)
        return [
            [carried[id(a)].get(id(u), 0.0) - carried[id(b)].get(id(u), 0.0) for u in unknowns]
            for a, b in pairs
        ]

    def _matrix(self, x: Sequence[float], given: Sequence[Any]) -> list[list[float]]:
        """Slopes of each gap by each unknown: carried back, or for one unknown by central differences."""
        if len(x) > 1:
            try:
                unknowns, _, sides = self._at(dict(zip(self.names, x, strict=True)), given)
            except (ZeroDivisionError, ValueError, OverflowError):
                return [[nan] * len(x) for _ in x]
            return gap_slopes(sides, unknowns)
        columns = []
        for j, value in enumerate(x):
            step = self.step_of(j, abs(value))
            beside = []
            for sign in (step, -step):
                near = list(x)
                near[j] = value + sign
                beside.append(self._both(near, given))
            (a, b), (c, e) = beside
            columns.append([(a[i] - b[i] - c[i] + e[i]) / (2 * step) for i in range(len(x))])
        return [[columns[j][i] for j in range(len(x))] for i in range(len(x))]

    def step_of(self, j: int, size: Any) -> Any:
        """The step for the slope by one unknown, from its size now and the size it started with."""
        return 1e-6 * (size + self.floor()[j])

    def slopes_of_unknown(
        self, name: str, values: Mapping[str, float], arguments: Sequence[float]
    ) -> list[float]:
        """Slope of one unknown by each input: the matrix of the unknowns against that of the inputs."""
        here, (known, rows) = (tuple(values.values()), tuple(arguments)), self.rows_here
        if known != here:  # one matrix serves every unknown
            unknowns, inputs, sides = self._at(values, arguments)
            self.rows_here = (here, rows := gap_slopes(sides, [*unknowns, *inputs]))
        n = len(self.names)
        rows_x, rows_p = [each[:n] for each in rows], [each[n:] for each in rows]
        index = self.names.index(name)
        unit = [1.0 if i == index else 0.0 for i in range(len(self.names))]
        weights = solved_matrix([list(each) for each in zip(*rows_x, strict=True)], unit)
        if weights is None:
            return [nan] * len(self.inputs)
        return [
            -sum(w * row[k] for w, row in zip(weights, rows_p, strict=True)) for k in range(len(self.inputs))
        ]

    def _at(
        self, values: Mapping[str, float], arguments: Sequence[float]
    ) -> tuple[list[Figure], list[Figure], list[Figure]]:
        """Unknowns, inputs and sides again, at other values.

        The inputs become leaves: one may be built on another, and each has its own slope.
        """
        leaf = Leaf(LeafKind.SOURCE, "", "")
        unknowns = [make(values[name], each.dimension, leaf, ()) for name, each in self.leaves.items()]
        inputs = [make(v, each.dimension, leaf, ()) for v, each in zip(arguments, self.inputs, strict=True)]
        again = dict(
            zip([id(each) for each in (*self.leaves.values(), *self.inputs)], unknowns + inputs, strict=True)
        )

        def turned(each: Any) -> Any:
            return tuple(map(turned, each)) if isinstance(each, tuple) else again.get(id(each), each)

        for figure in self.order:
            if id(figure) in self.depends and id(figure) not in again:
                given = turned(figure.inputs)
                value = runner(figure.origin)(values_of(given))
                again[id(figure)] = make(value, figure.dimension, figure.origin, given)
        return unknowns, inputs, [again[id(each)] for each in self.targets]

    def solve_again(self, arguments: Sequence[Any], start: Mapping[str, float]) -> dict[str, Any]:
        """The unknowns for other inputs; arrays are solved side by side."""
        if not any(hasattr(each, "__array__") for each in arguments):
            if all(float(a) == float(b) for a, b in zip(arguments, self.inputs, strict=True)):
                return dict(start)
            outcome, values = self.search(dict(start), arguments)
            return values if outcome.solved else dict.fromkeys(values, nan)
        from heatledger.ledger.solving_arrays import search_arrays

        return search_arrays(self.program, self.names, arguments, start, self.floor())
