"""Invented houses with heating systems: plain rooms whose windows set the load, and piping to match."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from textwrap import indent

from heatledger.job.load import read_job
from heatledger.job.model import Job
from heatledger.steps.circuits import Circuits, circuits
from heatledger.steps.emitters import Emitters, emitters
from heatledger.steps.losses import heat_losses

PUMP = """
  circulators:
    p1: {shutoff: 20 ft, middle_flow: 10 gpm, middle_head: 16 ft, high_flow: 20 gpm, high_head: 6 ft}
"""
MAINS = """
  mains: {tube: copper-m-1, length: 30 ft, fittings: {90-ell: 4}}
"""
BOILER = """
  boiler: {fuel: natural gas, kind: condensing, output: 40000 Btu/h, rated_flow: 8 gpm, rated_head: 4 ft}
"""


def house_text(loads: Mapping[str, int], emitters: str, circuits: str, plant: str, more: str = "") -> str:
    """A job whose rooms lose these heats, in Btu/h: each by one wall against 70 °F less."""
    rooms = "\n".join(
        f"  {id}: {{level: ground, floor_area: 200 ft2, air: {{changes: 0 ACH}}, surfaces: "
        f"{{wall: {{construction: wall, area: {load / 70 / 0.1:.4f} ft2, beyond: outdoors}}}}}}"
        for id, load in loads.items()
    )
    return (
        "format: 1\nname: Invented\nunits: US\nsite: {outdoor: 0 °F, indoor: 70 °F, elevation: 0 ft}\n"
        "levels: {ground: {ceiling_height: 8 ft, wall_height: 9 ft}}\n"
        f"constructions:\n  wall: {{kind: wall, u_value: 0.1}}\nrooms:\n{rooms}\n"
        f"emitters:\n{indent(emitters, '  ')}\ncircuits:\n{indent(circuits, '  ')}\nplant:\n{plant}\n{more}"
    )


def baseboards(rooms: Sequence[str], feet: float = 12) -> str:
    """A fin-tube baseboard in each of these rooms, of the id of its room with -b."""
    return "\n".join(
        f"{id}-b: {{room: {id}, kind: fin-tube baseboard, rating: 600 Btu/(h·ft), rated_water: 180 °F, "
        f"rated_flow: 1 gpm, length: {feet:g} ft}}"
        for id in rooms
    )


def panels(rooms: Sequence[str], watts: int = 1500) -> str:
    """A panel radiator in each of these rooms, of the id of its room with -p."""
    return "\n".join(
        f"{id}-p: {{room: {id}, kind: panel radiator, output: {watts} W, rated_supply: 75 °C, "
        f"rated_return: 65 °C, rated_air: 20 °C, exponent: 1.3}}"
        for id in rooms
    )


def steps_of(job: Job, since: Circuits | None = None) -> tuple[Emitters, Circuits]:
    """Emitters and circuits of a job."""
    heat = emitters(job, heat_losses(job))
    return heat, circuits(job, heat, since)


def read(text: str) -> Job:
    """The job of a text."""
    return read_job(text, "invented.yaml")


LOADS = {"a": 5000, "b": 6000, "c": 4000, "d": 5000, "e": 3000}
TWO_CIRCUITS = house_text(
    LOADS,
    baseboards("abc") + "\n" + panels("de"),
    """
loop: {kind: series loop, tube: copper-m-3/4, length: 40 ft, fittings: {90-ell: 8}, zone_valve: 3.5 Cv,
  runs: {a-b: {length: 20 ft}, b-b: {length: 15 ft}, c-b: {length: 25 ft}}}
panels: {kind: home-run manifold, tube: copper-m-3/4, length: 10 ft, balanced: yes,
  runs: {d-p: {tube: pex-1/2, length: 60 ft, fittings: {coupling: 2}}, e-p: {tube: pex, length: 30 ft}}}
""",
    "  supply: 180 °F\n" + MAINS + BOILER + PUMP,
)
