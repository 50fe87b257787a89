"""Frozen results made of figures, and the tree of paths that leads to each of them.

A path is thing, id, quantity: ``rooms/kitchen/surfaces/north-wall/loss``. A field of a result is a
step of the path, and so is the key of a dictionary of results; a result whose ``__path__`` is empty
stands where its owner stands.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator, Mapping
from typing import Any, TypeVar, dataclass_transform, get_args, get_type_hints

from heatledger.ledger.dimensions import Dimension, dimension_of
from heatledger.ledger.figures import Figure, LedgerError

Result = TypeVar("Result")


@dataclass_transform(frozen_default=True)
def result(cls: type[Result]) -> type[Result]:
    """Make a class a frozen result; fields that name a dimension must be figures of that dimension."""
    made = dataclasses.dataclass(frozen=True, eq=False)(cls)
    checked: dict[str, tuple[Dimension, bool]] | None = None

    def check(self: Any) -> None:
        nonlocal checked
        if checked is None:
            checked = _dimensions(made)
        for name, (dimension, optional) in checked.items():
            each = getattr(self, name)
            if each.__class__ is Figure and each.dimension is dimension:
                continue
            if each is None and optional:
                continue
            _refuse(made, name, each, dimension)

    plain_init = made.__init__

    def __init__(self: Any, *args: Any, **kwargs: Any) -> None:
        plain_init(self, *args, **kwargs)
        check(self)

    made.__init__ = __init__  # type: ignore[method-assign]
    return made


def _dimensions(cls: type) -> dict[str, tuple[Dimension, bool]]:
    """Fields that name a dimension, and whether they may be None."""
    found = {}
    for name, hint in get_type_hints(cls, include_extras=True).items():
        options = [hint, *get_args(hint)]
        dimension = next((d for d in map(dimension_of, options) if d is not None), None)
        if dimension is not None:
            found[name] = (dimension, type(None) in get_args(hint))
    return found


def _refuse(cls: type, name: str, given: Any, dimension: Dimension) -> None:
    if not isinstance(given, Figure):
        raise LedgerError(f"{cls.__name__}.{name} is {given!r}, not a figure: a number from nowhere")
    if given.dimension is not dimension:
        raise LedgerError(f"{cls.__name__}.{name} is a {dimension}, not a {given.dimension}")


def walk_results(thing: Any, path: str = "") -> Iterator[tuple[str, Figure]]:
    """Every figure of nested results with its path."""
    if isinstance(thing, Figure):
        yield path, thing
    elif isinstance(thing, Mapping):
        for key, each in thing.items():
            yield from walk_results(each, f"{path}/{key}" if path else str(key))
    elif dataclasses.is_dataclass(thing) and not isinstance(thing, type):
        for field in dataclasses.fields(thing):
            each = getattr(thing, field.name)
            step = "" if getattr(each, "__path__", None) == "" else field.name
            yield from walk_results(each, f"{path}/{step}".strip("/"))
