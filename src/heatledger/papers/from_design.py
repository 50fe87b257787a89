"""From a design to the paper "Heat loss of the house": units, rounding and words are chosen here."""

from __future__ import annotations

from heatledger.drawings.house_view import house_view
from heatledger.drawings.load_chart import load_by_weather
from heatledger.drawings.matters_chart import matters_note
from heatledger.ledger.dimensions import TRANSMITTANCE
from heatledger.ledger.presets import Preset
from heatledger.papers import front, tables
from heatledger.papers.addresses import Addresses
from heatledger.papers.findings_by_sheet import HEAT_LOSS_SHEET, findings_of, not_checked_of
from heatledger.papers.groups import HEAT_LOSS, addresses
from heatledger.papers.heat_loss_data import HeatLossPaper, Weather
from heatledger.papers.parts import part_lines
from heatledger.papers.references import references
from heatledger.papers.words import floors_word
from heatledger.papers.workings_from import group_of
from heatledger.steps.design import Design
from heatledger.steps.surfaces import CAUSES
from heatledger.studies.parts import parts_of_house
from heatledger.studies.uncertainty import band

CAUTION = (
    "This paper gives the heat loss of the house and nothing else. Local code and licensed practice decide "
    "what may be built; where they ask for another method or other figures, theirs hold."
)


def cautions(units: Preset) -> tuple[str, ...]:
    """What every paper says about its limits and about safety."""
    return CAUTION, safety(units)


def safety(units: Preset) -> str:
    """The caution that stands on every paper."""
    return (
        "Gas, vent, electrical and pressure work belongs to licensed trades. Keep a working carbon monoxide "
        f"alarm outside every sleeping area and on every {floors_word(units)}."
    )


def heat_loss_paper(design: Design, units: Preset, found: Addresses | None = None) -> HeatLossPaper:
    """The paper of a design for one reader; ``found`` is its book of addresses where there is one."""
    parts = parts_of_house(design)
    found, made = found or addresses(design, units, parts), band(design, "house/loss")
    printed = found.keys_of(HEAT_LOSS)
    stages, findings = found.of(HEAT_LOSS), findings_of(design, HEAT_LOSS_SHEET)
    return HeatLossPaper(
        head=front.head(design),
        units=front.column_units(design, units),
        answer=front.answer(design, found, made),
        conditions=front.conditions(design, found),
        house=house_view(design, units),
        causes=tuple(tables.cause_line(cause, design, found) for cause in CAUSES),
        rooms=tables.room_lines(design, found),
        house_line=tables.house_line(design, found),
        cautions=cautions(units),
        levels=tables.level_lines(design, found),
        weather=_weather(design, units),
        matters=front.matters(design, found, made.swings),
        matters_note=matters_note(made.swings),
        findings=tuple(tables.finding_line(each, design, found) for each in findings),
        not_checked=tables.not_checked_lines(not_checked_of(design, HEAT_LOSS_SHEET)),
        parts=part_lines(parts, found),
        parts_note=_parts_note(design, units),
        workings=tuple(group_of(each, found, printed) for stage in stages for each in stage.groups),
        tape=tables.tape(design, found, stages),
        tape_note=tape_note(design),
        references=references(stages, findings),
    )  # fmt: skip


def _weather(design: Design, units: Preset) -> Weather | None:
    chart = load_by_weather(design, units)
    return None if chart is None else Weather(chart.title, chart.drawing, chart.sentence, chart.note)


def _parts_note(design: Design, units: Preset) -> str:
    unit = units.shown(TRANSMITTANCE).unit.text
    said = f"U-values in {unit}. Area × U-value × ΔT is the loss of a part. "
    return f"{said}{tables.heights_note(design, units)}".strip()


def tape_note(design: Design) -> str:
    """What the number at the end of an entry is."""
    return f"The number at the end is the line of {design.job.source.file_name or 'the job'}."
