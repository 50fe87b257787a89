"""The reset of a design for paper: its chart and the table of its points."""

from __future__ import annotations

from heatledger.drawings.reset_chart import ResetView, WaterAt, reset_chart
from heatledger.drawings.shapes import Drawing
from heatledger.ledger.dimensions import TEMPERATURE
from heatledger.ledger.figures import Figure
from heatledger.papers import blocks as b
from heatledger.papers.printing import Printing

TITLE = "Water by the weather"
CONDENSING = "condensing"


def reset_rows(printing: Printing) -> b.Table:
    """What the control is set to: outdoors, supply, return, and the share of the design load."""
    found = printing.design.controls.controls
    unit = printing.unit(TEMPERATURE)
    columns = (
        b.Column("Outdoors", "right", unit=unit), b.Column("Supply", "right", unit=unit),
        b.Column("Return", "right", unit=unit), b.Column("Share of load", "right"),
    )  # fmt: skip
    rows = tuple(
        b.Row((
            printing.cell(each.outdoor), printing.cell(each.supply, strong=True), printing.cell(each.return_),
            b.Cell(printing.percent(each.share), printing.found.key(each.share)),
        ))
        for each in found.reset.values()
    )  # fmt: skip
    return b.Table(columns, rows, whole=True)


def reset_drawing(printing: Printing, width: float = 330.0, height: float = 190.0) -> Drawing | None:
    """The chart of the reset; None while its points wait for something."""
    found = printing.design.controls.controls
    points = [
        WaterAt(*(_shown(each, printing) for each in (point.outdoor, point.supply, point.return_)))
        for point in found.reset.values()
        if not any(each.is_missing for each in (point.outdoor, point.supply, point.return_))
    ]
    if len(points) < 2:
        return None
    limit, name = _limit(printing)
    view = ResetView(
        TITLE, printing.unit(TEMPERATURE), tuple(points), _straight(printing),
        None if limit is None else _shown(limit, printing), name,
        None if found.shutdown.is_missing else _shown(found.shutdown, printing),
    )  # fmt: skip
    return reset_chart(view, width, height)


def _straight(printing: Printing) -> tuple[tuple[float, float], ...]:
    """The ends of the straight line that the control is set to, where the job gives one."""
    set_to = printing.design.job.system.controls
    found = list(printing.design.controls.controls.reset.values())
    ends = (set_to.coldest_supply, set_to.mildest_outdoor, set_to.mildest_supply)
    if not found or any(each is None or each.is_missing for each in ends):
        return ()
    cold, mild, water = ends
    assert cold is not None and mild is not None and water is not None
    return (
        (_shown(found[0].outdoor, printing), _shown(cold, printing)),
        (_shown(mild, printing), _shown(water, printing)),
    )


def _limit(printing: Printing) -> tuple[Figure | None, str]:
    """The return that matters to the boiler, and what it is called."""
    boiler = printing.design.job.system.plant.boiler
    if boiler is None or boiler.return_limit is None or boiler.return_limit.is_missing:
        return None, ""
    condenses = boiler.kind == CONDENSING
    return boiler.return_limit, "condensing limit" if condenses else "lowest return allowed"


def _shown(figure: Figure, printing: Printing) -> float:
    return float(printing.units.shown(TEMPERATURE).unit.from_si(float(figure), TEMPERATURE.absolute))
