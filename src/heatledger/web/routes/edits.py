"""Changing a job: one change a request, answered with the parts of the page that it changed."""

from __future__ import annotations

from typing import Annotated

from fastapi import APIRouter, Form, Request
from fastapi.responses import HTMLResponse, RedirectResponse, Response

from heatledger.job.edits import EditError
from heatledger.web.asked import desk_of, page_of, units_of, who
from heatledger.web.changes import Change, text_edit
from heatledger.web.desks import Desk, Outcome
from heatledger.web.drawing import changed, draw, drawn
from heatledger.web.routes.sheets import known

router = APIRouter()
Text = Annotated[str, Form()]
BESIDE = ("known", "within", "because")
"""What is said beside a value. The field of the value itself cannot keep what is wrong with these."""


@router.post("/jobs/{id}/edit", response_class=HTMLResponse)
def edit(
    request: Request, id: str, rev: Annotated[int, Form()], do: Text = "set", path: Text = "",
    value: Text = "", name: Text = "", sheet: Text = "house", token: Text = "", asked: Text = "",
) -> Response:  # fmt: skip
    """One change of the job: ``do`` says what is done at ``path`` with ``value``."""
    desk = desk_of(request, id)
    state = desk.fresh()
    change = Change(do, path, value, name)
    try:
        made = text_edit(change, state.job, units_of(request, state.job))
    except EditError as fault:
        outcome = Outcome(state, str(fault), changed=False, refused=True)
        return answer(request, desk, outcome, known(sheet), token, asked)
    outcome = desk.edit(
        made.edit, path.strip("/"), made.typed or value, who(request), rev, made.said,
        entry=do == "set", beside=do in BESIDE,
    )  # fmt: skip
    return answer(request, desk, outcome, known(sheet), token, asked)


@router.post("/jobs/{id}/withdraw", response_class=HTMLResponse)
def withdraw(
    request: Request, id: str, path: Text, sheet: Text = "house", token: Text = "", asked: Text = ""
) -> Response:
    """Let go of an entry that could not be read."""
    desk = desk_of(request, id)
    return answer(request, desk, desk.withdraw(path), known(sheet), token, asked)


@router.post("/jobs/{id}/move", response_class=HTMLResponse)
def move(
    request: Request, id: str, rev: Annotated[int, Form()], how: Text, number: Annotated[int, Form()] = 0,
    sheet: Text = "house", token: Text = "", asked: Text = "",
) -> Response:  # fmt: skip
    """Undo, redo, or go back to a revision."""
    desk = desk_of(request, id)
    return answer(request, desk, desk.move(how, rev, number), known(sheet), token, asked)


def answer(
    request: Request, desk: Desk, outcome: Outcome, sheet: str, token: str, asked: str = ""
) -> Response:
    """The parts that changed, then what is said of it; the whole page where scripts are off.

    ``asked`` is the query of the page: its open figure, its picked thing.
    """
    if "HX-Request" not in request.headers:
        query = f"?{asked.removeprefix('?')}" if asked else ""
        return RedirectResponse(f"/jobs/{desk.id}/{sheet}{query}", 303)
    shown = desk.drawings.get(token, {})
    page = page_of(request, desk.id, sheet, outcome.state, ready=not shown, query=asked)
    parts = drawn(page, shown)
    body = changed(shown, parts)
    fresh = desk.remember(parts)
    said = draw("said.html", what=outcome.said, mend="", notice=outcome.refused)
    return HTMLResponse(body + draw("token.html", p=page, token=fresh, wait=not page.ready) + said)
