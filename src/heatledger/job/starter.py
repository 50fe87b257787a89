"""A commented job to start from, which can be designed as it stands."""

from __future__ import annotations

from heatledger.ledger.presets import METRIC, Preset

_TEXT = """\
# A job for Heatledger. It can be designed as it stands; change it line by line to your house.
# Write values as in a notebook: {length}, {size}, {u_value}, {warm}.
# What you do not know yet may be left empty: it is listed as missing, never guessed.
format: 1
name: New house
address:                       # printed on every paper
prepared_by:
date:
units: {units}                      # how a number without a unit is read: US, metric or Canadian
edition: 2026                  # of the published methods and tables; 2026 is the only one so far
measured: inside               # or outside: where the tape was held. It is printed, and nothing is
                               # converted: sizes count as they are typed
known: assumed                 # measured, from plans, told or assumed; say it here, or beside a value:
                               #   {{is: {u_value}, known: from plans, within: 10 %, because: label}}

site:
  place: Somewhere
  outdoor: {cold}                # outdoor design temperature; ask the local code office
  indoor: {warm}                 # for every room that does not say otherwise
  elevation: {elevation}
  ground_temperature: {ground}     # mean of the year; needed only below grade
  ground_amplitude: {swing}
  soil_conductivity: {soil}

# Whole assemblies with their films. `catalog: NAME` takes one from the tables instead.
constructions:
  wall: {{name: Outside wall, kind: wall, u_value: {u_value}}}
  ceiling: {{name: Ceiling below the attic, kind: ceiling, u_value: {u_ceiling}}}
  window: {{name: Window, kind: window, u_value: {u_window}}}
  door: {{name: Outside door, kind: door, u_value: {u_door}}}
  slab: {{name: Slab edge, kind: slab edge, f_factor: {f_factor}}}

levels:
  ground: {{name: Ground floor, wall_height: {wall_height}, ceiling_height: {ceiling_height}}}

air: {{changes: 0.5 ACH}}        # one rate for all rooms; a room may have its own, or
                               # {{exposed_sides: 2}} to take the rate from its outside walls

# The key of each thing is its id and stays as it is; `name` is what is shown.
rooms:
  living:
    name: Living room
    level: ground
    size: {size}
    surfaces:
      south-wall:
        construction: wall
        length: {length}           # the height is that of the level
        beyond: outdoors       # or rooms/ID, unheated/ID, neighbors/ID
        openings:
          window: {{construction: window, size: {window}, count: 2}}
          door: {{construction: door, size: {door}}}
      west-wall:
        construction: wall
        length: {side}
        beyond: outdoors
      ceiling:
        construction: ceiling
        size: {size}
        beyond: outdoors
      edge:
        construction: slab
        length: {edge}         # of the slab that meets the outdoors
        beyond: outdoors

# Other parts a job may have: unheated, neighbors, expectations, decisions, limits, ranges; and for the
# heating emitters, zones, circuits, plant, controls, bills, readings.
what-ifs:
  better-windows:
    name: Better windows
    changes: [{{set: constructions/window/u_value, to: {u_better}}}]
"""

_US = {
    "units": "US", "length": "16' 6\"", "size": "16' 6\" × 12' 0\"", "side": "12' 0\"", "edge": "28' 6\"",
    "u_value": "U-0.080", "u_ceiling": "U-0.033", "u_window": "U-0.35", "u_door": "U-0.40",
    "u_better": "U-0.22", "f_factor": "0.73 Btu/(h·ft·°F)", "warm": "70 °F", "cold": "10 °F",
    "elevation": "300 ft", "ground": "50 °F", "swing": "18 °F", "soil": "0.8 Btu/(h·ft·°F)",
    "wall_height": "9' 0\"", "ceiling_height": "8' 0\"", "window": "3' 0\" × 4' 6\"",
    "door": "3' 0\" × 6' 8\"",
}  # fmt: skip
_METRIC = {
    "units": "metric", "length": "5.00 m", "size": "5.00 m × 3.60 m", "side": "3.60 m", "edge": "8.60 m",
    "u_value": "0.45 W/(m²·K)", "u_ceiling": "0.19 W/(m²·K)", "u_window": "2.0 W/(m²·K)",
    "u_door": "2.3 W/(m²·K)", "u_better": "1.2 W/(m²·K)", "f_factor": "1.26 W/(m·K)", "warm": "21 °C",
    "cold": "-12 °C", "elevation": "90 m", "ground": "10 °C", "swing": "10 K", "soil": "1.4 W/(m·K)",
    "wall_height": "2.75 m", "ceiling_height": "2.45 m", "window": "0.90 m × 1.40 m",
    "door": "0.90 m × 2.05 m",
}  # fmt: skip


def starter_job(units: Preset) -> str:
    """The text of a job to start from, in the words of one reader (US, metric or Canadian)."""
    if units is METRIC:
        return _TEXT.format(**_METRIC)
    words = dict(_US)
    if units.name == "Canadian":
        words |= {"units": "Canadian", "warm": "21 °C", "cold": "-12 °C", "ground": "10 °C", "swing": "10 K"}
    return _TEXT.format(**words)
