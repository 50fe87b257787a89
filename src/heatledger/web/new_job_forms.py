"""What the ways to begin a job ask for, field by field, with an example for each reader."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from heatledger.catalog.loader import constructions, load_table
from heatledger.job.system_model import BOILER_KINDS, FUELS
from heatledger.ledger.presets import METRIC, Preset

Options = tuple[tuple[str, str], ...]


@dataclass(frozen=True)
class Ask:
    """One field of a form: its key, what it is called, where it goes in the job, and an example.

    ``example`` is for US, metric and Canadian readers. ``options`` makes it a list to choose from; ``must``
    says that the way does not begin without it.
    """

    key: str
    words: str
    path: str = ""
    example: tuple[str, str, str] = ("", "", "")
    help: str = ""
    options: Options = ()
    must: bool = False

    def hint(self, units: Preset) -> str:
        """The example in the reader's notation."""
        return self.example[1 if units is METRIC else 2 if units.name == "Canadian" else 0]


def _same(text: str) -> tuple[str, str, str]:
    return (text, text, text)


NAME = Ask("name", "Name of the job", "name", _same("Mill house"))
ADDRESS = Ask("address", "Address", "address")
OUTDOOR = Ask("outdoor", "Outdoor design temperature", "site/outdoor", ("5 °F", "-15 °C", "-15 °C"),
              "The cold that the code office asks for.", must=True)  # fmt: skip
INDOOR = Ask("indoor", "Indoor temperature", "site/indoor", ("70 °F", "21 °C", "21 °C"), must=True)
ELEVATION = Ask("elevation", "Elevation of the place", "site/elevation", ("300 ft", "90 m", "300 ft"),
                "Thin air carries less heat; a map is good enough.")  # fmt: skip
NUMBERS = (
    NAME, ADDRESS,
    Ask("area", "Floor area of the whole house", "heated_floor_area", ("1,800 ft²", "165 m²", "1,800 ft²"),
        "All heated floors together.", must=True),
    OUTDOOR, INDOOR,
)  # fmt: skip
ROOM = (
    NAME, ADDRESS,
    Ask("room", "Name of the room", "", _same("Living room"), must=True),
    Ask("along", "Side along north and south", "", ("16′ 6″", "5.03 m", "16′ 6″"), must=True),
    Ask("across", "Side along east and west", "", ("12′ 0″", "3.66 m", "12′ 0″"), must=True),
    Ask("outdoor", OUTDOOR.words, OUTDOOR.path, OUTDOOR.example, OUTDOOR.help),
    Ask("indoor", INDOOR.words, INDOOR.path, INDOOR.example), ELEVATION,
)  # fmt: skip
_SURFACES = "rooms/house/surfaces"
BILL, BOILER = "bills/winter", "plant/boiler"
HOUSE = (
    NAME, ADDRESS,
    Ask("outdoor", OUTDOOR.words, OUTDOOR.path, OUTDOOR.example, OUTDOOR.help),
    Ask("indoor", INDOOR.words, INDOOR.path, INDOOR.example), ELEVATION,
    Ask("area", "Floor area of all floors", "rooms/house/floor_area", ("1,460 ft²", "136 m²", "1,460 ft²")),
    Ask("round", "Once round the outside walls", f"{_SURFACES}/walls/length", ("109′", "33.2 m", "109′")),
    Ask("high", "Height of the outside walls, all floors", f"{_SURFACES}/walls/height",
        ("17′ 6″", "5.35 m", "17′ 6″")),
    Ask("ceiling", "Ceiling below the attic", f"{_SURFACES}/ceiling/area", ("730 ft²", "68 m²", "730 ft²"),
        "The floor over the basement is taken as large."),
    Ask("windows", "How many windows", "", _same("19")),
    Ask("window", "Size of a usual window", "", ("2′ 8″ × 4′ 8″", "0.81 m × 1.42 m", "2′ 8″ × 4′ 8″")),
    Ask("doors", "How many outside doors", "", _same("2")),
    Ask("door", "Size of a door", "", ("3′ 0″ × 6′ 8″", "0.91 m × 2.03 m", "3′ 0″ × 6′ 8″")),
)  # fmt: skip
BILLS = (
    Ask("fuel", "Fuel of the bills", f"{BILL}/fuel", options=tuple((each, each) for each in FUELS)),
    Ask("used", "Used in one winter", "", ("1,090 gal or 1,003 therms", "4,100 L or 29,400 kWh", "4,100 L"),
        "With its unit, as the bill says it."),
    Ask("days", "Degree-days of that winter", f"{BILL}/degree_days", ("6,750 °F", "3,750 K", "3,750 °C")),
    Ask("base", "Base of the degree-days", f"{BILL}/base", ("65 °F", "18 °C", "18 °C")),
    Ask("season", "Efficiency over the season", f"{BILL}/efficiency", _same("74 %"),
        "A guess is kept as one."),
    Ask("other", "Of it used for other things", f"{BILL}/other_use", ("0 Btu", "0 kWh", "0 Btu"),
        "Hot water, a range; 0 when it heats only the house."),
)  # fmt: skip
PLATE = (
    Ask("burns", "Fuel of the boiler", f"{BOILER}/fuel", options=tuple((each, each) for each in FUELS)),
    Ask("kind", "Kind", f"{BOILER}/kind", options=tuple((each, each) for each in BOILER_KINDS)),
    Ask("input", "Input on the plate", f"{BOILER}/input", ("175,000 Btu/h", "51 kW", "175,000 Btu/h")),
    Ask("output", "Output on the plate", f"{BOILER}/output", ("140,000 Btu/h", "41 kW", "140,000 Btu/h")),
    Ask("relief", "Relief valve setting", f"{BOILER}/relief", ("30 psi", "2 bar", "30 psi")),
    Ask("rise", "Height of the highest pipe above the gauge", "plant/height", ("18 ft", "5.5 m", "18 ft")),
)  # fmt: skip
EMITTERS = 4
"""How many kinds of radiators the form has rows for; others are added on sheet Emitters."""
SURFACE_KINDS = (("wall", "Outside walls"), ("ceiling", "Ceiling below the attic"), ("floor", "Floor"))


@cache
def assemblies(kind: str) -> Options:
    """The rows of the catalog for one kind of construction."""
    return tuple((row.key, row.name) for row in constructions().values() if row.kind == kind)


@cache
def radiators() -> Options:
    """The cast-iron radiators and baseboards of the catalog, with what is counted of each."""
    found = [
        (key, f"{row.name}, sections")
        for table in ("iron_columns", "iron_tubes")
        for key, row in load_table(table).rows.items()
    ]
    found += [
        (key, f"{row.name}, length")
        for table in ("fin_tube", "iron_baseboard")
        for key, row in load_table(table).rows.items()
    ]
    return tuple(found)


def by_sections(key: str) -> bool:
    """Whether a row of the catalog is counted by sections; the others by their length."""
    return key.startswith(("column-", "tube-", "wall-"))
