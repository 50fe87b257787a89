"""Ten sound houses, each invented, on which no finding may say that something must be fixed or decided."""

from __future__ import annotations

from functools import cache

from heatledger.job.load import read_job
from heatledger.job.model import Job

HEAD = """
format: 1
name: {name}
invented: yes
units: {units}
measured: inside
built: {built}
known: {known}
"""

RANCH = (
    HEAD.format(name="Slab ranch", units="US", built=2019, known="measured")
    + """
site: {outdoor: 4 °F, indoor: 70 °F, elevation: 700 ft, ground_temperature: 50 °F, ground_amplitude: 20 °F,
       soil_conductivity: 0.8 Btu/(h·ft·°F)}
heated_floor_area: 1120 ft2
constructions:
  wall: {kind: wall, catalog: frame-wall-2x6-r-21}
  window: {name: Double low-e wood window, kind: window, u_value: U-0.39}
  door: {kind: door, u_value: U-0.35}
  ceiling: {kind: ceiling, u_value: U-0.026}
  edge: {kind: slab edge, f_factor: 0.45 Btu/(h·ft·°F)}
levels: {main: {name: Main floor, wall_height: 8 ft, ceiling_height: 8 ft}}
air: {changes: 0.3 ACH}
rooms:
  living:
    {name: Living room, level: main, size: 20' × 16', surfaces: {
      south-wall: {construction: wall, length: 20', beyond: outdoors, openings: {
        windows: {construction: window, area: 12 ft2, count: 4}, door: {construction: door, area: 20 ft2}}},
      west-wall: {construction: wall, length: 16', beyond: outdoors},
      ceiling: {construction: ceiling, area: 320 ft2, beyond: outdoors}, edge: {construction: edge, length: 36'}}}
  kitchen:
    {name: Kitchen, level: main, size: 20' × 16', surfaces: {
      south-wall: {construction: wall, length: 20', beyond: outdoors, openings: {
        windows: {construction: window, area: 15 ft2, count: 2}, door: {construction: door, area: 20 ft2}}},
      east-wall: {construction: wall, length: 16', beyond: outdoors},
      ceiling: {construction: ceiling, area: 320 ft2, beyond: outdoors}, edge: {construction: edge, length: 36'}}}
  bedroom-1:
    {name: Bedroom 1, level: main, size: 20' × 12', surfaces: {
      north-wall: {construction: wall, length: 20', beyond: outdoors, openings: {
        windows: {construction: window, area: 12 ft2, count: 2}}},
      west-wall: {construction: wall, length: 12', beyond: outdoors},
      ceiling: {construction: ceiling, area: 240 ft2, beyond: outdoors}, edge: {construction: edge, length: 32'}}}
  bedroom-2:
    {name: Bedroom 2, level: main, size: 20' × 12', surfaces: {
      north-wall: {construction: wall, length: 20', beyond: outdoors, openings: {
        windows: {construction: window, area: 12 ft2, count: 2}}},
      east-wall: {construction: wall, length: 12', beyond: outdoors},
      ceiling: {construction: ceiling, area: 240 ft2, beyond: outdoors}, edge: {construction: edge, length: 32'}}}
"""
)

BRICK = (
    HEAD.format(name="Brick house of 1912 over a basement", units="US", built=1912, known="measured")
    + """
site: {outdoor: 2 °F, indoor: 70 °F, elevation: 250 ft, ground_temperature: 51 °F, ground_amplitude: 20 °F,
       soil_conductivity: 0.8 Btu/(h·ft·°F)}
heated_floor_area: 576 ft2
constructions:
  brick: {name: Solid brick with plaster, kind: wall, u_value: {is: U-0.22, known: told}}
  window: {name: Single glass and storm, kind: window, u_value: {is: U-0.51, known: told}}
  ceiling: {kind: ceiling, u_value: {is: U-0.05, known: told}}
  floor: {kind: floor, u_value: {is: U-0.25, known: told}}
  stone: {name: Stone above grade, kind: wall, u_value: U-0.50}
  buried: {kind: below-grade wall, r_value: R-1.6}
  slab: {kind: below-grade floor, r_value: R-1.5}
levels: {main: {name: Main floor, wall_height: 10 ft, ceiling_height: 9 ft}}
air: {changes: 0.6 ACH}
rooms:
  parlor:
    {name: Parlor, level: main, size: 18' × 16', surfaces: {
      north-wall: {construction: brick, length: 18', beyond: outdoors, openings: {
        w: {construction: window, area: 18 ft2, count: 2}}},
      west-wall: {construction: brick, length: 16', beyond: outdoors},
      east-wall: {construction: brick, length: 16', beyond: outdoors},
      ceiling: {construction: ceiling, area: 288 ft2, beyond: outdoors},
      floor: {construction: floor, area: 288 ft2, beyond: unheated/basement}}}
  kitchen:
    {name: Kitchen, level: main, size: 18' × 16', surfaces: {
      south-wall: {construction: brick, length: 18', beyond: outdoors, openings: {
        w: {construction: window, area: 15 ft2, count: 3}}},
      east-wall: {construction: brick, length: 16', beyond: outdoors},
      west-wall: {construction: brick, length: 16', beyond: outdoors},
      ceiling: {construction: ceiling, area: 288 ft2, beyond: outdoors},
      floor: {construction: floor, area: 288 ft2, beyond: unheated/basement}}}
unheated:
  basement:
    {name: Basement, floor_area: 576 ft2, ceiling_height: 7', air: {changes: 0.15 ACH}, heat: 900 Btu/h, surfaces: {
      above: {construction: stone, size: 100' × 1.5', beyond: outdoors},
      below: {construction: buried, length: 100', bottom: 5.5 ft},
      floor: {construction: slab, area: 576 ft2, width: 16', depth: 5.5 ft}}}
"""
)

