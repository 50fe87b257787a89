"""What-ifs are laid in order, say what they replaced, and name each other where they clash."""

from __future__ import annotations

import pytest

from heatledger.job.errors import JobErrors
from heatledger.job.load import read_job
from heatledger.job.model import Job
from heatledger.ledger.figures import Figure
from heatledger.ledger.units import UNITS
from tests.job.samples import SMALL, codes, example, small

WHAT_IFS = """\
what-ifs:
  glass: {changes: [{set: constructions/window/u_value, to: U-0.25}]}
  same-glass: {changes: [{set: constructions/window/u_value, to: U-0.25}]}
  better-glass: {changes: [{set: constructions/window/u_value, to: U-0.18}]}
  by-r: {changes: [{set: constructions/window/r_value, to: R-5}]}
  tight: {changes: [{set: air/changes, to: 0.3 ACH}]}
  twice: {changes: [{set: air/changes, to: 0.4 ACH}, {set: air/changes, to: 0.2 ACH}]}
  no-window: {changes: [{remove: rooms/kitchen/surfaces/north-wall/openings/w1}]}
  wide: {changes: [{set: rooms/kitchen/surfaces/north-wall/openings/w1/size, to: 4' × 4'}]}
  den:
    changes:
      - add: rooms/den
        to: {level: ground, floor_area: 90 ft2}
  den-warm: {changes: [{set: rooms/den/indoor, to: 72 °F}]}
  new-window:
    changes: [{add: rooms/hall/surfaces/wall/openings/w9, to: {construction: window, area: 9 ft2}}]
  cool-hall: {changes: [{set: rooms/hall/indoor, to: 60 °F}]}
"""
U = UNITS["Btu/(h·ft²·°F)"]


@pytest.fixture
def job() -> Job:
    wall = "      wall: {construction: wall, area: 80 ft2, beyond: outdoors}\n"
    return small(
        ("    floor_area: 100 ft2\n", f"    floor_area: 100 ft2\n    surfaces:\n{wall}"), add=WHAT_IFS
    )


def u_of(job: Job) -> float:
    figure = job.constructions["window"].u_value
    assert figure is not None
    return round(U.from_si(float(figure)), 6)


def changes_of(job: Job) -> Figure:
    assert job.air is not None
    assert job.air.changes is not None
    return job.air.changes


def clash(job: Job, *ids: str) -> JobErrors:
    with pytest.raises(JobErrors) as caught:
        job.with_what_ifs(*ids)
    return caught.value


def test_a_value_set_says_where_it_comes_from_and_what_it_replaced(job: Job) -> None:
    laid = job.with_what_ifs("glass")
    figure = laid.constructions["window"].u_value
    assert figure is not None
    assert u_of(laid) == 0.25
    assert figure.origin.path == "constructions/window/u_value"
    assert figure.origin.replaces == "U-0.35"
    assert figure.origin.beside == ("from the what-if glass",)
    row = job.source.text.splitlines()[laid.source.line_of(figure.origin.path) - 1]
    assert row.strip().startswith("glass:")


def test_the_job_itself_stays_as_it_is(job: Job) -> None:
    job.with_what_ifs("glass", "no-window", "den")
    assert u_of(job) == 0.35
    assert list(job.rooms) == ["kitchen", "hall"]
    assert job.laid == ()
    assert job.source.text.startswith(SMALL[:40])


def test_several_are_laid_in_order(job: Job) -> None:
    laid = job.with_what_ifs("glass", "tight")
    assert laid.laid == ("glass", "tight")
    one_by_one = job.with_what_ifs("glass").with_what_ifs("tight")
    assert one_by_one.laid == laid.laid
    assert one_by_one.raw == laid.raw
    assert float(changes_of(laid)) == pytest.approx(0.3 / 3600)


def test_within_one_what_if_the_last_word_counts(job: Job) -> None:
    changes = changes_of(job.with_what_ifs("twice"))
    assert float(changes) == pytest.approx(0.2 / 3600)
    assert changes.origin.replaces == "0.5 ACH"


def test_two_that_agree_go_together(job: Job) -> None:
    assert u_of(job.with_what_ifs("glass", "same-glass")) == 0.25


