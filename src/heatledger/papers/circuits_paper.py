"""The circuit schedule: each run with its tube and head, the index circuit, and what the circulator does."""

from __future__ import annotations

from heatledger.drawings.pump_from import circulator_name, pump_drawing
from heatledger.job.system_model import HOME_RUN, Circuit, Pipe
from heatledger.ledger.dimensions import (
    FLOW_COEFFICIENT,
    FRICTION,
    HEAD,
    LENGTH,
    TEMPERATURE_DIFFERENCE,
    VELOCITY,
    VOLUME_FLOW,
)
from heatledger.papers import blocks as b
from heatledger.papers.emitters_paper import length_cell
from heatledger.papers.printing import Printing
from heatledger.steps.circuits import CircuitFlow
from heatledger.steps.piping import PipeHead
from heatledger.steps.plant_piping import CirculatorDuty
from heatledger.steps.tubes import size_limits

TITLE = "Circuit schedule"
BALANCE = (
    "Balancing is the flow coefficient that the valve of a run is set to, so that every run gets its flow "
    "while the index run stays open. Fittings count as length of tube that resists as much."
)
WORK = (
    "Soldering, pressing and testing under pressure hurt people when done wrong: test with water, keep "
    "clear while it is under pressure, and take the relief valve off for the test and put it back. "
    "Circulators are wired by those licensed for it."
)


def circuits_paper(printing: Printing) -> b.Paper:
    """The schedule circuit by circuit, then the circulators."""
    found = printing.design.circuits
    blocks: list[b.Block] = [b.Paragraph(_opening(printing), "lead"), _summary(printing)]
    for id, duty in found.plant.circulators.items():
        blocks += [b.Heading(circulator_name(id, duty)), *_duty(id, duty, printing)]
    for id, each in found.circuits.items():
        circuit = printing.design.job.system.circuits[id]
        blocks += [b.Heading(each.name), *_circuit(each, circuit, printing)]
    blocks.append(b.Paragraph(BALANCE, "small"))
    blocks += [b.Paragraph(_why_tubes(printing), "small"), *_mains(printing)]
    blocks += [b.Heading("Open"), printing.findings(4)]
    blocks += [printing.caution(WORK), printing.sources("circuits", sheets=(4,))]
    return b.Paper(printing.head(TITLE), tuple(blocks))


def _opening(printing: Printing) -> b.Text:
    duties = list(printing.design.circuits.plant.circulators.values())
    run = printing.run
    if len(duties) != 1:
        return "Each circuit with its runs, what they ask for, and the circulator that moves its water."
    duty = duties[0]
    said: list[str | b.Run] = [
        f"{duty.name or 'The circulator'} must move ", run(duty.needed_flow, bold=True), " against ",
        run(duty.needed_head, bold=True), ".",
    ]  # fmt: skip
    if duty.actual_flow is not None and duty.actual_head is not None:
        said += [" It runs at ", run(duty.actual_flow, bold=True), " and ", run(duty.actual_head), "."]
    index = printing.design.circuits.circuits.get(duty.index_circuit)
    if index is not None:
        said.append(f" The index circuit is {index.name}.")
    return tuple(said)


def _summary(printing: Printing) -> b.Table:
    """Every circuit in one row: as designed, and as it settles on the curve of the circulator."""
    flow, drop = printing.unit(VOLUME_FLOW), printing.unit(TEMPERATURE_DIFFERENCE)
    columns = (
        b.Column("Circuit", width="1fr"), b.Column("Flow", "right", unit=flow),
        b.Column("ΔT", "right", unit=drop), b.Column("Head", "right", unit=printing.unit(HEAD)),
        b.Column("Flow that results", "right", unit=flow), b.Column("ΔT that results", "right", unit=drop),
        b.Column("Output that results", "right", unit=_unit_of_heat(printing)),
    )  # fmt: skip
    rows = tuple(
        b.Row((
            b.Cell(each.name), printing.cell(each.flow), printing.cell(each.drop), printing.cell(each.head),
            *map(printing.cell, (each.actual_flow, each.actual_drop, each.actual_output)),
        ))
        for each in printing.design.circuits.circuits.values()
    )  # fmt: skip
    return b.Table(columns, rows, "ΔT is the temperature drop. A dash: no circulator curve is given.")


def _unit_of_heat(printing: Printing) -> str:
    return printing.unit(printing.design.losses.house.loss.dimension)


def _circuit(each: CircuitFlow, circuit: Circuit, printing: Printing) -> list[b.Block]:
    run = printing.run
    zone = printing.design.job.system.zones.get(each.zone)
    of_zone = f" of zone {zone.name}" if zone is not None and zone.name != each.name else ""
    said: list[str | b.Run] = [
        f"{each.kind[:1].upper()}{each.kind[1:]}{of_zone}: load ", run(each.load), ", flow ", run(each.flow),
        ", head ", run(each.head), ".",
    ]  # fmt: skip
    if circuit.kind == HOME_RUN and each.index_run in circuit.runs:
        said.append(f" The index run is {_emitter(each.index_run, printing)}.")
    return [b.Paragraph(tuple(said)), _runs(each, circuit, printing)]


