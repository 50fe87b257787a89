"""``heatledger catalog``: what a job can take by name, and the tables that workings rest on."""

from __future__ import annotations

import textwrap
from difflib import get_close_matches

import click

from heatledger.cli.common import WIDTH, WRONG_USE, end, put, say


@click.command("catalog")
@click.argument("words", nargs=-1)
def command(words: tuple[str, ...]) -> None:
    """The rows of the catalog: all, those of a kind, or those that hold the words given.

    \b
    heatledger catalog
    heatledger catalog window
    heatledger catalog wall 2x4
    heatledger catalog copper 3/4
    heatledger catalog radiator

    A job takes one by its name:  {kind: wall, catalog: frame-wall-2x4-r-11}, tube: copper-m-3/4
    """
    from heatledger.catalog.listing import Listed, listing

    wanted = [each.lower() for each in words]

    def holds(row: Listed) -> bool:
        text = f"{row.group} {row.key} {row.name}".lower()
        return all(each in text for each in wanted)

    every = listing()
    rows = [row for row in every if holds(row)]
    if not rows:
        near = get_close_matches("-".join(wanted), [row.key for row in every], n=5, cutoff=0.3)
        say(f"No row of the catalog holds {' '.join(words)!r}.")
        if near:
            say(f"The nearest are: {', '.join(near)}.")
        end(WRONG_USE)
    for group in dict.fromkeys(row.group for row in rows):
        put(group)
        for row in rows:
            if row.group == group:
                put(f"  {row.key}")
                text = f"{row.name}: {row.value}  [{row.citation}; {row.citation.standing.value}]"
                put(textwrap.fill(text, WIDTH, initial_indent="      ", subsequent_indent="      "))
    end(0)
