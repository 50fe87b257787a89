"""The tables of the paper: causes, rooms, storeys, findings, and the entries down to the tape."""

from __future__ import annotations

from heatledger.ledger.figures import Figure, Leaf, LeafKind
from heatledger.ledger.findings import Finding, Weight
from heatledger.ledger.show import show, show_percent
from heatledger.papers import heat_loss_data as data
from heatledger.papers.addresses import Addresses
from heatledger.papers.front import NAMES
from heatledger.papers.naming import headed
from heatledger.papers.words import amount, bare
from heatledger.papers.workings_from import known_of, source
from heatledger.steps.design import Design
from heatledger.steps.losses import RoomLoss
from heatledger.steps.names import things_at
from heatledger.steps.surfaces import CAUSES

NONE = data.Cell("–")
_SAME_SIGNS = (
    ("′", "'"),
    ("″", '"'),
    ("−", "-"),
    ("²", "2"),
    ("³", "3"),
    ("·", "*"),
    (",", ""),
    (" ft", "'"),
)


def cell(figure: Figure, found: Addresses) -> data.Cell:
    """A figure of a table, with as many decimals as its column."""
    places = found.units.shown(figure.dimension).places
    return data.Cell(bare(figure, found.units, places), found.key(figure))


def cause_line(cause: str, design: Design, found: Addresses) -> data.CauseLine:
    """One of the six causes over the house."""
    each = design.losses.house.causes.get(cause)
    if each is None:
        return data.CauseLine(cause, NAMES[cause], NONE, data.Cell(" "), 0.0)
    share = data.Cell("" if each.share.is_missing else show_percent(float(each.share)), found.key(each.share))
    return data.CauseLine(cause, NAMES[cause], cell(each.loss, found), share, max(amount(each.loss), 0.0))


def room_lines(design: Design, found: Addresses) -> tuple[data.RoomLine, ...]:
    """The rooms by storey, as the job orders both."""
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
    """What the rooms of each storey lose, where there is more than one storey."""
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
    why, key = _sentence(str(each.why)), ""
    if isinstance(each.why, Figure):
        why = f"{headed(each.why, design, 'House')}: {show(each.why, found.units)}."
        key = found.key(each.why)
    decided = f"{each.decided.words}; {each.decided.because} ({each.decided.by})" if each.decided else ""
    where = ", ".join(things_at(each.where, design.job)[0]) if each.where else ""
    text = " ".join(part for part in (each.what, each.caution) if part)
    return data.FindingLine(
        weights[each.weight], where, text, why, tuple(mend.words for mend in each.mends), key, decided,
        source(each.citation),
    )  # fmt: skip


def _sentence(text: str) -> str:
    """The text with a capital in front and a stop at its end."""
    return f"{text[:1].upper()}{text[1:]}{'' if text[-1:] in '.:;' else '.'}"


def not_checked_lines(design: Design) -> tuple[str, ...]:
    """What could not be checked, and for want of what; each said once."""
    said = (f"{each.id.replace('-', ' ')}: for want of {each.for_want_of}" for each in design.not_checked)
    return tuple(dict.fromkeys(said))


def heights_note(design: Design) -> str:
    """The two heights of each storey, and how the job is measured."""
    units = design.job.units
    said = [
        f"{each.name}: walls {show(each.wall_height, units)}, air to {show(each.ceiling_height, units)}"
        for each in design.job.levels.values()
        if not each.wall_height.is_missing and not each.ceiling_height.is_missing
    ]
    return f"Heights: {'; '.join(said)}. The job is measured {design.job.measured}." if said else ""


def tape(design: Design, found: Addresses) -> tuple[data.EntryGroup, ...]:
    """Every entry that a working comes down to, by what it belongs to."""
    return tuple(
        data.EntryGroup(group.title, tuple(_entry(each, group.title, design, found) for each in group.lines))
        for group in found.given
    )


def _entry(figure: Figure, owner: str, design: Design, found: Addresses) -> data.Entry:
    origin: Leaf = figure.origin
    value = "" if figure.is_missing else show(figure, found.units)
    details = []
    if origin.typed and not same_text(origin.typed, value):
        details.append(f"typed {origin.typed}")
    if origin.replaces:
        details.append(f"in place of {origin.replaces}")
    if origin.kind is not LeafKind.JOB:
        details += [f"beside it {each}" for each in origin.beside]
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


def same_text(typed: str, printed: str) -> bool:
    """Whether what was typed and what is printed differ in the shape of their signs alone.

    ``U-0.35`` is 0.35 in the unit of the reader, and ``6'`` is 6 feet and no inches.
    """
    said, shown = _plain(typed), _plain(printed)
    if said[:2] in ("u-", "r-"):
        return shown.startswith(said[2:]) and not shown[len(said) - 2 :][:1].isdigit()
    return said == shown


def _plain(text: str) -> str:
    for sign, plain in _SAME_SIGNS:
        text = text.replace(sign, plain)
    text = "".join(text.split()).lower()
    return text.removesuffix('0"') if text.endswith("'0\"") else text
