"""Running figures again with other values at the leaves, and carrying slopes back to them.

A study does not design ten thousand houses: it replays the figures it asks about, in dependency
order, with arrays where the leaves are sampled. Figures that do not depend on a sampled leaf keep
their value. Choices stay as made. Parts of a total are added as they come and dropped.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from math import nan
from typing import Any

from heatledger.ledger.choosing import Choice
from heatledger.ledger.figures import Figure, LedgerError, ancestors, flat, original_of
from heatledger.ledger.formulas import Formula
from heatledger.ledger.recording import replayed_body
from heatledger.ledger.slopes import carrier_of

Values = dict[int, Any]


def replay(targets: Sequence[Figure], leaf_values: Mapping[Figure, Any]) -> list[Any]:
    """Values of ``targets`` when the leaves in ``leaf_values`` have other SI values (floats or arrays).

    Raises ``LedgerError`` for a figure that none of the targets is built on.
    """
    return Program(targets, list(leaf_values)).run(list(leaf_values.values()))


class Program:
    """The steps that lead from the leaves that move to the targets, worked out once."""

    def __init__(self, targets: Sequence[Figure], moving: Sequence[Figure]) -> None:
        self.targets = [original_of(each) for each in targets]
        self.moving = [id(original_of(each)) for each in moving]
        self.order = ancestors(*self.targets)
        known = {id(each) for each in self.order}
        for key, each in zip(self.moving, moving, strict=True):
            if key not in known:
                raise LedgerError(f"{each!r} does not move what is asked for: no target is built on it")
        self.varies = set(self.moving)
        self._inputs: dict[int, list[Figure]] = {}
        for figure in self.order:
            inputs = list(flat(figure.inputs)) if figure.inputs else []
            if not self.varies.isdisjoint(map(id, inputs)):
                self.varies.add(id(figure))
                self._inputs[id(figure)] = inputs
        self.steps: list[Callable[[Values], None]] = []
        self._done: set[int] = set(self.moving)
        self._uses = self._count_uses()
        for each in self.targets:
            self._visit(each)

    def _count_uses(self) -> dict[int, int]:
        uses: dict[int, int] = {id(each): 1 for each in self.targets}
        for inputs in self._inputs.values():
            for each in inputs:
                uses[id(each)] = uses.get(id(each), 0) + 1
        return uses

    def _visit(self, figure: Figure) -> None:
        """Emit the steps of a figure after those of its inputs."""
        stack: list[tuple[Figure, bool]] = [(figure, False)]
        while stack:
            current, ready = stack.pop()
            key = id(current)
            if key in self._done or key not in self.varies:
                continue
            if _only_parts(current):
                self._done.add(key)
                self._stream(current)
            elif ready:
                self._done.add(key)
                self.steps.append(self._step(current))
            else:
                stack.append((current, True))
                stack.extend((each, False) for each in reversed(self._inputs[key]) if id(each) in self.varies)

    def _stream(self, figure: Figure) -> None:
        """A total: each part is added when it is worked out, in the order of the parts."""
        key = id(figure)
        self.steps.append(_starter(key))
        for part in figure.inputs[0]:
            self._visit(part)
            self.steps.append(self._adder(key, part))

    def _adder(self, key: int, part: Figure) -> Callable[[Values], None]:
        value = float(part)
        if id(part) not in self.varies:
            return lambda values: _add(values, key, value)
        source, last = id(part), self._last_use(part)

        def add(values: Values) -> None:
            _add(values, key, values[source])
            if last:
                del values[source]

        return add

    def _last_use(self, figure: Figure) -> bool:
        self._uses[id(figure)] -= 1
        return self._uses[id(figure)] == 0 and id(figure) not in self.moving

    def _step(self, figure: Figure) -> Callable[[Values], None]:
        key, origin = id(figure), figure.origin
        fetch = _fetcher(figure, self.varies)
        drop = [id(each) for each in self._inputs[key] if id(each) in self.varies and self._last_use(each)]
        run = runner(origin)

        def step(values: Values) -> None:
            values[key] = run(fetch(values))
            for each in drop:
                values.pop(each, None)

        return step

    def run(self, moved: Sequence[Any]) -> list[Any]:
        """Values of the targets for the values of the moving leaves."""
        values: Values = dict(zip(self.moving, moved, strict=True))
        if any(hasattr(each, "__array__") for each in moved):
            import numpy

            with numpy.errstate(all="ignore"):  # a state without an answer comes out as NaN
                for step in self.steps:
                    step(values)
        else:
            for step in self.steps:
                step(values)
        return [values[id(each)] if id(each) in self.varies else float(each) for each in self.targets]


def _starter(key: int) -> Callable[[Values], None]:
    def start(values: Values) -> None:
        values[key] = 0.0

    return start


def _add(values: Values, key: int, part: Any) -> None:
    so_far = values[key]
    if so_far.__class__ is float or so_far.__class__ is int:
        values[key] = so_far + part
    else:
        so_far += part


def _fetcher(figure: Figure, varies: set[int]) -> Callable[[Values], list[Any]]:
    """A function that gathers the arguments of a figure: moving ones by key, the rest as they are."""
    start: list[Any] = []
    moving: list[tuple[int, int]] = []
    parts: list[tuple[int, list[tuple[int, float, bool]]]] = []
    for place, each in enumerate(figure.inputs):
        if each.__class__ is tuple:
            parts.append((place, [(id(one), one._si, id(one) in varies) for one in each]))
            start.append(None)
            continue
        if id(each) in varies:
            moving.append((place, id(each)))
        start.append(each._si)

    def fetch(values: Values) -> list[Any]:
        arguments = start.copy()
        for place, key in moving:
            arguments[place] = values[key]
        for place, several in parts:
            arguments[place] = [values[key] if moves else value for key, value, moves in several]
        return arguments

    return fetch


def runner(origin: Any) -> Callable[[list[Any]], Any]:
    """How a figure of this origin is worked out from the values of its inputs."""
    if isinstance(origin, Formula):
        return replayed_body(origin)
    if isinstance(origin, Choice):
        return lambda arguments: arguments[0]
    solved = getattr(origin, "replayed", None)
    if solved is None:
        raise LedgerError(f"{origin!r} cannot be replayed")
    return solved  # type: ignore[no-any-return]


def _only_parts(figure: Figure) -> bool:
    origin = figure.origin
    return isinstance(origin, Formula) and origin.expression.op == "total" and len(origin.parameters) == 1


def values_of(inputs: tuple[Any, ...]) -> list[Any]:
    """The plain values of the inputs of a figure, those of parts as lists."""
    return [[one._si for one in each] if isinstance(each, tuple) else each._si for each in inputs]


def carry_back(target: Figure, order: Sequence[Figure] | None = None) -> dict[int, float]:
    """Slope of ``target`` with respect to every figure it is built on, by ``id``; SI over SI.

    A slope that the arithmetic has no value for, because an input is beyond all measure, is NaN.
    """
    target = original_of(target)
    order = ancestors(target) if order is None else order
    slopes: dict[int, float] = {id(target): 1.0}
    known = slopes.get
    for figure in reversed(order):
        inputs = figure.inputs
        if not inputs:
            continue
        own = known(id(figure))
        if not own:
            continue
        origin = figure.origin
        try:
            if origin.__class__ is Formula:
                carrier_of(origin)(inputs, own, slopes)
                continue
            moves = _own_slopes(figure)
        except (ZeroDivisionError, ValueError, OverflowError):
            moves = [nan] * len(inputs)
        for each, slope in zip(inputs, moves, strict=True):
            for one in each if each.__class__ is tuple else (each,):
                slopes[id(one)] = known(id(one), 0.0) + own * slope
    return slopes


def _own_slopes(figure: Figure) -> Sequence[float]:
    """Slopes of what was chosen or found together by its inputs."""
    origin = figure.origin
    if isinstance(origin, Choice):  # it moves with what was taken, not with what it was looked up by
        return (1.0, 0.0)[: len(figure.inputs)]
    slopes: Sequence[float] = origin.slopes(values_of(figure.inputs))
    return slopes


def gap_slopes(sides: Sequence[Figure], by: Sequence[Figure]) -> list[list[float]]:
    """Slopes of each left side less its right one by each of some figures; a side may serve several."""
    carried = {id(each): carry_back(each) for each in dict.fromkeys(sides)}
    pairs = ((carried[id(a)], carried[id(b)]) for a, b in zip(sides[0::2], sides[1::2], strict=True))
    return [[one.get(id(each), 0.0) - two.get(id(each), 0.0) for each in by] for one, two in pairs]
