"""The figure: a float that remembers what made it and what went in.

A figure is made by a formula from other figures, or it is a leaf: an entry of the job, a cell of a
catalog, a value of a source. Its path and name come from where it is found in the results. It refuses
arithmetic and comparison, since a number made that way has no working: ``float(figure)`` is the way out.

Some doors cannot be shut on a kind of float, as they read the number inside without asking: ``math``,
``decimal``, ``json``, ``numpy.asarray``, ``float.__add__`` called by name. Nor are figures to be written
over; to refuse that would make each cost half as much again.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field, fields
from enum import Enum
from math import isnan, nan
from typing import TYPE_CHECKING, Any, NoReturn
from weakref import WeakValueDictionary

from heatledger.ledger.dimensions import Dimension
from heatledger.ledger.sources import Citation


class LedgerError(Exception):
    """A mistake in the use of the ledger, for the programmer to mend."""


class LeafKind(Enum):
    """Where the working of every figure must end."""

    JOB = "job"
    CATALOG = "catalog"
    SOURCE = "source"


@dataclass(frozen=True, eq=False)
class Leaf:
    """Origin of a figure that nothing was worked out for.

    ``path`` is its place in the job or the catalog, ``words`` what it is, ``typed`` the text as written.
    ``typed_value`` is that number in ``unit``, ``places`` its decimals (None when it was written in parts,
    as 12' 6"), ``half_range`` the SI half-range of how well it is known.
    """

    kind: LeafKind
    path: str
    words: str
    typed: str = ""
    unit: str = ""
    typed_value: float = nan
    places: int | None = None
    known: str = ""
    half_range: float = 0.0
    half_range_words: str = ""
    citation: Citation | None = None
    beside: tuple[str, ...] = ()
    """Words on its neighbors in the table, or on the rule that chose it."""
    replaces: str = ""
    """What stood here before a what-if replaced it."""


_LEAF_FIELDS = tuple(each.name for each in fields(Leaf))


def _no_arithmetic(what: str) -> Any:
    def refuse(self: Figure, *others: object) -> NoReturn:
        raise LedgerError(
            f"a figure cannot be {what} outside a formula: the result would be a number from nowhere. "
            "Write a formula, or use float(figure) to leave the ledger."
        )

    return refuse


def _no_comparison(self: Figure, other: object) -> NoReturn:
    raise LedgerError(
        "figures are not compared with < or >: use exceeds(a, b) for a test and choose(...) for the "
        "larger, smaller or best of several, so that the reason is kept"
    )


class Figure(float):
    """A number with its working.

    ``dimension``: what kind of quantity it is. ``origin``: the formula, leaf, choice, count or
    solution it comes from. ``inputs``: the figures that went in; the parts of a sum stand in a tuple.
    """

    __slots__ = ("__weakref__", "_si", "dimension", "inputs", "origin")

    dimension: Dimension
    origin: Any
    inputs: tuple[Any, ...]
    _si: float
    """The plain value again; quicker for the ledger's own modules than ``float(figure)``."""

    if TYPE_CHECKING:  # the body of a formula is checked as if figures could be worked with

        def __add__(self, other: float) -> Figure: ...
        def __radd__(self, other: float) -> Figure: ...
        def __sub__(self, other: float) -> Figure: ...
        def __rsub__(self, other: float) -> Figure: ...
        def __mul__(self, other: float) -> Figure: ...
        def __rmul__(self, other: float) -> Figure: ...
        def __truediv__(self, other: float) -> Figure: ...
        def __rtruediv__(self, other: float) -> Figure: ...
        def __pow__(self, power: float) -> Figure: ...  # type: ignore[override]
        def __neg__(self) -> Figure: ...
    else:
        __lt__ = __le__ = __gt__ = __ge__ = _no_comparison
        __add__ = __radd__ = __sub__ = __rsub__ = _no_arithmetic("added or subtracted")
        __mul__ = __rmul__ = __truediv__ = __rtruediv__ = _no_arithmetic("multiplied or divided")
        __floordiv__ = __rfloordiv__ = __mod__ = __rmod__ = _no_arithmetic("divided")
        __divmod__ = __rdivmod__ = _no_arithmetic("divided")
        __pow__ = __rpow__ = _no_arithmetic("raised to a power")
        __neg__ = __pos__ = __abs__ = __round__ = _no_arithmetic("changed in sign or rounded")
        __bool__ = _no_arithmetic("tested for zero")
        __trunc__ = __floor__ = __ceil__ = __int__ = _no_arithmetic("rounded")
        __complex__ = conjugate = as_integer_ratio = hex = is_integer = _no_arithmetic("taken apart")
        real = imag = property(_no_arithmetic("taken apart"))
        fromhex = classmethod(_no_arithmetic("made of text"))

    def __eq__(self, other: object) -> bool:
        """A figure is itself only; beside a plain number its value counts."""
        return self is other if isinstance(other, Figure) else float.__eq__(self, other) is True

    def __ne__(self, other: object) -> bool:
        return not self == other

    __hash__ = object.__hash__
    __array_ufunc__ = None
    """Keeps arrays from taking a figure for a number, so that it can refuse."""

    def __repr__(self) -> str:
        name = getattr(self.origin, "name", "") or getattr(self.origin, "path", "")
        return f"<figure {float(self):.6g} (SI), {self.dimension}, from {name}>"

    __str__ = __repr__

    def __format__(self, spec: str) -> str:
        """Its description, as text; a form for numbers is refused."""
        try:
            return format(repr(self), spec)
        except ValueError:
            raise LedgerError("a figure is written by show(figure, units)") from None

    def __reduce__(self) -> NoReturn:
        raise LedgerError("a figure is not stored alone: store the job, and design it again")

    @property
    def is_missing(self) -> bool:
        """True when there is no value, because an input is missing or cannot be worked with."""
        return isnan(self)


def make(value: float, dimension: Dimension, origin: Any, inputs: tuple[Any, ...]) -> Figure:
    """A figure from its four parts; for the ledger's own modules."""
    figure = Figure(value)
    figure._si, figure.dimension = float(value), dimension
    figure.origin, figure.inputs = origin, inputs
    return figure


_LEAVES: WeakValueDictionary[tuple[Any, ...], Figure] = WeakValueDictionary()


def leaf(value: float, dimension: Dimension, origin: Leaf) -> Figure:
    """A leaf figure; ``value`` in SI, NaN when the entry is missing.

    The same entry, typed and known the same way, is the same figure, also in another reading of the
    job: what shares one leaf moves together.
    """
    key = (repr(value), dimension.name, *(getattr(origin, each) for each in _LEAF_FIELDS))
    key = tuple("nan" if each != each else each for each in key)
    found = _LEAVES.get(key)
    if found is None:
        found = _LEAVES[key] = make(value, dimension, origin, ())
    return found


def missing(dimension: Dimension, path: str, words: str) -> Figure:
    """A figure without a value, standing for an entry that has not been given yet."""
    return leaf(nan, dimension, Leaf(LeafKind.JOB, path, words))


def flat(inputs: Iterable[Any]) -> Iterator[Figure]:
    """The figures of an ``inputs`` tuple, those inside parts too, in order."""
    found: list[Figure] = []
    for each in inputs:
        found += each if each.__class__ is tuple else (each,)
    return iter(found)


def ancestors(*figures: Figure) -> list[Figure]:
    """Every figure these are built on, themselves last, each once, inputs before results."""
    order: list[Figure] = []
    seen: set[Figure] = set()
    stack: list[Figure | None] = list(reversed(figures))
    put, see, push, pop = order.append, seen.add, stack.append, stack.pop
    while stack:
        figure = pop()
        if figure is None:  # all inputs of the one below are in
            put(pop())  # type: ignore[arg-type]
            continue
        if figure in seen:
            continue
        see(figure)
        inputs = figure.inputs
        if not inputs:
            put(figure)
            continue
        push(figure)
        push(None)
        for each in reversed(inputs):
            if each.__class__ is tuple:
                stack.extend([one for one in reversed(each) if one not in seen])
            elif each not in seen:
                push(each)
    return order


def leaves(*figures: Figure) -> list[Figure]:
    """The leaves these figures come down to, each once."""
    return [each for each in ancestors(*figures) if isinstance(each.origin, Leaf)]


def waits_for(figure: Figure) -> list[Figure]:
    """The missing entries that keep a figure from having a value."""
    return [each for each in leaves(figure) if each.is_missing] if figure.is_missing else []


def exceeds(first: float, second: float) -> bool:
    """True when ``first`` is larger than ``second``; false when either is missing."""
    figures = isinstance(first, Figure) and isinstance(second, Figure)
    if figures and first.dimension is not second.dimension:  # type: ignore[attr-defined]
        raise LedgerError(f"{first.dimension} is not compared with {second.dimension}")  # type: ignore[attr-defined]
    return float(first) > float(second)


@dataclass(frozen=True, eq=False)
class Counting:
    """Origin of a count: the things that were counted."""

    name: str
    things: tuple[str, ...] = field(default=())


class Names:
    """What figures are called and where they stand; a design knows better than this default."""

    def title(self, figure: Figure) -> str:
        """What a figure is called: the title of its formula, or the words of its entry."""
        origin = figure.origin
        if hasattr(origin, "winner") and figure.inputs:  # what was chosen is called what it is
            return self.title(figure.inputs[0])
        said = (getattr(origin, each, "") for each in ("title", "words", "name"))
        return str(next(filter(None, said), ""))

    def path(self, figure: Figure) -> str:
        """The path of a figure in the tree of things, or of its entry; empty when it has none."""
        return str(getattr(figure.origin, "path", ""))

    def place(self, figure: Figure) -> str:
        """Where an entry was written, for people: file and line."""
        return self.path(figure)

    def uses(self, figure: Figure) -> list[Figure]:
        """The figures built directly on this one."""
        return []

    def thing(self, key: str) -> str:
        """What the thing of a choice or of a search is called, by its key."""
        return key


NO_NAMES = Names()


class Placed(Figure):
    """A figure as it was found in a design, which knows its name and its place."""

    __slots__ = ("names", "original")

    names: Names
    original: Figure


def placed(figure: Figure, names: Names) -> Placed:
    """The same figure, with the design it was found in."""
    made = Placed(figure._si)
    made._si = figure._si
    made.dimension, made.origin, made.inputs = figure.dimension, figure.origin, figure.inputs
    made.names, made.original = names, figure
    return made


def original_of(figure: Figure) -> Figure:
    """The figure itself, without the place it was found in."""
    return figure.original if isinstance(figure, Placed) else figure
