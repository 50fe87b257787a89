"""When a paper of the heating system has something to say: once the job gives what it is about."""

from __future__ import annotations

from heatledger.steps.design import Design


def with_emitters(design: Design) -> bool:
    """Due for a job with emitters."""
    return bool(design.job.system.emitters)


def with_circuits(design: Design) -> bool:
    """Due for a job with circuits."""
    return bool(design.job.system.circuits)


def with_plant(design: Design) -> bool:
    """Due for a job with a boiler, or with circuits that ask for one."""
    return design.job.system.plant.boiler is not None or with_circuits(design)


def with_boiler(design: Design) -> bool:
    """Due for a job with a boiler that can be started."""
    return design.job.system.plant.boiler is not None
