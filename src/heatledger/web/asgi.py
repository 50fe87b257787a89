"""The few words of ASGI that the door speaks: requests as they come in, before any route."""

from __future__ import annotations

from collections.abc import Awaitable, Callable, MutableMapping
from functools import lru_cache
from http.cookies import CookieError, SimpleCookie
from ipaddress import IPv4Address, IPv6Address, ip_address
from typing import Any

Scope = MutableMapping[str, Any]
Message = MutableMapping[str, Any]
Receive = Callable[[], Awaitable[Message]]
Send = Callable[[Message], Awaitable[None]]
App = Callable[[Scope, Receive, Send], Awaitable[None]]

SAFE_METHODS = frozenset({"GET", "HEAD", "OPTIONS"})


def headers(scope: Scope, name: bytes) -> list[str]:
    """Every value that a header was sent with, in order; ASGI hands names on in small letters."""
    return [value.decode("latin-1") for key, value in scope["headers"] if key == name]


def header(scope: Scope, name: bytes) -> str:
    """The value of a header; empty when it was not sent."""
    return next(iter(headers(scope, name)), "")


def cookie(scope: Scope, name: str) -> str:
    """The value of a cookie; empty when there is none, or when the line cannot be read."""
    for line in headers(scope, b"cookie"):
        for part in line.split(";"):
            try:
                read = SimpleCookie(part.strip())
            except CookieError:
                continue
            if name in read:
                return read[name].value
    return ""


@lru_cache(maxsize=256)
def address(text: str) -> IPv4Address | IPv6Address | None:
    """An address in digits, an IPv4 one also where it was wrapped in IPv6; None when it is none."""
    try:
        found = ip_address(text.strip("[]").partition("%")[0])
    except ValueError:
        return None
    return getattr(found, "ipv4_mapped", None) or found


def client_address(scope: Scope) -> str:
    """The address that a request came from, as the socket tells it."""
    return str((scope.get("client") or ("",))[0])


async def whole(receive: Receive) -> Message:
    """A body read to its end, as one message; what came in its place when the client went away."""
    parts: list[bytes] = []
    while True:
        message = await receive()
        if message["type"] != "http.request":
            return message
        parts.append(message.get("body", b""))
        if not message.get("more_body", False):
            return {"type": "http.request", "body": b"".join(parts), "more_body": False}


def again(first: Message, then: Receive) -> Receive:
    """What gives a message that was read already once more, and then goes on."""
    waiting = [first]

    async def receive() -> Message:
        return waiting.pop() if waiting else await then()

    return receive
