"""The first paper: every figure on it, on both sheets, the same bytes twice, safe against any text."""

from __future__ import annotations

import io
import re
from collections.abc import Iterator
from dataclasses import fields, is_dataclass, replace
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader

from heatledger.papers.compile import PaperError, compile_paper, write_paper
from heatledger.papers.heat_loss import TEMPLATE, heat_loss_content, heat_loss_pdf
from heatledger.papers.heat_loss_data import Band, Cell, HeatLossPaper
from heatledger.papers.workings_data import Answer, ColumnRow, Working, WorkingGroup
from tests.papers.ferrow_paper import ferrow_paper

HOSTILE = '#panic("no") *b* $x$ <tag> @ref // c \\ #sys.inputs'
SHEETS = {"letter": (612.0, 792.0), "a4": (595.28, 841.89)}


@cache
def pdf(sheet: str = "letter") -> bytes:
    return heat_loss_pdf(ferrow_paper(), sheet)


def read(content: bytes) -> PdfReader:
    return PdfReader(io.BytesIO(content))


def squeezed(text: str) -> str:
    """Text without spaces and breaks: layout may part what belongs together, never change it."""
    return re.sub(r"[\s\u00ad-]+", "", text)


def words_of(content: bytes) -> str:
    return squeezed("".join(page.extract_text() for page in read(content).pages))


# Names that choose a drawing, a face or a shape, and the line for an empty list.
UNSPOKEN = {"cause", "kind", "language", "weight", "below", "findings_none"}


def printed(thing: Any) -> Iterator[str]:
    """Every text of the contract that a reader must find on paper."""
    if isinstance(thing, str):
        yield thing
    elif isinstance(thing, tuple):
        for each in thing:
            yield from printed(each)
    elif is_dataclass(thing):
        silent = UNSPOKEN | ({"words"} if isinstance(thing, Band) else set())
        for each in fields(thing):
            if each.name not in silent:
                yield from printed(getattr(thing, each.name))


@pytest.mark.parametrize("sheet", sorted(SHEETS))
def test_every_text_is_on_the_paper(sheet: str) -> None:
    paper = ferrow_paper()
    found = words_of(pdf(sheet))
    missing = [each for each in printed(paper) if squeezed(each) not in found]
    # Standings and line types stand as marks in tables and as words in the legend of the foot.
    assert not missing


@pytest.mark.parametrize("sheet", sorted(SHEETS))
def test_the_sheet_has_its_size(sheet: str) -> None:
    for page in read(pdf(sheet)).pages:
        assert (float(page.mediabox.width), float(page.mediabox.height)) == pytest.approx(
            SHEETS[sheet], abs=0.1
        )


def test_the_same_bytes_twice() -> None:
    assert heat_loss_pdf(ferrow_paper()) == pdf()


def test_it_is_tagged_titled_archival_and_accessible() -> None:
    reader = read(pdf())
    root = reader.trailer["/Root"]
    metadata = root["/Metadata"].get_data().decode()
    assert root["/MarkInfo"]["/Marked"]
    assert root["/Lang"].startswith("en")
    assert reader.metadata is not None
    assert reader.metadata.title == "Heat loss of the house"
    assert "<pdfaid:part>3</pdfaid:part>" in metadata
    assert "<pdfuaid:part>1</pdfuaid:part>" in metadata


def test_only_the_carried_faces_are_used_and_all_are_embedded() -> None:
    names = set()
    for page in read(pdf()).pages:
        for font in page["/Resources"].get("/Font", {}).values():
            inner = font.get_object()["/DescendantFonts"][0].get_object()
            descriptor = inner["/FontDescriptor"].get_object()
            names.add(descriptor["/FontName"].split("+")[-1])
            assert "/FontFile2" in descriptor or "/FontFile3" in descriptor
    assert names == {
        "LedgerSans-Regular", "LedgerSans-SemiBold",
        "LedgerSerif-Regular", "LedgerSerif-Italic", "LedgerSerif-SemiBold",
    }  # fmt: skip


def test_the_foot_of_each_page_counts_the_pages_and_names_the_job() -> None:
    pages = read(pdf()).pages
    for number, page in enumerate(pages, 1):
        text = squeezed(page.extract_text())
        assert f"page{number}of{len(pages)}" in text
        assert squeezed("Ferrow house") in text
        assert squeezed("Invented demo job") in text
        assert squeezed("Draft, not for installation") in text


def test_keys_lead_to_their_working() -> None:
    reader = read(pdf())
    links = [note.get_object() for page in reader.pages for note in page.get("/Annots", [])]
    assert len(links) > 200
    assert all(link["/Subtype"] == "/Link" for link in links)


