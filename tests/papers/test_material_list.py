"""The material list: quantities that follow from the design, and files in which no text can act."""

from __future__ import annotations

import csv
import io
import re
from functools import cache
from zipfile import ZipFile

import openpyxl
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from heatledger.ledger.presets import PRESETS
from heatledger.ledger.units import UNITS
from heatledger.papers.cells import safe
from heatledger.papers.compile import compiled
from heatledger.papers.heat_loss_data import Head
from heatledger.papers.material_files import COLUMNS, as_csv, as_workbook
from heatledger.papers.material_lines import EMITTERS, TUBE, material_lines
from heatledger.papers.material_list import applies, beside, filled, material_paper
from heatledger.papers.material_plant import MaterialLine
from heatledger.papers.printing import Printing
from heatledger.studies.materials import packs_of, tube_lots
from tests.papers.demo_papers import ONE_ROOM, designed, house

HEAD = Head(
    "Material list", "Ferrow house", "", "6 December 2026", "", "heatledger 1", invented="Invented demo job"
)
ACTING = (
    "=1+1",
    "+1",
    "-2",
    "@SUM(A1)",
    "\t=1",
    "\r=1",
    "  =1",
    "＝1",
    "=cmd|' /C calc'!A0",
    '=HYPERLINK("x")',
)
FEET = UNITS["ft"].to_si(1.0)


@cache
def printing(units: str = "us") -> Printing:
    return Printing(house("ferrow-house"), PRESETS[units])


@cache
def lines(units: str = "us") -> tuple[MaterialLine, ...]:
    return tuple(material_lines(printing(units)))


def line(text: str) -> MaterialLine:
    return MaterialLine(text, text, text, 2.5, "pieces", "2.5", text, text)


def read_csv(made: bytes) -> list[list[str]]:
    return list(csv.reader(io.StringIO(made.decode("utf-8-sig"), newline="")))


def sheet(made: bytes) -> openpyxl.worksheet.worksheet.Worksheet:
    return openpyxl.load_workbook(io.BytesIO(made)).active


@pytest.mark.parametrize("text", ACTING)
def test_what_might_act_gets_an_apostrophe(text: str) -> None:
    assert safe(text) == f"'{text}"


@given(st.text())
@settings(max_examples=300)
def test_no_cell_begins_as_a_formula_does(text: str) -> None:
    made = safe(text)
    assert made.endswith(text)
    assert not made.lstrip(" \u00a0\u202f\u3000").startswith(
        ("=", "+", "-", "@", "\t", "\r", "＝", "＋", "－", "＠")
    )


@given(st.text(max_size=60))
@settings(max_examples=60, deadline=None)
def test_no_cell_of_a_file_acts_whatever_the_text(text: str) -> None:
    rows = read_csv(as_csv(HEAD, [line(text)]))
    for cell in rows[-1]:
        assert not cell.lstrip().startswith(("=", "+", "-", "@"))
    page = sheet(as_workbook(HEAD, [line(text)]))
    assert {cell.data_type for row in page.iter_rows() for cell in row} <= {"s", "n", "inlineStr"}
    assert not [cell for row in page.iter_rows() for cell in row if cell.hyperlink]


def test_the_workbook_holds_texts_as_typed_and_numbers_as_numbers() -> None:
    page = sheet(as_workbook(HEAD, [line("=1+1")]))
    last = [cell.value for cell in list(page.iter_rows())[-1]]
    assert last[:4] == ["=1+1", "=1+1", "=1+1", 2.5]
    assert b"<f>" not in ZipFile(io.BytesIO(as_workbook(HEAD, [line("=1+1")]))).read(
        "xl/worksheets/sheet1.xml"
    )


