"""Papers made of blocks: every kind of block, on both sheets, for every reader."""

from __future__ import annotations

import io
import re
from collections.abc import Iterator
from dataclasses import fields, is_dataclass, replace
from functools import cache

import pytest
from pypdf import PdfReader

from heatledger.drawings.shapes import Drawing
from heatledger.ledger.dimensions import LENGTH
from heatledger.ledger.figures import missing
from heatledger.ledger.presets import PRESETS
from heatledger.papers import blocks as b
from heatledger.papers.heat_loss_data import Head
from heatledger.papers.paper import content, paper_pdf, plain
from tests.papers.block_papers import HEAD, every_kind

HOSTILE = '#panic("no") *b* $x$ <tag> @ref // c \\ #sys.inputs'
SHEETS = {"letter": (612.0, 792.0), "a4": (595.28, 841.89)}
UNSPOKEN = {
    "kind", "level", "align", "width", "known", "standing", "mark", "weight", "language", "landscape",
    "blank",
    "widths", "drawing", "goes_into",
}  # fmt: skip
EVERYWHERE = pytest.mark.parametrize(
    ("units", "sheet"), [(units, sheet) for units in sorted(PRESETS) for sheet in SHEETS]
)


@cache
def pdf(units: str, sheet: str) -> bytes:
    return paper_pdf(every_kind(PRESETS[units]), sheet)


def read(made: bytes) -> PdfReader:
    return PdfReader(io.BytesIO(made))


def squeezed(text: str) -> str:
    return re.sub(r"[\s\u00ad\u202f-]+", "", text)


def words_of(made: bytes) -> str:
    return squeezed("".join(page.extract_text() for page in read(made).pages))


def printed(thing: object) -> Iterator[str]:
    """Every text of a paper that its reader must find."""
    if isinstance(thing, str):
        yield thing
    elif isinstance(thing, tuple):
        for each in thing:
            yield from printed(each)
    elif is_dataclass(thing) and not isinstance(thing, Drawing):
        silent = UNSPOKEN | ({"none"} if isinstance(thing, b.Findings) and thing.findings else set())
        for each in fields(thing):
            if each.name not in silent:
                yield from printed(getattr(thing, each.name))


@EVERYWHERE
def test_every_block_is_set_with_all_its_words(units: str, sheet: str) -> None:
    found = words_of(pdf(units, sheet))
    assert [each for each in printed(every_kind(PRESETS[units])) if squeezed(each) not in found] == []


@EVERYWHERE
def test_it_is_tagged_titled_and_on_its_sheet(units: str, sheet: str) -> None:
    reader = read(pdf(units, sheet))
    root = reader.trailer["/Root"]
    metadata = root["/Metadata"].get_data().decode()
    assert root["/MarkInfo"]["/Marked"]
    assert "<pdfaid:part>3</pdfaid:part>" in metadata
    assert "<pdfuaid:part>1</pdfuaid:part>" in metadata
    assert reader.metadata is not None
    assert reader.metadata.title == HEAD.title
    for page in reader.pages:
        size = (float(page.mediabox.width), float(page.mediabox.height))
        assert size == pytest.approx(SHEETS[sheet], abs=0.1)


def test_every_page_says_what_it_belongs_to() -> None:
    pages = read(pdf("us", "letter")).pages
    for number, page in enumerate(pages, 1):
        text = squeezed(page.extract_text())
        for said in (HEAD.job, HEAD.date, HEAD.version, HEAD.draft, HEAD.invented):
            assert squeezed(said) in text
        assert f"page{number}of{len(pages)}" in text


def test_a_sheet_can_lie_on_its_side() -> None:
    paper = b.Paper(HEAD, (b.Paragraph("Wide."),), landscape=True)
    (page,) = read(paper_pdf(paper, "letter")).pages
    assert (float(page.mediabox.width), float(page.mediabox.height)) == (792.0, 612.0)


