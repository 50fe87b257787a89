"""Opens the book: finds it, makes it when it is new, brings it up to this version when it is old."""

from __future__ import annotations

from heatledger.book.addresses import default_url, url_of
from heatledger.book.book import Book
from heatledger.book.forms import bring_up
from heatledger.book.store import PATIENCE, Store

__all__ = ["Book", "default_url", "open_book"]


def open_book(url: str | None = None, patience: float = PATIENCE) -> Book:
    """The book at a URL or file, that of this user when left out.

    ``patience``: seconds to wait for another program that holds it. Raises BookError.
    """
    store = Store(url_of(url or default_url()), patience)
    try:
        bring_up(store)
    except BaseException:
        store.close()
        raise
    return Book(store)
