"""A working opened level by level, each thing once, as text."""

from __future__ import annotations

import textwrap
from math import sqrt

from heatledger.cli.common import WIDTH
from heatledger.ledger.as_text import GLUE, as_text
from heatledger.ledger.compose import working_of
from heatledger.ledger.dimensions import TEMPERATURE_DIFFERENCE
from heatledger.ledger.figures import Figure, Placed, flat
from heatledger.ledger.presets import Preset
from heatledger.ledger.show import show, show_range
from heatledger.steps.design import DesignNames
from heatledger.studies.uncertainty import band_of, half_range_text

MOST_SWINGS = 5
MOST_USES = 6


def unfolded(found: Placed, units: Preset, levels: int) -> str:
    """The working of a figure and of what it is built on, ``levels`` deep."""
    names = found.names
    blocks = [as_text(working_of(found.original, units, names))]
    seen = {id(found.original)}
    layer = [found.original]
    for _ in range(levels):
        below: list[Figure] = []
        for figure in layer:
            for each in flat(figure.inputs):
                if id(each) not in seen:
                    seen.add(id(each))
                    below.append(each)
        blocks += [as_text(working_of(each, units, names)) for each in below]
        layer = below
        if not layer:
            break
    blocks = [_folded(each) for each in blocks]
    blocks[0] += _likely(found, units) + _goes_into(found, units)
    return "\n\n".join(blocks)


def _folded(block: str) -> str:
    """A working whose title goes over as many lines as it needs."""
    title, end, rest = block.partition("\n")
    return "\n".join(textwrap.wrap(title, WIDTH, subsequent_indent="    ")) + end + rest


def _likely(found: Placed, units: Preset) -> str:
    """The first-order band and how it comes about: half-range times slope, squares added, root taken."""
    if not isinstance(found.names, DesignNames) or not found.inputs or found.is_missing:
        return ""
    made = band_of(found.original, found.names.design)
    if not made.swings:
        return ""
    dimension = found.dimension
    step = TEMPERATURE_DIFFERENCE if dimension.absolute else dimension
    lines = [
        f"Likely {show_range(made.low, made.high, units, dimension)}, if entries are off by as much as listed"
    ]
    for each in made.swings[:MOST_SWINGS]:
        entry = f", {show(each.entries[0], units)}" if len(each.entries) == 1 else ""
        off = half_range_text(each, units).replace(" ", GLUE)
        lines.append(f"  ± {show(each.swing, units, step)}  {each.words}{entry} {off}, {each.known}")
    rest = made.swings[MOST_SWINGS:]
    if rest:
        together = sqrt(sum(each.swing**2 for each in rest))
        words = "a smaller one" if len(rest) == 1 else f"{len(rest)} smaller ones together"
        lines.append(f"  ± {show(together, units, step)}  {words}")
    lines.append(f"  squares added, root taken: ± {show(made.half, units, step)}")
    wrapped = [
        part.replace(GLUE, " ")
        for line in lines
        for part in textwrap.wrap(line, WIDTH - 4, subsequent_indent=" " * 8)
    ]
    return "\n\n    " + "\n    ".join(wrapped)


def _goes_into(found: Placed, units: Preset) -> str:
    """What is built on it; losses first, since shares and losses per area say less."""
    names = found.names
    uses = sorted(names.uses(found.original), key=lambda each: each.dimension is not found.dimension)
    if not uses:
        return ""
    lines = []
    for each in uses[:MOST_USES]:
        text = f"{show(each, units)}  {names.title(each)}: {names.path(each)}"
        lines += textwrap.wrap(text, WIDTH - 6, subsequent_indent=" " * 4, break_long_words=False)
    if len(uses) > MOST_USES:
        lines.append(f"and {len(uses) - MOST_USES} more")
    return "\n\n    Goes into\n      " + "\n      ".join(lines)
