"""Claim: the app listens on this computer only unless told and guarded, says where, and stops in peace."""

from __future__ import annotations

import os
import re
import signal
import socket
import subprocess
import sys
import time
import urllib.request
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest
from fastapi import FastAPI

from heatledger.web import serve as serving
from heatledger.web.guards import guarded
from heatledger.web.serve import Listening, ServeError, is_loopback, listen, opening_words
from heatledger.web.settings import Settings
from tests.web.small_app import PASSPHRASE

ROOT = Path(__file__).resolve().parents[2]
OWN = "192.168.1.20"


def free_port() -> int:
    with socket.create_server(("127.0.0.1", 0)) as made:
        return int(made.getsockname()[1])


@pytest.fixture
def taken() -> Iterator[int]:
    """A port that another program listens on."""
    with socket.create_server(("127.0.0.1", 0)) as made:
        yield int(made.getsockname()[1])


@pytest.fixture
def no_network(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(serving, "lan_address", lambda: "")


def at(settings: Settings) -> Listening:
    place = listen(settings)
    place.close()
    return place


def refused(settings: Settings) -> str:
    with pytest.raises(ServeError) as fault:
        listen(settings).close()
    assert fault.value.what.endswith(".") and fault.value.mend.endswith(".")
    return str(fault.value)


# Where it listens


def test_it_listens_on_loopback_unless_told() -> None:
    place = listen(Settings(port=free_port()))
    try:
        assert [each.getsockname()[0] for each in place.sockets] == ["127.0.0.1"]
        assert place.shared_at == "" and place.address == f"http://127.0.0.1:{place.settings.port}"
    finally:
        place.close()


@pytest.mark.parametrize("host", ["0.0.0.0", "::", OWN, "203.0.113.5", "boiler-room.example"])
def test_another_address_needs_a_share_or_a_passphrase(host: str) -> None:
    said = refused(Settings(host=host))
    assert host in said and "--share" in said and "passphrase" in said


@pytest.mark.parametrize("host", ["127.0.0.1", "127.0.0.9", "localhost", "::1", "[::1]"])
def test_loopback_is_known_by_each_of_its_names(host: str) -> None:
    assert is_loopback(host)


@pytest.mark.parametrize("host", ["0.0.0.0", "::", "", OWN, "localhost.example", "127.0.0.1.example"])
def test_nothing_else_is_taken_for_loopback(host: str) -> None:
    assert not is_loopback(host)


def test_sharing_listens_on_this_computer_and_one_address_of_its_network(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    # The second loopback address stands for the one in the network of the house.
    monkeypatch.setattr(serving, "lan_address", lambda: "127.0.0.2")
    monkeypatch.setattr(serving, "is_loopback", lambda host: host == "127.0.0.1")
    try:
        place = listen(Settings(share=True, port=free_port()))
    except ServeError:
        pytest.skip("this system has one loopback address only")
    place_names = [each.getsockname() for each in place.sockets]
    place.close()
    port = place.settings.port
    assert place_names == [("127.0.0.1", port), ("127.0.0.2", port)]
    assert place.shared_at == f"http://127.0.0.2:{port}"


@pytest.mark.usefixtures("no_network")
def test_sharing_without_a_network_says_so() -> None:
    said = refused(Settings(share=True))
    assert "in no network" in said and "--host" in said


def test_an_address_in_the_open_is_not_shared(monkeypatch: pytest.MonkeyPatch) -> None:
    class Asked:
        """A socket of a machine that has this address."""

        def __init__(self, own: str) -> None:
            self.own = own

        def __enter__(self) -> Asked:
            return self

        def __exit__(self, *_: object) -> None: ...

        def connect(self, _: object) -> None: ...

        def getsockname(self) -> tuple[str, int]:
            return self.own, 1

    for own, shared in (
        ("8.8.4.4", ""),
        (OWN, OWN),
        ("10.4.0.7", "10.4.0.7"),
        ("169.254.3.4", ""),
        ("127.0.0.1", ""),
    ):
        monkeypatch.setattr(serving.socket, "socket", lambda *_, own=own: Asked(own))
        assert serving.lan_address() == shared


# The port


def test_the_next_free_port_is_taken_when_none_was_named(taken: int) -> None:
    place = at(Settings(port=taken))
    assert taken < place.settings.port < taken + serving.NEXT_PORTS
    assert str(place.settings.port) in place.address


def test_a_port_that_was_named_is_not_swapped_for_another(taken: int) -> None:
    said = refused(Settings(port=taken, port_given=True))
    assert f"Port {taken} is taken" in said and "--port" in said


def test_when_all_ports_are_taken_it_says_which(monkeypatch: pytest.MonkeyPatch, taken: int) -> None:
    monkeypatch.setattr(serving, "NEXT_PORTS", 1)
    assert f"The ports {taken} to {taken} are all taken" in refused(Settings(port=taken))


def test_a_port_that_was_left_can_be_taken_again_at_once() -> None:
    settings = Settings(port=free_port(), port_given=True)
    assert at(settings).settings.port == at(settings).settings.port == settings.port


def test_a_port_that_there_is_not_and_an_address_of_another_computer_are_said() -> None:
    assert "no port 70000" in refused(Settings(port=70000, port_given=True))
    elsewhere = refused(Settings(host="203.0.113.5", passphrase=PASSPHRASE, port=free_port()))
    assert "203.0.113.5 is no address of this computer" in elsewhere


def test_the_search_for_a_port_ends_with_the_last_one() -> None:
    with socket.create_server(("127.0.0.1", 65535)):
        assert "The ports 65535 to 65535 are all taken" in refused(Settings(port=65535))


def test_a_short_passphrase_is_refused() -> None:
    assert "at least 8" in refused(Settings(passphrase="boiler"))


# What it says


def words(settings: Settings, shared_at: str) -> list[str]:
    place = at(settings)
    return opening_words(replace(place, shared_at=shared_at), guarded(FastAPI(), place.settings))


def test_alone_it_says_its_address_and_no_code() -> None:
    said = "\n".join(words(Settings(port=free_port()), ""))
    assert re.search(r"http://127\.0\.0\.1:\d+", said) and "Ctrl-C" in said
    assert "code" not in said


def test_shared_it_says_the_address_for_the_tablet_and_the_code_in_words() -> None:
    said = "\n".join(words(Settings(port=free_port(), share=True, host="127.0.0.1"), f"http://{OWN}:8420"))
    assert f"http://{OWN}:8420" in said and "not encrypted" in said
    code = re.search(r"type the code +(\w{4} \w{4})", said)
    spoken = re.search(r"read aloud: (.*)\.", said)
    assert code and spoken and len(spoken[1].split(", ")) == 8
    letters = [each[0].upper() for each in spoken[1].split(", ") if not each.islower()]
    assert letters == [each for each in code[1] if each.isalpha()]
    assert all(len(line) <= 80 for line in said.splitlines())


def test_the_passphrase_is_never_said() -> None:
    settings = Settings(port=free_port(), passphrase=PASSPHRASE)
    said = "\n".join(words(settings, f"http://{OWN}:8420"))
    assert "With the passphrase" in said and PASSPHRASE not in said
    assert PASSPHRASE not in repr(settings)


# Running

PROGRAM = """
import sys
from fastapi import FastAPI
from heatledger.web.guards import guarded
from heatledger.web.serve import serve
from heatledger.web.settings import Settings

def create(settings):
    app = FastAPI()
    @app.get("/")
    def home():
        return "home"
    guarded(app, settings)
    return app

serve(Settings(port=int(sys.argv[1]), port_given=True), create=create)
"""


@pytest.fixture
def running() -> Iterator[tuple[subprocess.Popen[str], int]]:
    port = free_port()
    environment = {**os.environ, "PYTHONPATH": str(ROOT / "src"), "PYTHONUTF8": "1"}
    started = subprocess.Popen(
        [sys.executable, "-c", PROGRAM, str(port)], env=environment, encoding="utf-8",
        stdout=subprocess.PIPE, stderr=subprocess.STDOUT,
    )  # fmt: skip
    yield started, port
    if started.poll() is None:
        started.kill()
    started.communicate()


@pytest.mark.skipif(sys.platform == "win32", reason="Ctrl-C is sent in another way there")
def test_it_answers_when_it_says_so_and_ctrl_c_stops_it(running: tuple[subprocess.Popen[str], int]) -> None:
    program, port = running
    assert program.stdout
    assert program.stdout.readline() == f"Heatledger is open at http://127.0.0.1:{port}\n"
    assert urllib.request.urlopen(f"http://127.0.0.1:{port}/").read() == b'"home"'
    # A browser keeps a connection open; stopping does not wait for it.
    with socket.create_connection(("127.0.0.1", port)) as kept:
        kept.sendall(f"GET / HTTP/1.1\r\nHost: 127.0.0.1:{port}\r\n\r\n".encode())
        answer = kept.recv(65536).decode()
        assert "200 OK" in answer and "content-security-policy" in answer and "server:" not in answer.lower()
        program.send_signal(signal.SIGINT)
        said, _ = program.communicate(timeout=30)
    assert program.returncode == 0, said
    assert "Stopped." in said and "Traceback" not in said and "Error" not in said


def test_a_second_ear_lets_go_when_the_app_cannot_be_made() -> None:
    port = free_port()

    def create(_: Settings) -> FastAPI:
        raise ServeError("The book is shut.", "Open it.")

    with pytest.raises(ServeError, match="The book is shut"):
        serving.serve(Settings(port=port, port_given=True), create=create, tell=[].append)
    assert at(Settings(port=port, port_given=True)).settings.port == port


def test_the_browser_is_opened_only_when_asked(monkeypatch: pytest.MonkeyPatch) -> None:
    opened: list[str] = []
    monkeypatch.setattr(serving.webbrowser, "open", opened.append)
    app = FastAPI()
    place = listen(Settings(port=free_port()))
    door = guarded(app, place.settings)
    try:
        serving._open(place, door, open_browser=False, say=[].append)
        assert not opened
        serving._open(place, door, open_browser=True, say=[].append)
        for _ in range(200):
            if opened:
                break
            time.sleep(0.01)
        assert opened == [place.address]
    finally:
        place.close()
