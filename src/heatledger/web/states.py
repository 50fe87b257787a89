"""Where each sheet stands, in words and as a shape."""

from __future__ import annotations

from dataclasses import dataclass

from heatledger.ledger.findings import Weight
from heatledger.papers.all_papers import PAPERS
from heatledger.papers.findings_by_sheet import findings_of
from heatledger.steps.design import Design
from heatledger.studies.startup_lines import startup_lines

SHEETS = (
    ("house", "House"), ("heat-loss", "Heat loss"), ("emitters", "Emitters"), ("piping", "Piping"),
    ("boiler-room", "Boiler room"), ("controls", "Controls"), ("startup", "Startup"), ("papers", "Papers"),
)  # fmt: skip
"""The eight sheets in the order of the work: the name in an address, and the name shown."""
NUMBER_OF = {key: i for i, (key, _) in enumerate(SHEETS, 1)}


@dataclass(frozen=True)
class SheetState:
    """The words under the name of a sheet and their shape: must, decide, note, settled, begun or none."""

    words: str
    shape: str


def sheet_states(house: Design) -> list[SheetState]:
    """One a sheet, in their order. Asks for the findings, which take a moment the first time."""
    return [_state(house, number) for number in range(1, len(SHEETS) + 1)]


def begun_states(house: Design) -> list[SheetState]:
    """The same before the findings are there: what is begun and what is not."""
    return [
        SheetState(*(("begun", "begun") if _begun(house, number) else ("not begun", "none")))
        for number in range(1, len(SHEETS) + 1)
    ]


def _state(house: Design, number: int) -> SheetState:
    if not _begun(house, number):
        return SheetState("not begun", "none")
    if number == NUMBER_OF["papers"]:
        count = sum(each.applies(house) for each in PAPERS)
        return SheetState(f"{count} papers" if count != 1 else "1 paper", "begun")
    found = [each for each in findings_of(house, number) if each.decided is None] if number > 1 else []
    for weight, words, shape in (
        (Weight.MUST_FIX, "must fix", "must"), (Weight.DECIDE, "to decide", "decide"),
    ):  # fmt: skip
        count = sum(each.weight is weight for each in found)
        if count:
            return SheetState(f"{count} {words}", shape)
    if number == NUMBER_OF["startup"]:
        return SheetState(*startup_words(house))
    count = len(found)
    if count:
        return SheetState(f"{count} notes" if count > 1 else "1 note", "settled")
    return SheetState("settled", "settled")


def startup_words(house: Design) -> tuple[str, str]:
    """How many of the readings are on file, and the shape for it."""
    read, among = readings_on_file(house)
    return f"{read} of {among} read", "settled" if read == among else "begun"


def readings_on_file(house: Design) -> tuple[int, int]:
    """How many of the readings that a startup of this job asks for are on file, and of how many."""
    readings = house.job.system.readings
    weather = [each is not None and not each.is_missing for each in (readings.outdoor, readings.room)]
    found = [*weather, *(each.is_read for each in startup_lines(house))]
    return sum(found), len(found)


def _begun(house: Design, number: int) -> bool:
    job = house.job
    system = job.system
    return (
        True,
        bool(job.rooms),
        bool(system.emitters),
        bool(system.circuits),
        "plant" in job.raw,
        "controls" in job.raw,
        "readings" in job.raw or bool(system.emitters),
        bool(job.rooms),
    )[number - 1]
