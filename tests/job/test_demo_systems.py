"""Claim: the heating systems of the demo jobs are what their comments say, and every one is invented."""

from pathlib import Path

import pytest

from heatledger.job.load import load_job
from heatledger.job.system_model import FIN_TUBE, HOME_RUN, IRON_RADIATOR, PANEL, SERIES
from heatledger.ledger.sources import INVENTED
from heatledger.ledger.units import UNITS
from heatledger.steps.design import design

EXAMPLES = Path(__file__).parents[2] / "src" / "heatledger" / "examples"
LOSS = {"ferrow-house": 10604.39, "lerch-cottage": 4228.22, "tamm-street": 14960.88}


def in_feet(figure):
    return UNITS["ft"].from_si(float(figure))


def btu_h(figure):
    return UNITS["Btu/h"].from_si(float(figure))


@pytest.mark.parametrize("name", LOSS)
def test_every_demo_is_invented_and_keeps_its_loss(name):
    job = load_job(EXAMPLES / f"{name}.yaml")
    assert job.invented
    assert "invented" in (EXAMPLES / f"{name}.yaml").read_text("utf-8").splitlines()[0]
    assert float(design(job).losses.house.loss) == pytest.approx(LOSS[name], abs=0.01)


def test_the_baseboard_of_ferrow_house():
    job = load_job(EXAMPLES / "ferrow-house.yaml")
    system = job.system
    assert [each.room for each in system.emitters.values()] == list(job.rooms)
    for each in system.emitters.values():
        free = job.rooms[each.room].free_wall
        assert each.kind == FIN_TUBE
        assert each.rating.origin.citation.standing is INVENTED
        assert in_feet(each.length) <= in_feet(free)
    assert sum(in_feet(each.length) for each in system.emitters.values()) == pytest.approx(122.5)


def test_the_circuits_of_ferrow_house():
    system = load_job(EXAMPLES / "ferrow-house.yaml").system
    ground, upper = system.circuits["ground"], system.circuits["upper"]
    assert (ground.kind, upper.kind) == (HOME_RUN, SERIES)
    assert {each.tube.key for each in ground.runs.values()} == {"pex-1/2"}
    assert {each.tube.key for each in upper.runs.values()} == {"copper-m-3/4"}
    assert set(ground.runs) | set(upper.runs) == set(system.emitters)
    equivalent = sum(
        float(each.count) * float(each.equivalent_length) for each in system.plant.mains.fittings.values()
    )
    assert in_feet(system.plant.mains.length) + in_feet(equivalent) == pytest.approx(54)


def test_the_kitchen_of_ferrow_house_is_short_and_longer_baseboard_mends_it():
    job = load_job(EXAMPLES / "ferrow-house.yaml")
    before, after = design(job), design(job.with_what_ifs("longer-kitchen"))
    short = {name: btu_h(room.over) for name, room in before.emitters.rooms.items() if float(room.over) < 0}
    assert list(short) == ["kitchen"]
    assert short["kitchen"] == pytest.approx(-958, abs=15)
    assert float(after.emitters.rooms["kitchen"].over) > 0
    cooler = design(job.with_what_ifs("cooler-water"))
    assert float(cooler.emitters.rooms["dining"].over) < 0


def test_the_circulator_of_ferrow_house_serves_both_circuits():
    for name, circuit in design(load_job(EXAMPLES / "ferrow-house.yaml")).circuits.circuits.items():
        assert float(circuit.actual_flow) >= float(circuit.flow), name


def test_the_panels_of_lerch_cottage_carry_it_with_cool_water():
    job = load_job(EXAMPLES / "lerch-cottage.yaml")
    house = design(job)
    assert {each.kind for each in job.system.emitters.values()} == {PANEL}
    assert {each.tube.key for each in job.system.circuits["manifold"].runs.values()} == {"pex-16x2"}
    assert all(float(each.over) > 0 for each in house.emitters.rooms.values())
    assert float(house.emitters.house.lowest_supply) < float(job.system.plant.supply)
    manifold = house.circuits.circuits["manifold"]
    assert 1.0 <= float(manifold.actual_flow) / float(manifold.flow) < 1.2


def test_tamm_street_is_one_space_with_ten_radiators():
    job = load_job(EXAMPLES / "tamm-street.yaml")
    emitters = job.system.emitters.values()
    assert list(job.rooms) == ["house"]
    assert len(emitters) == 10
    assert {each.kind for each in emitters} == {IRON_RADIATOR}
    edr = sum(float(each.sections) * UNITS["ft²"].from_si(float(each.section_edr)) for each in emitters)
    assert edr == pytest.approx(423.67, abs=0.01)
    assert not job.system.circuits


def test_tamm_street_by_bills_and_by_its_old_boiler():
    house = design(load_job(EXAMPLES / "tamm-street.yaml"))
    # 1,090 gal × 138,500 Btu × 74 % over 24 h × 6,750 °F·day, at 68 °F.
    by_bills = 1090 * 138500 * 0.74 / (24 * 6750) * 68
    assert btu_h(house.bills.bills["winter"].like_for_like) == pytest.approx(by_bills, rel=1e-3)
    assert float(house.boiler_room.plant.ratio) == pytest.approx(
        140000 / btu_h(house.losses.house.loss), rel=1e-3
    )
    # 51,049 Btu/h of 423.67 × 240: mean water 70 + 145 × share^(1/1.3), and half of 20 °F above.
    supply = 70 + 145 * (btu_h(house.losses.house.loss) / (423.67 * 240)) ** (1 / 1.3) + 10
    assert UNITS["°F"].from_si(float(house.emitters.house.lowest_supply), True) == pytest.approx(
        supply, abs=1.0
    )
