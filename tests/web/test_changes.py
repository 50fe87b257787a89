"""One change a request: what it answers, what it leaves alone, and what becomes of what cannot be read."""

from __future__ import annotations

import re

import pytest
from fastapi.testclient import TestClient

from tests.web.browsing import FERROW, Tab, plain

LOSS = re.compile(
    r'<span class="dbl">(?:<span class="was">.*?</span> )?<button[^>]*value="house/loss"[^>]*>([0-9,]+)<'
)
SPOKEN = re.compile(r'value="house/loss"[^>]*>([0-9,]+)<')
KITCHEN_WALL = "rooms/kitchen/surfaces/north-wall/length"


def text_of(client: TestClient, job: str = FERROW) -> str:
    """The text of the head revision."""
    return str(client.app.state.book.head(job).text)  # type: ignore[attr-defined]


def test_an_edit_answers_with_the_parts_that_changed_and_the_old_value_struck(client: TestClient) -> None:
    tab = Tab(client)
    old = LOSS.search(tab.text)
    made = tab.set("air/changes", "0.35 ACH")
    assert made.status == 200 and old
    assert {"strip", "rooms", "lead", "token"} <= set(made.parts)
    new = LOSS.search(made.parts["rooms"])
    assert new and new[1] != old[1]
    assert f"<s>{old[1]}</s>" in made.parts["rooms"]
    assert "0.35 ACH" in made.said and "0.50 ACH" in made.said


def test_what_did_not_change_is_not_sent(client: TestClient) -> None:
    tab = Tab(client, "emitters", "?pick=rooms/kitchen")
    made = tab.set("emitters/bathroom-base/name", "Bath baseboard")
    assert made.status == 200
    assert "strip" not in made.parts and "lead" not in made.parts


def test_findings_follow_after_the_answer(client: TestClient) -> None:
    tab = Tab(client, "emitters")
    made = tab.set("emitters/kitchen-base/length", "11 ft")
    assert 'data-wait="yes"' in made.parts["token"]
    assert "questions" not in made.parts
    after = client.get(f"/jobs/{FERROW}/after", params={"sheet": "emitters", "token": tab.token},
                       headers={"HX-Request": "true"})  # fmt: skip
    assert 'hx-target="#asks"' in after.text and 'hx-target="#questions"' in after.text


def test_an_edit_touches_only_its_own_letters(client: TestClient) -> None:
    before = text_of(client)
    Tab(client).set(KITCHEN_WALL, "12' 6\"")
    after = text_of(client)
    changed = [
        (a, b) for a, b in zip(before.split("\n"), after.split("\n"), strict=True) if a != b
    ]  # fmt: skip
    assert len(changed) == 1
    assert changed[0][0].replace("12' 0\"", "12' 6\"") == changed[0][1]


def test_undo_and_redo_move_between_revisions(client: TestClient) -> None:
    tab = Tab(client)
    first = text_of(client)
    tab.set("air/changes", "0.35 ACH")
    second = text_of(client)
    assert tab.post("move", how="undo").said.startswith("Undone")
    assert text_of(client) == first and tab.rev == "1"
    tab.post("move", how="redo")
    assert text_of(client) == second and tab.rev == "2"


@pytest.mark.parametrize(
    ("path", "typed", "words"),
    [
        (KITCHEN_WALL, "twelve", "twelve"),
        (KITCHEN_WALL, "12 furlongs", "furlongs"),
        ("air/changes", "70 °F", "air changes"),
        ("site/outdoor", "-500 °F", "colder"),
        ("rooms/kitchen/level", "cellar", "cellar"),
    ],
)
def test_a_wrong_entry_is_kept_and_the_last_good_value_stays(
    client: TestClient, path: str, typed: str, words: str
) -> None:
    tab = Tab(client, "house", f"?pick={path.rpartition('/')[0]}")
    before, loss = text_of(client), SPOKEN.search(tab.text)
    made = tab.set(path, typed)
    assert made.status == 200 and loss
    assert text_of(client) == before, "the text of the job must not change"
    kept = client.app.state.book.wrong(FERROW)  # type: ignore[attr-defined]
    assert [(each.path, each.typed) for each in kept] == [(path, typed)]
    assert words.lower() in made.said.lower()
    assert kept[0].what and "Traceback" not in made.text
    again = Tab(client, "house", f"?pick={path.rpartition('/')[0]}")
    assert "1 to mend" in plain(again.text)
    found = SPOKEN.search(again.text)
    assert found and found[1] == loss[1]


def test_a_wrong_entry_is_mended_by_typing_again_or_put_back(client: TestClient) -> None:
    tab = Tab(client)
    tab.set(KITCHEN_WALL, "twelve")
    tab.set(KITCHEN_WALL, "12 ft 3")
    assert not client.app.state.book.wrong(FERROW)  # type: ignore[attr-defined]
    assert "12 ft 3" in text_of(client)
    tab.set(KITCHEN_WALL, "nonsense")
    tab.post("withdraw", path=KITCHEN_WALL)
    assert not client.app.state.book.wrong(FERROW)  # type: ignore[attr-defined]
    assert "12 ft 3" in text_of(client)


