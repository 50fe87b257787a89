"""The tables of the paper: causes, rooms, stories, findings, and the entries down to the tape."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from heatledger.drawings.figure_words import amount, bare
from heatledger.drawings.hatches import CAUSE_NAMES
from heatledger.drawings.naming import headed, title_of
from heatledger.ledger.figures import Figure, Leaf, LeafKind
from heatledger.ledger.findings import Finding, NotChecked, Weight
from heatledger.ledger.presets import Preset
from heatledger.ledger.show import show, show_percent
from heatledger.papers import heat_loss_data as data
from heatledger.papers.addresses import Addresses, Stage
from heatledger.papers.catalog_rows import beside_it, row_name
from heatledger.papers.words import same_text
from heatledger.papers.workings_from import known_of, source
from heatledger.steps.design import Design
from heatledger.steps.losses import RoomLoss
from heatledger.steps.names import things_at
from heatledger.steps.surfaces import CAUSES

NONE = data.Cell("–")
MOST_NOT_CHECKED = 5


def cell(figure: Figure, found: Addresses) -> data.Cell:
    """A figure of a table, with as many decimals as its column."""
    places = found.units.shown(figure.dimension).places
    return data.Cell(bare(figure, found.units, places), found.key(figure))


def cause_line(cause: str, design: Design, found: Addresses) -> data.CauseLine:
    """One of the six causes over the house."""
    each = design.losses.house.causes.get(cause)
    if each is None:
        return data.CauseLine(cause, CAUSE_NAMES[cause], NONE, data.Cell(" "), 0.0)
    share = data.Cell("" if each.share.is_missing else show_percent(float(each.share)), found.key(each.share))
    return data.CauseLine(
        cause, CAUSE_NAMES[cause], cell(each.loss, found), share, max(amount(each.loss), 0.0)
    )


def room_lines(design: Design, found: Addresses) -> tuple[data.RoomLine, ...]:
    """The rooms by story, as the job orders both."""
    order = list(design.job.levels)
    rooms = sorted(design.losses.rooms.values(), key=lambda room: order.index(room.level))
    return tuple(_room_line(room, design, found) for room in rooms)


def _room_line(room: RoomLoss, design: Design, found: Addresses) -> data.RoomLine:
    cells = tuple(cell(room.causes[cause].loss, found) if cause in room.causes else NONE for cause in CAUSES)
    amounts = tuple(amount(room.causes[cause].loss) if cause in room.causes else 0.0 for cause in CAUSES)
    level = str(design.job.levels[room.level].name)
    return data.RoomLine(room.name, level, cells, cell(room.loss, found), cell(room.per_area, found), amounts)


def house_line(design: Design, found: Addresses) -> data.HouseLine:
    """The last row of the room table."""
    house = design.losses.house
    cells = tuple(
        cell(house.causes[cause].loss, found) if cause in house.causes else NONE for cause in CAUSES
    )
    return data.HouseLine(
        "House", "rounded parts", cells, cell(house.loss, found), cell(house.per_area, found)
    )


def level_lines(design: Design, found: Addresses) -> tuple[data.LevelLine, ...]:
    """What the rooms of each story lose, where there is more than one story."""
    levels = design.losses.levels
    if len(levels) < 2:
        return ()
    return tuple(data.LevelLine(str(each.name), cell(each.loss, found)) for each in levels.values())


def finding_line(each: Finding, design: Design, found: Addresses) -> data.FindingLine:
    """A finding: where it stands, what it says and why, and how it may be mended."""
    weights: dict[Weight, data.Weight] = {
        Weight.MUST_FIX: "must fix",
        Weight.DECIDE: "decide",
        Weight.NOTE: "note",
    }
    things = things_at(each.where, design.job)[0] if each.where else []
    why, key = _sentence(plain(str(each.why))), ""
    if isinstance(each.why, Figure):
        what = " ".join(part for part in title_of(each.why, design, things[0] if things else "House") if part)
        why = f"{what}: {show(each.why, found.units)}."
        key = found.key(each.why)
    decided = f"{each.decided.words}; {each.decided.because} ({each.decided.by})" if each.decided else ""
    where = "" if begins_with(each.what, things) else ", ".join(things)
    text = plain(" ".join(part for part in (each.what, each.caution) if part))
    return data.FindingLine(
        weights[each.weight], where, text, why, tuple(plain(mend.words) for mend in each.mends), key, decided,
        source(each.citation),
    )  # fmt: skip


def begins_with(sentence: str, things: list[str]) -> bool:
    """Whether a sentence opens with the name of one of the things it is about, as in "The upper floor"."""
    said = sentence.casefold().removeprefix("the ")
    return any(
        said.startswith(each.casefold()) and not said[len(each.casefold()) :][:1].isalnum() for each in things
    )


def plain(text: str) -> str:
    """The text as it is set in print: a true minus, and no marks around what is typed on a screen."""
    return text.replace("`", "").replace(" - ", " \N{MINUS SIGN} ")


def _sentence(text: str) -> str:
    """The text with a capital in front and a stop at its end."""
    return f"{text[:1].upper()}{text[1:]}{'' if text[-1:] in '.:;' else '.'}"


def not_checked_lines(not_checked: Sequence[NotChecked]) -> tuple[str, ...]:
    """What could not be checked, and for want of what, each said once; of many, the names alone."""
    names = dict.fromkeys(each.id.replace("-", " ") for each in not_checked)
    if len(names) > MOST_NOT_CHECKED:
        return (f"{', '.join(names)}: for want of entries that are not given",)
    said = (
        f"{each.id.replace('-', ' ')}: for want of {each.for_want_of.rstrip('.')}" for each in not_checked
    )
    return tuple(dict.fromkeys(map(plain, said)))


def heights_note(design: Design, units: Preset) -> str:
    """The two heights of each story, and how the job is measured."""
    said = [
        f"{each.name}: walls {show(each.wall_height, units)}, air to {show(each.ceiling_height, units)}"
        for each in design.job.levels.values()
        if not each.wall_height.is_missing and not each.ceiling_height.is_missing
    ]
    return f"Heights: {'; '.join(said)}. The job is measured {design.job.measured}." if said else ""


def tape(design: Design, found: Addresses, stages: Iterable[Stage]) -> tuple[data.EntryGroup, ...]:
    """Every entry that the workings of these stages are first to come down to, by what it belongs to."""
    return tuple(
        data.EntryGroup(group.title, tuple(_entry(each, group.title, design, found) for each in group.lines))
        for stage in stages
        for group in stage.given
    )


def _entry(figure: Figure, owner: str, design: Design, found: Addresses) -> data.Entry:
    origin: Leaf = figure.origin
    value = "" if figure.is_missing else show(figure, found.units)
    details = []
    row = row_name(origin)
    if row:
        details.append(f"row: {row}, {origin.typed} {origin.unit}".strip())
    elif origin.typed and not same_text(origin.typed, value):
        details.append(f"typed {origin.typed}")
    if origin.replaces:
        details.append(f"in place of {origin.replaces}")
    details += beside_it(origin)
    line = design.job.source.line_of(origin.path) if origin.kind is LeafKind.JOB else 0
    return data.Entry(
        found.key(figure),
        headed(figure, design, owner),
        value,
        str(line or ""),
        known_of(figure),
        tuple(details),
        source(origin.citation) if origin.citation is not None else None,
    )
