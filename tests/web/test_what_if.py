"""What if: columns side by side, what is laid together, mends tried, and any of them made the job."""

from __future__ import annotations

import re

import pytest
from fastapi.testclient import TestClient

from heatledger.book.book import Book
from heatledger.job.load import read_job
from heatledger.ledger.presets import US
from heatledger.ledger.show import show
from heatledger.steps.design import design
from heatledger.web.adopting import adopted

ID = "tamm-street-new-boiler"
PAGE = f"/jobs/{ID}/what-if"


def words_of(html: str) -> str:
    """The text of a page, spaces closed up."""
    return " ".join(re.sub(r"<[^>]+>", " ", html).split())


def row_of(page: str, words: str) -> list[str]:
    """The cells of a row of the table, as text."""
    found = next(each for each in re.findall(r"<tr.*?</tr>", page, re.S) if f"{words}" in words_of(each))
    return [words_of(each) for each in re.findall(r"<td.*?</td>", found, re.S)]


@pytest.fixture
def book(client: TestClient) -> Book:
    """The book behind the client."""
    return client.app.state.book  # type: ignore[attr-defined]


def load(text: str, *ids: str) -> str:
    """The design load of a text with what-ifs laid, as the table shows it."""
    job = read_job(text)
    return show(design(job.with_what_ifs(*ids) if ids else job)["house/loss"], US, places=0)[: -len(" Btu/h")]


def test_each_what_if_stands_beside_the_job_with_its_own_figures(client: TestClient, book: Book) -> None:
    text = book.head(ID).text
    cells = row_of(client.get(PAGE).text, "Design load, Btu/h")
    assert cells == [load(text), load(text, "filled-walls"), load(text, "tight-air")]
    assert len(set(cells)) == 3


def test_what_it_sets_shows_the_old_value_struck(client: TestClient) -> None:
    page = client.get(PAGE).text
    assert "<s>0.6 ACH</s>" in page and "0.4 ACH" in page
    assert "Walls blown full" in page


def test_figures_equal_to_the_job_are_marked_as_the_same(client: TestClient) -> None:
    page = client.get(PAGE).text
    supply = next(each for each in re.findall(r"<tr>.*?</tr>", page, re.S) if "Boiler output over" in each)
    assert 'class="num same"' not in supply
    load_row = next(each for each in re.findall(r"<tr>.*?</tr>", page, re.S) if "Design load, Btu/h" in each)
    assert "same" not in load_row
    fewer = client.get(PAGE + "?view=differs").text
    assert len(re.findall(r"<th scope=\"row\">", fewer)) <= len(re.findall(r"<th scope=\"row\">", page))


def test_two_are_laid_together_by_a_plain_form(client: TestClient, book: Book) -> None:
    page = client.get(PAGE + "?with=filled-walls&with=tight-air").text
    both = load(book.head(ID).text, "filled-walls", "tight-air")
    assert row_of(page, "Design load, Btu/h")[-1] == both
    assert "A and B" in page and f">{both}<" in page.partition('id="right"')[2]


def test_what_a_what_if_takes_off_parts_its_thousands_as_the_reader_does(client: TestClient) -> None:
    page = client.get(PAGE, params={"units": "metric", "with": ["filled-walls", "tight-air"]}).text
    cells = re.findall(r'<td>[−+]</td><td class="num">([^<]*)<', page[page.index('class="sumup"') :])
    assert len(cells) == 2 and max(len(each) for each in cells) > 3
    assert not any("," in each for each in cells), cells


def test_what_each_takes_off_comes_to_the_total(client: TestClient) -> None:
    page = client.get(PAGE + "?with=filled-walls&with=tight-air").text
    sums = page[page.index('class="sumup"') :]
    shown = words_of(sums[: sums.index("likely")])
    numbers = [int(each.replace(",", "")) for each in re.findall(r"\d[\d,]*", shown) if "," in each]
    base, first, second, total = numbers[:4]
    assert abs(base - first - second - total) <= 1


