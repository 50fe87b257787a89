"""The reset line carries the load by the law that sized the emitters, and settings have their standing."""

from __future__ import annotations

import pytest

from heatledger.job.load import read_job
from heatledger.ledger.figures import Leaf
from heatledger.ledger.sources import Standing
from heatledger.ledger.units import UNITS
from heatledger.steps.controls import asked_at
from heatledger.steps.design import design
from heatledger.steps.emitter_chains import chains, outlet_chain, required_supply, supply_for_share
from tests.steps.heated import EXAMPLES, designed, job_of

FERROW, LERCH, TAMM = EXAMPLES


def in_f(value: float) -> float:
    return UNITS["°F"].from_si(float(value), True)


@pytest.mark.parametrize("name", [LERCH, TAMM])
def test_at_each_point_the_weakest_emitter_carries_its_share(name: str) -> None:
    """Where the design supply serves every room the line is the lowest supply of all emitters, by share."""
    made = designed(name)
    for point in made.controls.controls.reset.values():
        needed = supply_for_share(made.job, made.emitters, point.share)
        assert float(point.supply) == pytest.approx(float(needed), abs=0.06)


@pytest.mark.parametrize("name", EXAMPLES)
def test_the_setting_emitter_gives_just_its_share(name: str) -> None:
    made = designed(name)
    for point in made.controls.controls.reset.values():
        given = []
        for _, chain in chains(made.job):
            for id, passed in outlet_chain(made.job, made.emitters, chain, point.supply).items():
                found = made.emitters.emitters[id]
                whole = min(float(found.load), float(found.output))
                given.append(float(passed.output) / (whole * float(point.share)))
        if made.job.system.controls.least_supply is None:
            assert min(given) == pytest.approx(1.0, abs=1e-6)
        else:
            assert min(given) >= 1 - 1e-6


TWO_ROOMS = """format: 1
name: Two
invented: yes
units: metric
site: {outdoor: -12 °C, indoor: 20 °C, elevation: 10 m}
constructions:
  w: {kind: wall, u_value: 0.5 W/(m²·K)}
levels: {g: {ceiling_height: 2.5 m}}
rooms:
  a:
    level: g
    floor_area: 20 m2
    air: {changes: 0.5 ACH}
    surfaces: {s: {construction: w, area: 30 m2, beyond: outdoors}}
  b:
    level: g
    floor_area: 8 m2
    indoor: 24 °C
    air: {changes: 0.5 ACH}
    surfaces: {s: {construction: w, area: 15 m2, beyond: outdoors}}
emitters:
  ra: {room: a, kind: panel radiator, output: 2000 W, water: 5 L}
  rb: {room: b, kind: panel radiator, output: 1500 W, water: 5 L}
plant: {supply: 50 °C, drop: 10 K}
"""


@pytest.mark.parametrize("watts", [1900, 2000, 2100, 2300, 9000])
def test_a_warmer_room_sets_the_supply_when_it_is_mild(watts: int) -> None:
    made = design(read_job(TWO_ROOMS.replace("2000 W", f"{watts} W")))
    for point in made.controls.controls.reset.values():
        needed = supply_for_share(made.job, made.emitters, point.share)
        assert float(point.supply) == pytest.approx(float(needed), abs=1e-9)


@pytest.mark.parametrize("output", ["1600 W", "2200 W", "40000 W"])
def test_every_emitter_of_every_chain_is_asked(output: str) -> None:
    changes = [{"set": "rooms/bathroom/indoor", "to": "24 °C"},
               {"set": "emitters/bathroom-panel/output", "to": output}]  # fmt: skip
    made = designed(LERCH, *changes)
    for point in made.controls.controls.reset.values():
        if all(float(each.output) >= float(each.load) for each in made.emitters.emitters.values()):
            needed = supply_for_share(made.job, made.emitters, point.share)
            assert float(point.supply) == pytest.approx(float(needed), abs=1e-9)


def test_the_line_starts_at_the_chosen_supply_where_a_room_is_short() -> None:
    made = designed(FERROW)
    point = made.controls.controls.reset["design-day"]
    assert float(made.emitters.house.lowest_supply) > float(made.emitters.house.supply)
    assert float(point.supply) == pytest.approx(float(made.emitters.house.supply), abs=1e-6)
    assert float(point.share) == pytest.approx(1)


def test_a_supply_hotter_than_needed_is_not_kept() -> None:
    made = designed(LERCH, {"set": "plant/supply", "to": "70 °C"})
    point = made.controls.controls.reset["design-day"]
    own = [required_supply(made.job, made.emitters, id, point.share) for id in made.emitters.emitters]
    assert float(point.supply) == pytest.approx(max(float(each) for each in own), abs=1e-6)
    assert float(point.supply) < 273.15 + 60


