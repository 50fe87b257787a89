"""Tables of the inspector's set: parts, rooms, loss to plant, emitters, safety parts, pipes, tests."""

from __future__ import annotations

from heatledger.drawings.cause_bar import cause_swatch
from heatledger.ledger.dimensions import (
    AREA,
    HEAT_FLUX,
    HEAT_RATE,
    LENGTH,
    TEMPERATURE,
    TEMPERATURE_DIFFERENCE,
    TRANSMITTANCE,
)
from heatledger.ledger.figures import Figure
from heatledger.papers import blocks as b
from heatledger.papers import heat_loss_data as data
from heatledger.papers.answers import figure, listed, said
from heatledger.papers.emitters_paper import length_cell
from heatledger.papers.inspector_answers_plant import tank_needed
from heatledger.papers.parts import part_lines
from heatledger.papers.printing import Printing
from heatledger.papers.tables import heights_note
from heatledger.studies.materials import tube_lots
from heatledger.studies.parts import parts_of_house

SEEN = (b.Run("seen", box=True),)


def parts_table(printing: Printing) -> b.Table:
    """What the house is built of: area, U-value, difference, loss, and who says the U-value."""
    columns = (
        b.Column("", width="13pt"), b.Column("Part", width="1fr"), b.Column("Area", "right",
        unit=printing.unit(AREA)),
        b.Column("U-value", "right", unit=printing.unit(TRANSMITTANCE)),
        b.Column("ΔT", "right", unit=printing.unit(TEMPERATURE_DIFFERENCE)),
        b.Column("Loss", "right", unit=printing.unit(HEAT_RATE)), b.Column("Source of the U-value",
        width="1.1fr"),
    )  # fmt: skip
    lines = part_lines(parts_of_house(printing.design), printing.found)
    rows = [_part(each) for each in lines]
    air = printing.design.losses.house.causes.get("air")
    if air is not None:
        rows.append(b.Row((
            b.Cell(" ", drawing=cause_swatch("air")), b.Cell("Outdoor air"), b.NONE, b.NONE, b.NONE,
            printing.cell(air.loss), b.Cell("air changes, as under design conditions"),
        )))  # fmt: skip
    total = (
        b.NOTHING, b.Cell("House, block load", strong=True), b.NOTHING, b.NOTHING, b.NOTHING,
        printing.cell(printing.design.losses.house.loss, total=True), b.Cell("rounded parts"),
    )  # fmt: skip
    note = (
        f"Area × U-value × ΔT is the loss of a part. {heights_note(printing.design, printing.units)}".strip()
    )
    return b.Table(columns, (*rows, b.Row(total, "total")), note)


def _part(line: data.PartLine) -> b.Row:
    cells = [b.Cell(each.text, each.key) for each in (line.area, line.u_value, line.difference, line.loss)]
    if line.area_unit:
        cells[0] = b.Cell(f"{line.area.text} {line.area_unit}", line.area.key)
    source = b.Cell(line.source.text, standing=line.source.standing)
    return b.Row((b.Cell(" ", drawing=cause_swatch(line.cause)), b.Cell(line.name), *cells, source))


def rooms_table(printing: Printing) -> b.Table:
    """Floor area, indoor temperature and loss of every room, and the house."""
    losses = printing.design.losses
    columns = (
        b.Column("Room", width="1fr"), b.Column("Floor", "right", unit=printing.unit(AREA)),
        b.Column("Indoors", "right", unit=printing.unit(TEMPERATURE)),
        b.Column("Loss", "right", unit=printing.unit(HEAT_RATE)),
        b.Column("per area", "right", unit=printing.unit(HEAT_FLUX)),
    )  # fmt: skip
    rows = [
        b.Row(
            (b.Cell(each.name), *map(printing.cell, (each.floor_area, each.indoor, each.loss, each.per_area)))
        )
        for each in losses.rooms.values()
    ]
    house = losses.house
    total = (
        b.Cell("House", strong=True), printing.cell(house.floor_area), b.NOTHING,
        printing.cell(house.loss, total=True), printing.cell(house.per_area),
    )  # fmt: skip
    return b.Table(columns, (*rows, b.Row(total, "total")))


def to_plant(printing: Printing) -> b.Facts:
    """From the loss to the plate of the boiler: every factor, and their product."""
    room, fact = printing.design.boiler_room.plant, printing.fact
    facts = [
        fact("Heat loss of the house", printing.design.losses.house.loss, "no allowance in it"),
        fact("Mains outside heated rooms", room.mains_loss), fact((b.Run("Load", "bold"),), room.load),
    ]  # fmt: skip
    if room.rated_output is not None:
        facts.append(fact("Output on the plate", room.rated_output))
    if room.output is not None:
        facts.append(fact("Output at this height", room.output))
    if room.ratio is not None:
        facts.append(_factor((b.Run("Output over load", "bold"),), room.ratio, printing))
    facts += [
        _factor(f"Factor: {each.name}", each.value, printing, each.note) for each in room.factors.values()
    ]
    if room.factors:
        facts.append(
            _factor((b.Run("All factors together", "bold"),), room.product, printing, "their product")
        )
    return b.Facts(tuple(facts))


def _factor(name: b.Text, one: Figure, printing: Printing, note: str = "") -> b.Fact:
    return b.Fact(name, printing.show(one, 3), printing.found.key(one), note)


