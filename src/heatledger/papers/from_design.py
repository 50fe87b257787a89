"""From a design to the paper "Heat loss of the house": units, rounding and words are chosen here."""

from __future__ import annotations

from heatledger.ledger.presets import Preset
from heatledger.papers import front, tables
from heatledger.papers.groups import addresses
from heatledger.papers.heat_loss_data import HeatLossPaper
from heatledger.papers.parts import part_lines, parts_of_house
from heatledger.papers.references import references
from heatledger.papers.workings_from import group_of
from heatledger.steps.design import Design
from heatledger.steps.surfaces import CAUSES
from heatledger.studies.uncertainty import band

CAUTIONS = (
    "This paper gives the heat loss of the house and nothing else. Local code and licensed practice decide "
    "what may be built; where they ask for another method or other figures, theirs hold.",
    "Gas, vent, electrical and pressure work belongs to licensed trades. Keep a working carbon monoxide "
    "alarm outside every sleeping area and on every storey.",
)


def heat_loss_paper(design: Design, units: Preset) -> HeatLossPaper:
    """The paper of a design for one reader."""
    parts = parts_of_house(design)
    found, made = addresses(design, units, parts), band(design, "house/loss")
    return HeatLossPaper(
        head=front.head(design),
        units=front.column_units(design, units),
        answer=front.answer(design, found, made),
        conditions=front.conditions(design, found),
        house=front.house_view(design, units),
        causes=tuple(tables.cause_line(cause, design, found) for cause in CAUSES),
        rooms=tables.room_lines(design, found),
        house_line=tables.house_line(design, found),
        cautions=CAUTIONS,
        levels=tables.level_lines(design, found),
        matters=front.matters(design, found, made.swings),
        matters_note=front.matters_note(made.swings),
        findings=tuple(tables.finding_line(each, design, found) for each in design.findings),
        not_checked=tables.not_checked_lines(design),
        parts=part_lines(parts, found),
        parts_note=f"Area × U-value × ΔT is the loss of a part. {tables.heights_note(design)}".strip(),
        workings=tuple(group_of(each, found) for each in found.groups),
        tape=tables.tape(design, found),
        tape_note=f"The number at the end is the line of {design.job.source.file_name}.",
        references=references(design, found),
    )  # fmt: skip
