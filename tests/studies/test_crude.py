"""Claim: three numbers give a crude estimate with a wide range, and it never passes for a heat loss."""

from __future__ import annotations

import pytest

from heatledger.job.load import read_job
from heatledger.job.missing import missing_entries
from heatledger.ledger.figures import leaves
from heatledger.ledger.presets import CANADIAN, METRIC, US
from heatledger.ledger.show import show
from heatledger.ledger.sources import JUDGMENT
from heatledger.papers.compile import PaperError
from heatledger.papers.write import write_papers
from heatledger.steps.design import design
from heatledger.studies.crude import RATES, crude_estimate
from tests.steps.heated import EXAMPLES, job_of

THREE = """format: 1
units: US
heated_floor_area: 1600 ft2
site: {outdoor: -2 °F, indoor: 70 °F}
"""


def three():
    made = crude_estimate(read_job(THREE))
    return made.low, made.figure, made.high


def test_three_numbers_give_a_range():
    made = crude_estimate(read_job(THREE))
    assert show(made.figure, US) == "34,560 Btu/h"
    assert show(made.low, US) == "13,824 Btu/h"
    assert show(made.high, US) == "86,400 Btu/h"
    assert "crude" in made.words and "not for a permit" in made.words


def test_the_rates_are_said_to_be_judgment():
    rates = [each for each in leaves(*three()) if each.origin.path.startswith("crude/")]
    assert len(rates) == len(RATES)
    assert all(each.origin.citation.standing is JUDGMENT for each in rates)


@pytest.mark.parametrize("name", EXAMPLES)
def test_the_examples_lie_inside_the_range(name):
    """The rates are wide enough for three houses that were worked out room by room."""
    house = design(job_of(name))
    site = house.job.site
    loss = house.losses.house
    rate = float(loss.loss) / float(loss.floor_area) / (float(site.indoor) - float(site.outdoor))
    by_path = {each.origin.path: float(each) for each in leaves(*three())}
    low, high = by_path["crude/rate_low"], by_path["crude/rate_high"]
    assert low < rate < high


@pytest.mark.parametrize(
    "text",
    [
        THREE.replace("heated_floor_area: 1600 ft2\n", ""),
        THREE.replace("outdoor: -2 °F, ", ""),
        THREE.replace(", indoor: 70 °F", ""),
        THREE.replace("-2 °F", "75 °F"),
    ],
    ids=["area", "outdoor", "indoor", "no colder out"],
)
def test_without_the_three_there_is_none(text):
    assert crude_estimate(read_job(text)) is None


def test_a_job_with_rooms_has_none():
    assert crude_estimate(job_of("ferrow-house")) is None


def test_it_is_in_no_result_and_no_paper(tmp_path):
    house = design(read_job(THREE))
    made = crude_estimate(house.job)
    given = [float(each) for each in (made.low, made.figure, made.high)]
    assert not any(path.startswith("crude") for path in house)
    assert not any(float(each) == pytest.approx(one) for each in house.results.values() for one in given)
    assert house.losses.house.loss.is_missing or float(house.losses.house.loss) == 0.0
    with pytest.raises(PaperError, match="no rooms yet"):
        write_papers(house, tmp_path)
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("units", [US, METRIC, CANADIAN], ids=lambda each: each.name)
def test_findings_and_missing_entries_still_speak(units):
    house = design(read_job(THREE))
    assert any(each.path == "rooms" for each in missing_entries(house.job))
    made = crude_estimate(house.job)
    said = " ".join(f"{each}" for each in [*house.findings, *house.not_checked])
    for figure in (made.low, made.figure, made.high):
        assert show(figure, units) not in said
