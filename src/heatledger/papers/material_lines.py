"""The lines of the material list: what, which size, how much, where, each as plain data."""

from __future__ import annotations

from collections.abc import Iterator

from heatledger.job.system_model import BY_LENGTH, Emitter
from heatledger.ledger.show import number_text, show
from heatledger.ledger.units import UNITS
from heatledger.papers.material_plant import (
    PIECES,
    MaterialLine,
    for_replacement,
    length_of,
    plant_lines,
    to_be_chosen,
)
from heatledger.papers.printing import Printing
from heatledger.papers.replacement_paper import applies
from heatledger.studies.materials import Packs, TubeLot, fitting_lots, tube_lots

TENTHS = 1
"""What is bought of tube is told in tenths of a foot or a meter: it is a share put on top, not a tape."""
TUBE, FITTINGS, EMITTERS, VALVES = "Tube", "Fittings", "Emitters", "Valves"


def material_lines(printing: Printing) -> list[MaterialLine]:
    """Every line, in the order of the groups.

    Where the plant is replaced, what hangs there stays: only what the new plant asks for is listed.
    """
    if applies(printing.design):
        return list(for_replacement(printing))
    return [
        *_tubes(printing), *_fittings(printing), *_emitters(printing), *_valves(printing),
        *plant_lines(printing), *to_be_chosen(printing),
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


def _tubes(printing: Printing) -> Iterator[MaterialLine]:
    for lot in tube_lots(printing.design):
        amount, unit = length_of(lot.to_buy, printing)
        text = printing.show(lot.to_buy, TENTHS)
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
            amount, unit = length_of(length, printing) if length is not None else (None, "")
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
    circuits = printing.design.job.system.circuits.values()
    zones: dict[str, list[str]] = {}
    for each in circuits:
        if each.common.valve is not None:
            zones.setdefault(printing.show(each.common.valve), []).append(each.name)
    for size, names in zones.items():
        number = len(names)
        where = ", ".join(names)
        yield MaterialLine(VALVES, "Zone valve", size, float(number), PIECES, str(number), where)
    for each in circuits:
        count = len(each.runs) if each.balanced else 0
        if count:
            settings = "settings on the circuit schedule"
            yield MaterialLine(
                VALVES, "Balancing valve", "", float(count), PIECES, str(count), each.name, settings
            )
