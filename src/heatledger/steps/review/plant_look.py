"""What the findings on the boiler room share: cautions, and the boiler in another size."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from heatledger.job.system_model import Boiler, Plant
from heatledger.ledger import dimensions as d
from heatledger.ledger.findings import Finding
from heatledger.steps.boiler_room import PlantRoom
from heatledger.steps.review.kinds import Look, set_to
from heatledger.steps.targets import CAUTION_LOCAL

BOILER = "plant/boiler"
TANK = "plant/tank"
CARBON_MONOXIDE = "Flue gas that gets into a house kills: carbon monoxide has no smell."
BURST = "A boiler that cannot let its pressure off can burst and scald."
SCALD = "A relief valve that opens throws out water and steam that scald."


def cautioned(found: Finding, words: str) -> Finding:
    """The finding with what could hurt someone, and whose word holds."""
    return replace(found, caution=f"{words} {CAUTION_LOCAL}")


def plant_of(look: Look) -> Plant:
    """The boiler room as the job has it."""
    return look.house.job.system.plant


def boiler_of(look: Look) -> Boiler | None:
    """The boiler of the job, or None."""
    return plant_of(look).boiler


def room_of(look: Look) -> PlantRoom:
    """The boiler room as it follows from the job."""
    return look.design.boiler_room.plant


def resized(look: Look, boiler: Boiler, output: float, to: int) -> tuple[Mapping[str, Any], ...]:
    """Changes that give the boiler another output at the height of the site, its input in proportion.

    What is typed is rounded up with ``to`` 1, down with -1.
    """
    room = room_of(look)
    rated = output / float(1 if room.altitude_factor is None else room.altitude_factor)
    changes = [set_to(f"{BOILER}/output", look.text(rated, d.HEAT_RATE, to=to))]
    if boiler.input is not None and room.rated_output is not None and float(room.rated_output) > 0:
        fire = rated * float(boiler.input) / float(room.rated_output)
        changes.append(set_to(f"{BOILER}/input", look.text(fire, d.HEAT_RATE)))
    return tuple(changes)
