"""Who asks, and what each may reach: this computer all, a paired device Startup of one job, nobody else."""

from __future__ import annotations

import hashlib
import hmac
import re
import secrets
from dataclasses import dataclass
from typing import Any
from urllib.parse import parse_qsl

from fastapi import Request

from heatledger.web import asgi
from heatledger.web.pairing import COOKIE as PAIRED
from heatledger.web.pairing import Pairing
from heatledger.web.passphrase import COOKIE as GIVEN
from heatledger.web.passphrase import Passphrase
from heatledger.web.settings import Settings

VISITOR = "heatledger.visitor"
FORWARDED = frozenset({b"forwarded", b"x-forwarded-for", b"x-real-ip", b"via"})

NAME = r"[A-Za-z0-9_][A-Za-z0-9._+-]*"
STATIC = re.compile(rf"/static(?:/{NAME})+")
READING = re.compile(r"readings(?:/[A-Za-z0-9_][A-Za-z0-9_.-]*)+")
"""The one part of a job that a paired device writes."""

EDIT_FIELDS = frozenset({"do", "path", "value", "name", "rev", "sheet", "token", "mark", "asked"})
"""What an edit of a paired device may carry. ``path`` alone says what is touched; a field that is not
listed could name a second thing, so the edit is refused."""
FILES_HERE = re.compile(r"/open-file/path|/jobs/[^/]+/write-to")
"""Where a file of this computer is named: the passphrase opens the book, and no other file."""
SHEET = "startup"
READER_PAGES = ("/who", "/units")
READER = "/reader"
READER_FIELDS = frozenset({"name", "units", "back", "mark"})
"""A device says once who reads on it, and in which units; both stay on the device, and no job is touched."""


@dataclass(frozen=True)
class Visitor:
    """Who asks. ``kind`` is here (this computer), given (the passphrase), paired or stranger."""

    kind: str
    job: str = ""
    device: int = 0

    @property
    def whole(self) -> bool:
        """Whether the whole book may be reached."""
        return self.kind in ("here", "given")


class Door:
    """What the app knows of those who ask: codes, passes, and the mark that its own forms carry.

    ``shared_at`` is the address that other devices open; it is known once the app listens.
    """

    def __init__(self, settings: Settings) -> None:
        self.settings = settings
        self._secret = secrets.token_bytes(32)
        self.pairing = Pairing()
        self.passphrase = Passphrase(settings.passphrase)
        self.shared_at = ""

    def mark(self, visitor: Visitor) -> str:
        """What the forms shown to a visitor carry; those shown to a stranger serve nobody else."""
        of = f"{visitor.kind} {visitor.device} {visitor.job}"
        return hmac.new(self._secret, of.encode("utf-8"), hashlib.sha256).hexdigest()

    def visitor(self, scope: asgi.Scope) -> Visitor:
        """Who asks. A request that something else passed on is not from this computer."""
        come_from = asgi.address(asgi.client_address(scope))
        passed_on = any(name in FORWARDED for name, _ in scope["headers"])
        if come_from is not None and come_from.is_loopback and not passed_on:
            return Visitor("here")
        if self.passphrase.given.holder(asgi.cookie(scope, GIVEN)) is not None:
            return Visitor("given")
        device = self.pairing.devices.holder(asgi.cookie(scope, PAIRED)) if self.settings.share else None
        return Visitor("paired", device.job, device.number) if device else Visitor("stranger")


def visitor_of(request: Request) -> Visitor:
    """Who asks, for a page that shows a paired device only what it may reach."""
    found: Visitor = request.scope[VISITOR]
    return found


def mark_of(request: Request) -> str:
    """What every form of the app carries as ``mark``, for browsers that do not say where a form stood."""
    door: Door = request.app.state.door
    return door.mark(visitor_of(request))


def may_reach(visitor: Visitor, scope: asgi.Scope) -> bool:
    """Whether a visitor may reach an address. What is not listed here is refused.

    An address with anything encoded in it is refused to all but the whole visitors: what a device may
    reach needs none, and so it cannot be written in a second way.
    """
    method, path = scope["method"], scope["path"]
    if visitor.whole:
        return visitor.kind == "here" or method in asgi.SAFE_METHODS or not FILES_HERE.fullmatch(path)
    if scope.get("root_path") or scope.get("raw_path", path.encode("utf-8")) != path.encode("utf-8"):
        return False
    reads = method in ("GET", "HEAD")
    if path in DOOR_PAGES:
        return reads or method == "POST"
    if STATIC.fullmatch(path):
        return reads
    return visitor.kind == "paired" and bool(visitor.job) and _in_startup(visitor.job, method, path, scope)


DOOR_PAGES = ("/pair", "/pair/job", "/passphrase")


def _in_startup(job: str, method: str, path: str, scope: asgi.Scope) -> bool:
    if method == "POST" and path == READER:
        return True
    if method == "POST":
        return path in (f"/jobs/{job}/edit", f"/jobs/{job}/withdraw") and not scope["query_string"]
    if method not in ("GET", "HEAD"):
        return False
    asked = parse_qsl(scope["query_string"].decode("latin-1"), keep_blank_values=True)
    if path in (*READER_PAGES, f"/jobs/{job}/{SHEET}", f"/jobs/{job}/rev"):
        return True
    sheets = {value for key, value in asked if key == "sheet"}
    paths = [value for key, value in asked if key == "path"]
    one_reading = len(paths) == 1 and READING.fullmatch(paths[0]) is not None
    reads = {
        "working": sheets <= {SHEET}, "callout": True, "after": sheets == {SHEET}, "known": one_reading,
        "trial": one_reading and sheets == {SHEET},
    }  # fmt: skip
    return any(path == f"/jobs/{job}/{name}" and may for name, may in reads.items())


def may_post(path: str, form: list[tuple[str, Any]]) -> bool:
    """Whether a paired device may post a form: its own name and units, or one reading of its Startup."""
    names = {key for key, _ in form}
    if not all(isinstance(value, str) for _, value in form):
        return False
    if path == READER:
        return names <= READER_FIELDS
    paths = [value for key, value in form if key == "path"]
    sheets = {value for key, value in form if key == "sheet"}
    reading = len(paths) == 1 and READING.fullmatch(paths[0]) is not None
    return reading and sheets == {SHEET} and names <= EDIT_FIELDS
