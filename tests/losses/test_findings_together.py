"""Findings as a list: what hides what, many rooms as one, decisions, limits, and what is not checked."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from heatledger.job.load import read_job
from heatledger.job.model import Job
from heatledger.ledger.figures import Figure
from heatledger.ledger.findings import Finding, Weight
from heatledger.steps.design import design
from heatledger.steps.review import KINDS, review
from heatledger.steps.review.house import House
from heatledger.steps.review.order import FOLDS, folded, ordered
from heatledger.studies.uncertainty import band_of
from tests.losses.houses import TEXTS, house


def changed(name: str, *changes: dict[str, Any]) -> Job:
    return house(name).with_changes(changes)


def put(path: str, value: Any) -> dict[str, Any]:
    return {"set": path, "to": value}


def found_on(job: Job) -> dict[str, Finding]:
    return {each.id: each for each in review(design(job))[0]}


def test_twenty_degrees_celsius_typed_for_fahrenheit_hides_what_follows() -> None:
    job = changed("ranch", put("site/outdoor", "20 °C"))
    found = found_on(job)
    crossed = found["degrees-crossed"]
    assert crossed.weight is Weight.MUST_FIX
    assert crossed.mends[0].changes == (put("site/outdoor", "20 °F"),)
    assert not set(found) & set(crossed.explains)
    assert not found_on(job.with_changes(crossed.mends[0].changes))
    assert not found_on(changed("ranch", put("site/outdoor", "-7 °C")))


def test_five_changes_an_hour_explain_all_that_air_does() -> None:
    found = found_on(changed("attic", put("air/changes", {"is": "5 ACH", "known": "assumed"})))
    leak = found["blower-door-figure-as-natural"]
    assert leak.weight is Weight.MUST_FIX
    assert set(found) == {leak.id}
    assert {"loss-coefficient-high", "air-change-guessed", "expectation-missed"} <= set(leak.explains)
    assert found_on(changed("attic", put("air/changes", "0.5 ACH"))) == {}


def test_eight_meters_typed_for_feet() -> None:
    job = changed("metric", put("levels/ground/ceiling_height", "8 m"))
    tall = found_on(job)["feet-meters-crossed"]
    assert tall.mends[0].changes == (put("levels/ground/ceiling_height", "8 ft"),)
    assert "tall-room-layers" in tall.explains
    low = found_on(changed("ranch", put("levels/main/ceiling_height", "2.4 ft")))["feet-meters-crossed"]
    assert low.mends[0].changes == (put("levels/main/ceiling_height", "2.4 m"),)


def test_a_cause_in_one_room_hides_nothing_in_another() -> None:
    job = changed("ranch", put("rooms/bedroom-1/indoor", "40 °F"), put("rooms/bedroom-2/indoor", "66 °F"))
    found = review(design(job))[0]
    places = {(each.id, each.where) for each in found}
    assert ("indoor-below-minimum", "rooms/bedroom-2") in places
    assert ("indoor-below-minimum", "rooms/bedroom-1") not in places
    cause = next(each for each in found if each.id == "indoor-out-of-range")
    assert "indoor-below-minimum" in cause.explains


def test_what_carries_a_caution_is_never_folded_nor_decided_without_a_name() -> None:
    job = changed("ranch", put("rooms/bedroom-1/indoor", "40 °F"))
    looked = House(design(job))
    raw = [
        each
        for id in ("indoor-out-of-range", "indoor-below-minimum")
        for each in KINDS[id].check(_look(looked, id))
        if isinstance(each, Finding)
    ]
    assert [each.id for each in folded(raw, looked)] == ["indoor-out-of-range"]
    careful = [raw[0], replace(raw[1], caution="People are chilled here.")]
    assert [each.id for each in folded(careful, looked)] == ["indoor-out-of-range", "indoor-below-minimum"]


def _look(looked: House, id: str) -> Any:
    from heatledger.steps.review.kinds import Look

    return Look(looked, KINDS[id])


def test_every_fold_names_kinds_that_are() -> None:
    for cause, under in FOLDS.items():
        assert cause in KINDS
        assert under <= set(KINDS)
        assert cause not in under


def test_one_kind_in_four_rooms_is_said_once_and_mended_at_once() -> None:
    rooms = ("living", "kitchen", "bedroom-1", "bedroom-2")
    three = changed("ranch", *(put(f"rooms/{each}/indoor", "66 °F") for each in rooms[:3]))
    said = [each for each in review(design(three))[0] if each.id == "indoor-below-minimum"]
    assert [each.where for each in said] == [f"rooms/{each}" for each in rooms[:3]]
    four = changed("ranch", *(put(f"rooms/{each}/indoor", "66 °F") for each in rooms))
    said = [each for each in review(design(four))[0] if each.id == "indoor-below-minimum"]
    assert len(said) == 1
    assert all(name in said[0].what for name in ("Living room", "Kitchen", "Bedroom 1", "Bedroom 2"))
    assert len(said[0].mends[0].changes) == 4
    assert "indoor-below-minimum" not in found_on(four.with_changes(said[0].mends[0].changes))


def test_must_fix_comes_first_then_the_order_of_the_trade() -> None:
    job = changed(
        "ranch",
        put("rooms/bedroom-1/indoor", "66 °F"),
        put("site/elevation", "3000 ft"),
        put("air/changes", "2.5 ACH"),
        put("rooms/bedroom-2/name", "Bedroom 1"),
    )
    found = review(design(job))[0]
    assert [each.id for each in found] == [each.id for each in ordered(found[::-1])]
    assert [each.id for each in found] == [
        "room-on-two-sheets", "blower-door-figure-as-natural", "indoor-below-minimum", "altitude-counts",
        "code-not-named",
    ]  # fmt: skip


def test_a_decision_marks_the_finding_and_it_is_still_listed() -> None:
    decisions = "decisions: {{'{}': {{is: a cool bedroom, because: the owner sleeps cold, by: J. Ondry}}}}"
    for key in ("indoor-below-minimum", "indoor-below-minimum@rooms/bedroom-1"):
        job = read_job(TEXTS["ranch"] + decisions.format(key) + "\ncodes: {adopted: the code of the town}")
        found = found_on(job.with_changes([put("rooms/bedroom-1/indoor", "66 °F")]))
        one = found["indoor-below-minimum"]
        assert one.weight is Weight.MUST_FIX
        assert one.decided is not None
        assert (one.decided.words, one.decided.by) == ("a cool bedroom", "J. Ondry")
        assert "decision-without-finding" not in found
    job = read_job(TEXTS["ranch"] + decisions.format("indoor-below-minimum@rooms/bedroom-2"))
    found = found_on(job.with_changes([put("rooms/bedroom-1/indoor", "66 °F")]))
    assert found["indoor-below-minimum"].decided is None
    assert "decision-without-finding" in found


def test_a_limit_of_another_kind_is_said_and_not_used() -> None:
    job = read_job(TEXTS["ranch"] + "limits: {mostly-guesses: 60 °F}")
    found, not_checked = review(design(job))
    assert not found
    said = [each for each in not_checked if each.id == "mostly-guesses"]
    assert [each.where for each in said] == ["limits/mostly-guesses"]
    assert "60 °F" in said[0].for_want_of


def test_areas_that_differ_by_a_quarter_must_be_fixed() -> None:
    asked = found_on(changed("ranch", put("heated_floor_area", "1490 ft2")))["floor-areas-disagree"]
    must = found_on(changed("ranch", put("heated_floor_area", "1494 ft2")))["floor-areas-disagree"]
    assert (asked.weight, must.weight) == (Weight.DECIDE, Weight.MUST_FIX)


@pytest.mark.parametrize("part", ["plant: {boiler: {output: 60 kBtu/h}}", "heat_sources: {boiler: one}"])
def test_future_work_is_to_be_decided_once_there_is_a_plant(part: str) -> None:
    later = "what-ifs: {wrap: {changes: [{set: constructions/brick/u_value, to: U-0.05}]}}\n"
    assert found_on(read_job(TEXTS["brick"] + later))["future-work-changes-load"].weight is Weight.NOTE
    with_plant = read_job(TEXTS["brick"] + later + part)
    assert found_on(with_plant)["future-work-changes-load"].weight is Weight.DECIDE
    laid = read_job(TEXTS["brick"] + later).with_what_ifs("wrap")
    assert "future-work-changes-load" not in found_on(laid)


def test_what_ifs_are_figured_once_a_design() -> None:
    job = read_job(TEXTS["brick"] + "what-ifs: {tight: {changes: [{set: air/changes, to: 0.3 ACH}]}}")
    one = design(job)
    review(one)
    kept = one.__dict__["what_if_losses"]
    review(one)
    assert one.__dict__["what_if_losses"] is kept
    assert kept["tight"] == float(design(job.with_what_ifs("tight")).losses.house.loss)


def test_a_missing_entry_is_named_and_the_rest_is_checked() -> None:
    job = changed(
        "brick", put("rooms/parlor/surfaces/north-wall/length", ""), put("rooms/kitchen/indoor", "66 °F")
    )
    found, not_checked = review(design(job))
    assert "indoor-below-minimum" in {each.id for each in found}
    wanting = {each.id: each.for_want_of for each in not_checked}
    for id in ("mostly-guesses", "loss-coefficient-high", "room-out-of-line"):
        assert wanting[id] == "Length, Parlor, North wall"
    assert not any("nan" in each.what for each in found)


@pytest.mark.parametrize("gone", ["site/outdoor", "site/elevation", "air/changes",
"constructions/brick/u_value",
                                  "levels/main/ceiling_height", "site/ground_temperature"])  # fmt: skip
def test_no_missing_entry_stops_the_review(gone: str) -> None:
    found, not_checked = review(design(changed("brick", {"remove": gone})))
    assert not any(each.weight is Weight.MUST_FIX for each in found)
    assert not_checked
    assert all(each.for_want_of for each in not_checked)


def test_a_house_without_a_stated_area_or_year_says_what_it_wants() -> None:
    job = read_job(TEXTS["attic"].replace("built: 1935", "").replace("heated_floor_area: 720 "
                                                                     "ft2", "").replace(
        "known: measured", "known: told"))  # fmt: skip
    wanting = {each.id: each.for_want_of for each in review(design(job))[1]}
    assert wanting["floor-areas-disagree"] == "the heated floor area as stated"
    assert wanting["air-and-glass-not-leading"] == "the year the house was built"


def test_an_expectation_of_another_kind_or_of_nothing_is_not_checked() -> None:
    for of in ("house/floor_area", "house/no-such-figure"):
        expected = f"expectations: {{bills: {{of: {of}, about: 20 kBtu/h}}}}"
        wanting = {each.where for each in review(design(read_job(TEXTS["ranch"] + expected)))[1]}
        assert "expectations/bills" in wanting


def test_the_figure_behind_a_finding_opens() -> None:
    built = design(changed("brick", put("constructions/brick/u_value", "U-0.28")))
    high = next(each for each in review(built)[0] if each.id == "loss-coefficient-high")
    assert isinstance(high.why, Figure)
    assert high.why is built.losses.house.per_area
    assert band_of(high.why, built).half > 0


def test_a_level_entered_in_part_is_not_said_to_be_open() -> None:
    job = changed("ranch", *({"remove": f"rooms/{each}"} for each in ("kitchen", "bedroom-1", "bedroom-2")))
    found, not_checked = review(design(job))
    assert "outline-not-closed" not in {each.id for each in found}
    assert ("outline-not-closed", "the walls of the other sides") in {
        (each.id, each.for_want_of) for each in not_checked
    }


def test_the_review_asks_for_no_more_than_it_needs() -> None:
    """Gathering every figure by its path takes longer than the review; a quiet house never asks for it."""
    quiet = design(house("ranch"))
    review(quiet)
    assert "figures" not in quiet.__dict__
