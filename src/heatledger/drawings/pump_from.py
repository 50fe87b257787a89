"""The chart of a circulator of a design: what is needed, where it runs, and where with one zone alone."""

from __future__ import annotations

from heatledger.drawings.chart import NARROW, Chart, ChartCell, cell, group_of, known, shown, unit_of
from heatledger.drawings.once import once_a_design
from heatledger.drawings.pump_chart import PumpView, pump_chart
from heatledger.drawings.shapes import Drawing, Point
from heatledger.ledger.dimensions import HEAD, VOLUME_FLOW
from heatledger.ledger.figures import Figure
from heatledger.ledger.presets import Preset
from heatledger.ledger.show import show
from heatledger.steps.design import Design
from heatledger.steps.plant_piping import CirculatorDuty
from heatledger.studies.calls import Call, zones_alone

BETWEEN = (
    "Between its points the curve of the circulator is a power of the flow, as the design takes it. A curve "
    "of the pipes is drawn through its points as a power of the flow and is not worked out."
)


def circulator_name(id: str, duty: CirculatorDuty) -> str:
    """What a circulator is called where nothing else says what it is."""
    name = duty.name or id
    return name if "circulator" in name.lower() else f"Circulator {name}"


@once_a_design
def pump_drawing(house: Design, units: Preset, id: str, width: float = NARROW) -> Drawing | None:
    """The picture; None while there is nothing to draw."""
    duty = house.circuits.plant.circulators.get(id)
    if duty is None:
        return None
    curve = _curve(house, units, id)
    needed = _point(duty.needed_flow, duty.needed_head, units)
    runs = _point(duty.actual_flow, duty.actual_head, units)
    if not curve and needed is None:
        return None
    said = f"needed {show(duty.needed_flow, units)} at {show(duty.needed_head, units)}"
    alone = tuple(
        (each.name, point)
        for each in calls_of(house, id)
        if (point := _point(each.flows[id], each.heads[id], units)) is not None
    )
    view = PumpView(
        circulator_name(id, duty), duty.name or id, unit_of(units, VOLUME_FLOW), unit_of(units, HEAD), curve,
        needed, runs, said if needed else "",
        f"runs at {show(duty.actual_flow, units)}" if runs and duty.actual_flow is not None else "",
        alone if runs else (), group_of(units, VOLUME_FLOW),
    )  # fmt: skip
    return pump_chart(view, width)


def calls_of(house: Design, id: str) -> list[Call]:
    """The zones that, calling alone, still leave this circulator running."""
    return [each for each in zones_alone(house) if id in each.flows and known(each.flows[id], each.heads[id])]


@once_a_design
def pump_and_circuits(
    house: Design, units: Preset, circulator_id: str, width: float = NARROW
) -> Chart | None:
    """A circulator and the pipes; None while neither its curve nor what is needed is known."""
    id, drawing = circulator_id, pump_drawing(house, units, circulator_id, width)
    if drawing is None:
        return None
    duty = house.circuits.plant.circulators[circulator_id]
    name, said = duty.name or circulator_id, []
    if known(duty.needed_flow, duty.needed_head):
        said.append(f"{name} must move {show(duty.needed_flow, units)} against "
                    f"{show(duty.needed_head, units)}.")  # fmt: skip
    if duty.actual_flow is not None and duty.actual_head is not None and known(duty.actual_flow):
        said.append(f"It runs at {show(duty.actual_flow, units)} and {show(duty.actual_head, units)}.")
    rows = [_row("Needed", duty.needed_flow, duty.needed_head, house, units)]
    if duty.actual_flow is not None:
        rows.append(_row("All calling, runs at", duty.actual_flow, duty.actual_head, house, units))
        rows += [
            _row(f"{each.name} alone, runs at", each.flows[id], each.heads[id], house, units)
            for each in calls_of(house, id)
        ]
    given = house.job.system.plant.circulators[circulator_id]
    rows += [
        _row("Curve, no flow", None, given.shutoff, house, units),
        _row("Curve, middle", given.middle_flow, given.middle_head, house, units),
        _row("Curve, high", given.high_flow, given.high_head, house, units),
    ]
    head = ("", f"Flow, {unit_of(units, VOLUME_FLOW)}", f"Head, {unit_of(units, HEAD)}")
    title = circulator_name(circulator_id, duty)
    return Chart(f"pump-{circulator_id}", title, drawing, " ".join(said), head, tuple(rows), BETWEEN)


def _row(
    name: str, flow: Figure | None, head: Figure | None, house: Design, units: Preset
) -> tuple[ChartCell, ...]:
    none = ChartCell("0") if flow is None else cell(flow, house, units)
    return ChartCell(name), none, cell(head, house, units)


def _curve(house: Design, units: Preset, id: str) -> tuple[Point, Point, Point] | tuple[()]:
    given = house.job.system.plant.circulators.get(id)
    if given is None or not known(
        given.shutoff, given.middle_flow, given.middle_head, given.high_flow, given.high_head
    ):
        return ()
    return (
        (0.0, shown(given.shutoff, units, HEAD)),
        (shown(given.middle_flow, units, VOLUME_FLOW), shown(given.middle_head, units, HEAD)),
        (shown(given.high_flow, units, VOLUME_FLOW), shown(given.high_head, units, HEAD)),
    )


def _point(flow: Figure | None, head: Figure | None, units: Preset) -> Point | None:
    if flow is None or head is None or not known(flow, head):
        return None
    return shown(flow, units, VOLUME_FLOW), shown(head, units, HEAD)
