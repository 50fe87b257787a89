"""Claim: emitters hold what their tube, sections or radiation hold, and each kind of tank is sized for it."""

from __future__ import annotations

import pytest

from heatledger.steps.design import design
from tests.review.plant_house import plant_house
from tests.steps.test_boiler_room import gallons, psi, put, room

FIN_TUBE = {
    "room": "living", "kind": "fin-tube baseboard", "rating": "580 Btu/(h·ft)", "length": "10 ft",
    "heating_effect": "1.15",
}  # fmt: skip


def water_of_one(emitter, kind="home-run manifold", tube="copper-m-1"):
    """Gallons in one emitter that stands for that of the living room."""
    job = plant_house().with_changes([
        put("circuits/main/kind", kind), put("circuits/main/tube", tube),
        *({"remove": f"circuits/main/runs/{id}"} for id in ("kitchen", "bedroom", "small")),
        *({"remove": f"emitters/{id}"} for id in ("kitchen", "bedroom", "small", "living")),
        {"add": "emitters/living", "to": emitter}, {"remove": "circuits/main/runs/living/tube"},
    ])  # fmt: skip
    return gallons(design(job).boiler_room.plant.volumes["emitters"].volume)


def test_fin_tube_by_its_own_rating_holds_what_its_tube_holds():
    """10 ft of 1 in tube, bore 1.055 in, hold 0.454 gal; of 3/4 in tube, 0.517 square inches, 0.268 gal."""
    assert water_of_one(FIN_TUBE, "series loop") == pytest.approx(0.4541, abs=1e-3)
    assert water_of_one(FIN_TUBE) == pytest.approx(0.517 * 120 / 231, abs=1e-4)


def test_iron_holds_more_than_the_tube_it_hangs_on():
    iron = {**FIN_TUBE, "kind": "cast-iron baseboard"}
    assert water_of_one(iron, "series loop") == pytest.approx(3.6 * 120 / 231, abs=1e-4)
    by_row = {"room": "living", "catalog": "column-3-38", "sections": "9"}
    assert water_of_one(by_row) == pytest.approx(9 * 0.70)
    assert water_of_one({"room": "living", "kind": "cast-iron radiator", "edr": "36 ft2"}) == pytest.approx(
        36 * 0.14
    )
    assert water_of_one({**by_row, "water": "5 gal"}) == pytest.approx(5)


def test_while_parts_wait_the_known_water_asks_for_a_least_tank():
    whole = room()
    assert whole.water_known is whole.tank_least is None
    found = design(plant_house().with_changes([{"remove": "plant/boiler/water"}])).boiler_room.plant
    assert found.tank_volume.is_missing
    assert gallons(found.water_known) == pytest.approx(gallons(whole.water_volume) - 12)
    ratio = float(found.water_known) / float(whole.water_volume)
    assert float(found.tank_least) == pytest.approx(float(whole.tank_volume) * ratio)


def test_a_plain_steel_tank_by_hand():
    """Air of 14.69 psi: 14.69 / (12 + 14.69) less 14.69 / (25 + 14.69) is the share that takes water."""
    steel = [put("plant/tank/kind", "plain steel"), {"remove": "plant/tank/precharge"}]
    plain, own = room(*steel), room()
    air = psi(design(plant_house()).losses.site.pressure)
    share = air / (12 + air) - air / (25 + air)
    assert float(plain.acceptance_factor) == pytest.approx(share, rel=1e-4)
    assert float(plain.tank_by_density) == pytest.approx(float(plain.expanded) / share, rel=1e-4)
    assert float(plain.tank_by_line) / float(own.tank_by_line) == pytest.approx(
        float(own.acceptance_factor) / share, rel=1e-4
    )
    assert plain.precharge_pressure is None
    assert float(plain.tank_volume) > 1.5 * float(own.tank_volume)
    small = 4.4 * air / (12 + air) - gallons(plain.expanded)
    assert psi(plain.hot_pressure) == pytest.approx(air * 4.4 / small - air, rel=1e-4)


def test_a_plain_tank_of_the_size_needed_reaches_the_highest_pressure():
    steel = [put("plant/tank/kind", "plain steel"), {"remove": "plant/tank/precharge"}]
    need = gallons(room(*steel).tank_volume)
    plant = room(*steel, put("plant/tank/volume", f"{need:.6f} gal"), {"remove": "plant/tank/acceptance"})
    assert psi(plant.hot_pressure) == pytest.approx(psi(plant.highest_pressure), abs=0.7)
    assert psi(plant.hot_pressure) <= psi(plant.highest_pressure) + 1e-6
