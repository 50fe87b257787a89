"""The book as a whole: a backup to keep elsewhere, and a backup put in its place."""

from __future__ import annotations

import shutil
import tempfile
from datetime import datetime
from pathlib import Path
from typing import Annotated

from fastapi import APIRouter, File, Form, Request, UploadFile
from fastapi.responses import FileResponse, HTMLResponse, Response
from starlette.background import BackgroundTask

from heatledger.book.errors import BookError
from heatledger.book.opening import Book
from heatledger.web.admission import visitor_of
from heatledger.web.desks import Desks
from heatledger.web.door_pages import FILES_STAY, SEND_IT
from heatledger.web.drawing import draw

router = APIRouter()


@router.get("/book", response_class=HTMLResponse)
def page(request: Request) -> Response:
    """Where the book is, a backup of it, and a way to put one back."""
    return _page(request)


@router.get("/book/backup")
def backup(request: Request) -> Response:
    """The whole book as one file."""
    book: Book = request.app.state.book
    folder = tempfile.mkdtemp(prefix="heatledger-")
    try:
        made = book.backup(Path(folder) / "book.sqlite")
    except BaseException:
        shutil.rmtree(folder, ignore_errors=True)
        raise
    name = f"heatledger-book-{datetime.now().astimezone():%Y-%m-%d}.sqlite"
    gone = BackgroundTask(shutil.rmtree, folder, ignore_errors=True)
    return FileResponse(made, filename=name, media_type="application/vnd.sqlite3", background=gone)


@router.post("/book/restore", response_class=HTMLResponse)
def restore(
    request: Request, file: Annotated[UploadFile | None, File()] = None, path: Annotated[str, Form()] = "",
    sure: Annotated[str, Form()] = "",
) -> Response:  # fmt: skip
    """Put a backup in the place of the whole book, which is backed up itself before."""
    typed = path.strip().strip('"')
    sent = file is not None and bool(file.filename)
    if not sent and not typed:
        return _page(request, fault="Choose a backup first.", status=422)
    if not sent and visitor_of(request).kind != "here":
        return _page(request, fault=f"{FILES_STAY} {SEND_IT}", status=403)
    if sure != "yes":
        fault = "Say that the whole book is to be replaced, then restore again."
        return _page(request, fault=fault, path=typed, status=422)
    with tempfile.TemporaryDirectory(prefix="heatledger-") as folder:
        source = Path(typed).expanduser()
        if sent and file is not None:
            source = Path(folder) / "sent.sqlite"
            with source.open("wb") as copy:
                shutil.copyfileobj(file.file, copy)
        try:
            done = _restored(request, source)
        except (BookError, ValueError) as fault:
            words = str(fault).replace(str(source), file.filename or "") if sent and file else str(fault)
            return _page(request, fault=words, path=typed, status=422)
    return _page(request, said=done)


def _restored(request: Request, source: Path) -> str:
    state = request.app.state
    book: Book = state.book
    made = book.restore(source)
    old: Desks = state.desks
    # What is open was read from the book as it was.
    state.desks = Desks(book)
    old.close()
    jobs = f"{made.jobs} {'job' if made.jobs == 1 else 'jobs'} with {made.revisions} revisions"
    before = f" The book as it was before lies in {made.before}." if made.before else ""
    return f"The book now holds {jobs}.{before}"


def _page(request: Request, said: str = "", fault: str = "", path: str = "", status: int = 200) -> Response:
    made = draw("book.html", place=request.app.state.book.place, said=said, fault=fault, path=path)
    return HTMLResponse(made, status)
