"""A working opened level by level, each thing once, as text."""

from __future__ import annotations

from heatledger.ledger.as_text import as_text
from heatledger.ledger.compose import working_of
from heatledger.ledger.figures import Figure, Placed, flat
from heatledger.ledger.presets import Preset
from heatledger.ledger.show import show


def unfolded(found: Placed, units: Preset, levels: int) -> str:
    """The working of a figure and of what it is built on, ``levels`` deep."""
    names = found.names
    blocks = [_headed(found.original, found, units)]
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
    # Losses built on it first; shares and losses per area say less.
    uses = sorted(names.uses(found.original), key=lambda each: each.dimension is not found.dimension)
    if uses:
        said = [f"{show(each, units)} {names.title(each)} ({names.path(each)})" for each in uses[:6]]
        more = f"\n    and {len(uses) - 6} more" if len(uses) > 6 else ""
        blocks[0] += "\n\n    Goes into\n      " + "\n      ".join(said) + more
    return "\n\n".join(blocks)


def _headed(figure: Figure, found: Placed, units: Preset) -> str:
    return as_text(working_of(figure, units, found.names))
