"""Puts the app together: the book, the desks, the guards at the door, and the routes."""

from __future__ import annotations

import gc
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from pathlib import Path

from fastapi import FastAPI, Request
from fastapi.responses import HTMLResponse, Response
from fastapi.staticfiles import StaticFiles
from starlette.exceptions import HTTPException

from heatledger.book.errors import BookError, MovedOn, NoSuchJob
from heatledger.book.opening import open_book
from heatledger.job.errors import JobErrors
from heatledger.web.demo import add_demo_jobs
from heatledger.web.desks import Desks
from heatledger.web.drawing import draw
from heatledger.web.guards import guarded
from heatledger.web.routes import routers
from heatledger.web.settings import Settings

STATIC = Path(__file__).parent / "static"
YOUNG = 20_000
"""New objects after which garbage is looked for; an edit makes a few times as many."""


def create_app(settings: Settings) -> FastAPI:
    """The app over one book. Raises BookError when the book cannot be opened."""
    book = open_book(settings.book_url)
    if settings.demo:
        add_demo_jobs(book)

    @asynccontextmanager
    async def life(app: FastAPI) -> AsyncIterator[None]:
        _calm_collector()
        yield
        app.state.desks.close()
        book.close()

    app = FastAPI(
        title="Heatledger", docs_url=None, redoc_url=None, openapi_url="/api/openapi.json", lifespan=life
    )
    app.state.settings, app.state.book, app.state.desks = settings, book, Desks(book)
    app.mount("/static", StaticFiles(directory=STATIC), name="static")
    for router in routers():
        app.include_router(router)
    _faults(app)
    guarded(app, settings)
    return app


def _calm_collector() -> None:
    """Have garbage looked for less often: a design is many small figures, and few of them form circles.

    What was there when the app began stays for good and is not gone through again.
    """
    gc.freeze()
    gc.set_threshold(YOUNG, 10, 10)


def _faults(app: FastAPI) -> None:
    """Every fault is a page that says what, where and how to mend it."""

    def page(request: Request, what: str, mend: str, status: int) -> Response:
        template = "said.html" if "HX-Request" in request.headers else "fault.html"
        return HTMLResponse(draw(template, what=what, mend=mend, notice=False), status)

    @app.exception_handler(BookError)
    async def of_book(request: Request, fault: BookError) -> Response:
        status = 404 if isinstance(fault, NoSuchJob) else 409 if isinstance(fault, MovedOn) else 503
        return page(request, fault.what, fault.mend, status)

    @app.exception_handler(JobErrors)
    async def of_job(request: Request, fault: JobErrors) -> Response:
        first = fault.errors[0]
        return page(request, first.message, first.mend, 422)

    @app.exception_handler(HTTPException)
    async def of_http(request: Request, fault: HTTPException) -> Response:
        what = "There is no such page." if fault.status_code == 404 else str(fault.detail)
        return page(request, what, "Go back to the list of jobs.", fault.status_code)

    @app.exception_handler(Exception)
    async def of_ours(request: Request, fault: Exception) -> Response:
        return page(
            request, "This page could not be made; the fault is ours.",
            "Your job is safe as of its last revision. Go back to it and try again.", 500,
        )  # fmt: skip
