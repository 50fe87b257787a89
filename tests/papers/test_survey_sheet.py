"""The blank survey sheet: three pages for every reader, with what to measure and why."""

from __future__ import annotations

import io
import subprocess
import sys

import pytest
from pypdf import PdfReader

from heatledger.ledger.presets import PRESETS
from heatledger.papers.survey_sheet import survey_pdf
from heatledger.papers.survey_words import AIR, BILLS, BOILER, BUILT_OF, HEIGHTS, PHOTOS, SAFETY, WATER

EVERYWHERE = pytest.mark.parametrize(
    ("units", "sheet"), [(units, sheet) for units in sorted(PRESETS) for sheet in ("letter", "a4")]
)


def pages(units: str, sheet: str = "") -> list[str]:
    made = PdfReader(io.BytesIO(survey_pdf(PRESETS[units], sheet)))
    return [" ".join(page.extract_text().split()) for page in made.pages]


@EVERYWHERE
def test_three_pages_say_what_to_measure_and_why(units: str, sheet: str) -> None:
    made = pages(units, sheet)
    assert len(made) == 3
    assert all(f"page {number} of 3" in page for number, page in enumerate(made, 1))
    said = " ".join(made)
    for ask in (*HEIGHTS, *BUILT_OF, *AIR, *BILLS, *BOILER, *WATER):
        assert ask.what in said
        assert ask.why in said
        assert all(each in said for each in ask.boxes)
    assert all(each in said for each in (*PHOTOS, *SAFETY))
    assert "Local code and licensed practice govern." in made[2]


def test_units_are_those_of_the_reader() -> None:
    american, metric, canadian = (" ".join(pages(each)) for each in ("us", "metric", "canadian"))
    assert "ft, in" in american
    assert "psi" in american
    assert "°F" in american
    assert "kPa" in metric
    assert "storey" in metric
    assert "ft, in" not in metric
    assert "°C" in canadian
    assert "ft, in" in canadian


def test_the_three_line_types_stand_at_the_head() -> None:
    first = pages("us")[0]
    assert all(each in first for each in ("measured", "from plans", "told", "assumed"))


def test_papers_that_come_at_once_wait_for_one_another() -> None:
    """In a process of their own, where none of them has been set before."""
    program = (
        "import sys, threading\n"
        "from concurrent.futures import ThreadPoolExecutor\n"
        "from heatledger.ledger.presets import US\n"
        "from heatledger.papers.survey_sheet import survey_pdf\n"
        "sys.setswitchinterval(1e-6)\n"
        "gate = threading.Barrier(6)\n"
        "with ThreadPoolExecutor(6) as hands:\n"
        "    made = list(hands.map(lambda _: (gate.wait(), survey_pdf(US, 'letter'))[1], range(6)))\n"
        "print(len(set(made)))\n"
    )
    ran = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=False)
    assert (ran.stdout.strip(), ran.stderr) == ("1", "")
