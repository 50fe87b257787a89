"""Sheets 3 to 7 of what ``heatledger design`` prints: emitters, piping, boiler room, controls, startup."""

from __future__ import annotations

import textwrap

from heatledger.cli.common import WIDTH
from heatledger.ledger.dimensions import TEMPERATURE
from heatledger.ledger.figures import Figure, waits_for
from heatledger.ledger.presets import Preset
from heatledger.ledger.show import show, show_percent, show_range
from heatledger.steps.design import Design
from heatledger.studies.replacement import replacement

NAME = 22
MOST_WAITED_FOR = 4
POINTS = 7
"""Points of the reset line that go side by side."""
EVEN = 0.005
"""A room within half a percent of its need is neither over nor short."""


def system_lines(house: Design, units: Preset) -> list[str]:
    """What the design holds of the heating system; nothing where the job says nothing of it."""
    lines: list[str] = []
    for part in (_emitters, _piping, _boiler_room, _bills, _controls, _startup):
        said = part(house, units)
        lines += ["", *said] if said else []
    return lines


def said(figure: Figure | None, units: Preset, places: int | None = None) -> str:
    """A figure with its unit, or a mark for what is not known yet."""
    if figure is None or figure.is_missing:
        return "?"
    return show(figure, units) if places is None else show(figure, units, places=places)


def bare(figure: Figure | None, units: Preset) -> str:
    """A figure without its unit, for a column that names it."""
    if figure is None or figure.is_missing:
        return "?"
    shown = units.shown(figure.dimension)
    return show(figure, units, places=shown.places).removesuffix(shown.unit.text).strip()


def _emitters(house: Design, units: Preset) -> list[str]:
    heat = house.emitters
    if not heat.emitters:
        return []
    whole = heat.house
    unit = units.shown(whole.given.dimension).unit.text
    lines = textwrap.wrap(
        f"Emitters: supply {said(whole.supply, units)}, ΔT {said(whole.drop, units)}, mean water "
        f"{said(whole.mean_water, units)}.",
        WIDTH,
    )
    lines.append(f"{unit:<{NAME}}{'needs':>10}{'gives':>10}{'from supply':>13}   at this water")
    for id, room in heat.rooms.items():
        name = house.job.rooms[id].name
        row = f"{bare(room.needed, units):>10}{bare(room.given, units):>10}"
        row += f"{said(room.lowest_supply, units):>13}"
        suggested = any(each.suggested and each.room == id for each in heat.emitters.values())
        verdict = "length suggested" if suggested else _verdict(room.given_share)
        lines.append(f"{_short(name):<{NAME}}{row}   {verdict}".rstrip())
    waits = list(dict.fromkeys(house.names.title(each) for each in waits_for(whole.supply)))
    if waits:
        lines += textwrap.wrap(f"Water temperatures wait for: {'; '.join(waits[:MOST_WAITED_FOR])}.", WIDTH)
    if not whole.lowest_supply.is_missing:
        setter = house.job.rooms[whole.set_by].name if whole.set_by in house.job.rooms else whole.set_by
        text = f"Every room is served from a supply of {said(whole.lowest_supply, units)}; {setter} sets it."
        if whole.next_lowest is not None and not whole.next_lowest.is_missing:
            text += f" All but that room from {said(whole.next_lowest, units)}."
        lines += textwrap.wrap(text, WIDTH)
    return lines


def _verdict(share: Figure) -> str:
    if share.is_missing:
        return "not known yet"
    off = float(share) - 1
    if abs(off) <= EVEN:
        return "just right"
    return f"over by {show_percent(off)}" if off > 0 else f"short by {show_percent(-off)}"


