"""Each finding on the boiler room stands where it should, is silent beside it, and is mended."""

from __future__ import annotations

from functools import cache

import pytest

from heatledger.job.model import Job
from heatledger.ledger.findings import Finding, Weight
from heatledger.steps.design import design
from heatledger.steps.review import KINDS, review
from heatledger.steps.targets import CAUTION_LOCAL
from tests.losses.houses import house
from tests.review.plant_cases import BOILER, CASES, PlantCase, gone, size, to
from tests.review.plant_house import plant_house
from tests.steps.heated import job_of

ORDER = {Weight.NOTE: 0, Weight.DECIDE: 1, Weight.MUST_FIX: 2}
OURS = {each.id for each in CASES}
NOT_SHOWN_IN_A_JOB = {"no-co-alarm", "relief-pipe-blocked", "condensate-badly-drained"}
"""What no entry of a job can show, so it stands until somebody decides with a name."""
HURTS = {
    "rating-at-sea-level", "electric-service-short", "cold-water-to-iron-boiler", "boiler-water-too-slow",
    "expansion-tank-small", "hot-pressure-near-relief", "relief-too-small", "relief-set-too-high",
    "no-low-water-cutoff", "no-manual-limit", "no-co-alarm", "relief-pipe-blocked",
    "condensate-badly-drained",
}  # fmt: skip


def named(case: PlantCase) -> str:
    return f"{case.id} at {case.where}"


def stands(job: Job, id: str, where: str) -> Finding | None:
    """The finding at a place, or one that explains it; None when it is silent."""
    return among(review(design(job))[0], id, where)


@cache
def firing(case: PlantCase) -> Finding:
    """The finding of a case where it fires."""
    found = stands(case.job(True), case.id, case.where)
    assert found is not None
    return found


def among(found: list[Finding], id: str, where: str) -> Finding | None:
    """One of these findings, or the one that it is folded under."""
    own = [each for each in found if each.id == id and each.where == where]
    return own[0] if own else next((each for each in found if id in each.explains), None)


def test_every_kind_of_the_boiler_room_has_a_case() -> None:
    homes = ("boiler", "firing", "pressure", "guards", "bill_findings")
    kinds = {id for id, each in KINDS.items() if each.check.__module__.rpartition(".")[2] in homes}
    assert kinds == OURS
    assert len(kinds) >= 20


@pytest.mark.parametrize("case", CASES, ids=named)
def test_it_stands_and_is_silent_just_beside(case: PlantCase) -> None:
    assert firing(case) is not None
    assert stands(case.job(False), case.id, case.where) is None


@pytest.mark.parametrize("case", [each for each in CASES if each.limit], ids=named)
def test_its_threshold_is_named_and_can_be_changed(case: PlantCase) -> None:
    found = firing(case)
    kind = KINDS[found.id]
    assert kind.limits
    assert all(each.words in found.threshold for each in kind.limits)
    assert stands(case.job(True, case.limit), case.id, case.where) is None


def test_every_first_threshold_is_tried() -> None:
    tried = {each.id for each in CASES if each.limit} | {"no-low-water-cutoff"}
    assert {id for id in OURS if KINDS[id].limits} == tried


@pytest.mark.parametrize("case", CASES, ids=named)
def test_what_it_offers_mends_it(case: PlantCase) -> None:
    found = firing(case)
    for mend in found.mends:
        if mend.changes:
            after = stands(case.job(True).with_changes(mend.changes), found.id, found.where)
            assert after is None or ORDER[after.weight] < ORDER[found.weight], (found.id, mend)


@pytest.mark.parametrize("case", CASES, ids=named)
def test_it_says_what_why_and_how(case: PlantCase) -> None:
    found = firing(case)
    assert found.what.endswith(".")
    assert len(found.what) < 260
    assert "nan" not in found.what
    assert found.why != ""
    assert found.mends
    if found.id == case.id:
        assert bool(found.caution) is (case.id in HURTS)
        assert not found.caution or found.caution.endswith(CAUTION_LOCAL)


def test_a_sound_boiler_room_has_only_what_no_job_can_show() -> None:
    found = {each.id for each in review(design(plant_house()))[0]}
    assert found & OURS == NOT_SHOWN_IN_A_JOB


@pytest.mark.parametrize("name", ["ranch", "brick", "flat"])
def test_a_house_without_a_boiler_is_left_in_peace(name: str) -> None:
    found, not_checked = review(design(house(name)))
    assert {each.id for each in found} & OURS == set()
    assert {each.id for each in not_checked} & OURS == set()


def test_a_decision_on_danger_needs_a_name() -> None:
    text = "\ndecisions: {no-co-alarm: {is: alarms on both stories, because: seen on site%s}}\n"
    without, with_name = (
        next(each for each in review(design(plant_house(text % end)))[0] if each.id == "no-co-alarm")
        for end in ("", ", by: J. Ondry")
    )
    assert without.decided is None
    assert with_name.decided is not None


def test_far_too_big_must_be_fixed_unless_the_burner_turns_down() -> None:
    on_off = [*size("34000 Btu/h"), *gone(f"{BOILER}/least_output")]
    found = stands(plant_house().with_changes(on_off), "boiler-too-big", BOILER)
    assert found is not None
    assert found.weight is Weight.MUST_FIX
    found = stands(plant_house().with_changes(size("34000 Btu/h")), "boiler-too-big", BOILER)
    assert found is not None
    assert found.weight is Weight.DECIDE


def test_a_large_input_must_have_its_cutoff() -> None:
    changes = [*to("plant/low_water_cutoff", "no"), *to(f"{BOILER}/input", "400001 Btu/h")]
    found = stands(plant_house().with_changes(changes), "no-low-water-cutoff", "plant/low_water_cutoff")
    assert found is not None
    assert found.weight is Weight.MUST_FIX


def test_what_is_wanting_is_named() -> None:
    changes = gone(f"{BOILER}/water", "plant/height", f"{BOILER}/output", f"{BOILER}/efficiency")
    not_checked = review(design(plant_house().with_changes(changes)))[1]
    wants = {each.id: each.for_want_of for each in not_checked}
    assert (
        "water" in wants["expansion-tank-small"].lower() or "height" in wants["expansion-tank-small"].lower()
    )
    assert "eight" in wants["top-of-house-dry"]
    assert "utput" in wants["boiler-too-big"]


def test_a_small_zone_alone_must_pass_enough_water() -> None:
    """Ferrow house, upper floor alone: about 2.9 gpm."""
    for least, expected in (("3 gpm", "zones/upper"), ("2.8 gpm", None)):
        job = job_of("ferrow-house").with_changes(to(f"{BOILER}/least_flow", least))
        found = [each for each in review(design(job))[0] if each.id == "boiler-water-too-slow"]
        assert [each.where for each in found] == ([expected] if expected else [])
        assert all(each.caution for each in found)
