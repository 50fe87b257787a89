"""The house by its fuel bills: what a winter's fuel says of the loss."""

from __future__ import annotations

from heatledger.job.model import Job
from heatledger.job.system_model import Bill
from heatledger.ledger.dimensions import HEAT_CONTENT, Conductance, Energy, HeatRate, Ratio
from heatledger.ledger.figures import Figure, missing
from heatledger.ledger.results import result
from heatledger.physics.energy import (
    bills_over_loss,
    coefficient_from_fuel,
    design_loss_from_fuel,
    fuel_energy,
    gas_energy,
    heat_from_fuel,
    heating_fuel,
    loss_like_for_like,
)
from heatledger.steps.losses import Losses


@result
class WinterFuel:
    """The fuel of one winter and the loss that it stands for.

    ``energy`` is the fuel for heating, other use taken off, and ``heat`` what the house got from it.
    ``like_for_like`` counts no gains, as a heat loss does; ``after_gains`` is what the plant had to give.
    ``share`` is the first over the loss of the house as worked out.
    """

    name: str
    energy: Energy
    heat: Energy
    coefficient: Conductance
    like_for_like: HeatRate
    after_gains: HeatRate
    share: Ratio


@result
class Bills:
    """Result of the bills step."""

    __path__ = ""

    bills: dict[str, WinterFuel]


def bills(job: Job, losses: Losses) -> Bills:
    """The loss of the house by each of its fuel bills."""
    return Bills({id: _winter(bill, losses) for id, bill in job.system.bills.items()})


def _winter(bill: Bill, losses: Losses) -> WinterFuel:
    energy = energy_of(bill)
    if bill.other_use is not None:
        energy = heating_fuel(fuel=energy, other_use=bill.other_use)
    coefficient = coefficient_from_fuel(fuel=energy, efficiency=bill.efficiency, degree_days=bill.degree_days)
    site = losses.site
    like_for_like = loss_like_for_like(coefficient=coefficient, indoor=site.indoor, outdoor=site.outdoor)
    return WinterFuel(
        name=bill.name,
        energy=energy,
        heat=heat_from_fuel(fuel=energy, efficiency=bill.efficiency),
        coefficient=coefficient,
        like_for_like=like_for_like,
        after_gains=design_loss_from_fuel(coefficient=coefficient, base=bill.base, outdoor=site.outdoor),
        share=bills_over_loss(by_bills=like_for_like, loss=losses.house.loss),
    )


def energy_of(bill: Bill) -> Figure:
    """Heat in all of the fuel, however it was counted."""
    content = bill.heat_content
    if bill.volume is None and bill.gas is None:
        assert bill.energy is not None
        return bill.energy
    if content is None:
        content = missing(HEAT_CONTENT, f"bills/{bill.id}/heat_content", "heat content")
    if bill.volume is not None:
        return fuel_energy(volume=bill.volume, heat_content=content)
    assert bill.gas is not None
    return gas_energy(gas=bill.gas, heat_content=content)
