"""Claim: every paper that is due is listed and shown as it will be printed, and nothing waits for it."""

from __future__ import annotations

import io
import re
from concurrent.futures import ThreadPoolExecutor
from html import unescape
from threading import Event
from urllib.parse import unquote

import pytest
from fastapi.testclient import TestClient
from pypdf import PdfReader

from heatledger.papers.all_papers import PAPERS
from heatledger.web import paper_store
from heatledger.web.paper_store import PaperStore, Wanted, size_of

JOB = "/jobs/ferrow-house"
ONE_ROOM = """format: 1
units: US
site: {outdoor: -2 °F, indoor: 70 °F, elevation: 300 ft}
"""
PNG = b"\x89PNG\r\n\x1a\n"


def listed(html: str) -> list[str]:
    return re.findall(r'pick=papers%2F([a-z-]+)[^"]*"[^>]*><b>', html)


def test_every_paper_that_is_due_is_listed_and_the_blank_one(client: TestClient) -> None:
    due = [each.name for each in PAPERS if each.name != "replacement"]
    assert listed(client.get(f"{JOB}/papers").text) == [*due, "survey-sheet"]


def test_a_draft_is_said_to_be_one_and_the_blank_sheet_never_is(client: TestClient) -> None:
    rows = client.get(f"{JOB}/papers").text.split("<li")
    said = {listed(f"<li{row}")[0]: "draft" in row for row in rows if listed(f"<li{row}")}
    assert said.pop("survey-sheet") is False
    assert said and all(said.values())


