"""The list of jobs: where each stands, the picked one, its file, and what belongs to the reader."""

from __future__ import annotations

import re
import time
from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from fastapi.testclient import TestClient

from heatledger.job.edits import set_entry
from heatledger.ledger.presets import CANADIAN, METRIC, US
from heatledger.web.job_list import job_line, line_words
from heatledger.web.when import clock, day, moment

SMALL = "format: 1\nname: Barn  # kept\nunits: US\n\nsite: {outdoor: 5 °F, indoor: 70 °F}\n"


def settled_list(client: TestClient, path: str = "/") -> str:
    """The list once every figure in it has come."""
    for _ in range(200):
        page = client.get(path).text
        if "being worked out" not in page:
            return page
        time.sleep(0.05)
    raise AssertionError("the figures of the list never came")


def words_of(html: str) -> str:
    """The text of a page, spaces closed up."""
    return " ".join(re.sub(r"<[^>]+>", " ", html).split())


def test_the_first_page_does_not_wait_for_figures_that_follow(client: TestClient) -> None:
    first = client.get("/")
    assert first.status_code == 200
    assert "being worked out" in first.text and 'hx-get="/list' in first.text
    later = settled_list(client)
    assert 'hx-get="/list' not in later
    assert "36,184 Btu/h" in later and "160 °F" in later
    assert later.count('class="jobline"') == 3


def test_the_picked_job_stands_on_the_right_with_its_questions_and_what_ifs(client: TestClient) -> None:
    page = words_of(settled_list(client, "/?pick=tamm-street-new-boiler"))
    assert "what if: Walls blown full" in page
    assert "Open questions" in page and "Lately changed" in page and "Begun from the demo" in page
    right = page[page.index("Heated") :]
    assert "51,049 Btu/h" in right


@pytest.mark.parametrize(("units", "load"), [("us", "Btu/h"), ("metric", " W"), ("canadian", "Btu/h")])
def test_all_three_presets_read_the_same_list(client: TestClient, units: str, load: str) -> None:
    client.cookies.set("units", units)
    page = words_of(settled_list(client, "/?pick=tamm-street-new-boiler"))
    assert load in page
    assert ("°F" in page) is (units == "us")


def test_a_figure_of_the_picked_job_leads_to_its_working(client: TestClient) -> None:
    page = settled_list(client, "/?pick=tamm-street-new-boiler")
    found = re.search(r'href="(/jobs/tamm-street-new-boiler/heat-loss\?open=house/loss)"', page)
    assert found
    assert "total of parts" in client.get(found[1]).text


def test_find_keeps_what_has_the_words(client: TestClient) -> None:
    page = client.get("/?find=odder+TAMM").text
    assert "Tamm Street" in page and "Ferrow house" not in page
    assert "No job has “nowhere”" in words_of(client.get("/?find=nowhere").text)
    assert "<b>x" not in client.get("/?find=<b>x").text


def test_a_job_is_put_away_and_taken_out_again(client: TestClient) -> None:
    client.post("/jobs/lerch-cottage/put-away")
    assert "Lerch cottage</a>" not in client.get("/").text
    assert "Lerch cottage</a>" in client.get("/?away=yes").text
    client.post("/jobs/lerch-cottage/take-out")
    assert "Lerch cottage</a>" in client.get("/").text


def test_a_copy_is_a_job_of_its_own_with_its_comments(client: TestClient) -> None:
    book = client.app.state.book  # type: ignore[attr-defined]
    answer = client.post("/jobs/tamm-street-new-boiler/copy", follow_redirects=False)
    assert answer.status_code == 303
    copied = book.head("tamm-street-new-boiler-copy")
    assert copied.said == "Copied from tamm-street-new-boiler, revision 1"
    was = book.head("tamm-street-new-boiler").text
    assert copied.text == was.replace(
        "name: Tamm Street, new boiler", "name: Tamm Street, new boiler, copy", 1
    )


def test_an_edit_shows_the_old_design_load_struck(client: TestClient) -> None:
    settled_list(client)
    desk = client.app.state.desks.open("tamm-street-new-boiler")  # type: ignore[attr-defined]
    desk.edit(lambda text: set_entry(text, "site/outdoor", "-4 °F"), "site/outdoor", "-4 °F", "J. Ondry", 1)
    page = settled_list(client, "/?pick=tamm-street-new-boiler")
    assert "<s>51,049 Btu/h</s>" in page[page.index("Lately changed") :]
    assert "J. Ondry" in page[page.index("Lately changed") :]


