"""Jobs with a heating system, and designs of them with every step worked out."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from dataclasses import fields
from functools import cache
from importlib import resources
from typing import Any

from heatledger.job.load import read_job
from heatledger.job.model import Job
from heatledger.ledger.dimensions import RATIO
from heatledger.ledger.show import show, show_percent
from heatledger.steps.boiler_room import boiler_room
from heatledger.steps.circuits import circuits
from heatledger.steps.controls import controls
from heatledger.steps.design import Design, design
from heatledger.steps.emitters import emitters
from heatledger.steps.said import Said
from heatledger.steps.startup import startup
from tests.losses.houses import TEXTS

EXAMPLES = ("ferrow-house", "lerch-cottage", "tamm-street")
Changes = Iterable[Mapping[str, Any]]


@cache
def job_of(name: str) -> Job:
    """An example by its name, or one of the sound houses, which have no heating system."""
    if name in TEXTS:
        return read_job(TEXTS[name], f"{name}.yaml")
    text = resources.files("heatledger.examples").joinpath(f"{name}.yaml").read_text("utf-8")
    return read_job(text, f"{name}.yaml")


def complete(job: Job) -> Design:
    """The design with the results of every step beside the losses."""
    made = design(job)
    if "startup" in {each.name for each in fields(made)}:
        return made
    heat = emitters(job, made.losses)
    piping = circuits(job, heat)
    room = boiler_room(job, made.losses, heat, piping)
    asked = controls(job, made.losses, heat, piping)
    last = startup(job, made.losses, heat, piping, room, asked)
    for name, each in (
        ("emitters", heat), ("circuits", piping), ("boiler_room", room), ("controls", asked),
        ("startup", last),
    ):  # fmt: skip
        object.__setattr__(made, name, each)
    return made


def designed(name: str, *changes: Mapping[str, Any]) -> Design:
    """A design of a job by its name, with changes laid over it; made once for each set of changes."""
    return _designed(name, json.dumps(changes))


@cache
def _designed(name: str, changes: str) -> Design:
    job, laid = job_of(name), json.loads(changes)
    return complete(job.with_changes(laid) if laid else job)


def spoken(said: Said, job: Job) -> str:
    """A sentence with its figures, in the units of the job."""
    shown = [
        show_percent(float(each), 1) if each.dimension is RATIO else show(each, job.units)
        for each in said.figures
    ]
    return said.text.format(*shown)
