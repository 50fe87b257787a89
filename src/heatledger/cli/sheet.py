"""The sheet that ``heatledger design`` prints: 80 columns, plain text, no color needed."""

from __future__ import annotations

import textwrap

from heatledger.cli.common import WIDTH
from heatledger.cli.findings_text import findings_lines
from heatledger.cli.system_sheet import system_lines
from heatledger.ledger.dimensions import AREA
from heatledger.ledger.figures import Figure, exceeds
from heatledger.ledger.presets import Preset
from heatledger.ledger.show import show, show_percent, show_range, show_speaking
from heatledger.papers.as_json import CAUTION
from heatledger.steps.design import Design
from heatledger.steps.losses import RoomLoss
from heatledger.steps.surfaces import CAUSES
from heatledger.studies.uncertainty import SENTENCE, band, half_range_text

NAME = 17
COLUMN = 8
LAST_COLUMN = 7
ABOUT = 24


def design_sheet(house: Design, units: Preset) -> str:
    """Heading, rooms by cause, stories, the band and what matters most, findings, caution."""
    lines = [*_heading(house, units), "", *_rooms(house, units)]
    band_lines = _band(house, units)
    lines += ["", *band_lines] if band_lines else []
    missing = [each.name for each in house.losses.rooms.values() if each.loss.is_missing]
    if missing:
        lines += [
            "",
            *textwrap.wrap(
                f"No loss yet for {', '.join(missing)}: heatledger check lists what is missing.", WIDTH
            ),
        ]
    lines += system_lines(house, units)
    findings = findings_lines(house, units)
    lines += ["", *(findings or ["No findings."]), "", *textwrap.wrap(CAUTION, WIDTH)]
    return "\n".join(line.rstrip() for line in lines)


def _heading(house: Design, units: Preset) -> list[str]:
    job, site = house.job, house.losses.site
    title = ", ".join(each for each in (job.name, job.address) if each)
    lines = textwrap.wrap(title, WIDTH)
    if job.invented:
        lines.append("An invented house: nothing in it is real.")
    for id in job.laid:
        lines.append(f"With the what-if: {job.what_ifs[id].name or id}")
    ends = f"{show(site.indoor, units)} indoors, {show(site.outdoor, units)} outdoors"
    said = f"The design day: {ends}."
    if not site.design_difference.is_missing:
        said = f"{said[:-1].replace(',', ' and')}, a difference of {show(site.design_difference, units)}."
    spaces = house.losses.unheated.values()
    found = [
        f"{each.name} {show(each.temperature, units)}" for each in spaces if not each.temperature.is_missing
    ]
    if found:
        said += f" Unheated spaces find their own temperature: {', '.join(found)}."
    return [*lines, *textwrap.wrap(said, WIDTH)]


def _rooms(house: Design, units: Preset) -> list[str]:
    losses = house.losses
    causes = [cause for cause in CAUSES if cause in losses.house.causes]
    unit = units.shown(losses.house.loss.dimension).unit.text
    per = f"/{units.shown(AREA).unit.text}"
    blank = [""] * len(causes)
    rows = [(f"Heat loss, {unit}", [*causes, "room", per])]
    for id, level in losses.levels.items():
        if len(losses.levels) > 1:
            rows.append((level.name, [*blank, _bare(level.loss, units), _bare(level.per_area, units)]))
        for room in losses.rooms.values():
            if room.level == id:
                rows.append(("  " + room.name, _row(room, causes, units)))
    rows.append(("", ["-" * (COLUMN - 1)] * (len(causes) + 1)))
    totals = [_bare(losses.house.causes[cause].loss, units) for cause in causes]
    rows.append(("House", [*totals, _bare(losses.house.loss, units), _bare(losses.house.per_area, units)]))
    rows.append(("", [*blank, "=" * (COLUMN - 1)]))
    shares = [_share(losses.house.causes[cause].share) for cause in causes]
    rows.append(("  share", [*shares, "100 %" if not losses.house.loss.is_missing else ""]))
    return [*_table(rows), f"  rounded parts; {show(losses.house.floor_area, units)} heated"]


def _table(rows: list[tuple[str, list[str]]]) -> list[str]:
    """Rows in columns as wide as their longest number asks for; what is left is for the names."""
    most = max(len(cells) for _, cells in rows)
    widths = [COLUMN] * (most - 1) + [LAST_COLUMN]
    for _, cells in rows:
        widths[: len(cells)] = [max(width, len(cell) + 1) for width, cell in zip(widths, cells, strict=False)]
    name_width = min(NAME, WIDTH - sum(widths))
    lines = []
    for name, cells in rows:
        row = "".join(f"{cell:>{width}}" for cell, width in zip(cells, widths, strict=False))
        lines.append(_short(name, name_width).ljust(name_width) + row)
    return lines


def _row(room: RoomLoss, causes: list[str], units: Preset) -> list[str]:
    cells = [_bare(room.causes[cause].loss, units) if cause in room.causes else "–" for cause in causes]
    return [*cells, _bare(room.loss, units), _bare(room.per_area, units)]


def _short(name: str, width: int) -> str:
    return name if len(name) <= width else name[: width - 1] + "…"


def _bare(figure: Figure, units: Preset) -> str:
    """A figure without its unit, for a column that names it."""
    if figure.is_missing:
        return "?"
    shown = units.shown(figure.dimension)
    text = show(figure, units, places=shown.places)
    return text.removesuffix(shown.unit.text).strip()


def _share(figure: Figure) -> str:
    return "?" if figure.is_missing else show_percent(float(figure))


def _band(house: Design, units: Preset) -> list[str]:
    loss = house.losses.house.loss
    if loss.is_missing:
        return []
    made = band(house, "house/loss")
    likely = show_range(made.low, made.high, units, loss.dimension)
    lines = [f"Design load {show_speaking(loss, units)}, likely {likely}."]
    lines += textwrap.wrap(SENTENCE, WIDTH)
    lines.append("What matters most:")
    swings = [f"± {show(each.swing, units, loss.dimension)}" for each in made.swings[:5]]
    last = max([14, *(len(each) for each in swings)])
    words = WIDTH - 4 - ABOUT - last
    for each, said in zip(made.swings, swings, strict=False):
        about = ", ".join(part for part in (each.known, half_range_text(each, units)) if part)
        lines.append(f"  {_short(each.words, words):<{words}} {_short(about, ABOUT):<{ABOUT}} {said:>{last}}")
    if len(made.swings) > 5:
        lines.append(f"  and {len(made.swings) - 5} smaller")
    below = [each for each in house.losses.rooms.values() if exceeds(0.0, float(each.loss))]
    lines += [f"{each.name} gains heat from its neighbors and needs none of its own." for each in below]
    return lines
