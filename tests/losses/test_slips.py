"""Findings on slips: their weights, the ways they offer, and where they hold their tongue."""

from __future__ import annotations

from importlib import resources
from typing import Any

import pytest

from heatledger.job.load import read_job
from heatledger.job.model import Job
from heatledger.ledger.findings import Finding, Weight
from heatledger.steps.design import design
from heatledger.steps.review import depths, envelope_gaps, extremes, review, slips, standing
from heatledger.steps.review.kinds import KINDS
from tests.losses.houses import TEXTS, house

LIVING = "rooms/living"
EXAMPLES = ("ferrow-house.yaml", "lerch-cottage.yaml")
MODULES = {each.__name__ for each in (slips, depths, envelope_gaps, standing, extremes)}
OF_SLIPS = {id for id, kind in KINDS.items() if kind.check.__module__ in MODULES} | {"outdoor-design-mild"}


def put(path: str, value: Any) -> dict[str, Any]:
    return {"set": path, "to": value}


def found_on(job: Job) -> dict[str, Finding]:
    return {each.id: each for each in review(design(job))[0]}


def on(name: str, *changes: dict[str, Any]) -> dict[str, Finding]:
    return found_on(house(name).with_changes(changes))


def test_the_demo_jobs_are_left_in_peace() -> None:
    assert len(OF_SLIPS) == 21
    for name in EXAMPLES:
        text = resources.files("heatledger.examples").joinpath(name).read_text("utf-8")
        assert not set(found_on(read_job(text, name))) & OF_SLIPS


@pytest.mark.parametrize(
    ("indoor", "weight"),
    [
        ("80.1 °F", Weight.DECIDE), ("90 °F", Weight.DECIDE), ("90.1 °F", Weight.MUST_FIX),
        ("44.9 °F", Weight.DECIDE), ("32 °F", Weight.DECIDE), ("31.9 °F", Weight.MUST_FIX),
    ],
)  # fmt: skip
def test_a_room_too_hot_or_frozen_must_be_fixed(indoor: str, weight: Weight) -> None:
    found = on("ranch", put("site/indoor", indoor))["indoor-out-of-range"]
    assert (found.where, found.weight) == ("site/indoor", weight)
    assert found.what.startswith("4 rooms are to be kept at")
    room = on("ranch", put("rooms/bedroom-1/indoor", indoor))["indoor-out-of-range"]
    assert (room.where, room.weight) == ("rooms/bedroom-1", weight)


def test_the_other_degree_sign_is_offered_where_it_makes_sense() -> None:
    cold = on("ranch", put("site/indoor", "20 °F"))["indoor-out-of-range"]
    assert cold.mends[0].words == "Read it as 20 °C, which is 68 °F."
    assert cold.mends[0].changes == (put("site/indoor", "20 °C"),)
    hot = on("metric", put("site/indoor", "70 °C"))["indoor-out-of-range"]
    assert hot.weight is Weight.MUST_FIX
    assert hot.mends[0].words == "Read it as 70 °F, which is 21.1 °C."
    assert not found_on(house("metric").with_changes(hot.mends[0].changes))
    neither = on("ranch", put("site/indoor", "700 °F"))["indoor-out-of-range"]
    assert not any(each.changes for each in neither.mends)


