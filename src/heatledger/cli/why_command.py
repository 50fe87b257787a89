"""``heatledger why``: one number with its arithmetic and its sources."""

from __future__ import annotations

from pathlib import Path

import click

from heatledger.cli.common import (
    WIDTH,
    WRONG_USE,
    end,
    job_argument,
    preset,
    put,
    read,
    say,
    told_in,
    units_option,
    what_if_option,
)

PATH = 52


@click.command("why")
@job_argument
@click.argument("path", required=False)
@units_option
@what_if_option
@click.option(
    "--levels", type=click.IntRange(0, 99), default=0, help="Open this many levels below the figure."
)
@click.option("--to-the-tape", is_flag=True, help="Open everything down to what was measured or looked up.")
@click.option("--list", "listing", is_flag=True, help="List the paths, or those that begin with PATH.")
def command(
    job_file: Path, path: str | None, units: str | None, what_ifs: tuple[str, ...], levels: int,
    to_the_tape: bool, listing: bool,
) -> None:  # fmt: skip
    """The working of the figure at PATH.

    \b
    heatledger why my-house.yaml rooms/kitchen/loss
    heatledger why my-house.yaml house/loss --levels 1
    heatledger why my-house.yaml rooms/kitchen/loss --to-the-tape
    heatledger why my-house.yaml plant/tank_volume
    heatledger why my-house.yaml rooms/kitchen --list
    """
    from heatledger.cli.unfold import unfolded
    from heatledger.ledger.show import show
    from heatledger.steps.design import NoSuchFigure, design

    job = read(job_file, what_ifs)
    reader = preset(units, job)
    house = told_in(design(job), reader)
    if listing or not path:
        wanted = (path or "").strip("/")
        paths = [each for each in house if each == wanted or each.startswith(f"{wanted}/" if wanted else "")]
        if not paths:
            say(
                f"No path begins with {wanted!r}. "
                f"The nearest are: {', '.join(house.nearest(wanted)) or 'none'}."
            )
            end(WRONG_USE)
        put("\n".join(listed(each, show(house[each], reader)) for each in paths))
        end(0)
    try:
        whole = f"{path.strip('/')}/loss"
        found = house[whole if path not in house and whole in house else path]
    except NoSuchFigure as fault:
        say(f"There is no figure at {path!r}.")
        if fault.near:
            say("The nearest are:\n  " + "\n  ".join(fault.near))
        say(f"All paths:  heatledger why {job_file} --list")
        end(WRONG_USE)
    own = found.names.path(found)
    if own not in (path.strip("/"), whole):
        put(f"The same figure as {own}:")
    put(unfolded(found, reader, 99 if to_the_tape else levels))
    end(0)


def listed(path: str, shown: str) -> str:
    """A path and its value on one line, or on two when they do not fit."""
    line = f"{path:<{PATH}}  {shown}"
    return line if len(line) <= WIDTH else f"{path}\n{'':<{PATH}}  {shown}"