CRAWL = (
    HEAD.format(name="Cottage over a crawlspace", units="US", built=1995, known="from plans")
    + """
site: {outdoor: 22 °F, indoor: 70 °F, elevation: 90 ft, ground_temperature: 56 °F, ground_amplitude: 15 °F,
       soil_conductivity: 0.8 Btu/(h·ft·°F)}
heated_floor_area: 480 ft2
constructions:
  wall: {kind: wall, catalog: frame-wall-2x4-r-13}
  window: {name: Double clear vinyl window, kind: window, u_value: U-0.50}
  ceiling: {kind: ceiling, u_value: U-0.032}
  floor: {name: Floor with R-25 batts, kind: floor, u_value: U-0.040}
  block: {kind: wall, catalog: block-wall-8-in-bare}
levels: {main: {name: Main floor, wall_height: 9 ft, ceiling_height: 8 ft}}
air: {changes: 0.4 ACH}
rooms:
  living:
    {name: Living room, level: main, size: 20' × 14', surfaces: {
      south-wall: {construction: wall, length: 20', beyond: outdoors, openings: {
        w: {construction: window, area: 14 ft2, count: 3}}},
      west-wall: {construction: wall, length: 14', beyond: outdoors},
      east-wall: {construction: wall, length: 14', beyond: outdoors},
      ceiling: {construction: ceiling, area: 280 ft2, beyond: outdoors},
      floor: {construction: floor, area: 280 ft2, beyond: unheated/crawl}}}
  bedroom:
    {name: Bedroom, level: main, size: 20' × 10', surfaces: {
      north-wall: {construction: wall, length: 20', beyond: outdoors, openings: {
        w: {construction: window, area: 12 ft2, count: 2}}},
      west-wall: {construction: wall, length: 10', beyond: outdoors},
      east-wall: {construction: wall, length: 10', beyond: outdoors},
      ceiling: {construction: ceiling, area: 200 ft2, beyond: outdoors},
      floor: {construction: floor, area: 200 ft2, beyond: unheated/crawl}}}
unheated:
  crawl:
    {name: Crawlspace, volume: 1200 ft3, air: {changes: 1 ACH}, surfaces: {
      block: {construction: block, size: 88' × 2.5', beyond: outdoors}}}
"""
)

