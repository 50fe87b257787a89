"""From a design to the paper "Heat loss of the house": units, rounding and words are chosen here."""

from __future__ import annotations

from heatledger import __version__
from heatledger.ledger.figures import Figure, Leaf
from heatledger.ledger.findings import Finding, Weight
from heatledger.ledger.presets import Preset
from heatledger.ledger.show import show, show_percent, show_range, show_speaking
from heatledger.papers import heat_loss_data as data
from heatledger.papers.addresses import Addresses, addresses
from heatledger.papers.parts import part_lines
from heatledger.papers.references import references
from heatledger.papers.workings_data import WorkingGroup
from heatledger.papers.workings_from import block, known_of, source
from heatledger.steps.design import Design
from heatledger.steps.losses import RoomLoss
from heatledger.steps.surfaces import CAUSES
from heatledger.studies.by_cause import causes_of
from heatledger.studies.uncertainty import SENTENCE, Band, Swing, band

CAUTIONS = (
    "This paper gives the heat loss of the house and nothing else. Local code and licensed practice decide what "
    "may be built; where they ask for another method or other figures, theirs hold.",
    "Gas, vent, electrical and pressure work belongs to licensed trades. Keep a working carbon monoxide alarm "
    "outside every sleeping area and on every storey.",
)
NAMES = {"walls": "Walls", "windows": "Windows", "doors": "Doors", "ceiling": "Ceiling", "floor": "Floor", "air": "Air"}
MOST_MATTERS = 7


def heat_loss_paper(design: Design, units: Preset) -> data.HeatLossPaper:
    """The paper of a design for one reader."""
    found, losses = addresses(design), design.losses
    house, made = losses.house, band(design, "house/loss")
    return data.HeatLossPaper(
        head=_head(design),
        units=_units(units, house.loss, house.per_area, house.floor_area),
        answer=_answer(design, units, found, made),
        conditions=_conditions(design, units, found),
        house=_house_view(design, units),
        causes=tuple(_cause_line(cause, design, units, found) for cause in CAUSES),
        rooms=tuple(_room_line(room, design, units, found) for room in _by_level(design)),
        house_line=_house_line(design, units, found),
        cautions=CAUTIONS,
        levels=tuple(
            data.LevelLine(each.name, _cell(each.loss, units, found)) for each in losses.levels.values()
        ) if len(losses.levels) > 1 else (),
        matters=_matters(design, units, found, made.swings),
        matters_note=_left_over(made.swings),
        findings=tuple(_finding(each, design, units, found) for each in design.findings),
        parts=part_lines(design, units, found),
        parts_note="Area × U-value × ΔT is the loss of a part. " + _measured(design),
        workings=tuple(
            WorkingGroup(group.title, tuple(block(each, found, units) for each in group.figures), group.line)
            for group in found.groups
        ),
        tape=_tape(design, units, found),
        references=references(design, found),
    )  # fmt: skip


def bare(figure: Figure, units: Preset) -> str:
    """A figure without its unit; empty when it has no value."""
    if figure.is_missing:
        return ""
    shown = units.shown(figure.dimension)
    return show(figure, units, places=shown.places).removesuffix(shown.unit.text).strip()


def amount(figure: Figure) -> float:
    """The size of a figure for a drawing; nothing when it has no value."""
    return 0.0 if figure.is_missing else float(figure)


def _cell(figure: Figure, units: Preset, found: Addresses) -> data.Cell:
    return data.Cell(bare(figure, units), found.key(figure))


def _head(design: Design) -> data.Head:
    job = design.job
    must_fix = any(each.weight is Weight.MUST_FIX and each.decided is None for each in design.findings)
    laid = ", ".join(job.what_ifs[each].name or each for each in job.laid)
    return data.Head(
        "Heat loss of the house", job.name, job.address, job.date, job.prepared_by, f"heatledger {__version__}",
        revision=f"what if: {laid}" if laid else "", draft="Draft, not for installation" if must_fix else "",
        invented="Invented demo job" if job.invented else "",
    )  # fmt: skip


def _units(units: Preset, loss: Figure, per_area: Figure, area: Figure) -> data.Units:
    from heatledger.ledger.dimensions import TEMPERATURE_DIFFERENCE, TRANSMITTANCE

    def text(dimension: object) -> str:
        return units.shown(dimension).unit.text  # type: ignore[arg-type]

    return data.Units(
        text(loss.dimension), text(area.dimension), text(TRANSMITTANCE), text(TEMPERATURE_DIFFERENCE),
        text(per_area.dimension),
    )  # fmt: skip


