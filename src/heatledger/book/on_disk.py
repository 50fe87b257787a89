"""A job and its file on disk: opened, written back with its comments, never overwritten unseen."""

from __future__ import annotations

import hashlib
import os
import shutil
import tempfile
from collections.abc import Callable
from pathlib import Path
from typing import Literal

from heatledger.book.book import Book
from heatledger.book.errors import BookError, FileMovedOn
from heatledger.book.faults import told
from heatledger.book.records import Revision
from heatledger.job.files import file_text
from heatledger.job.load import read_job

State = Literal["none", "same", "changed", "gone"]
_MARK = "\ufeff"


def open_file(book: Book, path: Path, by: str) -> Revision:
    """The job of a file on disk: begun from it, or, when the book has it already, as the file stands now.

    What was edited since in the book stays there as revisions. Raises JobErrors when the file holds no
    job, and BookError.
    """
    place = Path(path).resolve()
    known = [each for away in (False, True) for each in book.jobs(away) if each.file == str(place)]
    if known:
        job = known[0]
        if job.put_away:
            book.take_out(job.id)
        return (
            book.head(job.id) if state_on_disk(book, job.id) == "same" else take_from_disk(book, job.id, by)
        )
    text, digest = _read(place)
    name, address = _name_and_address(text, place)
    made = book.add_job(text, name, address, f"Opened from {place.name}", by, str(place))
    book.set_file(made.job_id, str(place), digest, made.number, by)
    return made


def state_on_disk(book: Book, id: str) -> State:
    """How the file of a job stands: there is none, it is the same as last seen here, changed, or gone."""
    file = book.job(id).file
    if not file:
        return "none"
    try:
        content = Path(file).read_bytes()
    except (FileNotFoundError, NotADirectoryError):
        return "gone"
    except OSError:
        return "changed"  # it cannot be read, so nobody can say that it is the same
    return "same" if _fingerprint(content) == book.file_digest(id) else "changed"


def write_back(book: Book, id: str, by: str) -> Path:
    """Write the job as it stands into its file; the file. Raises FileMovedOn when it is not as last seen.

    Comments, order and line ends stay: the text of the job is that of the file but for what was edited.
    """
    entry = book.job(id)
    if not entry.file:
        raise BookError("This job has no file yet.", "Say under which name it is to be written.")
    place, head = Path(entry.file), book.head(id)
    must_be_same(book, id)
    content = _as_in_file(head.text, place)
    with told(str(place)):
        _put_in_place(place, content, lambda: must_be_same(book, id))
    book.set_file(id, str(place), _fingerprint(content), head.number, by)
    return place


def write_to(book: Book, id: str, path: Path, by: str = "") -> Path:
    """Write the job as it stands into a new file, which is the file of the job from then on.

    A file that is there is left alone. Raises BookError.
    """
    place, head = Path(path).resolve(), book.head(id)
    content = head.text.encode("utf-8")
    with told(str(place)):
        try:
            file = place.open("xb")
        except FileExistsError:
            raise BookError(
                f"{place} is there already and was left as it is.", "Choose another name."
            ) from None
        try:
            with file:
                file.write(content)
                file.flush()
                os.fsync(file.fileno())
        except BaseException:
            place.unlink(missing_ok=True)  # our own, and only half of it
            raise
    book.set_file(id, str(place), _fingerprint(content), head.number, by)
    return place


def take_from_disk(book: Book, id: str, by: str) -> Revision:
    """Take the file as it stands on disk into the book, as a revision behind the head.

    When the file holds what the job says already there is no new revision. Raises JobErrors, BookError.
    """
    entry = book.job(id)
    if not entry.file:
        raise BookError("This job has no file on disk.", "Open the file itself.")
    place = Path(entry.file)
    text, digest = _read(place)
    head = book.head(id)
    if text != head.text:
        name, address = _name_and_address(text, place)
        said = f"Taken from {place.name} as it stands on disk"
        head = book.save(id, text, name, address, said, by, head.number)
    book.set_file(id, str(place), digest, head.number, by)
    return head


def must_be_same(book: Book, id: str) -> None:
    """Raises FileMovedOn, with what to do, when the file of a job is not as it was last seen here."""
    state, place = state_on_disk(book, id), Path(book.job(id).file)
    if state == "changed":
        raise FileMovedOn(
            f"{place.name} was changed on disk since it was last read here, so it was not written.",
            "Take the file into the book as a revision, or write the job under another name.",
        )
    if state == "gone":
        raise FileMovedOn(
            f"{place.name} is no longer in {place.parent}, so nothing was written.",
            "Put the file back, or write the job under a name of your choice.",
        )


def _read(place: Path) -> tuple[str, str]:
    """The text of a file and the fingerprint of its bytes, both of one reading as far as can be."""
    while True:
        text = file_text(place)
        with told(str(place)):
            content = place.read_bytes()
        if content.decode("utf-8-sig", "replace").replace("\r\n", "\n") == text:
            return text, _fingerprint(content)


def _name_and_address(text: str, place: Path) -> tuple[str, str]:
    job = read_job(text, place.name)
    return job.name or place.stem, job.address


def _as_in_file(text: str, place: Path) -> bytes:
    """The text in bytes, with the line ends and the mark at the start that the file has now."""
    with told(str(place)):
        before = place.read_bytes()
    if before.count(b"\r\n") * 2 > before.count(b"\n"):
        text = text.replace("\n", "\r\n")
    if before.startswith(_MARK.encode()) and not text.startswith(_MARK):
        text = _MARK + text
    return text.encode("utf-8")


def _put_in_place(place: Path, content: bytes, must_stand: Callable[[], None]) -> None:
    """Replace a file at once: whoever reads it meanwhile sees the old or the new one, never a part."""
    handle, name = tempfile.mkstemp(".part", f".{place.name}.", place.parent)
    part = Path(name)
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        shutil.copymode(place, part)
        must_stand()  # the last moment to notice that somebody else saved it
        os.replace(part, place)
    finally:
        part.unlink(missing_ok=True)


def _fingerprint(content: bytes) -> str:
    return hashlib.sha256(content).hexdigest()
