"""The reset line of a design, with the readings of the day."""

from __future__ import annotations

from heatledger.drawings.chart import Chart, ChartCell, cell, known, shown, unit_of
from heatledger.drawings.once import once_a_design
from heatledger.drawings.reset_chart import ResetView, WaterAt, reset_chart
from heatledger.drawings.shapes import Drawing
from heatledger.ledger.dimensions import TEMPERATURE, TEMPERATURE_DIFFERENCE
from heatledger.ledger.figures import Figure
from heatledger.ledger.presets import Preset
from heatledger.ledger.show import show, show_percent, show_speaking
from heatledger.steps.controls import ResetPoint, asked_at
from heatledger.steps.design import Design
from heatledger.studies.held_water import held_water

TITLE = "Water by the weather"
CONDENSING = "condensing"
LEAST_SHORT = 0.5
RINGS = "Rings are the points that the control is given; a plus is a reading."


def reset_points(house: Design) -> list[ResetPoint]:
    """The points that may be dialed in and are known, coldest first."""
    return [
        each
        for each in held_water(house).open
        if known(each.outdoor, asked_at(each), each.return_, each.share)
    ]


@once_a_design
def reset_drawing(
    house: Design, units: Preset, width: float = 330.0, height: float = 190.0, today: bool = True
) -> Drawing | None:
    """The picture, as far as the line may be dialed in; None while its points wait for something."""
    points = reset_points(house)
    if len(points) < 2:
        return None
    limit, name = _limit(house)
    shutdown, straight = house.controls.controls.shutdown, _straight(house, units)
    view = ResetView(
        TITLE, unit_of(units, TEMPERATURE),
        tuple(WaterAt(*(_in(each, units) for each in (p.outdoor, asked_at(p), p.return_))) for p in points),
        straight, None if limit is None else _in(limit, units), name,
        None if shutdown.is_missing else _in(shutdown, units),
        "" if straight else _short_words(points, units), _read(house, units) if today else None,
    )  # fmt: skip
    return reset_chart(view, width, height)


@once_a_design
def reset_line(house: Design, units: Preset, width: float = 360.0, height: float = 200.0) -> Chart | None:
    """Supply and return by the weather with the readings of the day; None while its points are not known."""
    drawing, points = reset_drawing(house, units, width, height), reset_points(house)
    if drawing is None:
        return None
    cold, mild = points[0], points[-1]
    sentence = (
        f"Supply {show_speaking(asked_at(cold), units, up=True)} at {show(cold.outdoor, units)} outdoors, "
        f"{show_speaking(asked_at(mild), units, up=True)} at {show(mild.outdoor, units)}."
    )
    rows: list[tuple[ChartCell, ...]] = [
        (cell(p.outdoor, house, units), cell(asked_at(p), house, units), cell(p.return_, house, units),
         ChartCell(show_percent(float(p.share)), house.names.path(p.share)))
        for p in points
    ]  # fmt: skip
    rows += _today(house, units)
    unit = unit_of(units, TEMPERATURE)
    head = (f"Outdoors, {unit}", f"Supply, {unit}", f"Return, {unit}", "Share of load")
    notes = (_short_words(points, units), _condensing_words(house, units, points), RINGS)
    return Chart("reset-line", TITLE, drawing, sentence, head, tuple(rows), " ".join(filter(None, notes)))


def _today(house: Design, units: Preset) -> list[tuple[ChartCell, ...]]:
    """What is due in the weather that was read, and what was read."""
    read, due = house.job.system.readings, house.startup.startup
    if read.outdoor is None or read.outdoor.is_missing:
        return []
    today = cell(read.outdoor, house, units)
    rows: list[tuple[ChartCell, ...]] = [
        (today, cell(due.supply_due, house, units), ChartCell(""), ChartCell("due today"))
    ]
    if read.supply is not None or read.return_ is not None:
        water = (cell(read.supply, house, units), cell(read.return_, house, units))
        rows.append((today, *water, ChartCell("read")))
    return rows


def _read(house: Design, units: Preset) -> tuple[float, float | None, float | None] | None:
    read = house.job.system.readings
    if read.outdoor is None or read.outdoor.is_missing:
        return None
    water = [None if each is None or each.is_missing else _in(each, units)
             for each in (read.supply, read.return_)]  # fmt: skip
    return _in(read.outdoor, units), water[0], water[1]


def _straight(house: Design, units: Preset) -> tuple[tuple[float, float], ...]:
    """The ends of the straight line that the control is set to, where the job gives one."""
    set_to = house.job.system.controls
    found = list(house.controls.controls.reset.values())
    ends = (set_to.coldest_supply, set_to.mildest_outdoor, set_to.mildest_supply)
    cold, mild, water = ends
    if not found or cold is None or mild is None or water is None or not known(*ends):
        return ()
    return (_in(found[0].outdoor, units), _in(cold, units)), (_in(mild, units), _in(water, units))


def _short_words(points: list[ResetPoint], units: Preset) -> str:
    """How far a straight line between the ends of the points falls short of them; empty where it does not."""
    if any(each.line is not None for each in points) or len(points) < 3:
        return ""
    first, last = points[0], points[-1]
    span = float(last.outdoor) - float(first.outdoor)
    if not span:
        return ""
    fall = float(asked_at(last)) - float(asked_at(first))
    short = max(
        float(asked_at(p)) - float(asked_at(first)) - fall * (float(p.outdoor) - float(first.outdoor)) / span
        for p in points
    )
    if short < LEAST_SHORT:
        return ""
    said = show_speaking(short, units, TEMPERATURE_DIFFERENCE)
    return f"A straight line between the ends would be up to {said} short."


def _condensing_words(house: Design, units: Preset, points: list[ResetPoint]) -> str:
    """From which weather on the return lies under the limit, by the points themselves."""
    limit, name = _limit(house)
    if limit is None:
        return ""
    under = [each for each in points if float(each.return_) < float(limit)]
    if not under:
        return ""
    return f"From {show(under[0].outdoor, units)} outdoors on the return lies under the {name}."


def _limit(house: Design) -> tuple[Figure | None, str]:
    """The return that matters to the boiler, and what it is called."""
    boiler = house.job.system.plant.boiler
    if boiler is None or boiler.return_limit is None or boiler.return_limit.is_missing:
        return None, ""
    condenses = boiler.kind == CONDENSING
    return boiler.return_limit, "condensing limit" if condenses else "lowest return allowed"


def _in(figure: Figure, units: Preset) -> float:
    return shown(figure, units, TEMPERATURE)
