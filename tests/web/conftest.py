"""The app without a browser: a client on this machine, over a book of its own."""

from __future__ import annotations

import shutil
from collections.abc import Callable, Iterator
from contextlib import ExitStack
from pathlib import Path
from typing import Any

import pytest
from fastapi import FastAPI
from fastapi.testclient import TestClient

from heatledger.web.settings import DEFAULT_PORT, Settings

BASE = f"http://127.0.0.1:{DEFAULT_PORT}"
OWN_PAGE = {"sec-fetch-site": "same-origin", "sec-fetch-mode": "cors", "sec-fetch-dest": "empty"}
"""What a browser says of a request that one of our own pages begins."""


def app_with(**settings: Any) -> FastAPI:
    """The app with these settings; loaded only where a test asks for it."""
    from heatledger.web.app import create_app

    return create_app(Settings(**settings))


def client_of(app: FastAPI, address: str = "127.0.0.1") -> TestClient:
    """A client at an address, as one of our own pages would ask."""
    return TestClient(app, base_url=BASE, headers=OWN_PAGE, client=(address, 50000))


@pytest.fixture(scope="session")
def book_with_demos(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A closed book that holds the demo jobs; tests work on copies of it."""
    path = tmp_path_factory.mktemp("demos") / "book.sqlite"
    with client_of(app_with(book_url=f"sqlite:///{path.as_posix()}")):
        pass
    assert path.exists()
    return path


@pytest.fixture
def book_url(book_with_demos: Path, tmp_path: Path) -> str:
    """A book of the test's own, with the demo jobs."""
    path = tmp_path / "book.sqlite"
    shutil.copy(book_with_demos, path)
    return f"sqlite:///{path.as_posix()}"


@pytest.fixture
def empty_book_url(tmp_path: Path) -> str:
    """Where a book will be begun that holds nothing."""
    return f"sqlite:///{(tmp_path / 'empty.sqlite').as_posix()}"


@pytest.fixture
def open_client(book_url: str) -> Iterator[Callable[..., TestClient]]:
    """``open_client(address=..., share=True)``: a client of an app set so, closed after the test."""
    with ExitStack() as opened:

        def new(address: str = "127.0.0.1", **settings: Any) -> TestClient:
            app = app_with(**{"book_url": book_url} | settings)
            return opened.enter_context(client_of(app, address))

        yield new


@pytest.fixture
def client(open_client: Callable[..., TestClient]) -> TestClient:
    """A client on this machine, with the demo jobs in the book."""
    return open_client()


@pytest.fixture
def empty_client(open_client: Callable[..., TestClient], empty_book_url: str) -> TestClient:
    """A client on this machine, with nothing in the book."""
    return open_client(book_url=empty_book_url, demo=False)