def test_a_point_that_slipped_is_put_back() -> None:
    """A wall of 150 ft for 15 ft, a room of 160 ft for 16 ft, 66 in for 66 ft, U-0.008 for U-0.08."""
    wall = on("ranch", put(f"{LIVING}/surfaces/west-wall/length", "160'"))["wall-longer-than-room"]
    assert wall.mends[0].changes == (put(f"{LIVING}/surfaces/west-wall/length", "16 ft"),)
    assert "Living room is 20′ 0″ by 16′ 0″" in wall.what
    room = on("ranch", put("rooms/bedroom-1/size", "200' × 12'"))["room-very-long"]
    assert room.mends[0].changes == (put("rooms/bedroom-1/size", "20 ft × 12.0000 ft"),)
    depth = on("brick", put("unheated/basement/surfaces/floor/depth", "66 ft"))["below-grade-too-deep"]
    assert [each.words for each in depth.mends[:2]] == ["Read it as 66 in.", "Read it as 6.6 ft."]
    assert depth.mends[0].changes == (put("unheated/basement/surfaces/floor/depth", "66 in"),)
    u_value = on("ranch", put("constructions/wall/u_value", "U-0.006"))["better-than-any-table"]
    assert u_value.mends[0].changes == (put("constructions/wall/u_value", "0.0600 Btu/(h·ft²·°F)"),)
    assert "has 0.02 Btu/(h·ft²·°F), 3.3 times that loss" in u_value.what
    r_value = on("ranch", put("constructions/wall/r_value", "R-190"))["better-than-any-table"]
    assert r_value.mends[0].changes == (put("constructions/wall/r_value", "19.00 h·ft²·°F/Btu"),)
    soil = on("brick", put("site/soil_conductivity", "8 Btu/(h·ft·°F)"))["soil-out-of-table"]
    assert soil.mends[0].changes == (put("site/soil_conductivity", "0.8 Btu/(h·ft·°F)"),)


def test_an_inch_pound_value_in_a_metric_job_is_offered_as_one() -> None:
    u_value = on("metric", put("constructions/wall/u_value", "0.08"))["better-than-any-table"]
    assert u_value.mends[0].changes == (put("constructions/wall/u_value", "0.08 Btu/(h·ft²·°F)"),)
    r_value = on("metric", put("constructions/roof/r_value", "38"))["better-than-any-table"]
    assert r_value.mends[0].changes == (put("constructions/roof/r_value", "38 h·ft²·°F/Btu"),)
    assert "the best ceiling to be expected has 17.61 m²·K/W" in r_value.what


def test_a_wall_given_by_its_size_keeps_its_height() -> None:
    long = put(f"{LIVING}/surfaces/west-wall/size", "160' × 9'")
    job = house("ranch").with_changes([{"remove": f"{LIVING}/surfaces/west-wall/length"}, long])
    mend = found_on(job)["wall-longer-than-room"].mends[0]
    after = job.with_changes(mend.changes).rooms["living"].surfaces["west-wall"]
    assert [float(after.length), float(after.height)] == pytest.approx([16 * 0.3048, 9 * 0.3048])


def test_one_wall_may_go_around_the_room() -> None:
    for length, stands in (("56'", False), ("61.5'", False), ("62'", True)):
        walls = {"walls": {"construction": "wall", "length": length, "beyond": "outdoors"}}
        found = on("tiny", put("rooms/cabin/surfaces", walls))
        assert ("wall-longer-than-room" in found) is stands


def test_a_wall_that_must_keep_its_windows_is_not_offered_shorter() -> None:
    glass = {"w": {"construction": "window", "area": "100 ft2", "count": "5"}}
    long = {"construction": "wall", "length": "160'", "beyond": "outdoors", "openings": glass}
    found = on("ranch", put(f"{LIVING}/surfaces/west-wall", long))["wall-longer-than-room"]
    assert not any(each.changes for each in found.mends)


def test_a_bare_ceiling_says_what_an_attic_would_bring() -> None:
    job = house("ranch").with_changes([put("constructions/ceiling/u_value", "U-0.60")])
    found = found_on(job)["bare-ceiling-to-outdoors"]
    before, after = (
        design(each).losses.house.causes["ceiling"].loss
        for each in (job, job.with_changes(found.mends[0].changes))
    )
    assert float(after) < 0.6 * float(before)
    us = 3.412141633127942
    assert f"loses {float(before) * us:,.0f} Btu/h" in found.what
    assert f"would lose {float(after) * us:,.0f} Btu/h" in found.what
    assert "surface-cold-inside" in found.explains


def test_a_bare_ceiling_goes_under_the_attic_that_is_there() -> None:
    job = house("attic").with_changes([
        put("constructions/ceiling/u_value", "U-0.30"),
        put("rooms/bedroom/surfaces/ceiling/beyond", "outdoors"),
    ])  # fmt: skip
    mend = found_on(job)["bare-ceiling-to-outdoors"].mends[0]
    assert mend.words == "Put the attic beyond it."
    assert mend.changes == (put("rooms/bedroom/surfaces/ceiling/beyond", "unheated/attic"),)


