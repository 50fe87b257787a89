"""Findings as lines of text, by weight."""

from __future__ import annotations

import textwrap

from heatledger.cli.common import WIDTH
from heatledger.ledger.figures import Figure, Names
from heatledger.ledger.findings import Finding, Weight
from heatledger.ledger.presets import Preset
from heatledger.ledger.show import show
from heatledger.steps.design import Design
from heatledger.steps.review import KINDS

SHAPES = {Weight.MUST_FIX: "▲ Must fix", Weight.DECIDE: "◇ Decide  ", Weight.NOTE: "• Note    "}


def findings_lines(house: Design, units: Preset, mends: bool = False) -> list[str]:
    """Every finding with its shape and word; with ways to mend it when asked."""
    lines: list[str] = []
    for each in house.findings:
        lines += _finding(each, units, mends, house.names)
    if mends and house.not_checked:
        lines.append("")
        lines.append("Not checked, for want of what is named:")
        for open_one in house.not_checked:
            at = f" ({open_one.where})" if open_one.where else ""
            text = f"{open_one.id}{at}: {open_one.for_want_of}"
            lines += textwrap.wrap(text, WIDTH, initial_indent="  ", subsequent_indent="    ")
    return lines


def reason_of(each: Finding) -> str:
    """Why findings of this kind matter."""
    return KINDS[each.id].why


def _finding(each: Finding, units: Preset, mends: bool, names: Names) -> list[str]:
    head = "✓ Decided " if each.decided else SHAPES[each.weight]
    lines = textwrap.wrap(f"{head}  {each.what}", WIDTH, subsequent_indent=" " * 12)
    if each.caution:
        lines += textwrap.wrap(
            f"Caution: {each.caution}", WIDTH, initial_indent=" " * 12, subsequent_indent=" " * 12
        )
    if not mends:
        return lines
    indent = " " * 12
    said = [f"Why: {reason_of(each)}"]
    if isinstance(each.why, Figure):
        said.append(f"Here: {names.title(each.why)}, {show(each.why, units)}")
    elif each.why and each.why != reason_of(each):
        said.append(f"Here: {each.why}")
    if each.threshold:
        said.append(f"Limit used: {each.threshold}")
    said += [f"To mend: {mend.words}" for mend in each.mends]
    if each.decided:
        parts = (each.decided.words, each.decided.because, each.decided.by)
        said.append("Decided: " + "; ".join(part for part in parts if part))
    said.append(f"[{each.citation}; {each.citation.standing.value}]  {each.id} at {each.where or 'house'}")
    for line in said:
        lines += textwrap.wrap(line, WIDTH, initial_indent=indent, subsequent_indent=indent + "  ")
    return lines
