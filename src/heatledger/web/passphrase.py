"""The passphrase: what every device away from this computer needs that is not paired."""

from __future__ import annotations

import hashlib
import hmac
import secrets
import time
import unicodedata
from collections import OrderedDict
from collections.abc import Callable
from dataclasses import dataclass
from threading import Lock

from heatledger.web.passes import Passes

SHORTEST = 8
COOKIE = "heatledger-pass"
HOURS = 12
FREE_TRIES = 5
FREE_TRIES_OF_ALL = 50
FIRST_WAIT = 30.0
LONGEST_WAIT = 900.0
ADDRESSES = 1000
DEVICES = 64


class TooSoon(Exception):
    """Too many wrong tries: the next one is looked at only after ``seconds``."""

    def __init__(self, seconds: float) -> None:
        self.seconds = seconds
        super().__init__(f"{seconds:.0f} s")


@dataclass(frozen=True)
class _Wrong:
    times: int = 0
    last: float = 0.0
    until: float = 0.0


class Tries:
    """Wrong tries by name. From the last free one on each doubles the wait, half a minute to fifteen.

    After fifteen quiet minutes a name begins anew; of many names the longest quiet are forgotten.
    """

    def __init__(self, free: int, clock: Callable[[], float]) -> None:
        self._free, self._clock = free, clock
        self._wrong: OrderedDict[str, _Wrong] = OrderedDict()

    def wait(self, name: str) -> float:
        """Seconds until this name may try again; 0 when it may now."""
        return max(0.0, self._wrong.get(name, _Wrong()).until - self._clock())

    def wrong(self, name: str) -> None:
        """Count a wrong try."""
        now = self._clock()
        before = self._wrong.pop(name, _Wrong())
        quiet = now > max(before.last, before.until) + LONGEST_WAIT
        times = 1 if quiet else before.times + 1
        over = times - self._free
        wait = min(LONGEST_WAIT, FIRST_WAIT * 2 ** min(over, 10)) if over >= 0 else 0.0
        self._wrong[name] = _Wrong(times, now, now + wait)
        while len(self._wrong) > ADDRESSES:
            self._wrong.popitem(last=False)

    def right(self, name: str) -> None:
        """Forget the wrong tries of a name."""
        self._wrong.pop(name, None)


class Passphrase:
    """Whether a passphrase is right, and who has given it. Safe to use from several threads."""

    def __init__(self, passphrase: str, clock: Callable[[], float] = time.monotonic) -> None:
        self.given: Passes[str] = Passes(COOKIE, HOURS * 3600, DEVICES, clock)
        self.is_set = bool(passphrase)
        self._salt = secrets.token_bytes(16)
        self._digest = self._digested(passphrase)
        self._of_address, self._of_all = Tries(FREE_TRIES, clock), Tries(FREE_TRIES_OF_ALL, clock)
        self._lock = Lock()

    def is_right(self, typed: str, address: str) -> bool:
        """Whether a passphrase typed at an address is the one. Raises TooSoon, and then has not looked."""
        with self._lock:
            wait = max(self._of_address.wait(address), self._of_all.wait(""))
            if wait > 0:
                raise TooSoon(wait)
            right = self.is_set and hmac.compare_digest(self._digested(typed), self._digest)
            if right:
                self._of_address.right(address)
            else:
                self._of_address.wrong(address)
                self._of_all.wrong("")
            return right

    def _digested(self, text: str) -> bytes:
        """Of equal length whatever was typed; an accent is the same however a keyboard composes it."""
        plain = unicodedata.normalize("NFC", text).encode("utf-8", "surrogatepass")
        return hashlib.sha256(self._salt + plain).digest()
