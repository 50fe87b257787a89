"""What is found together: unknowns that satisfy equations made of figures.

The equations are built once with trial figures at the unknowns. Newton's method then replays them,
with slopes carried backwards for its matrix, until every equation holds; the figures of the answer
are made from the values found. Each unknown can show its own equation with both sides worked out.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from math import nan
from typing import Any

from heatledger.ledger.dimensions import Dimension
from heatledger.ledger.figures import Figure, Leaf, LeafKind, LedgerError, ancestors, make
from heatledger.ledger.replay import Program, carry_back

MOST_STEPS = 50
CLOSE_ENOUGH = 1e-12

Sides = Mapping[str, tuple[Figure, Figure]]
Equations = Callable[[Mapping[str, Figure]], Sides]


@dataclass(frozen=True)
class Unknown:
    """One thing to be found: its dimension, and the SI value the search starts at."""

    dimension: Dimension
    start: float


@dataclass(frozen=True)
class Outcome:
    """How a search ended. ``worst`` is the largest difference between two sides, over their size."""

    solved: bool
    steps: int
    worst: float
    worst_at: str

    @property
    def words(self) -> str:
        """The outcome as a sentence."""
        if self.solved:
            return (
                f"Solved in {_counted(self.steps)}; the two sides of each equation agree to {self.worst:.0e}."
            )
        if not self.worst_at:
            return "Not searched for: an input is missing."
        return (
            f"No answer found in {_counted(self.steps)}; the equation of {self.worst_at} is off by "
            f"{self.worst:.1e} of its size. Look there for an input that cannot be."
        )


def _counted(steps: int) -> str:
    return "1 step" if steps == 1 else f"{steps} steps"


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

    def sides(self) -> Sides:
        """Both sides of every equation, worked out at the answer."""
        return self.equations(self.figures)

    def slopes(self, name: str) -> list[float]:
        """Slope of one unknown with respect to each input, by the implicit function rule."""
        return self._trial.slopes_of_unknown(name, self.values) if self._trial else []

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

    def slopes(self) -> list[float]:
        """Slope with respect to each input of the solution."""
        return self.solution.slopes(self.unknown)

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
        self.equations = equations
        self.leaves = {
            name: make(each.start, each.dimension, Leaf(LeafKind.SOURCE, name, name), ())
            for name, each in unknowns.items()
        }
        self.sides = equations(self.leaves)
        if set(self.sides) != set(unknowns):
            raise LedgerError("there must be one equation for each unknown")
        self.targets = [side for name in self.names for side in self.sides[name]]
        order = ancestors(*self.targets)
        ours = {id(each) for each in self.leaves.values()}
        depends = set(ours)
        for figure in order:
            if any(id(each) in depends for each in _flat(figure)):
                depends.add(id(figure))
        border: dict[int, Figure] = {}
        for figure in order:
            if id(figure) in depends:
                for each in _flat(figure):
                    if id(each) not in depends:
                        border[id(each)] = each
        for each in self.targets:
            if id(each) not in depends:
                border[id(each)] = each
        self.inputs = list(border.values())
        self.program = Program(self.targets, [*self.leaves.values(), *self.inputs])

    def search(
        self, start: dict[str, float], inputs: Sequence[Any] | None = None
    ) -> tuple[Outcome, dict[str, float]]:
        """Newton's method with halving, at most ``MOST_STEPS`` steps."""
        given = [float(each) for each in self.inputs] if inputs is None else list(inputs)
        x = [start[name] for name in self.names]
        gap, size = self._gaps(x, given)
        for step in range(1, MOST_STEPS + 1):
            move = _solved_matrix(self._matrix(x, given), [-each for each in gap])
            if move is None:
                break
            scale = 1.0
            for _ in range(30):
                trial = [a + scale * b for a, b in zip(x, move, strict=True)]
                new = self._gaps(trial, given)
                if max(map(abs, new[0])) <= max(map(abs, gap)) or scale < 1e-6:
                    break
                scale /= 2
            x = trial
            gap, size = new
            if all(abs(g) <= CLOSE_ENOUGH * s for g, s in zip(gap, size, strict=True)):
                break
        worst = max(range(len(x)), key=lambda i: abs(gap[i]) / size[i])
        off = abs(gap[worst]) / size[worst]
        solved = off <= 1e-9
        return Outcome(solved, step, off, self.names[worst]), dict(zip(self.names, x, strict=True))

    def _gaps(self, x: Sequence[float], given: Sequence[Any]) -> tuple[list[float], list[float]]:
        results = self.program.run([*x, *given])
        left, right = results[0::2], results[1::2]
        gap = [a - b for a, b in zip(left, right, strict=True)]
        size = [max(abs(a), abs(b), 1e-12) for a, b in zip(left, right, strict=True)]
        return gap, size

    def _matrix(self, x: Sequence[float], given: Sequence[Any]) -> list[list[float]]:
        """Slopes of each gap by each unknown, by central differences of the replayed equations."""
        columns = []
        for j, value in enumerate(x):
            step = 1e-6 * max(abs(value), 1.0)
            up, down = list(x), list(x)
            up[j], down[j] = value + step, value - step
            high, low = self._gaps(up, given)[0], self._gaps(down, given)[0]
            columns.append([(a - b) / (2 * step) for a, b in zip(high, low, strict=True)])
        return [[columns[j][i] for j in range(len(x))] for i in range(len(x))]

    def slopes_of_unknown(self, name: str, values: Mapping[str, float]) -> list[float]:
        """Slope of one unknown by each input: the matrix of the unknowns against that of the inputs."""
        at = self._at(values)
        unknowns = [at[self.names[j]] for j in range(len(self.names))]
        sides = self.equations(at)
        rows_x, rows_p = [], []
        for each in self.names:
            left, right = (carry_back(side) for side in sides[each])
            rows_x.append([left.get(id(u), 0.0) - right.get(id(u), 0.0) for u in unknowns])
            rows_p.append([left.get(id(p), 0.0) - right.get(id(p), 0.0) for p in self.inputs])
        index = self.names.index(name)
        unit = [1.0 if i == index else 0.0 for i in range(len(self.names))]
        weights = _solved_matrix([list(each) for each in zip(*rows_x, strict=True)], unit)
        if weights is None:
            return [nan] * len(self.inputs)
        return [
            -sum(w * row[k] for w, row in zip(weights, rows_p, strict=True)) for k in range(len(self.inputs))
        ]

    def _at(self, values: Mapping[str, float]) -> dict[str, Figure]:
        return {
            name: make(values[name], each.dimension, Leaf(LeafKind.SOURCE, name, name), ())
            for name, each in self.leaves.items()
        }

    def solve_again(self, arguments: Sequence[Any], start: Mapping[str, float]) -> dict[str, Any]:
        """The unknowns for other inputs; arrays are solved side by side."""
        if not any(hasattr(each, "__array__") for each in arguments):
            if all(float(a) == float(b) for a, b in zip(arguments, self.inputs, strict=True)):
                return dict(start)
            return self.search(dict(start), arguments)[1]
        from heatledger.ledger.solving_arrays import search_arrays

        return search_arrays(self.program, self.names, arguments, start)


def _flat(figure: Figure) -> list[Figure]:
    result: list[Figure] = []
    for each in figure.inputs:
        if isinstance(each, tuple):
            result.extend(each)
        else:
            result.append(each)
    return result


def _solved_matrix(matrix: list[list[float]], right: list[float]) -> list[float] | None:
    """Gaussian elimination with the largest pivot; None when the equations do not fix the unknowns."""
    n = len(right)
    rows = [list(row) + [value] for row, value in zip(matrix, right, strict=True)]
    for column in range(n):
        pivot = max(range(column, n), key=lambda i: abs(rows[i][column]))
        if not abs(rows[pivot][column]) > 0.0:
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
