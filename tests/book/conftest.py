"""Every test that asks for a book runs on both engines."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from heatledger.book.book import Book
from heatledger.book.opening import open_book
from tests.book.postgres import postgres

__all__ = ["book", "data_beside", "postgres", "url"]


@pytest.fixture(params=["sqlite", "postgresql"])
def url(request: pytest.FixtureRequest, tmp_path: Path) -> Iterator[str]:
    """The address of a book that is not there yet."""
    if request.param == "sqlite":
        yield f"sqlite:///{(tmp_path / 'kept' / 'book.sqlite').as_posix()}"
        return
    with request.getfixturevalue("postgres").lent() as lent:
        yield lent


@pytest.fixture
def book(url: str) -> Iterator[Book]:
    opened = open_book(url, patience=5)
    yield opened
    opened.close()


@pytest.fixture(autouse=True)
def data_beside(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Nothing a test does reaches the data folder of whoever runs it."""
    folder = tmp_path / "data"
    monkeypatch.setattr("heatledger.book.copies.data_folder", lambda: folder)
    monkeypatch.setattr("heatledger.book.addresses.data_folder", lambda: folder)
    monkeypatch.delenv("HEATLEDGER_BOOK", raising=False)
    return folder
