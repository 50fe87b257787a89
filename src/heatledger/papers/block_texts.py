"""The texts of blocks: a string, or pieces that are bold, are figures with keys, or are to be filled in."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from heatledger.papers.workings_data import Known

Mark = Literal["", "must fix", "decide", "note", "fine"]


@dataclass(frozen=True)
class Run:
    """A piece of a text.

    ``kind`` is how it is set. ``key``, ``known`` and ``standing`` belong to a figure. ``blank`` is the
    length in points of a rule to write on after the text, ``box`` sets a box to tick before it.
    """

    text: str
    kind: Literal["", "bold", "quiet", "small", "serif"] = ""
    key: str = ""
    known: Known = ""
    standing: str = ""
    mark: Mark = ""
    blank: float = 0.0
    box: bool = False


Text = str | tuple["str | Run", ...]
