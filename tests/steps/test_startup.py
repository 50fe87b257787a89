"""Startup targets follow from the state that was read, and nothing runs before the fire was measured."""

from __future__ import annotations

from typing import Any

import pytest

from heatledger.steps.controls import asked_at
from heatledger.steps.targets import oxygen_band
from tests.steps.heated import EXAMPLES, designed

FERROW, LERCH, TAMM = EXAMPLES
CLEAN = {
    "oxygen": "4 %", "carbon_monoxide": "30 ppm", "draft": "-0.03 in. w.c.", "spillage": "none",
    "room_carbon_monoxide": "0 ppm",
}  # fmt: skip


def burned(*other: dict[str, Any], **values: Any):
    fire = {"set": "readings/combustion", "to": {**CLEAN, **values}}
    return designed(FERROW, *other, fire).startup.startup


def test_what_emitters_give_is_what_the_water_loses() -> None:
    made = designed(FERROW)
    due, heat = made.startup.startup, float(made.emitters.house.water_heat)
    for id, each in due.circuits.items():
        own = sum(float(due.emitters[run].output) for run in made.job.system.circuits[id].runs)
        assert own == pytest.approx(float(each.output))
        assert float(each.flow) * heat * float(each.drop) == pytest.approx(float(each.output))
        assert float(due.supply) - float(each.drop) == pytest.approx(float(each.return_))
    assert sum(float(each.output) for each in due.circuits.values()) == pytest.approx(float(due.output))
    assert sum(float(each.flow) for each in due.circuits.values()) == pytest.approx(float(due.flow))
    assert float(due.supply) - float(due.return_) == pytest.approx(float(due.drop))


def test_a_loop_ends_with_the_water_of_its_last_emitter() -> None:
    made = designed(FERROW)
    due = made.startup.startup
    last = list(made.job.system.circuits["upper"].runs)[-1]
    assert float(due.emitters[last].outlet) == pytest.approx(float(due.circuits["upper"].return_), abs=1e-6)


def test_only_what_calls_has_targets_and_it_gets_more_water() -> None:
    both = designed(FERROW).startup.startup
    alone = designed(FERROW, {"set": "readings/calling", "to": "ground"}).startup.startup
    assert list(alone.circuits) == ["ground"]
    assert float(alone.circuits["ground"].flow) > float(both.circuits["ground"].flow)
    assert float(alone.drop) == pytest.approx(float(alone.circuits["ground"].drop))


def test_warmer_rooms_take_less() -> None:
    cool, warm = (
        designed(FERROW, {"set": "readings/room", "to": each}).startup.startup for each in ("60 °F", "75 °F")
    )
    assert float(cool.output) > float(warm.output)
    assert all(float(cool.emitters[id].output) > float(each.output) for id, each in warm.emitters.items())


def test_without_readings_the_design_day_is_meant() -> None:
    made = designed(LERCH)
    due = made.startup.startup
    assert due.outdoor is made.losses.site.outdoor and due.room is made.losses.site.indoor
    assert due.supply is due.supply_due
    assert set(due.circuits) == set(made.job.system.circuits)
    for each in (due.compared.supply_off, due.compared.drop, due.compared.cold_off, due.compared.rise):
        assert each is None


def test_a_supply_that_is_fixed_is_due_in_all_weather() -> None:
    made = designed(FERROW, {"set": "controls/outdoor_reset", "to": "no"})
    assert made.startup.startup.supply_due is made.emitters.house.supply


def test_due_supply_lies_between_the_points_of_the_table() -> None:
    made = designed(FERROW)
    points = made.controls.controls.reset
    mild, cold = (float(asked_at(points[each])) for each in ("at-20-f", "at-10-f"))
    assert mild < float(made.startup.startup.supply_due) < cold


def test_readings_are_held_to_their_targets() -> None:
    changes = [
        {"set": f"readings/{key}", "to": each}
        for key, each in (
            ("return", "124 °F"), ("flow", "3.5 gpm"), ("cold_pressure", "13 psi"),
            ("hot_pressure", "18 psi"), ("precharge", "12 psi"),
        )
    ]  # fmt: skip
    made = designed(FERROW, *changes)
    due = made.startup.startup
    found, read = due.compared, made.job.system.readings
    assert read.supply is not None and read.precharge is not None
    assert float(found.supply_off) == pytest.approx(float(read.supply) - float(due.supply_due))
    assert float(found.drop) == pytest.approx(16 / 1.8)
    assert float(found.drop_off) == pytest.approx(16 / 1.8 - float(due.drop))
    assert float(found.output) / 0.29307107 == pytest.approx(491 * 3.5 * 16, rel=5e-3)
    assert float(found.rise) == pytest.approx(5 * 6894.757, rel=1e-6)
    assert float(found.precharge_off) < 0 < float(found.hot_off)


def test_at_full_fire_the_drop_is_output_over_flow() -> None:
    made = designed(FERROW)
    due, plant = made.startup.startup, made.boiler_room.plant
    carried = float(due.flow) * float(made.emitters.house.water_heat)
    assert due.fire_drop is not None and plant.output is not None
    assert float(due.fire_drop) == pytest.approx(float(plant.output) / carried)
    assert float(due.settled_drop) == pytest.approx(float(due.drop))
    assert float(due.settled_drop) < float(due.fire_drop)