def test_a_figure_opens_its_working_in_its_own_design(client: TestClient, book: Book) -> None:
    answer = client.get(f"/jobs/{ID}/working?open=house/loss&laid=tight-air&sheet=what-if")
    text = book.head(ID).text
    assert f"{load(text, 'tight-air')}" in answer.text
    assert f"As the job stands: <s>{load(text)} Btu/h</s>" in answer.text
    page = client.get(PAGE + "?open=house/loss&laid=tight-air").text
    opened = re.findall(r'<button class="fig[^>]*aria-expanded="true"[^>]*>', page)
    assert opened and all('data-laid="tight-air"' in each for each in opened)


def test_what_if_figures_carry_their_own_form_for_when_scripts_are_off(client: TestClient) -> None:
    page = client.get(PAGE).text
    form = re.search(r'<form id="open-1" method="get"[^>]*>(.*?)</form>', page)
    assert form and 'name="laid" value="filled-walls"' in form[1]
    assert re.search(r'form="open-1" data-laid="filled-walls" name="open" value="house/loss"', page)


def test_two_that_set_one_value_are_named(client: TestClient) -> None:
    client.post(f"{PAGE}s", data={"name": "Tighter", "path": "rooms/house/air/changes", "value": "0.25 ACH"})
    page = words_of(client.get(PAGE + "?with=tight-air&with=tighter").text)
    assert "Cannot be laid together" in page and "`tight-air` and `tighter` set" in page
    answer = client.post(f"/jobs/{ID}/adopt", data={"what": ["tight-air", "tighter"]})
    assert answer.status_code == 422 and "differently" in answer.text


def test_one_made_the_job_is_one_revision_with_the_comments_kept(client: TestClient, book: Book) -> None:
    was = book.head(ID).text
    answer = client.post(f"/jobs/{ID}/adopt", data={"what": "tight-air", "rev": "1"}, follow_redirects=False)
    assert answer.status_code == 303
    head = book.head(ID)
    assert (head.number, head.parent) == (2, 1)
    assert "Air sealing to 0.4 changes an hour" in head.said
    assert "air: {changes: 0.4 ACH, known: assumed}" in head.text
    assert "tight-air:" not in head.text and "filled-walls:" in head.text
    assert [each for each in was.splitlines() if "#" in each] == [
        each for each in head.text.splitlines() if "#" in each
    ]
    assert load(head.text) == load(was, "tight-air")


def test_several_made_the_job_come_to_what_they_came_to_together(book: Book, client: TestClient) -> None:
    was = book.head(ID).text
    client.post(f"/jobs/{ID}/adopt", data={"what": ["filled-walls", "tight-air"]})
    head = book.head(ID)
    assert head.number == 2 and "what-ifs" not in head.text
    assert load(head.text) == load(was, "filled-walls", "tight-air")


def test_nothing_is_adopted_on_a_job_that_moved_on(client: TestClient, book: Book) -> None:
    client.post(f"{PAGE}s", data={"name": "Cool", "path": "site/indoor", "value": "66"})
    answer = client.post(f"/jobs/{ID}/adopt", data={"what": "tight-air", "rev": "1"})
    assert answer.status_code == 422 and "changed meanwhile" in answer.text
    assert book.head(ID).number == 2


def test_a_what_if_is_added_with_the_readers_unit_extended_and_removed(
    client: TestClient, book: Book
) -> None:
    client.cookies.set("units", "metric")
    client.post(f"{PAGE}s", data={"name": "Cool rooms", "path": "site/indoor", "value": "19"})
    assert "{set: site/indoor, to: 19 °C}" in book.head(ID).text.replace("'", "")
    client.post(f"{PAGE}s", data={"to": "cool-rooms", "path": "plant/drop", "value": "15"})
    assert len(read_job(book.head(ID).text).what_ifs["cool-rooms"].changes) == 2
    client.post(f"{PAGE}s/remove", data={"what": "cool-rooms", "index": "0"})
    assert [each.path for each in read_job(book.head(ID).text).what_ifs["cool-rooms"].changes] == [
        "plant/drop"
    ]
    client.post(f"{PAGE}s/remove", data={"what": "cool-rooms"})
    assert "cool-rooms" not in book.head(ID).text


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ({"name": "A", "path": "site/indor", "value": "66"}, "Did you mean “indoor”"),
        ({"name": "A", "path": "site/indoor", "value": "warm"}, "warm"),
        ({"name": "A", "path": "", "value": "66"}, "Say what it sets"),
        ({"name": "", "path": "site/indoor", "value": "66"}, "Give it a name"),
    ],
)
def test_a_wrong_one_is_said_with_what_was_typed_and_kept_out(
    client: TestClient, book: Book, typed: dict[str, str], said: str
) -> None:
    answer = client.post(f"{PAGE}s", data=typed)
    if typed["value"] == "warm" and answer.status_code == 200:
        assert "Cannot be laid" in answer.text
        return
    assert answer.status_code == 422 and said in answer.text
    assert all(f'value="{each}"' in answer.text for each in typed.values() if each)
    assert book.head(ID).number == 1


