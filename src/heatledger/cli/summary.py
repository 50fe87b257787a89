"""A whole design in six lines, for a first look."""

from __future__ import annotations

import textwrap

from heatledger.cli.common import WIDTH
from heatledger.cli.system_sheet import said
from heatledger.ledger.findings import Weight
from heatledger.ledger.presets import Preset
from heatledger.ledger.show import show, show_range
from heatledger.steps.design import Design
from heatledger.studies.uncertainty import band

NAME = 10


def summary_lines(house: Design, units: Preset) -> list[str]:
    """House, water, bills, boiler, tank and review, each on its line; what is not known has none."""
    rows = {
        "House": _house(house, units),
        "Water": _water(house, units),
        "Boiler": _boiler(house, units),
        "Tank": _tank(house, units),
        "Bills": _bills(house, units),
        "Review": _review(house),
    }
    lines = [house.job.name or "House without a name"]
    for name, text in rows.items():
        if text:
            head = f"  {name}".ljust(NAME)
            lines += textwrap.wrap(text, WIDTH, initial_indent=head, subsequent_indent=" " * NAME)
    return lines


def _house(house: Design, units: Preset) -> str:
    loss = house.losses.house.loss
    if loss.is_missing:
        return ""
    made = band(house, "house/loss")
    return (
        f"{show(loss, units)} of heat loss, likely {show_range(made.low, made.high, units, loss.dimension)}"
    )


def _water(house: Design, units: Preset) -> str:
    heat = house.emitters.house
    if not house.emitters.emitters or heat.lowest_supply.is_missing:
        return ""
    text = f"a supply of {said(heat.lowest_supply, units)} serves every room"
    if heat.next_lowest is not None and not heat.next_lowest.is_missing:
        text += f"; {said(heat.next_lowest, units)} all but {house.job.rooms[heat.set_by].name}"
    return text


def _boiler(house: Design, units: Preset) -> str:
    room = house.boiler_room.plant
    if room.output is None or room.output.is_missing or room.ratio is None or room.ratio.is_missing:
        return ""
    return f"gives {said(room.output, units)}, {said(room.ratio, units, 2)} times its load"


def _tank(house: Design, units: Preset) -> str:
    room = house.boiler_room.plant
    if room.tank_volume.is_missing:
        return ""
    size = f"at least {said(room.tank_volume, units, 1)}"
    charge = room.precharge_pressure
    return size if charge is None else f"{size}, charged to {said(charge, units, 1)}"


def _bills(house: Design, units: Preset) -> str:
    found = [each for each in house.bills.bills.values() if not each.like_for_like.is_missing]
    return "; ".join(
        f"{each.name[:1].lower()}{each.name[1:]} says {said(each.like_for_like, units)}" for each in found
    )


def _review(house: Design) -> str:
    open_ones = [each.weight for each in house.findings if each.decided is None]
    counts = [f"{open_ones.count(weight)} {weight.value}" for weight in Weight if weight in open_ones]
    return ", ".join(counts) or "no findings"
