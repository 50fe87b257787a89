"""The door of the app: every request passes here before a route sees it, every answer after.

In this order: the Host that was asked for, who begins the request, how long its body is, who asks, and
what that visitor may reach. Plain ASGI around the whole app, so that answers to faults pass here too.
"""

from __future__ import annotations

import asyncio
import contextlib
import hmac
import re
from typing import Any

from fastapi import FastAPI, HTTPException, Request
from fastapi.responses import Response

from heatledger.web import asgi, door_pages
from heatledger.web.admission import DOOR_PAGES, VISITOR, Door, Visitor, may_post, may_reach
from heatledger.web.settings import Settings

LIMIT = 2_500_000
"""Bytes of a body; the job file of a very large house has a tenth of that."""
DRAINED = 10 * LIMIT
DRAIN_SECONDS = 10

CONTENT_SECURITY_POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; font-src 'self'; img-src 'self' data:; "
    "connect-src 'self'; form-action 'self'; frame-ancestors 'none'; base-uri 'none'; object-src 'none'"
)
HEADERS = (
    (b"content-security-policy", CONTENT_SECURITY_POLICY.encode("ascii")),
    (b"x-content-type-options", b"nosniff"),
    # With no-referrer a browser would send "Origin: null" with our own forms too.
    (b"referrer-policy", b"same-origin"),
    (b"cross-origin-resource-policy", b"same-origin"),
)
OPENER = (b"cross-origin-opener-policy", b"same-origin")
"""Only under a loopback name: elsewhere browsers leave it aside over plain HTTP, and complain of it."""
OURS = frozenset({name for name, _ in HEADERS} | {OPENER[0], b"cache-control"})
LOOPBACK_NAMES = ("localhost", "127.0.0.1", "[::1]")
HOST = re.compile(r"(\[[0-9a-f:.]+\]|[a-z0-9.-]+)(?::([0-9]{1,5}))?")


def guarded(app: FastAPI, settings: Settings) -> Door:
    """Put the guards around an app and its door pages into it; ``app.state.door`` keeps what they know.

    ``app.state.book``, when there is one, gives the jobs that a code can lead to.
    """
    door = Door(settings)
    app.state.door = door
    app.exception_handlers.setdefault(Exception, _fault_of_ours)
    app.include_router(door_pages.router)
    inside = app.build_middleware_stack
    # Outside of everything, also of the part that answers for an unforeseen fault.
    app.build_middleware_stack = lambda: Guards(inside(), door)  # type: ignore[method-assign]
    return door


async def _fault_of_ours(request: Request, fault: Exception) -> Response:
    return door_pages.trouble(request.scope)


class Guards:
    """The guards around an app."""

    def __init__(self, app: asgi.App, door: Door) -> None:
        self.app, self.door = app, door

    async def __call__(self, scope: asgi.Scope, receive: asgi.Receive, send: asgi.Send) -> None:
        """Answer one request."""
        if scope["type"] == "websocket":
            await send({"type": "websocket.close", "code": 1008})
            return
        if scope["type"] != "http":
            await self.app(scope, receive, send)
            return
        body = _Body(receive)
        answer = _Answer(scope, send, body)
        try:
            refusal = await self._refusal(scope, body)
            if not body.too_long:
                await (refusal or self.app)(scope, body.receive, answer.send)
        except Exception:
            if not body.too_long and not answer.begun:
                await door_pages.trouble(scope)(scope, receive, answer.send)
            if not body.too_long:
                raise
        if body.too_long and not answer.begun:
            await body.drain()
            await door_pages.too_long(scope)(scope, receive, answer.send_refusal)

    async def _refusal(self, scope: asgi.Scope, body: _Body) -> Response | None:
        if not host_is_ours(scope, self.door.settings.port):
            return door_pages.wrong_host(scope, self.door.settings.port)
        scope[VISITOR] = visitor = self.door.visitor(scope)
        if not may_reach(visitor, scope):
            return door_pages.refused(scope, self.door, visitor)
        begun = begun_by(scope)
        if begun == "another":
            return door_pages.from_elsewhere(scope)
        if body.is_said_too_long(scope):
            return door_pages.too_long(scope)
        if begun == "ours" and (visitor.kind != "paired" or not _is_changing(scope)):
            return None
        return await self._read(scope, body, visitor, begun)

    async def _read(self, scope: asgi.Scope, body: _Body, visitor: Visitor, begun: str) -> Response | None:
        """Look into a form: for the mark of our own pages, and at what a paired device posts."""
        form = await _form(scope, body)
        if begun == "unsaid" and not self._has_mark(scope, visitor, form):
            return door_pages.from_elsewhere(scope)
        if visitor.kind == "paired" and _is_changing(scope) and not may_post(scope["path"], form):
            return door_pages.refused(scope, self.door, visitor)
        return None

    def _has_mark(self, scope: asgi.Scope, visitor: Visitor, form: list[tuple[str, Any]]) -> bool:
        sent = [asgi.header(scope, b"x-heatledger-mark"), *(value for key, value in form if key == "mark")]
        own = self.door.mark(visitor).encode("ascii")
        return any(
            isinstance(each, str) and hmac.compare_digest(each.encode("utf-8", "surrogatepass"), own)
            for each in sent
        )


