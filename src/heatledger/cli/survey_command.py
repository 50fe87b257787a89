"""``heatledger survey``: the blank sheet for a visit to the house."""

from __future__ import annotations

from pathlib import Path

import click

from heatledger.cli.common import TO_MEND, WRONG_USE, end, put, say
from heatledger.ledger.presets import PRESETS


@click.command("survey")
@click.option(
    "--units", type=click.Choice(list(PRESETS), case_sensitive=False), default="us",
    show_default=True, help="Units that the sheet asks for.",
)  # fmt: skip
@click.option(
    "--paper", type=click.Choice(["letter", "a4"]), default=None,
    help="Sheet; that of the units when left out.",
)  # fmt: skip
@click.option(
    "--to", "file", type=click.Path(path_type=Path), default=Path("survey-sheet.pdf"),
    show_default=True, help="File to write.",
)  # fmt: skip
def command(units: str, paper: str | None, file: Path) -> None:
    """Print the blank survey sheet: what to measure at the house, and why. It needs no job."""
    from heatledger.papers.compile import PaperError
    from heatledger.papers.survey_sheet import survey_pdf

    try:
        made = survey_pdf(PRESETS[units.lower()], paper or "")
    except PaperError as fault:
        say(f"The sheet could not be set: {fault}")
        end(TO_MEND)
    try:
        file.write_bytes(made)
    except OSError as fault:
        say(f"{file} could not be written: {fault.strerror or fault}.")
        end(WRONG_USE)
    put(f"Wrote {file}.")
    end(0)
