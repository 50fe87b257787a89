"""Texts that a job begins with: three numbers, a first room, or a boiler to be replaced.

Each is tidy and commented as a job file by hand would be. What is not known yet is left blank, is listed as
missing, and is never guessed; what is our guess says so.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any

from heatledger.job.edits import add_thing, set_entry
from heatledger.ledger.presets import METRIC, Preset

_HEAD = """\
# {title}
# What is not known yet is left empty: it is listed as missing, never guessed.
format: 1
name:
address:
# How a number without a unit is read: US, metric or Canadian.
units: {units}
edition: 2026
measured: {measured}
# How well it is known, unless it says otherwise beside a value.
known: told

# The outdoor design temperature: ask the local code office. Indoors: for every room that says nothing else.
site:
  outdoor:
  indoor:
  elevation:
"""
_NUMBERS = """
# Of the whole house; with the two temperatures it gives a crude estimate, no heat loss.
heated_floor_area:
"""
_PARTS = """
# Whole assemblies with their films, to be put right when the house has been seen.
constructions:
  known: assumed
  wall: {name: Outside wall, kind: wall, catalog: frame-wall-2x4-r-11}
  ceiling: {name: Ceiling below the attic, kind: ceiling, catalog: attic-r-19}
  floor: {name: Floor on joists, kind: floor, catalog: floor-wood-joist-bare}
  window: {name: Window, kind: window, u_value: %(window)s}
  door: {name: Outside door, kind: door, catalog: door-wood-default}
"""
_ROOM = """
levels:
  ground: {name: %(floor)s, wall_height: %(wall)s, ceiling_height: %(ceiling)s, known: assumed}

air: {changes: 0.5 ACH, known: assumed}    # one rate for all rooms; a room may have its own
"""
_REPLACEMENT = """
levels:
  house: {name: All floors, wall_height: %(wall)s, ceiling_height: %(ceiling)s, known: assumed}

neighbors:
  basement: {name: Basement, temperature: {is: %(basement)s, known: assumed}}

# The whole house as one space; rooms you know more about can be rooms of their own later.
rooms:
  house:
    name: Whole house
    level: house
    floor_area:
    air: {changes: 0.6 ACH, known: assumed}
    surfaces:
      walls:
        name: All outside walls
        construction: wall
        # Taped once round the outside, and of all floors together.
        length:
        height:
        beyond: outdoors
      ceiling: {construction: ceiling, area: , beyond: outdoors}
      floor: {construction: floor, area: , beyond: neighbors/basement}

plant:
  drop: %(drop)s
  # The plate of the old boiler; the new one is to be chosen.
  boiler:
    known: from plans
    name: Old boiler, to be replaced
"""
_US = {
    "window": "U-0.50", "wall": "9' 0\"", "ceiling": "8' 0\"", "basement": "58 °F", "drop": "20 °F",
    "floor": "First floor",
}  # fmt: skip
_METRIC = {
    "window": "2.8 W/(m²·K)", "wall": "2.75 m", "ceiling": "2.45 m", "basement": "14 °C", "drop": "11 K",
    "floor": "Ground floor",
}  # fmt: skip
_CANADIAN = {**_US, "basement": "14 °C", "drop": "11 °C"}
SIDES = ("north", "east", "south", "west")
"""The outside walls a first room may have, clockwise."""


def three_numbers(units: Preset) -> str:
    """A job of three numbers, all still blank: floor area, outdoor and indoor."""
    return _head("A job begun from three numbers; type its rooms to get a heat loss.", units) + _NUMBERS


def first_room(units: Preset, name: str, sides: Iterable[str], under_attic: bool) -> str:
    """A job with one room whose two sides are still blank (``rooms/ID/size``), on assumed constructions.

    Each of ``sides`` that is outdoors becomes an outside wall; its length is filled in with the room's.
    """
    from heatledger.job.edits import free_id

    text = _head("A job begun with its first room; add the others beside it.", units)
    text += (_PARTS + _ROOM) % _words(units)
    walls = {
        f"{side}-wall": {"construction": "wall", "length": "", "beyond": "outdoors"}
        for side in SIDES if side in sides
    }  # fmt: skip
    if under_attic:
        walls["ceiling"] = {"construction": "ceiling", "size": "", "beyond": "outdoors"}
    room: dict[str, Any] = {"name": name, "level": "ground", "size": ""}
    return add_thing(text, f"rooms/{free_id((), name)}", room | ({"surfaces": walls} if walls else {}))


def boiler_replacement(units: Preset) -> str:
    """A job that takes the house as one space, all its numbers still blank."""
    text = _head("A boiler to be replaced: the house as one space, its bills, the plate.", units, "outside")
    return text + (_PARTS + _REPLACEMENT) % _words(units)


def filled(text: str, typed: Mapping[str, str]) -> str:
    """The text with what was typed at each path; a path with nothing typed stays as it is."""
    for path, value in typed.items():
        if value.strip():
            text = set_entry(text, path, value.strip())
    return text


def _head(title: str, units: Preset, measured: str = "inside") -> str:
    return _HEAD.format(title=title, units=units.name, measured=measured)


def _words(units: Preset) -> dict[str, str]:
    if units is METRIC:
        return _METRIC
    return _CANADIAN if units.name == "Canadian" else _US
