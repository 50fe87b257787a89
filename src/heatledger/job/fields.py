"""One key of a job file and one kind of mapping: what a form is made of."""

from __future__ import annotations

from dataclasses import dataclass, field

from heatledger.job.model import KNOWN
from heatledger.ledger.dimensions import Dimension


@dataclass(frozen=True)
class Field:
    """One key. ``kind``: text, yes-no, choice, quantity, size, whole, percent, shape, map, list or any."""

    key: str
    kind: str
    words: str
    dimension: Dimension | None = None
    least: str = "above zero"
    """``above zero``, ``zero`` (zero or more) or ``any``."""
    range: str = ""
    """Name of the half-range, where it is not the usual one of the dimension."""
    choices: tuple[str, ...] = ()
    shape: Shape | None = None
    example: str = ""


@dataclass(frozen=True)
class Shape:
    """One kind of mapping: what it is called in a message, and its keys."""

    name: str
    fields: tuple[Field, ...]
    by_key: dict[str, Field] = field(init=False, compare=False, repr=False)

    def __post_init__(self) -> None:
        object.__setattr__(self, "by_key", {each.key: each for each in self.fields})


def text(key: str, words: str, example: str = "") -> Field:
    """A text as typed."""
    return Field(key, "text", words, example=example)


def quantity(
    key: str, words: str, dimension: Dimension, example: str, least: str = "above zero", range: str = ""
) -> Field:
    """A quantity with its unit."""
    return Field(key, "quantity", words, dimension, least, range, example=example)


def map_of(key: str, words: str, shape: Shape) -> Field:
    """Things by id."""
    return Field(key, "map", words, shape=shape)


KNOWN_FIELD = Field("known", "choice", "how well it is known", choices=KNOWN, example="measured")
NAME = text("name", "name shown", "North wall")
BECAUSE = text("because", "reason", "sash label")
