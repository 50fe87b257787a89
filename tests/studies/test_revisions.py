"""Claim: what moved between two designs is told once, with how far, and nothing that stayed."""

from __future__ import annotations

import pytest

from heatledger.job.load import read_job
from heatledger.steps.design import design
from heatledger.studies.revisions import figures_changed
from tests.steps.heated import job_of

FERROW = "ferrow-house"


def changes(*edits):
    before = design(job_of(FERROW))
    after = design(job_of(FERROW).with_changes(list(edits)), since=before)
    return before, after, figures_changed(before, after)


def put(path, value):
    return {"set": path, "to": value}


def test_nothing_moves_in_the_same_job():
    assert figures_changed(design(job_of(FERROW)), design(job_of(FERROW))) == []


def test_what_moved_is_told_with_both_values():
    before, after, found = changes(put("air/changes", "0.25 ACH"))
    told = {each.path: each for each in found}
    loss = told["house/loss"]
    assert loss.before is before.losses.house.loss and loss.after is after.losses.house.loss
    expected = abs(float(loss.after) - float(loss.before)) / float(loss.before)
    assert loss.share == pytest.approx(expected)
    assert loss.title == "Heat loss, House"
    assert told["rooms/kitchen/air/loss"].share > loss.share
    assert not any(each.path.startswith("rooms/kitchen/surfaces") for each in found)
    assert "air/changes" not in told


def test_the_largest_comes_first_and_each_figure_once():
    _, after, found = changes(put("air/changes", "0.25 ACH"))
    shares = [each.share for each in found]
    assert shares == sorted(shares, reverse=True)
    figures = [id(each.after) for each in found if each.after is not None]
    assert len(figures) == len(set(figures))
    assert all(each.path in after.results for each in found)


def test_every_result_that_moved_is_there():
    before, after, found = changes(put("site/outdoor", "-10 °F"))
    told = {id(each.after) for each in found}
    moved = [
        path for path, figure in after.results.items()
        if path in before.results and float(figure) == float(figure) and figure.inputs
        and abs(float(figure) - float(before.results[path])) > 1e-6 * abs(float(figure))
    ]  # fmt: skip
    assert moved and all(id(after.results[path]) in told for path in moved)


def test_a_temperature_is_measured_against_indoors_and_outdoors():
    _, _, found = changes(put("unheated/basement/heat", "3000 Btu/h"))
    basement = next(each for each in found if each.path == "unheated/basement/temperature")
    assert basement.share == pytest.approx((float(basement.after) - float(basement.before)) / 40.0)


def test_what_came_and_what_went_has_one_side():
    base = read_job(ONE)
    more = read_job(ONE + SECOND)
    came = {each.path: each for each in figures_changed(design(base), design(more))}
    assert came["rooms/b/loss"].before is None and came["rooms/b/loss"].share == 1.0
    went = {each.path: each for each in figures_changed(design(more), design(base))}
    assert went["rooms/b/loss"].after is None and went["rooms/b/loss"].title == "Heat loss, B"


ONE = """format: 1
units: US
site: {outdoor: 0 °F, indoor: 70 °F, elevation: 0 ft}
constructions: {wall: {kind: wall, u_value: U-0.09}}
levels: {one: {wall_height: 9 ft, ceiling_height: 8 ft}}
air: {changes: 0.5 ACH}
rooms:
  a:
    {name: A, level: one, size: 10' × 10',
    surfaces: {n: {construction: wall, length: 10 ft, beyond: outdoors}}}
"""
SECOND = """\
  b:
    {name: B, level: one, size: 10' × 12',
    surfaces: {n: {construction: wall, length: 12 ft, beyond: outdoors}}}
"""
