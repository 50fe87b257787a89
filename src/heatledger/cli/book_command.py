"""``heatledger book``: the jobs in the book, its backups, and whether it is whole."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from heatledger.cli.common import TO_MEND, WRONG_USE, end, put, say

if TYPE_CHECKING:
    from heatledger.book.book import Book

book_option = click.option(
    "--book", "address", metavar="URL", default=None,
    help="A file, or a server as in postgresql://name@host/database; your own book when left out.",
)  # fmt: skip
_NAME, _ID = 34, 20


@click.group("book")
def command() -> None:
    """The book keeps every job of the app and every revision of it."""


@command.command("list")
@book_option
@click.option("--put-away", is_flag=True, help="Those that were put away instead of those in use.")
def list_jobs(address: str | None, put_away: bool) -> None:
    """List the jobs, the one touched last first."""
    found = _with_book(address, lambda book: book.jobs(put_away))
    if not found:
        put("No jobs were put away." if put_away else "The book holds no jobs in use.")
        end(0)
    put(f"{'Job':<{_NAME}} {'Id':<{_ID}} Revision  Touched")
    for each in found:
        when = each.touched.astimezone().strftime("%Y-%m-%d %H:%M")
        name = each.name if len(each.name) <= _NAME else f"{each.name[: _NAME - 1]}…"
        put(f"{name:<{_NAME}} {each.id:<{_ID}} {each.head:>8}  {when}")
    end(0)


@command.command("backup")
@click.argument("file", type=click.Path(path_type=Path))
@book_option
def backup(file: Path, address: str | None) -> None:
    """Write the whole book into FILE, which can be restored into any book, and read the book through."""

    def written(book: Book) -> None:
        put(f"Wrote {book.backup(file)}.")
        book.check()  # what is damaged went into the file as it was, and must not pass for a good backup

    _with_book(address, written)
    end(0)


@command.command("restore")
@click.argument("file", type=click.Path(path_type=Path))
@book_option
def restore(file: Path, address: str | None) -> None:
    """Put the backup in FILE in the place of the whole book; what it held is backed up first."""
    done = _with_book(address, lambda book: (book.place, book.restore(file)), must_be_there=False)
    place, restored = done
    put(f"{place} now holds {_count(restored.jobs, 'job')} in {_count(restored.revisions, 'revision')}.")
    if restored.before:
        put(f"What it held before lies in {restored.before}.")
    end(0)


@command.command("check")
@book_option
def check(address: str | None) -> None:
    """Read every revision and say whether the book is whole."""
    found = _with_book(address, lambda book: book.check())
    put(f"The book is whole: {_count(found.jobs, 'job')}, {_count(found.revisions, 'revision')}.")
    end(0)


def _with_book(address: str | None, ask: Callable[[Book], Any], must_be_there: bool = True) -> Any:
    """What ``ask`` finds in the book; whatever is wrong with the book is said, and ends the command."""
    from heatledger.book.addresses import url_of
    from heatledger.book.errors import BookError
    from heatledger.book.opening import default_url, open_book

    try:
        url = url_of(address or default_url())
        file = url.database if url.get_backend_name() == "sqlite" else None
        if must_be_there and file and not Path(file).exists():
            say(f"There is no book at {file} yet. The app makes it at first use; --book names another.")
            end(WRONG_USE)
        book = open_book(address)
        try:
            return ask(book)
        finally:
            book.close()
    except BookError as fault:
        say(str(fault))
        end(TO_MEND)


def _count(number: int, thing: str) -> str:
    return f"{number:,} {thing}{'' if number == 1 else 's'}"
