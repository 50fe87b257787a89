"""The startup sheets: what must not happen, the steps in order, and the readings that are due."""

from __future__ import annotations

from heatledger.drawings.reset_from import reset_drawing
from heatledger.ledger.dimensions import (
    CONCENTRATION,
    DRAFT,
    HEAT_RATE,
    PRESSURE,
    TEMPERATURE,
    TEMPERATURE_DIFFERENCE,
    VOLUME_FLOW,
    Dimension,
)
from heatledger.ledger.figures import Figure
from heatledger.papers import blocks as b
from heatledger.papers.findings_by_sheet import STARTUP_SHEET, is_draft, must_fix, poison, sheet_of
from heatledger.papers.printing import LOCAL_CODE, Printing
from heatledger.papers.reset_table import fixed_line, follows_weather, reset_rows
from heatledger.steps.checklist import checklist_of
from heatledger.steps.said import CheckStep

TITLE = "Startup"
STAY = (
    "Until combustion and draft are read and written down by who is licensed for it, stay with the boiler "
    "and shut it off before you go. A bad fire or a blocked vent fills the house with carbon monoxide, "
    "which kills without a smell."
)
ELECTRIC_STAY = (
    "Until the readings below are written down by who is licensed for it, stay with the boiler and shut it "
    "off before you go."
)
ORDER = (
    "Do the steps in their order. Tick a box only for what you have seen yourself, and write down what you "
    f"read. {LOCAL_CODE}"
)
STOP = (
    "Smell of gas, spillage, carbon monoxide in the room, water where it should not be, or a relief valve "
    "that runs: shut off, air the house, everyone out if the alarm sounds, and call from outside."
)
SETTINGS = "Not given in the job. Read each and write it down before the first fire; nothing is assumed here."
AGREE = (
    "Targets follow the supply as read, the rooms as they are and the zones that call; outdoors decides "
    "only what the reset asks for. A temperature drop (ΔT) that is too high says little flow, one too low "
    "says much flow or cold rooms."
)


def startup_paper(printing: Printing) -> b.Paper:
    """The frame that stands above everything, the checklist, the readings, the reset, who signs."""
    steps = checklist_of(printing.design)
    blocks: list[b.Block] = [_above(printing), b.Paragraph(ORDER)]
    blocks += [b.Heading("Steps in order"), b.Checklist(_checks(steps, printing))]
    blocks += [b.Heading("Readings"), _whole(printing), *_settings(printing)]
    blocks += [*_circuits(printing), *_emitters(printing)]
    if _burns(printing):
        blocks += [b.Heading("Fire and flue"), _fire(printing)]
    blocks += [b.Heading("Who has done it"), _signed()]
    blocks += [b.Heading("Open"), open_of(printing), *_reset(printing)]
    blocks += [printing.caution(STOP), printing.sources("startup", "controls", sheets=(7,))]
    return b.Paper(printing.head(TITLE), tuple(blocks))


def _burns(printing: Printing) -> bool:
    boiler = printing.design.job.system.plant.boiler
    return boiler is None or boiler.fuel != "electricity"


def _above(printing: Printing) -> b.Block:
    """Said above everything: the order in bold, why, and what is still not read."""
    startup, found = printing.design.startup.startup, poison(printing.design)
    if startup.may_run and not found:
        texts = (
            f"Combustion and draft are recorded in the job. If either changes, read again before you "
            f"leave. {STOP}",
            LOCAL_CODE,
        )
        return b.Frame("Read the flue again after any change.", texts)
    waits = ", ".join(each for each in startup.waits_for if each not in found)
    still = [f"Readings report poison. First of all: {', '.join(found)}."] if found else []
    still += [f"Not read yet, or not yet as it must be: {waits}."] if waits else []
    lead = (b.Run("Do not leave it running.", "bold", mark="must fix"),)
    return b.Frame("", (lead, *still, STAY if _burns(printing) else ELECTRIC_STAY, LOCAL_CODE))


def _checks(steps: list[CheckStep], printing: Printing) -> tuple[b.Check, ...]:
    """The steps of this job numbered as they are done; those it has no use for say so."""
    return tuple(
        b.Check(
            str(number), each.title, printing.spoken(each.do) if each.applies else "",
            printing.spoken(each.pass_) if each.applies else "Not for this job.",
            _blanks(each, printing), _caution(each) if each.applies else "", each.applies,
        )
        for number, each in enumerate(steps, 1)
    )  # fmt: skip


