"""The checks against published numbers: what is claimed, by whom, and how close we come.

``check`` asserts and notes what it asserted; ``test_page.py`` runs every check of this folder once more
and holds ``docs/checks.md`` to what they noted. The values stand in the units of the source.
"""

from __future__ import annotations

import importlib
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from itertools import product
from pathlib import Path
from typing import Any

from heatledger.ledger.sources import Standing
from heatledger.ledger.units import UNITS

FOLDER = Path(__file__).parent
PAGE = FOLDER.parents[1] / "docs" / "checks.md"

PUBLISHED = {
    "HOF-ch17": "ASHRAE Handbook, Fundamentals, 2021 SI edition, chapter 17",
    "HOF-ch18": "ASHRAE Handbook, Fundamentals, 2021 SI edition, chapter 18",
    "HOF-ch19": "ASHRAE Handbook, Fundamentals, 2021 SI edition, chapter 19",
    "HOF-ch26": "ASHRAE Handbook, Fundamentals, 2021 SI edition, chapter 26",
    "HOF-ch27": "ASHRAE Handbook, Fundamentals, 2021 SI edition, chapter 27",
    "HOF-2001": "ASHRAE Handbook, Fundamentals, 2001, chapter 26, as a later text quotes it",
    "CRC-CD": "Companion data of a university textbook on heating and cooling of buildings",
    "E2-CRACK": "Article on the crack method with an example",
    "DIY-UK": "Worked calculations for the rooms of a semi-detached house",
    "ADL-2002": "Approved Document L, 2002, appendix C",
    "EN-12831-2003": "EN 12831:2003, design heat load",
    "NESEA-GR": "Heat loss to the ground, part 2, 2014",
    "EHOW-OIL": "Article with a degree-day example for oil",
    "EBOOK-W": "Basics of energy efficient living, excerpt",
    "EMH-97": "Energy management handbook, chapter 9",
    "PHCA": "Residential ventilation rates of passive houses",
    "IBC-1204": "International Building Code, section 1204.1",
    "WIKI-HWR": "Encyclopedia article on hot water reset",
    "OFSW": "An oil service firm's readings before and after service",
    "IRC-554": "International Residential Code, 2018, page 554",
    "MICH-272": "Michigan Administrative Code R 408.4272, tables 272A and 272B",
    "FILL-JMP": "Article on fill pressure by the height of a house",
    "FILL-HH": "Forum thread on fill pressure by the height of a house",
    "ICM-2015": "Trade magazine, September and October 2015, rules of the fuel-gas code",
    "NY-4-5.3": "New York Codes, Rules and Regulations, title 12, section 4-5.3",
    "MEPANET": "Article on sizing pressurized expansion tanks",
    "ASHRAE-TANK": "ASHRAE Handbook, HVAC Systems and Equipment, expansion tanks",
    "HPAC-RATE": "Article on making sense of boiler ratings",
    "EXCESSAIR": "Article on a residential equipment sizing manual",
    "PME-94749": "Article on buffer tanks and small zones",
    "ETH-BOILER": "Boiler module of a university's building systems group",
    "COLLVER": "Article on condensing boilers and their water temperatures",
    "IRC-M2003": "International Residential Code, table M2003.2",
    "RISHEL": "HVAC Pump Handbook, 2nd edition, 2006",
    "CRANE-TP410": "Crane TP-410, worked problems, as notebooks quote their answers",
    "LINDEBURG": "Civil engineering reference manual, as a collection of examples quotes it",
    "KUDELA": "Hydraulics lecture example, as a collection of examples quotes it",
    "CENGEL-8": "Fluid Mechanics, textbook, chapter 8",
    "MOODY-1944": "Friction factors for pipe flow, 1944",
    "PME-TANK": "Article on expansion tanks of large radiant systems, 2003",
    "IRC-A22": "International Residential Code, 2018, table A.2.2",
    "WBMAN": "Hydronic system design manual, 2013, name of its publisher withheld",
    "RADWEB": "Public reference page on heat emission from radiators",
    "HP-RAD": "T. Lea, Radiator basics",
    "ENC-DT": "Retailer's page on the excess of radiators, address withheld",
    "BSE-IE": "Article on sizing radiators in the heat pump era, 2025",
    "EDR-UNIT": "Public catalog of units",
    "EDR-TAB": "Wholesaler's catalog page on cast-iron radiators",
    "EDR-FORUM": "Forum answer on the emission of radiators",
    "EDR-SEC": "Generic tables of radiators, reprinted in a boiler service guide",
    "BWA": "Building with Assurance, house-plan book, early 1920s",
    "FT-AIR": "Catalog page on finned tube, maker withheld",
    "IBR": "Testing and rating standard for baseboard",
    "SIEG": "Modern Hydronic Heating, textbook",
    "CRREL": "Optimal design of piping systems for district heating, 1995",
}
"""The works the checks are held to. A software library is never one of them."""


@dataclass(frozen=True)
class Record:
    """What one check asserted. ``got`` is the worst value when a whole table was checked."""

    claim: str
    source: str
    place: str
    standing: Standing
    expected: str
    got: str
    tolerance: str
    why: str


