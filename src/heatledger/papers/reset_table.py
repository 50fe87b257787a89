"""The reset of a design for paper: the table of its points, or what stands in its place."""

from __future__ import annotations

from heatledger.ledger.dimensions import TEMPERATURE
from heatledger.ledger.show import show, show_speaking
from heatledger.papers import blocks as b
from heatledger.papers.printing import Printing
from heatledger.steps.controls import asked_at
from heatledger.studies.held_water import held_water


def reset_rows(printing: Printing) -> b.Table:
    """What the control asks for: outdoors, supply, return, and the share of the design load."""
    unit = printing.unit(TEMPERATURE)
    columns = (
        b.Column("Outdoors", "right", unit=unit), b.Column("Supply", "right", unit=unit),
        b.Column("Return", "right", unit=unit), b.Column("Share of load", "right"),
    )  # fmt: skip
    water = held_water(printing.design)
    rows = [
        b.Row((
            printing.cell(each.outdoor), printing.cell(asked_at(each), strong=True),
            printing.cell(each.return_), b.Cell(printing.percent(each.share), printing.found.key(each.share)),
        ))
        for each in water.open
    ]  # fmt: skip
    rows += [
        b.Row((
            printing.cell(each.outdoor), printing.cell(asked_at(water.open[-1]), strong=True), b.Cell("held"),
            b.Cell(printing.percent(each.share), printing.found.key(each.share)),
        ))
        for each in water.held
        if water.open
    ]  # fmt: skip
    return b.Table(columns, tuple(rows), held_words(printing), whole=True)


def follows_weather(printing: Printing) -> bool:
    """Whether a table of the water by the weather is true here: the control follows it, and may."""
    asked = printing.design.job.system.controls.outdoor_reset
    return asked is True and bool(held_water(printing.design).open)


def fixed_line(printing: Printing) -> b.Text:
    """What stands in the place of the table where the water does not follow the weather, or must not."""
    asked, supply = printing.design.job.system.controls.outdoor_reset, printing.design.emitters.house.supply
    if supply.is_missing:
        text: tuple[str | b.Run, ...] = ("Supply in all weather: ", *printing.to_fill_in(supply), ".")
    elif asked:
        limit = show(held_water(printing.design).limit or 0.0, printing.units, TEMPERATURE)
        return (
            "No table of the water is printed: its return would lie under ", b.Run(limit, "bold"), " in any "
            "weather, which eats the boiler and its chimney away. Mend that first.",
        )  # fmt: skip
    else:
        # Whole degrees, never rounded down: this is a setting that must carry the house.
        warm = show_speaking(supply, printing.units, TEMPERATURE, up=True)
        text = ("Supply in all weather: ", b.Run(warm, "bold", printing.found.key(supply)), ".")
    return text if asked is False else (*text, " The job does not say that it follows the weather.")


def held_words(printing: Printing) -> str:
    """Where and why the water is held; empty where it is not."""
    water = held_water(printing.design)
    if not water.held or not water.open or water.limit is None:
        return ""
    least = printing.show(asked_at(water.open[-1]), 0)
    limit = show(water.limit, printing.units, TEMPERATURE, places=0)
    return f"Held at {least} for the boiler's sake: its return must not fall under {limit}."
