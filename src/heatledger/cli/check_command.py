"""``heatledger check``: what is wrong, what is missing, what must be fixed."""

from __future__ import annotations

from pathlib import Path

import click

from heatledger.cli.common import (
    TO_MEND,
    end,
    job_argument,
    preset,
    put,
    read,
    told_in,
    units_option,
    what_if_option,
)


@click.command("check")
@job_argument
@units_option
@what_if_option
def command(job_file: Path, units: str | None, what_ifs: tuple[str, ...]) -> None:
    """Read a job and say what is wrong or missing, and what the review finds.

    Ends with 0 when nothing is wrong, missing or to be fixed, with 1 when something is, and with 2
    when the file cannot be opened.
    """
    from heatledger.cli.findings_text import findings_lines
    from heatledger.job.missing import missing_entries
    from heatledger.ledger.findings import Weight
    from heatledger.steps.design import design

    job = read(job_file, what_ifs)
    missing = missing_entries(job)
    if missing:
        put(f"{len(missing)} {'entry is' if len(missing) == 1 else 'entries are'} missing:")
        put(
            "\n".join(
                f"  line {job.source.line_of(path)}  {path}: {words} not given yet" for path, words in missing
            )
        )
    shown = preset(units, job)
    house = told_in(design(job), shown)
    lines = findings_lines(house, shown, mends=True)
    put("\n".join(lines) if lines else "No findings.")
    open_ones = [each for each in house.findings if each.weight is Weight.MUST_FIX and each.decided is None]
    if not missing and not open_ones:
        put("The job can be read, nothing is missing, and nothing must be fixed.")
    end(TO_MEND if missing or open_ones else 0)
