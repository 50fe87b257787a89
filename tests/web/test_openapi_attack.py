"""Every address of the app, asked with whatever its own description allows: never a fault of ours."""

from __future__ import annotations

import shutil
from pathlib import Path

import psutil
import pytest
import schemathesis
from hypothesis import HealthCheck, Phase, settings

from heatledger.web.settings import DEFAULT_PORT

BASE = f"http://127.0.0.1:{DEFAULT_PORT}"
EXAMPLES = 4
OWN_PAGE = {"sec-fetch-site": "same-origin", "sec-fetch-mode": "cors", "origin": BASE}
TOO_WIDE = ("/jobs/{id}/write-to", "/open-file/path", "/book/restore")
"""They take a path on this machine: what is made up at random must not be written or read."""


@pytest.fixture(scope="module")
def described(book_with_demos: Path, tmp_path_factory: pytest.TempPathFactory) -> schemathesis.BaseSchema:
    """What the app says of its own addresses, over a book that may be spoiled."""
    from heatledger.web.app import create_app
    from heatledger.web.settings import Settings

    place = tmp_path_factory.mktemp("attack") / "book.sqlite"
    shutil.copy(book_with_demos, place)
    app = create_app(Settings(book_url=f"sqlite:///{place.as_posix()}"))
    made = schemathesis.openapi.from_asgi("/api/openapi.json", app, headers=OWN_PAGE, base_url=BASE)
    return made.exclude(path=list(TOO_WIDE))


