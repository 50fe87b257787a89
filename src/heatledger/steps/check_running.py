"""Checks of the running system: pressures, balance, reset, zones, power failure, handing over."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from heatledger.ledger.figures import Figure
from heatledger.steps.controls import asked_at
from heatledger.steps.said import CheckStep, Said, plain, say
from heatledger.steps.targets import CAUTION_LOCAL, below_relief, drop_within, fill_within, supply_within

if TYPE_CHECKING:
    from heatledger.steps.design import Design

HOT = f"Pipes and water are hot enough to burn. {CAUTION_LOCAL}"


def running(design: Design) -> Iterator[CheckStep]:
    """Circulators, drops, balance, reset, zones, pressures, power failure, in order."""
    system, flowing = design.job.system, bool(design.job.system.circuits)
    yield CheckStep(
        "circulators", "Circulators",
        say("Prove rotation and speed; read the pressure across each where there are gauges."),
        say("Turns the right way; the pressure agrees with its curve."),
        f"Electricity: lock out and test dead before touching. {CAUTION_LOCAL}",
        bool(system.plant.circulators),
    )  # fmt: skip
    yield from _drops(design)
    runs = any(len(each.runs) > 1 and each.kind != "series loop" for each in system.circuits.values())
    yield CheckStep(
        "balance", "Balance",
        say("All valves open, steady water: set each run to its ΔT, from the hardest one on. Mark it."),
        _within(), HOT, runs,
    )  # fmt: skip
    yield from _reset(design)
    several = len(system.zones) > 1
    yield CheckStep(
        "zones", "Zones and end switches",
        say("Call each zone alone, then all at once." if several else "Call for heat, then end the call."),
        say("Only what is called gets warm; circulator and boiler start and stop with the calls."),
        "", bool(system.zones) or flowing,
    )  # fmt: skip
    yield from _pressures(design)
    yield CheckStep(
        "power-failure", "Loss of power",
        say("Switch the system off while it runs, and on again."),
        say("It stops, and starts again with the calls; a lockout waits for a person."),
        CAUTION_LOCAL, system.plant.boiler is not None,
    )  # fmt: skip


def _drops(design: Design) -> Iterator[CheckStep]:
    due = design.startup.startup
    yield CheckStep(
        "boiler-drop", "Temperature drop (ΔT) across the boiler",
        say(
            "At full fire read supply, return and, where there is a meter, flow: while the water warms, and "
            "again once it has settled."
        ),
        say(
            "Warming at full fire {}; settled {}; each within {} or {}.",
            due.fire_drop, due.settled_drop, *drop_within(),
        )
        if due.fire_drop is not None
        else say("Settled {} within {} or {}.", due.settled_drop, *drop_within()),
        HOT,
        design.job.system.plant.boiler is not None,
    )  # fmt: skip
    for id, each in due.circuits.items():
        yield CheckStep(
            f"drop-{id}", f"Temperature drop (ΔT) of {plain(each.name)}",
            say("Read its supply and return in steady running."),
            say("Temperature drop (ΔT) {}, return {}, at {}.", each.drop, each.return_, each.flow), HOT, True,
        )  # fmt: skip


def _within() -> Said:
    return say("Each temperature drop within {} or {} of its target, rooms at their setting.", *drop_within())


def _reset(design: Design) -> Iterator[CheckStep]:
    points = list(design.controls.controls.reset.values())
    asked = bool(design.job.system.controls.outdoor_reset)
    picked = [points[i] for i in sorted({0, len(points) // 2, len(points) - 1})] if points else []
    figures: list[Figure] = []
    for each in picked:
        figures += [each.outdoor, asked_at(each)]
    said = "; ".join("at {} outdoors {}" for _ in picked)
    yield CheckStep(
        "reset", "Outdoor reset at three points",
        say("Give the control three outdoor temperatures, or wait for three days, and read the supply."),
        Said(f"Asks for, within {{}}: {said}.", (supply_within(), *figures)), HOT, asked and bool(picked),
    )  # fmt: skip
    shutdown = design.controls.controls.shutdown
    yield CheckStep(
        "warm-weather", "Warm-weather shutdown",
        say("Give the control an outdoor temperature above {}.", shutdown),
        say("No call for space heat starts the boiler."), "",
        design.job.system.controls.warm_weather_shutdown is not None,
    )  # fmt: skip


def _pressures(design: Design) -> Iterator[CheckStep]:
    room, system = design.boiler_room.plant, design.job.system
    relief = system.plant.boiler.relief if system.plant.boiler is not None else None
    yield CheckStep(
        "hot-pressure", "Pressure hot and cold",
        say("Log the gauge at the hottest water, and again when all is cold."),
        say(
            "Hot near {}, and at least {} below the relief valve at {}; cold again {} within {}.",
            room.hot_pressure, below_relief(),
            relief if relief is not None else room.relief_pressure, room.fill_pressure, fill_within(),
        ),
        f"The relief valve discharges scalding water. {CAUTION_LOCAL}",
        system.plant.boiler is not None,
    )  # fmt: skip


def handing_over(design: Design) -> Iterator[CheckStep]:
    """What is left to do and to leave behind."""
    water = bool(design.job.system.circuits) or design.job.system.plant.boiler is not None
    yield CheckStep(
        "second-look", "Second look",
        say("After a day or two: listen for air, vent again, clean strainers, look at the cold pressure."),
        say("No sound of air, strainers clean, pressure as filled."), HOT, water,
    )  # fmt: skip
    yield CheckStep(
        "water-again", "Water again", say("After four to twelve weeks test the water again."),
        say("Within limits."), "", water,
    )  # fmt: skip
    yield CheckStep(
        "feed-valve", "Feed valve",
        say("Decide whether the water feed stays open or shut, and write it at the valve."),
        say("Open: with a meter or an alarm. Shut: with a proved low-water cutoff and a look every month."),
        f"Shut and unguarded, a boiler can fire dry. {CAUTION_LOCAL}", water,
    )  # fmt: skip
    yield CheckStep(
        "handover", "Records and handing over",
        say("Leave settings, sequence, control diagram, test slips, manuals and photos; show the owner."),
        say("The owner has them and has signed."), CAUTION_LOCAL, True,
    )  # fmt: skip
    yield CheckStep(
        "first-service", "First year's service",
        say("Combustion, tank charge, water, relief valve, low-water cutoff, strainers, settings."),
        say("Compared with the readings of this startup."), CAUTION_LOCAL, water,
    )  # fmt: skip