def test_ceilings_and_edges_are_added_from_what_the_job_has() -> None:
    rooms = ("living", "kitchen", "bedroom-1", "bedroom-2")
    bare = [{"remove": f"rooms/{each}/surfaces/{part}"} for each in rooms for part in ("ceiling", "edge")]
    job = house("ranch").with_changes(bare)
    found = found_on(job)
    offered = (found[each].mends[0].changes for each in ("top-without-ceiling", "bottom-without-floor"))
    changes = [change for each in offered for change in each]
    mended = design(job.with_changes(changes)).losses.house.loss
    assert float(mended) == pytest.approx(float(design(house("ranch")).losses.house.loss), rel=1e-4)


def test_a_file_that_begins_with_the_roof_is_read_from_below() -> None:
    levels = TEXTS["attic"].split("levels: ")[1].split("\nair:")[0]
    turned = (
        "{two: {name: Second floor, wall_height: 8 ft, ceiling_height: 8 ft}, "
        "one: {name: First floor, wall_height: 9 ft, ceiling_height: 8 ft}}"
    )
    text = TEXTS["attic"].replace(levels, turned)
    assert not set(found_on(read_job(text))) & OF_SLIPS
    # Without the edge it cannot be told which way up the file is, and the order in it holds.
    bare = found_on(read_job(TEXTS["attic"]).with_changes([{"remove": "rooms/living/surfaces/edge"}]))
    assert bare["bottom-without-floor"].where == "levels/one"


def test_a_job_without_surfaces_is_not_scolded_for_each_of_them() -> None:
    text = "format: 1\nunits: US\nlevels: {main: {}}\nrooms: {hall: {level: main}, den: {level: main}}"
    found, not_checked = review(design(read_job(text)))
    ids = {"top-without-ceiling", "bottom-without-floor", "no-window-in-house"}
    assert not {each.id for each in found} & ids
    assert {each.id for each in not_checked if "surfaces of the rooms" in each.for_want_of} == ids


def test_soil_that_nothing_lies_in_is_a_note() -> None:
    for name, weight in (("brick", Weight.DECIDE), ("ranch", Weight.NOTE)):
        assert on(name, put("site/soil_conductivity", "6 W/(m·K)"))["soil-out-of-table"].weight is weight


def test_what_is_said_to_be_measured_is_left_alone() -> None:
    """The entry's own word counts, and that of the air or neighbor it belongs to."""
    inherited = put("air", {"changes": "0.3 ACH"})
    assert "measured-without-test" in on("ranch", inherited)
    beside = {"is": "0.3 ACH", "known": "measured"}
    for own in ({"changes": "0.3 ACH", "known": "measured"}, {"changes": beside}):
        assert "measured-without-test" not in on("ranch", put("air", own))
    assert "measured-without-test" in on("brick", put("site/known", "measured"))
    warm = {"temperature": "10 °C", "known": "measured"}
    assert "measured-without-test" not in on("flat", put("neighbors/above", warm))
    assert "measured-without-test" in on("flat", put("neighbors/above", {"temperature": "10 °C"}))


def test_a_half_range_of_a_temperature_or_of_nothing_is_not_weighed() -> None:
    wide = {"is": "0 °F", "within": "5 °F"}
    still = {"is": "0 ACH", "within": "0.1 ACH", "known": "told"}
    found = on("ranch", put("site/outdoor", wide), put("rooms/living/air/changes", still))
    assert "half-range-over-value" not in found


def test_one_missing_entry_is_named_by_what_could_not_be_checked() -> None:
    wanting = {
        "rooms/living/surfaces/west-wall/length": "wall-longer-than-room",
        "levels/main/wall_height": "wall-height-out-of-line",
        "site/outdoor": "outdoor-design-mild",
        "constructions/door/u_value": "better-than-any-table",
    }
    for path, id in wanting.items():
        found, not_checked = review(design(house("ranch").with_changes([put(path, "")])))
        assert id in {each.id for each in not_checked}, path
        assert not {each.id for each in found} & OF_SLIPS, path
