"""Small forms that make something, and what more is said of how well an entry is known."""

from __future__ import annotations

from typing import Annotated

from fastapi import APIRouter, Depends, Request
from fastapi.responses import HTMLResponse, RedirectResponse, Response

from heatledger.job.again import read_again
from heatledger.job.edits import EditError
from heatledger.job.errors import JobErrors
from heatledger.job.text import Mapping, index_of, walk
from heatledger.web.asked import desk_of, page_of, units_of, who
from heatledger.web.drawing import draw
from heatledger.web.entry_markup import plainly
from heatledger.web.first_room import first
from heatledger.web.making import made
from heatledger.web.offers import offers
from heatledger.web.page import Page
from heatledger.web.routes.edits import answer
from heatledger.web.routes.sheets import known

router = APIRouter()


async def form_of(request: Request) -> dict[str, str]:
    """The fields of a form by name; files and repeats are left out."""
    return {key: value for key, value in (await request.form()).items() if isinstance(value, str)}


@router.post("/jobs/{id}/make", response_class=HTMLResponse)
def make(request: Request, id: str, given: Annotated[dict[str, str], Depends(form_of)]) -> Response:
    """Make what a form asks for, as one revision. What cannot be read is told and nothing is kept."""
    desk = desk_of(request, id)
    state = desk.fresh()
    what, path, units = given.get("what", ""), given.get("path", "").strip("/"), units_of(request, state.job)
    try:
        edit = first(what, path, given, state.job, units) or made(what, path, given, state.job, units)
        text = edit(state.revision.text)
        if text != state.revision.text:
            read_again(text, state.job)
    except EditError as fault:
        return refused(request, [f"{fault.what} {fault.mend}"])
    except JobErrors as faults:
        return refused(request, [f"{each.message} {each.mend}" for each in faults.errors])
    base = given.get("rev", "")
    told = f"{given['name'].strip()} added" if what == "room" else ""
    outcome = desk.edit(edit, path, "", who(request), max(0, index_of(base)), told)
    sheet = known(given.get("sheet", "house"))
    following = given.get("next", "")
    if "HX-Request" not in request.headers and following.startswith(f"/jobs/{id}/"):
        return RedirectResponse(following, 303)
    return answer(request, desk, outcome, sheet, given.get("token", ""), given.get("asked", ""))


def refused(request: Request, faults: list[str]) -> Response:
    """Every fault of a form at once; the page that asked keeps what was typed."""
    template = "said.html" if "HX-Request" in request.headers else "fault.html"
    what = " ".join(dict.fromkeys(plainly(each.strip()) for each in faults))
    return HTMLResponse(draw(template, what=what, mend="Nothing was kept of this form yet."), 422)


@router.get("/jobs/{id}/known", response_class=HTMLResponse)
def more_known(request: Request, id: str, path: str) -> Response:
    """Within what, and why: the two entries beside how well an entry is known."""
    page = page_of(request, id, "house")
    return HTMLResponse(draw("known.html", **said_of_entry(page, path)))


@router.get("/jobs/{id}/offers", response_class=HTMLResponse)
def offered(request: Request, id: str, of: str, path: str = "") -> Response:
    """What a field offers while one types."""
    page = page_of(request, id, "house")
    return HTMLResponse(draw("offers.html", offers=offers(page, of, path)))


def said_of_entry(page: Page, path: str) -> dict[str, str]:
    """What is said beside the value at a path."""
    node = walk(page.job.source.base, path)
    said = node.entries if isinstance(node, Mapping) else {}
    texts = {key: getattr(said.get(key), "text", "") for key in ("within", "because")}
    return {"path": path, **texts}
