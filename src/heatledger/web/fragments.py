"""The parts of a page that can be swapped alone."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any


@dataclass(frozen=True)
class Fragment:
    """A section of a page: its id, the template that draws it, and what that template is given.

    The template is given ``p``, the page, as well. A fragment that ``waits`` shows findings, so it follows
    after an edit has been answered.
    """

    id: str
    template: str
    data: dict[str, Any] = field(default_factory=dict)
    css: str = ""
    waits: bool = False
