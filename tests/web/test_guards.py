"""Claim: nothing reaches a route that was not asked for by the right name, from our own pages, in bounds;
and every answer carries the headers that keep a browser from doing more than it should."""

from __future__ import annotations

import re
from collections.abc import Iterator

import pytest
from fastapi import WebSocketDisconnect

from heatledger.web.guards import CONTENT_SECURITY_POLICY, HEADERS, LIMIT
from tests.web.small_app import FROM_LAN, HERE, ORIGIN, PASSPHRASE, Small, small_app


@pytest.fixture
def small() -> Small:
    return small_app()


@pytest.mark.parametrize("host", ["127.0.0.1:8420", "localhost:8420", "LOCALHOST:8420", "[::1]:8420"])
def test_loopback_names_with_the_port_are_answered(small: Small, host: str) -> None:
    assert small.client().get("/jobs", headers={"host": host}).status_code == 200
    assert small.came == ["/jobs"]


@pytest.mark.parametrize(
    "host",
    [
        "boilers.example", "boilers.example:8420", "127.0.0.1", "127.0.0.1:80", "127.0.0.1:84200",
        "localhost.boilers.example:8420", "127.0.0.1.boilers.example:8420", "localhost.:8420", "",
        "localhost:8420@boilers.example", "192.168.1.20:8420", "0.0.0.0:8420", "127.1:8420", "[::1:8420",
        "2130706433:8420", "127.0.0.1:8420, boilers.example",
    ],
)  # fmt: skip
def test_a_name_turned_to_this_machine_is_refused(small: Small, host: str) -> None:
    answer = small.client().get("/jobs", headers={"host": host})
    assert answer.status_code == 403
    assert "does not answer to this address" in answer.text and "http://127.0.0.1:8420" in answer.text
    assert small.came == []


def test_two_hosts_are_refused(small: Small) -> None:
    answer = small.client().get("/jobs", headers=[("host", "127.0.0.1:8420"), ("host", "boilers.example")])
    assert answer.status_code == 403 and small.came == []


def test_the_address_that_was_come_to_is_answered_in_digits_only() -> None:
    small = small_app(passphrase=PASSPHRASE, host="0.0.0.0")
    tablet = small.tablet()
    data = {"passphrase": PASSPHRASE}
    assert tablet.post("/passphrase", data=data, headers=FROM_LAN).status_code == 303
    assert tablet.get("/jobs").status_code == 200
    assert tablet.get("/jobs", headers={"host": "192.168.1.21:8420"}).status_code == 403
    assert tablet.get("/jobs", headers={"host": "boilers.example:8420"}).status_code == 403


POSTS_OF_OTHERS = [
    {"origin": "https://boilers.example"},
    {"origin": "null"},
    {"origin": "http://127.0.0.1:3000"},
    {"origin": "http://127.0.0.1:84200"},
    {"origin": "https://127.0.0.1:8420"},
    {"origin": ""},
    {"sec-fetch-site": "cross-site"},
    {"sec-fetch-site": "same-site"},
    {"sec-fetch-site": "of a kind nobody knows"},
    {"sec-fetch-site": "cross-site", "origin": HERE},
    {"sec-fetch-site": "same-origin", "origin": "null"},
    {"sec-fetch-site": "same-origin", "origin": "https://boilers.example"},
    {"sec-fetch-site": "none"},
    {"referer": HERE + "/jobs"},
    {"x-heatledger-mark": "guessed"},
    {},
]


@pytest.mark.parametrize("headers", POSTS_OF_OTHERS)
def test_a_post_that_another_site_begins_changes_nothing(small: Small, headers: dict[str, str]) -> None:
    answer = small.client().post("/jobs/1/edit", data={"path": "readings/supply"}, headers=headers)
    assert answer.status_code == 403
    assert "did not come from a page of Heatledger" in answer.text
    assert small.came == []


@pytest.mark.parametrize("method", ["POST", "PUT", "PATCH", "DELETE", "TRACE", "MADE-UP"])
def test_every_method_that_may_change_something_is_held_to_it(small: Small, method: str) -> None:
    answer = small.client().request(method, "/jobs", headers={"origin": "https://boilers.example"})
    assert answer.status_code == 403 and small.came == []


