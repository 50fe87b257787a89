"""Writing the papers of a design into a folder."""

from __future__ import annotations

import re
from concurrent.futures import ThreadPoolExecutor
from os import PathLike
from pathlib import Path

from heatledger.ledger.presets import Preset
from heatledger.papers.all_papers import PAPERS
from heatledger.papers.compile import PaperError
from heatledger.papers.printing import Printing
from heatledger.steps.design import Design

SIDE_BY_SIDE = 3
"""One paper is set by the compiler while the next ones are filled."""


def write_papers(
    design: Design, folder: str | PathLike[str], units: Preset | None = None, paper: str = ""
) -> list[Path]:
    """Write every paper that a design has something to say on; the files written, in their order.

    ``units``: the reader's preset, that of the job when left out. ``paper``: ``letter`` or ``a4``, that
    of the units when left out. Raises PaperError when there is nothing to print, and OSError when the
    folder cannot be written to.
    """
    if not design.losses.rooms:
        raise PaperError("the job has no rooms yet. Enter the first one under `rooms`, then print again.")
    shown = units or design.job.units
    printing = Printing(design.told_in(shown), shown)
    sheet = paper or shown.paper
    into = Path(folder)
    into.mkdir(parents=True, exist_ok=True)
    name = re.sub(r"[^a-z0-9]+", "-", (design.job.name or "").lower()).strip("-") or "house"
    due = [each for each in PAPERS if each.applies(design)]
    written: dict[str, list[Path]] = {}
    # What all papers ask for is worked out before they are made side by side.
    _ = printing.found, printing.design.findings
    # The largest last: it takes longest to fill, and the compiler has the others to set meanwhile.
    with ThreadPoolExecutor(SIDE_BY_SIDE) as hands:
        made = {
            each.name: hands.submit(each.files, printing, sheet)
            for each in sorted(due, key=lambda kind: kind.large)
        }
        for each in due:
            written[each.name] = []
            for ending, content in made.pop(each.name).result().items():
                target = into / f"{name}-{each.name}.{ending}"
                target.write_bytes(content)
                written[each.name].append(target)
    return [path for paths in written.values() for path in paths]
