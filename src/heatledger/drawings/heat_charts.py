"""Where the heat of a design goes, by cause and by room, and how sure its load is."""

from __future__ import annotations

from heatledger.drawings.band_rule import band_rule
from heatledger.drawings.cause_bar import cause_bar
from heatledger.drawings.chart import NONE, WIDE, Chart, ChartCell, cell, group_of, shown, unit_of
from heatledger.drawings.figure_words import amount, bare, without_unit
from heatledger.drawings.hatches import CAUSE_NAMES, CAUSES
from heatledger.drawings.house_section import Stream, house_section
from heatledger.drawings.house_view import house_view
from heatledger.drawings.once import once_a_design
from heatledger.drawings.room_bars import RoomBar, room_bars
from heatledger.drawings.shapes import Drawing
from heatledger.ledger.dimensions import HEAT_RATE
from heatledger.ledger.presets import Preset
from heatledger.ledger.show import grouping, show, show_percent, show_range, show_speaking
from heatledger.steps.design import Design
from heatledger.steps.losses import RoomLoss
from heatledger.studies.uncertainty import SENTENCE, Band, band

SECTION, ROOMS, LIKELY = "Where the heat goes", "Rooms by cause", "Likely range"


def streams_of(house: Design, units: Preset) -> tuple[Stream, ...]:
    """The six causes of the house as they are drawn and said; "–" for one that it does not have."""
    found = []
    for cause in CAUSES:
        each = house.losses.house.causes.get(cause)
        if each is None:
            found.append(Stream(cause, CAUSE_NAMES[cause], 0.0, "", "–"))
            continue
        places = units.shown(each.loss.dimension).places
        share = "" if each.share.is_missing else show_percent(float(each.share))
        text = bare(each.loss, units, places)
        found.append(Stream(cause, CAUSE_NAMES[cause], max(amount(each.loss), 0.0), share, text))
    return tuple(found)


@once_a_design
def section_of(house: Design, units: Preset) -> Drawing:
    """The section through the house with an arrow a cause."""
    return house_section(
        SECTION, house_view(house, units), streams_of(house, units), unit_of(units, HEAT_RATE)
    )


@once_a_design
def heat_by_cause(house: Design, units: Preset) -> Chart | None:
    """Where the heat goes; None while no cause is known."""
    causes = house.losses.house.causes
    ranked = sorted((each for each in causes if amount(causes[each].loss) > 0),
                    key=lambda each: -float(causes[each].loss))  # fmt: skip
    if not ranked:
        return None
    rows = tuple(
        (ChartCell(CAUSE_NAMES[each]), cell(causes[each].loss, house, units),
         ChartCell("" if causes[each].share.is_missing else show_percent(float(causes[each].share)),
                   house.names.path(causes[each].share)))
        for each in CAUSES
        if each in causes
    )  # fmt: skip
    said = [f"{CAUSE_NAMES[each].lower()} {_share(house, each, units)}" for each in ranked[:3]]
    more = " Parts that are not known yet are left out." if house.losses.house.loss.is_missing else ""
    return Chart(
        "where-the-heat-goes", SECTION, section_of(house, units),
        f"{_listed(said)} {'lead' if len(said) > 1 else 'leads'}.{more}".capitalize(),
        ("Cause", unit_of(units, HEAT_RATE), "Share"), rows, "The thicker an arrow, the more of it.",
    )  # fmt: skip


def _share(house: Design, cause: str, units: Preset) -> str:
    each = house.losses.house.causes[cause]
    return show_speaking(each.loss, units) if each.share.is_missing else show_percent(float(each.share))


def _listed(words: list[str]) -> str:
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} and {words[-1]}"


def amounts_of(room: RoomLoss) -> dict[str, float]:
    """What a room loses by each cause (W); a cause without a value is nothing."""
    return {cause: amount(each.loss) for cause, each in room.causes.items()}


@once_a_design
def bars_of_rooms(house: Design, units: Preset, width: float = 118.0) -> dict[str, Drawing]:
    """A bar for each room by its id, all on one scale, for the rows of a table."""
    rooms = house.losses.rooms
    amounts = {id: amounts_of(room) for id, room in rooms.items()}
    largest = max((sum(max(each, 0.0) for each in by.values()) for by in amounts.values()), default=0.0)
    return {
        id: cause_bar(room.name, amounts[id], _texts(room, units), largest, width=width)
        for id, room in rooms.items()
    }


