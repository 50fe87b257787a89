"""How long thirty pages of papers take: all papers of the demo house, by the page, on two cores."""

from __future__ import annotations

import tempfile
from collections.abc import Iterator
from importlib import resources
from pathlib import Path
from time import perf_counter

from pypdf import PdfReader
from timing import Row

from heatledger.job.load import read_job
from heatledger.papers.write import write_papers
from heatledger.steps.design import design

PAGES = 30


def rows() -> Iterator[Row]:
    """Thirty pages against 1.5 seconds; the first printing starts the compiler and is not counted."""
    text = resources.files("heatledger").joinpath("examples", "ferrow-house.yaml").read_text("utf-8")
    house = design(read_job(text, "ferrow-house.yaml"))
    with tempfile.TemporaryDirectory() as folder:
        times = []
        for _ in range(3):
            again = design(house.job)  # findings and names are gathered anew, as for a person who prints
            start = perf_counter()
            written = write_papers(again, Path(folder))
            times.append(perf_counter() - start)
        pages = sum(len(PdfReader(each).pages) for each in written if each.suffix == ".pdf")
    taken = min(times[1:]) * PAGES / pages
    yield Row(f"{PAGES} pages of papers ({pages} printed)", taken, "budget", 1.5, 1.0)
