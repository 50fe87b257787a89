"""Claim: a paired device reaches Startup of its job, its workings and its readings, and nothing else,
however an address or a form is written."""

from __future__ import annotations

import asyncio
import re
from typing import Any
from urllib.parse import unquote_to_bytes

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from tests.web.small_app import FROM_LAN, Small, small_app


@pytest.fixture
def small() -> Small:
    return small_app(share=True)


RIGHT = {"path": "readings/supply", "value": "140 °F", "sheet": "startup", "rev": "3", "do": "set"}


@pytest.mark.parametrize("path", ["readings/supply", "readings/combustion/oxygen", "readings/cold_pressure"])
def test_a_paired_device_writes_readings(small: Small, path: str) -> None:
    answer = small.paired().post("/jobs/1/edit", data={**RIGHT, "path": path}, headers=FROM_LAN)
    assert answer.status_code == 200
    assert answer.json() == {"path": path, "value": "140 °F"}, "the form is read again by the route"


@pytest.mark.parametrize(
    ("change", "job"),
    [
        *(({"path": each}, "1") for each in (
            "rooms/kitchen/height", "readings", "readings/", "/readings/supply", "readings//supply",
            "readings/../rooms/kitchen", "readings/./supply", "Readings/supply", "readingsx/supply", "",
            "readings/supply/..", "readings/supply ", "readings/supply\n", "readings%2Fsupply",
            "readings\\supply",
        )),
        ({"path": ["readings/supply", "rooms/kitchen/height"]}, "1"),
        ({"path": ["rooms/kitchen/height", "readings/supply"]}, "1"),
        ({"sheet": "house"}, "1"), ({"sheet": ["startup", "house"]}, "1"), ({"to": "rooms"}, "1"), ({}, "2"),
    ],
)  # fmt: skip
def test_a_paired_device_writes_nothing_else(small: Small, change: dict[str, Any], job: str) -> None:
    answer = small.paired().post(f"/jobs/{job}/edit", data=RIGHT | change, headers=FROM_LAN)
    assert answer.status_code == 403
    assert "may open Startup of one job" in answer.text and "/jobs/1/startup" in answer.text
    assert small.came == []


def test_an_edit_is_a_plain_form_and_nothing_hides_in_it(small: Small) -> None:
    tablet = small.paired()
    where = "/jobs/1/edit"
    assert tablet.post(where, json=RIGHT, headers=FROM_LAN).status_code == 403
    assert tablet.post(where, files={"path": ("a", b"readings/supply")}, headers=FROM_LAN).status_code == 403
    as_parts = {key: (None, value) for key, value in RIGHT.items()}
    assert tablet.post(where, files=as_parts, headers=FROM_LAN).status_code == 200
    a_file = {**as_parts, "value": ("a.txt", b"140")}
    assert tablet.post(where, files=a_file, headers=FROM_LAN).status_code == 403
    assert tablet.post(f"{where}?path=rooms", data=RIGHT, headers=FROM_LAN).status_code == 403
    for other in ("/JOBS/1/EDIT", "/jobs/1/edit/", "/jobs/1/move", "/form"):
        assert tablet.post(other, data=RIGHT, headers=FROM_LAN).status_code == 403
    broken = {**FROM_LAN, "content-type": "multipart/form-data; boundary=x"}
    assert tablet.post(where, content=b"--y broken", headers=broken).status_code == 403
    assert tablet.post(where, data=RIGHT).status_code == 403, "nothing says that a page of ours began it"


def test_a_paired_device_says_who_reads_and_in_which_units(small: Small) -> None:
    tablet = small.paired()
    told = {"name": "J. Ondry", "back": "/jobs/1/startup"}
    assert tablet.post("/reader", data=told, headers=FROM_LAN).status_code == 200
    assert tablet.post("/reader", data={**told, "path": "rooms"}, headers=FROM_LAN).status_code == 403
    assert tablet.post("/reader", data=told).status_code == 403
    assert small.tablet("192.168.1.78").post("/reader", data=told, headers=FROM_LAN).status_code == 403
    assert small.tablet("192.168.1.78").get("/who").status_code == 403


async def knock(small: Small, method: str, raw: bytes, query: bytes = b"", cookies: str = "") -> int:
    """Ask for an address letter by letter, as the server hands it on."""
    path = unquote_to_bytes(raw).decode("utf-8", "replace")
    sent: list[Any] = []

    async def receive() -> dict[str, Any]:
        return {"type": "http.request", "body": b"", "more_body": False}

    async def send(message: Any) -> None:
        sent.append(message)

    headers = [(b"host", b"192.168.1.20:8420"), (b"origin", b"http://192.168.1.20:8420")]
    headers.append((b"cookie", cookies.encode()))
    await small.app(
        {
            "type": "http", "asgi": {"version": "3.0"}, "http_version": "1.1", "method": method, "path": path,
            "raw_path": raw, "root_path": "", "query_string": query, "scheme": "http", "headers": headers,
            "client": ("192.168.1.77", 5000), "server": ("192.168.1.20", 8420),
        },
        receive, send,
    )  # fmt: skip
    return int(sent[0]["status"])


