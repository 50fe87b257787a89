"""The lines of the material list: what, which size, how much, where, each as plain data."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from heatledger.job.system_model import BY_LENGTH, Emitter
from heatledger.ledger.figures import Figure
from heatledger.ledger.show import number_text, show
from heatledger.ledger.units import UNITS
from heatledger.papers.printing import Printing
from heatledger.studies.materials import Packs, TubeLot, fitting_lots, tube_lots

TUBE, FITTINGS, EMITTERS, VALVES, PLANT, DRAWN = (
    "Tube", "Fittings", "Emitters", "Valves", "Boiler room", "Drawn in every boiler room, to be chosen",
)  # fmt: skip
PIECES = "pieces"
AS_DRAWN = (
    ("Air separator", "at the hottest point, before the circulator"),
    ("Fill valve with backflow preventer", "as the local code asks"),
    ("Pressure gauge and thermometer", "where they are read from the floor"),
    ("Purge valve", "one for each circuit or manifold"),
    ("Isolation valve", "on both sides of what is serviced"),
    ("Carbon monoxide alarm", "as the local code asks"),
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


def material_lines(printing: Printing) -> list[MaterialLine]:
    """Every line, in the order of the groups."""
    return [
        *_tubes(printing), *_fittings(printing), *_emitters(printing), *_valves(printing), *_plant(printing),
        *(MaterialLine(DRAWN, item, "", None, PIECES, "", note=note) for item, note in AS_DRAWN),
    ]  # fmt: skip


def pack_words(packs: Packs | None, printing: Printing) -> str:
    """Coils or straight lengths in words."""
    if packs is None:
        return "in the lengths of the supplier"
    feet = abs(packs.length / UNITS["ft"].to_si(1.0) % 1.0) < 1e-6
    unit = UNITS["ft"] if feet else UNITS["m"]
    each = f"{number_text(unit.from_si(packs.length), 0)} {unit.text}"
    kind = packs.kind if packs.count == 1 else f"{packs.kind}s"
    joint = "" if packs.fits else "; a run is longer than any coil, so plan where its joint can be reached"
    return f"{packs.count} {kind} of {each}{joint}"


def _length(figure: Figure, printing: Printing) -> tuple[float | None, str]:
    """A length as a number, and its unit: decimal feet or meters."""
    unit = UNITS["ft"] if printing.units.feet_and_inches else UNITS["m"]
    return (None if figure.is_missing else round(unit.from_si(float(figure)), 2)), unit.text


def _tubes(printing: Printing) -> Iterator[MaterialLine]:
    for lot in tube_lots(printing.design):
        amount, unit = _length(lot.to_buy, printing)
        text = printing.show(lot.to_buy)
        yield MaterialLine(
            TUBE, lot.tube, "", amount, unit, text, _of(lot), pack_words(lot.packs, printing),
            printing.found.key(lot.to_buy),
        )  # fmt: skip


def _of(lot: TubeLot) -> str:
    return ", ".join(dict.fromkeys(each.owner for each in lot.cuts))


def _fittings(printing: Printing) -> Iterator[MaterialLine]:
    for each in fitting_lots(printing.design):
        yield MaterialLine(
            FITTINGS,
            each.name[:1].upper() + each.name[1:],
            each.tube,
            float(each.count),
            PIECES,
            number_text(each.count, 0),
        )


def _emitters(printing: Printing) -> Iterator[MaterialLine]:
    """Emitters with their finned length or size; one whose length the design suggests says so."""
    job, found = printing.design.job, getattr(printing.design, "emitters", None)
    for id, each in job.system.emitters.items():
        heat = found.emitters.get(id) if found is not None else None
        room = str(getattr(job.rooms.get(each.room), "name", each.room))
        if each.kind in BY_LENGTH:
            length = heat.length if heat is not None else each.length
            amount, unit = _length(length, printing) if length is not None else (None, "")
            suggested = heat is not None and heat.suggested
            yield MaterialLine(
                EMITTERS, _kind(each), each.name, amount, unit,
                "" if length is None else printing.show(length),
                room, "length as the design suggests" if suggested else "finned length",
                printing.found.key(length),
            )  # fmt: skip
        else:
            yield MaterialLine(
                EMITTERS, _kind(each), each.name, 1.0, PIECES, "1", room, _size(each, printing)
            )


def _kind(emitter: Emitter) -> str:
    return emitter.kind[:1].upper() + emitter.kind[1:]


def _size(emitter: Emitter, printing: Printing) -> str:
    said = []
    if emitter.sections is not None and not emitter.sections.is_missing:
        said.append(f"{show(emitter.sections, printing.units)} sections")
    if emitter.output is not None and not emitter.output.is_missing:
        said.append(f"rated {show(emitter.output, printing.units)}")
    return ", ".join(said)


def _valves(printing: Printing) -> Iterator[MaterialLine]:
    found = getattr(printing.design, "circuits", None)
    for id, each in printing.design.job.system.circuits.items():
        valve = each.common.valve
        if valve is not None:
            yield MaterialLine(VALVES, "Zone valve", printing.show(valve), 1.0, PIECES, "1", each.name)
        runs = found.circuits[id].runs if found is not None and id in found.circuits else {}
        count = len(each.runs) if each.balanced else 0
        if count:
            settings = [run.balancing for run in runs.values() if run.balancing is not None]
            note = f"set as the circuit schedule says, {len(settings)} of them" if settings else ""
            yield MaterialLine(
                VALVES, "Balancing valve", "", float(count), PIECES, str(count), each.name, note
            )


def _plant(printing: Printing) -> Iterator[MaterialLine]:
    plant, found = printing.design.job.system.plant, getattr(printing.design, "boiler_room", None)

    def line(item: str, size: str, note: str = "", key: str = "") -> MaterialLine:
        return MaterialLine(PLANT, item, size, 1.0, PIECES, "1", "Boiler room", note, key)

    boiler = plant.boiler
    if boiler is not None:
        output = boiler.output if boiler.output is not None else boiler.input
        said = ", ".join(each for each in (boiler.kind, boiler.fuel) if each)
        yield line(f"Boiler: {boiler.name}" if boiler.name else "Boiler", _text(output, printing), said)
        if boiler.relief is not None:
            size = f"opens at {_text(boiler.relief, printing)}"
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
        amount, unit = _length(mains.length, printing)
        yield MaterialLine(
            PLANT, "Pipe insulation", f"{_text(mains.insulation, printing)} thick", amount, unit,
            printing.show(mains.length), "Mains", "without waste",
        )  # fmt: skip


def _text(figure: Figure | None, printing: Printing) -> str:
    return "" if figure is None or figure.is_missing else show(figure, printing.units)
