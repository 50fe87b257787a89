"""The card that hangs beside the boiler: emergencies first, then the schematic, pressures, water, purging."""

from __future__ import annotations

from heatledger.drawings.schematic import schematic
from heatledger.drawings.schematic_legend import schematic_legend
from heatledger.ledger.dimensions import TEMPERATURE
from heatledger.papers import blocks as b
from heatledger.papers.printing import LOCAL_CODE, Printing
from heatledger.papers.schematic_from import schematic_views, short
from heatledger.steps.checklist import purge_order

TITLE = "Boiler room card"
BOTH = "Two sheets: hang both beside the boiler."
WIDE, SHEET = 490.0, 700.0
TALLEST = 345.0
NEVER = (
    "Never bypass a limit, the low-water cutoff or the relief valve, not even to test. Never plug or cap "
    "the pipe of the relief valve. Nothing is stored against the boiler, its vent or its air openings."
)


def wall_card(printing: Printing) -> b.Paper:
    """Two landscape sheets: emergencies, schematic, usual readings and water; then what to do.

    A schematic too tall to stand beside the readings has the second sheet to itself, and what to do
    stands on the first.
    """
    views = schematic_views(printing)
    drawn = [schematic(each, WIDE, legend=False) for each in views]
    readings = (_pressures(printing), *_weather(printing))
    front: list[b.Block] = [b.Columns(tuple(map(_emergency, _emergencies(printing))))]
    rest: list[b.Block]
    if len(drawn) == 1 and drawn[0].height <= TALLEST:
        front.append(b.Columns(((b.Picture(drawn[0]),), readings), (WIDE + 4, SHEET - WIDE)))
        legend = b.Picture(schematic_legend(views[0], SHEET))
        rest = [*_to_do(printing), b.Heading(legend.drawing.title), legend]
    else:
        weather = readings[1:] or (b.Paragraph(""),)
        front += [b.Columns((readings[:1], weather)), *_to_do(printing)]
        rest = [b.Picture(schematic(each, SHEET)) for each in views]
    blocks = (*front, b.Paragraph(BOTH, "small"), b.PageBreak(), *rest)
    return b.Paper(printing.head(TITLE), blocks, landscape=True)


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
    design = printing.design
    room, due = design.boiler_room.plant, design.startup.startup
    columns = (b.Column("Usual readings", width="1fr"), b.Column("", "right"))
    lines = [
        ("Pressure, cold", room.fill_pressure), ("Pressure, hot, about", room.hot_pressure),
        ("Relief valve opens", room.relief_pressure), ("Precharge of the tank", room.precharge_pressure),
        ("High limit", design.job.system.plant.high_limit), ("Flow, all calling", due.flow),
        ("Temperature drop (ΔT)", design.emitters.house.drop),
    ]  # fmt: skip
    rows = tuple(
        b.Row((b.Cell(name), b.Cell(short(each, printing), strong=True)))
        for name, each in lines
        if each is not None and not each.is_missing
    )
    return b.Table(columns, rows, whole=True)


def _weather(printing: Printing) -> list[b.Block]:
    """Water by the weather in whole degrees: a card is read, not worked from."""
    found, places = printing.design.controls.controls, 0
    if not found.reset:
        return []
    unit = printing.unit(TEMPERATURE)
    columns = (b.Column("Outdoors", "right", unit=unit), b.Column("Supply", "right", unit=unit),
               b.Column("Return", "right", unit=unit))  # fmt: skip
    rows = tuple(
        b.Row(tuple(
            b.Cell(printing.show(each, places).removesuffix(unit).strip(), strong=each is point.supply)
            for each in (point.outdoor, point.supply, point.return_)
        ))
        for point in found.reset.values()
    )  # fmt: skip
    off = (
        ""
        if found.shutdown.is_missing
        else f"No heat above {printing.show(found.shutdown, places)} outdoors."
    )
    return [b.Table(columns, rows, off, whole=True)]


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
    tank = f"Precharge of the tank {charge}, empty of water. " if charge else "Precharge of the tank. "
    return (
        f"{burner}{tank}Relief valve, low-water cutoff and high limit proved. Strainers clean, water tested. "
        f"Carbon monoxide alarms pressed and in date.{trap} By who is licensed for it."
    )


def _who() -> b.Blanks:
    names = ("Heating", "Fuel supplier", "Electrician", "Fire service")
    return b.Blanks(tuple(b.Blank(name) for name in names))
