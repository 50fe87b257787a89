"""A boiler may be left running only when its fire, its draft and its room were measured and are clean."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from heatledger.ledger.findings import Weight
from heatledger.steps import targets
from heatledger.steps.design import Design
from heatledger.steps.may_run import waits_of
from heatledger.steps.review import fire_findings
from heatledger.steps.review.kinds import KINDS
from tests.steps.heated import designed, job_of

FERROW = "ferrow-house"
CLEAN = {
    "oxygen": "7 %", "carbon_monoxide": "30 ppm", "draft": "-0.03 in. w.c.", "spillage": "none",
    "room_carbon_monoxide": "0 ppm",
}  # fmt: skip
OF_FIRE = {id for id, each in KINDS.items() if each.check.__module__ == fire_findings.__name__}


def changes_of(fire: dict[str, str], kind: str, fuel: str, limits: dict[str, str]) -> list[dict[str, Any]]:
    return [
        {"set": "plant/boiler/kind", "to": kind},
        {"set": "plant/boiler/fuel", "to": fuel},
        {"set": "readings/combustion", "to": fire},
        *({"add": f"limits/{key}", "to": each} for key, each in limits.items()),
    ]


def lit(limits: dict[str, str] | None = None, kind: str = "non-condensing", **fire: str) -> tuple[str, ...]:
    changes = changes_of({**CLEAN, **fire}, kind, "natural gas", limits or {})
    return waits_of(job_of(FERROW).with_changes(changes))


def open_of_the_fire(made: Design) -> list[str]:
    return [
        each.id
        for each in made.findings
        if each.id in OF_FIRE and each.weight is Weight.MUST_FIX and each.decided is None
    ]


def test_a_clean_fire_waits_for_nothing() -> None:
    assert lit() == ()


@pytest.mark.parametrize(
    ("reading", "value", "words"),
    [
        ("draft", "0 in. w.c.", "draft"),
        ("draft", "0.05 in. w.c.", "draft"),
        ("draft", "-0.2 in. w.c.", "draft"),
        ("oxygen", "0.2 %", "oxygen"),
        ("oxygen", "14 %", "oxygen"),
        ("carbon_monoxide", "150 ppm", "below its target"),
        ("carbon_monoxide", "900 ppm", "so much carbon monoxide"),
        ("room_carbon_monoxide", "10 ppm", "room without"),
        ("spillage", "some", "spilled"),
    ],
)
def test_each_foul_reading_keeps_it_off_and_says_why(reading: str, value: str, words: str) -> None:
    waits = lit(**{reading: value})
    assert any(words in each for each in waits), waits


def test_a_sealed_boiler_is_not_held_to_the_draft_of_a_chimney() -> None:
    assert lit(kind="condensing", oxygen="4 %", draft="0.05 in. w.c.") == ()


def test_a_stricter_limit_of_the_job_counts_and_a_laxer_one_does_not() -> None:
    assert lit({"co-in-flue-high": "20 ppm"})
    assert lit({"room-co-found": "500 ppm"}, room_carbon_monoxide="20 ppm")
    assert lit({"flue-gas-spills": "0.5 in. w.c."}, draft="0 in. w.c.")


def test_poison_in_the_room_counts_without_a_fire() -> None:
    changes = changes_of({**CLEAN, "room_carbon_monoxide": "80 ppm"}, "electric", "electricity", {})
    assert waits_of(job_of(FERROW).with_changes(changes))


def test_targets_and_findings_have_the_same_limits() -> None:
    boiler = job_of(FERROW).with_changes(
        changes_of(CLEAN, "non-condensing", "natural gas", {})
    ).system.plant.boiler  # fmt: skip
    assert boiler is not None
    usual = {
        "co-in-flue-high": (targets.flue_carbon_monoxide(), targets.flue_carbon_monoxide_stop()),
        "room-co-found": (targets.room_carbon_monoxide(), targets.room_carbon_monoxide_stop()),
        "flue-gas-spills": (targets.draft_band()[0],),
        "oxygen-out-of-band": (targets.oxygen_band(boiler)[0], targets.oxygen_most()),
    }
    for id, figures in usual.items():
        typed = [each.origin.typed for each in figures]
        assert [each.text for each in KINDS[id].limits][: len(typed)] == typed


def some(texts: st.SearchStrategy[str]) -> st.SearchStrategy[str]:
    return st.just("") | texts


FIRES = st.fixed_dictionaries(
    {
        "oxygen": some(st.integers(0, 209).map(lambda n: f"{n / 10} %")),
        "carbon_monoxide": some(st.integers(0, 600).map(lambda n: f"{n} ppm")),
        "draft": some(st.integers(-8, 8).map(lambda n: f"{n / 100} in. w.c.")),
        "room_carbon_monoxide": some(st.integers(0, 90).map(lambda n: f"{n} ppm")),
        "spillage": st.sampled_from(["", "none", "none", "none", "some"]),
    }
)
LIMITS = st.fixed_dictionaries(
    {},
    optional={
        "co-in-flue-high-stop": st.integers(1, 900).map(lambda n: f"{n} ppm"),
        "room-co-found": st.integers(1, 60).map(lambda n: f"{n} ppm"),
        "flue-gas-spills": st.integers(-6, 3).map(lambda n: f"{n / 100} in. w.c."),
    },
)


@settings(max_examples=60, deadline=None)
@given(
    fire=FIRES,
    limits=LIMITS,
    kind=st.sampled_from(["condensing", "non-condensing"]),
    fuel=st.sampled_from(["natural gas", "propane", "oil"]),
)
def test_an_open_must_fix_of_the_fire_keeps_the_boiler_off(
    fire: dict[str, str], limits: dict[str, str], kind: str, fuel: str
) -> None:
    read = {key: each for key, each in fire.items() if each}
    made = designed(FERROW, *changes_of(read, kind, fuel, limits))
    if open_of_the_fire(made):
        assert not made.startup.startup.may_run
        assert made.startup.startup.waits_for
