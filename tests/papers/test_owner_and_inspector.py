"""The owner's report and the inspector's set: the answers are the design's, or plainly not reached."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from heatledger.drawings.figure_words import enough
from heatledger.job.load import read_job
from heatledger.ledger.dimensions import TEMPERATURE
from heatledger.ledger.presets import US
from heatledger.ledger.show import NOT_KNOWN, show, show_percent, show_speaking
from heatledger.papers import blocks as b
from heatledger.papers.all_papers import PAPERS
from heatledger.papers.answers import NOT_REACHED
from heatledger.papers.inspector_paper import inspector_paper
from heatledger.papers.owner_questions import QUESTIONS
from heatledger.papers.owners_report import owners_report
from heatledger.papers.paper import paper_pdf
from heatledger.papers.printing import Printing
from heatledger.steps.design import design
from heatledger.studies.side_by_side import side_by_side
from tests.papers.demo_papers import text_of
from tests.papers.owner_jobs import lacks, made, pages, pdf_text, printing, questions, runs, said, scant

BOTH = pytest.mark.parametrize("build", [owners_report, inspector_paper])
DEMOS = pytest.mark.parametrize("name", ["ferrow-house", "lerch-cottage", "tamm-street"])
SAID_IN_WORDS = {
    owners_report: {17},  # whether it is safe is told by what is still to be read
    inspector_paper: {2, 5},  # names and dates; how many kinds of part there are
}


@BOTH
@DEMOS
def test_each_of_the_twenty_is_answered_with_figures_or_said_not_to_be_reached(build, name) -> None:
    asked = questions(build(printing(name)))
    assert [each.ask.partition(".")[0] for each in asked] == [str(number) for number in range(1, 21)]
    bare = {
        number
        for number, each in enumerate(asked, 1)
        if NOT_REACHED not in said(each.answer) and not any(run.key for run in runs(each.answer))
    }
    assert all(said(each.answer).strip() for each in asked)
    assert bare <= SAID_IN_WORDS[build]


@BOTH
@pytest.mark.parametrize(
    ("name", "units"), [("ferrow-house", "us"), ("lerch-cottage", "metric"), ("tamm-street", "metric")]
)
def test_a_figure_with_a_key_is_the_one_that_stands_there(build, name: str, units: str) -> None:
    shown = printing(name, units)
    by_key: dict[str, list[str]] = {}
    for stage in shown.found.stages:
        for group in (*stage.groups, *stage.given):
            for one in (*group.blocks, *group.lines):
                texts = by_key.setdefault(shown.found.key(one), [])
                if one.is_missing:
                    texts.append(NOT_KNOWN)
                else:
                    texts += [show(one, shown.units), show_percent(float(one))]
                    texts += [show(one, shown.units, places=places) for places in (2, 3)]
                    texts.append(enough(one, shown.units) if one.dimension is TEMPERATURE else "")
                    texts.append(show_speaking(one, shown.units))
    keyed = [each for each in runs(build(shown).blocks) if each.key]
    assert len(keyed) > 30
    assert [each for each in keyed if each.text not in by_key[each.key]] == []


def test_the_first_page_of_the_owner_says_what_leads() -> None:
    shown = printing("ferrow-house")
    losses, heat, room = (
        made("ferrow-house").losses,
        made("ferrow-house").emitters,
        made("ferrow-house").boiler_room,
    )
    text = pdf_text(owners_report, shown, "letter")
    first = pages(paper_pdf(replace(owners_report(shown), blocks=owners_report(shown).blocks[:3]), "letter"))
    assert f"loses about {show_speaking(losses.house.loss, US)}" in first
    assert "Safety." in first and "carbon monoxide" in first and "scald" in first
    assert f"gets {show_percent(float(heat.rooms['kitchen'].given_share))}" in text
    assert "Kitchen sets it." in text
    assert enough(heat.house.lowest_supply, US) in text
    assert room.plant.ratio is not None
    assert show_speaking(room.plant.ratio, US) in text
    assert show(made("ferrow-house").bills.bills["last-winter"].like_for_like, US) in text


def test_what_ifs_stand_side_by_side_with_the_figures_of_their_own_design() -> None:
    base = made("ferrow-house")
    sides = {each.id: each for each in side_by_side(base)}
    assert list(sides) == list(base.job.what_ifs)
    for id, each in sides.items():
        alone = design(base.job.with_what_ifs(id))
        assert each.loss is not None and each.supply is not None
        assert float(each.loss) == pytest.approx(float(alone.losses.house.loss))
        assert float(each.supply) == pytest.approx(float(alone.emitters.house.lowest_supply))
        assert each.less == pytest.approx(float(base.losses.house.loss) - float(alone.losses.house.loss))
    assert sides["longer-kitchen"].short == ()
    text = pdf_text(owners_report, printing("ferrow-house"), "letter")
    for each in sides.values():
        assert each.name in text
        assert show(each.loss, US) in text  # type: ignore[arg-type]


def test_a_what_if_that_cannot_be_laid_says_why() -> None:
    text = text_of("tamm-street").replace("air/changes, to: 0.4 ACH", "air/changes, to: soon")
    shown = Printing(design(read_job(text, "job.yaml")), US)
    (side,) = [each for each in side_by_side(shown.design) if each.cannot]
    assert side.id == "tight-air" and side.loss is None
    assert side.cannot in pdf_text(owners_report, shown, "letter").replace("’", "'")


@BOTH
def test_it_is_a_draft_only_while_something_must_be_fixed(build) -> None:
    def papers_of(name: str) -> tuple[bool, str]:
        must = [each for each in made(name).findings if each.weight.value == "must fix" and not each.decided]
        return bool(must), pdf_text(build, printing(name), "letter")

    for name in ("ferrow-house", "lerch-cottage", "tamm-street"):
        must, text = papers_of(name)
        assert ("Draft, not for installation" in text) is must
    open_, _ = papers_of("ferrow-house")
    settled, _ = papers_of("lerch-cottage")
    assert open_ and not settled


@BOTH
@pytest.mark.parametrize("lacking", scant())
def test_a_job_that_lacks_something_is_printed_all_the_same(build, lacking: str) -> None:
    shown = lacks(lacking)
    assert len(questions(build(shown))) == 20
    text = pdf_text(build, shown, "a4")
    assert "nan" not in re.findall(r"[a-z]+", text)
    assert "None" not in text and "Figure(" not in text
    assert "Local code and licensed practice govern." in text


def test_without_a_boiler_the_owner_reads_what_it_must_give() -> None:
    shown = lacks("a boiler")
    room = shown.design.boiler_room.plant
    answer = said(questions(owners_report(shown))[3].answer)
    assert shown.show(room.load) in answer and shown.show(room.largest_output) in answer


def test_nothing_is_said_of_what_no_step_works_out() -> None:
    asked = questions(owners_report(printing("ferrow-house")))
    for number in (6, 9, 11, 15, 16):
        assert NOT_REACHED in said(asked[number - 1].answer), QUESTIONS[number - 1][0]


def test_the_inspector_has_blanks_where_the_job_does_not_know() -> None:
    def title_block(text: str) -> dict[str, b.Cell]:
        paper = inspector_paper(Printing(design(read_job(text, "job.yaml")), US))
        (sides,) = [each for each in paper.blocks[:3] if isinstance(each, b.Columns)]
        table = sides.columns[0][1]
        assert isinstance(table, b.Table)
        return {said(row.cells[0].text): row.cells[1] for row in table.rows}

    text = text_of("lerch-cottage")
    blank = title_block(text)
    for name in ("Code adopted, edition", "License", "Permit number"):
        (rule,) = runs(blank[name].text)
        assert rule.blank > 0 and rule.text == ""
    codes = "codes: {adopted: Model code 2024, licence: H-1, authority: Town of Harrow Bend}\n"
    known = title_block(f"{text}\n{codes}")
    assert known["Code adopted, edition"].text == "Model code 2024"
    assert known["License"].text == "H-1"
    assert known["Authority"].text == "Town of Harrow Bend"


def test_the_inspector_finds_every_factor_and_its_product() -> None:
    room = made("ferrow-house").boiler_room.plant
    text = pdf_text(inspector_paper, printing("ferrow-house"), "letter")
    for each in room.factors.values():
        assert f"Factor: {each.name} {show(each.value, US, places=3)}" in text
    assert f"All factors together {show(room.product, US, places=3)}" in text
    assert show(made("ferrow-house").startup.startup.test_pressure, US) in text
    for part in ("Relief valve", "Low-water cutoff", "High limit", "Expansion tank", "Backflow preventer"):
        assert part in text


def test_both_are_written_first_and_storeys_are_the_readers() -> None:
    assert [each.name for each in PAPERS[:2]] == ["owners-report", "inspector"]
    assert "every storey" in pdf_text(owners_report, printing("lerch-cottage", "metric"), "a4")
    assert "every story" in pdf_text(owners_report, printing("ferrow-house", "us"), "letter")


def test_a_tank_that_cannot_be_sized_yet_is_told_by_the_water_that_is_known() -> None:
    least = made("tamm-street").boiler_room.plant.tank_least
    text = pdf_text(inspector_paper, printing("tamm-street", "us"), "letter")
    assert f"needed at least {show(least, US)}" in text
    assert f"The water that is known asks for at least {show(least, US)}" in text
    assert NOT_KNOWN not in text
