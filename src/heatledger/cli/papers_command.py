"""``heatledger papers``: every paper of a job, as PDF; the material list also as CSV and XLSX."""

from __future__ import annotations

from pathlib import Path

import click

from heatledger.cli.common import (
    TO_MEND,
    WRONG_USE,
    end,
    job_argument,
    preset,
    put,
    read,
    say,
    units_option,
    what_if_option,
)


@click.command("papers")
@job_argument
@click.option("--to", "folder", type=click.Path(path_type=Path), required=True, help="Folder to write to.")
@units_option
@what_if_option
@click.option(
    "--paper",
    type=click.Choice(["letter", "a4"]),
    default=None,
    help="Sheet; that of the units when left out.",
)
def command(
    job_file: Path, folder: Path, units: str | None, what_ifs: tuple[str, ...], paper: str | None
) -> None:
    """Print every paper that a job has something to say on into a folder, and say which.

    The material list is written as CSV and XLSX too. A paper made while a must-fix finding is open is
    marked as a draft, not for installation.
    """
    from heatledger.cli.waiting import step
    from heatledger.papers.compile import PaperError
    from heatledger.papers.write import write_papers
    from heatledger.steps.design import design

    job = read(job_file, what_ifs)
    shown = preset(units, job)
    try:
        with step("Setting the papers"):
            written = write_papers(design(job), folder, units=shown, paper=paper or shown.paper)
    except PaperError as fault:
        say(f"The paper could not be set: {fault}")
        end(TO_MEND)
    except OSError as fault:
        say(f"The papers could not be written to {folder}: {fault.strerror or fault}.")
        end(WRONG_USE)
    put("\n".join(str(each) for each in written))
    end(0)
