"""The front of the paper: the answer in plain words, what it was planned for, and what matters most."""

from __future__ import annotations

from heatledger import __version__
from heatledger.drawings.figure_words import amount, without_unit
from heatledger.drawings.hatches import CAUSE_NAMES
from heatledger.drawings.heat_charts import evidence_of
from heatledger.drawings.house_view import drawn_spaces
from heatledger.drawings.matters_chart import matters_of
from heatledger.ledger.dimensions import TEMPERATURE_DIFFERENCE, TRANSMITTANCE, Dimension
from heatledger.ledger.figures import Figure, waits_for
from heatledger.ledger.presets import Preset
from heatledger.ledger.show import grouping, show, show_range, show_speaking
from heatledger.papers import heat_loss_data as data
from heatledger.papers.addresses import Addresses
from heatledger.papers.findings_by_sheet import is_draft
from heatledger.papers.words import height_above_sea, whole
from heatledger.papers.workings_from import known_of
from heatledger.steps.design import Design
from heatledger.studies.uncertainty import SENTENCE, Band, Swing

TITLE = "Heat loss of the house"
MOST_WAITED_FOR = 4
NOTHING_ON_TOP = "Nothing is added on top, since sun, people and lights are left out."
UNNAMED = "Unnamed house"


def job_name(design: Design) -> str:
    """What the job is called, else what stands for a name."""
    return design.job.name or UNNAMED


def head(design: Design, title: str = TITLE) -> data.Head:
    """Who, what, when; draft while something must be fixed."""
    job = design.job
    laid = ", ".join(job.what_ifs[each].name or each for each in job.laid)
    return data.Head(
        title, job_name(design), job.address, job.date, job.prepared_by, f"heatledger {__version__}",
        revision=f"what if: {laid}" if laid else "",
        draft="Draft, not for installation" if is_draft(design) else "",
        invented="Invented demo job" if job.invented else "",
    )  # fmt: skip


def column_units(design: Design, units: Preset) -> data.Units:
    """The unit of each column of the tables."""
    house = design.losses.house

    def text(dimension: Dimension) -> str:
        return units.shown(dimension).unit.text

    return data.Units(
        text(house.loss.dimension), text(house.floor_area.dimension), text(TRANSMITTANCE),
        text(TEMPERATURE_DIFFERENCE), text(house.per_area.dimension),
    )  # fmt: skip


def answer(design: Design, found: Addresses, made: Band) -> data.Answer:
    """The first thing said: the load, how sure it is, and what leads."""
    losses, units = design.losses, found.units
    loss, site = losses.house.loss, losses.site
    if loss.is_missing:
        waits = [f"{each.origin.words} ({each.origin.path})" for each in waits_for(loss)]
        more = len(waits) - MOST_WAITED_FOR
        said = "; ".join(waits[:MOST_WAITED_FOR]) + (f"; and {more} more" if more > 0 else "")
        opening = (
            "The heat loss cannot be said yet: an entry is missing. What can be worked out stands below."
        )
        return data.Answer(opening, "", found.key(loss), (), None, said or "an answer to its arithmetic")
    spoken = show_speaking(loss, units)
    opening = (
        f"When it is {show(site.outdoor, units)} outdoors and {show(site.indoor, units)} indoors, the house "
        f"loses about {spoken}. The heating must supply that much on the design day; on milder days it needs "
        "less."
    )
    likely = show_range(made.low, made.high, units, loss.dimension)
    sentences = [f"Likely {likely}. {SENTENCE}"] if made.high > made.low else []
    sentences.append(f"{_lead(design)} {NOTHING_ON_TOP}".strip())
    number = without_unit(spoken, loss, units)
    return data.Answer(
        opening, number, found.key(loss), tuple(sentences), _rule(design, units, made, number, likely)
    )


def _lead(design: Design) -> str:
    causes = design.losses.house.causes
    ranked = sorted(causes, key=lambda cause: -amount(causes[cause].loss))
    return f"{CAUSE_NAMES[ranked[0]]} and {ranked[1]} lead." if len(ranked) > 1 else ""


def _rule(design: Design, units: Preset, made: Band, spoken: str, likely: str) -> data.Band | None:
    loss = design.losses.house.loss
    unit = units.shown(loss.dimension).unit
    low, high, value = (unit.from_si(each) for each in (made.low, made.high, float(loss)))
    others = evidence_of(design, units)
    if not high > low:
        return None
    return data.Band(low, high, value, f"{spoken}, likely {likely}", others, grouping(unit, units))


def conditions(design: Design, found: Addresses) -> tuple[data.Condition, ...]:
    """What the loss was planned for."""
    job, losses, units = design.job, design.losses, found.units
    site = losses.site

    def line(name: str, figure: Figure, value: str = "", note: str = "") -> data.Condition:
        text = "" if figure.is_missing else value or show(figure, units)
        return data.Condition(name, text, note, found.key(figure), known_of(figure))

    lines = [
        line("Indoors", site.indoor, note=_of_rooms(design, units)),
        line("Outdoors", site.outdoor, note=job.site.place),
        line("Difference (ΔT)", site.design_difference),
    ]
    if _meets_ground(design):
        lines.append(line("Mean ground", job.site.ground_temperature))
    drawn = drawn_spaces(design)
    lines += [
        line(each.name, each.temperature, note="heat balance" + ("" if id in drawn else ", not drawn"))
        for id, each in losses.unheated.items()
    ]
    area, count = losses.house.floor_area, len(losses.rooms)
    lines.append(
        line("Heated floor area", area, whole(area, units), f"{count} rooms" if count != 1 else "one room")
    )
    elevation = job.site.elevation
    lines.append(line("Elevation", elevation, height_above_sea(elevation, units)))
    return tuple(lines)


def _meets_ground(design: Design) -> bool:
    losses = design.losses
    of_rooms = [each.beyond for room in losses.rooms.values() for each in room.surfaces.values()]
    of_spaces = [each.beyond for space in losses.unheated.values() for each in space.surfaces.values()]
    return any(each.kind == "ground" for each in (*of_rooms, *of_spaces))


def _of_rooms(design: Design, units: Preset) -> str:
    usual = show(design.losses.site.indoor, units)
    others = sorted({show(each.indoor, units) for each in design.losses.rooms.values()} - {usual})
    return f"some rooms {', '.join(others)}" if others else "all rooms"


def matters(design: Design, found: Addresses, swings: tuple[Swing, ...]) -> tuple[data.Matter, ...]:
    """The inputs that move the load most, longest first."""
    return tuple(
        data.Matter(
            each.name, each.value, each.swing, each.half, each.cause, known_of(swing.entries[0]),
            found.key(each.entry),
        )
        for swing, each in zip(swings, matters_of(design, found.units, design.losses.house.loss, swings),
                               strict=False)
    )  # fmt: skip