def emitters_table(printing: Printing) -> b.Table:
    """Every emitter with what it is asked for and what it gives at the design supply."""
    job, found = printing.design.job, printing.design.emitters
    heat, unit = printing.unit(HEAT_RATE), printing.unit(TEMPERATURE)
    columns = (
        b.Column("Emitter", width="1fr"), b.Column("Kind"), b.Column("Rated, net", "right", unit=heat),
        b.Column("Asked for", "right", unit=heat), b.Column("Mean water", "right", unit=unit),
        b.Column("Gives", "right", unit=heat),
    )  # fmt: skip
    rows = [
        b.Row((
            b.Cell(each.name), b.Cell(job.system.emitters[id].kind),
            *map(printing.cell, (each.rated, each.load, each.mean_water, each.output)),
        ))
        for id, each in found.emitters.items()
    ]  # fmt: skip
    total = (
        b.Cell("House", strong=True), b.NOTHING, b.NOTHING, printing.cell(printing.design.losses.house.loss),
        b.NOTHING, printing.cell(found.house.given, total=True),
    )  # fmt: skip
    return b.Table(columns, (*rows, b.Row(total, "total")))


def safety_table(printing: Printing) -> b.Table:
    """Relief, cutoff, limit, tank, fill and backflow: what is designed, what is asked for, seen or not."""
    columns = (
        b.Column("Part", width="0.8fr"), b.Column("As designed", width="1.4fr"),
        b.Column("To be proved on site", width="1.6fr"), b.Column("", width="40pt"),
    )  # fmt: skip
    rows = [
        b.Row((b.Cell(name, strong=True), b.Cell(what), b.Cell(proof), b.Cell(SEEN)))
        for name, what, proof in _safety(printing)
    ]
    return b.Table(columns, tuple(rows))


def _safety(printing: Printing) -> list[tuple[str, b.Text, str]]:
    plant, room = printing.design.job.system.plant, printing.design.boiler_room.plant
    boiler, tank = plant.boiler, plant.tank
    rating: b.Text = "rating not given"
    if boiler is not None and boiler.relief_capacity is not None:
        rating = said("stamped for ", figure(printing, boiler.relief_capacity))
    cutoff = {True: "shown", False: "none found", None: "not said"}[plant.low_water_cutoff]
    limit: b.Text = (
        "not given" if plant.high_limit is None else said("set at ", figure(printing, plant.high_limit))
    )
    own: b.Text = "not chosen"
    if tank is not None and tank.volume is not None:
        own = said(figure(printing, tank.volume), f", on the {tank.placed}" if tank.placed else "")
    return [
        ("Relief valve", said("opens at ", printing.relief_setting(), ", must pass ",
         figure(printing, room.relief_needed), "; ", rating), "discharge full size, downhill, no valve, ends "
         "in sight"),
        ("Low-water cutoff", cutoff, "stops the fire with the water drained; no valve to the boiler"),
        ("High limit", limit, "stops the fire when turned down; reset by hand"),
        ("Emergency switch", "at the door of the boiler room, by the electrical trade", "stops the fire"),
        ("Expansion tank", said(own, "; ", tank_needed(printing)), "supported by itself"),
        ("Precharge", printing.precharge(), "read with no water behind it"),
        ("Fill", figure(printing, room.fill_pressure), "cold, at the gauge"),
        ("Backflow preventer", "class as the adopted code asks", "on the drinking-water side of the fill "
        "valve"),
    ]  # fmt: skip


def pipe_table(printing: Printing) -> b.Table | None:
    """Tube by size, with its length and what it serves; None while nothing is piped."""
    lots = tube_lots(printing.design)
    if not lots:
        return None
    columns = (
        b.Column("Tube", width="0.9fr"), b.Column("Length", "right", unit=printing.unit(LENGTH)),
        b.Column("Serves", width="1.5fr"), b.Column("Standard, support, insulation", width="1.1fr"),
    )  # fmt: skip
    rows = [
        b.Row((
            b.Cell(each.tube or "not chosen yet"), length_cell(each.length, printing),
            b.Cell(listed([*dict.fromkeys(cut.owner for cut in each.cuts)])), b.NOTHING,
        ))
        for each in lots
    ]  # fmt: skip
    return b.Table(columns, tuple(rows), ruled=True)


def test_table(printing: Printing) -> b.Table:
    """The record of pressure tests: what is due, and blanks for what was seen."""
    startup, read = printing.design.startup.startup, printing.design.job.system.readings
    columns = (
        b.Column("Tested", width="1.2fr"), b.Column("Due", "right", "64pt"), b.Column("Held at",
        width="0.9fr"),
        b.Column("How long", width="0.7fr"), b.Column("By, when", width="1.1fr"), b.Column("Before covering",
        width="70pt"),
    )  # fmt: skip
    held = b.NOTHING if read.test_pressure is None else printing.cell(read.test_pressure, unit=True)
    due = printing.cell(startup.test_pressure, unit=True)
    blank = (b.NOTHING, b.NOTHING, b.Cell((b.Run("yes", box=True),)))
    rows = (
        b.Row((b.Cell("Heating piping, with water"), due, held, *blank)),
        b.Row((b.Cell("Fuel piping"), b.Cell("as the code asks"), b.NOTHING, *blank)),
        b.Row((b.Cell("Other"), b.NOTHING, b.NOTHING, *blank)),
    )
    return b.Table(
        columns, rows, "Boiler, tank and weak gauges are shut off for the test.", ruled=True, row_height=17.0
    )
