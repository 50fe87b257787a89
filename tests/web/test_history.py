"""History: every revision, any two compared, and what another version makes of an old one."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from fastapi.testclient import TestClient

from heatledger.job.edits import set_entry
from heatledger.ledger.dimensions import TEMPERATURE
from heatledger.ledger.presets import METRIC, US
from heatledger.ledger.show import show
from heatledger.web.desks import Desk
from heatledger.web.keeping import keep

ID = "tamm-street-new-boiler"
PAGE = f"/jobs/{ID}/history"


def words_of(html: str) -> str:
    """The text of a page, spaces closed up."""
    return " ".join(re.sub(r"<[^>]+>", " ", html).split())


@pytest.fixture
def desk(client: TestClient) -> Desk:
    """A job with three revisions, the last of them left by undo, and a fourth beside it."""
    desk: Desk = client.app.state.desks.open(ID)  # type: ignore[attr-defined]
    for base, path, typed in ((1, "site/outdoor", "-4 °F"), (2, "site/indoor", "66 °F")):
        desk.edit(lambda text, path=path, typed=typed: set_entry(text, path, typed), path, typed, "Ada", base)  # type: ignore[misc]
    desk.move("undo", 3)
    desk.edit(lambda text: set_entry(text, "rooms/house/name", "All of it"), "rooms/house/name", "", "Bo", 2)
    return desk


def test_every_revision_says_what_who_and_when(client: TestClient, desk: Desk) -> None:
    page = client.get(PAGE).text
    text = words_of(page)
    assert "4 revisions, newest first" in text
    assert "outdoor −4 °F, was 2 °F" in text and "Ada" in text and "Bo" in text
    assert text.count("(left by undo)") == 1
    assert "today" in text and "as it stands" in text


def test_any_two_are_compared(client: TestClient, desk: Desk) -> None:
    now = show(desk.at(3).house["house/loss"], US, places=0)
    for asked in ("?view=1..3", "?from=1&to=3"):
        text = words_of(client.get(PAGE + asked).text)
        assert "1 to 3" in text
        inputs = text[text.index("Inputs that changed") : text.index("Figures that changed")]
        assert "-4 °F" in inputs or "−4 °F" in inputs
        assert "66 °F" in inputs and "All of it" not in inputs
        assert f"Design load 51,049 Btu/h {now}" in text


def test_the_largest_share_comes_first_and_at_most_sixty(client: TestClient, desk: Desk) -> None:
    page = client.get(PAGE + "?view=1..4").text
    moved = page[page.index("Figures that changed, the largest") :]
    moved = moved[: moved.index("</table>")]
    shares = [float(each) for each in re.findall(r'num q2">([\d.]+) %', moved)]
    assert shares and shares == sorted(shares, reverse=True)
    assert 1 < moved.count("<tr>") <= 61


def test_figures_of_the_revision_that_stands_open_their_working(client: TestClient, desk: Desk) -> None:
    assert 'value="house/loss"' in client.get(PAGE + "?view=1..4").text.partition('id="right"')[2]
    old = client.get(PAGE + "?view=1..3").text.partition('id="right"')[2]
    assert 'value="house/loss"' not in old


@pytest.mark.parametrize("asked", ["?view=1..99", "?view=x..1", "?from=1&to=1", "?view=9999999999..1"])
def test_an_odd_question_is_answered_in_words(client: TestClient, desk: Desk, asked: str) -> None:
    page = client.get(PAGE + asked)
    assert page.status_code == 200
    assert "99" not in asked or "no revision" in page.text.casefold() or "2 to 4" in words_of(page.text)


def test_going_back_and_taking_up_what_was_left(client: TestClient, desk: Desk) -> None:
    form = {"rev": "4", "how": "go", "number": "3", "sheet": "history"}
    answer = client.post(f"/jobs/{ID}/move", data=form, follow_redirects=False)
    assert answer.headers["location"].startswith(PAGE)
    book = client.app.state.book  # type: ignore[attr-defined]
    assert book.head(ID).number == 3 and "indoor: 66 °F" in book.head(ID).text
    assert len(book.revisions(ID)) == 4


def test_dates_follow_the_reader(client: TestClient, desk: Desk) -> None:
    client.cookies.set("units", "metric")
    assert re.search(r"today, \d{1,2}:\d\d [^ap]", words_of(client.get(PAGE).text))
    client.cookies.set("units", "us")
    assert re.search(r"today, \d{1,2}:\d\d [ap]m", words_of(client.get(PAGE).text))


def test_what_another_version_made_of_it_is_told(client: TestClient, desk: Desk) -> None:
    book = client.app.state.book  # type: ignore[attr-defined]
    keep(book, ID, desk.fresh())
    assert "What moved, and why" not in client.get(PAGE).text
    kept = book.kept(ID, 4)
    figures = dict(kept.figures)
    value, kind = figures["house/loss"]
    figures["house/loss"] = (value * 1.1, kind)
    book.keep(ID, 4, replace(kept, version="0.0.1", figures=figures))
    text = words_of(client.get(PAGE).text)
    told = text[text.index("What moved, and why") :]
    assert "version 0.0.1" in told and "The movement begins here" in told


def test_a_job_with_one_revision_has_nothing_to_compare(client: TestClient) -> None:
    page = client.get("/jobs/lerch-cottage/history")
    assert "There is nothing before it" in page.text


def test_a_job_made_by_another_version_says_where_to_see_what_moved(
    client: TestClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    from heatledger.web.drawing import templates

    assert "was made by version" not in client.get("/jobs/ferrow-house/house").text
    monkeypatch.setitem(templates().globals, "version", "99.0.0")
    page = client.get("/jobs/ferrow-house/house").text
    assert "was made by version" in page and "this is 99.0.0" in page
    assert "/jobs/ferrow-house/history" in page


def test_the_supply_is_rounded_up_as_on_the_strip(client: TestClient, desk: Desk) -> None:
    # The lowest supply of the old house is a broken number of degrees, and it must be enough.
    for units, name in ((US, "us"), (METRIC, "metric")):
        page = client.get(PAGE, params={"units": name}).text
        shown = re.findall(r'value="house/supply"[^>]*>(\d+)<', page)
        exact = units.shown(TEMPERATURE).unit.from_si(float(desk.at(4).house["house/supply"]), True)
        assert len(shown) == 2 and all(int(each) >= exact for each in shown), (shown, exact)
