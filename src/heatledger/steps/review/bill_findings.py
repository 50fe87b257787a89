"""Findings on the fuel bills against the heat loss, and on a boiler that neither of them asks for."""

from __future__ import annotations

from collections.abc import Iterator
from math import isnan, sqrt

from heatledger.ledger import dimensions as d
from heatledger.ledger.figures import Figure, Leaf, ancestors
from heatledger.ledger.findings import Finding, Mend, NotChecked, Weight
from heatledger.ledger.replay import carry_back
from heatledger.ledger.sources import SEEN, cite
from heatledger.steps.review.kinds import Limit, Look, finding, set_to
from heatledger.steps.review.plant_look import BOILER, boiler_of, resized, room_of

Found = Iterator[Finding | NotChecked]
JUST = 1e-9


def half_width(figure: Figure) -> float:
    """How far a figure may be off either way, to first order, by how well its entries are known."""
    slopes = carry_back(figure)
    moves = [
        slopes.get(id(each), 0.0) * each.origin.half_range
        for each in ancestors(figure)
        if isinstance(each.origin, Leaf) and each.origin.half_range
    ]
    return sqrt(sum(each * each for each in moves))


@finding(
    "bills-disagree",
    Weight.DECIDE,
    cite("HH-BILL", "heat loss from fuel used", SEEN),
    fires="The loss by the bills, like for like, is more than {0} off the loss as worked out, and their "
    "bands "
    "do not meet.",
    why="25 % is more than weather and meters are wrong by",
    mend="Check efficiency, dates, a wood stove and empty rooms; then the largest entry that is assumed.",
    limits=(Limit("bills-disagree", "25 %", d.RATIO, "bills against the loss"),),
)
def _bills_disagree(look: Look) -> Found:
    loss = look.house.losses.house.loss
    for id, each in look.design.bills.bills.items():
        by_bills = each.like_for_like
        if isnan(each.share):
            yield look.wants(f"bills/{id}", each.share)
        elif abs(float(each.share) - 1) > look.limit + JUST:
            apart = abs(float(by_bills) - float(loss))
            if apart > half_width(by_bills) + half_width(loss):
                yield look.found(
                    f"bills/{id}",
                    f"{each.name} says the house loses {look.say(by_bills)} and the sheets say "
                    f"{look.say(loss)}; find the reason before anything is bought.",
                    each.share,
                )


@finding(
    "bills-with-hot-water",
    Weight.DECIDE,
    cite("50X30", "base load off the bills", SEEN),
    fires="Nothing is said to have been taken off a fuel bill for hot water and cooking.",
    why="twelve months of bills left as they were read 17 % too high in a case worked out month by month",
    mend="Take twelve times a summer month off, or say that the fuel was for heating alone.",
)
def _bills_with_hot_water(look: Look) -> Found:
    for id, bill in look.house.job.system.bills.items():
        if bill.other_use is None:
            path = f"bills/{id}/other_use"
            yield look.found(
                f"bills/{id}",
                f"Summer use was not taken off {bill.name}; where a water heater or a range hangs on the "
                "same "
                "meter, the loss by the bills reads too high.",
                "",
                (
                    Mend("Take twelve times a summer month off."),
                    Mend("Say that this fuel was for heating alone.", (set_to(path, "0 Btu"),)),
                ),
            )


@finding(
    "sized-from-old-boiler",
    Weight.DECIDE,
    cite("JLC-OV", "oversize found in the field", SEEN),
    fires="The boiler gives more than {0} of the loss by the sheets, and of that by every fuel bill.",
    why="heating with a fire averages 2.3 times the load in a trade review",
    mend="Size on the loss and the bills, not on the boiler that is there.",
    limits=(Limit("sized-from-old-boiler", "140 %", d.RATIO, "output over loss and bills"),),
)
def _sized_from_old_boiler(look: Look) -> Found:
    boiler, room, found = boiler_of(look), room_of(look), look.design.bills.bills
    if boiler is None or room.output is None or not found:
        return
    losses = [room.load, *(each.like_for_like for each in found.values())]
    if isnan(room.output) or any(isnan(each) for each in losses):
        yield look.wants(BOILER, room.output, *losses)
        return
    most = max(losses, key=float)
    if float(room.output) > look.limit * float(most) * (1 + JUST):
        size = look.limit * float(most)
        if most is room.load and look.given[0] is None:
            size = float(room.largest_output)
        yield look.found(
            BOILER,
            f"{boiler.name} gives {look.say(room.output)}; sheets and bills say no more than "
            f"{look.say(most)}. "
            "The boiler before it was never measured against the house.",
            most,
            (
                Mend(
                    f"Take one of no more than {look.say(size, d.HEAT_RATE)}.",
                    resized(look, boiler, size, -1),
                ),
            ),
        )