def host_is_ours(scope: asgi.Scope, port: int) -> bool:
    """Whether the Host asked for is this app. A name that another site has turned to this machine is not.

    Besides the loopback names only the address in digits to which the connection came is taken: nobody's
    name server can turn that into something else.
    """
    asked = asgi.headers(scope, b"host")
    found = HOST.fullmatch(asked[0].lower()) if len(asked) == 1 else None
    if found is None or int(found[2] or 80) != port:
        return False
    if found[1] in LOOPBACK_NAMES:
        return True
    named = asgi.address(found[1])
    return named is not None and named == asgi.address(str((scope.get("server") or ("",))[0]))


def begun_by(scope: asgi.Scope) -> str:
    """Who begins a request, as far as the browser says so: ours, another, or unsaid.

    A page of another site may lead here by a link; it may not load, frame or post anything.
    """
    site = asgi.header(scope, b"sec-fetch-site")
    if scope["method"] in asgi.SAFE_METHODS:
        leads = asgi.header(scope, b"sec-fetch-mode") == "navigate"
        leads = leads and asgi.header(scope, b"sec-fetch-dest") in ("document", "")
        return "ours" if site in ("", "none", "same-origin") or leads else "another"
    origins = asgi.headers(scope, b"origin")
    own = f"{scope.get('scheme', 'http')}://{asgi.header(scope, b'host').lower()}"
    if site not in ("", "none", "same-origin") or any(each.lower() != own for each in origins):
        return "another"
    return "ours" if site == "same-origin" or origins else "unsaid"


def _is_changing(scope: asgi.Scope) -> bool:
    return scope["method"] not in asgi.SAFE_METHODS and scope["path"] not in DOOR_PAGES


async def _form(scope: asgi.Scope, body: _Body) -> list[tuple[str, Any]]:
    """The fields of a form, the body left to be read again; none when it cannot be read."""
    read = await asgi.whole(body.receive)
    body.receive = asgi.again(read, body.receive)
    request = Request(scope, asgi.again(read, body.receive))
    try:
        return list((await request.form()).multi_items())
    except Exception:  # whatever is wrong with it: such a body proves nothing
        return []
    finally:
        await request.close()


class _Body:
    """A body, measured while it is read: what a header says of its length is only a first hint."""

    def __init__(self, receive: asgi.Receive) -> None:
        self._from = receive
        self._read, self._ended = 0, False
        self.too_long = False
        self.receive: asgi.Receive = self._measured

    def is_said_too_long(self, scope: asgi.Scope) -> bool:
        said = asgi.header(scope, b"content-length")
        self.too_long = said.isdecimal() and int(said) > LIMIT
        return self.too_long

    async def _next(self) -> asgi.Message:
        message = await self._from()
        self._read += len(message.get("body", b""))
        self._ended = not message.get("more_body", False)
        return message

    async def _measured(self) -> asgi.Message:
        message = await self._next()
        if self._read > LIMIT:
            self.too_long = True
            raise HTTPException(413)
        return message

    async def drain(self) -> None:
        """Read on for a while and keep nothing: a browser that is still sending would not see the answer."""
        with contextlib.suppress(TimeoutError):
            async with asyncio.timeout(DRAIN_SECONDS):
                while not self._ended and self._read <= DRAINED:
                    await self._next()


class _Answer:
    """An answer on its way out, with the headers that every answer has."""

    def __init__(self, scope: asgi.Scope, send: asgi.Send, body: _Body) -> None:
        self._scope, self._send, self._body = scope, send, body
        self.begun = False

    async def send(self, message: asgi.Message) -> None:
        """Pass on; what the app says of a body that was cut off is left out."""
        if self.begun or not self._body.too_long:
            await self.send_refusal(message)

    async def send_refusal(self, message: asgi.Message) -> None:
        """Pass on."""
        if message["type"] == "http.response.start":
            self.begun = True
            kept = [each for each in message.get("headers", ()) if each[0].lower() not in OURS]
            kept.append((b"cache-control", _keeping(self._scope, message["status"])))
            if asgi.header(self._scope, b"host").rpartition(":")[0].lower() in LOOPBACK_NAMES:
                kept.append(OPENER)
            message = {**message, "headers": [*kept, *HEADERS]}
        await self._send(message)


def _keeping(scope: asgi.Scope, status: int) -> bytes:
    """How long a browser may keep an answer: pages never, a static file under its version for a year."""
    if not scope["path"].startswith("/static/") or status not in (200, 206, 304):
        return b"no-store"
    versioned = re.search(rb"(?:^|&)v=[^&]", scope["query_string"])
    return b"public, max-age=31536000, immutable" if versioned else b"no-cache"
