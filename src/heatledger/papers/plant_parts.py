"""The parts of the boiler room: what, where, what size or setting, and why there."""

from __future__ import annotations

from heatledger.drawings.shapes import Drawing
from heatledger.drawings.symbols import SYMBOLS, symbol
from heatledger.ledger.sources import JUDGMENT, MEMORY, SEEN, Citation, cite
from heatledger.papers import blocks as b
from heatledger.papers.printing import Printing

AIR = cite("IAPMO-RPA", "air separator and tank before the circulator", SEEN)
RELIEF = cite("IMC-1006", "safety and relief valves", SEEN)
PURGE = cite("RHS-PURGE", "purging each zone", SEEN)
GAUGES = cite("IRC-550", "gauges on each boiler", SEEN)
LIMITS = cite("CSD-1", "limits and low-water cutoffs", MEMORY)
BACKFLOW = cite("CHI-608", "backflow preventer for a boiler", SEEN)
SERVICE = cite("IRC-557", "valves for service", SEEN)
SEEN_WATER = cite("", "readings that the startup sheet needs", JUDGMENT)

CITED: tuple[Citation, ...] = (AIR, RELIEF, PURGE, GAUGES, LIMITS, BACKFLOW, SERVICE, SEEN_WATER)


def parts_table(printing: Printing) -> b.Table:
    """Every part with its sign."""
    columns = (
        b.Column("", width="26pt"), b.Column("Part", width="1fr"), b.Column("Place", width="1.5fr"),
        b.Column("Size or setting", width="0.9fr"), b.Column("Because", width="1.5fr"), b.Column(""),
    )  # fmt: skip
    rows = [
        b.Row((
            b.Cell(" ", drawing=_mark(sign)), b.Cell(name), b.Cell(place), b.Cell(size), b.Cell(why),
            b.Cell(" ", standing=source.standing.value),
        ))
        for sign, name, place, size, why, source in _parts(printing)
    ]  # fmt: skip
    return b.Table(columns, tuple(rows), "Signs as in the schematic.")


def _mark(sign: str) -> Drawing:
    """A sign small enough to stand in a row."""
    unit = {"expansion tank": 3.0, "relief valve": 3.6, "air separator": 3.4, "fill valve": 4.0,
            "backflow preventer": 4.6, "purge drain": 3.6, "zone valve": 4.6}.get(sign, 4.8)  # fmt: skip
    low = {"relief valve": 9.2, "air separator": 9.6, "fill valve": 9.0, "purge drain": 2.6}.get(sign, 7.5)
    return Drawing(sign, sign, 22.0, 15.0, symbol(sign, (11.0, low), unit=unit))


def _parts(printing: Printing) -> list[tuple[str, str, str, b.Text, str, Citation]]:
    design = printing.design
    system, room = design.job.system, design.boiler_room.plant
    plant, boiler, tank = system.plant, system.plant.boiler, system.plant.tank
    run = printing.run
    capacity = boiler.relief_capacity if boiler is not None else None
    relief: b.Text = ("set ", run(room.relief_pressure), ", for ", run(room.relief_needed), " or more")
    if capacity is not None:
        relief = ("set ", run(room.relief_pressure), ", good for ", run(capacity))
    own = tank.volume if tank is not None else None
    size: b.Text = (run(own), " chosen") if own is not None else (run(room.tank_volume), " or larger")
    limit: b.Text = run_or(plant.high_limit, printing, "as the boiler's maker says")
    rows: list[tuple[str, str, str, b.Text, str, Citation]] = [
        ("relief valve", "Relief valve",
        "the boiler's own tapping, no valve on either side; discharge full size, "
         "by gravity, to a floor drain through an air gap in sight", relief,
         "opens before the weakest part gives way", RELIEF),
        ("high limit", "High limit", "supply of the boiler", limit,
        "stops the burner when the control does not",
         LIMITS),
        ("low-water cutoff", "Low-water cutoff",
        "above the lowest safe level, no valve between it and the boiler",
         "reset by hand", "stops the burner when the boiler runs dry", LIMITS),
        ("air separator", "Air separator", "boiler supply, before the circulator", "as the main",
         "the hottest water gives up most air", AIR),
        ("expansion tank", "Expansion tank",
        "at the separator, on the suction of the circulator, held by itself",
         size, "the point where the circulator does not change the pressure", AIR),
        ("fill valve", "Fill valve, shutoffs both sides", "where the tank joins",
         ("set ", run(room.fill_pressure)), "the only place where the circulator does not move it", AIR),
        ("backflow preventer", "Backflow preventer", "on the drinking-water side of the fill valve",
         "as the code asks", "keeps boiler water out of drinking water", BACKFLOW),
        ("circulator", "Circulator", "just after the tank, shaft level", _pumps(printing),
         "pumps away from the tank, so pressure rises and air stays dissolved", AIR),
        ("purge drain", "Purge drain and full-port shutoff",
         "on the return of each circuit: drain first, then the shutoff toward the boiler",
         f"{len(system.circuits)}" if system.circuits else " ",
         "a fast fill sweeps the air out and dirt past the "
         "boiler", PURGE),
        ("shutoff", "Shutoffs", "both sides of boiler and circulator", "as the pipe",
        "service without draining",
         SERVICE),
        ("pressure gauge", "Pressure gauge", "at the boiler", "covers the usual range",
         "the first thing to look at", GAUGES),
        ("thermometer", "Thermometers", "supply and return of the boiler, return of each circuit",
         "covers the usual range", "the drop tells the flow", SEEN_WATER),
    ]  # fmt: skip
    zoned = any(each.common.valve is not None for each in system.circuits.values())
    if zoned:
        rows.append(("zone valve", "Zone valves", "supply of each circuit", "as scheduled",
                     "each zone is called by itself", SEEN_WATER))  # fmt: skip
    assert all(sign in SYMBOLS for sign, *_ in rows)
    return rows


def run_or(figure: object, printing: Printing, words: str) -> b.Text:
    """A figure with its key, or words where the job gives none."""
    return words if figure is None else (printing.run(figure),)  # type: ignore[arg-type]


def _pumps(printing: Printing) -> b.Text:
    duties = printing.design.circuits.plant.circulators
    runs: list[str | b.Run] = []
    for each in duties.values():
        runs += [", " if runs else "", printing.run(each.needed_flow), " at ", printing.run(each.needed_head)]
    return tuple(each for each in runs if each != "") or "not chosen yet"