def test_keys_are_links_where_they_are_answered_and_text_elsewhere() -> None:
    links = [
        each.get_object() for page in read(pdf("us", "letter")).pages for each in page.get("/Annots", [])
    ]
    assert all(each["/Subtype"] == "/Link" for each in links)
    paper = every_kind(PRESETS["us"])
    assert set(paper.keys()) == {"1·1", "2·1", "2·2"}
    unanswered = b.Paper(HEAD, (b.Paragraph((b.Run("12", key="9·9"),)),))
    made = paper_pdf(unanswered)
    assert "129·9" in words_of(made)
    assert not [note for page in read(made).pages for note in page.get("/Annots", [])]
    assert links


def test_text_prints_as_typed_and_never_acts() -> None:
    blocks = (
        b.Heading(HOSTILE), b.Paragraph(HOSTILE), b.Frame(HOSTILE, (HOSTILE,)),
        b.Table((b.Column(HOSTILE),), (b.Row((b.Cell(HOSTILE),)),), HOSTILE),
        b.Facts((b.Fact(HOSTILE, HOSTILE, note=HOSTILE),)),
        b.Blanks((b.Blank(HOSTILE, options=(HOSTILE,)),)),
        b.Checklist((b.Check("1", HOSTILE, HOSTILE, HOSTILE, caution=HOSTILE),)),
        b.Questions((b.Question(HOSTILE, HOSTILE),)),
    )  # fmt: skip
    found = words_of(paper_pdf(b.Paper(replace(HEAD, job=HOSTILE), blocks)))
    assert found.count(squeezed(HOSTILE)) >= 16
    assert "□" in words_of(paper_pdf(b.Paper(HEAD, (b.Paragraph("部屋"),))))


def test_a_missing_figure_is_a_blank_and_never_a_nought() -> None:
    columns = (b.Column("Room"), b.Column("Heat", "right"))
    table = b.Table(columns, (b.Row((b.Cell("Hall"), b.Cell(""))), b.Row((b.Cell("Den"), b.NONE))))
    assert "Hall" in (found := words_of(paper_pdf(b.Paper(HEAD, (table,)))))
    assert "Hall0" not in found
    assert "Den–" in found


def test_a_long_table_repeats_its_head_and_breaks_no_row() -> None:
    columns = (b.Column("Room", width="1fr"), b.Column("Long words", width="80pt"))
    rows = tuple(
        b.Row((b.Cell(f"Room {n}"), b.Cell(f"begin {n} " + "word " * 12 + f"end {n}"))) for n in range(60)
    )
    pages = [page.extract_text() for page in read(paper_pdf(b.Paper(HEAD, (b.Table(columns, rows),)))).pages]
    assert len(pages) > 3
    assert all("Long words" in each for each in pages)
    for n in range(60):
        assert any(re.search(rf"begin {n}\b", page) and re.search(rf"end {n}\b", page) for page in pages)


def test_a_table_refuses_a_row_that_does_not_fit() -> None:
    with pytest.raises(ValueError, match="a row of 1 cells stands in a table of 2: Room, Heat"):
        b.Table((b.Column("Room"), b.Column("Heat")), (b.Row((b.Cell("Hall"),)),))


def test_two_figures_cannot_have_one_address() -> None:
    paper = every_kind(PRESETS["us"])
    with pytest.raises(ValueError, match="1·1"):
        replace(paper, blocks=(*paper.blocks, *paper.blocks))


def test_a_number_that_was_not_shown_is_refused() -> None:
    length = missing(LENGTH, "x", "a length")
    with pytest.raises(TypeError, match="show it first"):
        plain(b.Paragraph((length,)))  # type: ignore[arg-type]


def test_a_blank_sheet_needs_no_job() -> None:
    bare = Head("Sheet", "", "", "", "", "heatledger 1")
    assert "Sheet" in words_of(paper_pdf(b.Paper(bare, (b.PageBreak(), b.Paragraph("x")))))


def test_the_same_bytes_twice() -> None:
    assert paper_pdf(every_kind(PRESETS["metric"]), "a4") == pdf("metric", "a4")


def test_content_names_every_block_and_gives_drawings_their_words() -> None:
    made = content(every_kind(PRESETS["us"]))
    names = {each["block"] for each in made["blocks"]}
    assert {"Table", "Checklist", "Grid", "Flow", "Columns"} <= names
    (shown,) = (each for each in made["blocks"] if each["block"] == "Picture")
    assert shown["drawing"]["alt"].startswith("walls") or shown["drawing"]["alt"]
