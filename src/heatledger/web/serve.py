"""Starting the app: where it listens, what it says of itself, and how it stops."""

from __future__ import annotations

import errno
import socket
import sys
import threading
import webbrowser
from collections.abc import Callable
from dataclasses import dataclass, replace

import uvicorn
from fastapi import FastAPI

from heatledger.web import asgi
from heatledger.web.admission import Door
from heatledger.web.pairing import MINUTES
from heatledger.web.passphrase import SHORTEST
from heatledger.web.settings import LOOPBACK, Settings

NEXT_PORTS = 20
LAST_PORT = 65535
STOP_SECONDS = 3
ANYWHERE = ("0.0.0.0", "::")
# Addresses nobody has are enough to ask the machine which of its own it would use; nothing is sent.
ASKED = ("192.0.2.1", "192.168.0.1", "192.168.1.1", "10.0.0.1", "172.16.0.1")

Tell = Callable[[str], None]


class ServeError(Exception):
    """The app cannot be started so: ``what`` is so, ``mend`` says how to go on."""

    def __init__(self, what: str, mend: str) -> None:
        self.what, self.mend = what, mend
        super().__init__(f"{what} {mend}")


@dataclass(frozen=True)
class Listening:
    """Where the app listens: the settings with the port that was got, what is opened on this computer, and
    what on another device (empty when no other device gets this far)."""

    settings: Settings
    sockets: tuple[socket.socket, ...]
    address: str
    shared_at: str

    def close(self) -> None:
        """Let go of the port."""
        for each in self.sockets:
            each.close()


def serve(
    settings: Settings,
    open_browser: bool = False,
    tell: Tell | None = None,
    create: Callable[[Settings], FastAPI] | None = None,
) -> None:
    """Run the app until it is stopped with Ctrl-C.

    ``tell`` takes each line that is said, the standard output when left out; ``create`` makes the app from
    its settings. Raises ServeError when it cannot listen so, and BookError when the book cannot be opened.
    """
    say = tell or _say
    place = listen(settings)
    try:
        app = (create or _app)(place.settings)
        app.state.door.shared_at = place.shared_at
        _Server(app, lambda: _open(place, app.state.door, open_browser, say)).run(list(place.sockets))
    except KeyboardInterrupt:
        pass
    finally:
        place.close()
    say("Stopped. Every edit that was answered is in the book.")


def listen(settings: Settings) -> Listening:
    """Take the port on every address that is asked for. Raises ServeError."""
    hosts = _hosts(settings)
    # Looked at here because some systems take 70000 for 4464.
    if not 0 <= settings.port <= LAST_PORT:
        raise ServeError(f"There is no port {settings.port}.", f"Ports go from 1 to {LAST_PORT}.")
    last = settings.port if settings.port_given else min(LAST_PORT, settings.port + NEXT_PORTS - 1)
    for port in range(settings.port, last + 1):
        sockets = _sockets(hosts, port)
        if sockets:
            return _listening(settings, hosts, sockets)
    if settings.port_given:
        raise ServeError(
            f"Port {settings.port} is taken by another program.",
            "Stop that one, name another port with --port, or leave --port out to take the next free one.",
        )
    raise ServeError(
        f"The ports {settings.port} to {last} are all taken by other programs.",
        "Name a free one with --port.",
    )


def _listening(settings: Settings, hosts: list[str], sockets: tuple[socket.socket, ...]) -> Listening:
    port = sockets[0].getsockname()[1]
    here = LOOPBACK if hosts[0] in ANYWHERE else hosts[0]
    shared = _shared_address(hosts)
    return Listening(
        replace(settings, port=port), sockets,
        f"http://{_in_url(here)}:{port}", f"http://{_in_url(shared)}:{port}" if shared else "",
    )  # fmt: skip


def _hosts(settings: Settings) -> list[str]:
    """The addresses to listen on, this computer's own first. Raises ServeError for an open door."""
    host = settings.host.strip()
    if settings.passphrase and len(settings.passphrase) < SHORTEST:
        raise ServeError(
            f"The passphrase has {len(settings.passphrase)} characters; anybody can try that many.",
            f"Take at least {SHORTEST}; four words that do not belong together are good.",
        )
    if not is_loopback(host):
        if not settings.share and not settings.passphrase:
            raise ServeError(
                f"Under {host} other devices would reach the app, and nothing would keep them out.",
                "Add --share to pair a tablet with Startup, or give a passphrase; or leave --host out.",
            )
        return [host] if host in ANYWHERE else [LOOPBACK, host.strip("[]")]
    if not settings.share:
        return [host.strip("[]")]
    shared = lan_address()
    if not shared:
        raise ServeError(
            "This computer is in no network that a tablet could reach it by.",
            "Connect it to the network of the house, or name its address with --host.",
        )
    return [LOOPBACK, shared]