def test_a_job_is_written_to_a_file_and_back_with_its_comments(client: TestClient, tmp_path: Path) -> None:
    place, id = tmp_path / "house.yaml", "tamm-street-new-boiler"
    said = client.post(f"/jobs/{id}/write-to", data={"path": str(place)}).text
    assert place.is_file() and "Written to" in said
    desk = client.app.state.desks.open(id)  # type: ignore[attr-defined]
    desk.edit(lambda text: set_entry(text, "site/indoor", "68 °F"), "site/indoor", "68 °F", "", 1)
    before = place.read_text(encoding="utf-8")
    assert "Save back to its file" in client.get(f"/?pick={id}").text
    client.post(f"/jobs/{id}/write-back")
    assert place.read_text(encoding="utf-8") == before.replace("indoor: 70 °F", "indoor: 68 °F", 1)


def test_a_file_changed_behind_the_app_is_noticed_and_never_overwritten(
    client: TestClient, tmp_path: Path
) -> None:
    place, id = tmp_path / "house.yaml", "tamm-street-new-boiler"
    client.post(f"/jobs/{id}/write-to", data={"path": str(place)})
    other = place.read_text(encoding="utf-8").replace("outdoor: 2 °F", "outdoor: 0 °F", 1)
    place.write_text(other, encoding="utf-8")
    assert "The file was changed on disk" in client.get(f"/?pick={id}").text
    assert "was not written" in words_of(client.post(f"/jobs/{id}/write-back").text)
    assert place.read_text(encoding="utf-8") == other
    client.post(f"/jobs/{id}/take-from-disk")
    assert client.app.state.book.head(id).text == other  # type: ignore[attr-defined]
    assert "The file was changed on disk" not in client.get(f"/?pick={id}").text


def test_a_wrong_file_says_every_fault_and_keeps_the_text_to_mend(client: TestClient) -> None:
    wrong = SMALL + "rooms:\n  den: {nme: Den}\n  attic: 3\n# <script>\n"
    page = client.post("/open-file", files={"file": ("barn.yaml", wrong.encode())})
    assert page.status_code == 422
    assert "There is no `nme` in a room" in page.text and "read was `3`" in page.text
    assert re.search(r"<b>Line \d+</b>", page.text)
    assert "# &lt;script&gt;" in page.text
    mended = client.post("/open-file/text", data={"text": SMALL, "name": "barn.yaml"}, follow_redirects=False)
    assert mended.headers["location"] == "/jobs/barn/house"
    assert client.app.state.book.head("barn").text == SMALL  # type: ignore[attr-defined]


def test_a_file_is_opened_as_sent_and_by_its_path(client: TestClient, tmp_path: Path) -> None:
    sent = client.post(
        "/open-file", files={"file": ("barn.yaml", SMALL.replace("\n", "\r\n").encode())},
        follow_redirects=False,
    )  # fmt: skip
    assert sent.headers["location"] == "/jobs/barn/house"
    place = tmp_path / "mill.yaml"
    place.write_text(SMALL.replace("Barn", "Mill"), encoding="utf-8")
    named = client.post("/open-file/path", data={"path": str(place)}, follow_redirects=False)
    assert named.headers["location"] == "/jobs/mill/house"
    assert client.app.state.book.job("mill").file == str(place)  # type: ignore[attr-defined]


@pytest.mark.parametrize(
    ("content", "said"),
    [(b"a" * 2_000_001, "more than 2 MB"), ("Stra\u00dfe: 1".encode("latin-1"), "not UTF-8")],
)
def test_a_file_that_cannot_be_a_job_is_refused(client: TestClient, content: bytes, said: str) -> None:
    page = client.post("/open-file", files={"file": ("x.yaml", content)})
    assert page.status_code == 422 and said in page.text
    assert "No job" not in page.text


def test_no_file_and_no_such_file_are_said(client: TestClient, tmp_path: Path) -> None:
    assert "Choose a file first" in client.post("/open-file", files={"file": ("", b"")}).text
    gone = client.post("/open-file/path", data={"path": str(tmp_path / "none.yaml")})
    assert gone.status_code == 422 and "There is no file" in gone.text