METRIC = (
    HEAD.format(name="Row house in metric", units="metric", built=2004, known="from plans")
    + """
site: {outdoor: -10 °C, indoor: 20 °C, elevation: 120 m, ground_temperature: 10 °C, ground_amplitude: 8 K,
       soil_conductivity: 1.5 W/(m·K)}
heated_floor_area: 80 m2
constructions:
  wall: {kind: wall, u_value: 0.32 W/(m²·K)}
  window: {name: Double low-e window, kind: window, u_value: 1.9 W/(m²·K)}
  roof: {kind: ceiling, u_value: 0.20 W/(m²·K)}
  party: {kind: wall, u_value: 0.5 W/(m²·K)}
  edge: {kind: slab edge, f_factor: 0.8 W/(m·K)}
levels:
  ground: {name: Ground floor, wall_height: 2.8 m, ceiling_height: 2.5 m}
  upper: {name: Upper floor, wall_height: 2.5 m, ceiling_height: 2.5 m}
neighbors: {next: {name: House next door, temperature: 10 °C}}
air: {changes: 0.5 ACH}
rooms:
  living:
    {name: Living room, level: ground, size: 8 m × 5 m, surfaces: {
      south: {construction: wall, length: 5 m, beyond: outdoors, openings: {
        w: {construction: window, size: 1.5 m × 1.4 m, count: 2}}},
      north: {construction: wall, length: 5 m, beyond: outdoors, openings: {
        w: {construction: window, size: 1.2 m × 1.2 m}}},
      east-party: {construction: party, length: 8 m, beyond: neighbors/next},
      west: {construction: wall, length: 8 m, beyond: outdoors}, edge: {construction: edge, length: 18 m}}}
  bedroom:
    {name: Bedroom, level: upper, size: 5 m × 5 m, surfaces: {
      south: {construction: wall, length: 5 m, beyond: outdoors, openings: {
        w: {construction: window, size: 1.2 m × 1.2 m, count: 2}}},
      east-party: {construction: party, length: 5 m, beyond: neighbors/next},
      west: {construction: wall, length: 5 m, beyond: outdoors},
      roof: {construction: roof, area: 25 m2, beyond: outdoors}}}
  bath:
    {name: Bath, level: upper, size: 5 m × 3 m, indoor: 22 °C, habitable: no, surfaces: {
      north: {construction: wall, length: 5 m, beyond: outdoors, openings: {
        w: {construction: window, size: 0.6 m × 0.9 m}}},
      east-party: {construction: party, length: 3 m, beyond: neighbors/next},
      west: {construction: wall, length: 3 m, beyond: outdoors},
      partition: {construction: party, size: 5 m × 2.5 m, beyond: rooms/bedroom},
      roof: {construction: roof, area: 15 m2, beyond: outdoors}}}
"""
)

FLAT = (
    HEAD.format(name="Flat with neighbors all around", units="metric", built=1972, known="measured")
    + """
site: {outdoor: -8 °C, indoor: 20 °C, elevation: 60 m, ground_temperature: 10 °C, ground_amplitude: 8 K,
       soil_conductivity: 1.4 W/(m·K)}
heated_floor_area: 45 m2
constructions:
  wall: {kind: wall, u_value: 0.9 W/(m²·K)}
  window: {name: Double clear wood window, kind: window, u_value: 2.8 W/(m²·K)}
  slab: {name: Floor between dwellings, kind: floor, u_value: 1.2 W/(m²·K)}
  slab-over: {name: Ceiling between dwellings, kind: ceiling, u_value: 1.2 W/(m²·K)}
levels: {third: {name: Third floor, wall_height: 2.8 m, ceiling_height: 2.5 m}}
neighbors: {above: {temperature: 10 °C}, below: {temperature: 10 °C}}
air: {changes: 0.6 ACH}
rooms:
  room:
    {name: Room, level: third, size: 6 m × 5 m, surfaces: {
      south: {construction: wall, length: 6 m, beyond: outdoors, openings: {
        w: {construction: window, size: 1.8 m × 1.4 m, count: 2}}},
      floor: {construction: slab, area: 30 m2, beyond: neighbors/below},
      ceiling: {construction: slab-over, area: 30 m2, beyond: neighbors/above}}}
  kitchen:
    {name: Kitchen, level: third, size: 6 m × 2.5 m, surfaces: {
      north: {construction: wall, length: 6 m, beyond: outdoors, openings: {
        w: {construction: window, size: 1.2 m × 1.2 m}}},
      floor: {construction: slab, area: 15 m2, beyond: neighbors/below},
      ceiling: {construction: slab-over, area: 15 m2, beyond: neighbors/above}}}
"""
)

TINY = (
    HEAD.format(name="Cabin of one room", units="US", built=2021, known="measured")
    + """
site: {outdoor: 10 °F, indoor: 68 °F, elevation: 1500 ft, ground_temperature: 50 °F, ground_amplitude: 20 °F,
       soil_conductivity: 0.8 Btu/(h·ft·°F)}
heated_floor_area: 192 ft2
constructions:
  wall: {kind: wall, catalog: frame-wall-2x4-r-13-plus-5}
  window: {name: Triple low-e wood window, kind: window, u_value: U-0.30}
  roof: {kind: ceiling, u_value: U-0.03}
  floor: {kind: floor, u_value: U-0.04}
levels: {main: {name: Cabin, wall_height: 8 ft, ceiling_height: 8 ft}}
air: {changes: 0.35 ACH}
rooms:
  cabin:
    {name: Cabin, level: main, size: 16' × 12', surfaces: {
      north: {construction: wall, length: 16', beyond: outdoors},
      south: {construction: wall, length: 16', beyond: outdoors, openings: {w: {construction: window, area: 24 ft2}}},
      east: {construction: wall, length: 12', beyond: outdoors, openings: {w: {construction: window, area: 12 ft2}}},
      west: {construction: wall, length: 12', beyond: outdoors},
      roof: {construction: roof, area: 192 ft2, beyond: outdoors},
      floor: {construction: floor, area: 192 ft2, beyond: outdoors}}}
"""
)

