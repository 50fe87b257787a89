"""The parts of the boiler room: what, where, what size or setting, and why there."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from heatledger.drawings.shapes import Drawing
from heatledger.drawings.symbols import symbol
from heatledger.ledger.sources import JUDGMENT, MEMORY, PRACTICE, SEEN, Citation, cite
from heatledger.papers import blocks as b
from heatledger.papers.printing import Printing

AIR = cite("IAPMO-RPA", "air separator and tank before the circulator", SEEN)
RELIEF = cite("IMC-1006", "safety and relief valves", SEEN)
PURGE = cite("RHS-PURGE", "purging each zone", SEEN)
GAUGES = cite("IRC-550", "gauges on each boiler", SEEN)
LIMITS = cite("CSD-1", "limits, low-water cutoffs, switch at the door", MEMORY)
BACKFLOW = cite("CHI-608", "backflow preventer for a boiler", SEEN)
SERVICE = cite("IRC-557", "valves for service, in its part on loops in the ground", SEEN)
READINGS = cite("", "readings that the startup sheet needs", JUDGMENT)
ACID = cite("", "condensate is acid", PRACTICE)

CITED: tuple[Citation, ...] = (AIR, RELIEF, PURGE, GAUGES, LIMITS, BACKFLOW, SERVICE, READINGS, ACID)


CUTOFFS: dict[bool | None, b.Text] = {
    True: "reset by hand",
    False: "none found in this job",
    None: ("not given: make ", b.Run("", blank=40.0)),
}


@dataclass(frozen=True)
class Part:
    """One part: its sign (empty for one without), name, place, size or setting, reason, and source."""

    sign: str
    name: str
    place: str
    size: b.Text
    why: str
    source: Citation


def parts_table(printing: Printing) -> b.Table:
    """Every part with its sign."""
    columns = (
        b.Column("", width="26pt"), b.Column("Part", width="1fr"), b.Column("Place", width="1.5fr"),
        b.Column("Size or setting", width="0.9fr"), b.Column("Because", width="1.5fr"), b.Column(""),
    )  # fmt: skip
    parts = [*_of_the_boiler(printing), *_of_the_water(printing), *_of_the_circuits(printing)]
    rows = tuple(
        b.Row((
            b.Cell(" ", drawing=_mark(each.sign)) if each.sign else b.NOTHING, b.Cell(each.name),
            b.Cell(each.place), b.Cell(each.size), b.Cell(each.why),
            b.Cell(" ", standing=each.source.standing.value),
        ))
        for each in parts
    )  # fmt: skip
    return b.Table(columns, rows, "Signs as in the schematic.")


def _mark(sign: str) -> Drawing:
    """A sign small enough to stand in a row."""
    unit = {"expansion tank": 3.0, "relief valve": 3.6, "air separator": 3.4, "fill valve": 4.0,
            "backflow preventer": 4.6, "purge drain": 3.6, "zone valve": 4.6}.get(sign, 4.8)  # fmt: skip
    low = {"relief valve": 9.2, "air separator": 9.6, "fill valve": 9.0, "purge drain": 2.6}.get(sign, 7.5)
    return Drawing(sign, sign, 22.0, 15.0, symbol(sign, (11.0, low), unit=unit))


def _of_the_boiler(printing: Printing) -> Iterator[Part]:
    """What keeps the boiler from doing harm."""
    plant, room = printing.design.job.system.plant, printing.design.boiler_room.plant
    boiler, run = plant.boiler, printing.run
    capacity = boiler.relief_capacity if boiler is not None else None
    setting = printing.relief_setting()
    relief: b.Text = ("set ", *setting, ", for ", run(room.relief_needed), " or more")
    if capacity is not None:
        relief = ("set ", *setting, ", good for ", run(capacity))
    yield Part(
        "relief valve", "Relief valve",
        "the boiler's own tapping, no valve on either side; discharge full size, by gravity, to a floor "
        "drain through an air gap in sight",
        relief, "opens before the weakest part gives way", RELIEF,
    )  # fmt: skip
    limit = (
        (*printing.to_fill_in(room.hottest), ", not given; as the boiler's maker says")
        if plant.high_limit is None
        else (run(plant.high_limit),)
    )
    cutoff = CUTOFFS[plant.low_water_cutoff]
    yield Part("high limit", "High limit", "supply of the boiler", limit,
               "stops the burner when the control does not", LIMITS)  # fmt: skip
    yield Part("low-water cutoff", "Low-water cutoff",
               "above the lowest safe level, no valve between it and the boiler", cutoff,
               "stops the burner when the boiler runs dry", LIMITS)  # fmt: skip
    yield Part("", "Emergency switch", "at the door of the boiler room", "marked red",
               "stops the fire without going in", LIMITS)  # fmt: skip
    yield Part("pressure gauge", "Pressure gauge", "at the boiler", "covers the usual range",
               "the first thing to look at", GAUGES)  # fmt: skip
    if boiler is not None and boiler.kind == "condensing":
        yield Part("", "Condensate trap and neutralizer", "between boiler and drain, falling all the way",
                   "trap filled before the first fire",
                   "a dry trap lets flue gas into the room; the water is acid", ACID)  # fmt: skip


def _of_the_water(printing: Printing) -> Iterator[Part]:
    """What keeps air out and pressure steady."""
    plant, room = printing.design.job.system.plant, printing.design.boiler_room.plant
    tank, run = plant.tank, printing.run
    own = tank.volume if tank is not None else None
    size: b.Text = (run(own), " chosen") if own is not None else (run(room.tank_volume), " or larger")
    if own is None and room.tank_volume.is_missing:
        size = (*printing.to_fill_in(room.tank_volume), ", to be sized")
    yield Part("air separator", "Air separator", "boiler supply, before the circulator", "as the main",
               "the hottest water gives up most air", AIR)  # fmt: skip
    yield Part("expansion tank", "Expansion tank",
               "at the separator, on the suction of the circulator, held by itself", size,
               "the point where the circulator does not change the pressure", AIR)  # fmt: skip
    yield Part("fill valve", "Fill valve, shutoffs both sides", "where the tank joins",
               ("set ", run(room.fill_pressure)), "the only place where the circulator does not move it",
               AIR)  # fmt: skip
    yield Part("backflow preventer", "Backflow preventer", "on the drinking-water side of the fill valve",
               "as the code asks", "keeps boiler water out of drinking water", BACKFLOW)  # fmt: skip
    yield Part("circulator", "Circulator", "just after the tank, shaft level", _pumps(printing),
               "pumps away from the tank, so pressure rises and air stays dissolved", AIR)  # fmt: skip


def _of_the_circuits(printing: Printing) -> Iterator[Part]:
    """What each circuit needs to be purged, shut and read."""
    circuits = printing.design.job.system.circuits
    yield Part("purge drain", "Purge drain and full-port shutoff",
               "on the return of each circuit: drain first, then the shutoff toward the boiler",
               f"{len(circuits)} of each" if circuits else " ",
               "a fast fill sweeps the air out, and dirt past the boiler", PURGE)  # fmt: skip
    yield Part("shutoff", "Shutoffs", "both sides of boiler and circulator", "as the pipe",
               "service without draining", SERVICE)  # fmt: skip
    yield Part("thermometer", "Thermometers", "supply and return of the boiler, return of each circuit",
               "covers the usual range", "the temperature drop tells the flow", READINGS)  # fmt: skip
    if any(each.common.valve is not None for each in circuits.values()):
        yield Part("zone valve", "Zone valves", "supply of each circuit", "as scheduled",
                   "each zone is called by itself", READINGS)  # fmt: skip


def _pumps(printing: Printing) -> b.Text:
    runs: list[str | b.Run] = []
    for each in printing.design.circuits.plant.circulators.values():
        runs += [", " if runs else "", printing.run(each.needed_flow), " at ", printing.run(each.needed_head)]
    return tuple(each for each in runs if each != "") or "not chosen yet"
