"""Reading a job: its sheets, and the working of a figure."""

from __future__ import annotations

from fastapi import APIRouter, HTTPException, Request
from fastapi.responses import HTMLResponse, RedirectResponse, Response

from heatledger.steps.design import design
from heatledger.web.asked import desk_of, page_of
from heatledger.web.desks import State
from heatledger.web.drawing import MODULES, changed, draw, drawn, foot, fragment, partial, sheet_module, whole
from heatledger.web.parts import working_fragment

router = APIRouter()


@router.get("/jobs/{id}", response_class=HTMLResponse)
def first(id: str) -> Response:
    """A job opens at its first sheet."""
    return RedirectResponse(f"/jobs/{id}/house", 303)


@router.get("/jobs/{id}/working", response_class=HTMLResponse)
def working(request: Request, id: str, sheet: str = "house") -> Response:
    """The working of the figure at ``open``, for the right page."""
    page = page_of(request, id, known(sheet))
    own = getattr(sheet_module(page.sheet), "working", working_fragment)
    made = fragment(own(page), page)
    if "HX-Request" not in request.headers:
        return HTMLResponse(made)
    return HTMLResponse(partial("working", made) + partial("foot", foot(page, {"right:working": made})))


@router.get("/jobs/{id}/after", response_class=HTMLResponse)
def after(request: Request, id: str, sheet: str, token: str) -> Response:
    """What follows after an edit has been answered: the findings, and where each sheet stands."""
    desk = desk_of(request, id)
    page = page_of(request, id, known(sheet))
    parts = drawn(page)
    fresh = desk.remember(parts)
    body = changed(desk.drawings.get(token, {}), parts)
    return HTMLResponse(body + draw("token.html", p=page, token=fresh, wait=False))


@router.get("/jobs/{id}/trial", response_class=HTMLResponse)
def trial(request: Request, id: str, sheet: str, token: str, path: str, value: str) -> Response:
    """The sheet as it would be with one entry changed, while a slider moves; nothing is kept."""
    desk = desk_of(request, id)
    state = desk.fresh()
    job = state.job.with_changes([{"set": path, "to": value}], "trial")
    tried = State(state.revision, job, design(job, since=state.house), state.house)
    page = page_of(request, id, known(sheet), tried, ready=False)
    shown = desk.drawings.get(token, {})
    parts = drawn(page, shown)
    body = changed(shown, parts)
    return HTMLResponse(body + draw("token.html", p=page, token=desk.remember(parts), wait=False))


@router.get("/jobs/{id}/{sheet}", response_class=HTMLResponse)
def sheet(request: Request, id: str, sheet: str) -> Response:
    """One sheet as two facing pages."""
    page = page_of(request, id, known(sheet))
    parts = drawn(page)
    return HTMLResponse(whole(page, parts, desk_of(request, id).remember(parts)))


def known(sheet: str) -> str:
    """The name of a sheet, refused when there is none of that name."""
    if sheet not in MODULES:
        raise HTTPException(404)
    return sheet
