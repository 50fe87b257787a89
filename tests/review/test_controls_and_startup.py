"""Each finding on controls and startup stands where it should, is silent beside it, and mends itself."""

from __future__ import annotations

from functools import cache

import pytest

from heatledger.job.model import Job
from heatledger.ledger.findings import Finding, Weight
from heatledger.steps.review import KINDS, control_findings, fire_findings, startup_findings, zone_findings
from heatledger.steps.review.house import House
from heatledger.steps.review.kinds import Look
from heatledger.steps.targets import CAUTION_LOCAL
from tests.review.system_cases import CASES, SystemCase, fire, of_iron, put, read
from tests.steps.heated import complete, job_of

MODULES = {each.__name__ for each in (control_findings, zone_findings, startup_findings, fire_findings)}
OURS = {id: kind for id, kind in KINDS.items() if kind.check.__module__ in MODULES}
CAN_HURT = {
    "reset-under-boiler-limit", "test-pressure-low", "hot-gauge-high", "feed-valve-left-to-chance",
    "fire-never-measured", "co-in-flue-high", "oxygen-out-of-band", "flue-gas-spills", "room-co-found",
}  # fmt: skip
ORDER = {Weight.NOTE: 0, Weight.DECIDE: 1, Weight.MUST_FIX: 2}


def named(case: SystemCase) -> str:
    return f"{case.id} at {case.where}"


def found_on(job: Job) -> list[Finding]:
    """Our findings alone, before any is folded under another."""
    house = House(complete(job))
    said = [each for kind in OURS.values() for each in Look(house, kind).run()]
    return [each for each in said if isinstance(each, Finding)]


def stands(job: Job, id: str, where: str) -> Finding | None:
    return next((each for each in found_on(job) if (each.id, each.where) == (id, where)), None)


@cache
def standing(case: SystemCase) -> Finding:
    found = stands(case.job(True), case.id, case.where)
    assert found is not None
    return found


def on(*changes: list[dict[str, object]]) -> dict[str, Finding]:
    job = job_of("ferrow-house").with_changes([one for each in changes for one in each])
    return {each.id: each for each in found_on(job)}


def test_every_kind_has_a_case() -> None:
    assert len(OURS) >= 24
    assert set(OURS) == {each.id for each in CASES}


@pytest.mark.parametrize("case", CASES, ids=named)
def test_it_stands_and_is_silent_just_beside(case: SystemCase) -> None:
    found = standing(case)
    assert stands(case.job(False), case.id, case.where) is None
    assert found.what.endswith(".")
    assert len(found.what) < 260
    assert "nan" not in found.what and "not known" not in found.what
    assert found.why != "" and found.mends


@pytest.mark.parametrize("case", [each for each in CASES if each.limit], ids=named)
def test_its_threshold_is_named_and_can_be_changed(case: SystemCase) -> None:
    assert all(each.words in standing(case).threshold for each in OURS[case.id].limits)
    assert stands(case.job(True, case.limit), case.id, case.where) is None


@pytest.mark.parametrize("case", CASES, ids=named)
def test_what_it_offers_mends_it(case: SystemCase) -> None:
    job, found = case.job(True), standing(case)
    for mend in found.mends:
        if mend.changes:
            after = stands(job.with_changes(mend.changes), found.id, found.where)
            assert after is None or ORDER[after.weight] < ORDER[found.weight], mend


@pytest.mark.parametrize("case", CASES, ids=named)
def test_what_could_hurt_carries_its_caution(case: SystemCase) -> None:
    caution = standing(case).caution
    assert bool(caution) == (case.id in CAN_HURT)
    assert not caution or caution.endswith(f" {CAUTION_LOCAL}")


def test_no_mend_gets_round_a_guard() -> None:
    words = " ".join(each.mend for each in OURS.values()).lower()
    assert not any(each in words for each in ("bypass", "bridge", "jumper", "plug the", "hold in"))


def test_much_carbon_monoxide_is_told_of_before_oxygen_is_read() -> None:
    """Air only thins it: what was read is the least that it is without air."""
    found = on(fire(carbon_monoxide="900 ppm"))["co-in-flue-high"]
    assert found.weight is Weight.MUST_FIX and "as read" in found.what
    assert "co-in-flue-high" not in on(fire(carbon_monoxide="90 ppm"))


def test_weights_go_with_the_danger() -> None:
    low, high = (on(read(cold_pressure=each))["cold-gauge-off"] for each in ("11 psi", "15 psi"))
    assert (low.weight, high.weight) == (Weight.MUST_FIX, Weight.NOTE)
    some, much = (
        on(fire(oxygen="5 %", carbon_monoxide=each))["co-in-flue-high"] for each in ("300 ppm", "310 ppm")
    )
    assert (some.weight, much.weight) == (Weight.DECIDE, Weight.MUST_FIX)
    assert much.mends[0].words.startswith("Shut the boiler down")
    ill, bad, worst = (
        on(fire(room_carbon_monoxide=each))["room-co-found"].what for each in ("20 ppm", "40 ppm", "80 ppm")
    )
    assert "look for its source" in ill and "air the room" in bad and "everyone out" in worst


def test_an_electric_boiler_has_no_fire_to_measure() -> None:
    found = on(put("plant/boiler/kind", "electric"), put("plant/boiler/fuel", "electricity"))
    assert "fire-never-measured" not in found


def test_a_sealed_fire_is_not_held_to_the_draft_of_a_chimney() -> None:
    assert "flue-gas-spills" not in on(fire(draft="0.05 in. w.c."))
    assert "flue-gas-spills" in on(of_iron(), fire(draft="0.05 in. w.c."))


@pytest.mark.parametrize("name", ["ranch", "brick", "twenty", "metric"])
def test_a_house_without_a_system_is_left_in_peace(name: str) -> None:
    assert found_on(job_of(name)) == []


def test_nothing_is_said_of_a_start_that_has_not_been_made() -> None:
    job = job_of("lerch-cottage")
    assert job.system.readings.supply is None
    assert found_on(job) == []


def test_a_test_of_cold_piping_asks_for_no_fire() -> None:
    changes = [{"set": "readings", "to": {"test_pressure": "700 kPa", "precharge": "100 kPa"}}]
    assert found_on(job_of("lerch-cottage").with_changes(changes)) == []
    filled = [{"set": "readings", "to": {"cold_pressure": "100 kPa"}}]
    found = {each.id for each in found_on(job_of("lerch-cottage").with_changes(filled))}
    assert found == {"tank-charge-unread", "feed-valve-left-to-chance"}
