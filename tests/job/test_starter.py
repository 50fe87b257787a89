"""The job to start from can be designed as it stands, in every reader's words."""

from __future__ import annotations

import pytest

from heatledger.job.load import read_job
from heatledger.job.missing import missing_entries
from heatledger.job.starter import starter_job
from heatledger.ledger.presets import CANADIAN, METRIC, US, Preset


@pytest.mark.parametrize("units", [US, METRIC, CANADIAN], ids=lambda each: each.name)
def test_it_is_read_without_error_and_misses_nothing(units: Preset) -> None:
    job = read_job(starter_job(units))
    assert job.units is units
    assert missing_entries(job) == []
    assert job.rooms
    assert not job.invented
    for each in job.what_ifs:
        assert job.with_what_ifs(each).laid == (each,)


@pytest.mark.parametrize("units", [US, METRIC, CANADIAN], ids=lambda each: each.name)
def test_it_explains_itself(units: Preset) -> None:
    text = starter_job(units)
    assert sum("#" in row for row in text.splitlines()) >= 15
    assert max(len(row) for row in text.splitlines()) <= 110
    assert "{{" not in text
    assert "known: " in text


def test_the_two_are_houses_of_one_size() -> None:
    first, second = (read_job(starter_job(each)).rooms["living"].length for each in (US, METRIC))
    assert first is not None
    assert second is not None
    assert float(first) == pytest.approx(float(second), rel=0.02)
