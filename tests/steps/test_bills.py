"""Claim: the loss by a winter's fuel is worked out from what was counted, and waits for what was not."""

from __future__ import annotations

import pytest

from heatledger.ledger.figures import waits_for
from heatledger.ledger.results import walk_results
from heatledger.ledger.units import UNITS
from heatledger.steps.bills import bills
from heatledger.steps.design import design
from heatledger.steps.losses import heat_losses
from tests.review.plant_house import plant_house
from tests.steps.heated import job_of

OIL = {
    "fuel": "oil", "volume": "820 gal", "efficiency": "80 %", "degree_days": "6480 °F", "base": "65 °F",
}  # fmt: skip


def winter(bill: dict[str, str], id: str = "extra"):
    """The bill as the step reads it, added to the house with a boiler room."""
    job = plant_house().with_changes([{"add": f"bills/{id}", "to": bill}])
    return bills(job, heat_losses(job)).bills[id]


def btu_an_hour(figure):
    return UNITS["Btu/h"].from_si(float(figure))


def test_a_winter_of_oil_by_hand():
    """820 gal of 138,500 Btu/gal at 80 % over 24 × 6,480: 584.2 Btu/(h·°F)."""
    found = winter(OIL | {"heat_content": "138500 Btu/gal"})
    coefficient = 820 * 138_500 * 0.8 / (24 * 6480)
    assert UNITS["Btu/(h·°F)"].from_si(float(found.coefficient)) == pytest.approx(coefficient)
    assert UNITS["Btu"].from_si(float(found.heat)) == pytest.approx(820 * 138_500 * 0.8)
    losses = design(plant_house()).losses
    span = UNITS["°F"].from_si(float(losses.site.indoor) - float(losses.site.outdoor))
    assert btu_an_hour(found.like_for_like) == pytest.approx(coefficient * span)
    gains = UNITS["°F"].from_si(float(losses.site.indoor)) - UNITS["°F"].from_si(UNITS["°F"].to_si(65, True))
    assert btu_an_hour(found.like_for_like) - btu_an_hour(found.after_gains) == pytest.approx(
        coefficient * gains, rel=1e-6
    )
    assert float(found.share) == pytest.approx(float(found.like_for_like) / float(losses.house.loss))


def test_other_use_is_taken_off():
    whole = winter(OIL)
    less = winter(OIL | {"other_use": "20000000 Btu"})
    assert UNITS["Btu"].from_si(float(whole.energy) - float(less.energy)) == pytest.approx(20e6)


@pytest.mark.parametrize("how", [{"gas": "98000 ft3"}, {"energy": "1003 therms"}])
def test_gas_is_counted_by_heat_or_by_volume(how):
    bill = {key: each for key, each in OIL.items() if key != "volume"} | {"fuel": "natural gas"} | how
    assert 90 < UNITS["kBtu"].from_si(float(winter(bill).energy)) / 1000 < 110


def test_a_bill_without_its_fuel_waits_for_it():
    bill = {key: each for key, each in OIL.items() if key not in ("volume", "degree_days")}
    found = winter(bill)
    assert found.like_for_like.is_missing
    said = {each.origin.path for each in waits_for(found.like_for_like)}
    assert said == {"bills/extra/energy", "bills/extra/degree_days"}


def test_bills_stand_at_their_paths():
    found = design(job_of("ferrow-house"))
    assert "bills/last-winter/like_for_like" in found
    assert set(dict(walk_results(found.bills))) <= set(found.results)


def test_a_job_without_bills_has_none():
    job = job_of("ranch")
    assert bills(job, heat_losses(job)).bills == {}
