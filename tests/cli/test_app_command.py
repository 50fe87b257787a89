"""Claim: ``heatledger app`` passes on what it was told, and says in words what cannot be."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner, Result

from heatledger.book.errors import BookError
from heatledger.cli.group import commands
from heatledger.web import serve as serving
from heatledger.web.settings import Settings

PASSPHRASE = "tape boiler gauge slate"


@pytest.fixture
def served(monkeypatch: pytest.MonkeyPatch) -> list[tuple[Settings, bool]]:
    """What would be served, in place of serving it."""
    kept: list[tuple[Settings, bool]] = []

    def serve(settings: Settings, open_browser: bool = False, tell: Any = None) -> None:
        kept.append((settings, open_browser))
        tell("Heatledger is open")

    monkeypatch.setattr(serving, "serve", serve)
    monkeypatch.delenv("HEATLEDGER_PASSPHRASE", raising=False)
    return kept


def app(*words: object) -> Result:
    result = CliRunner().invoke(commands, ["app", *(str(each) for each in words)], prog_name="heatledger")
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    assert "Traceback" not in result.output
    return result


def test_alone_it_is_this_computer_only(served: list[tuple[Settings, bool]]) -> None:
    result = app()
    assert result.exit_code == 0 and "Heatledger is open" in result.stdout
    assert served == [(Settings(), False)]
    assert served[0][0].host == "127.0.0.1" and not served[0][0].share and not served[0][0].port_given


def test_every_option_is_passed_on(served: list[tuple[Settings, bool]], tmp_path: Path) -> None:
    secret = tmp_path / "passphrase.txt"
    secret.write_text(f"{PASSPHRASE}\r\nnot this line\n", encoding="utf-8")
    url = f"sqlite:///{tmp_path.as_posix()}/book.sqlite"
    words = ["--port", 9001, "--host", "192.168.1.20", "--share", "--book", url, "--browser"]
    assert app(*words, "--passphrase-file", secret).exit_code == 0
    told = Settings(url, "192.168.1.20", 9001, True, PASSPHRASE, port_given=True)
    assert served == [(told, True)]


def test_the_passphrase_may_come_from_the_environment(
    served: list[tuple[Settings, bool]], monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setenv("HEATLEDGER_PASSPHRASE", PASSPHRASE)
    app()
    secret = tmp_path / "passphrase.txt"
    secret.write_text("another one altogether", encoding="utf-8")
    app("--passphrase-file", secret)
    assert [each.passphrase for each, _ in served] == [PASSPHRASE, "another one altogether"]


@pytest.mark.parametrize(
    ("content", "said"),
    [(None, "could not be read"), (b"\n\n", "nothing on its first line"), (b"\xff\xfe\x80", "no text")],
)
def test_a_passphrase_file_that_holds_none_starts_nothing(
    served: list[tuple[Settings, bool]], tmp_path: Path, content: bytes | None, said: str
) -> None:
    secret = tmp_path / "passphrase.txt"
    if content is not None:
        secret.write_bytes(content)
    result = app("--passphrase-file", secret)
    assert result.exit_code == 2 and said in result.stderr and not served


@pytest.mark.parametrize("port", ["0", "65536", "-1", "boiler"])
def test_a_port_that_is_none_is_wrong_use(served: list[tuple[Settings, bool]], port: str) -> None:
    result = app("--port", port)
    assert result.exit_code == 2 and "--port" in result.stderr and not served


def test_an_open_door_is_refused_in_words() -> None:
    result = app("--host", "0.0.0.0")
    assert result.exit_code == 2
    assert "nothing would keep them out" in result.stderr and "--share" in result.stderr


def test_a_book_that_cannot_be_opened_is_said(monkeypatch: pytest.MonkeyPatch) -> None:
    def serve(*_: Any, **__: Any) -> None:
        raise BookError("The book is damaged.", "Restore the last copy.")

    monkeypatch.setattr(serving, "serve", serve)
    result = app()
    assert result.exit_code == 1
    assert result.stderr.splitlines() == ["The book is damaged.", "Restore the last copy."]


def test_there_is_no_passphrase_on_the_command_line() -> None:
    """What stands on a command line is read by every program of the machine."""
    result = app("--passphrase", PASSPHRASE)
    assert result.exit_code == 2