def is_loopback(host: str) -> bool:
    """Whether only this computer itself is reached under a host."""
    found = asgi.address(host)
    return host == "localhost" or (found is not None and found.is_loopback)


def lan_address() -> str:
    """The address of this computer in a network of its own; empty when there is none."""
    for there in ASKED:
        with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as asked:
            try:
                asked.connect((there, 9))
            except OSError:
                continue
            own = asgi.address(asked.getsockname()[0])
        if own and not (own.is_loopback or own.is_link_local or own.is_unspecified or own.is_global):
            return str(own)
    return ""


def _sockets(hosts: list[str], port: int) -> tuple[socket.socket, ...]:
    """A listening socket on each host, all on one port; none when the port is taken on one of them."""
    made: list[socket.socket] = []
    for host in hosts:
        try:
            made.append(_socket(host, made[0].getsockname()[1] if made else port))
        except OSError as fault:
            for each in made:
                each.close()
            if fault.errno in (errno.EADDRINUSE, getattr(errno, "WSAEADDRINUSE", errno.EADDRINUSE)):
                return ()
            raise _cannot_listen(host, port, fault) from fault
    return tuple(made)


def _socket(host: str, port: int) -> socket.socket:
    family, kind, _, _, address = socket.getaddrinfo(
        host, port, type=socket.SOCK_STREAM, flags=socket.AI_PASSIVE
    )[0]
    made = socket.socket(family, kind)
    try:
        # Elsewhere this lets a port be taken again at once; on Windows it would let two programs share it.
        if sys.platform != "win32":
            made.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        if host == "::":
            made.setsockopt(socket.IPPROTO_IPV6, socket.IPV6_V6ONLY, 0)
        made.bind(address)
        made.listen(128)
        made.setblocking(False)
    except OSError:
        made.close()
        raise
    return made


def _cannot_listen(host: str, port: int, fault: OSError) -> ServeError:
    if isinstance(fault, socket.gaierror):
        return ServeError(
            f"There is no address {host}.", "Name one of this computer, in digits, or leave it out."
        )
    if fault.errno == errno.EADDRNOTAVAIL:
        return ServeError(
            f"{host} is no address of this computer.", "Name one that it has, or leave --host out."
        )
    if fault.errno in (errno.EACCES, errno.EPERM):
        return ServeError(
            f"This computer does not let you listen on port {port}.", "Take a port from 1024 up."
        )
    return ServeError(
        f"The app cannot listen on {host}, port {port}: {fault.strerror or fault}.",
        "Leave --host and --port out, or name others.",
    )


def _shared_address(hosts: list[str]) -> str:
    away = next((each for each in hosts if not is_loopback(each)), "")
    return lan_address() if away in ANYWHERE else away


def _in_url(host: str) -> str:
    return f"[{host.strip('[]')}]" if ":" in host else host


def _app(settings: Settings) -> FastAPI:
    from heatledger.web.app import create_app

    return create_app(settings)


class _Server(uvicorn.Server):
    """The server; it says so once it answers. What a proxy claims of who asks is not believed."""

    def __init__(self, app: FastAPI, begun: Callable[[], None]) -> None:
        super().__init__(
            uvicorn.Config(
                app, http="h11", loop="asyncio", ws="none", lifespan="on", access_log=False,
                log_level="error", proxy_headers=False, server_header=False,
                timeout_graceful_shutdown=STOP_SECONDS,
            )
        )  # fmt: skip
        self._begun = begun

    async def startup(self, sockets: list[socket.socket] | None = None) -> None:
        """Start, then say where."""
        await super().startup(sockets)
        if self.started:
            self._begun()


def _open(place: Listening, door: Door, open_browser: bool, say: Tell) -> None:
    for line in opening_words(place, door):
        say(line)
    if open_browser:
        threading.Thread(target=webbrowser.open, args=(place.address,), daemon=True).start()


def opening_words(place: Listening, door: Door) -> list[str]:
    """What is said once the app answers: its address, and what another device needs to come in."""
    settings = place.settings
    lines = [f"Heatledger is open at {place.address}", "Stop it with Ctrl-C."]
    if not place.shared_at:
        return lines
    if settings.share:
        code = door.pairing.new_code()
        lines += [
            "", f"On the tablet open  {place.shared_at}", f"and type the code   {code.shown}",
            f"read aloud: {code.spoken}.",
            f"It lets in one device, once, within {MINUTES} minutes, to Startup of one job.",
            f"For another device make a code at {place.address}/pair",
        ]  # fmt: skip
    if settings.passphrase:
        lines += ["", f"With the passphrase the whole book is open at {place.shared_at}"]
    return [*lines, "", "What is sent is not encrypted: share in a network of your own only."]


def _say(line: str) -> None:
    sys.stdout.write(line + "\n")
    sys.stdout.flush()
