"""The table of parts: what the house is built of, what each part loses, and who says so."""

from __future__ import annotations

from dataclasses import replace

from heatledger.drawings.figure_words import bare
from heatledger.ledger.dimensions import EDGE_LOSS, LENGTH, RESISTANCE
from heatledger.ledger.figures import Figure, Leaf, LeafKind, flat
from heatledger.ledger.formulas import Formula
from heatledger.ledger.presets import Preset
from heatledger.ledger.show import show
from heatledger.ledger.sources import Standing
from heatledger.papers import heat_loss_data as data
from heatledger.papers.addresses import Addresses
from heatledger.papers.catalog_rows import row_name
from heatledger.papers.words import same_text
from heatledger.papers.workings_data import SourceUse
from heatledger.papers.workings_from import source
from heatledger.studies.parts import Part


def part_lines(parts: list[Part], found: Addresses) -> tuple[data.PartLine, ...]:
    """One line of the table for each part."""
    lines: list[data.PartLine] = []
    above: data.PartLine | None = None
    for line in (_line(each, found) for each in parts):
        again = above is not None and (line.name, line.source) == (above.name, above.source)
        lines.append(replace(line, source=SourceUse("as above", line.source.standing)) if again else line)
        above = line
    return tuple(lines)


def _line(part: Part, found: Addresses) -> data.PartLine:
    units = found.units

    def cell(figure: Figure | None, none: str = "–", places: int | None = None) -> data.Cell:
        return (
            data.Cell(bare(figure, units, places), found.key(figure))
            if figure is not None
            else data.Cell(none)
        )

    is_edge = part.is_edge
    size = cell(part.size, f"{len(part.sizes)} edges" if is_edge else "–", None if is_edge else 1)
    own_unit = is_edge and part.size is not None and not units.feet_and_inches
    return data.PartLine(
        part.cause,
        part.name,
        size,
        cell(None if is_edge else part.factor),
        cell(part.difference),
        cell(part.loss, places=0),
        source_of_factor(part.factor, units),
        units.shown(LENGTH).unit.text if own_unit else "",
    )


def source_of_factor(factor: Figure, units: Preset) -> SourceUse:
    """Who says it: the entry, the row of the catalog, or the formula and the R-value it starts from."""
    origin = factor.origin
    if isinstance(origin, Leaf):
        return _of_entry(factor, origin, units)
    if not isinstance(origin, Formula):
        return SourceUse("chosen", Standing.JUDGMENT.value)
    inputs = list(flat(factor.inputs))
    given = next((each for each in inputs if each.dimension is RESISTANCE), None)
    if given is None or not isinstance(given.origin, Leaf):
        return source(origin.citation)
    said = _of_entry(given, given.origin, units)
    if len(inputs) == 1:  # turned over and nothing more
        return said
    return SourceUse(f"{source(origin.citation).text}; R-value: {said.text}", origin.citation.standing.value)


def _of_entry(figure: Figure, origin: Leaf, units: Preset) -> SourceUse:
    if origin.kind is LeafKind.CATALOG and origin.citation is not None:
        said = source(origin.citation)
        shown = units.shown(figure.dimension).unit.text
        is_in_table = figure.dimension not in (RESISTANCE, EDGE_LOSS) and origin.unit == shown
        number = "" if is_in_table else f", {_letter(figure)}{origin.typed} {origin.unit}"
        return SourceUse(f"{row_name(origin)}{number}: {said.text}", said.standing)
    if origin.citation is not None:
        return source(origin.citation)
    if figure.is_missing:
        return SourceUse("not given yet", "")
    known = f", {origin.known}" if origin.known else ""
    return SourceUse(f"given in the job{_as_typed(figure, origin, units)}{known}", Standing.YOURS.value)


def _letter(figure: Figure) -> str:
    return {RESISTANCE: "R ", EDGE_LOSS: "F "}.get(figure.dimension, "")


def _as_typed(figure: Figure, origin: Leaf, units: Preset) -> str:
    """What was typed, where the column of U-values does not show it so."""
    letter = _letter(figure)
    if letter:
        has_letter = origin.typed[:1].upper() == letter[0]
        return f" as {origin.typed if has_letter else letter + show(figure, units)}"
    seen = (show(figure, units), bare(figure, units))
    return "" if any(same_text(origin.typed, each) for each in seen) else f" as {origin.typed}"