def _caution(step: CheckStep) -> str:
    """What can hurt at a step; that the code governs is said once for all of them."""
    return step.caution.removesuffix(LOCAL_CODE).strip()


_READ: dict[str, tuple[tuple[str, Dimension | str], ...]] = {
    "pressure-test": (("held at", PRESSURE), ("for", "min")),
    "tank-charge": (("reads", PRESSURE),),
    "fill": (("reads", PRESSURE),),
    "gas-supply": (("standing", DRAFT), ("full fire", DRAFT)),
    "oil-supply": (("vacuum", "in. Hg"),),
    "combustion": (("oxygen", "%"), ("carbon monoxide, air free", "ppm"), ("stack", TEMPERATURE)),
    "spillage": (("draft", DRAFT), ("room carbon monoxide", CONCENTRATION)),
    "input": (("input", HEAT_RATE),),
    "boiler-drop": (("supply", TEMPERATURE), ("return", TEMPERATURE)),
    "electrical": (("volts", "V"), ("amps", "A")),
    "hot-pressure": (("cold", PRESSURE), ("hot", PRESSURE)),
}
"""What is written down at a step, by its id."""
_OF_A_CIRCUIT: tuple[tuple[str, Dimension | str], ...] = (("supply", TEMPERATURE), ("return", TEMPERATURE))


def _blanks(step: CheckStep, printing: Printing) -> tuple[b.Blank, ...]:
    if not step.applies:
        return ()
    return tuple(
        b.Blank(label, unit if isinstance(unit, str) else printing.unit(unit))
        for label, unit in _READ.get(step.id, _OF_A_CIRCUIT if step.id.startswith("drop-") else ())
    )


def _target_table(rows: list[tuple[b.Text, Figure | None]], printing: Printing) -> b.Table:
    columns = (
        b.Column("Reading", width="1.4fr"), b.Column("Due", "right", "0.7fr"),
        b.Column("Read", width="0.9fr"), b.Column("By, when", width="1fr"),
    )  # fmt: skip
    made = [
        b.Row(
            (b.Cell(name), b.NONE if each is None else printing.cell(each, unit=True), b.NOTHING, b.NOTHING)
        )
        for name, each in rows
    ]
    return b.Table(columns, tuple(made), AGREE, ruled=True, row_height=17.0, whole=True)


def _whole(printing: Printing) -> b.Table:
    """The readings of the system as a whole."""
    due = printing.design.startup.startup
    rows: list[tuple[b.Text, Figure | None]] = [
        ("Outdoors, targets are for", due.outdoor), ("Rooms, targets are for", due.room),
        ("Supply that the control asks for", due.supply_due), ("Supply, targets are for", due.supply),
        ("Return", due.return_), ("Temperature drop (ΔT)", due.drop), ("Flow", due.flow),
        ("ΔT across the boiler at full fire, water still warming", due.fire_drop),
        ("ΔT across the boiler once settled", due.settled_drop),
        ("Output to the rooms", due.output), ("Pressure, cold", due.cold_pressure),
        ("Pressure, hot", due.hot_pressure),
    ]  # fmt: skip
    return _target_table(rows, printing)


def _circuits(printing: Printing) -> list[b.Block]:
    due = printing.design.startup.startup.circuits
    if not due:
        return []
    drop, flow = printing.unit(TEMPERATURE_DIFFERENCE), printing.unit(VOLUME_FLOW)
    unit = printing.unit(TEMPERATURE)
    columns = (
        b.Column("Circuit", "left", "1.6fr"), b.Column("Flow due", "right", unit=flow),
        b.Column("ΔT due", "right", unit=drop), b.Column("Return due", "right", unit=unit),
        b.Column("Gives", "right", unit=printing.unit(HEAT_RATE)),
        b.Column("ΔT read", "left", "0.9fr", drop), b.Column("Return read", "left", "0.9fr", unit),
    )  # fmt: skip
    rows = tuple(
        b.Row((
            b.Cell(each.name), *map(printing.cell, (each.flow, each.drop, each.return_, each.output)),
            b.NOTHING, b.NOTHING,
        ))
        for each in due.values()
    )  # fmt: skip
    return [b.Heading("Circuits, 20 minutes into a call"),
            b.Table(columns, rows, ruled=True, row_height=18.0, whole=len(rows) < 15)]  # fmt: skip


