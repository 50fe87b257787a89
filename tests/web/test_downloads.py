"""Claim: what is taken along says what the screen says, and nothing in it can act as a formula."""

from __future__ import annotations

import csv
import io
import json
import re
from zipfile import ZipFile

import openpyxl
import pytest
from fastapi.testclient import TestClient
from pypdf import PdfReader

from heatledger import design, load_job
from heatledger.job.load import read_job
from heatledger.ledger.presets import PRESETS
from heatledger.papers.all_papers import PAPERS
from heatledger.papers.cells import TableFile, csv_of, workbook_of
from heatledger.papers.heat_loss_data import Head
from heatledger.papers.printing import Printing
from heatledger.papers.room_files import rooms_csv
from heatledger.steps.surfaces import CAUSES
from heatledger.web.demo import demo_text

JOB = "/jobs/ferrow-house"
ACTING = ("=1+1", "+1", "-1", "@sum(1)", "\t=1", "\r=1", "\n=1", " =1", "=cmd|' /C calc'!A0", "＝1+1")
FIRST = re.compile(r"[=+\-@\t\r\n＝]")


def rows_of(content: bytes) -> list[list[str]]:
    return list(csv.reader(io.StringIO(content.decode("utf-8-sig"), newline="")))


def hostile() -> TableFile:
    head = Head("=title", "+job", "@place", "-day", "\tsomebody", "\rversion")
    return TableFile("Rooms", head, (("=head", 9), ("Heat", 9)), [(each, -1.5) for each in ACTING])


def test_no_cell_of_a_csv_begins_as_a_formula_does() -> None:
    rows = rows_of(csv_of(hostile()))
    texts = [cell for row in rows for cell in row if cell != "-1.5"]
    assert len(rows) == 6 + len(ACTING)
    assert [each for each in texts if FIRST.match(each.lstrip(" "))] == []
    assert [row[0] for row in rows[-len(ACTING) :]] == [f"'{each}" for each in ACTING]
    assert all(row[1] == "-1.5" for row in rows[-len(ACTING) :])


def test_every_text_of_a_workbook_is_a_text_and_every_number_a_number() -> None:
    page = openpyxl.load_workbook(io.BytesIO(workbook_of(hostile())))["Rooms"]
    cells = [cell for row in page.iter_rows() for cell in row if cell.value is not None]
    assert {cell.data_type for cell in cells} == {"s", "n"}
    assert [cell.value for cell in cells if cell.data_type == "n"] == [-1.5] * len(ACTING)
    assert all(cell.hyperlink is None for cell in cells)
    kept = [page.cell(row, 1).value for row in range(page.max_row - len(ACTING) + 1, page.max_row + 1)]
    assert [str(each).replace("_x000D_", "\r") for each in kept] == list(ACTING)


@pytest.mark.parametrize("units", sorted(PRESETS))
def test_the_rooms_add_up_to_the_house_in_every_preset(client: TestClient, units: str) -> None:
    answer = client.get(f"{JOB}/papers/rooms.csv?units={units}")
    assert answer.headers["content-disposition"] == 'attachment; filename="ferrow-house-rooms.csv"'
    rows = rows_of(answer.content)
    at = next(i for i, row in enumerate(rows) if row[0] == "Room")
    head, rooms, house = rows[at], rows[at + 1 : -1], rows[-1]
    assert len(rooms) == 9 and house[0] == "House"
    unit = {"us": "Btu/h", "canadian": "Btu/h", "metric": "W"}[units]
    loss = head.index(f"Room loss, {unit}")
    first = loss - len(CAUSES)
    for row in (*rooms, house):
        assert sum(map(float, row[first:loss])) == pytest.approx(float(row[loss]), abs=1.0)
    assert sum(float(row[loss]) for row in rooms) == pytest.approx(float(house[loss]), abs=5.0)
    page = openpyxl.load_workbook(io.BytesIO(client.get(f"{JOB}/papers/rooms.xlsx?units={units}").content))[
        "Rooms"
    ]
    last = [each.value for each in page[page.max_row]]
    assert last[loss] == pytest.approx(float(house[loss]))


def test_a_room_with_a_name_that_acts_is_only_a_name() -> None:
    job = read_job(demo_text("ferrow-house").replace("name: Kitchen", "name: '=HYPERLINK(1)'", 1))
    made = rooms_csv(Printing(design(job), PRESETS["us"]))
    assert "'=HYPERLINK(1)" in [row[0] for row in rows_of(made)]


def test_the_job_file_is_the_text_letter_for_letter(client: TestClient) -> None:
    assert client.get(f"{JOB}/papers/job.yaml").content.decode() == demo_text("ferrow-house")


def test_every_figure_is_in_the_json(client: TestClient) -> None:
    made = json.loads(client.get(f"{JOB}/papers/design.json?units=metric").content)
    house = design(load_job(demo_text("ferrow-house")))
    assert set(made["figures"]) == set(house.figures)
    assert made["figures"]["house/loss"]["si"] == pytest.approx(float(house["house/loss"]))
    assert made["figures"]["house/loss"]["shown"].endswith("W")


def test_the_material_list_comes_in_three_forms(client: TestClient) -> None:
    rows = rows_of(client.get(f"{JOB}/papers/material-list.csv").content)
    items = {row[1] for row in rows if len(row) > 1} - {"Item"}
    page = openpyxl.load_workbook(io.BytesIO(client.get(f"{JOB}/papers/material-list.xlsx").content)).active
    assert page is not None and items == {page.cell(i, 2).value for i in range(1, page.max_row + 1)} - {
        None,
        "Item",
    }
    text = " ".join(
        each.extract_text()
        for each in PdfReader(io.BytesIO(client.get(f"{JOB}/papers/material-list.pdf").content)).pages
    )
    assert items and all(" ".join(each.split()) in " ".join(text.split()) for each in items)


def test_the_folder_holds_every_paper_and_the_job(
    client: TestClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    from heatledger.web import paper_store

    monkeypatch.setattr(paper_store, "filled", lambda wanted: wanted)
    monkeypatch.setattr(paper_store, "compiled", lambda wanted: f"%PDF of {wanted.name}".encode())
    answer = client.get(f"{JOB}/papers/all.zip")
    packed = ZipFile(io.BytesIO(answer.content))
    due = [each.name for each in PAPERS if each.name != "replacement"]
    names = [f"ferrow-house-{each}.pdf" for each in (*due, "survey-sheet")]
    beside = ["ferrow-house.yaml", "ferrow-house-material-list.csv", "ferrow-house-material-list.xlsx"]
    assert sorted(packed.namelist()) == sorted([*names, *beside])
    assert packed.read("ferrow-house-review.pdf") == b"%PDF of review"
    assert packed.read("ferrow-house.yaml").decode() == demo_text("ferrow-house")
    assert client.get(f"{JOB}/papers/all.zip").content == answer.content
