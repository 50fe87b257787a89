"""Whether a boiler may be left running: only when its fire, draft and room were measured and are clean."""

from __future__ import annotations

from heatledger.job.model import Job
from heatledger.job.system_model import Combustion, Readings
from heatledger.ledger.figures import exceeds
from heatledger.physics.startup import air_free_carbon_monoxide
from heatledger.steps.targets import burns, flue_carbon_monoxide_stop, room_carbon_monoxide

PLAIN_AIR = 0.205
"""Oxygen from which on an analyzer has air before it and no flue gas."""


def waits_of(job: Job) -> tuple[str, ...]:
    """What must be measured, or mended, before the boiler may be left running; empty when it may."""
    boiler, fire = job.system.plant.boiler, job.system.readings.combustion
    if boiler is None:
        return ("a boiler",)
    if not burns(boiler):
        return ()
    waits = [
        words
        for words, given in (
            ("oxygen in the flue gas", fire.oxygen),
            ("carbon monoxide in the flue gas", fire.carbon_monoxide),
            ("draft", fire.draft),
        )
        if given is None or given.is_missing
    ]
    if fire.spillage != "none":
        waits.append("a look for spilled flue gas" if not fire.spillage else "an end to the spilled flue gas")
    return (*waits, *_poison(fire))


def _poison(fire: Combustion) -> tuple[str, ...]:
    """Carbon monoxide that was found and must be gone first."""
    waits = []
    if fire.oxygen is not None and fire.carbon_monoxide is not None:
        found = air_free_carbon_monoxide(measured=fire.carbon_monoxide, oxygen=fire.oxygen)
        if exceeds(found, flue_carbon_monoxide_stop()) or float(fire.oxygen) >= PLAIN_AIR:
            waits.append("a fire without so much carbon monoxide")
    if fire.room_carbon_monoxide is not None and exceeds(fire.room_carbon_monoxide, room_carbon_monoxide()):
        waits.append("a room without carbon monoxide")
    return tuple(waits)


def has_fired(read: Readings) -> bool:
    """True when something was read that only a lit boiler shows."""
    fire = read.combustion
    some = (
        read.supply, read.return_, read.hot_pressure, fire.oxygen, fire.carbon_monoxide, fire.draft,
        fire.stack, fire.room_carbon_monoxide,
    )  # fmt: skip
    return any(each is not None for each in some) or bool(fire.spillage)


def is_filled(read: Readings) -> bool:
    """True when something was read that only a filled system shows."""
    return has_fired(read) or any(each is not None for each in (read.cold_pressure, read.flow))
