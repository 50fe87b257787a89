"""What the app is told when it starts."""

from __future__ import annotations

from dataclasses import dataclass, field

DEFAULT_PORT = 8420
LOOPBACK = "127.0.0.1"


@dataclass(frozen=True)
class Settings:
    """Where the book is, where the app listens, and whether other devices are let in.

    ``book_url`` None is the book in the user's data folder. ``port`` is the port listened on, which every
    request has to name; ``port_given`` keeps the app from taking the next free one. ``demo`` puts the
    invented jobs into a book that is new.
    """

    book_url: str | None = None
    host: str = LOOPBACK
    port: int = DEFAULT_PORT
    share: bool = False
    passphrase: str = field(default="", repr=False)
    demo: bool = True
    port_given: bool = False
