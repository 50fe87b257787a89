"""What life hangs on stands while it is so, whatever is decided on it."""

from __future__ import annotations

import pytest

from heatledger.job.model import Job
from heatledger.ledger.findings import Finding, Weight
from heatledger.steps.design import design
from heatledger.steps.review import KINDS, review
from tests.review.plant_house import plant_house

BY = "because: looked at it, by: J. Ondry"
FIRE = "\nreadings: {{by: J. Ondry, supply: 140 °F, combustion: {{{}}}}}\n"
POISON = FIRE.format("oxygen: 8 %, carbon_monoxide: 900 ppm, room_carbon_monoxide: 60 ppm, spillage: some")
SOME = FIRE.format("oxygen: 5 %, carbon_monoxide: 100 ppm")
NEVER_SETTLED = {
    "flue-gas-spills", "room-co-found", "co-in-flue-high", "fire-never-measured", "relief-set-too-high",
    "relief-too-small", "hot-pressure-near-relief", "test-pressure-low", "hot-gauge-high",
    "no-low-water-cutoff", "no-manual-limit",
}  # fmt: skip


def on(job: Job) -> dict[str, Finding]:
    return {each.id: each for each in review(design(job))[0]}


def deciding(id: str, is_: str = "it is fine") -> str:
    return f"\ndecisions: {{{id}: {{is: {is_}, {BY}}}}}\n"


def test_the_kinds_that_no_words_settle() -> None:
    assert {id for id, each in KINDS.items() if not each.settled_by_words} == NEVER_SETTLED


@pytest.mark.parametrize("id", ["flue-gas-spills", "room-co-found", "co-in-flue-high"])
def test_a_reading_of_poison_stands_and_the_answer_is_shown(id: str) -> None:
    found = on(plant_house(POISON + deciding(id)))[id]
    assert (found.weight, found.decided) == (Weight.MUST_FIX, None)
    assert "Answered by J. Ondry: it is fine. It stands" in found.what
    assert "Answered" not in on(plant_house(POISON))[id].what


def test_a_lighter_reading_is_settled_by_a_name() -> None:
    found = on(plant_house(SOME + deciding("co-in-flue-high")))["co-in-flue-high"]
    assert found.weight is Weight.DECIDE
    assert found.decided is not None


@pytest.mark.parametrize(
    ("path", "value", "id"),
    [
        ("plant/boiler/relief", "40 psi", "relief-set-too-high"),
        ("plant/boiler/relief_capacity", "9000 Btu/h", "relief-too-small"),
        ("plant/tank/volume", "2.4 gal", "hot-pressure-near-relief"),
        ("plant/high_limit", "260 °F", "no-manual-limit"),
    ],
)
def test_a_fact_of_the_plant_stands_until_it_is_another(path: str, value: str, id: str) -> None:
    found = on(plant_house(deciding(id)).with_changes([{"set": path, "to": value}]))[id]
    assert found.weight is Weight.MUST_FIX
    assert found.decided is None
    assert "stands" in found.what


def test_a_low_water_cutoff_is_answered_on_a_small_boiler_only() -> None:
    none = {"set": "plant/low_water_cutoff", "to": "no"}
    large = {"set": "plant/boiler/input", "to": "400001 Btu/h"}
    job = plant_house(deciding("no-low-water-cutoff"))
    assert on(job.with_changes([none]))["no-low-water-cutoff"].decided is not None
    assert on(job.with_changes([none, large]))["no-low-water-cutoff"].decided is None


@pytest.mark.parametrize(
    ("said", "settles"),
    [("fine", False), ("yes", False), ("alarms on both stories", True), ("one in the Kitchen", True)],
)  # fmt: skip
def test_an_answer_on_alarms_says_where_they_are(said: str, settles: bool) -> None:
    found = on(plant_house(deciding("no-co-alarm", f"'{said}'")))["no-co-alarm"]
    assert (found.decided is not None) is settles
    assert ("until the answer says where" in found.what) is not settles


def test_a_fill_that_opens_the_relief_valve_is_to_be_mended() -> None:
    # As a height typed ten times too large asks for.
    found = on(plant_house().with_changes([{"set": "plant/fill", "to": "87 psi"}]))["fill-near-relief"]
    assert found.weight is Weight.MUST_FIX
    assert "Do not fill to it" in found.what
    near = on(plant_house().with_changes([{"set": "plant/fill", "to": "19.2 psi"}]))["fill-near-relief"]
    assert near.weight is Weight.DECIDE