def _runs(each: CircuitFlow, circuit: Circuit, printing: Printing) -> b.Table:
    manifold = circuit.kind == HOME_RUN
    head, length = printing.unit(HEAD), printing.unit(LENGTH)
    columns = [
        b.Column("Run" if manifold else "Leg to", width="1fr"), b.Column("Tube"),
        b.Column("Length", "right", unit=length), b.Column("Fittings", "right", unit=length),
        b.Column("Flow", "right", unit=printing.unit(VOLUME_FLOW)),
        b.Column("Velocity", "right", unit=printing.unit(VELOCITY)),
        b.Column("Friction", "right", unit=printing.unit(FRICTION)), b.Column("Head", "right", unit=head),
    ]  # fmt: skip
    if manifold:
        columns.append(b.Column("Balancing", "right", unit=printing.unit(FLOW_COEFFICIENT)))
    rows = [_run("Common piping", each.common, circuit.common, manifold, printing)]
    for id, pipe in each.runs.items():
        name = _emitter(id, printing)
        index = manifold and id == each.index_run
        rows.append(_run(name, pipe, circuit.runs[id], manifold, printing, index))
    return b.Table(tuple(columns), tuple(rows))


def _run(
    name: str, pipe: PipeHead, given: Pipe, manifold: bool, printing: Printing, index: bool = False
) -> b.Row:
    tube = pipe.tube or "not chosen yet"
    chosen: b.Text = tube if given.tube is not None else (tube, b.Run("  chosen", "quiet"))
    cells = [
        b.Cell((b.Run(name, "bold"), b.Run("  index", "quiet")) if index else name), b.Cell(chosen),
        length_cell(pipe.length, printing), length_cell(pipe.fittings_length, printing),
        *map(printing.cell, (pipe.flow, pipe.velocity, pipe.friction)),
        printing.cell(pipe.head, strong=index),
    ]  # fmt: skip
    if manifold:
        open_ = b.Cell("open") if index else printing.cell(pipe.balancing)
        cells.append(b.NOTHING if name == "Common piping" else open_)
    return b.Row(tuple(cells))


def _emitter(id: str, printing: Printing) -> str:
    found = printing.design.job.system.emitters.get(id)
    return found.name if found is not None else id


def _mains(printing: Printing) -> list[b.Block]:
    mains = printing.design.circuits.plant.mains
    if mains is None:
        return []
    said = (
        f"Mains in {mains.tube}: ", printing.run(mains.length), ", flow ", printing.run(mains.flow), " at ",
        printing.run(mains.velocity), ", head ", printing.run(mains.head), ".",
    )  # fmt: skip
    return [b.Heading("Mains"), b.Paragraph(said)]


def _why_tubes(printing: Printing) -> b.Text:
    limits = size_limits(printing.design.job)
    return (
        "A tube marked chosen is the smallest of its family in which the water stays under ",
        printing.run(limits.velocity), " and its friction under ", printing.run(limits.friction),
        "; where none does, it is the largest. A slow run does not carry air along: purge it by itself.",
    )  # fmt: skip


def _duty(id: str, duty: CirculatorDuty, printing: Printing) -> list[b.Block]:
    columns = (
        b.Column("", width="1fr"), b.Column("Flow", "right", unit=printing.unit(VOLUME_FLOW)),
        b.Column("Head", "right", unit=printing.unit(HEAD)),
    )  # fmt: skip
    rows = [b.Row((b.Cell("Needed"), printing.cell(duty.needed_flow), printing.cell(duty.needed_head)))]
    if duty.actual_flow is not None:
        rows.append(b.Row((
            b.Cell("It runs at"), printing.cell(duty.actual_flow, strong=True),
            printing.cell(duty.actual_head, strong=True),
        )))  # fmt: skip
    given = printing.design.job.system.plant.circulators.get(id)
    if given is not None:
        for name, flow, head in (
            ("Curve, no flow", None, given.shutoff),
            ("Curve, middle", given.middle_flow, given.middle_head),
            ("Curve, high", given.high_flow, given.high_head),
        ):
            rows.append(b.Row((b.Cell(name), printing.cell(flow), printing.cell(head))))
    facts: list[b.Block] = [b.Table(columns, tuple(rows), whole=True)]
    if duty.hydraulic_power is not None:
        facts.append(b.Paragraph(("Power in the water: ", printing.run(duty.hydraulic_power), "."), "small"))
    drawing = pump_drawing(printing.design, printing.units, id, 290.0)
    if drawing is None:
        return facts
    picture = b.Picture(drawing, "Ring: where it runs. Cross: what is needed.")
    return [b.Columns(((picture,), tuple(facts)), (1.35, 1.0))]