def test_the_page_answers_before_the_paper_is_set(
    client: TestClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    asked = Event()
    monkeypatch.setattr(paper_store, "filled", lambda wanted: asked.set())
    html = client.get(f"{JOB}/papers?pick=papers/review").text
    assert not asked.is_set()
    assert "is being set, page 1 follows" in html
    (first,) = re.findall(r'<img src="([^"]+)"[^>]* alt="([^"]+)"', html)
    assert first[0].startswith(f"{JOB}/papers/review/1.png?rev=1&amp;units=US&amp;sheet=letter")
    assert first[1].startswith("Review of the design, page 1")


def test_pages_are_pictures_and_the_page_knows_how_many_afterwards(client: TestClient) -> None:
    html = client.get(f"{JOB}/papers?pick=papers/survey-sheet").text
    (path,) = re.findall(r'data-follow="([^"]+)"', html)
    fragments = client.get(unescape(path), headers={"HX-Request": "true"}).text
    pictures = [unescape(each) for each in re.findall(r'<img src="([^"]+)"', fragments)]
    assert len(pictures) == 3 and "data-follow" not in fragments
    for each in pictures:
        answer = client.get(each)
        assert answer.headers["content-type"] == "image/png" and answer.content.startswith(PNG)
    assert client.get(pictures[0].replace("/1.png", "/4.png")).status_code == 404
    again = client.get(f"{JOB}/papers?pick=papers/survey-sheet").text
    assert again.count("<img") == 3 and again.count('loading="lazy"') == 2 and "3 pages" in again


def test_the_sheet_is_that_of_the_reader_and_can_be_chosen(client: TestClient) -> None:
    def width(units: str, asked: str) -> float:
        client.cookies.set("units", units)
        made = client.get(f"{JOB}/papers/survey-sheet.pdf{asked}")
        assert made.headers["content-disposition"].startswith("inline")
        return float(PdfReader(io.BytesIO(made.content)).pages[0].mediabox.width)

    assert round(width("us", "")) == 612 and round(width("us", "?sheet=a4")) == 595
    assert round(width("metric", "")) == 595 and round(width("canadian", "")) == 612
    assert 'aria-current="true">A4' in client.get(f"{JOB}/papers?on=a4").text


def test_a_paper_names_its_revision_and_says_when_it_has_changed_since(client: TestClient) -> None:
    made = client.get(f"{JOB}/papers/review.pdf")
    assert "revision 1" in PdfReader(io.BytesIO(made.content)).pages[0].extract_text()
    assert "printed as it is" in client.get(f"{JOB}/papers").text
    change = {"rev": "1", "do": "set", "path": "rooms/kitchen/free_wall", "value": "8 ft"}
    assert client.post(f"{JOB}/edit", data=change, headers={"HX-Request": "true"}).status_code == 200
    changed = client.get(f"{JOB}/papers").text
    assert "changed since printed, revision 1" in changed and "printed as it is" not in changed
    old = client.get(f"{JOB}/papers/review.pdf?rev=1")
    assert old.content == made.content


def test_a_job_without_rooms_says_what_papers_wait_for(empty_client: TestClient) -> None:
    begun = empty_client.post(
        "/open-file/text", data={"text": ONE_ROOM, "name": "bare.yaml"}, follow_redirects=False
    )
    job = begun.headers["location"].removesuffix("/house")
    html = empty_client.get(f"{job}/papers").text
    assert "Papers wait for the first room" in html
    assert listed(html) == ["survey-sheet"] and "all.zip" not in html
    for name in ("review.pdf", "review/1.png", "rooms.csv", "material-list.xlsx", "nothing.pdf"):
        assert empty_client.get(f"{job}/papers/{name}").status_code == 404, name
    assert empty_client.get(f"{job}/papers/design.json").status_code == 200
    assert empty_client.get(f"{job}/papers/job.yaml").text == ONE_ROOM


def test_questions_stand_by_sheet_and_can_be_decided(client: TestClient) -> None:
    html = client.get(f"{JOB}/papers?view=questions").text
    sheets = re.findall(r'<h2 class="ruled">(\d) ', html)
    assert sheets == sorted(sheets) and len(sheets) > 3
    assert "Decide this" in html
    key = next(each for each in re.findall(r"pick=decisions%2F([^&\"]+)", html) if "tall-room" in each)
    form = client.get(f"{JOB}/papers?view=questions&pick=decisions/{key}").text
    assert 'name="f:because"' in form
    given = {
        "rev": "1", "what": "thing", "path": "decisions", "key": unquote(key), "f:is": "leave it",
        "f:because": "a fan hangs there", "f:by": "J. Ondry", "sheet": "papers",
    }  # fmt: skip
    assert client.post(f"{JOB}/make", data=given, headers={"HX-Request": "true"}).status_code == 200
    after = client.get(f"{JOB}/papers?view=questions").text
    assert "Decided: leave it, because a fan hangs there, J. Ondry." in after


def stand_in(client: TestClient, name: str) -> Wanted:
    desk = client.app.state.desks.open("ferrow-house")  # type: ignore[attr-defined]
    state = desk.fresh()
    return Wanted(desk, state, state.job.units, "letter", name)


def test_who_asks_for_the_same_paper_waits_for_the_same_work(
    client: TestClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    set_, goes_on = [], Event()

    def slow(paper: object, ppi: float) -> list[bytes]:
        set_.append(ppi)
        goes_on.wait(10)
        return [PNG + bytes(16)]

    monkeypatch.setattr(paper_store, "filled", lambda wanted: wanted)
    monkeypatch.setattr(paper_store, "pictures", slow)
    store, wanted = PaperStore(), stand_in(client, "review")
    with ThreadPoolExecutor(4) as hands:
        coming = [hands.submit(store.pages, wanted) for _ in range(4)]
        goes_on.set()
        assert len({id(each.result()) for each in coming}) == 1
    assert len(set_) == 1


def test_the_store_lets_go_of_what_was_asked_for_longest_ago(
    client: TestClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    made: list[str] = []

    def pictured(wanted: Wanted) -> Wanted:
        made.append(wanted.name)
        return wanted

    monkeypatch.setattr(paper_store, "filled", pictured)
    monkeypatch.setattr(paper_store, "pictures", lambda paper, ppi: [PNG + bytes(16 + 40)])
    store = PaperStore(most=150)
    for name in ("review", "inspector", "review", "heat-loss", "review", "inspector"):
        store.pages(stand_in(client, name))
    assert made == ["review", "inspector", "heat-loss", "inspector"]
    assert store.told(stand_in(client, "heat-loss")) is not None


def test_the_size_of_a_picture_is_read_from_its_head() -> None:
    assert size_of(PNG + b"\x00\x00\x00\rIHDR" + (816).to_bytes(4, "big") + (1056).to_bytes(4, "big")) == (
        816,
        1056,
    )
