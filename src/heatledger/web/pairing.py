"""Pairing: a one-time code, read aloud in the boiler room, lets one device reach Startup of one job."""

from __future__ import annotations

import hmac
import secrets
import time
from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import datetime
from threading import Lock

from fastapi.responses import Response

from heatledger.web.passes import Passes

LETTERS = "ACFHJKMPRTWXY34679"
"""Signs of a code: none that is taken for another when it is read, and few that sound alike."""
LENGTH = 8
MINUTES = 10
TRIES = 5
DEVICES = 16
HOURS = 12
COOKIE = "heatledger-paired"

SPELLED = {
    "A": "Alfa", "C": "Charlie", "F": "Foxtrot", "H": "Hotel", "J": "Juliett", "K": "Kilo", "M": "Mike",
    "P": "Papa", "R": "Romeo", "T": "Tango", "W": "Whiskey", "X": "X-ray", "Y": "Yankee",
    "3": "three", "4": "four", "6": "six", "7": "seven", "9": "nine",
}  # fmt: skip


class PairingError(Exception):
    """A code that lets nobody in: ``what`` is so, ``mend`` says how to go on."""

    def __init__(self, what: str, mend: str) -> None:
        self.what, self.mend = what, mend
        super().__init__(f"{what} {mend}")


@dataclass(frozen=True)
class Code:
    """A one-time code. ``job`` is the job it leads to; empty lets the device choose one, once."""

    letters: str
    job: str
    until: float

    @property
    def shown(self) -> str:
        """In two halves, as it is copied."""
        return f"{self.letters[:4]} {self.letters[4:]}"

    @property
    def spoken(self) -> str:
        """Each sign as a word of the spelling alphabet, as it is read aloud."""
        return ", ".join(SPELLED[each] for each in self.letters)


@dataclass(frozen=True)
class Device:
    """A device that was paired: where it is, since when, and the one job it reaches (empty: none yet)."""

    number: int
    address: str
    since: datetime
    job: str = ""


class Pairing:
    """The one code in force and the devices that were let in. Safe to use from several threads."""

    def __init__(self, clock: Callable[[], float] = time.monotonic) -> None:
        self.devices: Passes[Device] = Passes(COOKIE, HOURS * 3600, DEVICES, clock)
        self._clock = clock
        self._lock = Lock()
        self._code: Code | None = None
        self._wrong = 0
        self._paired = 0

    def new_code(self, job: str = "") -> Code:
        """A code for one device; the one before it is withdrawn."""
        letters = "".join(secrets.choice(LETTERS) for _ in range(LENGTH))
        with self._lock:
            self._code = Code(letters, job, self._clock() + MINUTES * 60)
            self._wrong = 0
            return self._code

    def code(self) -> Code | None:
        """The code in force."""
        with self._lock:
            return self._in_force()

    def minutes_left(self, code: Code) -> int:
        """Whole minutes for which a code still holds, begun ones counted."""
        return max(0, int(-(-(code.until - self._clock()) // 60)))

    def enter(self, typed: str, address: str, answer: Response) -> Device:
        """Let a device in by the code it typed; its pass goes into the answer. Raises PairingError."""
        with self._lock:
            code = self._in_force()
            if code is None:
                raise PairingError("There is no code in force.", NEW_CODE)
            if not hmac.compare_digest(as_typed(typed).encode("utf-8"), code.letters.encode("utf-8")):
                self._wrong += 1
                raise self._refused()
            self._code = None
            self._paired += 1
            device = Device(self._paired, address, datetime.now().astimezone(), code.job)
        self.devices.give(device, answer)
        return device

    def choose(self, number: int, job: str) -> None:
        """Bind a device to a job; one that is bound stays with its job."""
        self.devices.change(
            lambda each: replace(each, job=job) if each.number == number and not each.job else each
        )

    def shut_out(self, number: int) -> None:
        """Take back the pass of a device."""
        self.devices.change(lambda each: None if each.number == number else each)

    def _in_force(self) -> Code | None:
        if self._code is not None and self._clock() >= self._code.until:
            self._code = None
        return self._code

    def _refused(self) -> PairingError:
        left = TRIES - self._wrong
        if left > 0:
            tries = "1 try is" if left == 1 else f"{left} tries are"
            return PairingError(
                "That is not the code.", f"Read it again and type all {LENGTH} signs; {tries} left."
            )
        self._code = None
        return PairingError(f"That was wrong {TRIES} times, and the code is withdrawn.", NEW_CODE)


NEW_CODE = (
    f"A code lets in one device, once, within {MINUTES} minutes. "
    "Make a new one on the computer that runs Heatledger, on its page Let a device in."
)


def as_typed(text: str) -> str:
    """A code as it was meant: capitals, without spaces and dashes."""
    return "".join(each for each in text.upper() if each.isalnum())