@pytest.mark.parametrize("order", [("glass", "better-glass"), ("better-glass", "glass"), ("glass", "by-r")])
def test_two_that_set_one_value_differently_are_both_named(job: Job, order: tuple[str, str]) -> None:
    errors = clash(job, *order)
    assert codes(errors) == ["what-if-conflict"]
    assert all(f"`{each}`" in errors.errors[0].message for each in order)


def test_a_clash_is_found_when_they_are_laid_one_by_one(job: Job) -> None:
    assert codes(clash(job.with_what_ifs("glass"), "better-glass")) == ["what-if-conflict"]


@pytest.mark.parametrize("order", [("no-window", "wide"), ("wide", "no-window")])
def test_a_target_that_is_gone_names_both(job: Job, order: tuple[str, str]) -> None:
    errors = clash(job, *order)
    assert codes(errors) == ["what-if-gone"]
    assert all(f"`{each}`" in errors.errors[0].message for each in order)


def test_a_thing_is_added_and_then_changed(job: Job) -> None:
    laid = job.with_what_ifs("den", "den-warm")
    assert laid.rooms["den"].indoor is not laid.site.indoor
    assert list(laid.rooms) == ["kitchen", "hall", "den"]


def test_what_needs_another_what_if_first_says_so(job: Job) -> None:
    assert codes(clash(job, "den-warm")) == ["what-if-target"]


def test_an_opening_is_added_where_there_was_none(job: Job) -> None:
    laid = job.with_what_ifs("new-window")
    assert list(laid.rooms["hall"].surfaces["wall"].openings) == ["w9"]


def test_a_thing_is_removed(job: Job) -> None:
    assert job.with_what_ifs("no-window").rooms["kitchen"].surfaces["north-wall"].openings == {}


def test_a_default_is_replaced_by_a_value(job: Job) -> None:
    assert float(job.with_what_ifs("cool-hall").rooms["hall"].indoor) == pytest.approx(288.7055556)


def test_a_value_with_its_mark_replaces_a_value_with_its_mark() -> None:
    laid = read_job(example("ferrow-house")).with_what_ifs("low-e")
    figure = laid.constructions["old-window"].u_value
    assert figure is not None
    assert (figure.origin.typed, figure.origin.replaces, figure.origin.known) == (
        "U-0.35",
        "U-0.51",
        "from plans",
    )


def test_one_way_to_say_it_takes_the_place_of_the_other(job: Job) -> None:
    made = job.with_what_ifs("by-r").constructions["window"]
    assert made.u_value is None
    assert made.r_value is not None
    assert made.r_value.origin.replaces == "U-0.35"


def test_a_value_that_cannot_be_is_refused_when_it_is_laid(job: Job) -> None:
    with pytest.raises(JobErrors) as caught:
        job.with_changes([{"set": "constructions/wall/u_value", "to": "U-19"}])
    assert codes(caught.value) == ["u-above-air-films"]


def test_changes_given_by_a_program(job: Job) -> None:
    laid = job.with_what_ifs("glass").with_changes(
        [
            {"set": "constructions/window/u_value", "to": "U-0.20"},
            {"add": "rooms/porch", "to": {"level": "ground", "size": "6' × 8'", "habitable": False}},
            {"remove": "rooms/kitchen/surfaces/inner-wall"},
        ]
    )
    assert u_of(laid) == 0.20
    assert laid.rooms["porch"].habitable is False
    assert "inner-wall" not in laid.rooms["kitchen"].surfaces
    assert laid.laid == ("glass",)


@pytest.mark.parametrize(
    ("change", "code"),
    [
        ({"set": "constructions/windw/u_value", "to": "U-0.2"}, "what-if-target"),
        ({"add": "rooms/hall", "to": {}}, "what-if-exists"),
        ({"set": "air/changes"}, "what-if-no-value"),
        ({"change": "air/changes"}, "what-if-change"),
        ({"remove": "rooms/attic"}, "what-if-target"),
    ],
)
def test_changes_without_a_place_are_refused(job: Job, change: dict[str, object], code: str) -> None:
    with pytest.raises(JobErrors) as caught:
        job.with_changes([change])
    assert codes(caught.value) == [code]


def test_a_what_if_that_the_job_does_not_have_offers_the_nearest(job: Job) -> None:
    errors = clash(job, "glas")
    assert codes(errors) == ["unknown-what-if"]
    assert "`glass`" in errors.errors[0].mend
