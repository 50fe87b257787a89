"""The first paper as PDF: every figure on it, on both sheets, the same bytes twice, safe against any text."""

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

from heatledger.drawings.shapes import Drawing, Words
from heatledger.papers.compile import PaperError, compile_paper, write_paper
from heatledger.papers.from_design import heat_loss_paper
from heatledger.papers.heat_loss import TEMPLATE, heat_loss_content, heat_loss_pdf
from heatledger.papers.heat_loss_data import Band, Cell, HeatLossPaper, RoomLine
from heatledger.papers.workings_data import Answer, ColumnRow, Line, Token, Working, WorkingGroup
from tests.papers.demo_papers import HOUSES, ONE_ROOM, designed, house, paper, text_of, with_findings

HOSTILE = '#panic("no") *b* $x$ <tag> @ref // c \\ #sys.inputs'
SHEETS = {"letter": (612.0, 792.0), "a4": (595.28, 841.89)}
PAGES_OF_FERROW = 20


@cache
def pdf(name: str = "lerch-cottage", sheet: str = "a4") -> bytes:
    return heat_loss_pdf(paper(name, "metric" if sheet == "a4" else "us"), sheet)


def read(content: bytes) -> PdfReader:
    return PdfReader(io.BytesIO(content))


def squeezed(text: str) -> str:
    """Text without spaces and breaks: layout may part what belongs together, never change it."""
    return re.sub(r"[\s\u00ad\u202f-]+", "", text)


@cache
def words_of(content: bytes) -> str:
    return squeezed("".join(page.extract_text() for page in read(content).pages))


# Names that choose a drawing, a face or a shape, and the line for an empty list.
UNSPOKEN = {"cause", "kind", "language", "weight", "base", "called", "findings_none", "group"}


def printed(thing: Any) -> Iterator[str]:
    """Every text of the contract that a reader must find on paper."""
    if isinstance(thing, str):
        yield thing
    elif isinstance(thing, tuple):
        for each in thing:
            yield from printed(each)
    elif isinstance(thing, Drawing):
        yield from (each.text for each in thing.shapes if isinstance(each, Words))
    elif is_dataclass(thing):
        silent = UNSPOKEN | ({"words"} if isinstance(thing, Band) else set())
        # The level heads its rooms where there is more than one.
        silent |= {"level"} if isinstance(thing, RoomLine) else set()
        for each in fields(thing):
            if each.name not in silent:
                yield from printed(getattr(thing, each.name))


@pytest.mark.parametrize(("name", "sheet"), [("lerch-cottage", "a4"), ("ferrow-house", "letter")])
def test_every_text_is_on_the_paper(name: str, sheet: str) -> None:
    found = words_of(pdf(name, sheet))
    given = paper(name, "metric" if sheet == "a4" else "us")
    # Standings and line types stand as marks and as words in the legend of the foot.
    assert [each for each in printed(given) if squeezed(each) not in found] == []


def test_the_house_of_nine_rooms_stays_short() -> None:
    assert len(read(pdf("ferrow-house", "letter")).pages) <= PAGES_OF_FERROW


@pytest.mark.parametrize(("name", "sheet"), [*zip(HOUSES, ("letter", "a4"), strict=True)])
def test_the_sheet_has_its_size(name: str, sheet: str) -> None:
    for page in read(pdf(name, sheet)).pages:
        size = (float(page.mediabox.width), float(page.mediabox.height))
        assert size == pytest.approx(SHEETS[sheet], abs=0.1)


def test_the_same_bytes_twice() -> None:
    assert heat_loss_pdf(paper("lerch-cottage", "metric"), "a4") == pdf()


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
        assert squeezed("Lerch cottage") in text
        assert squeezed("Invented demo job") in text


def test_keys_lead_to_their_working() -> None:
    links = [note.get_object() for page in read(pdf()).pages for note in page.get("/Annots", [])]
    assert len(links) > 200
    assert all(link["/Subtype"] == "/Link" for link in links)


def test_an_address_without_a_working_is_not_printed() -> None:
    room = replace(paper("lerch-cottage").rooms[0], loss=Cell("714", "2·999"))
    content = heat_loss_content(replace(paper("lerch-cottage"), rooms=(room,)))
    assert content["rooms"][0]["loss"] == {"text": "714", "key": ""}
    assert content["rooms"][0]["causes"][0]["key"].startswith("2·")


def test_what_must_be_fixed_is_said_first_and_makes_a_draft() -> None:
    made = designed(text_of("lerch-cottage"))
    content = heat_loss_pdf(with_findings(made))
    pages = [squeezed(page.extract_text()) for page in read(content).pages]
    assert all(squeezed("Draft, not for installation") in page for page in pages)
    assert squeezed("1 must fix") in pages[0]
    assert squeezed("1 to decide") in pages[0]
    found = words_of(content)
    assert squeezed("Living room: Two walls") in found
    assert squeezed("To mend: enter the third wall") in found
    assert squeezed("Local code decides.") in found
    assert squeezed("for want of a fan test") in found


