"""Room by room for the owner: what each loses and why, what its emitters give, and that in words."""

from __future__ import annotations

from heatledger.drawings.cause_legend import cause_legend
from heatledger.drawings.hatches import CAUSE_NAMES
from heatledger.drawings.heat_charts import bars_of_rooms
from heatledger.drawings.load_chart import load_by_weather
from heatledger.ledger.dimensions import HEAT_RATE
from heatledger.ledger.findings import Weight
from heatledger.papers import blocks as b
from heatledger.papers.answers import listed, said, share
from heatledger.papers.findings_by_sheet import EMITTERS_SHEET, findings_of
from heatledger.papers.printing import Printing
from heatledger.steps.emitters import RoomHeat
from heatledger.studies.side_by_side import is_short

BAR = 118.0
MOST_NAMED = 6


def short_rooms(printing: Printing) -> list[str]:
    """Ids of the rooms that are left short, the worst first."""
    rooms = printing.design.emitters.rooms
    found = [id for id, each in rooms.items() if is_short(each)]
    return sorted(found, key=lambda each: float(rooms[each].given_share))


def has_emitters(printing: Printing) -> bool:
    """Whether the job says what heats the rooms."""
    return bool(printing.design.emitters.emitters)


def room_table(printing: Printing) -> b.Table:
    """Rooms with their loss by cause, and what their emitters give of it."""
    heated = has_emitters(printing)
    heat = printing.unit(HEAT_RATE)
    columns = [
        b.Column("Room", width="1fr"), b.Column("Loses", "right", unit=heat), b.Column("by cause",
        width="124pt"),
    ]  # fmt: skip
    if heated:
        columns += [b.Column("Emitters give", "right", unit=heat), b.Column("Of what it needs")]
    bars = bars_of_rooms(printing.design, printing.units, BAR)
    rows = []
    for id, room in printing.design.losses.rooms.items():
        cells = [b.Cell(room.name), printing.cell(room.loss), b.Cell(" ", drawing=bars.get(id))]
        if heated:
            each = printing.design.emitters.rooms[id]
            cells += [printing.cell(each.given), _state(id, each, printing)]
        rows.append(b.Row(tuple(cells)))
    house = printing.design.losses.house
    total = [b.Cell("House", strong=True), printing.cell(house.loss, total=True), b.NOTHING]
    if heated:
        total += [printing.cell(printing.design.emitters.house.given, total=True), b.NOTHING]
    return b.Table(
        tuple(columns), (*rows, b.Row(tuple(total), "total")), "Rounded parts may miss the last place."
    )


def legend() -> b.Picture:
    """The hatch of each cause."""
    return b.Picture(cause_legend(CAUSE_NAMES))


def milder_days(printing: Printing) -> list[b.Block]:
    """What the house loses at other outdoor temperatures."""
    chart = load_by_weather(printing.design, printing.units)
    if chart is None:
        return []
    return [
        b.Heading("On other days"), b.Paragraph(chart.sentence), b.Picture(chart.drawing, chart.note),
    ]  # fmt: skip


def _state(id: str, each: RoomHeat, printing: Printing) -> b.Cell:
    """How much of its need a room gets: short with the mark of what is open on it, else fine."""
    if each.given_share.is_missing:
        return b.Cell("")
    text = printing.percent(each.given_share)
    if not is_short(each):
        return b.Cell(text, printing.found.key(each.given_share), mark="fine")
    words: b.Text = (b.Run("short, ", "bold"), text)
    return b.Cell(words, printing.found.key(each.given_share), mark=weight_at(id, printing))


def weight_at(room: str, printing: Printing) -> b.Mark:
    """The weight of what is open on the emitters of a room; none where nothing is."""
    emitters = [
        f"emitters/{id}" for id, each in printing.design.emitters.emitters.items() if each.room == room
    ]
    places = (f"rooms/{room}", *emitters)
    open_ = [
        each.weight
        for each in findings_of(printing.design, EMITTERS_SHEET)
        if each.decided is None and any(each.where == at or each.where.startswith(f"{at}/") for at in places)
    ]
    for weight in (Weight.MUST_FIX, Weight.DECIDE):
        if weight in open_:
            return weight.value
    return ""


def in_words(printing: Printing, water: b.Text) -> list[b.Block]:
    """Which rooms run short at this ``water``, and which get the most over what they need."""
    if not has_emitters(printing):
        return [
            b.Paragraph("What heats the rooms is not given yet, so nothing is said of too cold or too warm.")
        ]
    rooms = printing.design.emitters.rooms
    names = printing.design.job.rooms
    at = said("With ", water, " water on the coldest night ")
    short = short_rooms(printing)
    whole = "every room" if len(rooms) > 1 else "the house as a whole"
    if all(each.given_share.is_missing for each in rooms.values()):
        return [b.Paragraph("Whether the rooms get enough is not known yet: an entry is missing.")]
    blocks: list[b.Block] = []
    if short:
        pieces = [
            said(f"{names[id].name} gets ", share(printing, rooms[id].given_share), " of what it needs")
            for id in short[:MOST_NAMED]
        ]
        more = f" {len(short) - MOST_NAMED} more rooms are short." if len(short) > MOST_NAMED else ""
        others = "" if len(short) == len(rooms) else " Every other room is carried."
        blocks.append(b.Paragraph(said(at, "it runs short: ", listed(pieces), ".", more, others)))
    else:
        blocks.append(b.Paragraph(said(at, f"{whole} gets what it needs.")))
    return [*blocks, *_warm(printing), *_thermostats(printing)]


def _warm(printing: Printing) -> list[b.Block]:
    rooms, names = printing.design.emitters.rooms, printing.design.job.rooms
    known = [id for id, each in rooms.items() if not each.given_share.is_missing and not is_short(each)]
    over = sorted(known, key=lambda each: -float(rooms[each].given_share))[:3]
    if len(rooms) < 2 or not over:
        return []
    pieces = [said(f"{names[id].name} ", share(printing, rooms[id].given_share)) for id in over]
    text = said(
        "Those with the most to spare: ", listed(pieces), " of what they need. They warm up first, and run "
        "warm where neither a thermostat of their own nor a valve holds them back.",
    )  # fmt: skip
    return [b.Paragraph(text)]


def _thermostats(printing: Printing) -> list[b.Block]:
    job = printing.design.job
    zones = [
        f"{each.name} that in {job.rooms[each.thermostat].name}"
        for each in job.system.zones.values()
        if each.thermostat in job.rooms
    ]
    if not zones:
        return []
    return [
        b.Paragraph(
            said("Each zone obeys one thermostat: ", listed(zones), ". Its other rooms follow along.")
        )
    ]
