"""What findings say and offer: one figure for one limit, the reader's units, nothing that is not known."""

from __future__ import annotations

import re

import pytest

from heatledger.job.load import read_job
from heatledger.job.model import Job
from heatledger.ledger.dimensions import HEAD, HEAT_RATE
from heatledger.ledger.findings import Finding, Weight
from heatledger.ledger.presets import US
from heatledger.ledger.show import show
from heatledger.steps.design import design
from heatledger.steps.review import KINDS, review
from heatledger.steps.review.emitter_look import share_that_results
from heatledger.steps.review.house import House
from heatledger.steps.review.kinds import Look
from tests.review.emitter_cases import length, to
from tests.review.emitter_house import emitter_house
from tests.review.piping_cases import job_with, plain, pump, second
from tests.review.plant_cases import gone, size
from tests.review.plant_house import PLANT, plant_house
from tests.review.system_cases import of_iron, put
from tests.steps.heated import job_of

INCH_POUND = re.compile(r"\d ?(°F|ft|in\.|psi|gal|gpm|lb|Btu/h)(?![\w·/])")
METRIC = re.compile(r"\d ?(°C|K|m|cm|mm|kPa|L|L/s|m/s|kg|W|kW|W/m²|W/\(m[²·]·?K\))(?![\w·])")


def found_on(job: Job) -> dict[str, Finding]:
    return {each.id: each for each in review(design(job))[0]}


def only(job: Job, id: str) -> list[Finding]:
    said = Look(House(design(job)), KINDS[id]).run()
    return [each for each in said if isinstance(each, Finding)]


def must(job: Job) -> set[str]:
    return {each.id for each in review(design(job))[0] if each.weight is Weight.MUST_FIX}


def test_a_boiler_that_must_stay_hot_follows_the_weather_over_a_floor_only() -> None:
    job = job_of("ferrow-house").with_changes([*of_iron(), *put("controls/outdoor_reset", "no"),
                                               *put("plant/supply", "180 °F")])  # fmt: skip
    (found,) = only(job, "no-reset")
    assert "keeps the return at 130 °F" in found.what
    assert any("never ask for less" in each.words for each in found.mends)
    assert any("Mix the water" in each.words for each in found.mends)
    for mend in found.mends:
        if mend.changes:
            assert must(job.with_changes(mend.changes)) <= must(job)
    bare = job.with_changes([{"set": "controls/outdoor_reset", "to": "yes"}, *gone("controls/least_supply")])
    assert "reset-under-boiler-limit" in must(bare)


def test_a_condensing_boiler_is_held_to_what_the_emitters_need() -> None:
    job = job_of("ferrow-house").with_changes(put("controls/outdoor_reset", "no"))
    (found,) = only(job, "no-reset")
    assert "return" not in found.what
    assert found.mends[0].changes == ({"set": "controls/outdoor_reset", "to": "yes"},)


def test_the_largest_boiler_is_the_same_figure_on_every_sheet() -> None:
    job = plant_house().with_changes(size("30000 Btu/h"))
    largest = design(job).boiler_room.plant.largest_output
    found = found_on(job)["boiler-too-big"]
    assert show(largest, US) in found.mends[0].words
    typed = float(str(found.mends[0].changes[0]["to"]).split()[0])
    assert 0 <= shown_watts(float(largest)) - typed < 1


def shown_watts(watts: float) -> float:
    return US.shown(HEAT_RATE).unit.from_si(watts)


def test_hotter_water_is_offered_at_the_figure_of_the_room() -> None:
    job = emitter_house(length("a-b", 9))
    lowest = design(job).emitters.rooms["a"].lowest_supply
    found = next(each for each in only(job, "room-left-cold") if each.where == "rooms/a")
    hotter = next(each for each in found.mends if "Run the water" in each.words)
    assert show(lowest, US) in hotter.words
    assert hotter.changes[0]["to"] == show(lowest, US)


def test_the_flow_that_results_weighs_a_cold_room() -> None:
    """The loop is drawn for far less water than its circulator moves."""
    slow = [*to("circuits/loop/drop", "40 °F"), *to("emitters/c-b/length", "9 ft")]
    job = plain().with_changes([*slow, *pump(20, 16, 6, 20)])
    look = Look(House(design(job)), KINDS["room-left-cold"])
    cold = {each.where: each for each in only(job, "room-left-cold")}
    assert cold
    for where, each in cold.items():
        really = share_that_results(look, where.removeprefix("rooms/"))
        assert really is not None
        assert really > float(look.design.emitters.rooms[where.removeprefix("rooms/")].given_share)
        assert f"{look.say(really, look.kind.limits[0].dimension)} of its need" in each.what
        assert (each.weight is Weight.MUST_FIX) is (really < look.limit_at(1))


def test_circulators_in_a_duel_are_read_at_the_flow_that_results() -> None:
    (found,) = only(job_with(second(20)), "pumps-in-duel")
    done = design(job_with(second(20)))
    plant = done.circuits.plant
    by_design = sum(
        float(each) for each in (plant.mains and plant.mains.head, plant.boiler_head) if each is not None
    )
    assert show(by_design, US, HEAD) not in found.what
    assert found.weight is Weight.MUST_FIX


