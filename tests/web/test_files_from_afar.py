"""Claim: whoever has the passphrase reaches the book, and no other file of the computer that runs it."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from fastapi.testclient import TestClient

from tests.web.browsing import FERROW

PASSPHRASE = "tape boiler gauge slate"


@pytest.fixture
def afar(open_client: Callable[..., TestClient]) -> TestClient:
    """A device of the network that has given the passphrase."""
    client = open_client("192.168.1.77", passphrase=PASSPHRASE, host="0.0.0.0")
    assert client.get("/").status_code == 403
    client.post("/passphrase", data={"passphrase": PASSPHRASE})
    assert client.get("/").status_code == 200
    return client


def test_no_file_is_read_or_written_by_its_path(afar: TestClient, tmp_path: Path) -> None:
    secret, new = tmp_path / "secret.txt", tmp_path / "new.yaml"
    secret.write_text("not a job: of anybody", encoding="utf-8")
    tries = [
        ("/open-file/path", {"path": str(secret)}),
        (f"/jobs/{FERROW}/write-to", {"path": str(new)}),
        ("/book/restore", {"path": str(secret), "sure": "yes"}),
    ]
    for address, fields in tries:
        answer = afar.post(address, data=fields)
        assert answer.status_code == 403, address
        assert "of anybody" not in answer.text and "on that computer" in answer.text
    assert not new.exists()


def test_on_this_computer_files_are_opened_and_written(client: TestClient, tmp_path: Path) -> None:
    new = tmp_path / "new.yaml"
    client.post(f"/jobs/{FERROW}/write-to", data={"path": str(new)})
    text = new.read_text(encoding="utf-8")
    assert text == client.app.state.book.head(FERROW).text  # type: ignore[attr-defined]
    copy = tmp_path / "copy.yaml"
    copy.write_text(text, encoding="utf-8")
    answer = client.post("/open-file/path", data={"path": str(copy)}, follow_redirects=False)
    assert answer.status_code == 303


def test_a_job_file_that_is_sent_is_opened(afar: TestClient) -> None:
    text = afar.app.state.book.head(FERROW).text  # type: ignore[attr-defined]
    answer = afar.post("/open-file", files={"file": ("sent.yaml", text)}, follow_redirects=False)
    assert answer.status_code == 303 and answer.headers["location"].startswith("/jobs/ferrow-house-2")
