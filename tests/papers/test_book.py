"""One book of addresses for a whole design, and the papers that are made from it."""

from __future__ import annotations

import io
import re
from functools import cache
from pathlib import Path

import pytest
from pypdf import PdfReader

from heatledger.job.load import read_job
from heatledger.ledger.figures import Leaf
from heatledger.ledger.findings import Weight
from heatledger.ledger.presets import PRESETS
from heatledger.ledger.results import walk_results
from heatledger.papers.all_papers import PAPERS
from heatledger.papers.findings_by_sheet import SHEETS, findings_of, sheet_of
from heatledger.papers.from_design import heat_loss_paper
from heatledger.papers.paper import paper_pdf
from heatledger.papers.printing import Printing
from heatledger.papers.review_paper import review_paper
from heatledger.papers.workings_paper import workings_paper
from heatledger.papers.write import write_papers
from heatledger.steps.design import design
from heatledger.steps.review import KINDS
from tests.papers.demo_papers import HOUSES, text_of

BOTH = pytest.mark.parametrize("name", HOUSES)
SHEET_OF_STAGE = {
    "heat-loss": 2, "bills": 2, "emitters": 3, "circuits": 4, "material": 4, "boiler_room": 5, "controls": 6,
    "startup": 7,
}  # fmt: skip


@cache
def printing(name: str, units: str = "us") -> Printing:
    return Printing(design(read_job(text_of(name), f"{name}.yaml")), PRESETS[units])


def squeezed(text: str) -> str:
    return re.sub(r"[\s\u00ad\u202f\u2060-]+", "", text)


@BOTH
def test_the_lines_of_each_sheet_run_on(name: str) -> None:
    found = printing(name).found
    for sheet in range(2, 8):
        stages = [each for each in found.stages if each.sheet == sheet]
        figures = [f for stage in stages for group in stage.groups for f in (*group.blocks, *group.lines)]
        keys = [found.key(each) for each in figures]
        assert keys == [f"{sheet}·{line}" for line in range(1, len(keys) + 1)]
    given = [found.key(each) for group in found.given for each in group.lines]
    assert given == [f"1·{line}" for line in range(1, len(given) + 1)]
    assert {each.id: each.sheet for each in found.stages}.items() <= SHEET_OF_STAGE.items()


@BOTH
def test_every_result_of_the_design_has_an_address(name: str) -> None:
    """What a step shows is worked out in the book, or is an entry that stands on the tape."""
    found, made = printing(name).found, printing(name).design
    for step in ("bills", "emitters", "circuits", "boiler_room", "controls", "startup"):
        shown = dict(walk_results(getattr(made, step)))
        assert shown or step == "bills"
        for path, figure in shown.items():
            assert found.key(figure) or isinstance(figure.origin, Leaf), path


@BOTH
def test_the_heat_loss_keeps_its_numbers_whatever_follows(name: str) -> None:
    """The paper of the heat loss prints its own workings alone, and they begin the book."""
    whole = printing(name)
    paper = heat_loss_paper(whole.design, whole.units, whole.found)
    assert set(paper.keys()) == set(whole.found.keys_of("heat-loss"))
    assert paper.workings == heat_loss_paper(whole.design, whole.units).workings


def test_workings_answer_every_address_and_name_their_sheets() -> None:
    whole = printing("lerch-cottage")
    paper = workings_paper(whole)
    keys = {whole.found.key(f) for group in whole.found.groups for f in (*group.blocks, *group.lines)}
    keys |= {whole.found.key(f) for group in whole.found.given for f in group.lines}
    assert set(paper.keys()) == keys
    text = squeezed(
        "".join(page.extract_text() for page in PdfReader(io.BytesIO(paper_pdf(paper, "a4"))).pages)
    )
    for stage in whole.found.stages:
        if stage.groups:
            assert squeezed(f"Sheet {stage.sheet}: {stage.title}") in text


def test_one_formula_is_set_out_once_a_stage_and_then_runs_in_lines() -> None:
    for stage in printing("ferrow-house").found.stages:
        if stage.id == "heat-loss":
            continue
        found = printing("ferrow-house").found
        set_out = [f.origin for group in stage.groups for f in group.blocks]
        short = [f for group in stage.groups for f in group.blocks if found.working(f).kind == "formula"
                 and len(found.working(f).steps) <= 3 and len(found.working(f).rows) <= 7]  # fmt: skip
        assert len({id(each.origin) for each in short}) == len(short)
        assert len(set_out) < 120


@BOTH
def test_the_review_says_every_finding_under_its_weight(name: str) -> None:
    whole = printing(name)
    text = squeezed("".join(
        page.extract_text() for page in PdfReader(io.BytesIO(paper_pdf(review_paper(whole)))).pages
    ))  # fmt: skip
    for each in whole.finding_lines():
        assert squeezed(each.text) in text
        assert all(squeezed(mend) in text for mend in each.mends)
    places = [text.index(squeezed(each)) for each in ("To decide", "Not checked") if squeezed(each) in text]
    assert places == sorted(places)
    draft = any(each.weight is Weight.MUST_FIX and each.decided is None for each in whole.design.findings)
    assert (squeezed("Draft, not for installation") in text) is draft


def test_every_finding_belongs_to_one_sheet() -> None:
    made = printing("ferrow-house").design
    assert {sheet_of(each) for each in KINDS} <= set(SHEETS)
    by_sheet = [each for sheet in SHEETS for each in findings_of(made, sheet)]
    assert sorted(map(id, by_sheet)) == sorted(map(id, findings_of(made)))


def test_every_paper_is_written_once_and_named_after_its_kind(tmp_path: Path) -> None:
    names = [each.name for each in PAPERS]
    assert len(names) == len(set(names))
    written = write_papers(printing("lerch-cottage").design, tmp_path, PRESETS["metric"], "a4")
    due = [each.name for each in PAPERS if each.applies(printing("lerch-cottage").design)]
    pdfs = [each for each in written if each.suffix == ".pdf"]
    assert [each.name for each in pdfs] == [f"lerch-cottage-{name}.pdf" for name in due]
    assert {each.suffix for each in written} == {".pdf", ".csv", ".xlsx"}
    for each in pdfs:
        reader = PdfReader(each)
        assert reader.trailer["/Root"]["/MarkInfo"]["/Marked"]
        for number, page in enumerate(reader.pages, 1):
            text = squeezed(page.extract_text())
            assert squeezed(f"page {number} of {len(reader.pages)}") in text
            assert squeezed("Lerch cottage") in text
            assert squeezed("Invented demo job") in text
