"""Opening a job file: sent by the browser, named by its path, or mended in the page after a fault."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import Annotated

from fastapi import APIRouter, File, Form, Request, UploadFile
from fastapi.responses import HTMLResponse, RedirectResponse, Response

from heatledger.book.on_disk import open_file
from heatledger.book.opening import Book
from heatledger.job.errors import JobError, JobErrors
from heatledger.job.load import read_job
from heatledger.job.parsing import LARGEST
from heatledger.web.asked import desk_of, who
from heatledger.web.drawing import draw

router = APIRouter()
Text = Annotated[str, Form()]


@router.get("/open-file", response_class=HTMLResponse)
def ask(request: Request) -> Response:
    """Where a job file comes from: a file to send, or a path on this machine."""
    return _page()


@router.post("/open-file", response_class=HTMLResponse)
def opened(request: Request, file: Annotated[UploadFile | None, File()] = None) -> Response:
    """Begin a job from a file that the browser sends."""
    if file is None or not file.filename:
        return _page(said="Choose a file first.", status=422)
    name = Path(file.filename.replace("\\", "/")).name
    data = file.file.read(LARGEST + 1)
    try:
        text = text_of(data, name)
    except JobErrors as fault:
        kept = data[:LARGEST].decode("utf-8-sig", "replace").replace("\r\n", "\n")
        too_long = len(data) > LARGEST
        return _page(fault.errors, "" if too_long else kept, name, status=422)
    return begun(request, text, name, f"Opened from {name}")


@router.post("/open-file/path", response_class=HTMLResponse)
def by_path(request: Request, path: Text = "") -> Response:
    """Open a job file of this machine; the job goes on belonging to that file."""
    book: Book = request.app.state.book
    typed = path.strip().strip('"')
    if not typed:
        return _page(said="Say the folder and the name of the file.", status=422)
    place = Path(typed).expanduser()
    try:
        made = open_file(book, place, who(request))
    except ValueError as fault:  # a name no file can have
        return _page(said=f"{typed} cannot be opened: {fault}.", path=typed, status=422)
    except JobErrors as fault:
        return _page(fault.errors, _as_it_is(place), place.name, typed, status=422)
    return RedirectResponse(f"/jobs/{made.job_id}/house", 303)


@router.post("/open-file/text", response_class=HTMLResponse)
def mended(request: Request, text: Text = "", name: Text = "", job: Text = "") -> Response:
    """Try again with a text that was mended in the page; nothing is lost while it cannot be read."""
    clean = text.replace("\r\n", "\n")
    return begun(request, clean, name or "the text", f"Opened from {name}, mended" if name else "Begun", job)


def begun(request: Request, text: str, name: str, said: str, job: str = "") -> Response:
    """A job from a text, or a revision of ``job``; every fault with the text to mend when it is none."""
    book: Book = request.app.state.book
    try:
        read = read_job(text, name)
    except JobErrors as fault:
        return _page(fault.errors, text, name, job=job, status=422)
    if job:
        desk = desk_of(request, job)
        outcome = desk.edit(lambda _: text, "", "", who(request), desk.fresh().revision.number, said)
        if outcome.refused:
            return _page(text=text, name=name, job=job, said=outcome.said, status=409)
        return RedirectResponse(f"/jobs/{job}/house", 303)
    made = book.add_job(text, read.name or Path(name).stem, read.address, said, who(request))
    return RedirectResponse(f"/jobs/{made.job_id}/house", 303)


def text_of(data: bytes, name: str) -> str:
    """The text in the bytes of a job file; refuses what is too large or no UTF-8."""
    if len(data) > LARGEST:
        raise JobErrors(
            [JobError("too-large", "", 0, "The file holds more than 2 MB, far more than a job needs.",
                      "Choose the job file itself; pictures and plans are kept beside it.")], name,
        )  # fmt: skip
    try:
        return data.decode("utf-8-sig").replace("\r\n", "\n")
    except UnicodeDecodeError as why:
        line = data[: why.start].count(b"\n") + 1
        raise JobErrors(
            [JobError("wrong-encoding", "", line, "The file is not UTF-8 text.",
                      "Put the letters that are shown as � right below and try again, or save it as UTF-8.")],
            name,
        ) from None  # fmt: skip


def _as_it_is(place: Path) -> str:
    try:
        with place.open("rb") as file:
            data = file.read(LARGEST + 1)
    except (OSError, ValueError):
        return ""
    return "" if len(data) > LARGEST else data.decode("utf-8-sig", "replace").replace("\r\n", "\n")


def _page(
    faults: Sequence[JobError] = (), text: str = "", name: str = "", path: str = "", job: str = "",
    said: str = "", status: int = 200,
) -> Response:  # fmt: skip
    made = draw("open_file.html", faults=faults, text=text, name=name, path=path, job=job, said=said)
    return HTMLResponse(made, status)
