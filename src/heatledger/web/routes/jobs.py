"""The list of jobs with the picked one beside it, and what belongs to the reader: name and units."""

from __future__ import annotations

from typing import Annotated
from urllib.parse import quote

from fastapi import APIRouter, Form, Request
from fastapi.responses import HTMLResponse, RedirectResponse, Response

from heatledger.ledger.presets import PRESETS
from heatledger.web.asked import units_of, who
from heatledger.web.behind import work_out
from heatledger.web.drawing import draw
from heatledger.web.job_list import found, rows
from heatledger.web.picked_job import picked
from heatledger.web.unit_words import short_words, unit_choices

router = APIRouter()
YEAR = 365 * 24 * 3600


@router.get("/", response_class=HTMLResponse)
def jobs(request: Request) -> Response:
    """Every job in the book, newest first, and on the right the picked one, else the newest."""
    return HTMLResponse(draw("jobs.html", **_listed(request)))


@router.get("/list", response_class=HTMLResponse)
def listed(request: Request) -> Response:
    """The two pages of the list alone, for when figures that were still worked out have come."""
    return HTMLResponse(draw("jobs_pages.html", **_listed(request)))


@router.get("/units", response_class=HTMLResponse)
def units(request: Request, back: str = "/") -> Response:
    """The three presets, what each means, and which one this device has."""
    now = units_of(request)
    return HTMLResponse(
        draw("units.html", choices=unit_choices(), now=now.name.lower(), back=here(back), units=now)
    )


@router.get("/who", response_class=HTMLResponse)
def name(request: Request) -> Response:
    """The name that this device signs revisions with, to be changed."""
    return HTMLResponse(draw("who.html", who=who(request)))


@router.post("/reader")
def reader(
    units: Annotated[str, Form()] = "", name: Annotated[str, Form()] = "", back: Annotated[str, Form()] = "/"
) -> Response:
    """Keep the reader's units or name on this device."""
    answer = RedirectResponse(here(back), 303)
    if units.lower() in PRESETS:
        answer.set_cookie("units", units.lower(), max_age=YEAR, samesite="strict")
    if name.strip():
        answer.set_cookie("who", quote(name.strip()[:60]), max_age=YEAR, samesite="strict")
    return answer


def here(back: str) -> str:
    """An address of this app to go back to, whatever was asked for."""
    # A browser leaves tabs and ends of lines out of an address, so they may hide no second slash.
    plain = "".join(each for each in back if each.isprintable())
    return "/" + plain.lstrip("/\\") if plain.startswith(("/", "\\")) else "/"


def _listed(request: Request) -> dict[str, object]:
    book, asked = request.app.state.book, request.query_params
    reader_units = units_of(request)
    away = asked.get("away", "") == "yes"
    words = asked.get("find", "").strip()
    entries = book.jobs(put_away=away)
    shown = found(entries, words) if words else entries
    picks = [each for each in shown if each.id == asked.get("pick")] or shown[:1]
    waiting = work_out(request, [each.id for each in shown if not each.summary])
    others = len(book.jobs(put_away=True)) if not away else len(book.jobs())
    return {
        "rows": rows(shown, reader_units), "all": len(entries), "find": words, "away": away, "others": others,
        "picked": picked(book, request.app.state.desks, picks[0], reader_units) if picks else None,
        "units": reader_units, "unit_words": short_words(reader_units), "who": who(request),
        "waiting": waiting, "query": request.url.query, "said": asked.get("said", ""), "place": book.place,
    }  # fmt: skip