RECORDS: list[Record] = []
"""What the checks that ran have noted, in order."""


def check(
    *,
    claim: str,
    source: str,
    place: str,
    standing: Standing,
    expected: float | Sequence[float],
    got: float | Sequence[float],
    tolerance: float | Sequence[float],
    why: str,
    unit: str = "",
) -> None:
    """Assert that ``got`` is within ``tolerance`` of what a source prints, and note it.

    Sequences stand for a whole table, whose worst entry is noted; ``tolerance`` is one number, or one for
    each entry. ``why`` says where the tolerance comes from.
    """
    assert source in PUBLISHED, f"no published source called {source!r}"
    assert why, "a tolerance needs its reason"
    wanted = list(expected) if isinstance(expected, Sequence) else [expected]
    found = list(got) if isinstance(got, Sequence) else [got]
    allowed = list(tolerance) if isinstance(tolerance, Sequence) else [tolerance] * len(wanted)
    assert len(wanted) == len(found) == len(allowed), "entries are missing"
    worst = max(range(len(wanted)), key=lambda i: abs(float(found[i]) - wanted[i]) / allowed[i])
    miss = abs(float(found[worst]) - wanted[worst])
    RECORDS.append(Record(claim, source, place, standing, *_shown(wanted, found, allowed, worst, unit), why))
    assert miss <= allowed[worst], (
        f"{claim}: {source} has {wanted[worst]:g} {unit}, we have {float(found[worst]):.6g}, "
        f"and {allowed[worst]:g} is allowed"
    )


def _shown(
    wanted: list[float], found: list[float], allowed: list[float], worst: int, unit: str
) -> tuple[str, str, str]:
    # What we got is rounded to a tenth of the tolerance, so that the page does not move with the last bit.
    places = max(0, _places(allowed[worst]) + 1)
    got = f"{float(found[worst]):,.{places}f}"
    spread = f"{min(allowed):g}" if min(allowed) == max(allowed) else f"{min(allowed):g} to {max(allowed):g}"
    tail = f" {unit}" if unit else ""
    if len(wanted) == 1:
        return f"{wanted[0]:,.6g}{tail}", got + tail, f"{spread}{tail}"
    return (f"{len(wanted)} entries, worst at {wanted[worst]:,.6g}{tail}", got + tail, f"{spread}{tail}")


def _places(value: float) -> int:
    return max(0, -int(f"{value:e}".partition("e")[2]))


def si(value: float, unit: str, absolute: bool = False) -> float:
    """``value`` of a source in SI; ``absolute`` for a temperature on its scale."""
    return UNITS[unit].to_si(value, absolute)


def into(value: float, unit: str, absolute: bool = False) -> float:
    """An SI value in the unit of a source."""
    return UNITS[unit].from_si(float(value), absolute)


def at(value: float, scale: str) -> float:
    """A temperature on its scale, in kelvin: ``at(20, "°C")``."""
    return si(value, scale, absolute=True)


def run_all() -> list[Record]:
    """What every check of this folder notes, module by module in order of name."""
    kept = RECORDS[:]
    RECORDS.clear()
    for path in sorted(FOLDER.glob("test_*.py")):
        module = importlib.import_module(f"tests.published.{path.stem}")
        if path.stem == "test_page":
            continue
        for name, function in vars(module).items():
            if name.startswith("test_") and callable(function):
                for given in _given(function):
                    function(**given)
    noted = RECORDS[:]
    RECORDS[:] = kept
    return noted


def _given(function: Callable[..., None]) -> Iterator[dict[str, Any]]:
    """Every set of arguments that pytest would give a check: one, without any, where it asks for none."""
    marks = [each for each in getattr(function, "pytestmark", ()) if each.name == "parametrize"]
    choices = []
    for mark in marks:
        names, rows = mark.args
        names = [each.strip() for each in names.split(",")] if isinstance(names, str) else list(names)
        choices.append([dict(zip(names, [row] if len(names) == 1 else row, strict=True)) for row in rows])
    for picked in product(*choices):
        yield {name: value for each in picked for name, value in each.items()}


def page(records: Sequence[Record]) -> str:
    """The text of ``docs/checks.md``."""
    lines = [
        "# Checked against the outside",
        "",
        "Made from `tests/published/` by `pytest tests/published --write-checks`; a test keeps it current.",
        "",
        f"{len(records)} checks. A whole table counts as one, and its worst entry is shown. Cases that we",
        "worked out ourselves, and comparisons with software, are tests elsewhere and do not count here.",
        "",
    ]
    for source in dict.fromkeys(each.source for each in records):
        lines += [f"## {source}", "", PUBLISHED[source] + ".", ""]
        lines += [
            "| claim | place | standing | expected | got | tolerance | because |",
            "|---|---|---|---|---|---|---|",
        ]
        lines += [
            f"| {each.claim} | {each.place} | {each.standing.value} | {each.expected} | {each.got} "
            f"| {each.tolerance} | {each.why} |"
            for each in records
            if each.source == source
        ]
        lines.append("")
    return "\n".join(lines)