PIECES = st.sampled_from([
    "jobs", "1", "2", "startup", "working", "edit", "house", "static", "pair", "passphrase", "new", "job",
    "out", "look.css", "..", ".", "", "%2e%2e", "%2E", "%2f", "%2F..%2F", "STARTUP", "Jobs", "JOBS", "01",
    "1%20", "%31", "startup%00", "startup;x", "startup%3f", "startup%23", "..;", "\\", "%5c..",
    "st%61rtup", "api", "openapi.json", "after", "papers", "readings", "who", "units", "reader", "%c0%af",
    "1.0", "+1", "-1",
])  # fmt: skip
ADDRESSES = st.lists(PIECES, max_size=7).map(lambda each: "/" + "/".join(each))
NEAR = st.sampled_from(["/jobs/1/startup", "/jobs/1/working", "/jobs/1/edit", "/static/a.css", "/pair"])
PUT_IN = st.sampled_from(["/", "//", "/.", "/..", "%2f", "%2e", ";", "\\", "%00", "A", "."])
CHANGED = st.builds(lambda near, at, put: near[:at] + put + near[at:], NEAR, st.integers(0, 16), PUT_IN)
LISTED = {"/jobs/1/startup", "/jobs/1/working", "/pair", "/passphrase", "/pair/job", "/who", "/units"}


def is_listed(raw: str) -> bool:
    """The list written once more: exactly these letters, or plain names below static."""
    below = raw.removeprefix("/static/")
    plain = all(re.fullmatch(r"[A-Za-z0-9_][\w.+-]*", each, re.ASCII) for each in below.split("/"))
    return raw in LISTED or (below != raw and plain)


def paired_once() -> tuple[Small, str]:
    small = small_app(share=True)
    tablet = small.paired()
    return small, "; ".join(f"{key}={value}" for key, value in tablet.cookies.items())


PAIRED = paired_once()


@settings(max_examples=200)
@given(ADDRESSES | CHANGED | NEAR, st.sampled_from(["GET", "HEAD"]))
@example("/jobs/1/startup/../house", "GET")
@example("/jobs/1/startup%2f..%2fhouse", "GET")
@example("//jobs/1/startup", "GET")
@example("/static/../jobs/2/startup", "GET")
@example("/static/%2e%2e/jobs/2/startup", "GET")
@example("/JOBS/1/STARTUP", "GET")
@example("/jobs/01/startup", "GET")
@example("/jobs/1/startup/", "GET")
@example("/jobs/1/startup", "HEAD")
def test_a_paired_device_reads_what_is_listed_and_nothing_else(raw: str, method: str) -> None:
    small, cookies = PAIRED
    small.came.clear()
    status = asyncio.run(knock(small, method, raw.encode(), cookies=cookies))
    assert (status != 403) == is_listed(raw), (status, raw)
    if not is_listed(raw):
        assert small.came == []
    small.came.clear()
    asyncio.run(knock(small, method, raw.encode()))
    assert not [each for each in small.came if "jobs" in each], "without its cookie it reads no job"


@pytest.mark.parametrize(
    ("address", "query", "method", "status"),
    [
        ("/jobs/1/startup", b"open=startup/drop&pick=plant", "GET", 200),
        ("/jobs/1/working", b"path=startup/drop&sheet=startup", "GET", 200),
        ("/jobs/1/working", b"path=startup/drop&sheet=house", "GET", 403),
        ("/jobs/1/working", b"sheet=startup&sheet=house", "GET", 403),
        ("/jobs/1/after", b"sheet=startup&rev=3", "GET", 200),
        ("/jobs/1/after", b"rev=3", "GET", 403),
        ("/jobs/1/after", b"sheet=house&rev=3", "GET", 403),
        ("/jobs/1/startup", b"", "PUT", 403),
        ("/jobs/1/startup", b"", "DELETE", 403),
        ("/jobs/1/startup", b"", "POST", 403),
        ("/jobs/1/startup", b"", "OPTIONS", 403),
        ("/jobs/1/edit", b"", "PUT", 403),
        ("/jobs/1/edit", b"", "GET", 403),
        ("/static/look.css", b"", "POST", 403),
        ("/jobs/1/move", b"", "POST", 403),
        ("/jobs/1/EDIT", b"", "POST", 403),
        ("/jobs/1/edit/", b"", "POST", 403),
        ("//jobs/1/edit", b"", "POST", 403),
        ("/jobs/2/edit", b"", "POST", 403),
        ("/jobs/1/%65dit", b"", "POST", 403),
    ],
)
def test_questions_and_methods_of_a_paired_device(
    address: str, query: bytes, method: str, status: int
) -> None:
    small, cookies = PAIRED
    assert asyncio.run(knock(small, method, address.encode(), query, cookies)) == status
