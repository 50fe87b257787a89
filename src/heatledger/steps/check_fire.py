"""Checks with the fire lit: fuel, guards, combustion, draft, carbon monoxide."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from heatledger.job.system_model import Boiler
from heatledger.steps.said import CheckStep, Said, say
from heatledger.steps.targets import (
    CAUTION_LOCAL,
    OIL,
    burns,
    draft_band,
    flue_carbon_monoxide,
    flue_carbon_monoxide_stop,
    input_within,
    is_drafted,
    oxygen_band,
    room_carbon_monoxide,
)

if TYPE_CHECKING:
    from heatledger.steps.design import Design

POISON = f"Carbon monoxide kills without a smell: shut off, air the house, leave first. {CAUTION_LOCAL}"
GAS_LEAK = (
    "Smell of gas: leave, touch no switch, call from outside. Propane lies in low places. Work on gas is for "
    f"those licensed for it. {CAUTION_LOCAL}"
)
OIL_SPILL = f"Oil: mend every leak and have the safety valves at tank and burner in place. {CAUTION_LOCAL}"
SHOCK = f"Electricity: lock out and test dead before touching. {CAUTION_LOCAL}"
NO_BRIDGE = (
    f"Guards are proved by their own working; none is bypassed, bridged or held, ever. {CAUTION_LOCAL}"
)
SCALD = f"Hot water and steam: keep hands and faces away from the end of the pipe. {CAUTION_LOCAL}"


def with_the_fire(design: Design) -> Iterator[CheckStep]:
    """Fuel, power, air and vent, guards, first fire, combustion, draft and carbon monoxide, in order."""
    boiler = design.job.system.plant.boiler
    if boiler is None:
        return
    fire, oil = burns(boiler), boiler.fuel == OIL
    yield CheckStep(
        "gas-supply", "Gas supply",
        say(
            "A licensed fitter proves the gas pipe tight and clears it of air to a safe place. Gas pressure "
            "is read standing and at full fire."
        ),
        say("No fall in the tightness test; both pressures within the boiler's plate."), GAS_LEAK,
        fire and not oil,
    )  # fmt: skip
    yield CheckStep(
        "oil-supply", "Oil supply",
        say("Look over tank, line, filter and valves; read the vacuum at the burner's pump."),
        say("No leak; vacuum within what the pump's maker allows."), OIL_SPILL, oil,
    )  # fmt: skip
    yield CheckStep(
        "electrical", "Electrical",
        say("A licensed electrician proves polarity, ground, voltage, fuse and each circulator's current."),
        say("Voltage and currents within the plates."), SHOCK, True,
    )  # fmt: skip
    yield CheckStep(
        "elements", "Elements",
        say("Read the current of each element bank as it comes on."),
        say("Within the plate, and none comes on without flow."), SHOCK, not fire,
    )  # fmt: skip
    yield CheckStep(
        "vent-and-air", "Vent and air for the fire",
        say("Look at slope, joints, terminal and clearances of the vent, and at the openings for air."),
        say("As drawn and as the maker asks; nothing stored in front of the openings."), POISON, fire,
    )  # fmt: skip
    yield CheckStep(
        "condensate", "Condensate trap and drain",
        say("Fill the trap and run water through the drain; look for places that freeze, and a neutralizer."),
        say("The trap holds water and the drain runs free."),
        f"An empty trap lets flue gas into the room. {CAUTION_LOCAL}", boiler.kind == "condensing",
    )  # fmt: skip
    yield from _guards(design, boiler)
    yield from _fire(boiler)


def _guards(design: Design, boiler: Boiler) -> Iterator[CheckStep]:
    plant, room = design.job.system.plant, design.boiler_room.plant
    fire = "the fire goes out" if burns(boiler) else "the elements go off"
    yield CheckStep(
        "relief", "Relief valve",
        say("Cold, and the discharge clear of people: lift the lever once if the maker allows it."),
        say("Set for {}; it seats again without a drip.", room.relief_pressure), SCALD, True,
    )  # fmt: skip
    yield CheckStep(
        "first-fire", "First fire and warm-up",
        say("With the fuel shut by hand see it lock out; then light it as its maker says and warm slowly.")
        if burns(boiler)
        else say("Switch it on as its maker says and warm the water slowly."),
        say("Runs steadily; no leak as it warms."), POISON if burns(boiler) else SHOCK, True,
    )  # fmt: skip
    yield CheckStep(
        "flame-guard", "Flame guard and fuel valve",
        say("Close the fuel valve by hand while it burns."),
        say("The burner locks out in the time its maker gives and waits for a person."), NO_BRIDGE,
        burns(boiler),
    )  # fmt: skip
    yield CheckStep(
        "low-water", "Low-water cutoff",
        say("With the burner lit, use its test button or drain it as its maker says."),
        say(f"{fire[:1].upper()}{fire[1:]}, and a hand has to set it again."), NO_BRIDGE,
        plant.low_water_cutoff is not False,
    )  # fmt: skip
    limit = plant.high_limit
    yield CheckStep(
        "high-limit", "High limit",
        say("With the burner lit, turn it below the temperature of the water; then back to its setting."),
        say(f"{fire[:1].upper()}{fire[1:]}.")
        if limit is None
        else say(f"{fire[:1].upper()}{fire[1:]}. Put back to {{}}.", limit),
        NO_BRIDGE, True,
    )  # fmt: skip


def _fire(boiler: Boiler) -> Iterator[CheckStep]:
    fire = burns(boiler)
    yield CheckStep(
        "combustion", "Combustion, high fire and low fire",
        say("Analyzer between boiler and draft regulator: oxygen, carbon monoxide, stack; leave the slip."),
        _combustion(boiler), POISON, fire,
    )  # fmt: skip
    weak, strong = draft_band()
    yield CheckStep(
        "spillage", "Draft, spillage, carbon monoxide in the room",
        say("Close the house, run every fan and the dryer; five minutes of fire, then look and measure."),
        say(
            "No spillage. Draft from {} to {} where a chimney draws. Room below {}. Else shut down.",
            weak, strong, room_carbon_monoxide(),
        )
        if is_drafted(boiler)
        else say(
            "No flue gas in the room, vent pressure within its listing, room below {}. Else shut down.",
            room_carbon_monoxide(),
        ),
        POISON, fire,
    )  # fmt: skip
    yield CheckStep(
        "input", "Input by the meter",
        say("All other gas off: time the meter and work out the input."),
        say("Within {} of the plate, altitude counted; never above it.", input_within()), GAS_LEAK,
        fire and boiler.fuel == "natural gas",
    )  # fmt: skip
    yield CheckStep(
        "alarms", "Carbon monoxide alarms",
        say("Press the button of each: outside every sleeping area and on every floor."),
        say("All sound and are in date."), POISON, fire,
    )  # fmt: skip


def _combustion(boiler: Boiler) -> Said:
    low, high = oxygen_band(boiler)
    smoke = " No smoke." if boiler.fuel == OIL else ""
    hood = " A power burner sits at the low end, a draft hood at the high end." if float(high) > 0.08 else ""
    return say(
        f"Oxygen from {{}} to {{}}, the maker's sheet first.{hood}{smoke} Carbon monoxide, air free, at most "
        "{}; above {}, or rising, shut down and tag.",
        low, high, flue_carbon_monoxide(), flue_carbon_monoxide_stop(),
    )  # fmt: skip
