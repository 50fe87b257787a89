"""A small app behind the door, and who may knock at it."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Annotated, Any

from fastapi import FastAPI, Form, Request
from fastapi.responses import HTMLResponse
from fastapi.testclient import TestClient

from heatledger.web.guards import guarded
from heatledger.web.settings import Settings

HERE = "http://127.0.0.1:8420"
LAN = "http://192.168.1.20:8420"
PASSPHRASE = "tape boiler gauge slate"
ORIGIN = {"origin": HERE}
FROM_LAN = {"origin": LAN}


@dataclass
class Entry:
    id: int
    name: str


class Book:
    """Two jobs of an invented book."""

    def jobs(self) -> list[Entry]:
        return [Entry(1, "Ferrow <house>"), Entry(2, "Lerch cottage")]


@dataclass
class Small:
    """The app, and every request that came through its door."""

    settings: Settings
    app: FastAPI = field(default_factory=FastAPI)
    came: list[str] = field(default_factory=list)

    @property
    def door(self) -> Any:
        return self.app.state.door

    def client(self, address: str = "127.0.0.1", base: str = HERE, faults: bool = True) -> TestClient:
        """A browser at an address."""
        return TestClient(
            self.app, base_url=base, client=(address, 50000), follow_redirects=False,
            raise_server_exceptions=faults,
        )  # fmt: skip

    def tablet(self, address: str = "192.168.1.77") -> TestClient:
        """A browser on another device of the network."""
        return self.client(address, LAN)

    def paired(self, job: str = "1") -> TestClient:
        """A tablet that was let in to Startup of a job."""
        tablet = self.tablet()
        code = self.door.pairing.new_code(job)
        assert tablet.post("/pair", data={"code": code.letters}, headers=FROM_LAN).status_code == 303
        return tablet


def small_app(**settings: Any) -> Small:
    """A small app with the door in front of it."""
    small = Small(Settings(**settings))
    app = small.app
    app.state.book = Book()

    @app.get("/static/{path:path}")
    def static(path: str) -> HTMLResponse:
        return HTMLResponse("styles", 404 if path == "none.css" else 200)

    @app.get("/fails")
    def fails() -> None:
        raise RuntimeError("secret inner words")

    @app.post("/jobs/{id}/edit")
    def edit(id: str, path: Annotated[str, Form()], value: Annotated[str, Form()] = "") -> dict[str, str]:
        small.came.append(f"edit {id} {path}")
        return {"path": path, "value": value}

    @app.post("/upload")
    async def upload(request: Request) -> int:
        return len(await request.body())

    @app.post("/form")
    def form(path: Annotated[str, Form()] = "") -> str:
        return path

    @app.post("/reader")
    def reader(name: Annotated[str, Form()]) -> str:
        return name

    @app.api_route("/{path:path}", methods=["GET", "HEAD", "PUT", "DELETE", "PATCH"])
    def everything(path: str) -> dict[str, str]:
        small.came.append(f"/{path}")
        return {"path": path}

    guarded(app, small.settings)
    # The door's own pages stand before the route that takes everything.
    app.router.routes.sort(key=lambda each: getattr(each, "path", "") == "/{path:path}")
    return small