def test_rooms_that_ask_for_the_same_are_told_together() -> None:
    """Two panels of one share of their loads, too small by far, on runs of their own."""
    alike = [*to("emitters/d-p/output", "1150 W"), *to("emitters/e-p/output", "690 W")]
    (found,) = only(emitter_house(alike), "one-room-sets-supply")
    assert found.what.startswith("D and E ask for")
    assert len(found.mends[0].changes) == 2
    apart = [*to("emitters/d-p/output", "1150 W"), *to("emitters/e-p/output", "850 W")]
    assert all(
        not each.what.startswith("D and") for each in only(emitter_house(apart), "one-room-sets-supply")
    )


def test_one_kind_on_many_emitters_is_said_once() -> None:
    changes = [change for id in ("b-b", "c-b", "d-p", "e-p", "f-i")
               for change in to(f"emitters/{id}/rated_air", "25 °C")]  # fmt: skip
    several = emitter_house([*changes, *to("circuits/loop/flow", "0.2 gpm")])
    said = [each for each in review(design(several))[0] if each.id == "baseboard-flow-smooth"]
    assert [each.where for each in said] == ["emitters/a-b", "emitters/b-b", "emitters/c-b"]
    iron = {f"f-{i}": {"room": "f", "kind": "cast-iron radiator", "edr": "50 ft2"} for i in range(4)}
    heavy = emitter_house([{"add": f"emitters/{id}", "to": each} for id, each in iron.items()])
    (one,) = [each for each in review(design(heavy))[0] if each.id == "heavy-iron-on-joists"]
    assert "3 more weigh" in one.what
    assert one.weight is Weight.NOTE
    old = [{"set": f"emitters/{id}/name", "to": "Existing iron"} for id in iron]
    assert "heavy-iron-on-joists" not in found_on(heavy.with_changes(old))


def test_hotter_water_is_not_offered_into_the_high_limit() -> None:
    job = job_of("ferrow-house")
    found = next(each for each in only(job, "room-left-cold") if each.where == "rooms/kitchen")
    for mend in found.mends:
        assert must(job.with_changes(mend.changes) if mend.changes else job) <= must(job)
    hotter = next(each for each in found.mends if "Run the water" in each.words)
    assert not hotter.changes
    high = job.with_changes(put("plant/high_limit", "200 °F"))
    found = next(each for each in only(high, "room-left-cold") if each.where == "rooms/kitchen")
    assert next(each for each in found.mends if "Run the water" in each.words).changes


def test_a_limit_below_the_supply_must_be_fixed() -> None:
    (found,) = only(plant_house().with_changes(put("plant/high_limit", "139 °F")), "limit-stops-the-burner")
    assert found.weight is Weight.MUST_FIX
    assert not any("high_limit" in str(change) for each in found.mends for change in each.changes)


def test_a_bill_is_no_meter_of_efficiency() -> None:
    (found,) = only(read_job(PLANT.replace("known: told", "known: measured", 1)), "measured-without-test")
    assert "the efficiency of Winter" in found.what or "more" in found.what
    changed = [str(each["set"]) for each in found.mends[1].changes]
    assert {"bills/winter/efficiency", "bills/winter/degree_days"} <= set(changed)
    bill = {"set": "bills/winter/known", "to": "measured"}
    told = plant_house().with_changes([bill])
    (found,) = only(told, "measured-without-test")
    assert "the efficiency of Winter" in found.what and "the degree days of Winter" in found.what
    own = [{"set": f"bills/winter/{each}", "to": {"is": is_, "known": "measured"}}
           for each, is_ in (("efficiency", "80 %"), ("degree_days", "6480 °F"))]  # fmt: skip
    assert only(told.with_changes(own), "measured-without-test") == []


def test_a_burner_that_turns_down_to_the_mild_load_is_only_to_be_decided() -> None:
    big = size("40000 Btu/h")
    load = float(design(plant_house().with_changes(big)).boiler_room.plant.load)
    for part, weight in ((0.5, Weight.DECIDE), (0.9, Weight.MUST_FIX)):
        least = f"{part * shown_watts(load) - 1:.0f} Btu/h"
        job = plant_house().with_changes([*big, *put("plant/boiler/least_output", least)])
        assert found_on(job)["boiler-too-big"].weight is weight


@pytest.mark.parametrize("kind", KINDS.values(), ids=lambda each: each.id)
def test_a_text_in_inches_and_pounds_has_the_metric_beside_it(kind) -> None:
    for text in (kind.why, kind.mend):
        bare = text.replace("°F typed", "").replace("°F cancels", "")
        assert not INCH_POUND.search(bare) or METRIC.search(bare), text


def test_a_caution_on_burns_is_in_the_units_of_the_job() -> None:
    (found,) = only(job_of("tamm-street"), "hot-panel-in-reach")
    assert "140 °F" in found.caution
    metric = job_of("tamm-street").with_changes(put("units", "metric"))
    (found,) = only(metric, "hot-panel-in-reach")
    assert "60 °C" in found.caution and "°F" not in found.caution


@pytest.mark.parametrize("path", ["plant/supply", "plant/height", "site/outdoor", "plant/boiler/output",
                                  "circuits/main/length", "emitters/living/output"])  # fmt: skip
def test_nothing_is_said_of_what_is_not_known(path: str) -> None:
    hot = "\nreadings: {precharge: 12 psi, cold_pressure: 12 psi, hot_pressure: 29 psi, supply: 140 °F}\n"
    found, _ = review(
        design(plant_house(hot).with_changes([*gone(path), *put("plant/boiler/efficiency", "99 %")]))
    )
    for each in found:
        assert "not known yet" not in " ".join(
            (each.what, each.caution, *(mend.words for mend in each.mends))
        )
