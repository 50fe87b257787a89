"""Find a line, a link by its address, a callout that had to wait, and the page of keys and marks."""

from __future__ import annotations

from concurrent.futures import TimeoutError as Late
from typing import Annotated

from fastapi import APIRouter, HTTPException, Query, Request
from fastapi.responses import HTMLResponse, RedirectResponse, Response
from markupsafe import Markup

from heatledger.ledger.html_extras import Extras, callout
from heatledger.ledger.html_parts import standing_mark
from heatledger.ledger.sources import Standing
from heatledger.papers.printing import Printing
from heatledger.web.addresses import Superseded, callout_of, number_later, parsed, path_at, printing_of
from heatledger.web.asked import desk_of, page_of
from heatledger.web.drawing import draw
from heatledger.web.finding import find, sheet_key_of
from heatledger.web.page import Page

router = APIRouter()
PATIENCE = 12.0
"""Seconds that an answer waits for lines to be numbered; twenty rooms take one."""
MEANINGS = {
    Standing.SEEN: "we had the source open and read the number in it",
    Standing.SECOND_HAND: "another work gives it and names the source",
    Standing.MEMORY: "the trade knows it so; nobody has looked it up for this",
    Standing.PRACTICE: "what most do, without a source that proves it",
    Standing.DERIVED: "worked out here from things that have their own sources",
    Standing.JUDGMENT: "somebody’s judgment, to be weighed as such",
    Standing.YOURS: "from a table that you brought",
    Standing.INVENTED: "made up for a demo job; never for a house",
}


@router.get("/jobs/{id}/find", response_class=HTMLResponse)
def finding(request: Request, id: str, q: str = "") -> Response:
    """What is found, as a page of its own or, for the page that asks, as a list."""
    page = page_of(request, id, "house")
    found = find(page, q, lambda: _printing(page))
    if "HX-Request" in request.headers:
        return HTMLResponse(draw("found.html", p=page, found=found, asked=q))
    return HTMLResponse(draw("find.html", p=page, found=found, asked=q))


@router.get("/jobs/{id}/line/{address}", response_class=HTMLResponse)
def line(request: Request, id: str, address: str, rev: Annotated[int, Query(ge=0)] = 0) -> Response:
    """A line by its address of a revision, such as 2-8; it opens on its sheet as the job is now."""
    desk, wanted = desk_of(request, id), parsed(address)
    if wanted is None:
        raise HTTPException(404)
    state = desk.at(rev) if rev else desk.fresh()
    page = page_of(request, id, "house", state)
    path = path_at(printing_of(desk, state, page.units), wanted)
    if not path:
        where = f"line {wanted[1]} on sheet {wanted[0]}"
        what = f"Revision {state.revision.number} has no {where} that opens by itself."
        mend = "Find the figure by its words: touch Find a line on any sheet."
        return HTMLResponse(draw("fault.html", what=what, mend=mend), 404)
    return RedirectResponse(page.url(sheet_key_of(page.house, path), open=path, pick="", view=""), 303)


@router.get("/jobs/{id}/callout", response_class=HTMLResponse)
def mark(request: Request, id: str, path: str) -> Response:
    """Sheet and line of a figure, once the lines of the revision are numbered; nothing where it has none."""
    page = page_of(request, id, "house", opened=path)
    made = callout_of(page)
    if made is not None and not made[1]:
        _printing(page)
        made = callout_of(page)
    return HTMLResponse(callout(Extras(callout=made)))


@router.get("/help", response_class=HTMLResponse)
def keys(request: Request) -> Response:
    """Keys, line types, standings and marks."""
    back = request.query_params.get("back", "/")
    safe = back if back.startswith("/") and not back.startswith(("//", "/\\")) else "/"
    standings = [(Markup(standing_mark(each)), each.value, MEANINGS[each]) for each in Standing]
    return HTMLResponse(draw("help.html", back=safe, standings=standings))


def _printing(page: Page) -> Printing | None:
    """The numbered lines of what a page shows, waited for a while; None when they do not come."""
    assert page.desk is not None
    try:
        return number_later(page.desk, page.desk.state, page.units).result(PATIENCE)
    except (Late, Superseded):
        return None
