"""The boiler room on paper: the schematic, from load to output, water, tank, pressures, parts."""

from __future__ import annotations

from heatledger.drawings.firing_chart import firing_range
from heatledger.drawings.schematic import schematic
from heatledger.ledger.dimensions import WATER_VOLUME
from heatledger.ledger.figures import Figure
from heatledger.papers import blocks as b
from heatledger.papers.owner_plant import times_over
from heatledger.papers.plant_parts import CITED, parts_table
from heatledger.papers.printing import Printing
from heatledger.papers.schematic_from import schematic_views, undrawn

TITLE = "Boiler room"
WIDTH, RANGE = 516.0, 420.0
CAUTIONS = (
    "Never plug, valve off or reduce the relief valve or its discharge. Never bypass or hold a limit, the "
    "low-water cutoff or the flame guard, not even for a test.",
    "A burner needs its air and its vent: venting, combustion air and gas piping are for those licensed "
    "for them, by the boiler's own manual. Carbon monoxide kills without a smell.",
    "Water and pipes scald. Let the boiler cool and the pressure fall before anything is opened.",
)
SIGNS = (
    "Supply solid, return dashed. Signs after the families for piping diagrams, from memory; their meaning "
    "stands under the drawing."
)


def boiler_room_paper(printing: Printing) -> b.Paper:
    """The schematic first, then every number that the boiler room rests on."""
    blocks: list[b.Block] = [b.Paragraph(_opening(printing), "lead")]
    for view in schematic_views(printing):
        blocks += [
            b.Heading(view.title),
            b.Picture(schematic(view, WIDTH), f"{SIGNS} {undrawn(view)}".strip()),
        ]
    blocks += [b.Heading("From load to output"), _load(printing), *_range(printing)]
    blocks += [b.Heading("Every factor between them"), _factors(printing)]
    left = (b.Heading("Water of the system"), _volumes(printing))
    right = (b.Heading("Expansion tank"), _tank(printing))
    blocks += [b.Columns((left, right), (1.0, 1.25)), b.Heading("Pressures"), _pressures(printing)]
    blocks += [b.Heading("Parts and where they go"), parts_table(printing)]
    blocks += [b.Heading("Open"), printing.findings(5)]
    blocks += [printing.caution(*CAUTIONS), printing.sources("boiler_room", sheets=(5,), more=CITED)]
    return b.Paper(printing.head(TITLE), tuple(blocks))


def _opening(printing: Printing) -> b.Text:
    room, run = printing.design.boiler_room.plant, printing.run
    said: list[str | b.Run] = ["The boiler must supply ", run(room.load, bold=True), " on the design day."]
    if room.output is not None and room.ratio is not None:
        said += [
            " Its output here is ",
            run(room.output, bold=True),
            ", ",
            *times_over(printing, room.ratio),
            " times that load.",
        ]
    else:
        said.append(" The boiler is not chosen yet.")
    said += [" Fill to ", run(room.fill_pressure, bold=True), " cold; the relief valve opens at ",
             *printing.relief_setting(), "."]  # fmt: skip
    return tuple(said)


def _range(printing: Printing) -> list[b.Block]:
    """What the burner holds steadily, against the calls on it."""
    chart = firing_range(printing.design, printing.units, RANGE)
    if chart is None:
        return []
    return [b.Picture(chart.drawing, f"{chart.sentence} {chart.note}".strip())]


def _load(printing: Printing) -> b.Facts:
    room, fact = printing.design.boiler_room.plant, printing.fact
    facts = [
        fact("Heat loss of the house", printing.design.losses.house.loss, "no allowance in it"),
        fact("Lost by the mains outside heated rooms", room.mains_loss),
        fact((b.Run("Load", "bold"),), room.load, "what the boiler must supply"),
    ]
    if room.rated_output is not None:
        facts.append(fact("Output on the plate", room.rated_output))
    if room.output is not None:
        facts.append(fact((b.Run("Output at this height", "bold"),), room.output))
    facts.append(
        fact("Largest output that still suits", room.largest_output, "beyond it the boiler short-cycles")
    )
    there: b.Text = ""
    if room.efficiency is not None:
        there = ("efficiency there ", printing.run(room.efficiency, percent=True))
    facts.append(fact("Return on the design day", room.return_design, there))
    return b.Facts(tuple(facts))


