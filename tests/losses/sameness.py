"""Two designs held to each other: every path in order, every value, and all that each figure rests on."""

from __future__ import annotations

from typing import Any

from heatledger.ledger.as_text import working
from heatledger.ledger.choosing import Choice
from heatledger.ledger.figures import Figure, Leaf
from heatledger.ledger.formulas import Formula
from heatledger.ledger.presets import US
from heatledger.ledger.solving import Solved
from heatledger.steps.design import Design

TOLD = ("actual_flow", "relative_roughness", "balancing")


def same(one: Design, other: Design) -> None:
    """Assert that two designs are the same, figure by figure, down to the entries."""
    first, second = one.results, other.results
    assert list(first) == list(second)
    seen: set[tuple[int, int]] = set()
    for path, figure in first.items():
        _alike(figure, second[path], path, seen)
    assert list(one.figures) == list(other.figures)
    assert {path: one.names.path(figure) for path, figure in first.items()} == {
        path: other.names.path(figure) for path, figure in second.items()
    }
    assert texts(one.losses) == texts(other.losses)
    assert texts(one.circuits.circuits) == texts(other.circuits.circuits)
    assert workings(one) == workings(other)


def workings(of: Design) -> dict[str, str]:
    """What is told of the figures of the piping: those that are found together, and those that are shared."""
    return {
        path: working(of[path], US)
        for path in of.results
        if path.startswith("circuits/") and path.rpartition("/")[2] in TOLD
    }


def _alike(one: Figure, other: Figure, path: str, seen: set[tuple[int, int]]) -> None:
    if one is other or (id(one), id(other)) in seen:
        return
    seen.add((id(one), id(other)))
    assert repr(float(one)) == repr(float(other)), path
    # A leaf is one figure in every reading of a job, so two leaves that differ were entered differently.
    assert not isinstance(one.origin, Leaf), (path, one.origin, other.origin)
    assert _maker(one.origin) == _maker(other.origin), path
    assert len(one.inputs) == len(other.inputs), path
    for mine, theirs in zip(one.inputs, other.inputs, strict=True):
        if isinstance(mine, tuple):
            assert len(mine) == len(theirs), path
            for a, b in zip(mine, theirs, strict=True):
                _alike(a, b, path, seen)
        else:
            _alike(mine, theirs, path, seen)


def _maker(origin: Any) -> Any:
    if isinstance(origin, Choice):
        return origin.winner, origin.rule, origin.because
    if isinstance(origin, Solved):
        return origin.unknown, origin.solution.words, tuple(origin.solution.figures)
    assert isinstance(origin, Formula)
    return origin.name


def texts(thing: Any) -> Any:
    """Everything in a result that is no figure: names, causes, what is beyond."""
    if isinstance(thing, Figure) or thing is None:
        return None
    if isinstance(thing, dict):
        return [(key, texts(each)) for key, each in thing.items()]
    if hasattr(thing, "__dataclass_fields__") and not isinstance(thing, type):
        return [(each, texts(getattr(thing, each))) for each in thing.__dataclass_fields__]
    return thing