def test_a_fire_too_small_for_the_emitters_sets_the_settled_drop() -> None:
    due = designed(FERROW, {"set": "plant/boiler/output", "to": "15000 Btu/h"}).startup.startup
    assert due.fire_drop is not None
    assert float(due.settled_drop) == pytest.approx(float(due.fire_drop))
    assert float(due.settled_drop) < float(due.drop)


def test_without_a_boiler_there_is_no_fire() -> None:
    due = designed(FERROW, {"remove": "plant/boiler"}).startup.startup
    assert due.fire_drop is None
    assert due.settled_drop is due.drop


@pytest.mark.parametrize(
    ("back", "warming", "off"),
    [("120.5 °F", True, False), ("123 °F", True, False), ("126 °F", False, False), ("135 °F", False, True),
     ("105 °F", True, True)],
)  # fmt: skip
def test_a_drop_is_held_to_the_state_it_fits(back: str, warming: bool, off: bool) -> None:
    """Supply 140 °F: 14 °F when settled and 19.5 °F at full fire; what lies between may be either."""
    made = designed(FERROW, {"set": "readings/return", "to": back})
    due = made.startup.startup
    found = due.compared
    assert found.warming is warming
    assert found.drop_due is (due.fire_drop if warming else due.settled_drop)
    assert float(found.drop_off) == pytest.approx(float(found.drop) - float(found.drop_due))
    own_return = float(due.supply) - float(found.drop_due)
    read = made.job.system.readings.return_
    assert read is not None
    assert float(found.return_off) == pytest.approx(float(read) - own_return)
    assert ("drop-measured-off" in {each.id for each in made.findings}) is off


@pytest.mark.parametrize(
    "left_out", ["oxygen", "carbon_monoxide", "draft", "spillage", "room_carbon_monoxide"]
)
def test_it_may_not_run_until_everything_was_measured(left_out: str) -> None:
    fire = {key: each for key, each in CLEAN.items() if key != left_out}
    found = designed(FERROW, {"set": "readings/combustion", "to": fire}).startup.startup
    assert not found.may_run
    assert len(found.waits_for) == 1


def test_it_may_run_when_all_is_clean() -> None:
    assert burned().may_run
    assert burned().waits_for == ()


@pytest.mark.parametrize(
    ("entry", "value"),
    [("spillage", "some"), ("carbon_monoxide", "400 ppm"), ("room_carbon_monoxide", "10 ppm")],
)
def test_it_may_not_run_when_something_is_foul(entry: str, value: str) -> None:
    assert not burned(**{entry: value}).may_run


def test_plain_air_is_no_flue_gas() -> None:
    assert not burned(oxygen="20.9 %").may_run


def test_a_boiler_without_fire_waits_for_none() -> None:
    found = designed(
        FERROW,
        {"set": "plant/boiler/kind", "to": "electric"},
        {"set": "plant/boiler/fuel", "to": "electricity"},
    )
    assert found.startup.startup.may_run


@pytest.mark.parametrize("name", ["ranch", "metric", TAMM])
def test_a_job_without_circuits_says_what_it_can(name: str) -> None:
    found = designed(name).startup.startup
    assert found.circuits == {} and found.emitters == {}
    assert found.flow.is_missing and found.output.is_missing
    assert not found.may_run and found.waits_for


def test_without_a_curve_the_design_flow_stands() -> None:
    made = designed(FERROW, {"remove": "plant/circulators"})
    for id, each in made.startup.startup.circuits.items():
        assert float(each.flow) == pytest.approx(float(made.circuits.circuits[id].flow))


@pytest.mark.parametrize(
    ("fuel", "kind", "low", "high"),
    [
        ("natural gas", "condensing", 0.03, 0.06), ("propane", "condensing", 0.035, 0.06),
        ("natural gas", "non-condensing", 0.03, 0.10), ("oil", "non-condensing", 0.03, 0.06),
    ],
)  # fmt: skip
def test_oxygen_by_fuel_and_burner(fuel: str, kind: str, low: float, high: float) -> None:
    made = designed(
        FERROW, {"set": "plant/boiler/fuel", "to": fuel}, {"set": "plant/boiler/kind", "to": kind}
    )
    boiler = made.job.system.plant.boiler
    assert boiler is not None
    assert [float(each) for each in oxygen_band(boiler)] == pytest.approx([low, high])


def test_a_job_that_does_not_say_gets_no_supply_by_the_weather() -> None:
    mild = {"set": "readings/outdoor", "to": "45 °F"}
    silent = designed(FERROW, mild, {"remove": "controls/outdoor_reset"})
    assert silent.startup.startup.supply_due is silent.emitters.house.supply
    assert not [each for each in silent.findings if each.id == "supply-off-the-curve"]
    told = designed(FERROW, mild)
    assert float(told.startup.startup.supply_due) < float(told.emitters.house.supply)
