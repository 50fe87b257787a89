"""Papers as pictures and PDF, and the files of a job that can be taken along."""

from __future__ import annotations

import io
import json
import re
from typing import Annotated
from zipfile import ZIP_DEFLATED, ZipFile, ZipInfo

from fastapi import APIRouter, HTTPException, Query, Request
from fastapi.responses import HTMLResponse, Response

from heatledger.papers.as_json import design_as_data
from heatledger.papers.compile import PaperError
from heatledger.papers.room_files import rooms_csv, rooms_workbook
from heatledger.web.addresses import printing_of
from heatledger.web.asked import desk_of, page_of, units_of
from heatledger.web.desks import Desk, State
from heatledger.web.drawing import draw, fragment, partial
from heatledger.web.paper_store import KINDS, SHEET_SIZES, STORE, SURVEY, NoSuchPaper, Wanted, due
from heatledger.web.sheets import papers as papers_sheet

router = APIRouter()
Rev = Annotated[int, Query(ge=0)]
TABLE_KINDS = {
    "csv": "text/csv; charset=utf-8",
    "xlsx": "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
}
A_YEAR = 366 * 24 * 3600


@router.get("/jobs/{id}/papers/{name}/{page}.png")
def picture(request: Request, id: str, name: str, page: int, rev: Rev = 0, sheet: str = "") -> Response:
    """A page of a paper as a picture; whoever asks waits while it is set."""
    try:
        pages = STORE.pages(_wanted(request, id, name, rev, sheet))
    except (NoSuchPaper, PaperError):
        raise HTTPException(404) from None
    if not 1 <= page <= len(pages):
        raise HTTPException(404)
    return Response(pages[page - 1], media_type="image/png")


@router.get("/jobs/{id}/papers/{name}/pages", response_class=HTMLResponse)
def pages(request: Request, id: str, name: str, rev: Rev = 0, sheet: str = "") -> Response:
    """All pages of a paper for the desk, once it has been set, with the list that says how many there are."""
    wanted = _wanted(request, id, name, rev, sheet)
    try:
        STORE.pages(wanted)
    except NoSuchPaper:
        raise HTTPException(404) from None
    except PaperError:
        pass  # the fragment says so
    page = page_of(
        request, id, "papers", wanted.state, picked=f"papers/{name}", asked={"on": (wanted.sheet,)}
    )
    list_, *_ = papers_sheet.left(page)
    paper = papers_sheet.paper_fragment(page)
    return HTMLResponse("\n".join(partial(each.id, fragment(each, page)) for each in (paper, list_)))


@router.get("/jobs/{id}/papers/all.zip")
def everything(request: Request, id: str, rev: Rev = 0, sheet: str = "") -> Response:
    """Every paper that is due with what goes beside it, the survey sheet and the job file."""
    first = _wanted(request, id, SURVEY, rev, sheet)
    state, stem = first.state, _stem(first.state)
    printing = printing_of(first.desk, state, first.units)
    out = io.BytesIO()
    try:
        with ZipFile(out, "w", ZIP_DEFLATED) as packed:
            _put(packed, f"{stem}.yaml", state.revision.text.encode())
            for kind in due(state.house):
                wanted = Wanted(first.desk, state, first.units, first.sheet, kind.name)
                _put(packed, f"{stem}-{kind.name}.pdf", STORE.pdf(wanted))
                for ending, content in kind.beside(printing).items():
                    _put(packed, f"{stem}-{kind.name}.{ending}", content)
            _put(packed, f"{stem}-{SURVEY}.pdf", STORE.pdf(first))
    except PaperError as fault:
        return _not_set(fault)
    made = _file(out.getvalue(), "application/zip", f"{stem}-papers.zip")
    return _printed(request, made, id, state, [each.name for each in due(state.house)])


@router.get("/jobs/{id}/papers/job.yaml")
def job_file(request: Request, id: str, rev: Rev = 0) -> Response:
    """The job as it was typed, comments and all."""
    state = _state(desk_of(request, id), rev)
    return _file(state.revision.text.encode(), "application/yaml; charset=utf-8", f"{_stem(state)}.yaml")


