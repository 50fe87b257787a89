"""Cases of the findings on piping and circulators: changes on an invented house, and those just beside."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any

from heatledger.job.model import Job
from tests.steps.heated_houses import BOILER, LOADS, MAINS, baseboards, house_text, panels, read

Changes = Iterable[Mapping[str, Any]]
QUIET_PUMP = """
  circulators:
    p1: {shutoff: 2.6 ft, middle_flow: 2 gpm, middle_head: 2 ft, high_flow: 5 gpm, high_head: 0.5 ft}
"""
TEXT = house_text(
    LOADS,
    baseboards("abc", 16) + "\n" + panels("de", 2200),
    """
loop: {kind: series loop, zone: one, tube: copper-m-3/4, length: 40 ft, fittings: {90-ell: 8},
  zone_valve: 5 Cv, runs: {a-b: {length: 20 ft}, b-b: {length: 15 ft}, c-b: {length: 25 ft}}}
panels: {kind: home-run manifold, zone: two, tube: copper-m-3/4, length: 10 ft, balanced: yes,
  zone_valve: 3 Cv, runs: {d-p: {tube: pex-1/2, length: 60 ft}, e-p: {tube: pex-1/2, length: 50 ft}}}
""",
    "  supply: 180 °F\n  tank: {volume: 4.4 gal, precharge: 12 psi, placed: pump suction}\n  height: 16 ft\n"
    "  fill: 15 psi\n" + MAINS.replace("length", "through: unheated/attic, length") + BOILER + QUIET_PUMP,
    "zones: {one: {thermostat: a}, two: {thermostat: d}}\n"
    "unheated: {attic: {name: Attic, volume: 1300 ft3, air: {changes: 0 ACH}, heat: 1500 Btu/h, surfaces: "
    "{roof: {construction: wall, area: 430 ft2, beyond: outdoors}}}}\n",
)


@dataclass(frozen=True, eq=False)
class PipingCase:
    """``fires`` and ``silent`` are laid over the house."""

    id: str
    where: str
    fires: Changes
    silent: Changes

    def job(self, fires: bool) -> Job:
        """The house with the changes laid over it."""
        return job_with(self.fires if fires else self.silent)


@cache
def plain() -> Job:
    """The house as it is."""
    return read(TEXT)


def job_with(changes: Changes) -> Job:
    """The house with changes."""
    listed = list(changes)
    return plain().with_changes(listed) if listed else plain()


def to(path: str, value: Any) -> Changes:
    return [{"set": path, "to": value}]


def pump(shutoff: float, middle: float, high: float, flow: float = 5) -> Changes:
    at = "plant/circulators/p1"
    return [
        {"set": f"{at}/shutoff", "to": f"{shutoff} ft"},
        {"set": f"{at}/middle_head", "to": f"{middle} ft"},
        {"set": f"{at}/middle_flow", "to": f"{flow * 2 / 5:.4f} gpm"},
        {"set": f"{at}/high_head", "to": f"{high} ft"},
        {"set": f"{at}/high_flow", "to": f"{flow} gpm"},
    ]


def second(shutoff: float) -> Changes:
    """A second circulator, which drives the panels."""
    other = {
        "shutoff": f"{shutoff} ft", "middle_flow": "2 gpm", "middle_head": f"{shutoff * 0.9} ft",
        "high_flow": "5 gpm", "high_head": f"{shutoff * 0.3} ft",
    }  # fmt: skip
    return [
        {"add": "plant/circulators/p2", "to": other},
        {"set": "circuits/loop/circulator", "to": "p1"},
        {"set": "circuits/panels/circulator", "to": "p2"},
    ]


LOOP, D, PANELS, P1 = "circuits/loop", "circuits/panels/runs/d-p", "circuits/panels", "plant/circulators/p1"
UNBALANCED = to("circuits/panels/balanced", False)
CASES = [
    PipingCase("pipe-too-fast", D, pump(30, 24, 9, 24), pump(20, 16, 6, 20)),
    PipingCase("pipe-rubs-much", LOOP, to(f"{LOOP}/flow", "4.6 gpm"), to(f"{LOOP}/flow", "4.5 gpm")),
    PipingCase("air-not-carried-down", LOOP, [], pump(14, 11, 4, 14)),
    PipingCase("header-too-small", "plant/mains", pump(14, 11, 4, 14), pump(8, 6.5, 2.5, 8)),
    PipingCase(
        "between-smooth-and-rough", "circuits/panels/runs/e-p",
        to("circuits/panels/runs/e-p/tube", "pex-3/4"), to("circuits/panels/runs/e-p/tube", "pex-5/8"),
    ),
    PipingCase("run-too-long", D, to(f"{D}/length", "301 ft"), to(f"{D}/length", "299 ft")),
    PipingCase(
        "loops-unequal-no-valves", PANELS, [*UNBALANCED, *to(f"{D}/length", "63 ft")],
        [*UNBALANCED, *to(f"{D}/length", "62 ft")],
    ),
    PipingCase(
        "nothing-to-balance-with", PANELS, [*UNBALANCED, *to(f"{D}/length", "150 ft")],
        [*UNBALANCED, *to(f"{D}/length", "70 ft")],
    ),
    PipingCase(
        "zone-valve-takes-much", PANELS, to("circuits/panels/zone_valve", "1.5 Cv"),
        to("circuits/panels/zone_valve", "1.6 Cv"),
    ),
    PipingCase("longest-run-starved", LOOP, pump(1.6, 1.3, 0.5), []),
    PipingCase("pump-too-big", P1, pump(3.6, 2.8, 0.7), []),
    PipingCase("pump-off-its-curve", P1, pump(2.6, 2.5, 2.3, 2.6), []),
    PipingCase("pump-toward-tank", "plant/tank", to("plant/tank/placed", "pump discharge"), []),
    PipingCase("one-zone-alone-fast", PANELS, pump(18, 14, 5, 18), pump(14, 11, 4, 14)),
    PipingCase(
        "one-zone-starves-boiler", "zones/two", to("plant/boiler/least_flow", "1.4 gpm"),
        to("plant/boiler/least_flow", "1.3 gpm"),
    ),
    PipingCase("valve-closes-with-bang", P1, pump(12.2, 9.7, 3.5, 12), pump(11.5, 9, 3, 12)),
    PipingCase("pumps-in-duel", P1, second(20), second(2.2)),
    PipingCase("twenty-degree-habit", LOOP, [], pump(2.9, 2.3, 0.7)),
    PipingCase(
        "pipe-in-the-frost", "plant/mains", to("unheated/attic/heat", "1300 Btu/h"),
        to("unheated/attic/heat", "1400 Btu/h"),
    ),
]  # fmt: skip
"""Each kind of finding once."""
