"""A house with three kinds of emitters on which no finding on emitters stands; invented."""

from __future__ import annotations

from functools import cache
from typing import Any

from heatledger.job.model import Job
from tests.steps.heated_houses import house_text, panels, read

EMITTERS = (
    """
a-b: {room: a, kind: fin-tube baseboard, rating: 600 Btu/(h·ft), rated_water: 180 °F, rated_flow: 1 gpm,
  length: 13 ft}
b-b: {room: b, kind: fin-tube baseboard, rating: 600 Btu/(h·ft), rated_water: 180 °F, rated_flow: 1 gpm,
  length: 17 ft}
c-b: {room: c, kind: fin-tube baseboard, rating: 600 Btu/(h·ft), rated_water: 180 °F, rated_flow: 1 gpm,
  length: 12.5 ft}
"""
    + panels("d", 1800)
    + "\n"
    + panels("e", 1100)
    + """
f-i: {room: f, kind: cast-iron radiator, edr: 42 ft2}
"""
)
CIRCUITS = """
loop: {kind: series loop, zone: fins, drop: 15 °F, runs: {a-b: {}, b-b: {}, c-b: {}}}
panels: {kind: home-run manifold, zone: steel, runs: {d-p: {}, e-p: {}}}
iron: {kind: home-run manifold, zone: old, runs: {f-i: {}}}
"""
ZONES = """
zones: {fins: {thermostat: a}, steel: {thermostat: d}, old: {thermostat: f}}
"""
LOADS = {"a": 5000, "b": 6000, "c": 4000, "d": 5000, "e": 3000, "f": 5000}


@cache
def _house(text: str) -> Job:
    job = house_text(LOADS, EMITTERS, CIRCUITS, "  supply: 170 °F\n", ZONES + text)
    for id in "abc":
        job = job.replace(f"  {id}: {{level:", f"  {id}: {{free_wall: 20 ft, level:")
    return read(job)


def emitter_house(changes: list[dict[str, Any]] | None = None, text: str = "") -> Job:
    """The house, with changes laid over it and text put at the end of its file."""
    job = _house(text)
    return job.with_changes(changes) if changes else job