def test_what_is_decided_lifts_the_draft_mark_and_is_told() -> None:
    printed_paper = with_findings(designed(text_of("lerch-cottage")), decided=True)
    assert printed_paper.head.draft == ""
    assert printed_paper.findings[0].decided == "left as it is; it adjoins a heated room (J. Ondry)"
    assert printed_paper.findings[1].key == printed_paper.rooms[0].loss.key


def test_an_empty_list_of_findings_says_so() -> None:
    assert squeezed(paper("lerch-cottage").findings_none) in words_of(pdf())
    assert "Draft" not in words_of(pdf())


def hostile_paper() -> HeatLossPaper:
    given = paper("lerch-cottage")
    working = Working(
        "2·500",
        HOSTILE,
        (ColumnRow("", "1", HOSTILE, HOSTILE),),
        Answer("1", "Btu/h", HOSTILE),
        plain_line=HOSTILE,
    )
    line = Line("2·501", HOSTILE, (Token("number", "1"), Token("unit", HOSTILE)), "1", "W")
    return replace(
        given,
        head=replace(given.head, job=HOSTILE, address="= heading\n- list", preparer='"quotes" </svg>'),
        rooms=tuple(replace(each, name=HOSTILE) for each in given.rooms),
        workings=(WorkingGroup(HOSTILE, (working,), (line,)),),
        cautions=(HOSTILE,),
        not_checked=(HOSTILE,),
    )


def test_text_prints_as_typed_and_never_acts() -> None:
    found = words_of(heat_loss_pdf(hostile_paper()))
    assert found.count(squeezed(HOSTILE)) >= 13
    assert squeezed("= heading - list") in found


def test_letters_without_a_face_do_not_stop_the_paper() -> None:
    given = paper("lerch-cottage")
    found = words_of(heat_loss_pdf(replace(given, head=replace(given.head, job="部屋 \U0001f525 1"))))
    assert squeezed("□□ □ 1") in found


def test_a_missing_figure_prints_no_number() -> None:
    made = designed(text_of("ferrow-house").replace("  outdoor: -2 °F ", "  # "))
    found = words_of(heat_loss_pdf(heat_loss_paper(made, made.job.units)))
    assert squeezed("Waits for outdoor (site/outdoor)") in found
    assert squeezed("waits for outdoor: site/outdoor") in found
    assert "36,1" not in found


def test_a_job_of_one_room_fits_on_three_sheets() -> None:
    made = designed(ONE_ROOM)
    content = heat_loss_pdf(heat_loss_paper(made, made.job.units))
    assert len(read(content).pages) <= 3
    assert squeezed("one room") in words_of(content)


def test_many_rooms_and_a_long_sum_break_over_pages_with_the_head_repeated() -> None:
    given = paper("ferrow-house")
    rooms = tuple(
        replace(given.rooms[number % 9], name=f"Room number {number}", level=f"Level {number // 15}")
        for number in range(60)
    )
    column = tuple(ColumnRow("+", "5,124", "Btu/h", f"part number {number}") for number in range(70))
    long = Working("2·1", "Long sum", column, Answer("358,680", "Btu/h"), is_total=True)
    content = heat_loss_pdf(
        replace(given, rooms=rooms, levels=(), workings=(WorkingGroup("House", (long,)),)), "a4"
    )
    pages = [squeezed(page.extract_text()) for page in read(content).pages]
    assert sum("Whereitgoes" in each and "perft²" in each for each in pages) >= 2
    assert all(any(f"Roomnumber{number}" in each for each in pages) for number in range(60))
    assert any("partnumber69" in each and "358,680" in each for each in pages)


def test_two_figures_cannot_have_one_address() -> None:
    given = paper("lerch-cottage")
    with pytest.raises(ValueError, match="2·1"):
        replace(given, workings=(*given.workings, given.workings[0]))


def test_causes_keep_their_order() -> None:
    given = paper("lerch-cottage")
    with pytest.raises(ValueError, match="walls, windows, doors"):
        replace(given, causes=given.causes[::-1])


def test_an_unknown_sheet_and_a_broken_template_are_told(tmp_path: Path) -> None:
    with pytest.raises(PaperError, match="letter, a4"):
        compile_paper(TEMPLATE, {}, "legal")
    with pytest.raises(PaperError, match=TEMPLATE):
        compile_paper(TEMPLATE, {"head": {}})
    assert write_paper(b"%PDF", tmp_path / "new", "heat-loss").read_bytes() == b"%PDF"


def test_every_drawing_carries_its_words() -> None:
    given = paper("ferrow-house")
    content = heat_loss_content(given)
    walls = given.causes[0]
    assert f"Walls {walls.share.text}, {walls.loss.text} Btu/h" in content["section"]["alt"]
    living = given.rooms[0].causes[0].text
    assert content["rooms"][0]["bar"]["alt"].startswith(f"Living room: walls {living}, windows")
    assert f"{given.answer.load}, likely" in content["band"]["alt"]


def test_the_design_is_not_changed_by_printing_it() -> None:
    made = house("lerch-cottage")
    before = {path: float(figure) for path, figure in made.results.items()}
    heat_loss_paper(made, made.job.units)
    assert {path: float(figure) for path, figure in made.results.items()} == before
