"""Boiler, water, bills and what would change, for the owner: one number each, in plain words."""

from __future__ import annotations

from heatledger.drawings.figure_words import enough
from heatledger.ledger.dimensions import HEAT_RATE, TEMPERATURE
from heatledger.ledger.figures import Figure, exceeds
from heatledger.ledger.show import show
from heatledger.papers import blocks as b
from heatledger.papers.answers import figure, said, share, waiting
from heatledger.papers.owner_rooms import has_emitters, short_rooms
from heatledger.papers.printing import Printing
from heatledger.papers.words import times
from heatledger.steps.controls import asked_at
from heatledger.studies.held_water import held_water
from heatledger.studies.side_by_side import Side, side_by_side

NO_BOILER = "No boiler is given yet."
BY_ITSELF = (
    "Each line stands by itself over the house as it is; together they would not simply add up. A minus "
    "is more. These are figures of a changed house, so they stand on no sheet of this one."
)


def right_size(printing: Printing) -> b.Text:
    """Output against load, one number, and what it means."""
    room = printing.design.boiler_room.plant
    if printing.design.job.system.plant.boiler is None:
        return said(
            f"{NO_BOILER} It must supply ", figure(printing, room.load, True), " on the coldest night, and "
            "should "
            "give no more than ", figure(printing, room.largest_output), ": a larger one starts and stops "
            "all day.",
        )  # fmt: skip
    if room.output is None or room.ratio is None or room.ratio.is_missing or room.load.is_missing:
        return waiting(printing, room.load, *([] if room.output is None else [room.output]))
    return said(
        f"{_the_boiler(printing)} can give ", figure(printing, room.output),
        " here; the house and its mains ask for ", figure(printing, room.load), " on the coldest night. That "
        "is ",
        times_over(printing, room.ratio), " times what is needed. ", _verdict(printing),
    )  # fmt: skip


def times_over(printing: Printing, ratio: Figure) -> b.Text:
    """How many times one thing is another, as it is spoken."""
    return (b.Run(times(ratio, printing.units), "bold", printing.found.key(ratio)),)


def _the_boiler(printing: Printing) -> str:
    boiler = printing.design.job.system.plant.boiler
    return f"The boiler ({boiler.name})" if boiler is not None and boiler.name else "The boiler"


def design_water(printing: Printing) -> b.Text:
    """The supply of the design; where the job names none it is the lowest that serves, rounded up."""
    supply = printing.design.emitters.house.supply
    if printing.design.job.system.plant.supply is None and not supply.is_missing:
        return (warm_enough(printing, supply),)
    return figure(printing, supply)


def _everything(printing: Printing) -> str:
    return "every room" if len(printing.design.job.rooms) > 1 else "it"


def _count(number: int) -> b.Cell:
    return b.Cell(str(number)) if number else b.Cell("none")


def _verdict(printing: Printing) -> b.Text:
    room = printing.design.boiler_room.plant
    assert room.output is not None
    if exceeds(room.load, room.output):
        return "It is too small: on such a night the house would not hold its temperature."
    if exceeds(room.output, room.largest_output):
        return said(
            "It is too large: above ", figure(printing, room.largest_output), " a boiler starts and stops "
            "too often, burns more and wears out sooner, and no room is warmer for it.",
        )  # fmt: skip
    return said(
        "It is the right size: it carries the coldest night, and stays under ",
        figure(printing, room.largest_output), ", above which it would start and stop too often.",
    )  # fmt: skip


def warm_enough(printing: Printing, water: Figure, bold: bool = False) -> b.Run:
    """A temperature that must carry something: in whole degrees, never rounded down."""
    return b.Run(enough(water, printing.units), "bold" if bold else "", printing.found.key(water))


def which_water(printing: Printing) -> list[b.Block]:
    """What water serves the house, and which room sets it."""
    design = printing.design
    house = design.emitters.house
    if not has_emitters(printing):
        return [b.Paragraph("What heats the rooms is not given yet, so no water temperature follows.")]
    if house.lowest_supply.is_missing:
        return [b.Paragraph(waiting(printing, house.lowest_supply))]
    setter = design.job.rooms.get(house.set_by)
    room = f" {setter.name} sets it." if setter is not None and len(design.job.rooms) > 1 else ""
    pieces: list[b.Text] = [
        "On the coldest night the house needs ", (warm_enough(printing, house.lowest_supply, True),),
        " supply water so that "
        f"{_everything(printing)} gets what it needs.", room,
    ]  # fmt: skip
    if house.next_lowest is not None and not house.next_lowest.is_missing:
        pieces += [" All the other rooms are served at ", (warm_enough(printing, house.next_lowest),), "."]
    if design.job.system.plant.supply is not None:
        pieces += [" The design runs at ", figure(printing, house.supply), "."]
    return [b.Paragraph(said(*pieces)), b.Paragraph(by_weather(printing))]


