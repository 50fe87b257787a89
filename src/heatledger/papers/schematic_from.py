"""From a design to the texts of its piping schematic."""

from __future__ import annotations

from dataclasses import replace

from heatledger.drawings.schematic_view import HOME_RUN, CircuitView, RunView, SchematicView
from heatledger.job.system_model import Circuit
from heatledger.ledger.dimensions import PRESSURE
from heatledger.ledger.figures import Figure
from heatledger.ledger.show import show_speaking
from heatledger.papers.printing import Printing

MOST_RUNS, MOST_CIRCUITS = 14, 10
TITLE, MORE = "Boiler room and circuits", "Further circuits of the same boiler room"
AFTER_PUMP = "pump discharge"
SAME = "the same boiler as in part 1"


def schematic_views(printing: Printing) -> list[SchematicView]:
    """The schematic of the job; where it has more runs than one drawing holds, one drawing a part."""
    parts: list[list[CircuitView]] = [[]]
    for each in _circuits(printing):
        runs = sum(len(one.runs) for one in parts[-1]) + len(each.runs)
        if parts[-1] and (runs > MOST_RUNS or len(parts[-1]) == MOST_CIRCUITS):
            parts.append([])
        parts[-1].append(each)
    titles = (
        [TITLE]
        if len(parts) == 1
        else [f"{TITLE if n == 1 else MORE}, part {n} of {len(parts)}" for n in _count(parts)]
    )
    views = [_view(printing, title, tuple(part)) for title, part in zip(titles, parts, strict=True)]
    return [views[0], *(_again(each) for each in views[1:])]


def _again(view: SchematicView) -> SchematicView:
    """A further part: the boiler room stands on the first with its settings, and is not a second one."""
    return replace(view, boiler=SAME, boiler_note="", relief="", tank="", fill="")


def _count(parts: list[list[CircuitView]]) -> range:
    return range(1, len(parts) + 1)


def _view(printing: Printing, title: str, circuits: tuple[CircuitView, ...]) -> SchematicView:
    design = printing.design
    plant, room, house = design.job.system.plant, design.boiler_room.plant, design.emitters.house
    pumps = list(plant.circulators.values())
    tank = plant.tank
    volume = tank.volume if tank is not None and tank.volume is not None else room.tank_volume
    size = short(volume, printing)
    if not size and room.tank_least is not None:
        size = f"over {short(room.tank_least, printing)}" if not room.tank_least.is_missing else ""
    parts = (size, short(room.precharge_pressure, printing))
    output = room.output if room.output is not None else room.rated_output
    return SchematicView(
        title=title,
        circuits=circuits,
        boiler=plant.boiler.name if plant.boiler is not None else "Boiler, not chosen yet",
        boiler_note="" if output is None or output.is_missing else f"output {printing.show(output)}",
        relief=f"____ {printing.unit(PRESSURE)}"
        if printing.relief is None
        else short(printing.relief, printing),
        tank=", ".join(each for each in parts if each),
        fill=short(room.fill_pressure, printing),
        circulator=(pumps[0].name or "Circulator") if len(pumps) == 1 else "" if pumps else "Circulator",
        supply=short(house.supply, printing),
        return_=short(room.return_design, printing),
        high_limit=plant.high_limit is not None and not plant.high_limit.is_missing,
        low_water_cutoff=plant.low_water_cutoff is True,
        tank_at_suction=tank is None or tank.placed != AFTER_PUMP,
    )


def undrawn(view: SchematicView) -> str:
    """The guards that the job does not show, and that are therefore not drawn; empty where all are."""
    names = [name for name, there in (("high limit", view.high_limit), ("low-water cutoff",
             view.low_water_cutoff)) if not there]  # fmt: skip
    return f"Not given in the job, so not drawn: {' and '.join(names)}." if names else ""


def short(figure: Figure | None, printing: Printing) -> str:
    """A figure in speaking precision, for a drawing; empty when it is missing or there is none."""
    if figure is None or figure.is_missing:
        return ""
    return show_speaking(figure, printing.units, figure.dimension)


def _circuits(printing: Printing) -> list[CircuitView]:
    system = printing.design.job.system
    return [_circuit(id, each, printing) for id, each in system.circuits.items()]


def _circuit(id: str, circuit: Circuit, printing: Printing) -> CircuitView:
    design = printing.design
    pumps = design.job.system.plant.circulators
    found = design.circuits.circuits.get(id)
    own = pumps.get(circuit.circulator) if len(pumps) > 1 else None
    return CircuitView(
        name=circuit.name,
        kind=circuit.kind,
        runs=tuple(_run(id, circuit, emitter, printing) for emitter in circuit.runs),
        flow=short(found.flow if found is not None else None, printing),
        zone_valve=circuit.common.valve is not None,
        circulator=own.name if own is not None else "",
    )


def _run(id: str, circuit: Circuit, emitter_id: str, printing: Printing) -> RunView:
    design = printing.design
    emitter = design.job.system.emitters.get(emitter_id)
    found = design.circuits.circuits.get(id)
    flow = found.runs[emitter_id].flow if found is not None and emitter_id in found.runs else None
    manifold = circuit.kind == HOME_RUN
    length = circuit.runs[emitter_id].length
    return RunView(
        room=_named(emitter_id, printing),
        emitter=emitter.kind if emitter is not None else "fin-tube baseboard",
        flow=_flow(flow, printing) if manifold else "",
        length=_length(length, printing),
        balancing=manifold and circuit.balanced,
    )


def _named(emitter_id: str, printing: Printing) -> str:
    """An emitter by its room; by its own name where its room has several."""
    job = printing.design.job
    emitter = job.system.emitters.get(emitter_id)
    if emitter is None:
        return emitter_id
    alone = sum(each.room == emitter.room for each in job.system.emitters.values()) == 1
    room = job.rooms.get(emitter.room)
    return str(room.name) if alone and room is not None else emitter.name


def _flow(flow: Figure | None, printing: Printing) -> str:
    """The flow of a run with as many decimals as in its schedule."""
    if flow is None or flow.is_missing:
        return ""
    return printing.show(flow, printing.units.shown(flow.dimension).places)


def _length(length: Figure, printing: Printing) -> str:
    if length.is_missing:
        return ""
    return printing.show(length, None if printing.units.feet_and_inches else 1)
