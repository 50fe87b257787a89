"""The paper "Heat loss of the house": its drawings made and its template set."""

from __future__ import annotations

from typing import Any

from heatledger.drawings.band_rule import band_rule
from heatledger.drawings.cause_bar import cause_bar, cause_swatch, swing_bar
from heatledger.drawings.hatches import CAUSES
from heatledger.drawings.house_section import Stream, house_section
from heatledger.drawings.shapes import Drawing
from heatledger.papers.compile import Prepared, compiled, prepared
from heatledger.papers.heat_loss_data import CauseLine, HeatLossPaper, Matter, RoomLine
from heatledger.papers.paper import picture
from heatledger.papers.workings_data import Token

TEMPLATE = "heat_loss.typ"
SECTION_TITLE = "Where the heat goes"


def heat_loss_pdf(paper: HeatLossPaper, sheet: str = "letter") -> bytes:
    """The paper as PDF on ``letter`` or ``a4``; raises PaperError when it cannot be made cleanly."""
    made = heat_loss_prepared(paper, sheet)
    del paper  # it would lie beside what the compiler makes of it
    return compiled(made)


def heat_loss_prepared(paper: HeatLossPaper, sheet: str = "letter") -> Prepared:
    """The texts that the compiler takes of the paper."""
    return prepared(TEMPLATE, heat_loss_content(paper), sheet)


def heat_loss_content(paper: HeatLossPaper) -> dict[str, Any]:
    """All that the template takes: the texts of ``paper`` and each drawing with its words."""
    largest_room = max((_gross(room) for room in paper.rooms), default=0.0)
    largest_cause = max((each.amount for each in paper.causes), default=0.0)
    largest_swing = max((abs(each.half) for each in paper.matters), default=0.0)
    content: dict[str, Any] = led(paper, frozenset(paper.keys()))
    content["section"] = picture(_section(paper))
    content["band"] = picture(_band(paper)) if paper.answer.band else None
    content["swatches"] = {cause: picture(cause_swatch(cause)) for cause in CAUSES}
    for line, each in zip(content["causes"], paper.causes, strict=True):
        line["bar"] = picture(_cause(each, largest_cause))
    for line, room in zip(content["rooms"], paper.rooms, strict=True):
        line["bar"] = picture(_room(room, largest_room))
    for line, matter in zip(content["matters"], paper.matters, strict=True):
        line["bar"] = picture(_matter(matter, largest_swing, paper.units.loss))
    return content


def led(thing: Any, keys: frozenset[str]) -> Any:
    """Plain data for the template, without the addresses that nothing on the paper answers to."""
    if isinstance(thing, str | float | int) or thing is None:
        return thing
    if isinstance(thing, Drawing):
        return picture(thing)
    if isinstance(thing, tuple):
        return [led(each, keys) for each in thing if not (isinstance(each, Token) and _is_dead(each, keys))]
    made = {name: led(getattr(thing, name), keys) for name in thing.__dataclass_fields__}
    if made.get("key") and made["key"] not in keys:
        made["key"] = ""
    if "keys" in made:
        made["keys"] = [each for each in made["keys"] if each in keys]
    return made


def _is_dead(token: Token, keys: frozenset[str]) -> bool:
    return token.kind == "key" and token.text not in keys


def _section(paper: HeatLossPaper) -> Drawing:
    streams = tuple(
        Stream(each.cause, each.name, each.amount, each.share.text, each.loss.text) for each in paper.causes
    )
    return house_section(SECTION_TITLE, paper.house, streams, paper.units.loss)


def _band(paper: HeatLossPaper) -> Drawing:
    band = paper.answer.band
    assert band is not None
    ends = (band.low, band.high, band.figure)
    return band_rule("Likely range", *ends, band.others, words=band.words, group=band.group)


def _cause(each: CauseLine, largest: float) -> Drawing:
    amounts, texts = {each.cause: each.amount}, {each.cause: each.loss.text}
    return cause_bar(each.name, amounts, texts, largest, width=72.0)


def _room(room: RoomLine, largest: float) -> Drawing:
    amounts = dict(zip(CAUSES, room.amounts, strict=True))
    texts = {cause: cell.text for cause, cell in zip(CAUSES, room.causes, strict=True)}
    return cause_bar(room.name, amounts, texts, largest, width=54.0)


def _matter(matter: Matter, largest: float, unit: str) -> Drawing:
    words = f"moves the load by {matter.swing} {unit}"
    return swing_bar(matter.name, words, matter.cause, matter.half, largest, width=176.0)


def _gross(room: RoomLine) -> float:
    return sum(max(each, 0.0) for each in room.amounts)