HIGH = RANCH.replace("Slab ranch", "Slab ranch in the mountains").replace(
    "elevation: 700 ft", "elevation: 7200 ft"
)

GARAGE = (
    HEAD.format(name="Room over a garage", units="Canadian", built=2012, known="from plans")
    + """
site: {outdoor: -22 °C, indoor: 22 °C, elevation: 200 m, ground_temperature: 7 °C, ground_amplitude: 12 K,
       soil_conductivity: 1.4 W/(m·K)}
heated_floor_area: 72 m2
codes: {named: the code of the province, edition 2012}
constructions:
  wall: {kind: wall, catalog: frame-wall-2x6-r-21-plus-5}
  window: {name: Triple low-e vinyl window, kind: window, u_value: 1.6 W/(m²·K)}
  roof: {kind: ceiling, u_value: 0.12 W/(m²·K)}
  floor: {name: Insulated floor over the garage, kind: floor, u_value: 0.20 W/(m²·K)}
  edge: {kind: slab edge, f_factor: 0.7 W/(m·K)}
  bare: {kind: wall, u_value: 2.2 W/(m²·K)}
levels:
  ground: {name: Ground floor, wall_height: 2.8 m, ceiling_height: 2.44 m}
  upper: {name: Upper floor, wall_height: 2.44 m, ceiling_height: 2.44 m}
air: {changes: 0.3 ACH, known: measured}
rooms:
  living:
    {name: Living room, level: ground, floor_area: 40 m2, surfaces: {
      south-wall: {construction: wall, length: 8 m, beyond: outdoors, openings: {
        w: {construction: window, size: 1.8 m × 1.5 m, count: 2}}},
      north-wall: {construction: wall, length: 8 m, beyond: outdoors},
      east-wall: {construction: wall, length: 5 m, beyond: outdoors},
      west-wall: {construction: wall, length: 5 m, beyond: outdoors},
      edge: {construction: edge, length: 26 m}}}
  bedroom:
    {name: Room over the garage, level: upper, floor_area: 32 m2, surfaces: {
      south-wall: {construction: wall, length: 8 m, beyond: outdoors, openings: {
        w: {construction: window, size: 1.2 m × 1.2 m, count: 2}}},
      north-wall: {construction: wall, length: 8 m, beyond: outdoors},
      east-wall: {construction: wall, length: 4 m, beyond: outdoors},
      west-wall: {construction: wall, length: 4 m, beyond: outdoors},
      roof: {construction: roof, area: 32 m2, beyond: outdoors},
      floor: {construction: floor, area: 32 m2, beyond: unheated/garage}}}
unheated:
  garage:
    {name: Garage, floor_area: 32 m2, ceiling_height: 2.5 m, air: {changes: 2 ACH}, surfaces: {
      walls: {construction: bare, area: 50 m2, beyond: outdoors}, edge: {construction: edge, length: 24 m}}}
"""
)

OFFICE = (
    HEAD.format(name="House of twenty rooms", units="US", built=1988, known="from plans")
    + """
site: {outdoor: 5 °F, indoor: 70 °F, elevation: 480 ft, ground_temperature: 51 °F, ground_amplitude: 19 °F,
       soil_conductivity: 0.8 Btu/(h·ft·°F)}
heated_floor_area: 3600 ft2
constructions:
  wall: {kind: wall, catalog: frame-wall-2x6-r-19}
  window: {name: Double low-e aluminum break window, kind: window, u_value: U-0.42}
  ceiling: {kind: ceiling, u_value: U-0.03}
  floor: {kind: floor, u_value: U-0.05}
  block: {kind: wall, catalog: block-wall-8-in-bare}
  buried: {kind: below-grade wall, r_value: R-2}
  slab: {kind: below-grade floor, r_value: R-1.5}
levels: {one: {name: First floor, wall_height: 9 ft, ceiling_height: 8 ft},
         two: {name: Second floor, wall_height: 8 ft, ceiling_height: 8 ft}}
air: {changes: 0.45 ACH}
rooms:
"""
)


