"""The card that hangs beside the boiler: emergencies first, then the schematic, pressures, water, purging."""

from __future__ import annotations

from heatledger.drawings.schematic import schematic
from heatledger.drawings.schematic_legend import schematic_legend
from heatledger.ledger.dimensions import TEMPERATURE
from heatledger.ledger.figures import Figure
from heatledger.papers import blocks as b
from heatledger.papers.printing import LOCAL_CODE, WRITE_ON, Printing
from heatledger.papers.reset_table import fixed_line, follows_weather, held_words
from heatledger.papers.schematic_from import schematic_views, short
from heatledger.steps.checklist import purge_order
from heatledger.steps.controls import asked_at
from heatledger.studies.held_water import held_water

TITLE = "Boiler room card"
COUNTS = ("No", "One", "Two", "Three", "Four", "Five", "Six", "Seven", "Eight", "Nine")
WIDE, SHEET = 490.0, 700.0
TALLEST = 345.0
LARGER = 1.18
"""The card is read standing."""
NEVER = (
    "Never bypass a limit, the low-water cutoff or the relief valve, not even to test. Never plug or cap "
    "the pipe of the relief valve. Nothing is stored against the boiler, its vent or its air openings."
)


def wall_card(printing: Printing) -> b.Paper:
    """Landscape sheets: emergencies, schematic, usual readings and water; then what to do.

    A schematic too tall to stand beside the readings has sheets of its own, one a part, and what to do
    stands on the first.
    """
    views = schematic_views(printing)
    drawn = [schematic(each, WIDE, legend=False) for each in views]
    readings = (_pressures(printing), *_weather(printing))
    front: list[b.Block] = [b.Columns(tuple(map(_emergency, _emergencies(printing))))]
    rest: list[b.Block]
    beside = len(drawn) == 1 and drawn[0].height <= TALLEST
    if beside:
        front.append(b.Columns(((b.Picture(drawn[0]),), readings), (WIDE + 4, SHEET - WIDE)))
        legend = b.Picture(schematic_legend(views[0], SHEET))
        rest = [*_to_do(printing), b.Heading(legend.drawing.title), legend]
    else:
        weather = readings[1:] or (b.Paragraph(""),)
        front += [b.Columns((readings[:1], weather)), *_to_do(printing)]
        rest = [b.Picture(schematic(views[0], SHEET))]
        for each in views[1:]:
            rest += [b.PageBreak(), b.Heading(each.title), b.Picture(schematic(each, SHEET))]
    count = COUNTS[min(1 + len(views), len(COUNTS) - 1)]
    said = f"{count} sheets: hang {'both' if len(views) == 1 else 'all'} beside the boiler."
    blocks = (*front, b.Paragraph(said, "small"), b.PageBreak(), *rest)
    return b.Paper(printing.head(TITLE), blocks, landscape=True, grow=LARGER if beside else 1.0)


def _to_do(printing: Printing) -> list[b.Block]:
    """What is off and what to do, purging, the yearly work, whom to call, what is never done."""
    last = (b.Heading("Every year"), b.Paragraph(_yearly(printing)), b.Heading("Who to call"), _who())
    return [
        b.Columns((
            (b.Heading("If something is off"), _off(printing)),
            (b.Heading("Purge in this order"), *_purge(printing)), last,
        ), (1.25, 1.0, 0.85)),
        b.Frame("", (NEVER, LOCAL_CODE, "The boiler's own manual goes before this card.")),
    ]  # fmt: skip


def _emergencies(printing: Printing) -> list[tuple[str, str]]:
    boiler = printing.design.job.system.plant.boiler
    fuel = boiler.fuel if boiler is not None else "natural gas"
    if fuel == "electricity":
        first = (
            "Smell of burning.",
            "Throw the boiler's switch if it is safe to reach. Go out, call from outside.",
        )
    elif fuel == "oil":
        first = ("Smell of oil, smoke.", "Switch at the door off, oil valve shut. Go out, call from outside.")
    else:
        first = (
            "Smell of gas.",
            "Touch no switch, no flame, no telephone inside. Everyone out, call from outside.",
        )
    alarm = (
        "Carbon monoxide alarm.",
        "Everyone out, call the fire service from outside. Nobody goes back in.",
    )
    water = (
        "Water low, boiler hot.",
        "Never add water to it. Fuel off, let it cool down by itself, then call.",
    )
    off = "The switch at the door off, then the fuel valve shut. Leave both so until help is there."
    if fuel == "electricity":
        off = "The switch at the door off, then its breaker. Leave both so until help is there."
    stop = ("To stop it all.", off)
    return [first, alarm, water, stop]


def _emergency(said: tuple[str, str]) -> tuple[b.Block, ...]:
    return (b.Frame(said[0], (said[1],)),)