def test_the_book_is_backed_up_and_restored(client: TestClient) -> None:
    saved = client.get("/book/backup")
    assert saved.content.startswith(b"SQLite format 3")
    assert re.search(r"heatledger-book-\d{4}-\d\d-\d\d\.sqlite", saved.headers["content-disposition"])
    client.post("/jobs/lerch-cottage/put-away")
    files = {"file": ("copy.sqlite", saved.content)}
    unsure = client.post("/book/restore", files=files)
    assert unsure.status_code == 422 and "Lerch cottage</a>" not in client.get("/").text
    done = client.post("/book/restore", files=files, data={"sure": "yes"})
    assert "now holds 3 jobs" in done.text and "as it was before lies in" in done.text
    assert "Lerch cottage</a>" in client.get("/").text


def test_what_is_no_backup_is_refused_and_the_book_stays(client: TestClient) -> None:
    answer = client.post("/book/restore", files={"file": ("a.sqlite", b"no book")}, data={"sure": "yes"})
    assert answer.status_code == 422
    assert "Ferrow house" in client.get("/").text


def test_the_name_is_asked_for_once(client: TestClient) -> None:
    assert "Who works on this device?" in client.get("/").text
    client.post("/reader", data={"name": " Åsa <b> "})
    page = client.get("/").text
    assert "Who works on this device?" not in page and "Åsa &lt;b&gt;" in page


def test_the_units_page_tells_the_three_apart(client: TestClient) -> None:
    page = client.get("/units?back=/jobs/ferrow-house/house").text
    for each in ("12′ 6″", "3.81 m", "21.1 °C", "6 December 2001, 14:05", "December 6, 2001, 2:05 pm"):
        assert each in page
    turned = client.post(
        "/reader", data={"units": "metric", "back": "/jobs/ferrow-house/house"}, follow_redirects=False
    )
    assert turned.headers["location"] == "/jobs/ferrow-house/house"
    assert client.cookies["units"] == "metric"


@pytest.mark.parametrize("back", ["//elsewhere.example", "https://elsewhere.example", "/\\elsewhere.example"])
def test_a_switch_never_leads_elsewhere(client: TestClient, back: str) -> None:
    answer = client.post("/reader", data={"units": "us", "back": back}, follow_redirects=False)
    assert answer.headers["location"] in ("/", "/elsewhere.example")


def test_a_job_that_cannot_be_read_does_not_hide_the_others(open_client: Callable[..., TestClient]) -> None:
    client = open_client()
    book = client.app.state.book  # type: ignore[attr-defined]
    book.add_job("format: 1\nunits: ells\n", "Odd", "", "Begun", "")
    page = settled_list(client, "/?pick=odd")
    assert "Ferrow house" in page and "not worked out" in page


def test_the_line_is_heavy_as_far_as_the_job_has_come() -> None:
    line = str(job_line(["settled", "decide", "must", "begun"]))
    assert line.count('fill="#1F1D1A"') == 1 and "#80540A" in line and "#85194A" in line
    assert 'd="M8 9H77"' in line
    assert line_words(["settled", "must"] + ["none"] * 6).startswith("Must fix: heat loss; settled: house")


def test_dates_are_said_as_each_reader_says_them() -> None:
    now = datetime(2026, 12, 6, 14, 5).astimezone()
    assert moment(now, US, now) == "today, 2:05 pm" and moment(now, METRIC, now) == "today, 14:05"
    assert day(now - timedelta(days=1), CANADIAN, now) == "yesterday"
    older = now - timedelta(days=40)
    assert day(older, US, now) == "October 27" and day(older, METRIC, now) == "27 October"
    assert day(older - timedelta(days=365), US, now) == "October 27, 2025"
    assert clock(now.replace(hour=0), US) == "12:05 am"
    assert day(now.astimezone(UTC), US, now) == "today"


@pytest.mark.parametrize(
    "back", ["/\t/evil.example", "/\n/evil.example", "\\\t\\evil.example", "//evil.example"]
)
def test_the_way_back_stays_in_the_app(client: TestClient, back: str) -> None:
    page = client.get("/units", params={"back": back}).text
    assert '<a href="/evil.example">Back</a>' in page