def test_all_three_files_say_the_same() -> None:
    made = {"pdf": compiled(filled(printing(), "letter")), **beside(printing())}
    assert made["pdf"].startswith(b"%PDF")
    rows = read_csv(made["csv"])
    first = rows.index(list(COLUMNS))
    assert ["Invented demo job"] in rows[:first]
    assert len(rows) - first - 1 == len(lines())
    page = list(sheet(made["xlsx"]).iter_rows(values_only=True))
    at = page.index(COLUMNS)
    for given_row, row in zip(rows[first + 1 :], page[at + 1 :], strict=True):
        shown = ["" if each is None else each for each in row]
        assert shown[3] == (float(given_row[3]) if given_row[3] else "")
        assert [*shown[:3], *shown[4:]] == [*given_row[:3], *given_row[4:]]


def test_the_same_bytes_twice() -> None:
    assert as_workbook(HEAD, lines()) == as_workbook(HEAD, lines())


def test_tube_is_what_is_laid_and_a_tenth() -> None:
    lots = tube_lots(house("ferrow-house"))
    assert lots
    for lot in lots:
        laid = sum(float(each.length) for each in lot.cuts)
        assert float(lot.length) == pytest.approx(laid)
        assert float(lot.to_buy) == pytest.approx(1.10 * laid)
        assert lot.packs is not None
        assert lot.packs.length * lot.packs.count >= float(lot.to_buy) - 1e-6
    named = [each for each in lines() if each.group == TUBE]
    assert [each.item for each in named] == [lot.tube for lot in lots]
    assert all(re.fullmatch(r"4·\d+", each.key) for each in named)
    assert named[0].amount == pytest.approx(float(lots[0].to_buy) / FEET, abs=0.005)


@pytest.mark.parametrize("units", ["us", "metric"])
def test_lengths_are_in_the_units_of_the_reader(units: str) -> None:
    unit = {"us": "ft", "metric": "m"}[units]
    assert {each.unit for each in lines(units) if each.group == TUBE} == {unit}
    assert any(each.group == EMITTERS for each in lines(units))


def test_no_price_and_no_maker_is_named() -> None:
    said = " ".join(str(each) for each in lines())
    assert not re.search(r"[$€£]|\bprice\b|\bUSD\b", said)


def test_each_piece_of_a_coil_comes_from_one_coil() -> None:
    packs = packs_of("1/2 in PEX", [60 * FEET] * 4)
    assert packs is not None
    assert (packs.kind, round(packs.length / FEET), packs.count) == ("coil", 300, 1)
    packs = packs_of("1/2 in PEX", [90 * FEET, 60 * FEET])
    assert packs is not None
    assert (round(packs.length / FEET), packs.count) == (100, 2)
    long = packs_of("1/2 in PEX", [1200 * FEET])
    assert long is not None
    assert not long.fits
    assert packs_of("16x2 PEX", [40.0, 30.0]) == packs_of("16x2 PEX", [30.0, 40.0])


def test_straight_lengths_are_rounded_up() -> None:
    packs = packs_of("3/4 in copper, type M", [12 * FEET, 9 * FEET])
    assert packs is not None
    assert (packs.kind, round(packs.length / FEET), packs.count) == ("length", 10, 3)
    assert packs_of("something else", [1.0]) is None
    assert packs_of("1/2 in PEX", [float("nan")]) is None


@given(st.lists(st.floats(0.5, 80), min_size=1, max_size=20))
@settings(max_examples=100)
def test_coils_hold_every_piece(pieces: list[float]) -> None:
    packs = packs_of("1/2 in PEX", pieces)
    assert packs is not None
    assert packs.fits
    assert packs.count * packs.length >= sum(pieces) - 1e-6
    assert packs.length >= max(pieces) - 1e-6
    assert packs.count <= len(pieces)


def test_a_job_without_pipes_has_no_list() -> None:
    assert not applies(designed(ONE_ROOM))
    assert applies(house("ferrow-house"))


def test_the_paper_leads_to_its_workings() -> None:
    paper = material_paper(printing())
    said = repr(paper.blocks)
    assert "4·" in said
    assert "Tube, piece by piece" in said
