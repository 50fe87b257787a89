"""What can go wrong with the book, each said in two sentences: what is so, and how to mend it."""

from __future__ import annotations

from heatledger.book.records import RevisionLine


class BookError(Exception):
    """Something about the book that its user has to know; ``what`` is so, ``mend`` says how to go on."""

    def __init__(self, what: str, mend: str) -> None:
        self.what, self.mend = what, mend
        super().__init__(f"{what} {mend}")


class NoSuchJob(BookError):
    """The book has no job of that id, or the job no revision of that number."""


class MovedOn(BookError):
    """Somebody else edited the job since the page was opened; ``head`` is the number it stands at now."""

    def __init__(self, at: RevisionLine, base: int | None = None) -> None:
        who = f", by {at.by}" if at.by else ""
        page = "" if base is None else f"; this page shows revision {base}"
        super().__init__(
            f"The job has moved on to revision {at.number}{who}{page}.",
            "Nothing was changed. Look at what is new, then make the edit again.",
        )
        self.head = at.number


class NothingToUndo(BookError):
    """There is no revision to go back to, or none to go forward to again."""


class BookLocked(BookError):
    """Another program held on to the book longer than was waited."""


class BookDamaged(BookError):
    """What is stored is not what was written."""


class DiskFull(BookError):
    """There is no room left to write."""


class NewerBook(BookError):
    """A newer version of the program has written the book in a form this one does not know."""


class FileMovedOn(BookError):
    """The job file on disk is not what was last read or written here: changed, or gone."""
