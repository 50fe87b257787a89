"""The app answers on this machine, shows the demo jobs, and sends everything it needs itself."""

from __future__ import annotations

import re

from fastapi.testclient import TestClient

POLICY = "default-src 'none'"


def test_the_first_page_names_the_demo_jobs(client: TestClient) -> None:
    page = client.get("/")
    assert page.status_code == 200
    assert "Ferrow house" in page.text
    assert POLICY in page.headers["content-security-policy"]


def test_an_empty_book_shows_none(empty_client: TestClient) -> None:
    page = empty_client.get("/")
    assert page.status_code == 200
    assert "Ferrow house" not in page.text


def test_whatever_a_page_asks_for_is_there(client: TestClient) -> None:
    asked = re.findall(r'<(?:link|script|img)[^>]* (?:href|src)="([^"]+)"', client.get("/").text)
    assert len(asked) >= 3
    for each in asked:
        answer = client.get(each)
        assert answer.status_code == 200, each
        if ".css" in each:
            named = re.findall(r"""url\(["']?([^"')]+)""", answer.text)
            assert all(client.get(f"/static/{one}").status_code == 200 for one in named), named