def _texts(room: RoomLoss, units: Preset) -> dict[str, str]:
    places = units.shown(HEAT_RATE).places
    return {cause: bare(each.loss, units, places) for cause, each in room.causes.items()}


@once_a_design
def rooms_by_cause(house: Design, units: Preset, width: float = WIDE) -> Chart | None:
    """Each room as a hatched bar; None while no room loses anything that is known."""
    rooms = house.losses.rooms
    if not any(each > 0 for room in rooms.values() for each in amounts_of(room).values()):
        return None
    causes = [each for each in CAUSES if any(each in room.causes for room in rooms.values())]
    bars = tuple(
        RoomBar(room.name, {key: shown(each, units, HEAT_RATE) for key, each in amounts_of(room).items()},
                bare(room.loss, units, 0))
        for room in rooms.values()
    )  # fmt: skip
    known = [each for each in rooms.values() if not each.loss.is_missing]
    most = max(known, key=lambda each: float(each.loss), default=None)
    waits = len(rooms) - len(known)
    said = f"{most.name} loses most, {show(most.loss, units, places=0)}." if most else ""
    said += f" {waits} of {len(rooms)} rooms wait for an entry." if waits else ""
    rows = tuple(
        (ChartCell(room.name), *(cell(room.causes[each].loss, house, units) if each in room.causes else NONE
                                 for each in causes), cell(room.loss, house, units))
        for room in rooms.values()
    )  # fmt: skip
    unit, names = unit_of(units, HEAT_RATE), {each: CAUSE_NAMES[each] for each in causes}
    return Chart(
        "rooms-by-cause", ROOMS,
        room_bars(ROOMS, said.strip(), bars, unit, names, width, group_of(units, HEAT_RATE)),
        said.strip(), ("Room", *(f"{each}, {unit}" for each in names.values()), f"Room loses, {unit}"), rows,
        "A gain has no length in a bar; its figure stands in the table.",
    )  # fmt: skip


def evidence_of(house: Design, units: Preset) -> tuple[tuple[float, str], ...]:
    """What else speaks of the load, in the reader's unit: what the job expects of it, else its fuel bills."""
    unit = units.shown(HEAT_RATE).unit
    found = [
        (unit.from_si(float(each.about)), id.replace("-", " "))
        for id, each in house.job.expectations.items()
        if each.of == "house/loss" and each.about.dimension is HEAT_RATE and not each.about.is_missing
    ]
    if found:
        return tuple(found)
    bills = house.bills.bills.values()
    return tuple((unit.from_si(float(each.like_for_like)), each.name.lower())
                 for each in bills if not each.like_for_like.is_missing)  # fmt: skip


def likely_rule(house: Design, units: Preset, made: Band, width: float = 240.0) -> Drawing | None:
    """The band of the design load on a rule; None where it has no width."""
    loss = house.losses.house.loss
    unit = units.shown(loss.dimension).unit
    if loss.is_missing or not made.high > made.low:
        return None
    low, high, value = (unit.from_si(each) for each in (made.low, made.high, float(loss)))
    likely = show_range(made.low, made.high, units, loss.dimension)
    words = f"{without_unit(show_speaking(loss, units), loss, units)}, likely {likely}"
    return band_rule(LIKELY, low, high, value, evidence_of(house, units), width, words, grouping(unit, units))


@once_a_design
def likely_range(house: Design, units: Preset, width: float = 372.0) -> Chart | None:
    """How sure the design load is, with what else speaks of it; None without a range."""
    made, loss = band(house, "house/loss"), house.losses.house.loss
    drawing = likely_rule(house, units, made, width)
    if drawing is None:
        return None
    places = (0,)
    rows = [(ChartCell("design load"), cell(loss, house, units, *places))]
    for name, value in (("likely, least", made.low), ("likely, most", made.high)):
        text = without_unit(show(value, units, loss.dimension, 0), loss, units)
        rows.append((ChartCell(name), ChartCell(text)))
    for value, name in evidence_of(house, units):
        watts = units.shown(HEAT_RATE).unit.to_si(value)
        rows.append((ChartCell(name), ChartCell(without_unit(show(watts, units, HEAT_RATE, 0), loss, units))))
    return Chart(
        "likely-range", LIKELY, drawing, f"Likely {show_range(made.low, made.high, units, loss.dimension)}.",
        ("What", unit_of(units, HEAT_RATE)), tuple(rows), SENTENCE,
    )  # fmt: skip
