"""Claim: the boiler room follows from the loss, no margin stacked, and waits by name for what is lacking."""

from __future__ import annotations

from math import prod

import pytest

from heatledger.ledger.choosing import Choice
from heatledger.ledger.figures import waits_for
from heatledger.ledger.replay import replay
from heatledger.ledger.results import walk_results
from heatledger.ledger.units import UNITS
from heatledger.steps.design import design
from tests.review.plant_house import plant_house
from tests.steps.heated import designed, job_of

EXAMPLES = ("ferrow-house", "lerch-cottage", "tamm-street")


def room(*changes, text=""):
    job = plant_house(text)
    return design(job.with_changes(list(changes)) if changes else job).boiler_room.plant


def put(path, value):
    return {"set": path, "to": value}


def psi(figure):
    return UNITS["psi"].from_si(float(figure))


def gallons(figure):
    return UNITS["gal"].from_si(float(figure))


@pytest.mark.parametrize("name", EXAMPLES)
def test_the_factors_multiply_to_plate_over_loss(name):
    found = design(job_of(name))
    plant = found.boiler_room.plant
    product = prod(float(each.value) for each in plant.factors.values())
    assert float(plant.product) == pytest.approx(product)
    assert product == pytest.approx(float(plant.rated_output) / float(found.losses.house.loss))
    margins = [key for key, each in plant.factors.items() if each.margin and float(each.value) != 1]
    assert margins == ["selection"]


def test_height_takes_off_the_output_and_shows_in_the_factors():
    high = room(put("site/elevation", "5000 ft"))
    assert float(high.output) == pytest.approx(0.8 * float(high.rated_output))
    assert float(high.output_milder) == pytest.approx(0.88 * float(high.rated_output))
    assert float(high.factors["altitude"].value) == pytest.approx(1.25)


def test_thin_air_does_not_touch_an_electric_boiler():
    high = room(
        put("site/elevation", "5000 ft"), put("plant/boiler/fuel", "electricity"),
        put("plant/boiler/kind", "electric"),
    )  # fmt: skip
    assert high.altitude_factor is None
    assert float(high.output) == float(high.rated_output)
    assert float(high.factors["altitude"].value) == 1


def test_output_from_input_and_efficiency():
    job = plant_house().with_changes([{"remove": "plant/boiler/output"}])
    plant = design(job).boiler_room.plant
    assert UNITS["Btu/h"].from_si(float(plant.rated_output)) == pytest.approx(24_000 * 0.89)


def test_pressures_by_hand():
    """14 ft of water of 50 °F is 6.07 psi; 5 psi over it; 12 psi filled leaves 5.93 psi at the top."""
    plant = room()
    assert psi(plant.static_pressure) == pytest.approx(14 / 2.307, abs=0.01)
    assert psi(plant.needed_fill) == pytest.approx(psi(plant.static_pressure) + 5)
    assert (psi(plant.fill_pressure), psi(plant.precharge_pressure)) == pytest.approx((12, 12))
    assert psi(plant.top_cold) == pytest.approx(12 - psi(plant.static_pressure))
    assert psi(plant.highest_pressure) == pytest.approx(25)


def test_without_a_fill_it_is_what_the_height_asks():
    plant = design(plant_house().with_changes([{"remove": "plant/fill"}])).boiler_room.plant
    assert float(plant.fill_pressure) == float(plant.needed_fill)


def test_the_tank_by_both_methods_and_the_larger_governs():
    plant = room()
    grown = gallons(plant.water_volume) * float(plant.expansion_share)
    assert gallons(plant.expanded) == pytest.approx(grown)
    assert gallons(plant.tank_by_density) == pytest.approx(grown / float(plant.acceptance_factor))
    assert float(plant.tank_volume) == max(float(plant.tank_by_density), float(plant.tank_by_line))
    assert isinstance(plant.tank_volume.origin, Choice)