def _pressures(printing: Printing) -> b.Table:
    """What the gauges show with all calling; a setting that nobody has given is a blank to fill in."""
    design = printing.design
    room, plant = design.boiler_room.plant, design.job.system.plant
    columns = (b.Column("Usual readings", width="1fr"), b.Column("", "right"))
    lines = [
        ("Pressure, cold", room.fill_pressure), ("Pressure, hot, about", room.hot_pressure),
        ("Precharge of the tank", room.precharge_pressure), *_flow(printing),
    ]  # fmt: skip
    rows = [
        b.Row((b.Cell(name), b.Cell(short(each, printing), strong=True)))
        for name, each in lines
        if each is not None and not each.is_missing
    ]
    settings: list[tuple[str, b.Text]] = [
        ("Relief valve opens", short(printing.relief, printing) or printing.to_fill_in(room.relief_pressure)),
        ("High limit", short(plant.high_limit, printing) or printing.to_fill_in(room.hottest)),
    ]
    if plant.low_water_cutoff is not True:
        settings.append(("Low-water cutoff, make", (b.Run("", blank=WRITE_ON),)))
    rows += [b.Row((b.Cell(name), b.Cell(each, strong=True))) for name, each in settings]
    return b.Table(columns, tuple(rows), whole=True)


def _flow(printing: Printing) -> list[tuple[str, Figure | None]]:
    """Flow, temperature drop and return of one and the same state: that which results, else the design's."""
    room, pumps = printing.design.boiler_room.plant, printing.design.circuits.plant.circulators
    due, read = printing.design.startup.startup, printing.design.job.system.readings
    flow = None
    if len(pumps) == 1:
        duty = next(iter(pumps.values()))
        flow = duty.needed_flow if duty.actual_flow is None else duty.actual_flow
    elif pumps and not read.calling:
        flow = due.flow
    return [
        ("Flow, all calling", flow), ("Temperature drop (ΔT)", room.drop_design),
        ("Return on the coldest day", room.return_design),
    ]  # fmt: skip


def _weather(printing: Printing) -> list[b.Block]:
    """Water by the weather in whole degrees, or the one line of a control that does not follow it."""
    found, places = printing.design.controls.controls, 0
    if not follows_weather(printing):
        return [b.Paragraph(_without_keys(fixed_line(printing)))]
    unit = printing.unit(TEMPERATURE)
    columns = (b.Column("Outdoors", "right", unit=unit), b.Column("Supply", "right", unit=unit),
               b.Column("Return", "right", unit=unit))  # fmt: skip

    def cell(figure: Figure, strong: bool = False) -> b.Cell:
        return b.Cell(printing.show(figure, places).removesuffix(unit).strip(), strong=strong)

    water = held_water(printing.design)
    rows = [
        b.Row((cell(each.outdoor), cell(asked_at(each), True), cell(each.return_))) for each in water.open
    ]
    held = asked_at(water.open[-1])
    rows += [b.Row((cell(each.outdoor), cell(held, True), b.Cell("held"))) for each in water.held]
    off = (
        ""
        if found.shutdown.is_missing
        else f"No heat above {printing.show(found.shutdown, places)} outdoors."
    )
    note = " ".join(each for each in (held_words(printing), off) if each)
    return [b.Table(columns, tuple(rows), note, whole=True)]


def _off(printing: Printing) -> b.Table:
    """What is seen, and what anyone may do about it before calling."""
    room = printing.design.boiler_room.plant
    fill = short(room.fill_pressure, printing) or "its usual reading"
    rows = (
        ("One zone cold", "Its thermostat up? Its valve open? Then air: purge that circuit."),
        ("All cold", "Switch on? Burner locked out: reset once. Again: leave it, call."),
        (
            "Pressure low, cold",
            f"Open the fill valve, watch the gauge to {fill}, shut it. Twice in a month: call.",
        ),
        ("Pressure climbs when hot", "Tank has lost its charge, or the fill valve leaks by. Call."),
        ("Relief valve drips", "Read the pressure, call. Keep clear of the pipe: it scalds."),
        ("Gurgling", "Air: purge in order. Comes back: call."),
    )
    columns = (b.Column("Seen", width="0.7fr"), b.Column("Do", width="1.6fr"))
    return b.Table(columns, tuple(b.Row((b.Cell(name, strong=True), b.Cell(do))) for name, do in rows))


def _purge(printing: Printing) -> list[b.Block]:
    steps = purge_order(printing.design)
    if not steps:
        return [b.Paragraph("No circuits are given yet.")]
    columns = (
        b.Column("", "right", width="12pt"),
        b.Column("Cold, burner off, hose to a bucket", width="1fr"),
    )
    rows = tuple(
        b.Row((b.Cell(str(number)), b.Cell(_without_keys(printing.spoken(each)))))
        for number, each in enumerate(steps, 1)
    )
    return [b.Table(columns, rows)]


def _without_keys(text: b.Text) -> b.Text:
    """The same sentence for a wall: what is read there leads nowhere."""
    if isinstance(text, str):
        return text
    return "".join(each if isinstance(each, str) else each.text for each in text)


def _yearly(printing: Printing) -> str:
    plant = printing.design.job.system.plant
    charge = short(printing.design.boiler_room.plant.precharge_pressure, printing)
    boiler = plant.boiler
    burner = "" if boiler is not None and boiler.fuel == "electricity" else "Combustion and draft read. "
    trap = " Condensate trap clean and filled." if boiler is not None and boiler.kind == "condensing" else ""
    tank = f"Precharge of the tank {charge}, empty of water. " if charge else "Expansion tank looked at. "
    return (
        f"{burner}{tank}Relief valve, low-water cutoff and high limit proved. Strainers clean, water tested. "
        f"Carbon monoxide alarms pressed and in date.{trap} By who is licensed for it."
    )


def _who() -> b.Blanks:
    names = ("Heating", "Fuel supplier", "Electrician", "Fire service")
    return b.Blanks(tuple(b.Blank(name) for name in names))