def tried_of(client: TestClient) -> str:
    """A mend of some finding that can be tried, as a sheet links to it."""
    desk = client.app.state.desks.open("lerch-cottage")  # type: ignore[attr-defined]
    for each in desk.fresh().house.findings:
        for i, mend in enumerate(each.mends):
            if mend.changes:
                return f"{each.id}@{each.where}@{i}"
    raise AssertionError("no finding of the demo can be tried")


def test_a_mend_is_tried_as_a_column_kept_as_a_what_if_or_made_the_job(
    client: TestClient, book: Book
) -> None:
    tried, page = tried_of(client), "/jobs/lerch-cottage/what-if"
    shown = client.get(page, params={"try": tried}).text
    assert ">Tried<" in shown and "Keep as a what if" in shown and "Make this the job" in shown
    assert book.head("lerch-cottage").number == 1
    client.post(f"{page}s/keep", data={"try": tried, "name": "Mended"})
    assert "mended" in read_job(book.head("lerch-cottage").text).what_ifs
    client.post("/jobs/lerch-cottage/adopt", data={"try": tried})
    assert book.head("lerch-cottage").said.startswith("Mended: ")
    gone = client.post("/jobs/lerch-cottage/adopt", data={"try": "none@site@0"})
    assert gone.status_code == 422 and "no longer offered" in gone.text


def test_things_added_and_removed_are_adopted_in_their_place() -> None:
    text = (
        "format: 1\nunits: US\nsite: {outdoor: 5 °F, indoor: 70 °F}\n"
        "constructions:\n  a: {name: A, kind: wall, u_value: U-0.1}  # first\n"
        "  b: {name: B, kind: wall, u_value: U-0.2}\n"
        "what-ifs:\n  x:\n    name: X\n    changes:\n"
        "    - {set: constructions/a, to: {name: C, kind: wall, u_value: U-0.3}}\n"
        "    - {add: constructions/d, to: {name: D, kind: wall, u_value: U-0.4}}\n"
        "    - {remove: constructions/b}\n"
        "    - {set: site/outdoor, to: {is: 0 °F, known: measured}}\n"
    )
    job = read_job(text)
    made = read_job(adopted(text, job, ["x"]))
    laid = job.with_what_ifs("x")
    assert list(made.constructions) == list(laid.constructions) == ["a", "d"]
    assert made.constructions["a"].name == "C"
    assert float(made.site.outdoor) == float(laid.site.outdoor)
    assert made.raw["site"]["outdoor"] == {"is": "0 °F", "known": "measured"}
    assert not made.what_ifs


def test_an_edit_is_answered_before_what_ifs_are_worked_out(client: TestClient) -> None:
    page = client.get(PAGE).text
    token = re.search(r'data-token="([^"]+)"', page)
    assert token
    change = {
        "do": "set",
        "path": "site/outdoor",
        "value": "-4",
        "rev": "1",
        "sheet": "what-if",
        "token": token[1],
    }
    client.post(f"/jobs/{ID}/edit", data=change, headers={"HX-Request": "true"})
    state = client.app.state.desks.open(ID).fresh()  # type: ignore[attr-defined]
    assert state.revision.number == 2
    assert "_laid" not in state.in_units(US).__dict__