def test_below_the_range_of_the_line_it_is_not_shown():
    plant = room(put("plant/high_limit", "155 °F"))
    assert plant.expansion_by_line is None
    assert plant.tank_by_line is None
    assert float(plant.tank_volume) == float(plant.tank_by_density)


def test_a_tank_of_the_size_needed_reaches_the_highest_pressure_and_no_more():
    sized = design(plant_house().with_changes([{"remove": "plant/tank"}, put("plant/high_limit", "155 °F")]))
    plant = sized.boiler_room.plant
    assert psi(plant.hot_pressure) == pytest.approx(psi(plant.highest_pressure))
    assert psi(room().hot_pressure) < 25


def test_air_of_the_site_counts_in_the_tank():
    assert float(room(put("site/elevation", "7000 ft")).acceptance_factor) > float(room().acceptance_factor)


def test_no_tank_fits_a_fill_over_the_highest_pressure():
    plant = room(put("plant/fill", "26 psi"))
    assert plant.tank_volume.is_missing
    assert [each.origin.path for each in waits_for(plant.tank_by_density)] == ["plant/fill"]


def test_the_water_is_counted_part_by_part():
    plant = room()
    assert set(plant.volumes) == {"boiler", "tubes-main", "emitters"}
    assert gallons(plant.volumes["emitters"].volume) == pytest.approx(8)
    assert gallons(plant.volumes["boiler"].volume) == pytest.approx(12)
    total = sum(gallons(each.volume) for each in plant.volumes.values())
    assert gallons(plant.water_volume) == pytest.approx(total)


def test_water_that_nobody_gave_is_wanted_by_name():
    plant = design(plant_house().with_changes([{"remove": "plant/boiler/water"}])).boiler_room.plant
    assert [each.origin.path for each in waits_for(plant.water_volume)] == ["plant/boiler/water"]


def test_mains_through_the_basement_load_the_boiler_and_not_the_rooms():
    before, after = (
        design(job_of("brick").with_changes([
            put("plant/supply", "180 °F"), put("plant/mains/tube", "copper-m-1"),
            put("plant/mains/length", "40 ft"), *more,
        ]))
        for more in ((), (put("plant/mains/through", "unheated/basement"),))
    )  # fmt: skip
    assert float(before.boiler_room.plant.mains_loss) == 0
    lost = float(after.boiler_room.plant.mains_loss)
    assert lost > 300
    assert float(after.losses.house.loss) == float(before.losses.house.loss)
    load = float(after.boiler_room.plant.load)
    assert load == pytest.approx(float(after.losses.house.loss) + lost)
    assert float(after.boiler_room.plant.factors["mains"].value) > 1
    wrapped = design(after.job.with_changes([put("plant/mains/insulation", "3/4 in")]))
    assert float(wrapped.boiler_room.plant.mains_loss) < lost / 2


def test_mains_through_the_space_of_a_neighbor_lose_to_its_temperature():
    job = job_of("brick").with_changes([
        {"add": "neighbors/crawl", "to": {"name": "Crawlspace", "temperature": "45 °F"}},
        put("plant/supply", "180 °F"), put("plant/mains/tube", "copper-m-1"),
        put("plant/mains/length", "40 ft"), put("plant/mains/through", "neighbors/crawl"),
    ])  # fmt: skip
    cool = design(job)
    assert cool.boiler_room.plant.mains_loss.inputs
    warm = design(job.with_changes([put("neighbors/crawl/temperature", "65 °F")]))
    lost = [float(each.boiler_room.plant.mains_loss) for each in (cool, warm)]
    mean = UNITS["°F"].from_si(float(cool.emitters.house.mean_water), True)
    assert lost[0] / lost[1] == pytest.approx((mean - 45) / (mean - 65))


CURVE = {
    "p1": {
        "shutoff": "20 ft", "middle_flow": "10 gpm", "middle_head": "14 ft", "high_flow": "20 gpm",
        "high_head": "2 ft",
    }
}  # fmt: skip