def _answer(design: Design, units: Preset, found: Addresses, made: Band) -> data.Answer:
    loss, site = design.losses.house.loss, design.losses.site
    opening = (
        f"On the design day it is {show(site.outdoor, units)} outdoors and {show(site.indoor, units)} indoors, a "
        f"difference of {show(site.design_difference, units)}. Worked out room by room, the house then loses the "
        "heat below, and the heating must supply it."
    )
    if loss.is_missing:
        waits = [each.origin.path for each in design.figures.values() if each.is_missing and isinstance(each.origin, Leaf)]
        return data.Answer(opening, "", found.key(loss), (), None, "; ".join(waits[:4]))
    unit = units.shown(loss.dimension)
    spoken = show_speaking(loss, units).removesuffix(unit.unit.text).strip()
    likely = show_range(made.low, made.high, units, loss.dimension)
    ranked = sorted(design.losses.house.causes, key=lambda cause: -amount(design.losses.house.causes[cause].loss))
    lead = f"{NAMES[ranked[0]]} and {ranked[1]} lead." if len(ranked) > 1 else ""
    low, high, value = (unit.unit.from_si(each) for each in (made.low, made.high, float(loss)))
    others = tuple(
        (unit.unit.from_si(float(each.about)), id.replace("-", " "))
        for id, each in design.job.expectations.items()
        if each.of == "house/loss" and each.about.dimension is loss.dimension
    )
    rule = data.Band(low, high, value, f"{spoken}, likely {likely}", others) if high > low else None
    sentences = (
        f"Likely {likely}. {SENTENCE}",
        f"{lead} Nothing is added on top: sun, people and lights are left out, so the sum already holds its margin.".strip(),
    )
    return data.Answer(opening, spoken, found.key(loss), sentences, rule)


def _conditions(design: Design, units: Preset, found: Addresses) -> tuple[data.Condition, ...]:
    job, losses = design.job, design.losses
    site = losses.site
    lines = [
        data.Condition("Indoors", show(site.indoor, units), _of_rooms(design, units), found.key(site.indoor), known_of(site.indoor)),
        data.Condition("Outdoors", show(site.outdoor, units), job.site.place, found.key(site.outdoor), known_of(site.outdoor)),
        data.Condition("Difference (ΔT)", show(site.design_difference, units), "", found.key(site.design_difference)),
    ]
    for each in losses.unheated.values():
        lines.append(data.Condition(f"{each.name}, found", show(each.temperature, units), "heat balance", found.key(each.temperature)))
    area = losses.house.floor_area
    count = f"{len(losses.rooms)} rooms" if len(losses.rooms) != 1 else "one room"
    lines.append(data.Condition("Heated floor area", show(area, units), count, found.key(area)))
    lines.append(data.Condition("Elevation", show(job.site.elevation, units), "", found.key(job.site.elevation), known_of(job.site.elevation)))
    return tuple(lines)


def _of_rooms(design: Design, units: Preset) -> str:
    others = {show(each.indoor, units) for each in design.losses.rooms.values()} - {show(design.losses.site.indoor, units)}
    return f"some rooms {', '.join(sorted(others))}" if others else "all rooms"


def _house_view(design: Design, units: Preset) -> data.HouseView:
    losses = design.losses
    floors = [each for each in losses.levels.values()] or [None]
    below, text = "slab", ""
    attic = ""
    for each in losses.unheated.values():
        kinds = {boundary.beyond.kind for boundary in each.surfaces.values()}
        if "ground" in kinds and below == "slab":
            below = "crawl space" if "crawl" in each.name.lower() else "basement"
            text = show(each.temperature, units)
        elif "attic" in each.name.lower():
            attic = show(each.temperature, units)
    inside = show(losses.site.indoor, units)
    return data.HouseView(tuple(inside for _ in floors), show(losses.site.outdoor, units), below, text, attic)