@pytest.mark.parametrize("name", EXAMPLES)
def test_the_short_form_is_near(name: str) -> None:
    """The mean of supply and return in place of the exact law, one emitter in place of all."""
    made = designed(
        name, {"remove": "controls/least_supply"} if name != TAMM else {"set": "plant/drop", "to": "20 °F"}
    )
    for point in made.controls.controls.reset.values():
        assert float(point.by_mean) == pytest.approx(float(point.supply), abs=2.0)


def test_points_are_round_in_the_units_of_the_job() -> None:
    us, metric = (list(designed(each).controls.controls.reset.values()) for each in (FERROW, LERCH))
    assert [round(in_f(each.outdoor), 6) for each in us] == [-2, 10, 20, 30, 40, 50, 60]
    assert [round(float(each.outdoor) - 273.15, 6) for each in metric] == [-12, -5, 0, 5, 10, 15]
    assert [float(each.supply) for each in us] == sorted((float(each.supply) for each in us), reverse=True)


def test_heat_starts_at_the_base_of_the_bills_else_at_the_usual_one() -> None:
    told = designed(FERROW, {"set": "bills/last-winter/base", "to": "60 °F"}).controls.controls
    assert in_f(told.balance) == pytest.approx(60)
    assert list(told.reset)[-1] == "at-50-f"
    usual = designed(FERROW, {"remove": "bills"}).controls.controls.balance
    assert in_f(usual) == pytest.approx(65)
    assert isinstance(usual.origin, Leaf) and usual.origin.citation is not None
    assert usual.origin.citation.standing is Standing.PRACTICE


def test_the_line_of_the_job_stands_beside_the_need() -> None:
    made = designed(FERROW)
    for point in made.controls.controls.reset.values():
        assert point.line is not None and point.line_over is not None
        assert float(point.line_over) == pytest.approx(float(point.line) - float(point.supply))
        assert asked_at(point) is point.line
        back = float(point.line) - float(point.share) * float(made.boiler_room.plant.drop_design)
        assert float(point.return_) == pytest.approx(back)
    none = designed(FERROW, {"remove": "controls/mildest_supply"}).controls.controls
    assert all(each.line is None for each in none.reset.values())


@pytest.mark.parametrize("mildest", ["24 °C", "50 °C"])
def test_what_is_asked_for_is_paired_with_its_own_return(mildest: str) -> None:
    """A line over the need, and one under it, in mild weather: no return lies over what is asked for."""
    made = designed(LERCH, {"set": "controls/mildest_supply", "to": mildest})
    needs = []
    for point in made.controls.controls.reset.values():
        assert point.asked is point.line
        assert float(point.return_) <= float(point.asked)
        needs.append(float(point.asked) - float(point.supply))
    assert (needs[-1] > 0) == (mildest == "50 °C")


def test_without_a_line_the_need_is_asked_for() -> None:
    made = designed(LERCH, {"remove": "controls/mildest_supply"})
    for point in made.controls.controls.reset.values():
        assert point.asked is point.supply
        assert float(point.return_) <= float(point.asked)


@pytest.mark.parametrize("name", [FERROW, LERCH])
def test_the_design_day_has_one_return_on_every_sheet(name: str) -> None:
    """The line begins at the supply of the design, and its return is that of the boiler room."""
    made = designed(name, *([{"remove": "readings"}] if "readings" in job_of(name).raw else []))
    first, plant = made.controls.controls.reset["design-day"], made.boiler_room.plant
    assert float(first.asked) == pytest.approx(float(made.emitters.house.supply))
    assert float(first.return_) == pytest.approx(float(plant.return_design))
    assert float(made.startup.startup.return_) == pytest.approx(float(plant.return_design), abs=0.02)


def test_no_point_is_below_the_least_supply() -> None:
    made = designed(FERROW, {"set": "controls/least_supply", "to": "120 °F"}).controls.controls
    assert min(in_f(asked_at(each)) for each in made.reset.values()) == pytest.approx(120)
    assert made.least_supply is not None


@pytest.mark.parametrize("name", ["ranch", "metric"])
def test_a_house_without_emitters_waits_for_them(name: str) -> None:
    found = designed(name).controls.controls
    assert all(each.supply.is_missing for each in found.reset.values())
    assert not found.balance.is_missing and not found.shutdown.is_missing
    assert job_of(name).system.emitters == {}


def test_a_job_without_weather_has_one_point_that_waits() -> None:
    made = designed(FERROW, {"remove": "site/outdoor"})
    assert list(made.controls.controls.reset) == ["design-day"]
    assert made.controls.controls.reset["design-day"].supply.is_missing
