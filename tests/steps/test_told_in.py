"""A design told in other units is the same design: no figure anew, no what-if laid twice."""

from __future__ import annotations

from importlib.resources import files

from heatledger.job.load import read_job
from heatledger.ledger.presets import CANADIAN, METRIC
from heatledger.steps.design import Design, design


def ferrow() -> Design:
    text = files("heatledger").joinpath("examples", "ferrow-house.yaml").read_text(encoding="utf-8")
    return design(read_job(text, "ferrow-house.yaml"))


def test_a_design_told_in_other_units_keeps_its_figures_and_what_ifs() -> None:
    house = ferrow()
    laid = house.with_what_if("low-e")
    abroad = house.told_in(METRIC).told_in(CANADIAN)
    assert abroad.job.units is CANADIAN and house.job.units is not CANADIAN
    assert all(abroad.results[path] is figure for path, figure in house.results.items())
    there = abroad.with_what_if("low-e")
    assert there.job.units is CANADIAN
    assert there.losses is laid.losses, "the what-if is not worked out again"


def test_findings_of_a_what_if_speak_in_the_units_of_the_reader() -> None:
    told = ferrow().told_in(METRIC).with_what_if("cooler-water")
    words = " ".join(each.what for each in told.findings)
    assert " W" in words and "Btu/h" not in words