@pytest.mark.parametrize(
    "headers",
    [
        {"origin": HERE},
        {"sec-fetch-site": "same-origin"},
        {"sec-fetch-site": "same-origin", "origin": HERE},
        {"sec-fetch-site": "none", "origin": HERE},
        {"host": "localhost:8420", "origin": "http://localhost:8420"},
    ],
)
def test_a_post_of_our_own_pages_is_taken(small: Small, headers: dict[str, str]) -> None:
    answer = small.client().post("/jobs/1/edit", data={"path": "site/indoor"}, headers=headers)
    assert answer.status_code == 200
    assert small.came == ["edit 1 site/indoor"]


def here_mark(small: Small) -> str:
    """The mark as a page of ours carries it."""
    shared = small.client().get("/pair")
    (mark,) = {*re.findall(r'name="mark" value="([0-9a-f]{64})"', shared.text)}
    return mark


def test_where_a_browser_says_nothing_the_mark_of_our_forms_counts() -> None:
    small = small_app(share=True)
    mark = here_mark(small)
    browser = small.client()
    assert browser.post("/form", data={"path": "a", "mark": mark}).json() == "a"
    assert browser.post("/form", files={"path": (None, "b"), "mark": (None, mark)}).json() == "b"
    assert browser.post("/form", data={"path": "c"}, headers={"x-heatledger-mark": mark}).json() == "c"
    for wrong in ("", mark[:-1], mark + "0", mark.upper(), "é"):
        assert browser.post("/form", data={"path": "d", "mark": wrong}).status_code == 403
    assert browser.post("/form", content=f'{{"mark": "{mark}"}}').status_code == 403
    assert browser.post(f"/form?mark={mark}").status_code == 403
    assert small_app(share=True).client().post("/form", data={"mark": mark}).status_code == 403


def test_the_mark_shown_to_a_stranger_is_of_no_use_on_this_computer() -> None:
    small = small_app(share=True)
    (mark,) = re.findall(r'name="mark" value="([0-9a-f]{64})"', small.tablet().get("/").text)
    assert small.client().post("/form", data={"path": "a", "mark": mark}).status_code == 403
    asked = small.tablet().post("/pair", data={"code": "WRONG", "mark": mark})
    assert "There is no code in force" in asked.text


def test_a_link_from_elsewhere_opens_a_page_but_nothing_is_loaded_or_framed(small: Small) -> None:
    browser = small.client()
    elsewhere = {"sec-fetch-site": "cross-site"}
    link = {**elsewhere, "sec-fetch-mode": "navigate", "sec-fetch-dest": "document"}
    assert browser.get("/jobs", headers=link).status_code == 200
    for how in (
        {"sec-fetch-mode": "no-cors", "sec-fetch-dest": "image"},
        {"sec-fetch-mode": "cors", "sec-fetch-dest": "empty"},
        {"sec-fetch-mode": "navigate", "sec-fetch-dest": "iframe"},
        {"sec-fetch-mode": "navigate", "sec-fetch-dest": "object"},
    ):
        assert browser.get("/jobs", headers={**elsewhere, **how}).status_code == 403
        assert browser.get("/jobs", headers={**how, "sec-fetch-site": "same-site"}).status_code == 403
    assert small.came == ["/jobs"]


def chunks(bytes_in_all: int) -> Iterator[bytes]:
    """A body that is sent without its length."""
    left = bytes_in_all
    while left > 0:
        yield b"x" * min(left, 65536)
        left -= 65536


@pytest.mark.parametrize("over", [1, LIMIT])
def test_a_body_over_the_limit_is_refused_with_or_without_its_length(small: Small, over: int) -> None:
    browser = small.client()
    for body in (b"x" * (LIMIT + over), chunks(LIMIT + over)):
        answer = browser.post("/upload", content=body, headers=ORIGIN)
        assert answer.status_code == 413
        assert "At most 2.5 MB" in answer.text and answer.headers["connection"] == "close"
    assert browser.post("/upload", content=chunks(LIMIT), headers=ORIGIN).json() == LIMIT


def test_a_length_that_lies_is_measured(small: Small) -> None:
    lies = {**ORIGIN, "content-length": "10"}
    answer = small.client().post("/upload", content=chunks(LIMIT + 1), headers=lies)
    assert answer.status_code == 413


