"""Claim: the sheet and line on the screen are those of the papers, and no request numbers a house."""

from __future__ import annotations

import re
from concurrent.futures import wait

import pytest
from benchmarks.twenty_rooms import job_text
from fastapi.testclient import TestClient

from heatledger import design
from heatledger.job.load import read_job
from heatledger.ledger.compose import working_of
from heatledger.ledger.figures import ancestors
from heatledger.ledger.outline import outline_in, outline_of
from heatledger.ledger.presets import METRIC, PRESETS, US
from heatledger.papers.groups import book
from heatledger.web import addresses
from heatledger.web.addresses import Superseded, number_later, numbered, parsed, printing_of, sheet_of
from heatledger.web.demo import demo_text

JOB = "/jobs/ferrow-house"
DEMOS = ("ferrow-house", "lerch-cottage", "tamm-street")
CALLOUT = re.compile(r'<span class="call"[^>]*aria-label="Sheet (\d+)(?:, line (\d+))?"')


def desk_of(client: TestClient):
    return client.app.state.desks.open("ferrow-house")  # type: ignore[attr-defined]


def callout(client: TestClient, path: str, way: str = "house") -> tuple[str, str]:
    question = f"callout?path={path}" if way == "callout" else f"{way}?open={path}"
    found = CALLOUT.search(client.get(f"{JOB}/{question}").text)
    assert found is not None
    return found[1], found[2] or ""


@pytest.mark.parametrize("units", [US, METRIC], ids=lambda each: each.name)
@pytest.mark.parametrize("name", [*DEMOS, "twenty"])
def test_an_outline_is_that_of_the_composed_working(name: str, units) -> None:
    house = design(read_job(job_text() if name == "twenty" else demo_text(name)))
    figures = list(ancestors(*house.results.values()))[:: 7 if name == "twenty" else 2]
    assert len(figures) > 150
    for each in figures:
        assert outline_of(each, units) == outline_in(working_of(each, units, house.names))


def test_the_book_of_addresses_is_the_same_from_kept_outlines() -> None:
    text = demo_text("ferrow-house")
    first = design(read_job(text))
    book(first, US)
    changed = read_job(text.replace("free_wall: 7' 6\"", "free_wall: 8' 6\""))
    after, anew = book(design(changed, since=first), US), book(design(changed), US)
    keys = {path: after.key(each) for path, each in after.design.figures.items()}
    assert keys == {path: anew.key(each) for path, each in anew.design.figures.items()}
    assert len(set(keys.values())) > 500


@pytest.mark.parametrize("name", DEMOS)
def test_the_sheet_told_beforehand_is_that_of_the_book(name: str) -> None:
    house = design(read_job(demo_text(name)))
    found, seen = book(house, US), set()
    for path, each in house.figures.items():
        key = parsed(found.key(each))
        if key is not None and sheet_of(house, each):
            assert sheet_of(house, each) == key[0], path
            seen.add(key[0])
    assert {1, 2} <= seen


@pytest.mark.parametrize(
    ("text", "means"),
    [("2·8", (2, 8)), ("2.8", (2, 8)), ("2-80", (2, 80)), ("8.1", None), ("2.0", None), ("2", None)],
)  # fmt: skip
def test_addresses_are_read_as_they_are_written(text: str, means: tuple[int, int] | None) -> None:
    assert parsed(text) == means


def test_a_request_gives_the_sheet_at_once_and_the_line_follows(
    client: TestClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    later = []
    desk = desk_of(client)
    monkeypatch.setattr(desk, "_later", later.append)
    assert callout(client, "house/loss") == ("2", "")
    assert callout(client, "house/loss") == ("2", "")
    numbering = [each for each in later if each.__qualname__.startswith("number_later")]
    assert len(numbering) == 1
    numbering[0]()
    made = printing_of(desk, desk.state, US)
    key = made.found.key(made.design.figures["house/loss"])
    for way in ("house", "callout"):
        assert "·".join(callout(client, "house/loss", way)) == key


def test_a_revision_is_numbered_once_for_a_reader_by_whoever_comes_first(
    client: TestClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    desk, later, books = desk_of(client), [], []
    monkeypatch.setattr(desk, "_later", later.append)
    real = addresses.Printing
    monkeypatch.setattr(addresses, "Printing", lambda *given: books.append(given) or real(*given))
    coming = number_later(desk, desk.state, US)
    made = printing_of(desk, desk.state, US)  # does not wait for the hand behind the answers
    for each in later:
        each()
    assert coming.result(0) is made is printing_of(desk, desk.state, US)
    assert len(books) == 1
    assert numbered(desk).ready(desk.state.in_units(US)) is made
    assert printing_of(desk, desk.state, METRIC) is not made


def test_what_is_no_longer_the_newest_is_dropped(client: TestClient, monkeypatch: pytest.MonkeyPatch) -> None:
    desk, later = desk_of(client), []
    monkeypatch.setattr(desk, "_later", later.append)
    coming = number_later(desk, desk.state, US)
    change = {"rev": "1", "do": "set", "path": "rooms/kitchen/free_wall", "value": "8 ft"}
    client.post(f"{JOB}/edit", data=change, headers={"HX-Request": "true"})
    later[0]()
    with pytest.raises(Superseded):
        coming.result(0)
    assert callout(client, "house/loss") == ("2", "")


def test_a_link_by_address_opens_its_line_and_belongs_to_its_revision(client: TestClient) -> None:
    def leads(address: str) -> str:
        answer = client.get(f"{JOB}/line/{address}", follow_redirects=False)
        assert answer.status_code == 303
        return answer.headers["location"]

    made = printing_of(desk_of(client), desk_of(client).fresh(), US)
    sheet, _, line = made.found.key(made.design.figures["rooms/study/loss"]).partition("·")
    url = leads(f"{sheet}-{line}")
    assert url == f"{JOB}/heat-loss?open=rooms%2Fstudy%2Floss"
    assert f'aria-label="Sheet {sheet}, line {line}"' in client.get(url).text
    client.post(f"{JOB}/edit", data={"rev": "1", "do": "remove", "path": "rooms/living"},
                headers={"HX-Request": "true"})  # fmt: skip
    assert leads(f"{sheet}-{line}?rev=1") == url
    for none in ("2-99999", "2-9999?rev=1", "9-1", "x"):
        assert client.get(f"{JOB}/line/{none}").status_code == 404


def test_lines_are_numbered_behind_the_answer_in_all_presets(client: TestClient) -> None:
    desk = desk_of(client)
    for units in PRESETS.values():
        coming = number_later(desk, desk.state, units)
        client.app.state.desks.rest()  # type: ignore[attr-defined]
        assert wait([coming], 0).done and coming.result(0).units is units
