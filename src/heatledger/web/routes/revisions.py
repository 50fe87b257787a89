"""Where a job stands: what a page that was left alone asks before it shows old figures any longer."""

from __future__ import annotations

from fastapi import APIRouter, Request

from heatledger.book.opening import Book

router = APIRouter()


@router.get("/jobs/{id}/rev")
def rev(request: Request, id: str) -> dict[str, int]:
    """The number of the head revision."""
    book: Book = request.app.state.book
    return {"rev": book.job(id).head}
