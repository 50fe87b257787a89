"""Where a formula, a table or a rule comes from, and how sure we are of it.

One bibliography (``sources.yaml``) holds the works; every use of one names its key, the place in
it and its standing. A software library is never a published source.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from functools import cache
from importlib import resources


class Standing(Enum):
    """How well a source is known, with the word that stands beside it."""

    SEEN = "read there"
    SECOND_HAND = "second hand"
    MEMORY = "from memory"
    PRACTICE = "common practice"
    DERIVED = "derived"
    JUDGMENT = "judgment"
    YOURS = "yours"
    INVENTED = "invented"


SEEN, SECOND_HAND, MEMORY, PRACTICE = (
    Standing.SEEN, Standing.SECOND_HAND, Standing.MEMORY, Standing.PRACTICE,
)  # fmt: skip
DERIVED, JUDGMENT, YOURS, INVENTED = (
    Standing.DERIVED, Standing.JUDGMENT, Standing.YOURS, Standing.INVENTED,
)  # fmt: skip


@dataclass(frozen=True)
class Citation:
    """One use of a source: its key in the bibliography, the place in it, and its standing."""

    key: str
    place: str
    standing: Standing

    def __str__(self) -> str:
        inside = ", ".join(each for each in (self.key, self.place) if each)
        return inside or self.standing.value


def cite(key: str, place: str = "", standing: Standing = MEMORY) -> Citation:
    """A citation; ``key`` is empty only for practice, judgment and what is derived here."""
    if not key and standing in (SEEN, SECOND_HAND, MEMORY):
        raise ValueError(f"a citation that is {standing.value!r} must name its source")
    return Citation(key, place, standing)


@dataclass(frozen=True)
class Source:
    """A work in the bibliography."""

    key: str
    title: str
    edition: str
    used_for: str


@cache
def bibliography() -> dict[str, Source]:
    """Every work by its key, read from ``sources.yaml``."""
    from ruamel.yaml import YAML

    text = resources.files("heatledger.ledger").joinpath("sources.yaml").read_text("utf-8")
    rows = YAML(typ="safe", pure=True).load(text)
    return {
        key: Source(key, row["title"], str(row.get("edition", "")), row["used_for"])
        for key, row in rows.items()
    }
