"""The checklist and the sequence are those of the job at hand, and carry their cautions."""

from __future__ import annotations

import re

import pytest

from heatledger.ledger.figures import LedgerError
from heatledger.steps.checklist import CheckStep, checklist_of, purge_order
from heatledger.steps.said import Said, plain, say
from heatledger.steps.sequence import sequence_of
from heatledger.steps.targets import CAUTION_LOCAL
from tests.steps.heated import EXAMPLES, designed, spoken

FERROW, LERCH, TAMM = EXAMPLES
EVERY = (*EXAMPLES, "ranch", "metric")
DANGEROUS = (
    "pressure-test", "clean", "fill", "gas-supply", "electrical", "vent-and-air", "condensate", "relief",
    "low-water", "high-limit", "flame-guard", "first-fire", "combustion", "spillage", "alarms",
    "hot-pressure", "feed-valve",
)  # fmt: skip


def steps(name: str, *changes: dict[str, object]) -> dict[str, CheckStep]:
    return {each.id: each for each in checklist_of(designed(name, *changes)) if each.applies}


def of(fuel: str, kind: str) -> list[dict[str, object]]:
    return [{"set": "plant/boiler/fuel", "to": fuel}, {"set": "plant/boiler/kind", "to": kind}]


@pytest.mark.parametrize("name", EVERY)
def test_every_step_can_be_spoken(name: str) -> None:
    made = designed(name)
    listed = checklist_of(made)
    assert len({each.id for each in listed}) == len(listed)
    for each in listed:
        for said in (each.do, each.pass_):
            text = spoken(said, made.job)
            assert text.endswith(".") and text[0].isupper(), each.id
        assert not each.caution or each.caution.endswith(CAUTION_LOCAL)


@pytest.mark.parametrize("name", EVERY)
def test_no_number_is_written_that_is_not_a_figure(name: str) -> None:
    made = designed(name)
    words = [each.do.text + each.pass_.text + each.caution for each in checklist_of(made)]
    names = [each.name for each in made.job.system.circuits.values()]
    names += [each.name for each in (*made.job.system.zones.values(), *made.job.rooms.values())]
    for text in [*words, *(each.text for each in (*sequence_of(made), *purge_order(made)))]:
        for known in names:
            text = text.replace(known, "")
        assert not re.search(r"[0-9]", text), text


def test_what_can_hurt_carries_a_caution() -> None:
    listed = steps(FERROW)
    assert all(listed[each].caution for each in DANGEROUS)


def test_no_word_of_getting_round_a_guard() -> None:
    for name in EXAMPLES:
        made = designed(name)
        text = " ".join(
            [spoken(each, made.job) for each in sequence_of(made)]
            + [f"{each.do.text} {each.pass_.text}" for each in checklist_of(made)]
        ).lower()
        for word in ("bypass", "bridge", "jumper"):
            assert all("never" in part for part in text.split(".") if word in part)


def test_steps_go_with_the_boiler() -> None:
    gas, oil = steps(FERROW), steps(FERROW, *of("oil", "non-condensing"))
    electric, propane = (
        steps(FERROW, *of("electricity", "electric")),
        steps(FERROW, *of("propane", "condensing")),
    )
    assert {"gas-supply", "condensate", "input"} <= set(gas)
    assert "oil-supply" in oil and not {"gas-supply", "condensate", "input"} & set(oil)
    assert "smoke" in oil["combustion"].pass_.text and "smoke" not in gas["combustion"].pass_.text
    assert "draft hood" in steps(FERROW, *of("natural gas", "non-condensing"))["combustion"].pass_.text
    assert "elements" in electric
    assert not {"combustion", "spillage", "alarms", "flame-guard", "vent-and-air"} & set(electric)
    assert "gas-supply" in propane and "input" not in propane
    assert "glycol" not in gas


