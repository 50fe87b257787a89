"""The invented jobs that a new book shows, so that there is something to open."""

from __future__ import annotations

from importlib.resources import files

from heatledger.book.opening import Book
from heatledger.job.parsing import tree_of

DEMOS = ("ferrow-house", "lerch-cottage", "tamm-street")


def add_demo_jobs(book: Book) -> None:
    """Put the demo jobs into a book that never had a job."""
    if book.jobs() or book.jobs(put_away=True):
        return
    for name in reversed(DEMOS):
        add_demo(book, name, "Heatledger")


def add_demo(book: Book, name: str, by: str) -> str:
    """Put a copy of one demo job into the book; the id it got."""
    text = demo_text(name)
    # They are ours and can be read; to read all of them would keep the first page waiting.
    entries = tree_of(text).entries
    job, address = (getattr(entries.get(each), "text", "") for each in ("name", "address"))
    revision = book.add_job(text, job, address, "Begun from the demo", by)
    return revision.job_id


def demo_text(name: str) -> str:
    """The text of a demo job."""
    return files("heatledger").joinpath("examples", f"{name}.yaml").read_text(encoding="utf-8")
