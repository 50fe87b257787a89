"""Claim: a paired tablet works in Startup of its job over the real app, and reaches nothing else."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from contextlib import ExitStack
from html import unescape
from urllib.parse import urlsplit

import pytest
from fastapi import FastAPI
from fastapi.testclient import TestClient

from heatledger.job.load import read_job
from heatledger.web.demo import demo_text
from tests.web.browsing import FERROW, Tab, plain
from tests.web.conftest import OWN_PAGE, app_with

LAN = "http://192.168.1.20:8420"
STARTUP = f"/jobs/{FERROW}/startup"
ASIDE = {"do": "set", "value": "3 gpm", "sheet": "startup", "rev": "1"}


@pytest.fixture
def shared(book_url: str) -> Iterator[FastAPI]:
    """The app, shared; its book holds the demo house and one more job."""
    app = app_with(book_url=book_url, share=True)
    with ExitStack() as opened:
        opened.enter_context(TestClient(app, base_url="http://127.0.0.1:8420", client=("127.0.0.1", 50000)))
        job = read_job(demo_text("lerch-cottage"))
        app.state.book.add_job(job.source.text, "Another job", "", "Begun", "J. Ondry")
        yield app


@pytest.fixture
def desk(shared: FastAPI) -> TestClient:
    """A browser on the computer that runs the app."""
    return TestClient(shared, base_url="http://127.0.0.1:8420", headers=OWN_PAGE, client=("127.0.0.1", 50000))


def device(app: FastAPI, address: str = "192.168.1.77") -> TestClient:
    """A browser on another device of the network."""
    return TestClient(app, base_url=LAN, headers=OWN_PAGE, client=(address, 50000), follow_redirects=False)


@pytest.fixture
def tablet(shared: FastAPI) -> TestClient:
    """A tablet that was let in by the code for the demo house."""
    made = device(shared)
    code = shared.state.door.pairing.new_code(FERROW)
    answer = made.post("/pair", data={"code": code.letters})
    assert answer.headers["location"] == STARTUP
    return made


def links(html: str) -> list[str]:
    """Every address that the page leads to, by a link or by a form that is read."""
    return [unescape(each) for each in re.findall(r'(?:href|src)="([^"]+)"', html)]


def test_the_desk_leads_to_pairing_and_shows_the_code(desk: TestClient, shared: FastAPI) -> None:
    page = desk.get(STARTUP).text
    link = re.search(r'href="(/pair\?job=[^"]+)">Pair a tablet</a>', page)
    assert link
    before = desk.get(link[1])
    assert f'<option value="{FERROW}" selected>' in before.text, "for this job unless another is chosen"
    made = desk.post("/pair/new", data={"job": FERROW})
    code = shared.state.door.pairing.code()
    assert code is not None
    assert code.shown in made.text
    assert "Ferrow house" in plain(made.text)


def test_the_desk_says_how_to_share_when_it_is_not(client: TestClient) -> None:
    said = client.get("/pair", params={"job": FERROW}).text
    assert "heatledger app --share" in said


def test_a_tablet_sees_startup_and_no_way_elsewhere(tablet: TestClient, desk: TestClient) -> None:
    page = tablet.get(STARTUP)
    assert page.status_code == 200
    assert "Do not leave it running." in page.text
    for gone in ("All jobs", "Undo", "Redo", "History", "What if", "Find a line", "Try it", "Pair a tablet"):
        assert gone not in page.text, gone
    assert "Heat loss" not in page.text.partition('id="index"')[2].partition("</nav>")[0]
    assert "Undo" in desk.get(STARTUP).text, "the desk keeps them"


def test_every_link_of_the_tablet_may_be_followed(tablet: TestClient) -> None:
    followed = set()
    for query in ("", "?open=startup/drop", "?open=rooms/kitchen/loss"):
        for link in links(tablet.get(STARTUP + query).text):
            address = urlsplit(link)
            if not address.path or address.path in followed:
                continue
            followed.add(address.path)
            answer = tablet.get(link)
            assert answer.status_code == 200, f"{link} is shown and refused"
    assert {STARTUP, "/units", "/static/app.js", "/static/startup.css"} <= followed


def test_every_script_of_the_page_is_reached(tablet: TestClient) -> None:
    waiting, seen = ["app.js"], set()
    while waiting:
        name = waiting.pop()
        answer = tablet.get(f"/static/{name}")
        assert answer.status_code == 200, name
        seen.add(name)
        waiting += [each for each in re.findall(r'from "\./([^"]+)"', answer.text) if each not in seen]
    assert {"readings.js", "revisions.js", "entries.js"} <= seen


def test_readings_are_typed_with_a_working_open_and_the_answer_follows(tablet: TestClient) -> None:
    tab = Tab(tablet, "startup", "?open=startup/drop")
    answer = tab.set("readings/flow", "2.9 gpm")
    assert answer.status == 200, answer.text[:300]
    assert "2.9 gpm" in answer.parts["steps-running"]
    assert 'data-path="startup/drop"' in tab.text or "working" in tab.text
    after = tablet.get(
        f"/jobs/{FERROW}/after", params={"open": "startup/drop", "sheet": "startup", "token": tab.token}
    )
    assert after.status_code == 200
    assert "The meter reads 2.9 gpm" in after.text
    assert "Try it" not in after.text
    assert 'href="/jobs' not in after.text.replace(f'href="{STARTUP}', "")


def test_how_well_a_reading_is_known_may_be_said(tablet: TestClient) -> None:
    tab = Tab(tablet, "startup")
    assert tablet.get(f"/jobs/{FERROW}/known", params={"path": "readings/supply"}).status_code == 200
    assert tab.post(do="known", path="readings/supply", value="measured").status == 200
    assert tablet.get(f"/jobs/{FERROW}/known", params={"path": "rooms/kitchen/height"}).status_code == 403


def test_a_trial_touches_readings_only(tablet: TestClient) -> None:
    tab = Tab(tablet, "startup")
    where, asked = f"/jobs/{FERROW}/trial", {"sheet": "startup", "token": tab.token, "value": "120 °F"}
    tried = tablet.get(where, params=asked | {"path": "readings/supply"})
    assert tried.status_code == 200
    assert 'id="lead"' in tried.text
    assert "120 °F" not in tablet.get(STARTUP).text, "nothing is kept"
    assert tablet.get(where, params=asked | {"path": "plant/supply"}).status_code == 403
    both = [*asked.items(), ("path", "readings/supply"), ("path", "plant/supply")]
    assert tablet.get(where, params=both).status_code == 403


def test_a_slip_on_the_tablet_is_told_and_can_be_withdrawn(tablet: TestClient) -> None:
    tab = Tab(tablet, "startup")
    wrong = tab.set("readings/flow", "a lot")
    assert "fault-readings-flow" in wrong.parts["steps-running"]
    put_back = tab.post("withdraw", path="readings/flow")
    assert put_back.status == 200
    assert "fault-readings-flow" not in put_back.parts["steps-running"]


def test_the_bar_works_without_scripts(tablet: TestClient) -> None:
    page = tablet.get(STARTUP).text
    form = re.search(r'<form [^>]*action="([^"]+)" data-bar="([^"]+)".*?</form>', page, re.DOTALL)
    assert form
    fields = dict(re.findall(r'type="hidden" name="([a-z]+)" value="([^"]*)"', form[0]))
    plain_post = {key: value for key, value in OWN_PAGE.items() if key == "sec-fetch-site"}
    answer = tablet.post(form[1], data=fields | {"value": "100 psi"}, headers=plain_post)
    assert (answer.status_code, answer.headers["location"]) == (303, STARTUP)
    assert "100 psi" in tablet.get(STARTUP).text


def test_the_name_typed_on_the_tablet_signs_its_revisions(tablet: TestClient, shared: FastAPI) -> None:
    page = tablet.get(STARTUP).text
    form = re.search(r'<form class="reader.*?</form>', page, re.DOTALL)
    assert form
    fields = dict(re.findall(r'name="([a-z]+)" value="([^"]*)"', form[0]))
    answer = tablet.post("/reader", data=fields | {"name": "M. Dell"})
    assert (answer.status_code, answer.headers["location"]) == (303, STARTUP)
    Tab(tablet, "startup").set("readings/flow", "3 gpm")
    assert shared.state.book.head(FERROW).by == "M. Dell"


@pytest.mark.parametrize(
    "path",
    ["/", "/jobs/ferrow-house", "/jobs/ferrow-house/house", "/jobs/ferrow-house/papers",
     "/jobs/ferrow-house/history", "/jobs/ferrow-house/what-if", "/jobs/another-job/startup",
     "/jobs/another-job/rev", "/book", "/book/backup", "/new", "/api/openapi.json",
     "/jobs/ferrow-house/after?sheet=house&token=x", "/jobs/ferrow-house/working?sheet=house&open=site"],
)  # fmt: skip
def test_nothing_else_is_reached(tablet: TestClient, path: str) -> None:
    answer = tablet.get(path)
    assert answer.status_code == 403
    assert "may open Startup of one job" in answer.text


@pytest.mark.parametrize(
    ("where", "fields"),
    [
        (f"/jobs/{FERROW}/edit", ASIDE | {"path": "plant/supply"}),
        (f"/jobs/{FERROW}/edit", ASIDE | {"path": "rooms/kitchen", "do": "remove"}),
        (f"/jobs/{FERROW}/edit", ASIDE | {"path": "readings/flow", "sheet": "house"}),
        ("/jobs/another-job/edit", ASIDE | {"path": "readings/flow"}),
        (f"/jobs/{FERROW}/move", {"how": "undo", "rev": "1", "sheet": "startup"}),
        (f"/jobs/{FERROW}/make", {"what": "room", "path": "rooms", "rev": "1"}),
        ("/pair/new", {"job": FERROW}),
        ("/book/restore", {"path": "x", "sure": "yes"}),
    ],
)
def test_nothing_else_is_changed(
    tablet: TestClient, shared: FastAPI, where: str, fields: dict[str, str]
) -> None:
    book = shared.state.book
    before = {each.id: each.head for each in book.jobs()}
    assert tablet.post(where, data=fields).status_code == 403
    assert {each.id: each.head for each in book.jobs()} == before


def test_what_is_typed_on_the_tablet_appears_at_the_desk(tablet: TestClient, desk: TestClient) -> None:
    at_desk, at_boiler = Tab(desk, "startup"), Tab(tablet, "startup")
    at_boiler.set("readings/flow", "2.9 gpm")
    assert desk.get(f"/jobs/{FERROW}/rev").json()["rev"] > int(at_desk.rev), "seen when the page is looked at"
    fresh = desk.get(f"/jobs/{FERROW}/after", params={"sheet": "startup", "token": at_desk.token})
    assert "2.9 gpm" in fresh.text
    assert "All jobs" not in fresh.text, "only what changed comes"
    answer = at_desk.set("readings/cold_pressure", "13 psi")
    assert "2.9 gpm" in answer.parts["steps-running"], "or with the next change of the desk"
    clash = Tab(tablet, "startup")
    at_desk.set("readings/flow", "3.3 gpm")
    late = clash.set("readings/flow", "3.1 gpm")
    assert "meanwhile" in late.said
    assert "3.3 gpm" in desk.get(STARTUP).text


def test_a_device_without_a_code_or_shut_out_reaches_nothing(
    shared: FastAPI, tablet: TestClient, open_client: Callable[..., TestClient]
) -> None:
    stranger = device(shared, "192.168.1.90")
    assert stranger.get(STARTUP).status_code == 403
    assert "Do not leave it running" not in stranger.get(STARTUP).text
    assert tablet.get(STARTUP).status_code == 200
    shared.state.door.pairing.shut_out(1)
    assert tablet.get(STARTUP).status_code == 403
