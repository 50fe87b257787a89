"""``heatledger design``: the whole answer, room by room."""

from __future__ import annotations

import json
from pathlib import Path

import click

from heatledger.cli.common import (
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


@click.command("design")
@job_argument
@units_option
@what_if_option
@click.option("--json", "as_data", is_flag=True, help="Every figure as JSON: SI value, shown text, path.")
def command(job_file: Path, units: str | None, what_ifs: tuple[str, ...], as_data: bool) -> None:
    """Heat loss, emitters, piping, boiler room, controls and startup, with the findings.

    \b
    heatledger design my-house.yaml
    heatledger design my-house.yaml --what-if low-e --what-if tight-air
    heatledger design my-house.yaml --units metric --json
    """
    from heatledger.cli.sheet import design_sheet
    from heatledger.cli.waiting import step
    from heatledger.papers.as_json import design_as_data
    from heatledger.steps.design import design

    job = read(job_file, what_ifs)
    with step(f"Designing {job.name}"):
        shown = preset(units, job)
        house = told_in(design(job), shown)
        text = json.dumps(design_as_data(house, shown), indent=2, ensure_ascii=False) if as_data else ""
        text = text or design_sheet(house, shown)
    put(text)
    if not as_data:
        say(f"Ask about any figure:  heatledger why {job_file} house/loss")
    end(0)
