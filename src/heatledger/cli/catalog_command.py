"""``heatledger catalog``: the constructions a job can take by name."""

from __future__ import annotations

import textwrap
from difflib import get_close_matches

import click

from heatledger.cli.common import WIDTH, WRONG_USE, end, put, say

KINDS = ("wall", "ceiling", "floor", "window", "door", "below-grade wall", "below-grade floor", "slab edge")


@click.command("catalog")
@click.argument("words", nargs=-1)
def command(words: tuple[str, ...]) -> None:
    """The constructions of the catalog: all, those of a kind, or those that hold the words given.

    \b
    heatledger catalog
    heatledger catalog window
    heatledger catalog wall 2x4

    A job takes one by its name:  {kind: wall, catalog: frame-wall-2x4-r-11}
    """
    from heatledger.catalog.loader import ConstructionRow, constructions

    wanted = [each.lower() for each in words]

    def holds(row: ConstructionRow) -> bool:
        text = f"{row.kind} {row.key} {row.name}".lower()
        return all(each in text for each in wanted)

    rows = [row for row in constructions().values() if holds(row)]
    if not rows:
        near = get_close_matches("-".join(wanted), list(constructions()), n=5, cutoff=0.3)
        say(f"No construction of the catalog holds {' '.join(words)!r}.")
        if near:
            say(f"The nearest are: {', '.join(near)}.")
        end(WRONG_USE)
    for kind in KINDS:
        some = [row for row in rows if row.kind == kind]
        if some:
            put(kind.capitalize())
        for row in some:
            put(f"  {row.key}")
            text = f"{row.name}: {row.typed} {row.unit}  [{row.citation}; {row.citation.standing.value}]"
            put(textwrap.fill(text, WIDTH, initial_indent="      ", subsequent_indent="      "))
    end(0)
