"""Expectations, decisions, limits and reserved sections are kept as the user wrote them."""

from __future__ import annotations

import pytest

from heatledger.job.errors import JobErrors
from heatledger.ledger import dimensions as d
from tests.job.samples import codes, small


def test_an_expectation_takes_its_kind_from_the_unit() -> None:
    job = small(
        add="""\
expectations:
  bill: {of: house/loss, about: 12 kW, within: 10 %, because: last winter}
  cellar: {of: unheated/cellar/temperature, about: 45 °F, within: 3 °F}
unheated: {cellar: {volume: 900 ft3, air: {changes: 0.1 ACH}}}
"""
    )
    bill, cellar = job.expectations["bill"], job.expectations["cellar"]
    assert float(bill.about) == 12000
    assert bill.about.dimension is d.HEAT_RATE
    assert (float(bill.within), bill.within.dimension) == (0.1, d.RATIO)
    assert bill.because == "last winter"
    assert cellar.about.dimension is d.TEMPERATURE
    assert float(cellar.within) == pytest.approx(3 / 1.8)
    assert cellar.within.dimension is d.TEMPERATURE_DIFFERENCE


def test_a_comma_on_its_own_line_is_read_as_meant() -> None:
    job = small(add="expectations:\n  bill:\n    of: house/loss\n    about: 37,100 Btu/h\n")
    assert float(job.expectations["bill"].about) == pytest.approx(37100 * 0.29307107, rel=1e-6)
    assert float(job.expectations["bill"].within) == 0.1


def test_a_decision_may_be_on_one_place() -> None:
    job = small(add="decisions:\n  openings-over-wall@rooms/hall: {is: stays, because: seen, by: J. Ondry}\n")
    decision = job.decisions["openings-over-wall@rooms/hall"]
    assert (decision.finding, decision.path, decision.by) == ("openings-over-wall", "rooms/hall", "J. Ondry")


def test_a_limit_is_read_when_its_kind_is_known() -> None:
    job = small(add="limits:\n  mostly-guesses: 60 %\n  indoor-below-minimum: 68 °F\n")
    share = job.limit("mostly-guesses", d.RATIO)
    warm = job.limit("indoor-below-minimum", d.TEMPERATURE)
    assert share is not None
    assert float(share) == pytest.approx(0.6)
    assert warm is not None
    assert float(warm) == pytest.approx(293.15)
    assert warm.origin.path == "limits/indoor-below-minimum"
    assert job.limit("label-r-as-whole-wall", d.RATIO) is None
    with pytest.raises(JobErrors) as caught:
        job.limit("mostly-guesses", d.TEMPERATURE)
    assert codes(caught.value) == ["percent-out-of-range"] or caught.value.errors


def test_reserved_sections_are_kept_as_they_are() -> None:
    job = small(add="hot_water: {tank: 40 gal}\noutlines: {named: [one, two]}\n")
    assert job.reserved == {"hot_water": {"tank": "40 gal"}, "outlines": {"named": ["one", "two"]}}


def test_a_job_is_read_in_metric_and_in_the_canadian_mix() -> None:
    metric = small(("units: US", "units: metric"), ("area: 99 ft2", "area: 9.2"))
    area = metric.rooms["kitchen"].surfaces["inner-wall"].area
    assert area is not None
    assert float(area) == 9.2
    canadian = small(
        ("units: US", "units: Canadian"), ("outdoor: 0 °F", "outdoor: -18"), ("area: 99 ft2", "area: 99")
    )
    assert float(canadian.site.outdoor) == pytest.approx(255.15)
    wall = canadian.rooms["kitchen"].surfaces["inner-wall"].area
    assert wall is not None
    assert float(wall) == pytest.approx(99 * 0.3048**2)