def test_without_a_must_fix_there_is_no_draft_mark_and_an_empty_list_says_so() -> None:
    paper = ferrow_paper()
    clean = replace(paper, findings=(), head=replace(paper.head, draft="", invented=""))
    found = words_of(heat_loss_pdf(clean))
    assert "Draft" not in found
    assert "Invented" not in found
    assert squeezed(paper.findings_none) in found


def hostile_paper() -> HeatLossPaper:
    paper = ferrow_paper()
    working = Working(
        "2·500", HOSTILE, (ColumnRow("", "1", HOSTILE, HOSTILE),), Answer("1", "Btu/h", HOSTILE), HOSTILE
    )
    return replace(
        paper,
        head=replace(paper.head, job=HOSTILE, address="= heading\n- list", preparer='"quotes" </svg>'),
        rooms=tuple(replace(each, name=HOSTILE) for each in paper.rooms),
        findings=tuple(replace(each, text=HOSTILE, mends=(HOSTILE,)) for each in paper.findings),
        workings=(WorkingGroup(HOSTILE, (working,)),),
    )


def test_text_prints_as_typed_and_never_acts() -> None:
    found = words_of(heat_loss_pdf(hostile_paper()))
    assert found.count(squeezed(HOSTILE)) >= 15
    assert squeezed("= heading - list") in found


def test_letters_without_a_face_do_not_stop_the_paper() -> None:
    paper = ferrow_paper()
    found = words_of(heat_loss_pdf(replace(paper, head=replace(paper.head, job="部屋 \U0001f525 1"))))
    assert squeezed("□□ □ 1") in found


def test_a_missing_figure_prints_no_number() -> None:
    paper = ferrow_paper()
    empty = replace(
        paper,
        answer=replace(paper.answer, load="", band=None, sentences=(), waits_for="the outdoor temperature"),
        causes=tuple(replace(each, loss=Cell(""), share="", amount=0.0) for each in paper.causes),
        rooms=tuple(
            replace(each, causes=(Cell(""),) * 6, loss=Cell(""), per_area="", amounts=(0.0,) * 6)
            for each in paper.rooms
        ),
        house_line=replace(
            paper.house_line, causes=(Cell(""),) * 6, loss=Cell(""), per_area="", shares=("",) * 6
        ),
        levels=(), matters=(), parts=(), tape=(), findings=(),
        workings=(WorkingGroup("Study", (
            Working("2·9", "Wall loss", (ColumnRow("×", "", "°F", "difference"),), Answer("", "Btu/h"),
                    waits_for="outdoor temperature"),
        )),),
    )  # fmt: skip
    found = words_of(heat_loss_pdf(empty))
    assert squeezed("Waits for the outdoor temperature") in found
    assert "36,2" not in found


def test_many_rooms_and_a_long_sum_break_over_pages_with_the_head_repeated() -> None:
    paper = ferrow_paper()
    rooms = tuple(
        replace(paper.rooms[number % 9], name=f"Room number {number}", level=f"Level {number // 15}")
        for number in range(60)
    )
    column = tuple(ColumnRow("+", "5,124", "Btu/h", f"part number {number}") for number in range(70))
    long = Working("2·1", "Long sum", column, Answer("358,680", "Btu/h"), is_total=True)
    pdf = heat_loss_pdf(
        replace(paper, rooms=rooms, levels=(), workings=(WorkingGroup("House", (long,)),)), "a4"
    )
    pages = [squeezed(page.extract_text()) for page in read(pdf).pages]
    assert sum("Whereitgoes" in each and "perft²" in each for each in pages) >= 2
    assert all(any(f"Roomnumber{number}" in each for each in pages) for number in range(60))
    assert any("partnumber69" in each and "358,680" in each for each in pages)


def test_two_figures_cannot_have_one_address() -> None:
    paper = ferrow_paper()
    with pytest.raises(ValueError, match="2·1"):
        replace(paper, workings=(*paper.workings, paper.workings[0]))


def test_causes_keep_their_order() -> None:
    paper = ferrow_paper()
    with pytest.raises(ValueError, match="walls, windows, doors"):
        replace(paper, causes=paper.causes[::-1])


def test_an_unknown_sheet_and_a_broken_template_are_told(tmp_path: Path) -> None:
    with pytest.raises(PaperError, match="letter, a4"):
        compile_paper(TEMPLATE, {}, "legal")
    with pytest.raises(PaperError, match=TEMPLATE):
        compile_paper(TEMPLATE, {"head": {}})
    assert write_paper(b"%PDF", tmp_path / "new", "heat-loss").read_bytes() == b"%PDF"


def test_every_drawing_carries_its_words() -> None:
    content = heat_loss_content(ferrow_paper())
    assert "Walls 30 %, 10,993 Btu/h" in content["section"]["alt"]
    assert content["rooms"][0]["bar"]["alt"].startswith("Living room: walls 1,324, windows 1,562")
    assert "36,200, likely 33,100 to 39,400" in content["band"]["alt"]
