"""A made-up house of twenty rooms with its heating, as the text of a job: what the budgets are set for."""

from __future__ import annotations

ROOMS = 20
HEAD = """format: 1
name: Twenty rooms
invented: yes
units: US
site: {outdoor: -2 °F, indoor: 70 °F, elevation: 300 ft}
constructions:
  wall: {kind: wall, u_value: U-0.09}
  glass: {kind: window, u_value: U-0.35}
  top: {kind: ceiling, u_value: U-0.03}
levels:
  ground: {wall_height: 9 ft, ceiling_height: 8 ft}
  upper: {wall_height: 9 ft, ceiling_height: 8 ft}
air: {changes: 0.5 ACH}
"""
SYSTEM = """zones:
  ground: {name: Ground floor}
  upper: {name: Upper floor}
plant:
  supply: 170 °F
  drop: 20 °F
  height: 18 ft
  boiler: {fuel: natural gas, kind: condensing, input: 100000 Btu/h, efficiency: 90 %, water: 3 gal,
           relief: 30 psi}
  tank: {volume: 4.4 gal, placed: pump suction}
  mains: {tube: copper-m-1, length: 40 ft}
  circulators:
    p1: {shutoff: 22 ft, middle_flow: 8 gpm, middle_head: 17 ft, high_flow: 16 gpm, high_head: 6 ft}
controls: {outdoor_reset: yes}
"""


def room(number: int) -> str:
    """One room with two walls and their windows."""
    level = "ground" if number < ROOMS // 2 else "upper"
    top = "" if level == "ground" else "\n      top: {construction: top, size: 14' × 12', beyond: outdoors}"
    return f"""  room-{number}:
    level: {level}
    size: 14' × 12'
    surfaces:
      long:
        {{construction: wall, length: 14 ft, beyond: outdoors, openings: {{
          w: {{construction: glass, size: 3' × {4 + number % 3}'}}}}}}
      short:
        {{construction: wall, length: 12 ft, beyond: outdoors, openings: {{
          w: {{construction: glass, size: 3' × 4', count: 2}}}}}}{top}
"""


def job_text(heating: bool = True) -> str:
    """The job: ten rooms of home runs below, ten in a series loop above."""
    text = HEAD + "rooms:\n" + "".join(room(each) for each in range(ROOMS))
    if not heating:
        return text
    text += "emitters:\n" + "".join(
        f"  base-{each}: {{room: room-{each}, kind: fin-tube baseboard, rating: 950 Btu/(h·ft), "
        f"length: {14 + each % 4} ft}}\n"
        for each in range(ROOMS)
    )
    runs = "".join(f"      base-{each}: {{length: {50 + 5 * each} ft}}\n" for each in range(ROOMS // 2))
    loop = "".join(
        f"      base-{each}: {{length: 10 ft, fittings: {{90-ell: 2}}}}\n"
        for each in range(ROOMS // 2, ROOMS)
    )
    return (
        text
        + "circuits:\n"
        + f"  home-runs:\n    kind: home-run manifold\n    zone: ground\n    tube: pex-1/2\n    runs:\n{runs}"
        + "  loop:\n    kind: series loop\n    zone: upper\n    tube: copper-m-3/4\n    length: 40 ft\n"
        + f"    runs:\n{loop}"
        + SYSTEM
    )
