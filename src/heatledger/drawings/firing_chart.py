"""What a boiler can hold steadily, against the lightest call, today's and that of the design day."""

from __future__ import annotations

from heatledger.drawings.chart import Chart, ChartCell, cell, group_of, known, shown, unit_of
from heatledger.drawings.once import once_a_design
from heatledger.drawings.range_rule import Upright, range_rule
from heatledger.ledger.dimensions import HEAT_RATE
from heatledger.ledger.figures import Figure
from heatledger.ledger.presets import Preset
from heatledger.ledger.show import number_text, show
from heatledger.steps.design import Design
from heatledger.steps.targets import burns
from heatledger.studies.by_weather import losses_at
from heatledger.studies.calls import LightestCall, lightest_call

ID = "firing-range"
FULL_OR_NOTHING = "No lowest output is given, so the {} is taken to run full or not at all."


@once_a_design
def firing_range(house: Design, units: Preset, width: float = 372.0) -> Chart | None:
    """The range of the burner with the calls on it; None without a boiler whose output is known."""
    boiler, room = house.job.system.plant.boiler, house.boiler_room.plant
    if boiler is None or room.output is None or not known(room.output, room.load):
        return None
    least = boiler.least_output
    turns_down = least is not None and not least.is_missing and float(least) < float(room.output)
    low = least if turns_down and least is not None else room.output
    light, today = lightest_call(house), _today(house)
    calls = [Upright(_in(room.load, units), f"design day {_n(room.load, units)}", True)]
    if light is not None:
        calls.append(Upright(_in(light.load, units), f"lightest call {_n(light.load, units)}"))
    if today is not None:
        calls.append(Upright(_in(today, units), f"today {_n(today, units)}"))
    full = _n(room.output, units)
    steady = f"steady, {_n(low, units)} to {full}" if turns_down else f"steady only at {full}"
    # An electric boiler has elements and no burner.
    it = "burner" if burns(boiler) else "boiler"
    said, title = _sentence(house, units, low, light, it), f"What the {it} holds"
    drawing = range_rule(title, said, (_in(low, units), _in(room.output, units)), steady, tuple(calls),
                         unit_of(units, HEAT_RATE), width, group_of(units, HEAT_RATE))  # fmt: skip
    rows = [(ChartCell("Full output"), cell(room.output, house, units, 0)),
            (ChartCell("Design day"), cell(room.load, house, units, 0))]  # fmt: skip
    if turns_down:
        rows.insert(0, (ChartCell("Least that it holds steadily"), cell(low, house, units, 0)))
    if today is not None:
        rows.append((ChartCell("House loses today"), ChartCell(_n(today, units))))
    if light is not None:
        name = f"Lightest call: {light.name} at {show(light.outdoor, units)} outdoors"
        rows.append((ChartCell(name), ChartCell(_n(light.load, units))))
    note = "" if turns_down else FULL_OR_NOTHING.format(it)
    return Chart(ID, title, drawing, said, ("What", unit_of(units, HEAT_RATE)), tuple(rows), note)


def _sentence(house: Design, units: Preset, low: Figure, light: LightestCall | None, it: str) -> str:
    room = house.boiler_room.plant
    assert room.output is not None
    covers = float(room.output) >= float(room.load)
    said = (
        f"Full output {show(room.output, units, places=0)} {'covers' if covers else 'falls short of'} the "
        f"design day, {show(room.load, units, places=0)}."
    )
    if light is None:
        return said
    heat = show(light.load, units, HEAT_RATE, places=0)
    where = f"The lightest call, {light.name} at {show(light.outdoor, units)} outdoors, is {heat}"
    if light.load < float(low):
        return f"{said} {where}: below what the {it} holds, so it starts and stops."
    return f"{said} {where}: the {it} holds it."


def _today(house: Design) -> float | None:
    """The loss of the house (W) in the weather that was read; None without a reading."""
    outdoor = house.job.system.readings.outdoor
    if outdoor is None or outdoor.is_missing:
        return None
    found = losses_at(house, [float(outdoor)])
    return found[0] if found and found[0] >= 0 else None


def _in(value: float, units: Preset) -> float:
    return shown(float(value), units, HEAT_RATE)


def _n(value: float, units: Preset) -> str:
    return number_text(_in(value, units), 0, group_of(units, HEAT_RATE))