def _cause_line(cause: str, design: Design, units: Preset, found: Addresses) -> data.CauseLine:
    each = design.losses.house.causes.get(cause)
    if each is None:
        return data.CauseLine(cause, NAMES[cause], data.Cell("–"), "", 0.0)
    share = "" if each.share.is_missing else show_percent(float(each.share))
    return data.CauseLine(cause, NAMES[cause], _cell(each.loss, units, found), share, max(amount(each.loss), 0.0))


def _by_level(design: Design) -> list[RoomLoss]:
    order = list(design.job.levels)
    return sorted(design.losses.rooms.values(), key=lambda room: order.index(room.level))


def _room_line(room: RoomLoss, design: Design, units: Preset, found: Addresses) -> data.RoomLine:
    cells = [
        _cell(room.causes[cause].loss, units, found) if cause in room.causes else data.Cell("–") for cause in CAUSES
    ]
    amounts = [amount(room.causes[cause].loss) if cause in room.causes else 0.0 for cause in CAUSES]
    level = design.job.levels[room.level].name
    return data.RoomLine(room.name, level, tuple(cells), _cell(room.loss, units, found), bare(room.per_area, units), tuple(amounts))


def _house_line(design: Design, units: Preset, found: Addresses) -> data.HouseLine:
    house = design.losses.house
    cells, shares = [], []
    for cause in CAUSES:
        each = house.causes.get(cause)
        cells.append(_cell(each.loss, units, found) if each else data.Cell("–"))
        shares.append(show_percent(float(each.share)) if each and not each.share.is_missing else "")
    return data.HouseLine(
        "House", "rounded parts", tuple(cells), _cell(house.loss, units, found), bare(house.per_area, units),
        tuple(shares), f"{show(house.floor_area, units)} heated",
    )  # fmt: skip


def _matters(design: Design, units: Preset, found: Addresses, swings: tuple[Swing, ...]) -> tuple[data.Matter, ...]:
    if not swings:
        return ()
    shown = swings[:MOST_MATTERS]
    loss = design.losses.house.loss
    lines = []
    for each, cause in zip(shown, causes_of(design, shown), strict=True):
        entry = each.entries[0] if len(each.entries) == 1 else None
        value = f"{show(entry, units)}, ± {each.half_range}" if entry is not None else f"± {each.half_range}"
        swing = show(each.swing, units, loss.dimension, places=0).removesuffix(units.shown(loss.dimension).unit.text)
        lines.append(data.Matter(each.words, value, f"± {swing.strip()}", each.swing, cause, known_of(entry), found.key(entry)))
    return tuple(lines)


def _left_over(swings: tuple[Swing, ...]) -> str:
    more = len(swings) - MOST_MATTERS
    return f"and {more} smaller" if more > 0 else ""


def _finding(each: Finding, design: Design, units: Preset, found: Addresses) -> data.FindingLine:
    weights: dict[Weight, data.Weight] = {Weight.MUST_FIX: "must fix", Weight.DECIDE: "decide", Weight.NOTE: "note"}
    why = f"{design.names.title(each.why)}: {show(each.why, units)}" if isinstance(each.why, Figure) else each.why
    decided = f"{each.decided.words}; {each.decided.because}" if each.decided else ""
    key = found.key(each.why) if isinstance(each.why, Figure) else ""
    text = f"{each.what} {each.caution}".strip()
    return data.FindingLine(weights[each.weight], "", text, why, tuple(mend.words for mend in each.mends), key, decided, source(each.citation))


def _measured(design: Design) -> str:
    heights = {
        (each.name, each.wall_height, each.ceiling_height)
        for each in design.job.levels.values()
        if not each.wall_height.is_missing
    }
    said = [f"{name}: walls {show(walls, design.job.units)}, air to {show(ceiling, design.job.units)}" for name, walls, ceiling in heights]
    return f"Heights: {'; '.join(sorted(said))}. The job is measured {design.job.measured}." if said else ""


def _tape(design: Design, units: Preset, found: Addresses) -> tuple[data.EntryGroup, ...]:
    names = design.names
    groups = []
    for group in found.given:
        entries = []
        for figure in group.figures:
            origin: Leaf = figure.origin
            title = names.title(figure).removesuffix(f", {group.title}").replace(f", {group.title},", ",")
            entries.append(data.Entry(found.key(figure), title, show(figure, units), origin.typed, known_of(figure), names.place(figure)))
        groups.append(data.EntryGroup(group.title, tuple(entries)))
    return tuple(groups)
