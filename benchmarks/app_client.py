"""The app over a book in a temporary folder, asked through ASGI without a socket, and what it took."""

from __future__ import annotations

import asyncio
import re
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from time import perf_counter, process_time
from typing import Any
from urllib.parse import urlencode

from twenty_rooms import job_text

from heatledger.web.app import create_app
from heatledger.web.settings import DEFAULT_PORT, Settings

HOST = f"127.0.0.1:{DEFAULT_PORT}"
_TOKEN = re.compile(r'id="token"[^>]*data-token="([^"]*)" data-rev="(\d+)" data-wait="(yes|no)"')


@dataclass(frozen=True)
class Answer:
    """What came back: seconds on the clock, and seconds that the processors worked for it."""

    status: int
    text: str
    seconds: float
    worked: float

    @property
    def size(self) -> int:
        """Bytes of the body."""
        return len(self.text.encode("utf-8"))


class Client:
    """One browser on this computer; ``app`` is asked directly."""

    def __init__(self, app: Any) -> None:
        self.app = app
        self._runner = asyncio.Runner()
        self._life = app.router.lifespan_context(app)
        self._runner.run(self._life.__aenter__())

    def get(self, address: str, partial: bool = False) -> Answer:
        """Ask for an address; ``partial`` as the scripts of a page do."""
        return self._ask("GET", address, b"", partial)

    def post(self, address: str, **form: Any) -> Answer:
        """Post a form as the scripts of a page do."""
        return self._ask("POST", address, urlencode(form).encode(), True)

    def rest(self) -> None:
        """Wait until the app has done what it put off."""
        self.app.state.desks.rest()

    def close(self) -> None:
        """Let go of the book."""
        self._runner.run(self._life.__aexit__(None, None, None))
        self._runner.close()

    def _ask(self, method: str, address: str, body: bytes, partial: bool) -> Answer:
        return self._runner.run(self._one(method, address, body, partial))

    async def _one(self, method: str, address: str, body: bytes, partial: bool) -> Answer:
        path, _, query = address.partition("?")
        headers = [(b"host", HOST.encode()), (b"sec-fetch-site", b"same-origin")]
        if partial:
            headers.append((b"hx-request", b"true"))
        if body:
            headers.append((b"content-type", b"application/x-www-form-urlencoded"))
            headers.append((b"content-length", str(len(body)).encode()))
        scope = {
            "type": "http", "asgi": {"version": "3.0"}, "http_version": "1.1", "method": method,
            "path": path, "raw_path": path.encode(), "query_string": query.encode(), "headers": headers,
            "scheme": "http", "root_path": "", "client": ("127.0.0.1", 50000),
            "server": ("127.0.0.1", DEFAULT_PORT), "state": {},
        }  # fmt: skip
        sent: list[Any] = []

        async def receive() -> dict[str, Any]:
            return {"type": "http.request", "body": body, "more_body": False}

        async def send(message: Any) -> None:
            sent.append(message)

        began, work = perf_counter(), process_time()
        await self.app(scope, receive, send)
        worked, seconds = process_time() - work, perf_counter() - began
        status = next(each["status"] for each in sent if each["type"] == "http.response.start")
        text = b"".join(each.get("body", b"") for each in sent).decode("utf-8")
        return Answer(status, text, seconds, worked)


class Tab:
    """One sheet of a job open in a browser: it knows its drawing and the revision it shows."""

    def __init__(self, client: Client, job: str, sheet: str, query: str = "") -> None:
        self.client, self.job, self.sheet, self.query = client, job, sheet, query
        self.opened = self.client.get(f"/jobs/{job}/{sheet}" + (f"?{query}" if query else ""))
        self.token, self.revision, self.waits = "", 0, False
        self._note(self.opened)

    def _note(self, answer: Answer) -> Answer:
        if answer.status != 200:
            raise RuntimeError(f"{answer.status} on {self.sheet}: {answer.text[:400]}")
        found = _TOKEN.search(answer.text)
        if found is None:
            raise RuntimeError(f"no drawing named in the answer on {self.sheet}: {answer.text[:400]}")
        self.token, self.revision, self.waits = found[1], int(found[2]), found[3] == "yes"
        return answer

    def edit(self, path: str, value: str, do: str = "set", **more: str) -> Answer:
        """One change of the job."""
        return self._post("edit", do=do, path=path, value=value, **more)

    def move(self, how: str, number: int = 0) -> Answer:
        """Undo, redo, or back to a revision."""
        return self._post("move", how=how, number=number)

    def after(self) -> Answer:
        """What follows after an edit has been answered."""
        return self._note(
            self.client.get(
                f"/jobs/{self.job}/after?sheet={self.sheet}&token={self.token}&{self.query}", True
            )
        )

    def working(self, path: str) -> Answer:
        """The working of a figure."""
        asked = urlencode({"open": path, "sheet": self.sheet})
        return self.client.get(f"/jobs/{self.job}/working?{asked}", True)

    def _post(self, act: str, **form: Any) -> Answer:
        given = {"rev": self.revision, "sheet": self.sheet, "token": self.token, "asked": self.query}
        return self._note(self.client.post(f"/jobs/{self.job}/{act}", **given, **form))


@contextmanager
def app_with_house() -> Iterator[tuple[Client, str]]:
    """The app over a fresh book on disk that holds the house of twenty rooms; its client and the job's id."""
    with tempfile.TemporaryDirectory() as folder:
        url = f"sqlite:///{(Path(folder) / 'book.sqlite').as_posix()}"
        app = create_app(Settings(book_url=url))
        made = app.state.book.add_job(job_text(), "Twenty rooms", "", "Begun", "Bench")
        client = Client(app)
        try:
            yield client, made.job_id
        finally:
            client.close()
