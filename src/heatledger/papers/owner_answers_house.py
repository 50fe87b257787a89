"""The owner's questions on the house: its loss, its rooms, its bills, what would change, what is guessed."""

from __future__ import annotations

from collections import Counter

from heatledger.drawings.figure_words import amount
from heatledger.drawings.naming import headed
from heatledger.job.model import KNOWN
from heatledger.ledger.figures import leaves
from heatledger.ledger.findings import Finding
from heatledger.ledger.show import show, show_range
from heatledger.papers import blocks as b
from heatledger.papers.answers import figure, length, listed, not_reached, said, waiting
from heatledger.papers.findings_by_sheet import EMITTERS_SHEET, findings_of
from heatledger.papers.owner_front import by_cause
from heatledger.papers.owner_plant import bill_text, design_water, warm_enough
from heatledger.papers.owner_rooms import has_emitters, short_rooms
from heatledger.papers.printing import Printing
from heatledger.papers.tables import plain
from heatledger.studies.parts import parts_of_house
from heatledger.studies.side_by_side import side_by_side
from heatledger.studies.uncertainty import SENTENCE, band, half_range_text

MOST_PARTS, MOST_SWINGS, MOST_MENDS = 5, 3, 3


def how_much(printing: Printing) -> b.Text:
    """The loss on the coldest night, and its band."""
    losses = printing.design.losses
    loss = losses.house.loss
    if loss.is_missing:
        return waiting(printing, loss)
    made = band(printing.design, "house/loss")
    text = said(
        "It loses ", figure(printing, loss, True), " at ", figure(printing, losses.site.outdoor),
        " outdoors. ",
    )  # fmt: skip
    if not made.high > made.low:
        return said(text, not_reached("how sure it is, since no entry says how far it may be off."))
    likely = show_range(made.low, made.high, printing.units, loss.dimension)
    return said(text, f"Likely {likely}. {SENTENCE}")


def where_to(printing: Printing) -> b.Text:
    """By cause, and the largest parts."""
    if printing.design.losses.house.loss.is_missing:
        return waiting(printing, printing.design.losses.house.loss)
    parts = [(each.name, each.loss) for each in parts_of_house(printing.design) if each.loss is not None]
    largest = sorted(parts, key=lambda each: -amount(each[1]))[:MOST_PARTS]
    pieces = [said(f"{name} ", figure(printing, loss)) for name, loss in largest]
    return said("Through ", by_cause(printing), ". The largest parts of it: ", listed(pieces), ".")


def cold_room(printing: Printing) -> b.Text:
    """Rooms that run short, by how much, and what would mend it."""
    if not has_emitters(printing):
        return not_reached("what heats the rooms is not given.")
    design, short = printing.design, short_rooms(printing)
    rooms = design.emitters.rooms
    held = not_reached("the temperature that a room would hold with what it gets.")
    if all(each.given_share.is_missing for each in rooms.values()):
        return waiting(printing, *(each.given_share for each in rooms.values()))
    if not short:
        one = "The emitters carry the house as a whole" if len(rooms) == 1 else "No room is short"
        return said(f"{one} with ", design_water(printing), " water. ", held)
    pieces = [
        said(
            f"{design.job.rooms[id].name} needs ", figure(printing, rooms[id].needed), " and gets ",
            figure(printing, rooms[id].given),
        )
        for id in short
    ]  # fmt: skip
    mends = [*dict.fromkeys(_mends(short, printing))][:MOST_MENDS]
    mended = said("What would mend it: ", " ".join(mends), " ") if mends else _would_do(short[0], printing)
    supply = design_water(printing)
    return said(
        "On the coldest night, with ", supply, " water, ", listed(pieces), ". ", mended,
        held,
    )  # fmt: skip


def _would_do(id: str, printing: Printing) -> b.Text:
    """The water, or the length of baseboard, that would carry the room that is shortest."""
    room, name = printing.design.emitters.rooms[id], printing.design.job.rooms[id].name
    if room.lowest_supply.is_missing:
        return ""
    longer: b.Text = ""
    if room.needed_length is not None and not room.needed_length.is_missing:
        longer = said(", or with ", length(printing, room.needed_length), " of its baseboard")
    return said(
        f"{name} would be carried with ", (warm_enough(printing, room.lowest_supply),), " water", longer, ". "
    )


def _mends(short: list[str], printing: Printing) -> list[str]:
    """How the findings on the emitters of these rooms may be mended."""
    emitters = {id for id, each in printing.design.emitters.emitters.items() if each.room in short}

    def is_theirs(found: Finding) -> bool:
        kind, _, id = found.where.partition("/")
        return (kind == "rooms" and id in short) or (kind == "emitters" and id in emitters)

    found = [each for each in findings_of(printing.design, EMITTERS_SHEET) if is_theirs(each)]
    return [plain(mend.words) for each in found for mend in each.mends]


def agrees(printing: Printing) -> b.Text:
    """The bills against the loss."""
    found = printing.design.bills.bills
    if not found:
        return not_reached("no fuel bills are given.")
    return said(*(piece for id in found for piece in (bill_text(printing, id), " ")))


def what_changes(printing: Printing) -> b.Text:
    """Each what-if of the job in one clause."""
    bill = not_reached("what each would take off the fuel bill.")
    sides = side_by_side(printing.design)
    if not sides:
        return not_reached("the job holds no what if to compare.")
    pieces = [
        f"{each.name}: {printing.show(each.loss)}"
        for each in sides
        if each.loss is not None and not each.loss.is_missing
    ]
    if not pieces:
        return said(waiting(printing, printing.design.losses.house.loss), " ", bill)
    return said(
        "The house would lose this in place of ", figure(printing, printing.design.losses.house.loss), ". ",
        "; ".join(pieces), ". The water that each asks for stands in the table above. ", bill,
    )  # fmt: skip


def measured_or_guessed(printing: Printing) -> b.Text:
    """Entries behind the loss by how well they are known, and which of them matter most."""
    design = printing.design
    given = Counter(getattr(each.origin, "known", "") for each in leaves(design.losses.house.loss))
    counts = [f"{given[word]} {word}" for word in KNOWN if given[word]]
    if not counts:
        return not_reached("no entry says how well it is known.")
    text = said("Of the entries behind the loss, ", listed(counts), ".")
    swings = band(design, "house/loss").swings[:MOST_SWINGS]
    if not swings:
        return said(text, " ", not_reached("which of them matters most."))
    pieces: list[b.Text] = []
    for each in swings:
        entry = each.entries[0] if len(each.entries) == 1 else None
        name: b.Text = each.words
        if entry is not None:
            name = said(f"{headed(entry, design, 'House')} ", figure(printing, entry))
        moves = show(each.swing, printing.units, design.losses.house.loss.dimension, places=0)
        pieces += [
            "; " if pieces else "", name,
            f" ({each.known}, {half_range_text(each, printing.units)}) moves it by {moves} either way",
        ]  # fmt: skip
    return said(text, " What moves it most: ", *pieces, ". Sheet 1 says of every entry how it is known.")


def winter_cost(printing: Printing) -> b.Text:
    """The fuel of the bills; prices are not part of a design."""
    found = printing.design.bills.bills
    missing = not_reached("what a winter costs, since no price of fuel with its date is given.")
    known = [each for each in found.values() if not each.energy.is_missing]
    if not known:
        return missing
    pieces = [
        said(f"{each.name} held ", figure(printing, each.energy), " for heating, of which ", figure(printing,
        each.heat),
             " reached the house")
        for each in known
    ]  # fmt: skip
    return said(listed(pieces), ". ", missing)
