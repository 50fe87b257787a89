"""Passes of a device: a random token in a cookie, of which only a digest is kept, and only in memory."""

from __future__ import annotations

import hashlib
import secrets
import time
from collections.abc import Callable
from dataclasses import dataclass
from threading import Lock
from typing import Generic, TypeVar

from fastapi.responses import Response

Holder = TypeVar("Holder")


@dataclass
class _Pass(Generic[Holder]):
    holder: Holder
    until: float


class Passes(Generic[Holder]):
    """Who holds a pass of one kind. A pass lasts ``seconds``; when there are ``most``, the oldest goes.

    The cookie can be read by no script and is sent with no request that another site begins. Stopping the
    app takes all passes back.
    """

    def __init__(
        self, cookie: str, seconds: float, most: int, clock: Callable[[], float] = time.monotonic
    ) -> None:
        self.cookie = cookie
        self._seconds, self._most, self._clock = seconds, most, clock
        self._kept: dict[bytes, _Pass[Holder]] = {}
        self._lock = Lock()

    def give(self, holder: Holder, answer: Response) -> None:
        """Make a pass and put it into an answer."""
        token = secrets.token_urlsafe(32)
        with self._lock:
            self._drop_old()
            while len(self._kept) >= self._most:
                del self._kept[next(iter(self._kept))]
            self._kept[_digest(token)] = _Pass(holder, self._clock() + self._seconds)
        answer.set_cookie(
            self.cookie, token, max_age=int(self._seconds), path="/", httponly=True, samesite="strict"
        )

    def holder(self, token: str) -> Holder | None:
        """Whose pass a token is; None when it is nobody's, or no longer."""
        if not token:
            return None
        with self._lock:
            self._drop_old()
            found = self._kept.get(_digest(token))
        return found.holder if found else None

    def holders(self) -> list[Holder]:
        """All who hold a pass, the oldest first."""
        with self._lock:
            self._drop_old()
            return [each.holder for each in self._kept.values()]

    def change(self, change: Callable[[Holder], Holder | None]) -> None:
        """Put another holder in the place of each; None takes the pass back."""
        with self._lock:
            for key, each in list(self._kept.items()):
                holder = change(each.holder)
                if holder is None:
                    del self._kept[key]
                else:
                    each.holder = holder

    def _drop_old(self) -> None:
        now = self._clock()
        for key in [key for key, each in self._kept.items() if each.until <= now]:
            del self._kept[key]


def _digest(token: str) -> bytes:
    return hashlib.sha256(token.encode("utf-8", "surrogateescape")).digest()