def by_weather(printing: Printing) -> b.Text:
    """How the water follows the weather."""
    found, asked = printing.design.controls.controls, printing.design.job.system.controls
    points = [each for each in found.reset.values() if not each.supply.is_missing]
    if asked.outdoor_reset:
        # What the boiler would not bear is told nobody as what the control asks for.
        points = [each for each in held_water(printing.design).open if not each.supply.is_missing]
    if not points:
        return "How the water follows the weather is not known yet."
    if not asked.outdoor_reset:
        middle = points[len(points) // 2]
        held = "The control holds it there in all weather" if asked.outdoor_reset is False else (
            "Whether the control lets it follow the weather is not said yet"
        )  # fmt: skip
        return said(
            f"{held}; at ", figure(printing, middle.outdoor), " outdoors ",
            (warm_enough(printing, middle.supply),), " would be enough.",
        )  # fmt: skip
    middle = points[len(points) // 2]
    water = asked_at(middle)
    return said(
        "Cooler water does on every other night, and burns less: at ", figure(printing, middle.outdoor),
        " outdoors the control asks for ", figure(printing, water), ".",
    )  # fmt: skip


def bill_blocks(printing: Printing) -> list[b.Block]:
    """What the fuel bills say of the loss, bill by bill."""
    found = printing.design.bills.bills
    if not found:
        return [
            b.Paragraph(
                "No fuel bills are given. Those of one winter, with its degree-days, would test the loss."
            )
        ]
    return [b.Paragraph(bill_text(printing, id)) for id in found]


def bill_text(printing: Printing, id: str) -> b.Text:
    """One winter's fuel against the loss."""
    each = printing.design.bills.bills[id]
    if each.like_for_like.is_missing:
        return said(f"{each.name}: ", waiting(printing, each.like_for_like))
    text = said(
        f"{each.name}: counted as a heat loss is counted, it stands for ", figure(printing,
        each.like_for_like),
        " on the coldest night", *_after_gains(printing, each.after_gains), ".",
    )  # fmt: skip
    if each.share.is_missing:
        return text
    return said(
        text, " The first is ", share(printing, each.share), " of the loss worked out from the house."
    )


def _after_gains(printing: Printing, one: Figure) -> tuple[b.Text, ...]:
    """What is left with the gains taken off; nothing is said of it while it has no value."""
    if one.is_missing:
        return ()
    return ("; with the free heat of sun, people and lights taken off, for ", figure(printing, one))


def change_blocks(printing: Printing) -> list[b.Block]:
    """The what-ifs of the job side by side."""
    sides = side_by_side(printing.design)
    if not sides:
        return [b.Paragraph("The job holds no what if, so nothing is compared here.")]
    heat, unit = printing.unit(HEAT_RATE), printing.unit(TEMPERATURE)
    columns = [
        b.Column("What if", width="1fr"), b.Column("House loses", "right", unit=heat),
        b.Column("Less by", "right", unit=heat),
    ]  # fmt: skip
    heated = has_emitters(printing)
    if heated:
        columns += [
            b.Column("Water needed", "right", unit=unit),
            b.Column("Set by"),
            b.Column("Rooms short", "right"),
        ]
    rows = [_today(printing, heated), *(_side(each, heated, printing) for each in sides)]
    return [b.Table(tuple(columns), tuple(rows), BY_ITSELF, whole=True)]


def _today(printing: Printing, heated: bool) -> b.Row:
    design = printing.design
    loss, house = design.losses.house.loss, design.emitters.house
    cells = [b.Cell("As it is", strong=True), printing.cell(loss, strong=True), b.NONE]
    if heated:
        room = design.job.rooms.get(house.set_by)
        cells += [
            printing.cell(house.lowest_supply, strong=True),
            b.Cell("" if room is None else str(room.name)),
            _count(len(short_rooms(printing))),
        ]
    return b.Row(tuple(cells))


def _side(each: Side, heated: bool, printing: Printing) -> b.Row:
    if each.loss is None or each.supply is None:
        span = 5 if heated else 2
        return b.Row((b.Cell(each.name), b.Cell(f"cannot be laid: {each.cannot}", span=span)))
    less = "" if each.less is None else _bare(each.less, printing)
    cells = [b.Cell(each.name), printing.cell(each.loss), b.Cell(less or "")]
    if heated:
        cells += [printing.cell(each.supply), b.Cell(each.set_by), _count(len(each.short))]
    return b.Row(tuple(cells))


def _bare(watts: float, printing: Printing) -> str:
    """Heat in whole units of the column; "no change" where it rounds to nothing."""
    unit = printing.unit(HEAT_RATE)
    text = show(watts, printing.units, HEAT_RATE, places=0).removesuffix(unit).strip()
    return "no change" if text == "0" else text
