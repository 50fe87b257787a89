"""Frozen results made of figures, and the tree of paths that leads to each of them.

A path is thing, id, quantity: ``rooms/kitchen/surfaces/north-wall/loss``. A field of a result is a
step of the path, and so is the key of a dictionary of results; a result whose ``__path__`` is empty
stands where its owner stands.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Callable, Iterator, Mapping
from functools import cache
from operator import attrgetter
from types import NoneType, UnionType
from typing import Any, TypeVar, Union, dataclass_transform, get_args, get_origin, get_type_hints

from heatledger.ledger.dimensions import Dimension, dimension_of
from heatledger.ledger.figures import Figure, LedgerError

Result = TypeVar("Result")


@dataclass_transform(frozen_default=True)
def result(cls: type[Result]) -> type[Result]:
    """Make a class a frozen, slotted result whose quantities are figures.

    A field that names a dimension (``HeatRate``, ``HeatRate | None``, ``dict[str, HeatRate]``) must be
    a figure of that dimension, and is checked when a result is made. Raises ``LedgerError``.
    """
    own = cls.__dict__.get("__post_init__")
    waiting: Any = cls

    def __post_init__(self: Any) -> None:
        # Written out at the first result, when every name in its annotations is known.
        check = _checker(type(self), own)
        type(self).__post_init__ = check
        check(self)

    waiting.__post_init__ = __post_init__
    return dataclasses.dataclass(frozen=True, eq=False, slots=True)(cls)


def _checker(cls: type, own: Any) -> Any:
    """A function that checks every quantity of a result of this class, then runs its own checks."""
    lines, space = [], {"Figure": Figure, "fault": _fault, "own": own}
    hints = get_type_hints(cls, include_extras=True)
    for i, each in enumerate(dataclasses.fields(cls)):
        dimension, optional, many = _kind(hints[each.name])
        if dimension is None:
            continue
        space[f"d{i}"] = dimension
        bad = f"(x.__class__ is not Figure or x.dimension is not d{i})"
        value, deeper = f"self.{each.name}", "    "
        if many:
            lines += [f"    for x in {value}.values():", f"        if {bad}:"]
            deeper = "        "
        else:
            lines += [f"    x = {value}", f"    if {'x is not None and ' if optional else ''}{bad}:"]
        lines.append(f"{deeper}    fault(self, {each.name!r}, x, d{i})")
    lines.append("    own(self)" if own else "    return None")
    exec(compile("def check(self):\n" + "\n".join(lines) + "\n", f"<result {cls.__name__}>", "exec"), space)  # noqa: S102 - from our own fields
    return space["check"]


def _kind(hint: Any) -> tuple[Dimension | None, bool, bool]:
    """The dimension a field names, whether it may be None, and whether it is a dictionary of figures."""
    if get_origin(hint) in (Union, UnionType):
        options = [each for each in get_args(hint) if each is not NoneType]
        return dimension_of(options[0]) if len(options) == 1 else None, NoneType in get_args(hint), False
    if isinstance(get_origin(hint), type) and issubclass(get_origin(hint), Mapping):
        return dimension_of(get_args(hint)[-1]), False, True
    return dimension_of(hint), False, False


def _fault(self: Any, name: str, given: Any, dimension: Dimension) -> None:
    where = f"{type(self).__name__}.{name}"
    if not isinstance(given, Figure):
        raise LedgerError(f"{where} is {given!r}, not a figure: a number from nowhere")
    if given.dimension is not dimension:
        raise LedgerError(f"{where} takes a figure of kind {dimension}, not {given.dimension}")


def walk_results(thing: Any, path: str = "") -> Iterator[tuple[str, Figure]]:
    """Every figure of nested results with its path."""
    found: list[tuple[str, Figure]] = []
    _walk(thing, path, found.append)
    return iter(found)


@dataclasses.dataclass(frozen=True)
class _Way:
    """How one class is walked: a figure, a mapping, a result with its fields, or none of them."""

    kind: str
    names: tuple[str, ...] = ()
    values: Callable[[Any], tuple[Any, ...]] = tuple
    is_no_step: bool = False


def _walk(thing: Any, path: str, add: Callable[[tuple[str, Figure]], None]) -> None:
    way = _way(thing.__class__)
    before = f"{path}/" if path else ""
    if way.kind == "result":
        for name, each in zip(way.names, way.values(thing), strict=True):
            if each.__class__ is Figure:
                add((before + name, each))
                continue
            inner = _way(each.__class__)
            if inner.kind:
                _walk(each, path if inner.is_no_step else before + name, add)
    elif way.kind == "mapping":
        for key, each in thing.items():
            _walk(each, f"{before}{key}", add)
    elif way.kind == "figure":
        add((path, thing))


@cache
def _way(kind: type) -> _Way:
    if issubclass(kind, Figure):
        return _Way("figure")
    if issubclass(kind, Mapping):
        return _Way("mapping")
    if not dataclasses.is_dataclass(kind):
        return _Way("")
    names = tuple(each.name for each in dataclasses.fields(kind))
    return _Way("result", names, values_at(names), getattr(kind, "__path__", None) == "")


def values_at(names: tuple[str, ...]) -> Callable[[Any], tuple[Any, ...]]:
    """A function that gets the values of these fields at once."""
    if len(names) > 1:
        return attrgetter(*names)
    return lambda thing: tuple(getattr(thing, each) for each in names)
