"""The sequence of operation in plain words, from what this job has.

Safeties are wired in line with the burner. No word here says how to get round one.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from heatledger.job.system_model import Circuit, Plant
from heatledger.ledger.figures import Figure
from heatledger.steps.controls import asked_at
from heatledger.steps.said import Said, plain, say
from heatledger.steps.targets import CAUTION_LOCAL, burns

if TYPE_CHECKING:
    from heatledger.steps.design import Design

NEVER = "They stop it whatever is asked for, and are never bypassed, bridged or held, not even for a test."


def sequence_of(design: Design) -> list[Said]:
    """What happens from a call for heat to its end, in the order of events."""
    if not design.job.system.circuits and design.job.system.plant.boiler is None:
        return []
    return [*_calls(design), *_boiler(design), *_targets(design), *_ends(design), *_guards(design)]


def _calls(design: Design) -> Iterator[Said]:
    system = design.job.system
    for id, zone in system.zones.items():
        room = design.job.rooms.get(zone.thermostat)
        where = f" in {plain(room.name)}" if room is not None else ""
        yield say(f"Call: the thermostat{where} calls for zone {plain(zone.name)} when its room is too cool.")
        circuits = [each for each in system.circuits.values() if each.zone == id]
        for each in circuits:
            yield _answer(each, design)
    for circuit in system.circuits.values():
        if circuit.zone not in system.zones:
            yield _answer(circuit, design)
    if system.plant.boiler is not None:
        what = "any zone valve is open" if has_zone_valves(design) else "any zone calls"
        yield say(
            f"Boiler enable: while {what}, a dry contact lets the boiler run. It joins no two transformers."
        )


def _answer(circuit: Circuit, design: Design) -> Said:
    name = plain(circuit.name)
    pump = _pump(circuit, design)
    if circuit.common.valve is not None:
        return say(
            f"Valve: the zone valve of {name} opens. When it is fully open its end switch closes, and that "
            f"starts {pump}."
        )
    return say(f"Circulator: the call starts {pump}, which moves the water of {name}.")


def _pump(circuit: Circuit, design: Design) -> str:
    pumps = design.job.system.plant.circulators
    own = pumps.get(circuit.circulator) or (next(iter(pumps.values())) if len(pumps) == 1 else None)
    if own is None:
        return "its circulator"
    name = plain(own.name)
    return f"the {name.lower()}" if name.lower() == "circulator" else f"circulator {name}"


def has_zone_valves(design: Design) -> bool:
    """Whether any circuit opens by a zone valve."""
    return any(each.common.valve is not None for each in design.job.system.circuits.values())


def _boiler(design: Design) -> Iterator[Said]:
    boiler = design.job.system.plant.boiler
    if boiler is None:
        return
    lights, stops = ("the burner lights", "stops") if burns(boiler) else ("the elements come on", "go off")
    yield say(
        f"Firing: {lights} when the supply has fallen {{}} below its target, and {stops} at the target.",
        design.controls.controls.differential,
    )


def _targets(design: Design) -> Iterator[Said]:
    asked, found = design.job.system.controls, design.controls.controls
    if asked.outdoor_reset:
        points = list(found.reset.values())
        if points:
            cold, mild = points[0], points[-1]
            yield say(
                "Target: the supply follows the outdoor sensor. It is {} at {} outdoors and falls to {} at "
                "{}; the table gives the points between.",
                asked_at(cold), cold.outdoor, asked_at(mild), mild.outdoor,
            )  # fmt: skip
    elif design.job.system.plant.boiler is not None:
        held = "Target: the supply is held at {} in all weather."
        if asked.outdoor_reset is None:
            held = "Target: {} on the design day. Whether it follows the weather is not said yet."
        yield say(held, design.emitters.house.supply)
    if asked.outdoor_reset and found.least_supply is not None:
        yield say("Lowest target: the supply is never asked to be below {}.", found.least_supply)
    if asked.warm_weather_shutdown is not None:
        yield say(
            "Warm weather: above {} outdoors no call for space heat starts the boiler. Frost protection and "
            "hot water are never blocked by it.",
            found.shutdown,
        )
    if asked.setback is not None and float(asked.setback) > 0:
        yield say("Night: thermostats may be turned down by {}.", asked.setback)


def _ends(design: Design) -> Iterator[Said]:
    purge = design.job.system.controls.post_purge
    if design.job.system.plant.boiler is None:
        return
    stopped = "the last zone valve closes and" if has_zone_valves(design) else "the last call ends and"
    yield say(f"End: {stopped} the boiler is no longer enabled.")
    if purge is not None and float(purge) > 0:
        yield say(
            "After the fire: the circulator runs on for {} to carry the last heat out of the boiler.", purge
        )
    yield say(
        "Loss of power: boiler, circulators and valves stop. When power is back the calls start it again; a "
        "guard that has locked out waits for a person, who finds the cause first."
    )


def _guards(design: Design) -> Iterator[Said]:
    plant = design.job.system.plant
    if plant.boiler is None:
        return
    names, figures = _guard_names(plant)
    fire = "the burner" if burns(plant.boiler) else "the elements"
    yield Said(f"Guards: {_listed(names)} wired in line with {fire}. {NEVER} {CAUTION_LOCAL}", tuple(figures))
    if plant.low_water_cutoff is not True:
        yield say(f"A low-water cutoff is not shown in this job. {CAUTION_LOCAL}")


def _guard_names(plant: Plant) -> tuple[list[str], list[Figure]]:
    names, figures = [], []
    if plant.high_limit is not None:
        names.append("the high limit at {}")
        figures.append(plant.high_limit)
    else:
        names.append("the high limit")
    if plant.low_water_cutoff:
        names.append("the low-water cutoff")
    if burns(plant.boiler):
        names.append("the flame guard")
    return names, figures


def _listed(names: list[str]) -> str:
    """The names as a list with its verb."""
    if len(names) == 1:
        return f"{names[0]} is"
    return f"{', '.join(names[:-1])} and {names[-1]} are"