def test_a_form_over_the_limit_is_refused_as_too_long_and_not_as_unreadable(small: Small) -> None:
    kind = {**ORIGIN, "content-type": "application/x-www-form-urlencoded"}
    answer = small.client().post("/form", content=chunks(LIMIT + 1), headers=kind)
    assert answer.status_code == 413
    unsaid = small.client().post(
        "/form", content=chunks(LIMIT + 1), headers={"content-type": kind["content-type"]}
    )
    assert unsaid.status_code == 413


def test_every_answer_has_the_headers() -> None:
    small = small_app(share=True, passphrase=PASSPHRASE)
    browser, tablet = small.client(faults=False), small.tablet()
    answers = {
        "a page": (browser.get("/jobs"), 200),
        "not there": (browser.get("/static/none.css"), 404),
        "wrong method": (browser.post("/fails", headers=ORIGIN), 405),
        "a form that lacks a field": (browser.post("/jobs/1/edit", headers=ORIGIN), 422),
        "a fault of ours": (browser.get("/fails"), 500),
        "wrong host": (browser.get("/", headers={"host": "boilers.example"}), 403),
        "another site": (browser.post("/form", headers={"origin": "null"}), 403),
        "too long": (browser.post("/upload", content=b"x" * (LIMIT + 1), headers=ORIGIN), 413),
        "a stranger": (tablet.get("/"), 403),
        "wrong code": (tablet.post("/pair", data={"code": "A"}, headers=FROM_LAN), 403),
        "wrong passphrase": (tablet.post("/passphrase", data={"passphrase": "A"}, headers=FROM_LAN), 403),
    }  # fmt: skip
    for name, (answer, status) in answers.items():
        assert answer.status_code == status, name
        for key, value in HEADERS:
            assert answer.headers.get_list(key.decode()) == [value.decode()], f"{name}: {key!r}"
        assert answer.headers.get_list("cache-control") == ["no-store"], name
        loopback = answer.request.headers["host"].startswith("127.")
        opener = ["same-origin"] if loopback else []
        assert answer.headers.get_list("cross-origin-opener-policy") == opener, name


def test_the_policy_allows_nothing_inline_and_nothing_from_outside() -> None:
    assert "unsafe" not in CONTENT_SECURITY_POLICY and "http" not in CONTENT_SECURITY_POLICY
    assert "*" not in CONTENT_SECURITY_POLICY
    rules = dict(each.split(" ", 1) for each in CONTENT_SECURITY_POLICY.split("; "))
    assert rules["default-src"] == rules["frame-ancestors"] == rules["base-uri"] == "'none'"
    assert rules["script-src"] == rules["style-src"] == rules["form-action"] == "'self'"


def test_only_a_static_file_under_its_version_is_kept(small: Small) -> None:
    browser = small.client()
    kept = {
        "/static/look.css?v=0.1.0": "public, max-age=31536000, immutable", "/static/look.css": "no-cache",
        "/static/look.css?v=": "no-cache", "/static/none.css?v=0.1.0": "no-store",
        "/jobs?v=0.1.0": "no-store", "/jobs/static/?v=1": "no-store",
    }  # fmt: skip
    for address, value in kept.items():
        assert browser.get(address).headers["cache-control"] == value, address


def test_a_fault_is_a_sentence_and_no_inner_words(small: Small) -> None:
    answer = small.client(faults=False).get("/fails")
    assert answer.status_code == 500
    assert "the fault is ours" in answer.text and "safe as of its last revision" in answer.text
    assert "secret" not in answer.text and "Traceback" not in answer.text


def test_a_refusal_that_goes_into_a_page_is_no_page_itself(small: Small) -> None:
    part = {"origin": "null", "hx-request": "true"}
    answer = small.client().post("/form", headers=part)
    assert answer.status_code == 403
    assert "<html" not in answer.text and "did not come from a page of Heatledger" in answer.text


def test_a_socket_of_another_kind_is_closed() -> None:
    small = small_app()
    with pytest.raises(WebSocketDisconnect) as fault, small.client().websocket_connect("/jobs"):
        pass
    assert fault.value.code == 1008


def test_what_was_passed_on_does_not_come_from_this_computer() -> None:
    small = small_app(passphrase=PASSPHRASE)
    for passed in ({"x-forwarded-for": "127.0.0.1"}, {"forwarded": "for=127.0.0.1"}, {"via": "1.1 inside"}):
        assert small.client().get("/jobs", headers=passed).status_code == 403
    assert small.client().get("/jobs").status_code == 200