def test_the_order_is_that_of_the_work() -> None:
    order = [each.id for each in checklist_of(designed(FERROW))]
    wanted = [
        "papers", "pressure-test", "flush", "tank-charge", "fill", "purge", "gas-supply", "first-fire",
        "low-water", "high-limit", "combustion", "spillage", "boiler-drop", "reset", "zones", "hot-pressure",
        "handover", "first-service",
    ]  # fmt: skip
    assert [each for each in order if each in wanted] == wanted


def test_figures_of_the_job_stand_in_its_steps() -> None:
    made = designed(FERROW)
    listed, plant = {each.id: each for each in checklist_of(made)}, made.boiler_room.plant
    assert listed["fill"].do.figures == (plant.fill_pressure,)
    assert listed["tank-charge"].do.figures == (plant.precharge_pressure,)
    assert float(listed["pressure-test"].do.figures[0]) == pytest.approx(689_476, rel=1e-5)
    assert listed["high-limit"].pass_.figures == (made.job.system.plant.high_limit,)
    assert len(listed["reset"].pass_.figures) == 7
    assert {f"drop-{id}" for id in made.job.system.circuits} <= set(listed)


def test_the_boiler_drop_has_a_target_for_each_state() -> None:
    made = designed(FERROW)
    listed, due = {each.id: each for each in checklist_of(made)}, made.startup.startup
    assert listed["boiler-drop"].pass_.figures[:2] == (due.fire_drop, due.settled_drop)
    assert "full fire" in listed["boiler-drop"].pass_.text


def test_a_plain_steel_tank_is_drained_and_not_charged() -> None:
    step = steps(TAMM)["tank-charge"]
    assert step.do.figures == step.pass_.figures == ()
    assert "drain" in step.do.text
    assert "scald" in step.caution
    assert step.caution.endswith(CAUTION_LOCAL)


def test_a_house_without_a_system_has_papers_to_look_at() -> None:
    assert set(steps("ranch")) == {"papers", "handover"}
    assert sequence_of(designed("ranch")) == [] and purge_order(designed("ranch")) == []


def test_purging_goes_by_the_kind_of_circuit() -> None:
    made = designed(FERROW)
    said = [spoken(each, made.job) for each in purge_order(made)]
    assert said[0].startswith("Boiler and mains first")
    assert "one run at a time" in said[1] and "whole loop" in said[2]
    # 2 ft/s in 1/2 in PEX, in 3/4 in copper M, and in that same tube for the loop.
    assert "1.15 gpm" in said[1] and "3.22 gpm" in said[1] and "3.22 gpm" in said[2]
    assert len(said) == 4


def test_the_sequence_says_only_what_is_there() -> None:
    full = " ".join(spoken(each, designed(FERROW).job) for each in sequence_of(designed(FERROW)))
    for word in (
        "Call:",
        "zone valve",
        "end switch",
        "Target: the supply follows",
        "Warm weather",
        "Guards:",
    ):
        assert word in full
    bare = designed(
        FERROW,
        {"remove": "controls"},
        {"remove": "circuits/ground/zone_valve"},
        {"remove": "circuits/upper/zone_valve"},
    )
    text = " ".join(spoken(each, bare.job) for each in sequence_of(bare))
    for word in ("zone valve", "end switch", "Warm weather", "Night", "After the fire"):
        assert word not in text
    assert "not said yet" in text
    fixed = designed(FERROW, {"set": "controls/outdoor_reset", "to": "no"})
    assert any("in all weather" in each.text for each in sequence_of(fixed))


def test_a_missing_cutoff_is_said() -> None:
    text = " ".join(each.text for each in sequence_of(designed(TAMM)))
    assert "low-water cutoff is not shown" in text


def test_slots_and_figures_pair() -> None:
    with pytest.raises(LedgerError, match="slots"):
        say("Fill to {}.")
    with pytest.raises(LedgerError, match="slots"):
        Said("Fill.", (designed(FERROW).startup.startup.flow,))
    assert plain("Loop {a}") == "Loop (a)"
