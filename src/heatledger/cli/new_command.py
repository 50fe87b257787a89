"""``heatledger new``: a commented starter job."""

from __future__ import annotations

from pathlib import Path

import click

from heatledger.cli.common import WRONG_USE, end, put, say
from heatledger.ledger.presets import PRESETS


@click.command("new")
@click.argument("job_file", metavar="JOB", type=click.Path(path_type=Path))
@click.option(
    "--units", type=click.Choice(list(PRESETS), case_sensitive=False), default="us",
    show_default=True, help="Units the starter job is written in.",
)  # fmt: skip
def command(job_file: Path, units: str) -> None:
    """Write a commented job of two rooms to fill in. An existing file is left alone."""
    from heatledger.job.starter import starter_job

    try:
        with job_file.open("x", encoding="utf-8") as file:
            file.write(starter_job(PRESETS[units.lower()]))
    except FileExistsError:
        say(f"{job_file} is there already and was left as it is. Choose another name.")
        end(WRONG_USE)
    except OSError as fault:
        say(f"{job_file} could not be written: {fault.strerror or fault}.")
        end(WRONG_USE)
    put(f"Wrote {job_file}. Next:  heatledger design {job_file}")
    end(0)
