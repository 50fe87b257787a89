"""Claim: a line, a room, a figure, an entry, a question and a paper are found by what people would type."""

from __future__ import annotations

import re
from html import unescape

import pytest
from fastapi.testclient import TestClient

JOB = "/jobs/ferrow-house"
HIT = re.compile(r'<a href="([^"]+)" data-hit><b>(.*?)</b> <span>(.*?)</span>')
PART = {"HX-Request": "true"}


def found(client: TestClient, asked: str) -> list[tuple[str, str, str]]:
    html = client.get(f"{JOB}/find", params={"q": asked}, headers=PART).text
    return [(unescape(url), unescape(words), unescape(note)) for url, words, note in HIT.findall(html)]


@pytest.mark.parametrize("asked", ["2·8", "2.8", "2-8", " 2,8 ", "2/8"])
def test_an_address_is_found_however_it_is_written(client: TestClient, asked: str) -> None:
    ((url, _, note),) = found(client, asked)
    assert note.endswith("Sheet 2, line 8")
    assert 'aria-label="Sheet 2, line 8"' in client.get(url).text


def test_a_line_past_the_last_is_told_the_last(client: TestClient) -> None:
    html = client.get(f"{JOB}/find?q=2.9999", headers=PART).text
    last = re.search(r"Sheet 2 has lines 1 to (\d+)", html)
    assert last is not None and found(client, f"2.{last[1]}") and not found(client, f"2.{int(last[1]) + 1}")


@pytest.mark.parametrize(
    ("asked", "words", "url"),
    [
        ("kitchen", "Kitchen", f"{JOB}/house?pick=rooms%2Fkitchen"),
        ("kitch loss", "Heat loss, Kitchen", f"{JOB}/heat-loss?open=rooms%2Fkitchen%2Floss"),
        ("rooms/kitchen/loss", "Heat loss, Kitchen", f"{JOB}/heat-loss?open=rooms%2Fkitchen%2Floss"),
        ("free wall kitchen", "Free wall, Kitchen: 7' 6\"",
         f"{JOB}/house?pick=rooms%2Fkitchen#entry=rooms/kitchen/free_wall"),
        ("owner’s report", "Owner’s report", f"{JOB}/papers?pick=papers%2Fowners-report"),
        ("boiler room", "Boiler room", f"{JOB}/boiler-room"),
    ],
)  # fmt: skip
def test_words_lead_to_what_they_name(client: TestClient, asked: str, words: str, url: str) -> None:
    hits = found(client, asked)
    assert (url, words) in [(each[0], each[1]) for each in hits]
    assert client.get(url).status_code == 200


def test_a_question_is_found_and_its_link_leads_to_it(client: TestClient) -> None:
    url, words, _ = next(each for each in found(client, "kitchen short") if "#ask-" in each[0])
    assert words.startswith("Kitchen needs")
    page, _, mark = url.partition("#")
    assert f'id="{mark}"' in client.get(page).text


def test_at_most_twenty_are_shown_grouped(client: TestClient) -> None:
    html = client.get(f"{JOB}/find?q=r", headers=PART).text
    assert len(HIT.findall(html)) == 20
    assert html.count("<h2>") >= 4


def test_a_misspelled_word_is_met_with_the_nearest(client: TestClient) -> None:
    html = client.get(f"{JOB}/find?q=kichen", headers=PART).text
    assert "Nothing here is called “kichen”." in html and 'data-again="kitchen"' in html
    assert not HIT.findall(html)


def test_it_is_a_page_of_its_own_without_scripts(client: TestClient) -> None:
    html = client.get(f"{JOB}/find?q=kitchen").text
    assert '<form method="get" action="/jobs/ferrow-house/find"' in html and HIT.findall(html)
    assert 'value="kitchen"' in html
    assert f'href="{JOB}/find" data-find' in client.get(f"{JOB}/house").text


def test_what_is_typed_is_never_markup(client: TestClient) -> None:
    assert "<script>x" not in client.get(f"{JOB}/find", params={"q": "<script>x"}).text


def test_the_page_of_keys_names_every_mark_and_leads_back(client: TestClient) -> None:
    html = client.get(f"/help?back={JOB}/house").text
    for word in ("measured", "from plans", "assumed", "read there", "invented", "Must fix", "Decide", "F6"):
        assert word in html
    assert f'<a href="{JOB}/house">Back</a>' in html
    for elsewhere in ("//other.example", "https://other.example", "/\\other.example"):
        assert 'href="/">Back' in client.get("/help", params={"back": elsewhere}).text
    assert "/help?back=" in client.get(f"{JOB}/house").text
