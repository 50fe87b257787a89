"""What a figure costs over the bare call: the check of its inputs, the recording, the object."""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator
from typing import Any

from timing import Row, side_by_side

from heatledger.ledger.figures import Figure, Leaf, LeafKind, leaf
from heatledger.ledger.formulas import formula_of
from heatledger.physics.air import air_flow, air_loss, dry_air_density
from heatledger.physics.envelope import heat_loss, net_area, transmission_loss

MOST = 1e-6
"""Seconds that recording may add to one call."""
SHAPES: list[tuple[Callable[..., Figure], list[float]]] = [
    (net_area, [20.0, 3.6]),
    (air_flow, [50.0, 1.4e-4]),
    (transmission_loss, [20.0, 0.45, 294.15, 258.15]),
    (air_loss, [50.0, 1.4e-4, 1206.0, 294.15, 258.15]),
    (dry_air_density, [101325.0, 294.15]),
]
REPEATS, ROUNDS = 2000, 41


def figures(function: Callable[..., Figure], values: list[float]) -> list[Figure]:
    """Leaves with these values, one a parameter."""
    parameters = formula_of(function).parameters
    origin = Leaf(LeafKind.JOB, "site", "entry")
    return [leaf(value, each.dimension, origin) for value, each in zip(values, parameters, strict=True)]


def calls(
    function: Callable[..., Figure], values: list[float]
) -> tuple[Callable[[], Any], Callable[[], Any]]:
    """The formula on figures, and its bare body on floats."""
    inputs, bare = figures(function, values), formula_of(function).body
    return lambda: function(*inputs), lambda: bare(*values)


def rows() -> Iterator[Row]:
    """One line a shape of formula, and one for a sum of twenty parts."""
    shapes: list[tuple[str, Any]] = [(each.__name__, calls(each, values)) for each, values in SHAPES]
    parts = [
        leaf(100.0 + i, formula_of(heat_loss).dimension, Leaf(LeafKind.JOB, "site", "part"))
        for i in range(20)
    ]
    numbers, bare = [float(each) for each in parts], formula_of(heat_loss).body
    shapes.append(("sum of 20 parts", (lambda: heat_loss(parts), lambda: bare(numbers))))
    for name, (ours, theirs) in shapes:
        mine, its = side_by_side(ours, theirs, REPEATS, ROUNDS)
        budget = None if name.startswith("sum") else 1.0  # a sum looks at each of its parts
        yield Row(f"figure: {name}, added per call", mine - its, "1 µs", MOST, budget)
        yield Row(f"figure: {name}, whole call", mine, "bare call", its)


def main() -> int:
    """Print every line."""
    for each in rows():
        print(f"{each.what:60} {each.ours * 1e6:8.2f} µs  {each.ratio:6.2f} of {each.against}")
    return 0


if __name__ == "__main__":
    sys.exit(main())
