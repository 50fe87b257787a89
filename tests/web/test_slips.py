"""Entries that wait to be mended: taken only where their writer meant them, and never lost on the way."""

from __future__ import annotations

from concurrent.futures import ThreadPoolExecutor

import pytest
from fastapi.testclient import TestClient

from heatledger.book.errors import DiskFull
from heatledger.book.opening import Book
from heatledger.book.records import WrongEntry
from heatledger.job.edits import set_entry
from heatledger.web.later import Later
from tests.web.browsing import FERROW, Tab
from tests.web.test_changes import KITCHEN_WALL, text_of


def book_of(client: TestClient) -> Book:
    book: Book = client.app.state.book  # type: ignore[attr-defined]
    return book


def wrong(client: TestClient) -> list[tuple[str, str]]:
    return [(each.path, each.typed) for each in book_of(client).wrong(FERROW)]


def test_an_entry_that_another_set_meanwhile_is_not_laid_over_theirs(client: TestClient) -> None:
    one, other = Tab(client), Tab(client)
    one.set("air/changes", "0.35 ACH")
    assert "meanwhile" in other.set("air/changes", "0.60 ACH").said
    one.set("name", "Another name")
    assert "0.35 ACH" in text_of(client) and "0.60 ACH" not in text_of(client)
    assert wrong(client) == [("air/changes", "0.60 ACH")], "what was typed still waits"
    other.set("air/changes", "0.60 ACH")
    assert "0.60 ACH" in text_of(client) and not wrong(client)


def test_an_entry_that_says_the_same_in_another_way_is_not_taken_away(client: TestClient) -> None:
    one, other = Tab(client), Tab(client)
    one.set("rooms/kitchen/size", "15' 0\" × 11' 0\"")
    made = other.set("rooms/kitchen/floor_area", "132 ft2")
    assert "size" in made.said and "meanwhile" in made.said
    assert "15' 0\"" in text_of(client)


def test_what_waits_keeps_the_unit_of_its_reader(client: TestClient) -> None:
    client.cookies.set("units", "metric")
    one, other = Tab(client), Tab(client)
    one.set("rooms/kitchen/free_wall", "2.4")
    other.set("rooms/kitchen/free_wall", "3.3")
    assert wrong(client) == [("rooms/kitchen/free_wall", "3.3 m")]


@pytest.mark.parametrize(
    ("do", "path", "value"), [("within", "site/outdoor", "-5 °F"), ("known", "rooms/kitchen/name", "perhaps")]
)
def test_what_is_said_beside_a_value_never_becomes_the_value(
    client: TestClient, do: str, path: str, value: str
) -> None:
    tab = Tab(client)
    before = text_of(client)
    made = tab.post(do=do, path=path, value=value)
    assert len(made.said) > 20 and text_of(client) == before and not wrong(client)
    tab.set("air/changes", "0.4 ACH")
    assert value not in text_of(client)


def test_what_waits_at_a_value_stays_when_something_is_said_beside_it(client: TestClient) -> None:
    tab = Tab(client)
    tab.set("site/outdoor", "cold")
    tab.post(do="known", path="site/outdoor", value="assumed")
    assert "{is: -2 °F, known: assumed}" in text_of(client)
    assert wrong(client) == [("site/outdoor", "cold")]


def test_what_waits_in_a_thing_goes_with_it(client: TestClient) -> None:
    tab = Tab(client)
    tab.set(KITCHEN_WALL, "twelve")
    tab.set("site/outdoor", "cold")
    tab.post(do="remove", path=KITCHEN_WALL.rpartition("/")[0])
    assert wrong(client) == [("site/outdoor", "cold")]


def test_one_that_has_no_place_any_more_keeps_no_other_back(client: TestClient) -> None:
    book_of(client).set_wrong(FERROW, "rooms/nowhere/level", "ground", "No room.", "Add it.", "")
    tab = Tab(client, "piping")
    tab.set("circuits/upper/zone", "attic")
    tab.post(do="add", path="zones", name="Attic")
    assert "zone: attic" in text_of(client)
    assert [path for path, _ in wrong(client)] == ["rooms/nowhere/level"]