def _of_twenty() -> str:
    """Two rows of ten rooms, 18 ft by 10 ft: five to the north and five to the south on either storey."""
    lines = []
    for level in ("one", "two"):
        for i in range(10):
            side, end = "north" if i < 5 else "south", {0: "west", 5: "west", 4: "east", 9: "east"}.get(i, "")
            walls = [
                f"{side}-wall: {{construction: wall, length: 10', beyond: outdoors, openings: {{w: "
                "{construction: window, area: 15 ft2}}}"
            ]
            if end:
                walls.append(f"{end}-wall: {{construction: wall, length: 18', beyond: outdoors}}")
            over = {
                "one": "floor: {construction: floor, area: 180 ft2, beyond: unheated/basement}",
                "two": "ceiling: {construction: ceiling, area: 180 ft2, beyond: outdoors}",
            }[level]
            lines.append(
                f"  room-{level}-{i}: {{level: {level}, size: 18' × 10', surfaces: "
                f"{{{', '.join([*walls, over])}}}}}"
            )
    return "\n".join(lines)


TWENTY = (
    OFFICE
    + _of_twenty()
    + """
unheated:
  basement:
    {name: Basement, floor_area: 1800 ft2, ceiling_height: 8', air: {changes: 0.1 ACH}, surfaces: {
      above: {construction: block, size: 172' × 1.5', beyond: outdoors},
      below: {construction: buried, length: 172', bottom: 6.5 ft},
      floor: {construction: slab, area: 1800 ft2, width: 36', depth: 6.5 ft}}}
"""
)

ATTIC = (
    HEAD.format(name="Old frame house, two storeys and an attic", units="US", built=1935, known="measured")
    + """
site: {outdoor: 12 °F, indoor: 70 °F, elevation: 300 ft, ground_temperature: 53 °F, ground_amplitude: 18 °F,
       soil_conductivity: 0.8 Btu/(h·ft·°F)}
heated_floor_area: 720 ft2
constructions:
  wall: {kind: wall, catalog: frame-wall-2x4-empty}
  window: {name: Single glass and storm, kind: window, u_value: U-0.51}
  ceiling: {kind: ceiling, u_value: U-0.06}
  roof: {kind: ceiling, u_value: U-0.50}
  edge: {kind: slab edge, f_factor: 0.58 Btu/(h·ft·°F)}
levels: {one: {name: First floor, wall_height: 9 ft, ceiling_height: 8 ft},
         two: {name: Second floor, wall_height: 8 ft, ceiling_height: 8 ft}}
air: {changes: 0.7 ACH}
expectations: {bills: {of: house/loss, about: "27,000 Btu/h", within: 15 %}}
rooms:
  living:
    {name: Living room, level: one, size: 24' × 15', surfaces: {
      north: {construction: wall, length: 24', beyond: outdoors},
      south: {construction: wall, length: 24', beyond: outdoors, openings: {w: {construction: window, area: 16 ft2, count: 3}}},
      east: {construction: wall, length: 15', beyond: outdoors, openings: {w: {construction: window, area: 14 ft2}}},
      west: {construction: wall, length: 15', beyond: outdoors}, edge: {construction: edge, length: 78'}}}
  bedroom:
    {name: Bedroom, level: two, size: 24' × 15', surfaces: {
      north: {construction: wall, length: 24', beyond: outdoors},
      south: {construction: wall, length: 24', beyond: outdoors, openings: {w: {construction: window, area: 14 ft2, count: 2}}},
      east: {construction: wall, length: 15', beyond: outdoors},
      west: {construction: wall, length: 15', beyond: outdoors},
      ceiling: {construction: ceiling, area: 360 ft2, beyond: unheated/attic}}}
unheated:
  attic: {name: Attic, volume: 1300 ft3, air: {changes: 10 ACH}, surfaces: {
    roof: {construction: roof, area: 430 ft2, beyond: outdoors}}}
"""
)

TEXTS = {
    "ranch": RANCH, "brick": BRICK, "crawl": CRAWL, "metric": METRIC, "flat": FLAT, "tiny": TINY, "high": HIGH,
    "garage": GARAGE, "twenty": TWENTY, "attic": ATTIC,
}  # fmt: skip
NOTES: dict[str, set[str]] = {"high": {"altitude-counts"}}
"""Notes that may stand on a sound house; everything else is silent."""


@cache
def house(name: str) -> Job:
    """One of the ten, read."""
    return read_job(TEXTS[name], f"{name}.yaml")
