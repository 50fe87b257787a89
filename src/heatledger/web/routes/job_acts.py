"""What is done to a job as a whole: copied, put away, taken out, written to its file, taken from it."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated
from urllib.parse import urlencode

from fastapi import APIRouter, Form, Request
from fastapi.responses import HTMLResponse, RedirectResponse, Response

from heatledger.book.errors import BookError
from heatledger.book.on_disk import take_from_disk, write_back, write_to
from heatledger.book.opening import Book
from heatledger.job.errors import JobErrors
from heatledger.web.asked import who
from heatledger.web.copied_job import copy_of
from heatledger.web.drawing import draw

router = APIRouter()
Text = Annotated[str, Form()]


@router.post("/jobs/{id}/copy")
def copy(request: Request, id: str) -> Response:
    """A job of its own that begins with what this one says now."""
    book: Book = request.app.state.book
    head = book.head(id)
    text, name, address = copy_of(head)
    made = book.add_job(
        text, name, address, f"Copied from {head.job_id}, revision {head.number}", who(request)
    )
    return back_to(made.job_id, f"“{name}” is a job of its own now.")


@router.post("/jobs/{id}/put-away")
def put_away(request: Request, id: str) -> Response:
    """Take the job out of the list of those in use."""
    book: Book = request.app.state.book
    name = book.job(id).name
    book.put_away(id)
    return back_to("", f"“{name}” is put away. It is kept whole and can be taken out again.")


@router.post("/jobs/{id}/take-out")
def take_out(request: Request, id: str) -> Response:
    """Put the job back among those in use."""
    book: Book = request.app.state.book
    book.take_out(id)
    return back_to(id, f"“{book.job(id).name}” is among the jobs in use again.")


@router.post("/jobs/{id}/write-back")
def to_its_file(request: Request, id: str) -> Response:
    """Write the job as it stands into its file, unless that was changed behind the app."""
    book: Book = request.app.state.book
    try:
        place = write_back(book, id, who(request))
    except BookError as fault:
        return back_to(id, str(fault))
    return back_to(id, f"Written to {place}.")


@router.post("/jobs/{id}/write-to")
def to_new_file(request: Request, id: str, path: Text) -> Response:
    """Write the job into a new file, which is its file from then on."""
    book: Book = request.app.state.book
    typed = path.strip().strip('"')
    if not typed:
        return back_to(id, "Say the folder and the name of the file.")
    place = Path(typed).expanduser()
    try:
        if not place.is_absolute():
            raise BookError(f"{typed} does not say in which folder.", "Begin with the folder, from its root.")
        written = write_to(book, id, place if place.suffix else place.with_suffix(".yaml"), who(request))
    except (BookError, ValueError) as fault:
        return back_to(id, str(fault))
    return back_to(id, f"Written to {written}.")


@router.post("/jobs/{id}/take-from-disk")
def from_its_file(request: Request, id: str) -> Response:
    """Take the file as it stands on disk into the book, as a revision."""
    book: Book = request.app.state.book
    try:
        made = take_from_disk(book, id, who(request))
    except JobErrors as fault:
        name = Path(book.job(id).file).name
        text = _as_it_is(Path(book.job(id).file))
        page = draw("open_file.html", faults=fault.errors, text=text, name=name, path="", job=id, said="")
        return HTMLResponse(page, 422)
    except BookError as fault:
        return back_to(id, str(fault))
    return back_to(id, f"The file is in the book as revision {made.number}.")


def back_to(id: str, said: str) -> Response:
    """The list again, with this job picked and a word on what was done."""
    asked = {"pick": id, "said": said} if id else {"said": said}
    return RedirectResponse(f"/?{urlencode(asked)}", 303)


def _as_it_is(place: Path) -> str:
    try:
        return place.read_bytes().decode("utf-8-sig", "replace").replace("\r\n", "\n")
    except OSError:
        return ""