def test_two_entries_that_are_right_together_are_both_taken(client: TestClient) -> None:
    """A zone that is not there yet waits, and is taken with the zone that makes it right."""
    tab = Tab(client, "piping")
    tab.set("circuits/upper/zone", "attic")
    assert client.app.state.book.wrong(FERROW)  # type: ignore[attr-defined]
    tab.post(do="add", path="zones", name="Attic")
    assert not client.app.state.book.wrong(FERROW)  # type: ignore[attr-defined]
    assert "zone: attic" in text_of(client)


def test_two_tabs_that_edit_different_entries_both_keep_theirs(client: TestClient) -> None:
    one, other = Tab(client), Tab(client)
    one.set("air/changes", "0.35 ACH")
    made = other.set(KITCHEN_WALL, "12' 6\"")
    assert made.status == 200
    assert "0.35 ACH" in text_of(client) and "12' 6\"" in text_of(client)
    assert other.rev == "3"


def test_two_tabs_on_one_entry_lose_nothing(client: TestClient) -> None:
    one, other = Tab(client), Tab(client)
    one.set("air/changes", "0.35 ACH")
    made = other.set("air/changes", "0.60 ACH")
    assert "meanwhile" in made.said and "0.35" in made.said
    assert "0.35 ACH" in text_of(client) and "0.60" not in text_of(client)
    kept = client.app.state.book.wrong(FERROW)  # type: ignore[attr-defined]
    assert [(each.path, each.typed) for each in kept] == [("air/changes", "0.60 ACH")]


def test_an_undo_from_a_stale_tab_is_refused_with_a_sentence(client: TestClient) -> None:
    one, other = Tab(client), Tab(client)
    one.set("air/changes", "0.35 ACH")
    made = other.post("move", how="undo")
    assert made.status == 409
    assert "0.35 ACH" in text_of(client)
    assert len(plain(made.text)) > 30


def test_a_bare_number_takes_the_unit_of_the_reader(client: TestClient) -> None:
    client.cookies.set("units", "metric")
    Tab(client).set("rooms/kitchen/free_wall", "2.4")
    assert "free_wall: 2.4 m" in text_of(client)


def test_names_are_never_markup(client: TestClient) -> None:
    evil = "<script>alert(1)</script><b onclick=x>\"'&"
    tab = Tab(client, "house", "?pick=rooms/kitchen")
    made = tab.set("rooms/kitchen/name", evil)
    assert made.status == 200
    for sheet in ("house", "heat-loss", "emitters", "piping", "boiler-room", "controls", "startup", "papers",
                  "what-if", "history"):  # fmt: skip
        page = client.get(
            f"/jobs/{FERROW}/{sheet}", params={"pick": "rooms/kitchen", "open": "rooms/kitchen/loss"}
        )
        assert page.status_code == 200
        assert "<script>alert" not in page.text and "<b onclick" not in page.text, sheet


def test_what_cannot_be_done_says_so(client: TestClient) -> None:
    tab = Tab(client)
    before = text_of(client)
    made = tab.post(do="remove", path="constructions/wall-2x4")
    assert text_of(client) == before
    assert "wall-2x4" in made.said
    for do, path in (("explode", "rooms"), ("remove", "rooms/nowhere"), ("copy", "format/1"), ("add", "..")):
        made = tab.post(do=do, path=path)
        assert made.status == 200 and text_of(client) == before
        assert len(made.said) > 20


def test_without_scripts_an_edit_comes_back_to_its_page(client: TestClient) -> None:
    answer = client.post(
        f"/jobs/{FERROW}/edit",
        data={"rev": "1", "do": "set", "path": "air/changes", "value": "0.4 ACH", "sheet": "heat-loss"},
        follow_redirects=False,
    )
    assert answer.status_code == 303
    assert answer.headers["location"] == f"/jobs/{FERROW}/heat-loss"


def test_a_side_of_a_size_leaves_the_other(client: TestClient) -> None:
    tab = Tab(client, "house", "?pick=rooms/hall")
    made = tab.set("rooms/hall/surfaces/upper-south-wall/height", "8' 6\"")
    assert made.status == 200
    walls = client.app.state.desks.open(FERROW).state.job.rooms["hall"].surfaces  # type: ignore[attr-defined]
    wall = walls["upper-south-wall"]
    assert float(wall.length) == pytest.approx(6.5 * 0.3048)
    assert float(wall.height) == pytest.approx(8.5 * 0.3048)


@pytest.mark.parametrize("fault", ["DiskFull", "BookLocked", "BookDamaged"])
def test_when_the_book_cannot_take_an_edit_the_last_revision_stays(
    client: TestClient, monkeypatch: pytest.MonkeyPatch, fault: str
) -> None:
    from heatledger.book import errors
    from heatledger.book.opening import Book

    tab = Tab(client)
    before = text_of(client)

    def fails(*given: object, **more: object) -> None:
        raise getattr(errors, fault)("The edit could not be kept.", "Make room, then try again.")

    with monkeypatch.context() as broken:
        broken.setattr(Book, "save", fails)
        made = tab.set("air/changes", "0.35 ACH")
    assert made.status == 503
    assert plain(made.text) == "The edit could not be kept. Make room, then try again."
    assert text_of(client) == before
    again = tab.set("air/changes", "0.35 ACH")
    assert again.status == 200 and "0.35 ACH" in text_of(client)
