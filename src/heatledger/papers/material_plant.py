"""The lines of the material list for the boiler room: what is named, and what is still to be chosen."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from heatledger.ledger.figures import Figure
from heatledger.ledger.show import show
from heatledger.ledger.units import UNITS
from heatledger.papers.printing import Printing

PLANT, DRAWN = "Boiler room", "Drawn in every boiler room, to be chosen"
PIECES = "pieces"
AS_CODE = "as the local code asks"
AS_DRAWN = (
    ("Air separator", "at the hottest point, before the circulator"),
    ("Fill valve, with shutoffs", "where the tank joins"),
    ("Pressure gauge and thermometer", "where they are read from the floor"),
    ("Purge valve", "one for each circuit or manifold"),
    ("Isolation valve", "on both sides of what is serviced"),
)


@dataclass(frozen=True)
class MaterialLine:
    """One line: ``amount`` is None where nobody has said how much; ``text`` is the amount as printed.

    ``unit`` is that of ``amount``. ``key`` is the address of a worked-out amount.
    """

    group: str
    item: str
    size: str
    amount: float | None
    unit: str
    text: str
    where: str = ""
    note: str = ""
    key: str = ""


def length_of(figure: Figure, printing: Printing) -> tuple[float | None, str]:
    """A length as a number, and its unit: decimal feet or meters."""
    unit = UNITS["ft"] if printing.units.feet_and_inches else UNITS["m"]
    return (None if figure.is_missing else round(unit.from_si(float(figure)), 2)), unit.text


def plant_lines(printing: Printing) -> Iterator[MaterialLine]:
    """The boiler room as the job names it; the size of a boiler is its output, on every paper."""
    plant, found = printing.design.job.system.plant, getattr(printing.design, "boiler_room", None)

    def line(item: str, size: str, note: str = "", key: str = "") -> MaterialLine:
        return MaterialLine(PLANT, item, size, 1.0, PIECES, "1", "Boiler room", note, key)

    boiler = plant.boiler
    if boiler is not None:
        output = found.plant.rated_output if found is not None else boiler.output
        said = ", ".join(each for each in (boiler.kind, boiler.fuel) if each)
        size = _text(output, printing)
        yield line(f"Boiler: {boiler.name}" if boiler.name else "Boiler", size and f"output {size}", said)
        if printing.relief is not None:
            size = f"opens at {_text(printing.relief, printing)}"
            yield line("Relief valve", size, "with a full-size discharge pipe")
    tank = plant.tank.volume if plant.tank is not None else None
    if tank is not None:
        yield line("Expansion tank", _text(tank, printing), "as chosen")
    elif found is not None and not found.plant.tank_volume.is_missing:
        needed = found.plant.tank_volume
        yield line("Expansion tank", f"at least {_text(needed, printing)}", "the next larger size made",
                   printing.found.key(needed))  # fmt: skip
    for each in plant.circulators.values():
        yield line("Circulator", each.name)
    mains = plant.mains
    if mains is not None and mains.insulation is not None:
        amount, unit = length_of(mains.length, printing)
        yield MaterialLine(
            PLANT, "Pipe insulation", f"{_text(mains.insulation, printing)} thick", amount, unit,
            printing.show(mains.length), "Mains", "without waste",
        )  # fmt: skip


def to_be_chosen(printing: Printing) -> Iterator[MaterialLine]:
    """What every boiler room holds and the job does not name: guards first, a thermostat for each zone."""
    yield from _guards(printing)
    zones = printing.design.job.system.zones
    if zones:
        names, count = ", ".join(str(each.name) for each in zones.values()), len(zones)
        yield MaterialLine(DRAWN, "Thermostat", "", float(count), PIECES, str(count), names, "one a zone")
    yield from (MaterialLine(DRAWN, item, "", None, PIECES, "", note=note) for item, note in AS_DRAWN)
    yield MaterialLine(DRAWN, "Carbon monoxide alarm", "", None, PIECES, "", note=AS_CODE)


def _guards(printing: Printing, anew: bool = False) -> Iterator[MaterialLine]:
    """The guards of the boiler; one with its own setting in the job says it, unless all are bought anew."""
    plant, room = printing.design.job.system.plant, printing.design.boiler_room.plant
    if printing.relief is None or anew:
        needed = "" if anew else _text(room.relief_needed, printing)
        size = "for the output of the new boiler" if anew else f"for {needed} or more" if needed else ""
        yield MaterialLine(DRAWN, "Relief valve", size, 1.0, PIECES, "1", PLANT,
                           "set as the boiler's maker says, with a full-size discharge pipe")  # fmt: skip
    limit = "" if anew else _text(plant.high_limit, printing)
    limit = limit and f"set at {limit}"
    yield MaterialLine(DRAWN, "High limit, reset by hand", limit, 1.0, PIECES, "1", PLANT,
                       "unless the boiler comes with it")  # fmt: skip
    yield MaterialLine(DRAWN, "Low-water cutoff, reset by hand", "", 1.0, PIECES, "1", PLANT,
                       f"unless the boiler comes with it; {AS_CODE}")  # fmt: skip
    yield MaterialLine(DRAWN, "Backflow preventer", "", 1.0, PIECES, "1", PLANT,
                       f"on the drinking-water side of the fill valve, {AS_CODE}")  # fmt: skip


def for_replacement(printing: Printing) -> Iterator[MaterialLine]:
    """What a new plant asks for; emitters and pipes that hang there stay, and the old boiler is no line."""
    room = printing.design.boiler_room.plant
    least, most = _text(room.load, printing), _text(room.largest_output, printing)
    size = f"output of {least} to {most}" if least and most else ""
    yield MaterialLine(DRAWN, "Boiler, to be chosen", size, 1.0, PIECES, "1", PLANT,
                       "radiators and pipes stay", printing.found.key(room.load))  # fmt: skip
    yield from _guards(printing, anew=True)
    yield MaterialLine(DRAWN, "Carbon monoxide alarm", "", None, PIECES, "", note=AS_CODE)


def _text(figure: Figure | None, printing: Printing) -> str:
    return "" if figure is None or figure.is_missing else show(figure, printing.units)