@router.get("/jobs/{id}/papers/design.json")
def as_data(request: Request, id: str, rev: Rev = 0) -> Response:
    """Every figure with its value in SI and as shown, and the findings."""
    state = _state(desk_of(request, id), rev)
    units = units_of(request, state.job)
    made = json.dumps(design_as_data(state.in_units(units), units), ensure_ascii=False, indent=1)
    return _file(made.encode(), "application/json; charset=utf-8", f"{_stem(state)}.json")


@router.get("/jobs/{id}/papers/rooms.{ending}")
def rooms(request: Request, id: str, ending: str, rev: Rev = 0) -> Response:
    """Room by room, as CSV or XLSX."""
    return _table(request, id, "rooms", ending, rev)


@router.get("/jobs/{id}/papers/material-list.{ending}")
def materials(request: Request, id: str, ending: str, rev: Rev = 0, sheet: str = "") -> Response:
    """The material list, as CSV or XLSX; as PDF it is a paper like any other."""
    if ending == "pdf":
        return pdf(request, id, "material-list", rev, sheet)
    return _table(request, id, "material-list", ending, rev)


@router.get("/jobs/{id}/papers/{name}.pdf")
def pdf(request: Request, id: str, name: str, rev: Rev = 0, sheet: str = "") -> Response:
    """A paper as PDF, to be read and printed where it opens."""
    wanted = _wanted(request, id, name, rev, sheet)
    try:
        made = STORE.pdf(wanted)
    except NoSuchPaper:
        raise HTTPException(404) from None
    except PaperError as fault:
        return _not_set(fault)
    answer = _file(made, "application/pdf", f"{_stem(wanted.state)}-{name}.pdf", "inline")
    return answer if name == SURVEY else _printed(request, answer, id, wanted.state, [name])


def _table(request: Request, id: str, name: str, ending: str, rev: int) -> Response:
    desk = desk_of(request, id)
    state = _state(desk, rev)
    kinds = {each.name for each in due(state.house)}
    if ending not in TABLE_KINDS or not kinds or (name != "rooms" and name not in kinds):
        raise HTTPException(404)
    printing = printing_of(desk, state, units_of(request, state.job))
    if name == "rooms":
        made = (rooms_csv if ending == "csv" else rooms_workbook)(printing)
    else:
        made = KINDS[name].beside(printing)[ending]
    return _file(made, TABLE_KINDS[ending], f"{_stem(state)}-{name}.{ending}")


def _wanted(request: Request, id: str, name: str, rev: int, sheet: str) -> Wanted:
    """The paper that is asked for; refused where there is none of that name."""
    if name != SURVEY and name not in KINDS:
        raise HTTPException(404)
    desk = desk_of(request, id)
    state = _state(desk, rev)
    units = units_of(request, state.job)
    return Wanted(desk, state, units, sheet if sheet in SHEET_SIZES else units.paper, name)


def _state(desk: Desk, rev: int) -> State:
    """The revision that is asked for, the newest where none is."""
    return desk.at(rev) if rev else desk.fresh()


def _stem(state: State) -> str:
    """What the files of a job are called: letters, digits and strokes of its name, no others."""
    return re.sub(r"[^a-z0-9]+", "-", (state.job.name or "").lower()).strip("-")[:60] or "house"


def _put(packed: ZipFile, name: str, content: bytes) -> None:
    """One file of a packed folder, without the moment it was made: one revision gives one run of bytes."""
    packed.writestr(ZipInfo(name), content, ZIP_DEFLATED)


def _file(content: bytes, kind: str, name: str, how: str = "attachment") -> Response:
    return Response(content, media_type=kind, headers={"content-disposition": f'{how}; filename="{name}"'})


def _printed(request: Request, answer: Response, id: str, state: State, names: list[str]) -> Response:
    """Remember on this device of which revision a paper was printed, to say when it has changed since."""
    kept = dict(each.partition(".")[::2] for each in request.cookies.get("printed", "").split("_") if each)
    kept = {name: number for name, number in kept.items() if name in KINDS and number.isdigit()}
    kept |= dict.fromkeys(names, str(state.revision.number))
    said = "_".join(f"{name}.{number}" for name, number in kept.items())
    answer.set_cookie("printed", said, max_age=A_YEAR, path=f"/jobs/{id}", httponly=True, samesite="lax")
    return answer


def _not_set(fault: PaperError) -> Response:
    what = "This paper could not be set; the fault is ours."
    return HTMLResponse(
        draw("fault.html", what=what, mend=f"The other papers are not touched by it. {fault}"), 500
    )