def _factors(printing: Printing) -> b.Table:
    """Every factor between the loss and the plate, so that no margin is stacked unseen."""
    room = printing.design.boiler_room.plant
    columns = (b.Column("Factor", width="1fr"), b.Column("What it is", width="2fr"), b.Column("", "right"))
    rows = [
        b.Row((b.Cell(each.name), b.Cell(each.note), _factor(each.value, printing)))
        for each in room.factors.values()
    ]
    total = (b.Cell("All together"), b.Cell("plate of the boiler over heat loss of the house"),
             _factor(room.product, printing, total=True))  # fmt: skip
    note = "Every factor stands here; a factor of 1 says that nothing is added at that place."
    return b.Table(columns, (*rows, b.Row(total, "total")), note, whole=True)


def _factor(figure: Figure, printing: Printing, total: bool = False) -> b.Cell:
    """A factor to three decimals, so that all of them stand in one column."""
    return b.Cell(printing.show(figure, 3), printing.found.key(figure), total=total)


def _volumes(printing: Printing) -> b.Table:
    room = printing.design.boiler_room.plant
    columns = (b.Column("Part", width="1fr"), b.Column("Water", "right", unit=printing.unit(WATER_VOLUME)))
    rows = [b.Row((b.Cell(each.name), printing.cell(each.volume))) for each in room.volumes.values()]
    total = b.Row((b.Cell("System"), printing.cell(room.water_volume, total=True)), "total")
    return b.Table(columns, (*rows, total), whole=True)


def _tank(printing: Printing) -> b.Facts:
    room, fact = printing.design.boiler_room.plant, printing.fact
    tank = printing.design.job.system.plant.tank
    facts = [
        fact("Filled at", room.filled_at), fact("Hottest", room.hottest),
        fact("Growth of the water", room.expansion_share, "by density, net of metal"),
        fact("Water to take up", room.expanded), fact("Share of the tank that takes it",
        room.acceptance_factor),
        fact("Tank by density", room.tank_by_density),
    ]  # fmt: skip
    if room.tank_by_line is not None:
        facts.append(
            fact("Tank by the line of the boiler code", room.tank_by_line, "valid for hot systems only")
        )
    else:
        facts.append(b.Fact("Tank by the line of the boiler code", "–", note="not valid at this temperature"))
    facts.append(fact((b.Run("Tank needed", "bold"),), room.tank_volume, "the larger governs"))
    if room.tank_least is not None:
        facts.append(
            fact("Tank for the water that is known", room.tank_least, "at least; the rest comes on top")
        )
    if tank is not None and tank.volume is not None:
        facts.append(fact("Tank chosen", tank.volume, f"on the {tank.placed}" if tank.placed else ""))
    return b.Facts(tuple(facts))


def _pressures(printing: Printing) -> b.Facts:
    room, fact = printing.design.boiler_room.plant, printing.fact
    return b.Facts((
        fact("Weight of the water to the highest pipe", room.static_pressure),
        fact("Fill pressure needed", room.needed_fill, "and some at the top, so that no air is drawn in"),
        fact((b.Run("Fill pressure, cold", "bold"),), room.fill_pressure),
        fact((b.Run("Precharge of the tank", "bold"),), room.precharge_pressure,
             "set with the tank empty of water, before filling"),
        fact("Pressure, hot", room.hot_pressure),
        fact("Highest allowed at the tank", room.highest_pressure),
        _relief(printing),
        fact("Relief valve must pass", room.relief_needed, "or more, as stamped on it"),
        fact("At the top, cold", room.top_cold), fact("At the top, hot", room.top_hot),
    ))  # fmt: skip


def _relief(printing: Printing) -> b.Fact:
    """The setting of the relief valve, else a blank with what is reckoned with until it is read."""
    name, reckoned = (b.Run("Relief valve opens", "bold"),), printing.design.boiler_room.plant.relief_pressure
    if printing.relief is not None:
        return printing.fact(name, reckoned)
    return b.Fact(name, "", note=("read its plate; until then ", printing.run(reckoned), " is reckoned with"))
