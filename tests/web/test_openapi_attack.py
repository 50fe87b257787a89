"""Every address of the app, asked with whatever its own description allows: never a fault of ours."""

from __future__ import annotations

import shutil
from pathlib import Path
from typing import Any

import psutil
import pytest
import schemathesis
from hypothesis import HealthCheck, Phase, given, settings

from heatledger.web.settings import DEFAULT_PORT

BASE = f"http://127.0.0.1:{DEFAULT_PORT}"
EXAMPLES = 4
OWN_PAGE = {"sec-fetch-site": "same-origin", "sec-fetch-mode": "cors", "origin": BASE,
            "host": BASE.removeprefix("http://")}  # fmt: skip
LEFT_OUT = ("/jobs/{id}/write-to", "/open-file/path", "/book/restore", "/jobs/{id}/papers/all.zip")
"""The first three take a path on this machine, which must not be made up; the last sets every paper."""
THERE = {"id": "ferrow-house", "sheet": "house", "name": "survey-sheet"}
"""What an address names has to be there, or no question gets beyond its name."""


@pytest.fixture(scope="module")
def described(book_with_demos: Path, tmp_path_factory: pytest.TempPathFactory) -> schemathesis.BaseSchema:
    """What the app says of its own addresses, over a book that may be spoiled."""
    from heatledger.web.app import create_app
    from heatledger.web.settings import Settings

    place = tmp_path_factory.mktemp("attack") / "book.sqlite"
    shutil.copy(book_with_demos, place)
    app = create_app(Settings(book_url=f"sqlite:///{place.as_posix()}"))

    async def on_this_machine(scope: Any, receive: Any, send: Any) -> None:
        # The door lets nobody else in.
        await app(scope | {"client": ("127.0.0.1", 50000)}, receive, send)

    made = schemathesis.openapi.from_asgi("/api/openapi.json", on_this_machine, headers=OWN_PAGE)
    return made.exclude(path=list(LEFT_OUT))


def _ask(operation: Any, asked: dict[str, list[int]], faults: list[str]) -> None:
    """A few requests that the description of an operation allows."""

    @settings(
        max_examples=EXAMPLES, derandomize=True, deadline=None, database=None, phases=[Phase.generate],
        suppress_health_check=list(HealthCheck),
    )  # fmt: skip
    @given(case=operation.as_strategy())
    def ask(case: Any) -> None:
        given = case.path_parameters or {}
        given.update({key: value for key, value in THERE.items() if key in given})
        answer = case.call(headers=OWN_PAGE)
        asked.setdefault(operation.label, []).append(answer.status_code)
        if answer.status_code >= 500:
            faults.append(f"{operation.label} {answer.status_code}: {case.as_curl_command()}"[:400])

    ask()


def test_nothing_that_is_asked_for_is_a_fault_of_ours(described: schemathesis.BaseSchema) -> None:
    """Every operation with a few made-up requests, the same ones every time; none may answer 500 or above."""
    asked: dict[str, list[int]] = {}
    faults: list[str] = []
    process = psutil.Process()
    files = len(process.open_files())
    for found in described.get_all_operations():
        operation = found.ok()
        if operation is None:
            raise AssertionError(f"this address cannot be described: {found.err()}")
        _ask(operation, asked, faults)
    assert not faults, "\n".join(faults)
    assert len(asked) > 20 and {200, 404, 422} <= {one for each in asked.values() for one in each}
    assert len(process.open_files()) <= files + 12, "files stay open after they were asked for"