def _piping(house: Design, units: Preset) -> list[str]:
    circuits = house.circuits
    if not circuits.circuits:
        return []
    lines = [f"{'Piping':<{NAME}}{'needed':>11}{'head':>10}{'results':>12}   index run"]
    for each in circuits.circuits.values():
        index = house.job.system.emitters.get(each.index_run)
        row = f"{said(each.flow, units):>11}{said(each.head, units):>10}{said(each.actual_flow, units):>12}"
        lines.append(f"{_short(each.name):<{NAME}}{row}   {_short(index.name if index else '')}".rstrip())
    for pump in circuits.plant.circulators.values():
        text = f"{pump.name}: {said(pump.needed_flow, units)} at {said(pump.needed_head, units)} needed"
        if pump.actual_flow is not None and not pump.actual_flow.is_missing:
            text += f"; it runs at {said(pump.actual_flow, units)} and {said(pump.actual_head, units)}"
        lines += textwrap.wrap(text + ".", WIDTH)
    return lines


def _boiler_room(house: Design, units: Preset) -> list[str]:
    room = house.boiler_room.plant
    if not house.job.system.emitters and house.job.system.plant.boiler is None:
        return []
    text = f"Boiler room: it must supply {said(room.load, units)}"
    if room.output is not None and not room.output.is_missing:
        text += f"; output {said(room.output, units)}, {said(room.ratio, units, 2)} times that"
    text += f"; no more than {said(room.largest_output, units)} is wanted."
    more = []
    if not room.fill_pressure.is_missing:
        charged = "Fill" if room.precharge_pressure is None else "Fill and precharge"
        more.append(f"{charged} {said(room.fill_pressure, units, 1)}")
    if not room.tank_volume.is_missing:
        more.append(
            f"{said(room.water_volume, units, 1)} of water; expansion tank of at least "
            f"{said(room.tank_volume, units, 1)}"
        )
    return textwrap.wrap(f"{text} {'. '.join(more)}{'.' if more else ''}".strip(), WIDTH)


def _bills(house: Design, units: Preset) -> list[str]:
    lines: list[str] = []
    for each in house.bills.bills.values():
        if not each.like_for_like.is_missing:
            name = f"{each.name[:1].lower()}{each.name[1:]}"
            text = (
                f"By {name} the house loses {said(each.like_for_like, units)} like for like; "
                f"{said(each.after_gains, units)} is left to the heating after sun, people and lights."
            )
            lines += textwrap.wrap(text, WIDTH)
    if lines:
        lines += textwrap.wrap(_meeting(house, units), WIDTH)
    return lines


def _meeting(house: Design, units: Preset) -> str:
    """Where the heat loss and the bills agree within their bands."""
    load = house.boiler_room.plant.load
    made = replacement(house)
    if load.is_missing:
        return ""
    if made.apart:
        return "The load and the bills do not meet within their bands: one of them is wrong."
    if not made.meets or made.low is None or made.high is None:
        return ""
    return f"Load and bills meet at {show_range(made.low, made.high, units, load.dimension)}."


def _controls(house: Design, units: Preset) -> list[str]:
    points = [each for each in house.controls.controls.reset.values() if not each.asked.is_missing]
    if not points or house.job.system.controls.outdoor_reset is False:
        return []
    unit = units.shown(TEMPERATURE).unit.text
    lines: list[str] = []
    for start in range(0, len(points), POINTS):
        few = points[start : start + POINTS]
        outdoors = "".join(f"{said(each.outdoor, units).removesuffix(unit).strip():>8}" for each in few)
        asked = "".join(f"{said(each.asked, units, 0).removesuffix(unit).strip():>8}" for each in few)
        lines += [f"{f'Outdoors, {unit}':<{NAME}}{outdoors}", f"{f'  supply, {unit}':<{NAME}}{asked}"]
    return lines


def _startup(house: Design, units: Preset) -> list[str]:
    start = house.startup.startup
    if start.supply.is_missing or start.return_.is_missing:
        return []
    text = (
        f"Startup: at {said(start.outdoor, units)} outdoors and supply {said(start.supply, units)}, return "
        f"{said(start.return_, units)} and flow {said(start.flow, units)} are due."
    )
    lines = textwrap.wrap(text, WIDTH)
    if not start.may_run:
        lines += textwrap.wrap(
            f"Do not leave it running. Not on file yet: {', '.join(start.waits_for)}.", WIDTH
        )
    return lines


def _short(name: str) -> str:
    return name if len(name) < NAME else name[: NAME - 2] + "…"
