"""Whether a boiler may be left running: only when its fire, draft and room were measured and are clean."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from math import isnan

from heatledger.job.errors import JobErrors
from heatledger.job.model import Job
from heatledger.job.system_model import Boiler, Readings
from heatledger.ledger.figures import Figure
from heatledger.physics.startup import air_free_carbon_monoxide
from heatledger.steps.targets import (
    burns,
    draft_band,
    flue_carbon_monoxide,
    flue_carbon_monoxide_stop,
    is_drafted,
    oxygen_band,
    oxygen_most,
    room_carbon_monoxide,
)

PLAIN_AIR = 0.205
"""Oxygen from which on an analyzer has air before it and no flue gas."""


def waits_of(job: Job) -> tuple[str, ...]:
    """What must be measured, or mended, before the boiler may be left running; empty when it may."""
    boiler, fire = job.system.plant.boiler, job.system.readings.combustion
    if boiler is None:
        return ("a boiler", *_poison(job))
    if not burns(boiler):
        return tuple(_poison(job))
    waits = [
        words
        for words, given in (
            ("oxygen in the flue gas", fire.oxygen),
            ("carbon monoxide in the flue gas", fire.carbon_monoxide),
            ("draft", fire.draft),
            ("carbon monoxide in the room", fire.room_carbon_monoxide),
        )
        if given is None or given.is_missing
    ]
    if not fire.spillage:
        waits.append("a look for spilled flue gas")
    return (*waits, *_unclean(job, boiler), *_poison(job))


def poison_of(job: Job) -> tuple[str, ...]:
    """Flue gas or carbon monoxide that was read and must be gone before anything runs; empty for none.

    The readings are believed whatever the job says of its boiler.
    """
    return tuple(_poison(job))


def _unclean(job: Job, boiler: Boiler) -> Iterator[str]:
    """What the fire and its draft are not yet, though they were read."""
    fire = job.system.readings.combustion
    if _is_read(fire.oxygen) and fire.oxygen is not None:
        low, high = oxygen_band(boiler)
        least = _strictest(job, "oxygen-out-of-band", low, max)
        hooded = float(high) > float(oxygen_most())
        most = _strictest(job, f"oxygen-out-of-band-{'hood' if hooded else 'most'}", high, min)
        if not least <= float(fire.oxygen) <= most:
            yield "oxygen inside its band"
    monoxide = _air_free(job)
    if monoxide is not None and not _is_plain_air(job):
        clean = _strictest(job, "co-in-flue-high", flue_carbon_monoxide(), min)
        stop = _strictest(job, "co-in-flue-high-stop", flue_carbon_monoxide_stop(), min)
        if clean < monoxide <= stop:
            yield "carbon monoxide in the flue gas below its target"
    if is_drafted(boiler) and _is_read(fire.draft) and fire.draft is not None:
        weak, strong = draft_band()
        weakest = _strictest(job, "flue-gas-spills", weak, min)
        if not float(strong) <= float(fire.draft) <= weakest:
            yield "a draft inside its band"


def _poison(job: Job) -> Iterator[str]:
    """Spilled flue gas and carbon monoxide that were found and must be gone first."""
    fire = job.system.readings.combustion
    if fire.spillage not in ("", "none"):
        yield "an end to the spilled flue gas"
    monoxide = _air_free(job)
    stop = _strictest(job, "co-in-flue-high-stop", flue_carbon_monoxide_stop(), min)
    if _is_plain_air(job) or (monoxide is not None and monoxide > stop):
        yield "a fire without so much carbon monoxide"
    room = fire.room_carbon_monoxide
    if room is not None and float(room) > _strictest(job, "room-co-found", room_carbon_monoxide(), min):
        yield "a room without carbon monoxide"


def _is_read(given: Figure | None) -> bool:
    return given is not None and not given.is_missing


def _air_free(job: Job) -> float | None:
    """Carbon monoxide of the flue gas as it would be without its air; None where it was not read.

    Without a reading of oxygen it is what was read, which is the least that it can be.
    """
    fire = job.system.readings.combustion
    if fire.carbon_monoxide is None:
        return None
    if not _is_read(fire.oxygen) or fire.oxygen is None:
        return float(fire.carbon_monoxide)
    return float(air_free_carbon_monoxide(measured=fire.carbon_monoxide, oxygen=fire.oxygen))


def _is_plain_air(job: Job) -> bool:
    """True where the analyzer had air before it: what it read says nothing of the fire."""
    fire = job.system.readings.combustion
    return fire.oxygen is not None and fire.carbon_monoxide is not None and float(fire.oxygen) >= PLAIN_AIR


def _strictest(job: Job, limit: str, target: Figure, pick: Callable[[float, float], float]) -> float:
    """A target, or the job's own limit where that is stricter; a laxer one of the job lets nothing run."""
    try:
        own = job.limit(limit, target.dimension)
    except JobErrors:  # the review says so of a limit of the wrong kind
        own = None
    return float(target) if own is None or isnan(own) else pick(float(target), float(own))


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