def test_an_entry_typed_by_way_of_another_process_is_mended_here(client: TestClient) -> None:
    tab = Tab(client)
    book_of(client).set_wrong(FERROW, "air/changes", "9 xx", "It cannot be read.", "Type it again.", "Bo")
    tab.set("air/changes", "0.36 ACH")
    assert not wrong(client)


def test_what_waits_is_still_there_when_the_edit_cannot_be_saved(
    client: TestClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    tab = Tab(client)
    tab.set("air/changes", "nonsense")
    before = text_of(client)

    def full(*_: object, **__: object) -> None:
        raise DiskFull("The disk is full.", "Make room.")

    monkeypatch.setattr(book_of(client), "save", full)
    made = tab.set("air/changes", "0.36 ACH")
    assert made.status == 503 and "full" in made.text
    assert wrong(client) == [("air/changes", "nonsense")] and text_of(client) == before
    monkeypatch.undo()
    assert "0.36 ACH" in tab.set("air/changes", "0.36 ACH").said
    assert not wrong(client)


def test_an_edit_that_was_saved_is_told_so_when_what_waited_cannot_be_cleared(
    client: TestClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    tab = Tab(client)
    tab.set("air/changes", "nonsense")

    def full(*_: object) -> None:
        raise DiskFull("The disk is full.", "Make room.")

    monkeypatch.setattr(book_of(client), "clear_wrong", full)
    made = tab.set("air/changes", "0.36 ACH")
    assert made.status == 200 and "0.36 ACH" in made.said and "0.36 ACH" in text_of(client)
    kept: list[WrongEntry] = book_of(client).wrong(FERROW)
    assert [each.typed for each in kept] == ["nonsense"]


def test_a_what_if_lays_nothing_old_over_an_edit_of_the_same_moment(
    client: TestClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The edit of another tab comes in between the reading of the job and the saving of the what-if."""
    from heatledger.web.routes import what_ifs

    desk = client.app.state.desks.open(FERROW)  # type: ignore[attr-defined]
    read, done = what_ifs.read_job, []

    def other_first(text: str, name: str = "") -> object:
        if not done:
            done.append(True)
            path, typed = "air/changes", "0.35 ACH"
            now = desk.state.revision.number
            desk.edit(lambda text: set_entry(text, path, typed), path, typed, "Bo", now)
        return read(text, name)

    monkeypatch.setattr(what_ifs, "read_job", other_first)
    fields = {"name": "Try", "path": KITCHEN_WALL, "value": "14 ft"}
    client.post(f"/jobs/{FERROW}/what-ifs", data=fields)
    assert done and "changes: 0.35 ACH" in text_of(client), "the edit of the other tab"
    assert "name: Try" in text_of(client)


def test_later_is_quiet_when_it_is_closed() -> None:
    later, done = Later(quiet=0), []
    later.put(lambda: done.append(1))
    later.close()
    later.put(lambda: done.append(2))
    assert done == [1]


def test_an_edit_is_laid_on_top_when_another_process_is_faster(
    client: TestClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The other one saves between the reading of the job here and the saving."""
    book = book_of(client)
    save, done = book.save, []

    def other_first(id: str, *rest: object, **named: object) -> object:
        if not done:
            done.append(True)
            head = book.head(id)
            text = set_entry(head.text, "air/changes", "0.35 ACH")
            save(id, text, "Ferrow house", "", "Air changed", "Bo", head.number)
        return save(id, *rest, **named)  # type: ignore[arg-type]

    tab = Tab(client)
    monkeypatch.setattr(book, "save", other_first)
    made = tab.set(KITCHEN_WALL, "14 ft")
    assert made.status == 200 and done
    assert "0.35 ACH" in text_of(client) and "14 ft" in text_of(client)


def test_many_threads_lose_no_edit(client: TestClient) -> None:
    desk = client.app.state.desks.open(FERROW)  # type: ignore[attr-defined]
    ids = list(desk.state.job.rooms)[:6]
    base = desk.state.revision.number

    def rename(id: str) -> None:
        path, name = f"rooms/{id}/name", f"Renamed {id}"
        desk.edit(lambda text: set_entry(text, path, name), path, name, "Bo", base, entry=True)

    with ThreadPoolExecutor(len(ids)) as threads:
        list(threads.map(rename, ids))
    assert all(f"Renamed {id}" in text_of(client) for id in ids)
    assert desk.fresh().revision.number == base + len(ids)
