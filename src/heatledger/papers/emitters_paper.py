"""The emitter schedule: what each room needs, what its emitters give, and who sets the water temperature."""

from __future__ import annotations

from heatledger.drawings.emitter_charts import walls_to_scale, water_drawing
from heatledger.drawings.figure_words import enough
from heatledger.ledger.dimensions import HEAT_RATE, LENGTH, TEMPERATURE, VOLUME_FLOW
from heatledger.ledger.figures import Figure
from heatledger.papers import blocks as b
from heatledger.papers.answers import for_want_of
from heatledger.papers.printing import Printing
from heatledger.steps.emitters import EmitterHeat, RoomHeat

TITLE = "Emitter schedule"
LEAST_WORD = 3
"""A word of a room's name that is longer than this tells the room."""
EFFECT = (
    "Needed and given are net: a rating that was printed with a heating-effect factor in it is divided by "
    "that factor first, since it never heated a room. The factor taken out stands in the second table."
)
LENGTHS = (
    "Length is the finned or finished length on the wall; needed length is what would carry the room at "
    "the design supply. Where the job gives no length, the length stands as suggested."
)
SUGGESTED = (
    "Where the length is suggested, what is given is what that length would give: nothing hangs there yet."
)
HOT = (
    "Baseboard and radiators at design water are hot enough to burn: keep furniture, curtains and beds off "
    "them, and shield them where small children or the frail may touch them. A cast-iron radiator is "
    "heavy: look at the floor under it before it is set."
)


def emitters_paper(printing: Printing) -> b.Paper:
    """The schedule by room and by emitter, with the rule of water temperatures."""
    blocks: list[b.Block] = [*_opening(printing), *_rule(printing), *_walls(printing)]
    blocks += [b.Heading("Room by room"), _rooms(printing)]
    blocks += [b.Heading("Each emitter on the design day"), _emitters(printing)]
    blocks += [b.Heading("Ratings and lengths"), _ratings(printing)]
    blocks += [b.Heading("Open"), printing.findings(3)]
    blocks += [printing.caution(HOT), printing.sources("emitters", sheets=(3,))]
    return b.Paper(printing.head(TITLE), tuple(blocks))


def _opening(printing: Printing) -> list[b.Block]:
    house, losses = printing.design.emitters.house, printing.design.losses
    run = printing.run
    waits = for_want_of((house.supply, house.given, losses.house.loss))
    said: list[str | b.Run] = [
        f"What the emitters give waits for {waits}." if waits else "What the emitters give is not known yet."
    ]
    if not (house.supply.is_missing or house.given.is_missing or losses.house.loss.is_missing):
        give = "would give" if suggested_rooms(printing) else "give"
        said = [
            "With ", run(house.supply), " supply water and a temperature drop (ΔT) of ", run(house.drop),
            f", the emitters {give} ", run(house.given, bold=True), " where the rooms lose ",
            run(losses.house.loss), ".",
        ]  # fmt: skip
    setter = printing.design.job.rooms.get(house.set_by)
    more: list[str | b.Run] = []
    single = len(printing.design.emitters.rooms) == 1
    if setter is not None and single and not house.lowest_supply.is_missing:
        more = [
            "The lowest supply that carries the house: ",
            b.Run(_up(house.lowest_supply, printing), "bold", printing.found.key(house.lowest_supply)), ".",
        ]  # fmt: skip
    elif setter is not None and not house.lowest_supply.is_missing:
        more = [
            f"{setter.name} sets the lowest supply that serves every room: ",
            b.Run(_up(house.lowest_supply, printing), "bold", printing.found.key(house.lowest_supply)),
        ]  # fmt: skip
        if house.next_lowest is not None and not house.next_lowest.is_missing:
            key = printing.found.key(house.next_lowest)
            more += [". Every other room is served at ", b.Run(_up(house.next_lowest, printing), key=key)]
        more.append(".")
    texts = [b.Paragraph(tuple(said), "lead"), *([b.Paragraph(tuple(more))] if more else [])]
    return [*texts, b.Paragraph(EFFECT, "small")]


def _up(figure: Figure, printing: Printing) -> str:
    """A temperature that must carry something, in whole degrees and never too low."""
    return enough(figure, printing.units)


def _rule(printing: Printing) -> list[b.Block]:
    """Every room on the rule at the lowest supply that carries it."""
    drawing = water_drawing(printing.design, printing.units, least=2)
    if drawing is None:
        return []
    said = f"{drawing.title}, rounded up. The mark is the design supply."
    return [b.Picture(drawing, said)]


def _walls(printing: Printing) -> list[b.Block]:
    """The free wall of each room to scale, with what hangs on it and what is needed."""
    chart = walls_to_scale(printing.design, printing.units)
    return [] if chart is None else [b.Heading(chart.title), b.Picture(chart.drawing, chart.sentence)]


