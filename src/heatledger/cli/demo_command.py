"""``heatledger demo``: three invented houses from their job files to papers."""

from __future__ import annotations

from importlib import resources
from pathlib import Path

import click

from heatledger.cli.common import WRONG_USE, end, preset, put, read, say, told_in, units_option

DEMO_JOBS = ("ferrow-house.yaml", "lerch-cottage.yaml", "tamm-street.yaml")


@click.command("demo")
@click.option(
    "--to", "folder", type=click.Path(path_type=Path), default=Path("heatledger-demo"),
    show_default=True, help="Folder for the job files and the papers.",
)  # fmt: skip
@units_option
def command(folder: Path, units: str | None) -> None:
    """Design three invented houses: a few lines of each here, job files and papers in a folder.

    Ferrow house has baseboard on a loop and on a manifold, Lerch cottage is metric with panel radiators,
    and on Tamm Street a boiler is replaced.
    """
    from heatledger.cli.summary import summary_lines
    from heatledger.cli.waiting import step
    from heatledger.papers.write import write_papers
    from heatledger.steps.design import design

    written: list[Path] = []
    try:
        folder.mkdir(parents=True, exist_ok=True)
        for name in DEMO_JOBS:
            text = resources.files("heatledger").joinpath("examples", name).read_text("utf-8")
            job = read(_put_down(folder / name, text))
            shown = preset(units, job)
            house = told_in(design(job), shown)
            put("\n".join(summary_lines(house, shown)))
            with step(f"Setting the papers of {job.name}"):
                written += write_papers(house, folder, units=shown, paper=shown.paper)
    except OSError as fault:
        say(f"The demo could not be written to {folder}: {fault.strerror or fault}.")
        end(WRONG_USE)
    first = folder / DEMO_JOBS[0]
    put("")
    put(f"{len(DEMO_JOBS)} jobs and {len(written)} papers and lists are in {folder}.")
    put("Read a sheet, and open any number:")
    put(f"  heatledger design {first}")
    for path in ("rooms/kitchen/loss --to-the-tape", "emitters/kitchen-base/output", "plant/tank_volume"):
        put(f"  heatledger why {first} {path}")
    end(0)


def _put_down(target: Path, text: str) -> Path:
    """Write a demo job; one that was edited since is left as it is and used."""
    if target.exists() and target.read_text("utf-8") != text:
        say(f"{target} was changed since it was written; it is left as it is and designed.")
    else:
        target.write_text(text, "utf-8")
    return target
