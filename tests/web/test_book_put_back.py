"""A book that is put back while the app runs: nothing that is still open is laid over it."""

from __future__ import annotations

from datetime import timedelta
from pathlib import Path

import pytest
from fastapi.testclient import TestClient

from heatledger.book.errors import NoSuchJob
from heatledger.book.opening import Book, open_book
from heatledger.book.records import Kept
from tests.web.browsing import FERROW, Tab
from tests.web.test_changes import text_of


def test_another_revision_of_the_same_number_is_noticed(
    client: TestClient, tmp_path: Path, book_url: str
) -> None:
    book: Book = client.app.state.book  # type: ignore[attr-defined]
    copy = book.backup(tmp_path / "backup.sqlite")
    tab = Tab(client)
    tab.set("air/changes", "0.36 ACH")
    other = open_book(str(copy))
    head = other.head(FERROW)
    changed = head.text.replace("changes: 0.50 ACH", "changes: 0.77 ACH")
    assert changed != head.text
    other.save(FERROW, changed, "Ferrow house", "", "Air changed", "Bo", head.number)
    other.close()
    again = open_book(book_url)  # another program, as `heatledger book restore` is
    again.restore(copy)
    again.close()
    assert book.head(FERROW).number == int(tab.rev)
    fresh = Tab(client)
    assert "0.77 ACH" in client.get(f"/jobs/{FERROW}/house?pick=air").text
    fresh.set("name", "Another name")
    assert "changes: 0.77 ACH" in text_of(client)


def test_figures_are_kept_only_with_the_revision_that_showed_them(client: TestClient) -> None:
    book: Book = client.app.state.book  # type: ignore[attr-defined]
    head = book.head(FERROW)
    kept = Kept("0.0", {"loss": 1.0}, {"house/loss": (1.0, "heat rate")})
    with pytest.raises(NoSuchJob):
        book.keep(FERROW, head.number, kept, head.at - timedelta(seconds=1))
    before = book.kept(FERROW, head.number)
    assert before is None or before.version != "0.0"
    book.keep(FERROW, head.number, kept, head.at)
    assert book.kept(FERROW, head.number) == kept
