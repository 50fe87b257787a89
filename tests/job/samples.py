"""What the tests of the job share: the demo texts, a small sound job, and the broken samples."""

from __future__ import annotations

from importlib import resources
from pathlib import Path

from heatledger.job.errors import JobErrors
from heatledger.job.fields import Shape
from heatledger.job.load import read_job
from heatledger.job.model import Job
from heatledger.job.parsing import tree_of
from heatledger.job.text import plain
from heatledger.ledger.figures import Figure

BROKEN = Path(__file__).parent / "broken"
EXAMPLES = ("ferrow-house", "lerch-cottage")

SMALL = """\
format: 1
units: US
site: {outdoor: 0 °F, indoor: 70 °F, elevation: 40 ft}
constructions:
  wall: {kind: wall, u_value: U-0.09}
  window: {kind: window, u_value: U-0.35}
levels:
  ground: {wall_height: 9 ft, ceiling_height: 8 ft}
air: {changes: 0.5 ACH}
rooms:
  kitchen:
    level: ground
    size: 12' × 11'
    surfaces:
      north-wall:
        construction: wall
        length: 12'
        beyond: outdoors
        openings:
          w1: {construction: window, size: 2' × 4'}
      inner-wall: {construction: wall, area: 99 ft2, beyond: rooms/hall}
  hall:
    level: ground
    floor_area: 100 ft2
"""

SYSTEM = """\
emitters:
  kitchen-wall:
    {name: Baseboard under the window, room: kitchen, kind: fin-tube baseboard,
     rating: 580 Btu/(h·ft), length: 10 ft}
  hall-panel: {room: hall, kind: panel radiator, output: 1800 W, water: 1.5 gal}
  hall-iron: {room: hall, kind: cast-iron radiator, catalog: column-3-38, sections: 7}
zones:
  ground: {name: Ground floor, thermostat: kitchen}
circuits:
  loop:
    name: Ground loop
    kind: series loop
    zone: ground
    tube: copper-m-3/4
    length: 27 ft
    fittings: {90-ell: 4, tee-run: 2}
    zone_valve: 3.5 Cv
    runs:
      kitchen-wall: {length: 20 ft, fittings: {90-ell: 2}}
  spokes:
    kind: home-run manifold
    tube: copper-m-1
    length: 12 ft
    balanced: yes
    runs:
      hall-panel: {tube: pex-1/2, length: 62 ft, valve: 1.6 Cv}
      hall-iron: {tube: pex, length: 70 ft}
plant:
  supply: 160 °F
  drop: 20 °F
  height: 19 ft
  fill: 12 psi
  fill_water: 50 °F
  high_limit: 200 °F
  low_water_cutoff: yes
  boiler:
    {fuel: natural gas, kind: condensing, input: 50000 Btu/h, efficiency: 94 %, water: 2.6 gal,
     relief: 30 psi}
  tank: {volume: 4.4 gal, precharge: 12 psi, placed: pump suction}
  mains: {tube: copper-m-1, length: 41' 6", fittings: {90-ell: 8}, insulation: 3/4 in}
  circulators:
    p1:
      {shutoff: 20 ft, middle_flow: 10 gpm, middle_head: 16 ft, high_flow: 20 gpm, high_head: 6 ft,
       power: 60 W}
controls: {outdoor_reset: yes, mildest_supply: 90 °F, warm_weather_shutdown: 65 °F, post_purge: 3 min}
bills:
  winter: {fuel: oil, volume: 820 gal, efficiency: 80 %, degree_days: 6480 °F, base: 65 °F}
readings:
  outdoor: 18 °F
  return: 124 °F
  calling: ground
  combustion: {oxygen: 4.5 %, carbon_monoxide: 35 ppm, draft: -0.03 in. w.c., spillage: none}
codes: {adopted: to be asked, authority: town office}
"""
"""A heating system for the small job: every section, and one of each kind of circuit."""


def example(name: str) -> str:
    """Text of a job that travels with the package."""
    return resources.files("heatledger.examples").joinpath(f"{name}.yaml").read_text("utf-8")


def small(*changes: tuple[str, str], add: str = "") -> Job:
    """The small sound job with texts replaced and lines added."""
    text = SMALL
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new, 1)
    return read_job(text + add)


def heated(*changes: tuple[str, str], add: str = "") -> Job:
    """The small job with its heating system, texts replaced and lines added."""
    text = SMALL + SYSTEM
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new, 1)
    return read_job(text + add)


def shapes_below(shape: Shape, seen: dict[str, Shape]) -> dict[str, Shape]:
    """The shape and every one inside it, by name, put into ``seen``."""
    seen[shape.name] = shape
    for each in shape.fields:
        if each.shape is not None and each.shape.name not in seen:
            shapes_below(each.shape, seen)
    return seen


def si(figure: Figure | None) -> float:
    """The value of a figure that must be there, in SI."""
    assert figure is not None
    return float(figure)


def codes(errors: JobErrors) -> list[str]:
    """The codes of everything that is wrong."""
    return [each.code for each in errors.errors]


def added_rows(before: str, after: str) -> list[str]:
    """The rows that are new; every old one must still be there, in its order."""
    old = before.splitlines()
    found, i = [], 0
    for row in after.splitlines():
        if i < len(old) and row == old[i]:
            i += 1
        else:
            found.append(row)
    assert i == len(old)
    return found


def sample_index() -> dict[str, dict[str, object]]:
    """Code, and what-ifs to lay, of each broken sample by its file name."""
    return plain(tree_of((BROKEN / "index.yaml").read_text("utf-8")))  # type: ignore[no-any-return]
