"""Claim: the output to look for lies where loss and bills meet, and the walk on site fits the job."""

from __future__ import annotations

import pytest

from heatledger.steps.design import design
from heatledger.steps.emitter_chains import outlet_chain
from heatledger.steps.targets import CAUTION_LOCAL
from heatledger.studies.replacement import replacement
from heatledger.studies.uncertainty import band
from tests.steps.heated import job_of

TAMM = "tamm-street"


def study(*changes, name=TAMM):
    job = job_of(name)
    return replacement(design(job.with_changes(list(changes)) if changes else job))


def put(path, value):
    return {"set": path, "to": value}


def test_both_sides_with_their_bands():
    found = study()
    whole = design(job_of(TAMM))
    assert (found.load.low, found.load.high) == pytest.approx(
        (band(whole, "plant/load").low, band(whole, "plant/load").high)
    )
    (bill,) = found.bills
    like, after = (band(whole, f"bills/winter/{each}") for each in ("like_for_like", "after_gains"))
    assert (bill.low, bill.high) == pytest.approx((after.low, like.high))
    assert after.figure is whole.bills.bills["winter"].after_gains


def test_where_they_meet():
    found = study()
    assert found.meets
    assert found.low == pytest.approx(max(found.load.low, found.bills[0].low))
    assert found.high == pytest.approx(min(found.load.high, found.bills[0].high))
    assert found.low < found.high


def test_sides_that_do_not_meet_are_not_made_to():
    found = study(put("bills/winter/volume", "2,400 gal"))
    assert not found.meets
    assert found.low is found.high is None
    assert found.bills[0].low > found.load.high


def test_without_bills_the_loss_stands_alone():
    found = study({"remove": "bills/winter"})
    assert found.bills == ()
    assert (found.low, found.high) == (found.load.low, found.load.high)


def test_a_second_winter_narrows_it():
    text = {
        "fuel": "oil", "volume": "1,010 gal", "efficiency": "74 %", "degree_days": "6,300 °F",
        "base": "65 °F",
    }  # fmt: skip
    one, two = study(), study({"add": "bills/before", "to": text})
    assert len(two.bills) == 2
    assert two.low is not None
    assert one.low is not None
    assert two.low >= one.low
    assert two.high <= one.high


def test_a_bill_without_figures_leaves_the_rest_standing():
    found = study({"remove": "bills/winter/volume"})
    assert found.bills[0].low != found.bills[0].low
    assert (found.low, found.high) == (found.load.low, found.load.high)


def test_a_bill_without_figures_meets_nothing():
    found = study({"remove": "bills/winter/volume"})
    assert not found.meets
    assert not found.apart
    assert not found.bills[0].counts


def test_a_bill_without_a_base_counts_like_for_like_and_names_what_it_lacks():
    whole, found = study(), study({"remove": "bills/winter/base"})
    (bill,) = found.bills
    assert bill.counts
    assert any(each.startswith("Base of the degree days") for each in bill.unknown)
    assert (bill.low, bill.high) == (bill.like_for_like.low, bill.like_for_like.high)
    assert (bill.low, bill.high) == (whole.bills[0].like_for_like.low, whole.bills[0].like_for_like.high)
    assert found.meets
    far = study({"remove": "bills/winter/base"}, put("bills/winter/volume", "2,400 gal"))
    assert far.apart
    assert not far.meets


def test_where_they_disagree_each_has_its_lowest_supply():
    found = study(put("bills/winter/volume", "2,400 gal"))
    (bill,) = found.bills
    assert bill.lowest_supply is not None
    assert float(bill.lowest_supply) > float(found.lowest_supply)
    job = job_of(TAMM).with_changes([put("bills/winter/volume", "2,400 gal")])
    made = design(job)
    share = float(made.bills.bills["winter"].share)
    given = sum(
        float(outlet_chain(job, made.emitters, [id], bill.lowest_supply)[id].output)
        for id in made.emitters.emitters
    )
    assert given == pytest.approx(share * float(made.losses.house.loss), rel=0.02)
    assert study().bills[0].lowest_supply is None


def test_the_old_boiler_and_the_cool_water():
    found = study()
    assert found.old_ratio is not None
    assert float(found.old_ratio) > 2
    assert float(found.largest_output) == pytest.approx(1.4 * float(found.load.figure))
    assert found.set_by == "Whole house"
    kitchen = study(name="ferrow-house")
    assert kitchen.set_by == "Kitchen"
    assert kitchen.next_lowest is not None
    assert float(kitchen.next_lowest) < float(kitchen.lowest_supply)


def test_what_is_lacking_is_named():
    assert any(each.startswith("Circuits with their tubes") for each in study().unknown)
    assert study(name="ferrow-house").unknown == ()
    bare = study(name="ranch")
    assert bare.lowest_supply.is_missing
    assert bare.set_by == ""


@pytest.mark.parametrize(("name", "has", "has_not"), [
    (TAMM, {"asbestos", "oil-tank", "chimney", "water-heater-left", "emitters"}, {"gas"}),
    ("ferrow-house", {"asbestos", "gas", "vent-way"}, {"oil-tank"}),
    ("lerch-cottage", {"gas", "electrical"}, {"oil-tank"}),
])  # fmt: skip
def test_the_walk_fits_the_job(name, has, has_not):
    ids = [each.id for each in study(name=name).checks]
    assert len(ids) == len(set(ids))
    assert has <= set(ids)
    assert not has_not & set(ids)


def test_an_electric_boiler_has_no_flue_to_look_at():
    ids = {
        each.id
        for each in study(
            put("plant/boiler/fuel", "electricity"), put("plant/boiler/kind", "electric")
        ).checks
    }
    assert not {"chimney", "water-heater-left", "vent-way", "air-for-the-fire", "gas", "oil-tank"} & ids
    assert {"electrical", "nameplate"} <= ids


def test_a_house_built_late_is_not_searched_for_asbestos():
    assert "asbestos" not in {each.id for each in study(put("built", "1996")).checks}


def test_each_check_says_what_and_why_and_defers():
    for each in study().checks:
        assert each.what.endswith(".")
        assert each.why.endswith(".")
        assert not each.caution or each.caution.endswith(CAUTION_LOCAL)
    dangerous = {each.id for each in study().checks if each.caution}
    assert {"asbestos", "alarms", "tank-and-relief", "chimney", "electrical", "oil-tank"} <= dangerous