def _rooms(printing: Printing) -> b.Table:
    heat, unit, length = (printing.unit(each) for each in (HEAT_RATE, TEMPERATURE, LENGTH))
    rooms = printing.design.emitters.rooms
    by_length = any(each.needed_length is not None for each in rooms.values())
    columns = [
        b.Column("Room", width="1fr"), b.Column("Needed", "right", unit=heat),
        b.Column("Given", "right", unit=heat), b.Column("Over or short", "right", unit=heat),
        b.Column("Share given", "right"), b.Column("Lowest supply", "right", unit=unit),
    ]  # fmt: skip
    if by_length:
        columns += [
            b.Column("Length needed", "right", unit=length),
            b.Column("Free wall", "right", unit=length),
        ]
    suggested = suggested_rooms(printing)
    rows = [_room(id, each, by_length, printing, id in suggested) for id, each in rooms.items()]
    house = printing.design.emitters.house
    total = [
        b.Cell("House", strong=True), printing.cell(printing.design.losses.house.loss, total=True),
        printing.cell(house.given, total=True), b.NOTHING, b.NOTHING,
        printing.cell(house.lowest_supply, total=True), *([b.NOTHING] * (2 if by_length else 0)),
    ]  # fmt: skip
    note = "A minus is a room that is short. Rounded parts may miss the last place of a total."
    if suggested_rooms(printing):
        note = f"{SUGGESTED} {note}"
    return b.Table(tuple(columns), (*rows, b.Row(tuple(total), "total")), note)


def suggested_rooms(printing: Printing) -> frozenset[str]:
    """Rooms with an emitter whose length nobody has given: what it gives is no fact yet."""
    return frozenset(each.room for each in printing.design.emitters.emitters.values() if each.suggested)


def _room(id: str, each: RoomHeat, by_length: bool, printing: Printing, suggested: bool) -> b.Row:
    """A room; with a length that is only suggested it is neither over nor short yet."""
    name = str(printing.design.job.rooms[id].name)
    short = str(printing.cell(each.over).text).startswith("\N{MINUS SIGN}")
    share = b.Cell(printing.percent(each.given_share), printing.found.key(each.given_share), strong=short)
    word: b.Text = (name, b.Run("  short", "bold")) if short else name
    over = printing.cell(each.over, strong=short)
    if suggested and not short:
        over, share = b.NONE, b.Cell("length suggested")
    cells = [
        b.Cell(word), printing.cell(each.needed), printing.cell(each.given), over, share,
        printing.cell(each.lowest_supply),
    ]  # fmt: skip
    if by_length:
        cells += [length_cell(each.needed_length, printing), length_cell(each.free_wall, printing)]
    return b.Row(tuple(cells))


def length_cell(figure: Figure | None, printing: Printing) -> b.Cell:
    """A length as it is measured: feet and inches, or meters to the centimeter."""
    if figure is None:
        return b.NONE
    cell = printing.cell(figure)
    if printing.units.feet_and_inches:
        return b.Cell(printing.show(figure), cell.key, cell.known)
    text = printing.show(figure, 2).removesuffix(printing.unit(LENGTH)).strip()
    return b.Cell(text, cell.key, cell.known)


def _emitters(printing: Printing) -> b.Table:
    heat, unit = printing.unit(HEAT_RATE), printing.unit(TEMPERATURE)
    columns = (
        b.Column("Emitter", width="1fr"), b.Column("Needed", "right", unit=heat),
        b.Column("Flow", "right", unit=printing.unit(VOLUME_FLOW)), b.Column("Water in", "right", unit=unit),
        b.Column("Water out", "right", unit=unit), b.Column("Mean", "right", unit=unit),
        b.Column("Gives", "right", unit=heat), b.Column("Lowest supply", "right", unit=unit),
    )  # fmt: skip
    rows = tuple(_emitter(each, printing) for each in printing.design.emitters.emitters.values())
    return b.Table(columns, rows, "At the design supply and the flow that the load asks for.")


def _emitter(each: EmitterHeat, printing: Printing) -> b.Row:
    figures = (
        each.load,
        each.flow,
        each.inlet,
        each.outlet,
        each.mean_water,
        each.output,
        each.lowest_supply,
    )
    return b.Row((b.Cell(_name(each, printing)), *map(printing.cell, figures)))


def _name(each: EmitterHeat, printing: Printing) -> str:
    """An emitter by its name, after that of its room where it does not say the room itself."""
    rooms = printing.design.job.rooms
    said = str(rooms[each.room].name) if each.room in rooms else each.room
    words = [word for word in said.casefold().split() if len(word) > LEAST_WORD]
    told = any(word in each.name.casefold() for word in words)
    return each.name if told or len(rooms) == 1 else f"{said}, {each.name}"


def _ratings(printing: Printing) -> b.Table:
    """What the plate or the table says of each emitter, and what is taken out of it."""
    found, length = printing.design.emitters.emitters, printing.unit(LENGTH)
    by_length = any(each.length is not None for each in found.values())
    columns = [
        b.Column("Emitter", width="1fr"), b.Column("Kind"),
        b.Column("Heating-effect factor", "right", unit="taken out"), b.Column("Exponent", "right"),
        b.Column("Rated, net", "right", unit=printing.unit(HEAT_RATE)),
    ]  # fmt: skip
    if by_length:
        columns += [b.Column("Length", "right", unit=length), b.Column("Needed", "right", unit=length)]
    rows = tuple(_rating(id, each, by_length, printing) for id, each in found.items())
    return b.Table(tuple(columns), rows, LENGTHS if by_length else "")


def _rating(id: str, each: EmitterHeat, by_length: bool, printing: Printing) -> b.Row:
    given = printing.design.job.system.emitters[id]
    cells = [
        b.Cell(_name(each, printing)), b.Cell(given.kind), printing.cell(given.heating_effect, unit=True),
        printing.cell(given.exponent, unit=True), printing.cell(each.rated),
    ]  # fmt: skip
    if by_length:
        own = length_cell(each.length, printing)
        if each.suggested and each.length is not None:
            own = b.Cell((b.Run("suggested ", "quiet"), str(own.text)), own.key)
        cells += [own, length_cell(each.needed_length, printing)]
    return b.Row(tuple(cells))
