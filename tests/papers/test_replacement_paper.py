"""Replacing the boiler on paper: the figures of the study, and when the paper is due."""

from __future__ import annotations

import pytest

from heatledger.job.load import read_job
from heatledger.ledger.dimensions import HEAT_RATE
from heatledger.ledger.presets import US
from heatledger.ledger.show import show, show_range, show_speaking
from heatledger.papers import blocks as b
from heatledger.papers.printing import Printing
from heatledger.papers.replacement_paper import APART, applies, replacement_paper
from heatledger.steps.design import design
from heatledger.studies.replacement import replacement
from tests.papers.demo_papers import text_of
from tests.papers.owner_jobs import lacks, made, pdf_text, printing, said


def test_it_is_due_where_the_plant_goes_and_the_piping_stays() -> None:
    due = {name: applies(made(name)) for name in ("tamm-street", "ferrow-house", "lerch-cottage")}
    assert due == {"tamm-street": True, "ferrow-house": False, "lerch-cottage": False}


def test_output_from_both_sides_water_and_every_check_stand_on_it() -> None:
    found, text = (replacement(made("tamm-street")), pdf_text(replacement_paper, printing("tamm-street")))
    assert found.low is not None and found.high is not None
    assert show(found.load.figure, US) in text
    assert show(found.largest_output, US) in text
    assert show_range(found.low, found.high, US, HEAT_RATE) in text
    for each in found.bills:
        assert show(each.like_for_like.figure, US).removesuffix(" Btu/h") in text
    assert show_speaking(found.lowest_supply, US, up=True) in text
    assert found.old_ratio is not None
    assert show_speaking(found.old_ratio, US) in text
    (walk,) = [
        each for each in replacement_paper(printing("tamm-street")).blocks if isinstance(each, b.Checklist)
    ]
    assert [each.title for each in walk.steps] == [each.what for each in found.checks]
    assert "Local code and licensed practice govern." in text


def test_sides_that_do_not_meet_are_told_before_anything_else() -> None:
    text = text_of("tamm-street").replace("volume: 1,090 gal", "volume: 300 gal")
    shown = Printing(design(read_job(text, "job.yaml")), US)
    assert replacement(shown.design).low is None
    second = replacement_paper(shown).blocks[1]
    assert isinstance(second, b.Paragraph)
    assert said(second.text) == APART


@pytest.mark.parametrize("lacking", ["nearly everything", "radiators", "the degree-days", "a boiler"])
def test_a_job_that_lacks_something_is_printed_all_the_same(lacking: str) -> None:
    text = pdf_text(replacement_paper, lacks(lacking), "a4")
    assert "To check on site" in text