def test_the_return_is_that_of_the_flow_that_results():
    by_design, running = room(), room({"add": "plant/circulators", "to": CURVE})
    assert float(by_design.drop_design) == pytest.approx(20 / 1.8)
    found = design(plant_house().with_changes([{"add": "plant/circulators", "to": CURVE}]))
    own = found.circuits.circuits["main"]
    assert running.drop_design is not None and own.actual_drop is not None
    assert float(running.drop_design) == pytest.approx(float(own.actual_drop))
    assert float(running.return_design) == pytest.approx(float(own.actual_return), abs=0.02)
    assert float(running.return_design) > float(by_design.return_design)
    assert float(running.efficiency) < float(by_design.efficiency)


def test_circuits_together_mix_their_returns():
    found = design(job_of("ferrow-house"))
    each = found.circuits.circuits.values()
    carried = float(found.emitters.house.water_heat)
    drop = (
        sum(float(one.actual_output) for one in each) / sum(float(one.actual_flow) for one in each) / carried
    )
    assert float(found.boiler_room.plant.drop_design) == pytest.approx(drop)


@pytest.mark.parametrize("name", ["ranch", "flat", "metric"])
def test_a_house_without_a_plant_says_what_follows_from_its_loss(name):
    found = design(job_of(name))
    plant = found.boiler_room.plant
    assert float(plant.load) == pytest.approx(float(found.losses.house.loss))
    assert float(plant.largest_output) == pytest.approx(1.4 * float(plant.load))
    assert plant.output is plant.ratio is plant.input is None
    assert plant.tank_volume.is_missing
    assert float(plant.product) == 1


def test_a_house_without_rooms_waits_for_them():
    job = job_of("tiny").with_changes([{"remove": "rooms/cabin"}])
    plant = design(job).boiler_room.plant
    assert plant.load.is_missing
    assert {each.origin.path for each in waits_for(plant.load)} == {"rooms"}


def test_relief_is_held_to_the_output_else_the_input():
    assert UNITS["Btu/h"].from_si(float(room().relief_needed)) == pytest.approx(21_300)
    job = plant_house().with_changes(
        [{"remove": "plant/boiler/output"}, {"remove": "plant/boiler/efficiency"}]
    )
    assert UNITS["Btu/h"].from_si(float(design(job).boiler_room.plant.relief_needed)) == pytest.approx(24_000)


def test_efficiency_is_read_at_the_return():
    assert float(room().efficiency) == pytest.approx(0.889)
    assert room(put("plant/boiler/kind", "non-condensing")).efficiency is None
    assert room(put("plant/supply", "190 °F")).efficiency is None


@pytest.mark.parametrize("name", EXAMPLES)
def test_every_figure_stands_at_its_path(name):
    found = design(job_of(name))
    assert set(dict(walk_results(found.boiler_room))) <= set(found.results)


def test_the_hottest_water_is_never_cooler_than_the_supply() -> None:
    low, high = (
        designed("ferrow-house", {"set": "plant/high_limit", "to": each}) for each in ("140 °F", "200 °F")
    )
    assert float(low["plant/hottest"]) == float(low["house/supply"])
    assert float(high["plant/hottest"]) == float(high.job.system.plant.high_limit)
    assert float(low["plant/hottest"]) < float(high["plant/hottest"])


def test_efficiency_reads_other_rows_when_the_return_moves() -> None:
    made = designed("lerch-cottage")
    supply = made.figures["plant/supply"]
    for each in ("40 °C", "60 °C", "70 °C"):
        anew = designed("lerch-cottage", {"set": "plant/supply", "to": each})
        moved = float(anew.figures["plant/supply"])
        back, efficiency = replay([made["plant/return_design"], made["plant/efficiency"]], {supply: moved})
        assert float(back) == pytest.approx(float(anew["plant/return_design"]), rel=1e-12)
        assert float(efficiency) == pytest.approx(float(anew["plant/efficiency"]), rel=1e-12)