def _emitters(printing: Printing) -> list[b.Block]:
    due, design = printing.design.startup.startup.emitters, printing.design
    if not due:
        return []
    unit = printing.unit(TEMPERATURE)
    columns = (
        b.Column("Emitter", width="1.6fr"), b.Column("Water out due", "right", unit=unit),
        b.Column("Gives", "right", unit=printing.unit(HEAT_RATE)),
        b.Column("Water out read", "left", "0.9fr", unit), b.Column("Remark", width="1.4fr"),
    )  # fmt: skip
    rows = []
    for id, each in due.items():
        emitter = design.job.system.emitters.get(id)
        name = emitter.name if emitter is not None else id
        cells = (b.Cell(name), printing.cell(each.outlet), printing.cell(each.output), b.NOTHING, b.NOTHING)
        rows.append(b.Row(cells))
    return [b.Heading("Emitters"), b.Table(columns, tuple(rows), ruled=True, row_height=17.0)]


def _fire(printing: Printing) -> b.Table:
    """What only a licensed person with an analyzer writes down."""
    columns = (
        b.Column("Reading", width="1.6fr"), b.Column("High fire", width="1fr"),
        b.Column("Low fire", width="1fr"), b.Column("By, license, when", width="1.4fr"),
    )  # fmt: skip
    draft, boiler = printing.unit(DRAFT), printing.design.job.system.plant.boiler
    oil = boiler is not None and boiler.fuel == "oil"
    fuel = ("Smoke", "Vacuum and pressure of the oil pump") if oil else (f"Gas pressure, {draft}",)
    names = ("Oxygen, %", "Carbon monoxide, air free, ppm", f"Stack, {printing.unit(TEMPERATURE)}",
             f"Draft or vent pressure, {draft}", *fuel, "Carbon monoxide in the room, ppm",
             "Analyzer and date of its calibration")  # fmt: skip
    rows = tuple(b.Row((b.Cell(name), b.NOTHING, b.NOTHING, b.NOTHING)) for name in names)
    note = "Targets stand in the steps; the sheet of the boiler's maker goes before them."
    return b.Table(columns, rows, note, ruled=True, row_height=18.0, whole=True)


def _reset(printing: Printing) -> list[b.Block]:
    heading = b.Heading("Water by the weather")
    if not follows_weather(printing):
        return [heading, b.Paragraph(fixed_line(printing))]
    table, drawing = reset_rows(printing), reset_drawing(printing.design, printing.units, 300.0)
    if drawing is None:
        return [heading, table]
    return [heading, b.Columns(((b.Picture(drawing),), (table,)), (1.35, 1.0))]


def open_of(printing: Printing) -> b.Findings:
    """What is open before anything is started: must fix of the whole design, then the rest of startup."""
    found = printing.design.findings
    first = {id(each) for each in must_fix(printing.design)}
    lines = list(zip(found, printing.finding_lines(), strict=True))
    ranked = [line for each, line in lines if id(each) in first]
    ranked += [line for each, line in lines if id(each) not in first and sheet_of(each.id) == STARTUP_SHEET]
    none = "Readings report poison: see above." if is_draft(printing.design) else "Nothing is open."
    return b.Findings(tuple(ranked), none)


def _settings(printing: Printing) -> list[b.Block]:
    """Settings of the guards that the job does not give, to be read and written down."""
    plant, blanks = printing.design.job.system.plant, []
    if printing.relief is None:
        blanks.append(b.Blank("Relief valve opens at, by its plate", printing.unit(PRESSURE)))
    if plant.high_limit is None or plant.high_limit.is_missing:
        blanks.append(b.Blank("High limit set at", printing.unit(TEMPERATURE)))
    if plant.low_water_cutoff is not True:
        blanks.append(b.Blank("Low-water cutoff: make, proved on"))
    return [b.Paragraph(SETTINGS), b.Blanks(tuple(blanks), 2)] if blanks else []


def _signed() -> b.Blanks:
    return b.Blanks(
        (b.Blank("Started by"), b.Blank("License"), b.Blank("Date"), b.Blank("Combustion read by"),
         b.Blank("License"), b.Blank("Date"), b.Blank("Handed over to"), b.Blank("Signature"),
         b.Blank("Date")),
        3,
    )  # fmt: skip
