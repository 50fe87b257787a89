"""The list of jobs, and what belongs to the reader: name and units."""

from __future__ import annotations

from typing import Annotated
from urllib.parse import quote

from fastapi import APIRouter, Form, Request
from fastapi.responses import HTMLResponse, RedirectResponse, Response

from heatledger.ledger.presets import PRESETS
from heatledger.web.asked import units_of, who
from heatledger.web.drawing import draw

router = APIRouter()
YEAR = 365 * 24 * 3600


@router.get("/", response_class=HTMLResponse)
def jobs(request: Request) -> Response:
    """Every job in the book, newest first."""
    book = request.app.state.book
    return HTMLResponse(draw("jobs.html", jobs=book.jobs(), units=units_of(request), who=who(request)))


@router.post("/reader")
def reader(
    units: Annotated[str, Form()] = "", name: Annotated[str, Form()] = "", back: Annotated[str, Form()] = "/"
) -> Response:
    """Keep the reader's units or name on this device."""
    answer = RedirectResponse(back if back.startswith("/") and not back.startswith("//") else "/", 303)
    if units.lower() in PRESETS:
        answer.set_cookie("units", units.lower(), max_age=YEAR, samesite="strict")
    if name.strip():
        answer.set_cookie("who", quote(name.strip()[:60]), max_age=YEAR, samesite="strict")
    return answer
