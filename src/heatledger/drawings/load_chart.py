"""The load against the outdoor temperature, on one graduated rule."""

from __future__ import annotations

from heatledger.drawings.chart import WIDE, Chart, ChartCell, cell, group_of, shown, unit_of
from heatledger.drawings.double_rule import DoubleRule, double_rule
from heatledger.drawings.figure_words import bare
from heatledger.drawings.once import once_a_design
from heatledger.ledger.dimensions import HEAT_RATE, TEMPERATURE
from heatledger.ledger.presets import Preset
from heatledger.ledger.show import number_text, show, show_percent, show_speaking
from heatledger.steps.design import Design
from heatledger.studies.by_weather import LossAt, by_weather, off_straight, outdoor_for, step_in

ID, TITLE = "load-by-weather", "At other outdoor temperatures"
HELD = (
    "Rooms, ground and rates of air are held as on the design day. Sun, people and lights are left out, so "
    "the heating runs less than this on a mild day."
)
STRAIGHT = 0.01


@once_a_design
def load_by_weather(house: Design, units: Preset, width: float = WIDE) -> Chart | None:
    """What the house loses by the weather; None while the loss or its temperatures are not known."""
    unit = units.shown(TEMPERATURE).unit
    points = by_weather(house, unit)
    if not points:
        return None
    site, loss = house.losses.site, house.losses.house.loss
    sentence = _sentence(house, units, points)
    view = DoubleRule(
        TITLE, sentence, unit_of(units, TEMPERATURE), unit_of(units, HEAT_RATE),
        tuple((shown(p.outdoor, units, TEMPERATURE), shown(p.loss, units, HEAT_RATE)) for p in points[::-1]),
        step_in(unit),
        (shown(site.outdoor, units, TEMPERATURE), shown(loss, units, HEAT_RATE)),
        (bare(site.outdoor, units), bare(loss, units, 0)), group_of(units, HEAT_RATE),
    )  # fmt: skip
    head = (f"Outdoors, {view.upper_unit}", f"House loses, {view.lower_unit}", "Share of design load")
    return Chart(
        ID, TITLE, double_rule(view, width), sentence, head, _rows(house, units, points),
        f"{HELD} {_straight(house, units, points)}".strip(),
    )  # fmt: skip


def _sentence(house: Design, units: Preset, points: tuple[LossAt, ...]) -> str:
    site, loss = house.losses.site, house.losses.house.loss
    said = f"The house loses {show_speaking(loss, units)} at {show(site.outdoor, units)} outdoors"
    half = outdoor_for(points, float(loss) / 2)
    return said + (f", and half of it at {show_speaking(half, units, TEMPERATURE)}." if half else ".")


def _straight(house: Design, units: Preset, points: tuple[LossAt, ...]) -> str:
    """How far off a straight line to nothing at room temperature would be."""
    off = off_straight(house, points)
    if abs(off) < STRAIGHT:
        return ""
    way = "less" if off > 0 else "more"
    return (
        f"A straight line to nothing at {show(house.losses.site.indoor, units)} would say up to "
        f"{show_percent(abs(off))} of the design load {way}: the ground and rooms of another temperature do "
        "not follow the weather."
    )


def _rows(house: Design, units: Preset, points: tuple[LossAt, ...]) -> tuple[tuple[ChartCell, ...], ...]:
    site, loss = house.losses.site, house.losses.house.loss
    rows = [
        (
            float(each.outdoor),
            (
                ChartCell(number_text(shown(each.outdoor, units, TEMPERATURE), 0)),
                ChartCell(_heat(each.loss, units)),
                ChartCell(show_percent(each.loss / float(loss))),
            ),
        )
        for each in points
        if abs(each.outdoor - float(site.outdoor)) > 1e-6
    ]
    design_day = (cell(site.outdoor, house, units), cell(loss, house, units, 0), ChartCell(show_percent(1.0)))
    design_day = (ChartCell(bare(site.outdoor, units), design_day[0].path), *design_day[1:])
    return tuple(row for _, row in sorted([*rows, (float(site.outdoor), design_day)], key=lambda e: e[0]))


def _heat(watts: float, units: Preset) -> str:
    return number_text(shown(watts, units, HEAT_RATE), 0, group_of(units, HEAT_RATE))
